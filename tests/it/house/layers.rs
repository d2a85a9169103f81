//! Do all arrows point down, and do the lower layers know nothing of window, files and clock?

use super::{Source, assert_none, rust_files};

/// Every layer with the layers that it may use, the ground first.
const LAYERS: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("platform", &[]),
    ("unseen", &[]),
    ("letters", &["unseen"]),
    ("formula", &["unseen"]),
    ("logging", &["unseen"]),
    ("panics", &["unseen"]),
    ("gearing", &["units", "unseen"]),
    ("motion", &["units", "gearing"]),
    ("checks", &["units", "gearing", "motion"]),
    ("finders", &["units", "gearing"]),
    ("workshop", &["units", "gearing"]),
    ("import", &["units", "formula", "gearing", "motion"]),
    (
        "project",
        &[
            "units", "unseen", "platform", "gearing", "motion", "checks", "workshop",
        ],
    ),
    (
        "analysis",
        &[
            "units", "letters", "gearing", "motion", "checks", "workshop", "project",
        ],
    ),
    (
        "chart",
        &[
            "units", "letters", "gearing", "motion", "checks", "workshop", "project", "analysis",
        ],
    ),
    (
        "draw",
        &[
            "units", "unseen", "letters", "gearing", "workshop", "project", "chart",
        ],
    ),
    (
        "sheet",
        &[
            "units", "letters", "formula", "gearing", "motion", "checks", "finders", "workshop",
            "project", "analysis", "chart", "draw",
        ],
    ),
    (
        "cli",
        &[
            "units", "unseen", "letters", "platform", "gearing", "motion", "checks", "finders",
            "workshop", "import", "project", "analysis", "chart", "draw", "sheet",
        ],
    ),
    (
        "app",
        &[
            "units", "platform", "letters", "logging", "panics", "gearing", "motion", "checks",
            "finders", "workshop", "import", "project", "analysis", "chart", "draw", "sheet",
        ],
    ),
];

/// Words that do not belong in a layer, in code or comment.
const FOREIGN_WORDS: &[(&str, &[&str])] = &[
    ("gearing", &["egui", "serde"]),
    ("motion", &["egui", "serde"]),
    ("checks", &["egui", "serde"]),
    ("finders", &["egui", "serde"]),
    ("workshop", &["egui", "serde"]),
    ("import", &["egui", "serde"]),
    ("project", &["egui"]),
    ("analysis", &["egui"]),
    ("chart", &["egui"]),
    ("draw", &["eframe", "rfd::"]),
    ("sheet", &["eframe", "rfd::"]),
    ("cli", &["eframe", "rfd::"]),
];

/// The layers that compute and do nothing else.
const PURE: &[&str] = &[
    "gearing", "motion", "checks", "finders", "workshop", "import",
];

/// The parts of the standard library that a pure computation has no use for.
const IMPURE: &[&str] = &["fs", "io", "time", "env", "net", "process", "thread"];

/// The names behind each `root::`: one, or those of a group in braces.
fn names_behind<'a>(text: &'a str, root: &str) -> Vec<&'a str> {
    let root = format!("{root}::");
    let is_alone = |at: usize| !text[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_');
    text.match_indices(&root)
        .filter(|(at, _)| is_alone(*at))
        .flat_map(|(at, _)| names_at(&text[at + root.len()..]))
        .collect()
}

fn names_at(text: &str) -> Vec<&str> {
    let Some(group) = text.strip_prefix('{') else {
        return vec![first_word(text)];
    };
    let (mut depth, mut start, mut names) = (1, 0, Vec::new());
    for (at, letter) in group.char_indices() {
        depth += match letter {
            '{' => 1,
            '}' => -1,
            _ => 0,
        };
        if depth == 0 || (depth == 1 && letter == ',') {
            names.push(first_word(group[start..at].trim()));
            start = at + 1;
        }
        if depth == 0 {
            break;
        }
    }
    names
}

fn first_word(text: &str) -> &str {
    let end = text.find(|c: char| !c.is_alphanumeric() && c != '_');
    &text[..end.unwrap_or(text.len())]
}

