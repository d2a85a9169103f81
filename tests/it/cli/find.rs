//! Does `layshaft find` print the value that fulfils a wish, and refuse in sentences?

use super::{ONE_SET, answer, changed_project, is_close, json_of};
use std::ffi::OsString;

const WISH: [&str; 6] = ["--gear", "5", "--rpm", "2200", "--at", "110"];

fn find(what: &str, more: &[&str]) -> super::Answer {
    answer([&["find", what], &ONE_SET[..], &WISH, more].concat())
}

fn value(what: &str) -> f64 {
    let json = json_of(&find(what, &["--as", "json"]));
    assert_eq!(json["find"], what);
    assert_eq!(json["unit"], if what == "tyre" { "mm" } else { "" });
    assert_eq!(json.as_object().unwrap().len(), 3);
    json["value"].as_f64().unwrap()
}

/// The engine speed of top gear at 110 km/h in a set with these parts.
fn rpm(gears: &str, final_drive: &str, tyre: [&str; 2]) -> f64 {
    let set = [
        "table",
        "--gears",
        gears,
        "--final",
        final_drive,
        tyre[0],
        tyre[1],
    ];
    let rest = ["--redline", "6500", "--speed", "110", "--as", "json"];
    let json = json_of(&answer([&set[..], &rest].concat()));
    let engine_speed = &json["sets"][0]["gears"][4]["engine_speeds"][0];
    engine_speed["engine_rpm"].as_f64().unwrap()
}

#[test]
fn what_was_found_fulfils_the_wish_in_the_table() {
    let gears = ONE_SET[1];
    let tyre = ["--tyre", "185/60R14"];
    assert!(is_close(
        rpm(gears, &value("final").to_string(), tyre),
        2200.0
    ));
    let circumference = value("tyre").to_string();
    assert!(is_close(
        rpm(gears, "4.06", ["--circumference", &circumference]),
        2200.0
    ));
    let taller = gears.replace("0.83", &value("ratio").to_string());
    assert!(is_close(rpm(&taller, "4.06", tyre), 2200.0));
}

#[test]
fn the_text_is_a_sentence_with_the_present_value_and_what_changes_along() {
    assert_eq!(
        find("final", &[]).printed(),
        "Set 1, gear 5: final drive 2.549 instead of 4.060 (−37.2 %) for 2200 rpm at 110 km/h\n\
         gears 1, 2, 3, 4 change with it\n"
    );
    assert_eq!(
        find("tyre", &[]).printed(),
        "Set 1, gear 5: rolling circumference 2808.2 mm instead of 1762.9 mm (+59.3 %) for 2200 rpm \
         at 110 km/h\nevery gear changes with it, and so does what the speedometer shows\n"
    );
    assert_eq!(
        find("ratio", &["--units", "mph"]).printed(),
        "Set 1, gear 5: ratio 0.324 instead of 0.830 (−61.0 %) for 2200 rpm at 110 mph\n"
    );
}

/// What is found in the project of three sets, of which the second is the baseline.
fn find_in_three(what: &str, more: &[&str]) -> super::Answer {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("second.ron");
    std::fs::write(&file, changed_project("baseline: 1", "baseline: 2")).unwrap();
    let mut arguments: Vec<OsString> = vec!["find".into(), what.into(), file.into()];
    let wish = ["--rpm", "2500", "--at", "90"];
    arguments.extend(wish.iter().chain(more).map(OsString::from));
    answer(arguments)
}

#[test]
fn the_set_is_the_baseline_where_none_is_named() {
    let value = |more: &[&str]| {
        let gear = ["--gear", "4", "--as", "json"];
        let json = json_of(&find_in_three("ratio", &[&gear[..], more].concat()));
        json["value"].as_f64().unwrap()
    };
    let [first, second, third] = ["1", "2", "3"].map(|number| value(&["--set", number]));
    assert!(is_close(value(&[]), second));
    assert!(!is_close(first, second) && !is_close(third, second));
}

