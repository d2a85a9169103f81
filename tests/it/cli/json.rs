//! Is the JSON what the reference says, and does it hold the figures of `gearing`?

use super::{about, answer, answer_to_one_set, is_close, json_of, three_sets};
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::project::format;
use layshaft::sheet::json::key_reference;
use serde_json::Value;
use std::collections::BTreeSet;

/// The whole output for figures that can be checked by hand: names, order and layout.
const BY_HAND: &str = r#"{
  "format": 1,
  "title": "",
  "sets": [
    {
      "name": "Bench",
      "spread": 2.0,
      "widest_drop_share": 0.5,
      "tyre": {
        "overall_diameter_mm": null,
        "rolling_circumference_mm": 2000.0,
        "revs_per_km": 500.0,
        "revs_per_mile": 804.672
      },
      "gears": [
        {
          "gear": "1",
          "ratio": 4.0,
          "final_drive": 3.0,
          "overall_ratio": 12.0,
          "step": 2.0,
          "shift_rpm": 5000.0,
          "rpm_after_shift": 2500.0,
          "rpm_drop": 2500.0,
          "speed_per_1000_rpm_kmh": 10.0,
          "idle_speed_kmh": 6.0,
          "redline_speed_kmh": 60.0,
          "speeds": [
            {
              "engine_rpm": 3000.0,
              "speed_kmh": 30.0
            }
          ],
          "engine_speeds": [
            {
              "speed_kmh": 90.0,
              "engine_rpm": 9000.0
            }
          ]
        },
        {
          "gear": "2",
          "ratio": 2.0,
          "final_drive": 3.0,
          "overall_ratio": 6.0,
          "step": null,
          "shift_rpm": null,
          "rpm_after_shift": null,
          "rpm_drop": null,
          "speed_per_1000_rpm_kmh": 20.0,
          "idle_speed_kmh": 12.0,
          "redline_speed_kmh": 120.0,
          "speeds": [
            {
              "engine_rpm": 3000.0,
              "speed_kmh": 60.0
            }
          ],
          "engine_speeds": [
            {
              "speed_kmh": 90.0,
              "engine_rpm": 4500.0
            }
          ]
        }
      ],
      "reverse": {
        "gear": "R",
        "ratio": 4.0,
        "final_drive": 3.0,
        "overall_ratio": 12.0,
        "speed_per_1000_rpm_kmh": 10.0,
        "idle_speed_kmh": 6.0,
        "redline_speed_kmh": 60.0,
        "speeds": [
          {
            "engine_rpm": 3000.0,
            "speed_kmh": 30.0
          }
        ],
        "engine_speeds": [
          {
            "speed_kmh": 90.0,
            "engine_rpm": 9000.0
          }
        ]
      },
      "other_positions": []
    }
  ],
  "findings": [
    {
      "set": 1,
      "gear": "1",
      "kind": "drop_too_low",
      "finding": "changing up 1 to 2 lands at 2500 rpm, below the lowest useful engine speed of 2600 rpm"
    }
  ]
}
"#;

#[test]
fn names_order_and_figures_are_those_of_the_reference() {
    let flags = "table --as json --final 3 --circumference 2000 --redline 6000 --shift 5000 \
                 --reverse 4 --idle 600 --lowest-useful 2600 --rpm 3000 --speed 90 --name Bench --gears";
    let arguments = flags.split_whitespace().chain(["4 2"]);
    assert_eq!(answer(arguments).printed(), BY_HAND);
}

/// A project in which every key occurs with a value.
const RICH: &str = r#"(
    format: 2,
    title: "Everything",
    units: Mph,
    tyre: Size("31x10.50R15LT"),
    engine: (idle_rpm: 5000, lowest_useful_rpm: 1500, redline_rpm: 4500),
    marked_engine_speeds_rpm: [2000, 5000],
    marked_road_speeds_kmh: [80],
    baseline: 1,
    sets: [
        (
            name: "With a crawler", visible: false, shift_rpm: 4600, final_drives: [Number(4.1)],
            gears: [
                (label: "C", ratio: Number(9), crawler: true),
                (label: "1", ratio: Product([Teeth(driven: 44, driving: 29), Number(2)]), shift_rpm: 4000),
                (label: "2", ratio: Number(1.5)),
                (label: "3", ratio: Number(1.6)),
            ],
            reverse: (ratio: Number(4)),
            stages: [(name: "Box", present: 2, positions: [
                (name: "high", ratio: Number(1.1)), (name: "low", ratio: Number(2.3)),
            ], acts_on: EveryGear, shows_others: true)],
        ),
        (
            name: "Measured", visible: true, tyre: RollingCircumferenceMm(2300), shift_rpm: 4000,
            final_drives: [Number(3.9)],
            gears: [(label: "1", ratio: Number(3)), (label: "2", ratio: Number(1))],
        ),
    ],
)
"#;

fn table_of(text: &str, more: &[&str]) -> Value {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::write(&file, text).unwrap();
    json_of(&answer(about("table", &file, more)))
}

