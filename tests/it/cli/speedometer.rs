//! Is printed what every speedometer shows, what it may show, and why where it shows nothing?

use super::motion::{answer_about, json};
use super::runs::paths;
use super::{Answer, answer, answer_to_one_set, changed_project, is_close, json_of};
use serde_json::Value;
use std::collections::BTreeSet;

/// Two sets by flags: another final drive, and another tyre.
const TWO_SETS: [&str; 15] = [
    "table",
    "--gears",
    "3.5 2 1.4 1",
    "--final",
    "4",
    "--circumference",
    "1944",
    "--gears",
    "3.5 2 1.4 1",
    "--final",
    "3.6",
    "--circumference",
    "1800",
    "--redline",
    "6500",
];

/// What is shown of a set by flags.
fn shown(more: &[&str]) -> Answer {
    answer_to_one_set("table", &[&["--show", "speedometer"], more].concat())
}

fn shown_as_json(more: &[&str]) -> Value {
    json_of(&shown(&[&["--as", "json"], more].concat()))
}

fn entries(json: &Value, set: usize) -> &[Value] {
    json["sets"][set]["speedometer"].as_array().unwrap()
}

/// One figure at every speed.
fn figures(json: &Value, set: usize, key: &str) -> Vec<f64> {
    let entries = entries(json, set).iter();
    entries.map(|entry| entry[key].as_f64().unwrap()).collect()
}

/// What every speed of a set shows over the true one, which is one ratio.
fn ratio(json: &Value, set: usize) -> f64 {
    let (true_kmh, shown_kmh) = (
        figures(json, set, "true_kmh"),
        figures(json, set, "shown_kmh"),
    );
    let mut ratios = true_kmh.iter().zip(&shown_kmh).map(|(t, s)| s / t);
    let first = ratios.next().unwrap();
    assert!(ratios.all(|ratio| is_close(ratio, first)));
    let error = json["sets"][set]["odometer_error_percent"]
        .as_f64()
        .unwrap();
    assert!((error - 100.0 * (first - 1.0)).abs() < 1e-9, "{error}");
    first
}

/// Whether a text contains all of these words.
#[track_caller]
fn has(text: &str, words: &[&str]) {
    for words in words {
        assert!(text.contains(words), "no {words} in\n{text}");
    }
}

#[test]
fn a_set_by_flags_shows_what_is_true_at_the_tested_speeds() {
    let json = shown_as_json(&[]);
    assert_eq!(figures(&json, 0, "true_kmh"), [40.0, 80.0, 120.0]);
    assert_eq!(figures(&json, 0, "shown_kmh"), [40.0, 80.0, 120.0]);
    assert_eq!(json["sets"][0]["name"], "Set 1");
    assert!(is_close(ratio(&json, 0), 1.0));
    assert_eq!(json["findings"].as_array().unwrap().len(), 0);
}

#[test]
fn speeds_that_are_asked_for_stand_among_the_tested_ones_in_rising_order() {
    let json = shown_as_json(&["--speed", "100,40,7.5"]);
    let speeds = figures(&json, 0, "true_kmh");
    assert_eq!(speeds, [7.5, 40.0, 80.0, 100.0, 120.0]);
}

#[test]
fn the_most_that_may_be_shown_is_what_r39_in_its_original_series_says() {
    // UN R39, original series, 75/443/EEC Annex II 4.4: no less than the true speed, and no more than a
    // tenth of it and 4 km/h above.
    let json = shown_as_json(&["--speed", "50,90,100,130"]);
    let of_r39 = [
        (40.0, 48.0),
        (50.0, 59.0),
        (80.0, 92.0),
        (90.0, 103.0),
        (100.0, 114.0),
        (120.0, 136.0),
        (130.0, 147.0),
    ];
    assert_eq!(entries(&json, 0).len(), of_r39.len());
    let found = figures(&json, 0, "true_kmh")
        .into_iter()
        .zip(figures(&json, 0, "limit_kmh"));
    for ((true_kmh, limit_kmh), most) in found.zip(of_r39) {
        assert!(is_close(true_kmh, most.0), "{true_kmh}, not {}", most.0);
        assert!(is_close(limit_kmh, most.1), "{limit_kmh} at {true_kmh}");
    }
}

#[test]
fn a_shown_100_means_at_least_87_27_true() {
    // Derived: 1.1 × true + 4 = 100 at true = 87.2727.
    let within = |true_kmh: &str| {
        let factor = 100.0 / true_kmh.parse::<f64>().unwrap();
        let json = shown_as_json(&["--signal-ratio", &factor.to_string(), "--speed", true_kmh]);
        let mut entries = entries(&json, 0).iter();
        let at = entries.find(|e| e["true_kmh"].as_f64() == true_kmh.parse().ok());
        let at = at.unwrap();
        assert!(is_close(at["shown_kmh"].as_f64().unwrap(), 100.0), "{at}");
        at["within_r39"].as_bool().unwrap()
    };
    assert!(within("87.28"));
    assert!(!within("87.26"));
    assert!(within("99.999"));
    assert!(!within("100.001"));
}