#[test]
fn a_final_drive_is_that_of_the_gear_and_what_it_drives_changes_along() {
    let told = |gear| {
        let answer = find_in_three("final", &["--set", "3", "--gear", gear]);
        answer
            .printed()
            .lines()
            .map(str::to_owned)
            .collect::<Vec<_>>()
    };
    let sixth = told("6");
    assert!(sixth[0].contains("instead of 3.364"), "{sixth:?}");
    assert_eq!(sixth[1], "gear 5 changes with it");
    let first = told("1");
    assert!(first[0].contains("instead of 4.353"), "{first:?}");
    assert_eq!(first[1], "gears 2, 3, 4, R change with it");
    assert_eq!(told("R")[1], "gears 1, 2, 3, 4 change with it");
}

/// Command lines, and what their sentence must speak of.
const WRONG: &[(&[&str], &str)] = &[
    (&["find"], "say what to find: layshaft find final"),
    (
        &["find", "gear"],
        "layshaft find is final, tyre or ratio, not \"gear\"",
    ),
    (
        &["find", "a.ron", "final"],
        "layshaft find is final, tyre or ratio, not \"a.ron\"",
    ),
    (&["find", "final", "a", "b"], "\"b\" is one too many"),
    (&["find", "final"], "needs --rpm N"),
    (&["find", "final", "--rpm", "2000"], "needs --at KMH"),
    (
        &["find", "final", "--rpm", "2000", "--at", "90"],
        "needs --gear G",
    ),
    (
        &[
            "find", "final", "--rpm", "2000", "--at", "90", "--gear", "5",
        ],
        "give a project file",
    ),
    (
        &[
            "find",
            "final",
            "nowhere.ron",
            "--rpm",
            "9",
            "--at",
            "9",
            "--gear",
            "5",
        ],
        "no such file",
    ),
    (
        &["find", "final", "--speed", "90"],
        "--speed does not go with layshaft find",
    ),
    (
        &["table", "--gear", "5"],
        "--gear does not go with layshaft table",
    ),
    (&["fnid", "final"], "did you mean layshaft find?"),
];

/// What is sought, gear, engine speed, road speed, and what the sentence must speak of.
const NOT_FULFILLED: &[[&str; 5]] = &[
    [
        "final",
        "6",
        "2200",
        "110",
        "no gear \"6\" in \"Set 1\"; its gears are 1, 2, 3, 4, 5",
    ],
    ["final", "R", "2200", "110", "no gear \"R\""],
    [
        "final",
        "5",
        "0",
        "110",
        "--rpm: an engine speed must be between 1 and 30000 rpm",
    ],
    ["final", "5", "1000 2000", "110", "--rpm: "],
    [
        "final",
        "5",
        "2200",
        "1001",
        "--at: a road speed must be between 0.001 and 1000 km/h",
    ],
    ["final", "5", "2200", "-9", "\"-9\" is not a number"],
    [
        "final",
        "5",
        "30000",
        "0.01",
        "a final drive must be between 0.001 and 400, not",
    ],
    [
        "ratio",
        "5",
        "30000",
        "0.01",
        "the ratio of a gear must be between 0.001 and 400",
    ],
    [
        "tyre",
        "5",
        "2200",
        "1000",
        "a rolling circumference must be between 900 and 13000 mm",
    ],
];

#[test]
fn every_wrong_wish_is_answered_by_its_sentence() {
    for (arguments, word) in WRONG {
        let answer = answer(*arguments);
        assert!(answer.sentence().contains(word), "{}", answer.stderr);
    }
    for [what, gear, rpm, at, word] in NOT_FULFILLED {
        let wish = ["--gear", gear, "--rpm", rpm, "--at", at];
        let answer = answer([&["find", what], &ONE_SET[..], &wish].concat());
        assert!(answer.sentence().contains(word), "{}", answer.stderr);
    }
    for (more, word) in [
        (
            ["--set", "2"],
            "--set names set \"2\", but there is only one",
        ),
        (["--set", "0"], "--set names set \"0\""),
        (["--set", "one"], "--set names set \"one\""),
        (["--as", "csv"], "--as is text or json, not \"csv\""),
        (["--gear", "4"], "--gear is given twice"),
    ] {
        let answer = find("final", &more);
        assert!(answer.sentence().contains(word), "{}", answer.stderr);
    }
}
