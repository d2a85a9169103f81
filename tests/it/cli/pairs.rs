//! Does `layshaft pairs` print the pairs that were asked for, in every format, and refuse in sentences?

use super::{answer, json_of};
use layshaft::finders::{FoundPair, PairWish, RatioTolerance, TeethLimits, tooth_pairs};
use layshaft::gearing::Ratio;
use layshaft::sheet::json::PAIR_KEYS;
use serde_json::Value;

const NEAR_3_78: [&str; 6] = ["--ratio", "3.78", "--within", "2", "--teeth", "9-40"];

fn pairs(more: &[&str]) -> super::Answer {
    answer([&["pairs"], &NEAR_3_78[..], more].concat())
}

fn list(more: &[&str]) -> Vec<Value> {
    let json = json_of(&pairs(&[more, &["--as", "json"]].concat()));
    json["pairs"].as_array().unwrap().clone()
}

fn found() -> Vec<FoundPair> {
    tooth_pairs(&PairWish {
        ratio: Ratio::from_number(3.78).unwrap(),
        within: RatioTolerance::from_percent(2.0).unwrap(),
        teeth: TeethLimits::new(9, 40).unwrap(),
        sum: None,
        centre: None,
    })
}

#[test]
fn json_has_every_pair_under_the_keys_of_the_reference() {
    let (printed, found) = (list(&[]), found());
    assert!(found.len() > 1);
    assert_eq!(printed.len(), found.len());
    for (printed, found) in printed.iter().zip(&found) {
        assert_eq!(printed["driven"], u64::from(found.teeth.driven()));
        assert_eq!(printed["driving"], u64::from(found.teeth.driving()));
        assert_eq!(printed["ratio"], found.teeth.ratio());
        assert_eq!(printed["error_percent"], found.error_percent);
        assert_eq!(printed["hunting"], found.hunting.word());
        assert_eq!(printed["sum"], u64::from(found.sum()));
        assert_eq!(printed["profile_shift"], Value::Null);
        assert_eq!(printed["can_be_cut"], true);
        let mut keys: Vec<&String> = printed.as_object().unwrap().keys().collect();
        let mut listed: Vec<&str> = PAIR_KEYS
            .iter()
            .filter_map(|(key, _)| key.strip_prefix("pairs[]."))
            .collect();
        keys.sort();
        listed.sort_unstable();
        assert_eq!(keys, listed);
    }
}

#[test]
fn a_fixed_centre_distance_tells_what_every_pair_needs_there_and_a_sum_leaves_the_others_out() {
    let spur = ["--centre", "80", "--module", "2.5"];
    let of_sum = |sum: &str| {
        let wide = [
            "pairs", "--ratio", "1", "--within", "100", "--teeth", "9-60",
        ];
        let json = json_of(&answer(
            [&wide[..], &spur, &["--sum", sum, "--as", "json"]].concat(),
        ));
        json["pairs"].as_array().unwrap().clone()
    };
    for (sum, shift, can_be_cut) in [
        ("63", Some(0.5284), true),
        ("61", Some(1.7405), false),
        ("66", Some(-0.8705), false),
        ("69", None, false),
    ] {
        let pairs = of_sum(sum);
        assert!(pairs.len() > 5, "{sum}");
        for pair in pairs {
            assert_eq!(pair["sum"].to_string(), sum);
            assert_eq!(pair["can_be_cut"], can_be_cut, "{sum}");
            match (pair["profile_shift"].as_f64(), shift) {
                (Some(found), Some(shift)) => assert!((found - shift).abs() < 5e-5, "{found}"),
                (found, shift) => assert_eq!(found, shift, "{sum}"),
            }
        }
    }
}

#[test]
fn a_ratio_may_be_typed_as_the_teeth_of_a_pair() {
    let exact = ["pairs", "--within", "0", "--teeth", "9-60", "--as", "json"];
    let json = json_of(&answer([&exact[..], &["--ratio", "34:9"]].concat()));
    assert_eq!(json["pairs"].as_array().unwrap().len(), 1);
    assert_eq!(json["pairs"][0]["driven"], 34);
    assert_eq!(json["pairs"][0]["error_percent"], 0.0);
}

#[test]
fn the_text_says_what_was_wished_and_that_a_gear_maker_decides() {
    let text = pairs(&["--centre", "80", "--module", "2.5", "--helix", "20"]);
    let text = text.printed();
    let head = text.lines().next().unwrap();
    assert_eq!(
        head,
        format!(
            "{} pairs within 2 % of 3.78; 9 to 40 teeth; centre distance 80 mm, module 2.5 mm, \
             helix angle 20°",
            found().len()
        )
    );
    assert!(text.contains("can be cut"), "{text}");
    assert!(text.contains("A gear maker decides"), "{text}");
    assert!(text.contains("change together"), "{text}");
    let without_shafts = pairs(&[]);
    assert!(!without_shafts.printed().contains("x1 + x2"));
    for line in text.lines() {
        assert!(line.chars().count() <= 102, "{line}");
    }
}

