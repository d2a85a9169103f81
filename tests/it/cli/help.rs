//! Does the help name what there is, and only that?

use super::{TABLE_OPTIONS, answer, program_answer};

/// All words of a text that look like an option.
fn options(text: &str) -> Vec<&str> {
    let words = text.split(|c: char| c.is_whitespace() || c == ',' || c == ')');
    words
        .filter(|word| word.starts_with("--") && word.len() > 2)
        .collect()
}

#[test]
fn every_option_of_the_help_is_known_to_its_command() {
    for command in ["table", "check", "pairs", "find"] {
        let help = answer([command, "--help"]);
        let options = options(help.printed());
        assert!(options.len() > 9, "{options:?}");
        for option in options {
            let answer = answer([command, option]);
            let told = &answer.stderr;
            assert!(
                !told.contains("no option") && !told.contains("does not go"),
                "{told}"
            );
        }
    }
}

#[test]
fn the_table_takes_all_options_of_the_design() {
    let help = answer(["table", "--help"]);
    let listed = options(help.printed());
    for option in TABLE_OPTIONS {
        assert!(listed.contains(option), "{option}");
    }
    assert!(help.printed().contains("-o, "));
}

#[test]
fn help_is_printed_wherever_it_is_asked_for() {
    let overview = answer(["--help"]);
    assert_eq!(answer(["-h"]).printed(), overview.printed());
    for command in [
        "layshaft table FILE",
        "layshaft check FILE",
        "layshaft pairs",
        "layshaft find WHAT FILE",
        "layshaft [FILE]",
    ] {
        assert!(overview.printed().contains(command), "{command}");
    }
    let about_table = answer(["table", "-h"]);
    assert_eq!(
        answer(["table", "nowhere.ron", "--help"]).printed(),
        about_table.printed()
    );
    assert!(about_table.printed().starts_with("layshaft table"));
}

#[test]
fn no_line_of_the_help_is_wider_than_100_characters() {
    for arguments in [
        vec!["--help"],
        vec!["table", "--help"],
        vec!["check", "--help"],
        vec!["pairs", "--help"],
        vec!["find", "--help"],
    ] {
        for line in answer(arguments).printed().lines() {
            assert!(line.chars().count() <= 100, "{line}");
        }
    }
}

#[test]
fn the_example_of_the_help_works() {
    let help = answer(["--help"]);
    let lines = help.printed().lines();
    let example: Vec<&str> = lines
        .skip_while(|line| !line.starts_with("layshaft table --gears"))
        .take_while(|line| !line.is_empty())
        .collect();
    let example = example.join(" ").replace('\\', "");
    let mut arguments = Vec::new();
    for (at, part) in example.split('"').enumerate() {
        if at % 2 == 1 {
            arguments.push(part);
        } else {
            arguments.extend(part.split_whitespace());
        }
    }
    assert!(
        answer(&arguments[1..]).printed().contains("at 100"),
        "{arguments:?}"
    );
}

#[test]
fn the_version_is_that_of_the_package() {
    for flag in ["--version", "-V"] {
        let output = program_answer([flag]);
        assert_eq!(output.status.code(), Some(0));
        let expected = format!("layshaft {}\n", env!("CARGO_PKG_VERSION"));
        assert_eq!(String::from_utf8(output.stdout).unwrap(), expected);
    }
}

#[test]
fn a_project_file_alone_asks_for_the_window() {
    use super::three_sets;
    use layshaft::cli::Outcome;
    assert_eq!(answer([""; 0]).outcome, Outcome::Window(None));
    assert_eq!(
        answer([three_sets()]).outcome,
        Outcome::Window(Some(three_sets()))
    );
}