/// All paths of an output, `[]` for each entry of a list.
fn paths(value: &Value, path: &str, found: &mut BTreeSet<String>) {
    match value {
        Value::Object(entries) => {
            for (key, value) in entries {
                let path = [path, key].join(if path.is_empty() { "" } else { "." });
                found.insert(path.clone());
                paths(value, &path, found);
            }
        }
        Value::Array(entries) => {
            for entry in entries {
                paths(entry, &format!("{path}[]"), found);
            }
        }
        _ => {}
    }
}

#[test]
fn every_key_stands_in_the_reference_and_every_row_of_it_in_the_output() {
    let mut printed = BTreeSet::new();
    paths(&table_of(RICH, &["--as", "json"]), "", &mut printed);
    let part = |printed: BTreeSet<String>, of: &str| -> (BTreeSet<String>, BTreeSet<String>) {
        printed.into_iter().partition(|path| path.starts_with(of))
    };
    let (of_reverse, printed) = part(printed, "sets[].reverse.");
    let (of_others, printed) = part(printed, "sets[].other_positions[].gears[].");
    let (others_reverse, printed) = part(printed, "sets[].other_positions[].reverse.");
    let rows: BTreeSet<String> = key_reference().into_iter().map(|(path, _)| path).collect();
    assert_eq!(printed, rows);

    // Reverse has the keys of a gear, without those about shifting up.
    let shifts = ["step", "shift_rpm", "rpm_after_shift", "rpm_drop"];
    let of_gears = printed
        .iter()
        .filter_map(|path| path.strip_prefix("sets[].gears[]."));
    let expected: BTreeSet<String> = of_gears
        .filter(|key| !shifts.contains(key))
        .map(|key| format!("sets[].reverse.{key}"))
        .collect();
    assert_eq!(of_reverse, expected);

    // So it is in other positions.
    let keys = |paths: &BTreeSet<String>, of: &str| -> BTreeSet<String> {
        let keys = paths.iter().filter_map(|path| path.strip_prefix(of));
        keys.map(str::to_owned).collect()
    };
    assert_eq!(
        keys(&of_others, "sets[].other_positions[].gears[]."),
        keys(&printed, "sets[].gears[].")
    );
    assert_eq!(
        keys(&others_reverse, "sets[].other_positions[].reverse."),
        keys(&of_reverse, "sets[].reverse.")
    );
}

#[test]
fn a_set_in_another_position_has_the_figures_of_a_set_that_stands_there() {
    let shown = table_of(RICH, &["--as", "json"]);
    let high = RICH.replace("present: 2", "present: 1");
    let high = table_of(&high, &["--as", "json"]);
    let other = &shown["sets"][0]["other_positions"][0];
    assert_eq!(other["position"], "high");
    for key in ["gears", "reverse"] {
        assert_eq!(other[key], high["sets"][0][key]);
    }
    assert_eq!(high["sets"][0]["other_positions"][0]["position"], "low");
    assert_eq!(shown["sets"][1]["other_positions"], serde_json::json!([]));
}

#[test]
fn every_row_of_the_reference_names_the_unit_of_its_key() {
    for (path, meaning) in key_reference() {
        let unit = match path.rsplit_once('_') {
            Some((_, "mm")) => "(mm)",
            Some((_, "kmh")) => "(km/h)",
            Some((_, "rpm")) => "(rpm)",
            _ => "",
        };
        assert!(
            meaning.ends_with(unit) && !meaning.is_empty(),
            "{path}: {meaning}"
        );
    }
}

#[test]
fn the_figures_are_those_of_gearing_to_the_last_digit() {
    for text in [&std::fs::read_to_string(three_sets()).unwrap(), RICH] {
        let json = table_of(text, &["--as", "json"]);
        let project = format::read(text).unwrap();
        let results = ProjectResults::of(&project);
        let is = |value: &Value, number: f64| is_close(value.as_f64().unwrap(), number);
        for (set, expected) in json["sets"].as_array().unwrap().iter().zip(&results.sets) {
            assert!(is(&set["spread"], expected.spread));
            let gears = set["gears"].as_array().unwrap();
            assert_eq!(gears.len(), expected.gears.len());
            for (gear, expected_gear) in gears.iter().zip(&expected.gears) {
                assert_eq!(gear["gear"].as_str(), Some(&*expected_gear.gear.label));
                assert!(is(&gear["overall_ratio"], expected_gear.gear.overall_ratio));
                assert!(is(
                    &gear["redline_speed_kmh"],
                    expected_gear.redline_speed_kmh
                ));
                assert_eq!(gear["step"].is_null(), expected_gear.step.is_none());
                if let Some(up) = expected_gear.upshift {
                    assert!(is(&gear["rpm_after_shift"], up.rpm_after_shift));
                    assert!(is(&gear["rpm_drop"], up.rpm_drop()));
                    assert!(is(&gear["shift_rpm"], up.shift_rpm));
                }
                for (at, rpm) in project.marked_engine_speeds.as_slice().iter().enumerate() {
                    let speed = expected
                        .drivetrain
                        .speed_kmh(&expected_gear.gear, rpm.rpm());
                    assert!(is(&gear["speeds"][at]["speed_kmh"], speed));
                }
                for (at, kmh) in project.marked_road_speeds.as_slice().iter().enumerate() {
                    let rpm = expected
                        .drivetrain
                        .engine_rpm(&expected_gear.gear, kmh.kmh());
                    assert!(is(&gear["engine_speeds"][at]["engine_rpm"], rpm));
                }
            }
        }
        let findings = json["findings"].as_array().unwrap();
        let analysis = Analysis::from(&project);
        assert_eq!(findings.len(), analysis.findings().len());
        for (finding, expected) in findings.iter().zip(analysis.findings()) {
            let number = expected.set.map(|place| place as u64 + 1);
            assert_eq!(finding["set"].as_u64(), number);
            assert_eq!(finding["gear"].as_str(), expected.gear.as_deref());
            assert_eq!(finding["kind"], expected.code);
            assert_eq!(finding["finding"], expected.sentence);
        }
    }
}