#[test]
fn what_the_baseline_shows_goes_through_to_the_other_sets() {
    // The tyre that rolls less far turns more often.
    let by_tyre = 1944.0 / 1800.0;
    let show = ["--show", "speedometer", "--as", "json"];
    for (more, first, second) in [
        (&[][..], 1.0, by_tyre * 3.6 / 4.0),
        (&["--signal", "output"], 1.0, by_tyre * 3.6 / 4.0),
        (&["--signal", "wheel"], 1.0, by_tyre),
        (
            &["--signal-ratio", "1.04"],
            1.04,
            1.04 * by_tyre * 3.6 / 4.0,
        ),
        (
            &["--signal-ratio", "1.04", "--signal", "wheel"],
            1.04,
            1.04 * by_tyre,
        ),
    ] {
        let json = json(&[&TWO_SETS[..], &show, more].concat());
        assert!(is_close(ratio(&json, 0), first), "{more:?}");
        assert!(is_close(ratio(&json, 1), second), "{more:?}");
    }
}

#[test]
fn what_reads_low_is_not_within_r39_and_the_verdict_names_rule_and_law() {
    let json = json(&[&TWO_SETS[..], &["--show", "speedometer", "--as", "json"]].concat());
    let is_within: Vec<_> = entries(&json, 1).iter().map(|e| &e["within_r39"]).collect();
    assert_eq!(is_within, [false, false, false]);
    let verdict = json["sets"][1]["verdict"].as_str().unwrap();
    has(
        verdict,
        &[
            "reads low by",
            "UN R39 in its original series",
            "what the law of the place says decides",
        ],
    );
}

#[test]
fn json_is_metric_and_tells_r39_whatever_unit_and_rule_the_project_has() {
    let rule = |text: &str| {
        let technical = format!("baseline: 1, technical: (speedometer: ({text}))");
        changed_project("baseline: 1", &technical)
            .replace("format: 1", "format: 2")
            .replace("units: Kmh", "units: Mph")
    };
    let more = [
        "--show",
        "speedometer",
        "--as",
        "json",
        "--units",
        "mph",
        "--speed",
        "50",
    ];
    let json = json_of(&answer_about(&rule("rule: Cfr393"), &more));
    assert_eq!(figures(&json, 0, "limit_kmh").len(), 4);
    let fifty_miles = figures(&json, 0, "true_kmh")[2];
    assert!(is_close(fifty_miles, 80.4672), "{fifty_miles}");
    let verdict = json["sets"][0]["verdict"].as_str().unwrap();
    has(verdict, &["keeps 49 CFR 393.82"]);
}

#[test]
fn the_speeds_that_a_project_marks_are_shown_and_those_of_the_flags_instead() {
    let text = changed_project("baseline: 1", "baseline: 2");
    let show = ["--show", "speedometer", "--as", "json"];
    let of_file = json_of(&answer_about(&text, &show));
    let speeds = [40.0, 50.0, 80.0, 90.0, 110.0, 120.0];
    assert_eq!(figures(&of_file, 0, "true_kmh"), speeds);
    // The second set is the baseline: it is true, and the first shows more in the ratio of final drives.
    assert!(is_close(ratio(&of_file, 1), 1.0));
    assert!(is_close(ratio(&of_file, 0), 73.0 / 15.0 / (69.0 / 16.0)));
    let by_flags = json_of(&answer_about(
        &text,
        &[&show[..], &["--speed", "60"]].concat(),
    ));
    let speeds = [40.0, 60.0, 80.0, 120.0];
    assert_eq!(figures(&by_flags, 2, "true_kmh"), speeds);
}

/// The three sets, of which the third takes no signal.
fn without_a_signal() -> String {
    let name = "name: \"Six-speed, two output shafts\",";
    let checks = format!("{name} signal: (source: Nowhere),");
    changed_project(name, &checks).replace("format: 1", "format: 2")
}

#[test]
fn a_box_without_a_signal_has_nulls_and_the_usual_ways_instead_of_a_verdict() {
    let text = without_a_signal();
    let json = json_of(&answer_about(
        &text,
        &["--show", "speedometer", "--as", "json"],
    ));
    let set = &json["sets"][2];
    assert!(set["odometer_error_percent"].is_null());
    for entry in entries(&json, 2) {
        assert!(entry["shown_kmh"].is_null() && entry["within_r39"].is_null());
        let most = 1.1 * entry["true_kmh"].as_f64().unwrap() + 4.0;
        assert!(is_close(entry["limit_kmh"].as_f64().unwrap(), most));
    }
    let ways = [
        "no signal",
        "a ring on the differential",
        "a sensor at a wheel",
        "a satellite sender",
    ];
    has(set["verdict"].as_str().unwrap(), &ways);
    for format in ["text", "markdown", "bbcode"] {
        let answer = answer_about(&text, &["--show", "speedometer", "--as", format]);
        has(answer.printed(), &ways);
    }
}

