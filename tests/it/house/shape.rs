//! Does every file say what it is for, stay short, leave colours to the palette and errors to be told?

use super::{Source, assert_none, rust_files, top};
use std::fs;

/// The most lines of a file under `src`.
const MOST_LINES: usize = 500;

/// What stands at the top of the repository, beside dotfiles and what cargo builds.
const AT_THE_TOP: &[&str] = &[
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "README.md",
    "assets",
    "saves",
    "src",
    "target",
    "tests",
];

/// Where colours are chosen or mixed.
const COLOURED: &[&str] = &[
    "src/draw/palette.rs",
    "src/draw/theme.rs",
    "src/draw/raster/",
];

fn without_header(files: &[Source]) -> Vec<String> {
    let bare = files.iter().filter(|file| !file.text.starts_with("//! "));
    bare.map(|file| format!("{}: no header `//! …` in its first line", file.path))
        .collect()
}

/// The layers whose files say in their first line what they are; a question may follow it.
const SAYING_FIRST: &[&str] = &["gearing", "motion", "checks", "finders", "import"];

fn opening_with_a_question(files: &[Source]) -> Vec<String> {
    let first = |file: &Source| file.text.lines().next().unwrap_or_default().to_owned();
    let asking = files.iter().filter(|file| {
        let must_say = file
            .layer()
            .is_some_and(|layer| SAYING_FIRST.contains(&layer));
        must_say && first(file).ends_with('?')
    });
    asking
        .map(|file| format!("{}: its first line only asks", file.path))
        .collect()
}

fn too_long(files: &[Source]) -> Vec<String> {
    let lines = |file: &Source| file.text.lines().count();
    let long = files.iter().filter(|file| lines(file) > MOST_LINES);
    long.map(|file| format!("{}: {} lines, {MOST_LINES} at most", file.path, lines(file)))
        .collect()
}

fn with_colours_of_their_own(files: &[Source]) -> Vec<String> {
    let may = |file: &Source| COLOURED.iter().any(|place| file.path.starts_with(place));
    let own = files
        .iter()
        .filter(|file| !may(file) && names_a_colour(&file.text));
    own.map(|file| {
        format!(
            "{}: a colour of its own; the palette has them all",
            file.path
        )
    })
    .collect()
}

/// Whether a colour is made of numbers, is one of the toolkit's own, or is written in hex.
fn names_a_colour(text: &str) -> bool {
    let made = text.match_indices("Color32::").any(|(at, found)| {
        let rest = &text[at + found.len()..];
        let is_named = rest.starts_with(|c: char| c.is_ascii_uppercase());
        let is_none = rest.starts_with("TRANSPARENT") || rest.starts_with("PLACEHOLDER");
        rest.starts_with("from_") || (is_named && !is_none)
    });
    let in_hex = text.split("\"#").skip(1).any(|rest| {
        let digits = rest.chars().take_while(char::is_ascii_hexdigit).count();
        matches!(digits, 3 | 4 | 6 | 8) && rest[digits..].starts_with('"')
    });
    made || in_hex || text.contains("hex_color!")
}

/// What turns a value into text or bytes that are kept.
const SPELLING: &[&str] = &[
    "to_string_pretty(",
    "ser::to_string(",
    "to_vec(",
    "to_writer(",
    "format::write(",
    "write_to(",
];

/// What would put something else in the place of a failed spelling.
const STAND_INS: &[&str] = &[
    ".unwrap_or",
    ".unwrap_or_default()",
    ".unwrap_or_else(",
    ".ok()",
    "let Ok(",
    "if let Ok(",
];

/// Places where a default stands in for a value that could not be spelled.
fn with_stand_ins(files: &[Source]) -> Vec<String> {
    let mut found = Vec::new();
    for file in files {
        let code = file.text.split("#[cfg(test)]").next().unwrap_or_default();
        for statement in code.split([';', '{', '}']) {
            let spells = SPELLING.iter().any(|call| statement.contains(call));
            let has_stand_in = STAND_INS.iter().any(|other| statement.contains(other));
            if spells && has_stand_in {
                let statement = statement.split_whitespace().collect::<Vec<_>>().join(" ");
                found.push(format!("{}: {statement}", file.path));
            }
        }
    }
    found
}

