//! Does every path exist that the guides for users and developers name?

use super::{assert_none, top};
use std::fs;
use std::path::Path;

/// The guides; one that is not written yet names nothing.
const GUIDES: &[&str] = &["README.md", "DEVELOPERS.md"];

/// The beginnings by which a word is known to be a path of the repository.
const BEGINNINGS: &[&str] = &["src/", "tests/", "assets/", "saves/", ".ci/"];

/// The paths that a guide names: in backticks by their beginning, in links unless they lead away.
fn paths_named(guide: &str) -> Vec<&str> {
    let quoted = guide.split('`').skip(1).step_by(2);
    let words = quoted.flat_map(str::split_whitespace);
    let linked = guide
        .split("](")
        .skip(1)
        .filter_map(|rest| rest.split(')').next());
    let inside = linked.filter(|link| !link.contains(':') && !link.starts_with('#'));
    words
        .filter(|word| BEGINNINGS.iter().any(|start| word.starts_with(start)))
        .chain(inside.filter_map(|link| link.split('#').next()))
        .map(fixed_part)
        .collect()
}

/// A path up to its first placeholder.
fn fixed_part(path: &str) -> &str {
    let path = path.trim_end_matches([',', '.', ';', ')']);
    match path.find(['*', '{', '<', '…']) {
        Some(end) => path[..end]
            .rsplit_once('/')
            .map_or("", |(folder, _)| folder),
        None => path,
    }
}

fn missing(guide: &str, top: &Path) -> Vec<String> {
    let paths = paths_named(guide).into_iter();
    paths
        .filter(|path| !top.join(path).exists())
        .map(|path| format!("{path} does not exist"))
        .collect()
}

#[test]
fn every_path_in_the_guides_exists() {
    for name in GUIDES {
        let Ok(guide) = fs::read_to_string(top().join(name)) else {
            continue;
        };
        let missing = missing(&guide, &top());
        assert!(missing.is_empty(), "{name}:\n{}\n", missing.join("\n"));
    }
}

#[test]
fn a_path_that_does_not_exist_is_found() {
    let guide = "Start at `src/lib.rs`, then `src/nothing.rs`; `src/app/*.rs`, `src/none/<name>.rs`.\n\
                 See [the map](src/lib.rs#map), [no map](no/map.md), [away](https://example.com),\n\
                 [below](#below); `cargo test` and `assets/none.ron`.\n\
                 ```\nlayshaft table saves/none.ron\n```\n";
    let missing = missing(guide, &top());
    let expected = [
        "src/nothing.rs",
        "src/none",
        "assets/none.ron",
        "saves/none.ron",
        "no/map.md",
    ];
    assert_eq!(
        missing,
        expected.map(|path| format!("{path} does not exist"))
    );
}

#[test]
fn a_guide_that_names_nothing_has_nothing_missing() {
    assert_none(&missing("Nothing but `cargo test`.", &top()));
}
