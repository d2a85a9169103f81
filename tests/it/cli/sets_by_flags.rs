//! Do flags describe the gear sets that their text says?

use super::{Answer, answer, answer_to_one_set, is_close, json_of};
use serde_json::Value;

fn numbers(values: &Value, key: &str) -> Vec<f64> {
    let entries = values.as_array().unwrap().iter();
    entries.map(|entry| entry[key].as_f64().unwrap()).collect()
}

fn overall_ratios(answer: &Answer) -> Vec<f64> {
    numbers(&json_of(answer)["sets"][0]["gears"], "overall_ratio")
}

fn one_set(gears: &str, final_drive: &str, more: &[&str]) -> Answer {
    one_set_as("json", gears, final_drive, more)
}

fn one_set_as(format: &str, gears: &str, final_drive: &str, more: &[&str]) -> Answer {
    let set = [
        "table",
        "--as",
        format,
        "--gears",
        gears,
        "--final",
        final_drive,
    ];
    let tyre = ["--circumference", "2000", "--redline", "6000"];
    answer([&set[..], &tyre, more].concat())
}

#[test]
fn the_example_of_the_help_is_read_as_it_stands() {
    let json = json_of(&answer_to_one_set("table", &["--as", "json"]));
    let set = &json["sets"][0];
    assert_eq!(json["title"], "");
    assert_eq!(set["name"], "Set 1");
    assert_eq!(
        numbers(&set["gears"], "ratio"),
        [3.54, 1.91, 1.31, 1.03, 0.83]
    );
    assert_eq!(numbers(&set["gears"], "final_drive"), [4.06; 5]);
    assert_eq!(set["gears"][4]["gear"], "5");
    assert_eq!(set["gears"][0]["shift_rpm"], 6000.0);
    assert_eq!(set["reverse"], Value::Null);
    // 356 mm rim and twice 111 mm of wall.
    assert_eq!(set["tyre"]["overall_diameter_mm"], 578.0);
}

#[test]
fn a_blank_beside_a_product_sign_belongs_to_the_product() {
    for gears in [
        "44/29 * 49/12 2.1",
        "44/29*49/12  2.1",
        " 44/29 × 49/12 2.1 ",
    ] {
        let found = overall_ratios(&one_set(gears, "1", &[]));
        assert!(
            is_close(found[0], 44.0 / 29.0 * 49.0 / 12.0),
            "{gears}: {found:?}"
        );
        assert!(is_close(found[1], 2.1), "{gears}: {found:?}");
    }
}

#[test]
fn tooth_pairs_are_read_in_the_order_that_makes_sense() {
    for gears in ["34:9 38:17 33:41", "9:34 17:38 41:33"] {
        for final_drive in ["37:9", "9:37"] {
            let found = overall_ratios(&one_set(gears, final_drive, &[]));
            assert!(
                is_close(found[0], 34.0 / 9.0 * 37.0 / 9.0),
                "{gears} {final_drive}"
            );
            assert!(
                is_close(found[2], 33.0 / 41.0 * 37.0 / 9.0),
                "{gears} {final_drive}"
            );
        }
    }
}

#[test]
fn a_decimal_comma_is_read_in_ratios() {
    assert_eq!(overall_ratios(&one_set("3,5 2,25", "2", &[])), [7.0, 4.5]);
}

#[test]
fn a_final_drive_may_be_a_product() {
    assert!(is_close(
        overall_ratios(&one_set("1", "3 * 34:17", &[]))[0],
        6.0
    ));
}

#[test]
fn without_shift_points_each_gear_is_shifted_at_the_redline() {
    let json = json_of(&one_set("3 2 1", "1", &[]));
    let gears = &json["sets"][0]["gears"];
    assert_eq!(gears[0]["shift_rpm"], 6000.0);
    assert_eq!(gears[1]["rpm_after_shift"], 3000.0);
    assert_eq!(gears[2]["shift_rpm"], Value::Null);
}

#[test]
fn shift_points_are_one_for_all_or_one_for_each_change() {
    for (shift, expected) in [
        ("5000", [5000.0, 5000.0]),
        ("5000 4500.5", [5000.0, 4500.5]),
    ] {
        let json = json_of(&one_set("3 2 1", "1", &["--shift", shift]));
        let gears = &json["sets"][0]["gears"];
        assert_eq!(gears[0]["shift_rpm"], expected[0], "{shift}");
        assert_eq!(gears[1]["shift_rpm"], expected[1], "{shift}");
    }
    for wrong in ["1000,2000,3000", "1000 2000 3000 4000"] {
        let answer = one_set("3 2 1", "1", &["--shift", wrong]);
        assert!(
            answer.sentence().contains("3 gears has 2 changes"),
            "{}",
            answer.stderr
        );
    }
    let single = one_set("3", "1", &["--shift", "5000"]);
    assert_eq!(json_of(&single)["findings"], Value::Array(Vec::new()));
    let wrong = one_set("3", "1", &["--shift", "5000,4000"]);
    assert!(wrong.sentence().contains("--shift"));
}

