//! Is every dialog and every question of the source among those that are opened?

use crate::support::window::KINDS;
use std::fs;
use std::path::{Path, PathBuf};

/// All source files of the window.
fn files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            if !path.ends_with("tests") {
                files(&path, found);
            }
        } else {
            found.push(path);
        }
    }
}

/// The first text in quotes after each `mark` within a line or two, but for where there is none.
fn texts_after<'a>(source: &'a str, mark: &'a str) -> impl Iterator<Item = &'a str> {
    source.split(mark).skip(1).filter_map(|rest| {
        let text = rest.trim_start().strip_prefix('"')?;
        text.split('"').next()
    })
}

#[test]
fn every_dialog_of_the_source_is_opened() {
    let mut found = Vec::new();
    let top = Path::new(env!("CARGO_MANIFEST_DIR"));
    files(&top.join("src/app"), &mut found);
    let mut names = Vec::new();
    for path in found {
        let source = fs::read_to_string(&path).unwrap();
        let questions = texts_after(&source, "Question::new(");
        names.extend(questions.map(str::to_owned));
        let is_dialog = ["Frame", "Opening"].iter().any(|of| {
            let opened = format!("{of} {{\n        salt:");
            source.contains(&opened)
        });
        if is_dialog {
            // A dialog's name is a text of its own, a heading, or one heading for each purpose.
            let of_its_own = texts_after(&source, "        name:");
            let headings = texts_after(&source, "const HEADING: &str =");
            let by_purpose = source.split("Purpose::").skip(1).filter_map(|rest| {
                let (_, rest) = rest.split_once("=> (\"")?;
                rest.split('"').next()
            });
            let before = names.len();
            names.extend(
                of_its_own
                    .chain(headings)
                    .chain(by_purpose)
                    .map(str::to_owned),
            );
            // Those of questions and finders are given.
            let is_given = ["question.heading", "opening.name"]
                .iter()
                .any(|name| source.contains(name));
            assert!(names.len() > before || is_given, "{}", path.display());
        }
    }
    assert!(names.len() > 12, "{names:?}");
    let is_opened = |name: &String| KINDS.iter().any(|kind| kind.name == name);
    let missing: Vec<_> = names.iter().filter(|name| !is_opened(name)).collect();
    assert!(missing.is_empty(), "no row for {missing:?}");
}
