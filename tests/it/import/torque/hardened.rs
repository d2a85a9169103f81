//! Is every text read or answered, without a panic, a hang or a number that is none?

use super::{columns, doubtful, said};
use layshaft::import::torque::{read_torque, read_torque_taking};
use layshaft::units::OutputUnit;
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

/// What holds for every text.
fn is_sound(text: &str) {
    match read_torque(text) {
        Ok(curve) => {
            assert!((2..=200).contains(&curve.points.len()), "{text:?}");
            let rising = curve.points.windows(2);
            assert!(
                rising
                    .into_iter()
                    .all(|two| two[0].engine_speed < two[1].engine_speed),
                "{text:?}"
            );
            for point in &curve.points {
                assert!((0.0..=20_000.0).contains(&point.torque_nm), "{text:?}");
            }
            for remark in &curve.remarks {
                assert!(remark.chars().count() < 400, "{remark}");
                assert!(!remark.contains(char::is_control), "{remark:?}");
            }
        }
        Err(error) => {
            let sentence = error.to_string();
            assert!((20..300).contains(&sentence.chars().count()), "{sentence}");
            assert!(!sentence.contains(char::is_control), "{sentence:?}");
        }
    }
}

/// Any text, and texts of the pieces that curves are made of, which come closer to one.
fn pasted_text() -> impl Strategy<Value = String> {
    let pieces = select(vec![
        "1000", "2500", "4 500", "6,500", "0", "-3", "120", "170,5", "1e9", "99999999", ".5",
        "12.6", "rpm", "Nm", "lb-ft", "kW", "hp", "1/min", "x1000", "torque", "power", "km/h", "@",
        "at", ":", "=", "-", "|", ";", "\t", "\n", " ", " ", ", ", ",", "[td]", "[/td]", "[tr]",
        "\"", "k", "min-1", "(", ")", "/", "·", "é", "wheel",
    ]);
    prop_oneof![
        any::<String>(),
        "\\PC{0,300}",
        vec(pieces, 0..60).prop_map(|pieces| pieces.concat()),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3000))]

    #[test]
    fn any_text_gives_a_sound_curve_or_a_sentence(text in pasted_text()) {
        is_sound(&text);
        for unit in OutputUnit::ALL {
            if let Ok(curve) = read_torque_taking(&text, unit) {
                prop_assert!(curve.points.iter().all(|point| point.torque_nm.is_finite()));
            }
        }
    }
}

#[test]
fn every_sample_cut_anywhere_is_sound() {
    let kinds = [
        columns::WITH_HEADINGS,
        columns::ACROSS,
        columns::WITHOUT_HEADINGS,
        said::POINTS,
        doubtful::DOUBTFUL,
    ];
    for (text, _, _) in kinds.concat() {
        for (at, _) in text.char_indices() {
            is_sound(&text[..at]);
            is_sound(&text[at..]);
        }
    }
}

#[test]
fn the_longest_texts_are_read_or_answered_in_time() {
    for piece in [
        "1",
        "a",
        "a-",
        "1,",
        "1.",
        ":",
        "-",
        "@",
        "[",
        "[b",
        "|",
        "\t",
        "\n",
        "x ",
        "1 /",
        "\"",
        "1:2",
        "1:2,",
        "1000,120 ",
        "1000:120 ",
        "1 rpm ",
        "rpm ",
        "rpm 1 ",
        "1000 120\n",
        "rpm Nm\n",
        "rpm\t1\n",
        "Nm\t1\n",
        "1000-2000 ",
        "é",
        "1000;",
        "9 999 ",
        "=@",
        "k",
    ] {
        is_sound(&piece.repeat(200_000 / piece.chars().count()));
    }
}
