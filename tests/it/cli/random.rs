//! Is any command line answered, whatever stands in it?

use super::{ONE_SET, TABLE_OPTIONS, answer, assert_is_one_sentence};
use layshaft::cli::Outcome;
use proptest::prelude::*;

/// Words of the command line, values near the edge, and anything at all.
///
/// No word names a file that could be written.
fn word() -> impl Strategy<Value = String> {
    let known = [
        "table",
        "check",
        "tabel",
        "--help",
        "--version",
        "-h",
        "-V",
        "-",
        "--",
        "json",
        "csv",
        "markdown",
        "bbcode",
        "text",
        "speed",
        "steps",
        "kmh",
        "mph",
        "comma",
        "0",
        "-1",
        "3.5",
        "3.5 2.1 1",
        "34:9 2*3",
        "185/60R14",
        "31x10.50R15LT",
        "2000",
        "6000",
        "1e9",
        "NaN",
        "1,,2",
        "1000 2000",
        "",
        " ",
        "saves/camper-van.ron",
        "Cargo.toml",
        "src",
    ];
    prop_oneof![
        4 => prop::sample::select([&known[..], TABLE_OPTIONS].concat()).prop_map(str::to_owned),
        1 => "[0-9.,:*x× -]{0,12}",
        1 => "\\PC{0,60}".prop_filter("no output file", |word| !word.starts_with('-')),
        1 => ".{0,8}".prop_filter("no output file", |word| !word.starts_with('-')),
    ]
}

fn assert_is_answered(arguments: &[String]) -> Result<(), TestCaseError> {
    let answer = answer(arguments);
    match answer.outcome {
        Outcome::Window(_) => prop_assert!(answer.stdout.is_empty() && answer.stderr.is_empty()),
        Outcome::Exit(0) => {
            let has_result = !answer.stdout.is_empty() || answer.stderr == "no findings\n";
            prop_assert!(has_result, "{:?}", answer);
            prop_assert!(!answer.stdout.contains("NaN") || arguments.concat().contains("NaN"));
        }
        Outcome::Exit(1) => prop_assert!(!answer.stdout.is_empty()),
        Outcome::Exit(code) => {
            prop_assert_eq!(code, 2);
            prop_assert_eq!(&answer.stdout, "");
            assert_is_one_sentence(&answer.stderr);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_words_are_answered(words in prop::collection::vec(word(), 0..12)) {
        assert_is_answered(&words)?;
    }

    #[test]
    fn any_words_beside_a_set_are_answered(
        command in prop::sample::select(vec!["table", "check"]),
        words in prop::collection::vec(word(), 0..6),
    ) {
        let set = ONE_SET.iter().map(|word| (*word).to_owned());
        let arguments: Vec<String> =
            std::iter::once(command.to_owned()).chain(set).chain(words).collect();
        assert_is_answered(&arguments)?;
    }

    #[test]
    fn any_value_in_a_set_is_answered(place in 0usize..5, value in word()) {
        let mut arguments: Vec<String> =
            std::iter::once("table").chain(ONE_SET).map(str::to_owned).collect();
        arguments[place * 2 + 2] = value;
        assert_is_answered(&arguments)?;
    }
}