/// The names behind a chain of `super::` that is long enough to lead out of the layer.
fn names_above(file: &Source) -> Vec<&str> {
    let names = file.path.matches('/').count();
    let is_folder = file.path.ends_with("/mod.rs");
    let depth = if is_folder { names - 1 } else { names };
    names_behind(&file.text, &vec!["super"; depth].join("::"))
}

fn arrows_up(files: &[Source]) -> Vec<String> {
    let mut problems = Vec::new();
    for file in files {
        let (path, Some(layer)) = (&file.path, file.layer()) else {
            continue;
        };
        let Some((_, may_use)) = LAYERS.iter().find(|(name, _)| *name == layer) else {
            problems.push(format!("{path}: {layer} is missing in the table of layers"));
            continue;
        };
        let mut used = names_behind(&file.text, "crate");
        used.extend(names_above(file));
        used.retain(|name| LAYERS.iter().any(|(layer, _)| layer == name));
        used.retain(|name| *name != layer && !may_use.contains(name));
        used.sort_unstable();
        used.dedup();
        problems.extend(
            used.iter()
                .map(|name| format!("{path}: {layer} may not use {name}")),
        );
    }
    problems
}

fn foreign_words(files: &[Source]) -> Vec<String> {
    let mut problems = Vec::new();
    for file in files {
        let path = &file.path;
        for (_, words) in FOREIGN_WORDS
            .iter()
            .filter(|row| Some(row.0) == file.layer())
        {
            let found = words.iter().filter(|word| file.text.contains(**word));
            problems.extend(found.map(|word| format!("{path}: the word {word}")));
        }
        if file.layer().is_some_and(|layer| PURE.contains(&layer)) {
            let used = names_behind(&file.text, "std");
            let found = IMPURE.iter().filter(|name| used.contains(name));
            problems.extend(found.map(|name| format!("{path}: std::{name}")));
        }
    }
    problems
}

#[test]
fn all_arrows_point_down() {
    assert_none(&arrows_up(&rust_files("src")));
}

#[test]
fn the_lower_layers_know_nothing_of_window_files_and_clock() {
    assert_none(&foreign_words(&rust_files("src")));
}

#[test]
fn every_spelling_of_an_arrow_up_is_found() {
    let problems = |path: &str, text: &str| arrows_up(&[Source::new(path, text)]).len();
    for text in [
        "use crate::project::Edit;",
        "use crate::{units::Speed, project::Edit};",
        "use crate::{\n    units::{self, Speed},\n    project,\n};",
        "fn edit() -> crate::project::Edit {}",
        "use super::super::project::Edit;",
    ] {
        assert_eq!(problems("src/gearing/speed.rs", text), 1, "{text}");
        assert_eq!(problems("src/chart/table.rs", text), 0, "{text}");
    }
    assert_eq!(problems("src/gearing/mod.rs", "use super::app::App;"), 1);
    assert_eq!(problems("src/units.rs", "use super::gearing::Ratio;"), 1);
    assert_eq!(problems("src/app/window.rs", "use crate::cli::run;"), 1);
    assert_eq!(problems("src/gearing/a.rs", "use other_crate::app::A;"), 0);
    assert_eq!(problems("src/gearing/a.rs", "use super::project;"), 0);
    assert_eq!(problems("src/novel/a.rs", ""), 1);
    assert_eq!(problems("src/lib.rs", "use crate::app::App;"), 0);
}

#[test]
fn every_spelling_of_a_foreign_word_is_found() {
    let problems = |path: &str, text: &str| foreign_words(&[Source::new(path, text)]).len();
    for text in [
        "use std::fs;",
        "use std::{fmt, io::Write};",
        "let now = std::time::Instant::now();",
        "use serde::Serialize;",
        "// as egui_plot does it",
    ] {
        assert_eq!(problems("src/gearing/speed.rs", text), 1, "{text}");
        assert_eq!(problems("src/import/gears/mod.rs", text), 1, "{text}");
        assert_eq!(problems("src/app/window.rs", text), 0, "{text}");
    }
    assert_eq!(problems("src/gearing/a.rs", "use std::{fmt, iter};"), 0);
    assert_eq!(problems("src/project/a.rs", "use egui::Ui;"), 1);
    assert_eq!(problems("src/chart/mod.rs", "//! for egui"), 1);
    assert_eq!(problems("src/cli/a.rs", "rfd::FileDialog::new()"), 1);
}
