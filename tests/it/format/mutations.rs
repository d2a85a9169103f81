//! Does a damaged file ever do more harm than a sentence?

use super::GOLDEN;
use super::broken::assert_is_a_sentence;
use super::format_2::GOLDEN_V2;
use crate::support::projects::renumbered;
use layshaft::project::format;
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::{Index, select};

/// One damage: at that place so many bytes are replaced by others.
type Damage = (Index, usize, Vec<u8>);

fn damage() -> impl Strategy<Value = Damage> {
    let tokens = vec![
        "(",
        ")",
        "[",
        "]",
        "{",
        "}",
        "\"",
        "'",
        ",",
        ":",
        "/*",
        "//",
        "r#\"",
        "\\",
        "\\u{d800}",
        "Some(",
        "None",
        "NaN",
        "-inf",
        "1e999",
        "-0",
        "0x1",
        "1_0",
        ".",
        "#![enable(",
        "\u{feff}",
        "é",
    ];
    let bytes = prop_oneof![
        1 => Just(Vec::new()),
        2 => vec(any::<u8>(), 1..4),
        3 => select(tokens).prop_map(|token| token.as_bytes().to_vec()),
    ];
    let length = prop_oneof![3 => 0_usize..3, 1 => 0_usize..200];
    (any::<Index>(), length, bytes)
}

fn damaged(text: &str, damages: &[Damage]) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for (place, length, with) in damages {
        let start = place.index(bytes.len() + 1);
        let end = (start + length).min(bytes.len());
        bytes.splice(start..end, with.iter().copied());
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn a_damaged_file_is_refused_in_a_sentence_or_is_a_project(
        golden in select(vec![GOLDEN, GOLDEN_V2]), damages in vec(damage(), 1..4)
    ) {
        match format::read(&damaged(golden, &damages)) {
            Ok(project) => {
                let again = format::read(&format::write(&project).unwrap());
                prop_assert_eq!(again, Ok(renumbered(&project)));
            }
            Err(error) => assert_is_a_sentence(&error.to_string()),
        }
    }

    #[test]
    fn any_text_at_all_is_refused_in_a_sentence(text in any::<String>()) {
        let error = format::read(&text).expect_err("no project");
        assert_is_a_sentence(&error.to_string());
    }
}

#[test]
fn a_file_cut_short_anywhere_is_refused_in_a_sentence() {
    for whole in [GOLDEN.trim_end(), GOLDEN_V2.trim_end()] {
        for (at, _) in whole.char_indices() {
            let error = format::read(&whole[..at]).expect_err("a cut file");
            assert_is_a_sentence(&error.to_string());
        }
    }
}