fn out_of_place(names: &[String]) -> Vec<String> {
    let strange = names
        .iter()
        .filter(|name| !name.starts_with('.') && !AT_THE_TOP.contains(&name.as_str()));
    strange
        .map(|name| format!("{name}: not at the top of the repository"))
        .collect()
}

#[test]
fn every_file_opens_by_saying_what_it_is_for() {
    assert_none(&without_header(&rust_files("src")));
    assert_none(&without_header(&rust_files("tests")));
}

#[test]
fn a_first_line_says_what_the_file_is_before_it_asks() {
    assert_none(&opening_with_a_question(&rust_files("src")));
}

#[test]
fn no_file_is_too_long() {
    assert_none(&too_long(&rust_files("src")));
}

#[test]
fn colours_stand_in_the_palette() {
    assert_none(&with_colours_of_their_own(&rust_files("src")));
}

#[test]
fn the_top_of_the_repository_is_tidy() {
    let entries = fs::read_dir(top()).unwrap();
    let names: Vec<String> = entries
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    assert_none(&out_of_place(&names));
}

#[test]
fn no_default_stands_in_for_what_could_not_be_spelled() {
    assert_none(&with_stand_ins(&rust_files("src")));
}

#[test]
fn every_stand_in_for_a_failed_spelling_is_found() {
    let problems = |text: &str| with_stand_ins(&[Source::new("src/a.rs", text)]).len();
    for text in [
        "let text = ron::ser::to_string(&copy).unwrap_or_default();",
        "let text = options()\n    .to_string_pretty(&file, layout)\n    .unwrap_or_default();",
        "let Ok(text) = ron::ser::to_string_pretty(self, layout) else { return; };",
        "let text = format::write(project).ok();",
    ] {
        assert_eq!(problems(text), 1, "{text}");
    }
    for text in [
        "let text = ron::ser::to_string(&copy)?;",
        "let title = title.unwrap_or_default();\nlet text = format::write(project)?;",
        "fn a() {}\n#[cfg(test)]\nmod tests { fn b() { format::write(p).ok(); } }",
    ] {
        assert_eq!(problems(text), 0, "{text}");
    }
}

#[test]
fn a_file_without_header_and_a_long_one_are_found() {
    let files = [
        Source::new("src/good.rs", format!("//! Good.\n{}", "//\n".repeat(499))),
        Source::new("src/bare.rs", "use std::fmt;\n//! Late.\n"),
        Source::new("src/long.rs", format!("//! Long.\n{}", "//\n".repeat(500))),
    ];
    assert_eq!(without_header(&files).len(), 1);
    assert_eq!(too_long(&files).len(), 1);
    let asking = [
        Source::new("src/gearing/speed.rs", "//! How fast?\n//!\n//! So fast.\n"),
        Source::new(
            "src/gearing/rim.rs",
            "//! The rim: how large is it in mm?\n",
        ),
        Source::new(
            "src/gearing/ratio.rs",
            "//! A ratio.\n//!\n//! How large is it?\n",
        ),
    ];
    assert_eq!(opening_with_a_question(&asking).len(), 2);
}

#[test]
fn every_spelling_of_a_colour_is_found() {
    let problems =
        |path: &str, text: &str| with_colours_of_their_own(&[Source::new(path, text)]).len();
    for text in [
        "Color32::from_rgb(1, 2, 3)",
        "egui::Color32::from_black_alpha(9)",
        "Color32::RED",
        "let red = \"#F00\";",
        "let red = \"#ff0000\";",
        "hex_color!(\"ff0000\")",
    ] {
        assert_eq!(problems("src/app/window.rs", text), 1, "{text}");
        assert_eq!(problems("src/draw/palette.rs", text), 0, "{text}");
    }
    for text in [
        "Color32::TRANSPARENT",
        "fn of(colour: Color32) {}",
        "\"#table\"",
        "\"# Heading\"",
    ] {
        assert_eq!(problems("src/app/window.rs", text), 0, "{text}");
    }
}

#[test]
fn what_lies_about_at_the_top_is_found() {
    let names = ["src", ".ci", "notes.txt", "benches"].map(str::to_owned);
    assert_eq!(out_of_place(&names).len(), 2);
}