#[test]
fn every_key_stands_in_the_reference_and_every_row_of_it_in_the_output() {
    let mut printed = BTreeSet::new();
    paths(&shown_as_json(&[]), "", &mut printed);
    let everywhere = ["format", "title", "sets", "sets[].name", "findings"];
    let rows = layshaft::sheet::json::FIGURE_KEYS.iter();
    let rows = rows.filter(|(of, _, _)| *of == "speedometer");
    let rows = rows.map(|(_, path, _)| *path).chain(everywhere);
    assert_eq!(printed, rows.map(str::to_owned).collect());
}

#[test]
fn the_texts_print_what_is_shown_and_may_be_shown_with_the_cautions() {
    for (format, row) in [
        ("text", "at 120 km/h  126.0   +6.0    120.0    136.0"),
        ("markdown", "| at 120 km/h | 126.0 | +6.0 | 120.0 | 136.0 |"),
        ("bbcode", "at 120 km/h  126.0   +6.0    120.0    136.0"),
    ] {
        let answer = shown(&["--as", format, "--signal-ratio", "1.05"]);
        let words = [
            row,
            "Odometer counts 5.0 % too much",
            "Keeps UN R39 in its original series up to 120 km/h",
            "measure it before you rely on it",
            "What the law of the place says decides",
            "Changing down",
        ];
        has(answer.printed(), &words);
    }
}

#[test]
fn in_miles_every_speed_is_told_in_miles() {
    let mph = shown(&["--units", "mph", "--speed", "70"]);
    let rows = [
        "at 40 km/h (24.9 mph)",
        "at 70 mph ",
        "most\n",
        "up to 74.6 mph",
    ];
    has(mph.printed(), &rows);
    let seventy = mph.printed().lines().find(|line| line.starts_with("at 70"));
    // A tenth of the speed, and 4 km/h.
    has(seventy.unwrap(), &["70.0", "79.5"]);
}

#[test]
fn csv_holds_the_figures_to_fifteen_digits_with_either_decimal_mark() {
    let more = ["--as", "csv", "--signal-ratio", "1.05", "--speed", "77"];
    let csv = shown(&more);
    let lines: Vec<&str> = csv.printed().lines().collect();
    let head = "set,name,part,row,shown (km/h),above true (km/h),least allowed (km/h),most allowed (km/h),";
    assert!(lines[0].starts_with(head), "{}", lines[0]);
    let row = lines.iter().find(|line| line.contains("at 77 km/h"));
    let row = row.unwrap();
    assert!(
        row.starts_with("1,Set 1,Shown speed,at 77 km/h,80.85,3.85,77,88.7,"),
        "{row}"
    );
    let comma = shown(&[&more[..], &["--decimal", "comma"]].concat());
    has(comma.printed(), &["at 77 km/h;80,85;3,85;77;88,7;"]);
}

#[test]
fn what_cannot_be_is_refused_in_a_sentence() {
    for (more, word) in [
        (
            &["--signal", "axle"][..],
            "--signal is output or wheel, not \"axle\"",
        ),
        (
            &["--signal-ratio", "3"],
            "--signal-ratio: what is shown over what is true must be between 0.5 and 2",
        ),
        (&["--signal-ratio", "0"], "between 0.5 and 2"),
        (&["--signal-ratio", "-1"], "--signal-ratio"),
        (
            &["--signal-ratio", "x"],
            "--signal-ratio: \"x\" is not a number",
        ),
        (&["--signal-ratio"], "--signal-ratio needs a value"),
        (
            &["--signal", "wheel", "--signal", "output"],
            "--signal is given twice",
        ),
        (&["--speed", "2000"], "--speed"),
    ] {
        let answer = shown(more);
        assert!(answer.sentence().contains(word), "{}", answer.stderr);
    }
    let word = answer_to_one_set("table", &["--show", "speedometers"]);
    assert!(word.sentence().contains("speedometer"), "{}", word.stderr);
    for flag in [["--signal", "wheel"], ["--signal-ratio", "1.1"]] {
        let about = answer_about(&without_a_signal(), &flag);
        let word = "describes a gear set without a file";
        assert!(about.sentence().contains(word), "{}", about.stderr);
        let check = answer([&["check", "a.ron"], &flag[..]].concat());
        assert!(check.sentence().contains("does not go"), "{}", check.stderr);
    }
}
