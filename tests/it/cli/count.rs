//! Does `layshaft count` print what was counted, name the gear that it is, and refuse in sentences?

use super::{ONE_SET, answer, is_close, json_of};

fn count(more: &[&str]) -> super::Answer {
    answer([&["count"], &ONE_SET[..], more].concat())
}

#[test]
fn one_wheel_held_counts_twice_and_the_gear_is_named() {
    // Top gear: 0.83 × 4.06 = 3.3698; twice that in turns of the free wheel is 10 × 3.3698 ÷ 2 = 16.849.
    let args = ["--input", "16.85 0.05", "--wheel", "10", "--one-wheel"];
    let json = json_of(&count(&[&args[..], &["--as", "json"]].concat()));
    assert!(is_close(json["overall_ratio"].as_f64().unwrap(), 3.37));
    assert!(is_close(
        json["error"].as_f64().unwrap(),
        3.37 * 0.05 / 16.85
    ));
    let nearest = &json["gears"][0];
    assert_eq!(nearest["gear"], "5");
    assert_eq!(nearest["set"], 1);
    assert_eq!(nearest["within_error"], true);
    assert_eq!(json["gears"][1]["within_error"], false);
    let both = ["--input", "16.85", "--wheel", "5", "--as", "json"];
    let both = json_of(&count(&both));
    assert!(is_close(both["overall_ratio"].as_f64().unwrap(), 3.37));
}

#[test]
fn an_engine_speed_at_a_measured_road_speed_counts_too() {
    // 185/60 R 14 rolls 3.05 × 578 = 1762.9 mm; 3.3698 × 100 ÷ (0.06 × 1.7629) = 3185.9 rpm.
    let read = ["--rpm", "3186 20", "--at", "100 0.5"];
    let json = json_of(&count(&[&read[..], &["--as", "json"]].concat()));
    let ratio = json["overall_ratio"].as_f64().unwrap();
    assert!((ratio - 3.3698).abs() < 1e-3, "{ratio}");
    let error = json["error"].as_f64().unwrap();
    let expected = ratio * (20.0_f64 / 3186.0).hypot(0.5 / 100.0);
    assert!(is_close(error, expected), "{error}");
    let in_miles = [
        "--rpm",
        "3186 20",
        "--at",
        "62.1371 0.3107",
        "--units",
        "mph",
    ];
    let other = json_of(&count(&[&in_miles[..], &["--as", "json"]].concat()));
    let other = other["overall_ratio"].as_f64().unwrap();
    assert!((ratio - other).abs() < 1e-5, "{ratio} {other}");
}

#[test]
fn the_text_says_which_gear_it_is() {
    let printed = count(&["--input", "33.7 0.1", "--wheel", "10"]);
    let text = printed.printed();
    assert!(text.starts_with("overall ratio 3.370 ± 0.010\n"), "{text}");
    assert!(
        text.contains("only gear 5 of set 1 is within the error"),
        "{text}"
    );
    assert_eq!(text.lines().count(), 7, "{text}");
}

#[test]
fn what_is_not_counted_is_told() {
    for (args, says) in [
        (&["--input", "37"][..], "--input and --wheel"),
        (&["--rpm", "3000"], "--rpm and --at"),
        (
            &["--input", "37", "--wheel", "10", "--rpm", "3000"],
            "--input and --wheel",
        ),
        (
            &["--rpm", "3000", "--at", "100", "--one-wheel"],
            "--input and --wheel",
        ),
        (&["--input", "0", "--wheel", "10"], "between 0.01 and 10000"),
        (&["--input", "37 x", "--wheel", "10"], "--input"),
        (&["--input", "37 1 1", "--wheel", "10"], "a reading"),
        (&["--input", "37", "--wheel", "10 101"], "between 0 and 100"),
    ] {
        let answer = count(args);
        let sentence = answer.sentence();
        assert!(sentence.contains(says), "{args:?}: {sentence}");
    }
}