#[test]
fn a_crawler_stands_among_the_gears_without_shifts() {
    let json = table_of(RICH, &["--as", "json"]);
    let crawler = &json["sets"][0]["gears"][0];
    assert_eq!(crawler["gear"], "C");
    for key in ["step", "shift_rpm", "rpm_after_shift", "rpm_drop"] {
        assert_eq!(crawler[key], Value::Null, "{key}");
    }
    assert_eq!(json["sets"][1]["reverse"], Value::Null);
}

#[test]
fn findings_about_the_vehicle_have_no_set() {
    let json = table_of(RICH, &["--as", "json"]);
    let idle = &json["findings"][0];
    assert_eq!(idle["kind"], "idle_not_below_redline");
    assert_eq!([&idle["set"], &idle["gear"]], [&Value::Null, &Value::Null]);
}

#[test]
fn json_is_metric_whatever_the_unit() {
    let text = std::fs::read_to_string(three_sets()).unwrap();
    let metric = table_of(&text, &["--as", "json"]);
    assert_eq!(table_of(&text, &["--as", "json", "--units", "mph"]), metric);
    let mph = json_of(&answer_to_one_set(
        "table",
        &["--as", "json", "--speed", "60", "--units", "mph"],
    ));
    let first = &mph["sets"][0]["gears"][0]["engine_speeds"][0];
    assert!(is_close(first["speed_kmh"].as_f64().unwrap(), 96.560_64));
}

#[test]
fn speeds_of_the_flags_replace_those_of_the_file_in_the_order_given() {
    let file = three_sets();
    let more = [
        "--as",
        "json",
        "--rpm",
        "3000, 1000 3000",
        "--speed",
        "40.5",
    ];
    let gear = &json_of(&answer(about("table", &file, &more)))["sets"][0]["gears"][0];
    let rpm = |at: usize| gear["speeds"][at]["engine_rpm"].as_f64();
    assert_eq!(
        [rpm(0), rpm(1), rpm(2), rpm(3)],
        [Some(3000.0), Some(1000.0), Some(3000.0), None]
    );
    assert_eq!(gear["engine_speeds"].as_array().unwrap().len(), 1);
    assert_eq!(gear["engine_speeds"][0]["speed_kmh"], 40.5);

    let gear = &json_of(&answer(about(
        "table",
        &file,
        &["--as", "json", "--rpm", "999"],
    )))["sets"][0]["gears"][0];
    assert_eq!(gear["speeds"].as_array().unwrap().len(), 1);
    assert_eq!(gear["engine_speeds"].as_array().unwrap().len(), 3);
}

#[test]
fn without_speeds_the_lists_are_empty() {
    let json = json_of(&answer_to_one_set("table", &["--as", "json"]));
    let gear = &json["sets"][0]["gears"][0];
    assert_eq!(
        [&gear["speeds"], &gear["engine_speeds"]],
        [&Value::Array(vec![]); 2]
    );
}

#[test]
fn forty_speeds_are_printed_and_forty_one_refused() {
    let list = |count: usize| vec!["1000"; count].join(",");
    let forty = answer_to_one_set("table", &["--as", "json", "--rpm", &list(40)]);
    let json = json_of(&forty);
    assert_eq!(
        json["sets"][0]["gears"][0]["speeds"]
            .as_array()
            .unwrap()
            .len(),
        40
    );
    let more = answer_to_one_set("table", &["--as", "json", "--rpm", &list(41)]);
    assert!(more.sentence().contains("41 speeds"), "{}", more.stderr);
}

#[test]
fn the_ends_of_every_range_stay_numbers() {
    for ratio in ["0.001", "400"] {
        for circumference in ["900", "13000"] {
            let flags = ["table", "--as", "json", "--gears", ratio, "--final", ratio];
            let more = [
                "--idle",
                "1",
                "--circumference",
                circumference,
                "--redline",
                "30000",
                "--reverse",
                ratio,
            ];
            let speeds = ["--rpm", "1 30000", "--speed", "0.001 1000"];
            let answer = answer([&flags[..], &more, &speeds].concat());
            let json = json_of(&answer);
            assert_eq!(answer.printed().matches("null").count(), 6, "{json}");
        }
    }
}
