//! Does the source keep to the rules of its house: layers, file sizes, colours, paths that exist?

mod layers;
mod paths;
mod shape;

use std::fs;
use std::path::{Path, PathBuf};

/// A text file of the repository, by its path from the top with `/` between the names.
struct Source {
    path: String,
    text: String,
}

impl Source {
    fn new(path: impl Into<String>, text: impl Into<String>) -> Self {
        Self {
            path: path.into(),
            text: text.into(),
        }
    }

    /// The layer of a file under `src`: the name of its top module; none for the crate's roots.
    fn layer(&self) -> Option<&str> {
        let inside = self.path.strip_prefix("src/")?;
        let layer = inside.split('/').next()?;
        let layer = layer.strip_suffix(".rs").unwrap_or(layer);
        (!matches!(layer, "lib" | "main")).then_some(layer)
    }
}

fn top() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// All Rust files in a folder of the repository.
fn rust_files(folder: &str) -> Vec<Source> {
    let mut found = Vec::new();
    collect(&top().join(folder), folder, &mut found);
    assert!(found.len() > 3, "{folder} seems to be empty");
    found
}

fn collect(folder: &Path, name: &str, found: &mut Vec<Source>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = format!("{name}/{}", path.file_name().unwrap().to_str().unwrap());
        if path.is_dir() {
            collect(&path, &name, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(Source::new(name, fs::read_to_string(&path).unwrap()));
        }
    }
}

/// Fails with everything that is wrong, not with the first of it only.
#[track_caller]
fn assert_none(problems: &[String]) {
    assert!(problems.is_empty(), "\n{}\n", problems.join("\n"));
}
