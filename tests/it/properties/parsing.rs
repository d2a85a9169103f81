//! Is every text that can be typed read or answered, without a panic and in one short sentence?

use layshaft::gearing::{Label, Name, Ratio, parse_decimal, parse_ratio, parse_tyre};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

/// Any text, and texts of the characters that ratios are made of, which come closer to one.
fn typed_text() -> impl Strategy<Value = String> {
    let near_miss = select("0123456789.,:/xX*×∶ -+eE'".chars().collect::<Vec<_>>());
    let pieces = select(vec![
        "34", "9", "1", "0", "3.78", "3,78", ":", "/", "x", " * ", "×", "999999", ".",
    ]);
    prop_oneof![
        any::<String>(),
        "\\PC{0,300}",
        vec(near_miss, 0..60).prop_map(String::from_iter),
        vec(pieces, 0..12).prop_map(|pieces| pieces.concat()),
    ]
}

/// One line of 1 to 199 characters.
fn is_short_sentence(error: &impl ToString) -> bool {
    let sentence = error.to_string();
    (1..200).contains(&sentence.chars().count()) && !sentence.contains(char::is_control)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn any_text_is_a_ratio_in_its_range_or_answered(text in typed_text()) {
        match parse_ratio(&text) {
            Ok(typed) => {
                let orders = [Some(typed.driven_first()), typed.driving_first()];
                for ratio in orders.into_iter().flatten() {
                    prop_assert!(Ratio::RANGE.contains(&ratio.value()));
                }
            }
            Err(error) => prop_assert!(is_short_sentence(&error), "{error}"),
        }
    }

    #[test]
    fn any_text_is_a_finite_number_or_answered(text in typed_text()) {
        match parse_decimal(&text) {
            Ok(number) => prop_assert!(number.is_finite() && number >= 0.0),
            Err(error) => prop_assert!(is_short_sentence(&error), "{error}"),
        }
    }

    #[test]
    fn any_text_is_a_tyre_in_its_range_or_answered(text in typed_text()) {
        match parse_tyre(&text) {
            Ok(tyre) => prop_assert!((900.0..=13_000.0).contains(&tyre.rolling_circumference_mm())),
            Err(error) => {
                let sentence = error.to_string();
                prop_assert!((1..300).contains(&sentence.chars().count()), "{sentence}");
                prop_assert!(!sentence.contains(char::is_control), "{sentence:?}");
            }
        }
    }

    #[test]
    fn any_text_is_a_name_that_stays_or_answered(text in typed_text()) {
        match Name::new(&text) {
            Ok(name) => prop_assert_eq!(Name::new(name.as_str()), Ok(name)),
            Err(error) => prop_assert!(is_short_sentence(&error), "{error}"),
        }
        match Label::new(&text) {
            Ok(label) => prop_assert_eq!(Label::new(label.as_str()), Ok(label)),
            Err(error) => prop_assert!(is_short_sentence(&error), "{error}"),
        }
    }

    #[test]
    fn a_number_is_read_with_a_point_or_a_comma_and_blanks_around_it(
        whole in 0_u32..1_000_000, decimals in "[0-9]{1,6}"
    ) {
        let number: f64 = format!("{whole}.{decimals}").parse().unwrap();
        prop_assert_eq!(parse_decimal(&format!("{whole}.{decimals}")), Ok(number));
        prop_assert_eq!(parse_decimal(&format!(" {whole},{decimals}\t")), Ok(number));
    }
}

#[test]
fn endless_texts_are_answered_as_shortly_as_others() {
    let texts = [
        "9".repeat(100_000),
        "3*".repeat(100_000),
        "34:".repeat(100_000),
        "x".repeat(100_000),
    ];
    for text in &texts {
        for error in [
            parse_ratio(text).expect_err("a ratio").to_string(),
            parse_decimal(text).expect_err("a number").to_string(),
            parse_tyre(text).expect_err("a tyre").to_string(),
            Name::new(text).expect_err("a name").to_string(),
        ] {
            assert!(error.chars().count() < 300, "{error}");
        }
    }
}

#[test]
fn what_is_no_number_is_told_from_what_has_two_decimal_marks() {
    let answer = |text| parse_decimal(text).expect_err(text).to_string();
    assert_eq!(answer(" "), "there is no number yet");
    assert_eq!(answer("1e3"), "\"1e3\" is not a number such as 3.78");
    for text in ["3.7.8", "1,234.5", "1.234,5"] {
        assert_eq!(
            answer(text),
            format!("\"{text}\" has more than one decimal mark")
        );
    }
}