#[test]
fn one_value_serves_all_sets_and_one_each_serves_each() {
    let sets = ["table", "--as", "json", "--gears", "3 1", "--gears", "4 2"];
    let shared = [
        "--final",
        "2",
        "--tyre",
        "185/60R14",
        "--redline",
        "6000",
        "--shift",
        "5000",
    ];
    let json = json_of(&answer([&sets[..], &shared].concat()));
    assert_eq!(json["sets"][1]["gears"][0]["overall_ratio"], 8.0);
    assert_eq!(json["sets"][1]["gears"][0]["shift_rpm"], 5000.0);
    assert_eq!(json["sets"][1]["tyre"], json["sets"][0]["tyre"]);
    assert_eq!(json["sets"][1]["name"], "Set 2");

    let each = [
        "--final",
        "2",
        "--final",
        "3",
        "--tyre",
        "185/60R14",
        "--tyre",
        "195/65R15",
        "--shift",
        "5000",
        "--shift",
        "4000",
        "--reverse",
        "3",
        "--reverse",
        "5",
        "--name",
        "Old",
        "--redline",
        "6000",
    ];
    let json = json_of(&answer([&sets[..], &each].concat()));
    let [old, new] = [&json["sets"][0], &json["sets"][1]];
    assert_eq!(new["gears"][0]["overall_ratio"], 12.0);
    assert_eq!(new["gears"][0]["shift_rpm"], 4000.0);
    assert_eq!(old["tyre"]["overall_diameter_mm"], 578.0);
    assert_eq!(new["tyre"]["overall_diameter_mm"], 635.0);
    assert_eq!(
        [&old["reverse"]["ratio"], &new["reverse"]["ratio"]],
        [3.0, 5.0]
    );
    assert_eq!([&old["name"], &new["name"]], ["Old", "Set 2"]);
}

#[test]
fn a_flag_given_for_some_sets_only_is_refused() {
    let sets = [
        "table",
        "--gears",
        "3",
        "--gears",
        "4",
        "--gears",
        "5",
        "--redline",
        "6000",
    ];
    let finals = ["--final", "2", "--final", "3", "--tyre", "185/60R14"];
    let answer = answer([&sets[..], &finals].concat());
    assert!(
        answer
            .sentence()
            .contains("--final is given 2 times for 3 gear sets")
    );
}

#[test]
fn a_fourth_set_is_refused() {
    let gears = ["--gears", "3"].repeat(4);
    let others = ["--final", "2", "--tyre", "185/60R14", "--redline", "6000"];
    let answer = answer([&["table"], &gears[..], &others].concat());
    assert!(answer.sentence().contains("at most 3"));
}

#[test]
fn a_sentence_about_one_of_several_sets_names_it() {
    let sets = [
        "table",
        "--gears",
        "3",
        "--gears",
        "4 x",
        "--redline",
        "6000",
    ];
    let answer = answer([&sets[..], &["--final", "2", "--tyre", "185/60R14"]].concat());
    assert!(
        answer.sentence().contains("--gears of set 2: \"x\""),
        "{}",
        answer.stderr
    );
}

#[test]
fn idle_and_lowest_useful_speed_bring_their_findings() {
    let more = ["--idle", "7000", "--lowest-useful", "5000", "--as", "json"];
    let json = json_of(&answer_to_one_set("table", &more));
    let findings = json["findings"].as_array().unwrap();
    let kinds: Vec<&str> = findings
        .iter()
        .map(|f| f["kind"].as_str().unwrap())
        .collect();
    assert!(kinds.contains(&"idle_not_below_redline"), "{kinds:?}");
    assert!(kinds.contains(&"drop_too_low"), "{kinds:?}");
}

#[test]
fn a_value_may_stand_behind_an_equals_sign() {
    let json = json_of(&one_set(
        "1",
        "1",
        &["--rpm=1000", "--name=--gears of mine"],
    ));
    assert_eq!(json["sets"][0]["name"], "--gears of mine");
    assert_eq!(
        json["sets"][0]["gears"][0]["speeds"][0]["engine_rpm"],
        1000.0
    );
}

#[test]
fn the_same_flags_serve_check() {
    let answer = answer_to_one_set(
        "check",
        &["--rpm", "1000", "--speed", "50", "--units", "mph"],
    );
    assert_eq!(answer.printed(), "");
    let wrong = answer_to_one_set("check", &["--rpm", "1000,"]);
    assert!(wrong.sentence().contains("empty item"));
}

#[test]
fn a_chain_is_a_final_drive_that_says_which_sprocket_is_which() {
    for chain in ["chain 16/46", "front 16 rear 46", "chain rear 46 front 16"] {
        let found = overall_ratios(&one_set("2 1", chain, &[]));
        assert_eq!(found, [5.75, 2.875], "{chain}");
    }
    let turned = one_set("2 1", "chain 46/16", &[]);
    assert!(
        turned
            .stderr
            .contains("front sprocket has more teeth than the rear one, 46 to 16")
    );
}

#[test]
fn the_table_spells_a_chain_as_it_is_typed() {
    let text = one_set_as("text", "2 1", "chain 16/46", &[]);
    assert!(
        text.printed()
            .contains("final drive chain front 16 rear 46 = 2.875")
    );
    let csv = one_set_as("csv", "2 1", "chain 16/46", &[]);
    assert!(csv.printed().contains(",chain 16/46,"));
}