#[test]
fn where_there_is_no_pair_that_is_said() {
    let none = ["pairs", "--ratio", "9", "--within", "1", "--teeth", "20-60"];
    assert_eq!(
        answer(none).printed(),
        "no pair within 1 % of 9; 20 to 60 teeth\n"
    );
    let json = answer([&none[..], &["--as", "json"]].concat());
    assert_eq!(json_of(&json)["pairs"], serde_json::json!([]));
}

#[test]
fn csv_has_a_row_for_every_pair_with_either_decimal_mark() {
    let csv = pairs(&["--as", "csv"]);
    let lines: Vec<&str> = csv.printed().split_terminator("\r\n").collect();
    assert_eq!(
        lines[0],
        "driven,driving,ratio,error (%),hunting,sum,x1 + x2,can be cut"
    );
    assert_eq!(lines.len(), found().len() + 1);
    let first: Vec<&str> = lines[1].split(',').collect();
    let [driven, driving, ratio] = [0, 1, 2].map(|at| first[at].parse::<f64>().unwrap());
    assert!((driven / driving - ratio).abs() < 1e-13);
    let comma = pairs(&["--as", "csv", "--decimal", "comma"]);
    let [points, commas] = [csv.printed(), comma.printed()].map(str::to_owned);
    assert_eq!(points.replace(',', ";").replace('.', ","), commas);
}

/// Command lines, and what their sentence must speak of.
const WRONG: &[(&[&str], &str)] = &[
    (&["pairs"], "needs --ratio R"),
    (&["pairs", "--ratio", "3"], "needs --within PERCENT"),
    (
        &["pairs", "--ratio", "3", "--within", "1"],
        "needs --teeth FROM-TO",
    ),
    (&["pairs", "a.ron"], "layshaft pairs reads no file"),
    (
        &["pairs", "--gears", "3"],
        "--gears does not go with layshaft pairs",
    ),
    (
        &["table", "--ratio", "3"],
        "--ratio does not go with layshaft table",
    ),
    (&["--ratio", "3"], "it belongs to layshaft pairs"),
    (&["pairs", "--ratoi", "3"], "did you mean --ratio?"),
    (&["paris"], "did you mean layshaft pairs?"),
];

/// What is added to a whole wish, and what the sentence must speak of.
const WRONG_BESIDE_A_WISH: &[(&[&str], &str)] = &[
    (&["--ratio", "3"], "--ratio is given twice"),
    (
        &["--sum", "many"],
        "--sum: a sum of teeth is a whole number from 2 to 1998, not \"many\"",
    ),
    (&["--sum", "1999"], "not \"1999\""),
    (&["--centre", "80"], "needs --module MM or --pitch DP"),
    (
        &["--centre", "80", "--module", "2", "--pitch", "10"],
        "--module and --pitch both say how large the teeth are",
    ),
    (&["--pitch", "10"], "--pitch says what teeth fit"),
    (
        &["--centre", "80", "--pitch", "0.5"],
        "--pitch: a diametral pitch must be between 0.508 and 254",
    ),
    (
        &["--centre", "80", "--module", "2", "--pressure-angle", "9"],
        "between 10 and 30°",
    ),
    (
        &["--module", "2"],
        "--module says what teeth fit a centre distance; give --centre MM",
    ),
    (&["--helix", "20"], "--helix says what teeth fit"),
    (
        &["--centre", "4", "--module", "2"],
        "--centre: a centre distance must be between 5 and 5000 mm, not \"4\"",
    ),
    (
        &["--centre", "80", "--module", "0"],
        "between 0.1 and 50 mm",
    ),
    (
        &["--centre", "80", "--module", "2", "--helix", "61"],
        "between 0 and 60°",
    ),
    (
        &["--centre", "80", "--module", "2", "--helix", "-5"],
        "\"-5\" is not a number",
    ),
    (
        &["--as", "markdown"],
        "--as is text, csv or json, not \"markdown\"",
    ),
    (&["--decimal", "comma"], "--as csv only"),
];

#[test]
fn every_wrong_wish_is_answered_by_its_sentence() {
    for (arguments, word) in WRONG {
        let answer = answer(*arguments);
        assert!(answer.sentence().contains(word), "{}", answer.stderr);
    }
    for (more, word) in WRONG_BESIDE_A_WISH {
        let answer = pairs(more);
        assert!(answer.sentence().contains(word), "{}", answer.stderr);
    }
}

#[test]
fn a_wish_that_cannot_be_read_is_quoted() {
    for (ratio, within, teeth, word) in [
        ("x", "1", "9-60", "--ratio: \"x\" is not a ratio"),
        (
            "0",
            "1",
            "9-60",
            "--ratio: a ratio lies between 0.001 and 400",
        ),
        (
            "3",
            "101",
            "9-60",
            "--within: a tolerance must be between 0 and 100 %, not \"101\"",
        ),
        ("3", "-1", "9-60", "\"-1\" is not a number"),
        ("3", "1", "60-9", "the fewest first, as 9-60, not 60-9"),
        (
            "3",
            "1",
            "0-60",
            "two whole numbers from 1 to 999, as 9-60, not \"0-60\"",
        ),
    ] {
        let arguments = [
            "pairs", "--ratio", ratio, "--within", within, "--teeth", teeth,
        ];
        let answer = answer(arguments);
        assert!(answer.sentence().contains(word), "{}", answer.stderr);
    }
}
