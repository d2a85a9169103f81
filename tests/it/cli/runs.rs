//! Are runs printed as the laws give them, whatever is asked beside them?

use super::motion::{VEHICLE_A, json, of_a};
use super::{answer, answer_to_one_set};
use layshaft::sheet::json::FIGURE_KEYS;
use serde_json::Value;
use std::collections::BTreeSet;

/// A figure printed with so many decimals.
fn is_printed(found: f64, printed: &str) {
    let decimals = printed.split('.').nth(1).map_or(0, str::len);
    let printed: f64 = printed.parse().unwrap();
    let last = 10_f64.powi(-i32::try_from(decimals).unwrap());
    assert!(
        (found - printed).abs() < 0.51 * last,
        "{found}, not {printed}"
    );
}

/// The entry of a list that goes from one speed to another, in that gear.
pub(super) fn entry<'a>(
    json: &'a Value,
    list: &str,
    between: [f64; 2],
    gear: Option<&str>,
) -> &'a Value {
    let is_it = |entry: &&Value| {
        let is = |key: &str, kmh: f64| (entry[key].as_f64().unwrap() - kmh).abs() < 1e-9;
        let [from, to] = between;
        is("from_kmh", from) && is("to_kmh", to) && entry["gear"].as_str() == gear
    };
    let mut entries = json["sets"][0][list].as_array().unwrap().iter();
    entries
        .find(is_it)
        .unwrap_or_else(|| panic!("{list} {between:?} {gear:?}"))
}

pub(super) fn number(json: &Value, key: &str) -> f64 {
    json[key]
        .as_f64()
        .unwrap_or_else(|| panic!("{key} in {json}"))
}

#[test]
fn the_checked_vehicle_runs_as_two_methods_have_it() {
    let run = of_a(&["--show", "run", "--speed", "50", "--coast", "120:60"]);
    let mph_60 = 96.560_64;
    for (list, to, gear, time_s, distance_m) in [
        ("times", 50.0, None, "3.4614676", "24.1106488"),
        ("times", mph_60, None, "9.0294481", "139.8947045"),
        ("times", 100.0, None, "9.5089626", "152.9859859"),
        ("times_best", mph_60, None, "8.8664708", ""),
        ("times_best", 100.0, None, "9.3459853", ""),
        ("times_staying", mph_60, Some("2"), "8.4564903", ""),
    ] {
        let entry = entry(&run, list, [0.0, to], gear);
        is_printed(number(entry, "time_s"), time_s);
        if !distance_m.is_empty() {
            is_printed(number(entry, "distance_m"), distance_m);
        }
    }
    for (gear, time_s) in [("3", "5.7196715"), ("4", "8.0814330"), ("5", "11.6760571")] {
        let entry = entry(&run, "times", [80.0, 120.0], Some(gear));
        is_printed(number(entry, "time_s"), time_s);
    }
    let set = &run["sets"][0];
    let best = ["7100", "7047.5563", "6901.8787", "6757.3806"];
    for (at, rpm) in best.into_iter().enumerate() {
        is_printed(set["best_shift_rpm"][at].as_f64().unwrap(), rpm);
    }
    let distances = [
        ("400", "16.8231139", "138.2682955"),
        ("402.336", "16.8838783", "138.5255551"),
    ];
    for (at, (distance_m, time_s, kmh)) in distances.into_iter().enumerate() {
        let distance = &set["distances"][at];
        is_printed(number(distance, "distance_m"), distance_m);
        is_printed(number(distance, "time_s"), time_s);
        is_printed(number(distance, "speed_kmh"), kmh);
    }
    is_printed(number(set, "rollout_s"), "0.3885717");
    is_printed(number(&set["coast"], "time_s"), "50.1708720");
    is_printed(number(&set["coast"], "distance_m"), "1193.9084765");
}

#[test]
fn without_a_pause_it_changes_up_where_the_notes_have_it() {
    let pause = VEHICLE_A
        .iter()
        .position(|word| *word == "--pause")
        .unwrap();
    let mut without = VEHICLE_A.to_vec();
    without.drain(pause..pause + 2);
    without.extend(["--show", "run"]);
    let run = json(&without);
    let best = ["7100", "7068.5995", "6937.5883", "6814.6447"];
    for (at, rpm) in best.into_iter().enumerate() {
        is_printed(run["sets"][0]["best_shift_rpm"][at].as_f64().unwrap(), rpm);
    }
}

#[test]
fn times_in_gear_begin_where_it_is_asked_and_end_at_every_target() {
    let run = of_a(&["--show", "run", "--from", "80", "--to", "120,100"]);
    let whole = of_a(&["--show", "run"]);
    let times = run["sets"][0]["times"].as_array().unwrap();
    let targets: Vec<f64> = times.iter().map(|time| number(time, "to_kmh")).collect();
    assert_eq!(targets.len(), 6, "three gears cover each: {run}");
    assert!(
        targets[..3]
            .iter()
            .all(|to| to.to_bits() == 120_f64.to_bits())
    );
    assert_eq!(
        entry(&run, "times", [80.0, 120.0], Some("4")),
        entry(&whole, "times", [80.0, 120.0], Some("4"))
    );
    assert_eq!(run["sets"][0]["times_best"], serde_json::json!([]));
    assert_eq!(run["sets"][0]["distances"], whole["sets"][0]["distances"]);
}

#[test]
fn targets_are_in_the_unit_that_is_asked_for_and_told_in_km_h() {
    let run = of_a(&["--show", "run", "--units", "mph", "--to", "60"]);
    let whole = of_a(&["--show", "run"]);
    assert_eq!(
        entry(&run, "times", [0.0, 96.560_64], None),
        entry(&whole, "times", [0.0, 96.560_64], None)
    );
    let from_rest = run["sets"][0]["times"].as_array().unwrap();
    let from_rest = from_rest.iter().filter(|time| time["gear"].is_null());
    assert_eq!(from_rest.count(), 1, "only what was asked for");
}

#[test]
fn what_is_never_reached_is_left_out_and_no_error() {
    // It starts, and ends in a balance far below 200 km/h.
    let slow = of_a(&[
        "--show", "run", "--to", "50,200", "--grade", "15", "--coast", "120:60",
    ]);
    let times = slow["sets"][0]["times"].as_array().unwrap();
    let from_rest: Vec<f64> = times
        .iter()
        .filter(|time| time["gear"].is_null())
        .map(|time| number(time, "to_kmh"))
        .collect();
    assert_eq!(from_rest, [50.0]);
    assert!(slow["sets"][0]["coast"].is_object());
    // It does not move at all; what was asked beside it is still told.
    let stuck = of_a(&["--show", "run", "--grade", "50", "--coast", "120:60"]);
    let set = &stuck["sets"][0];
    assert_eq!(set["rollout_s"], Value::Null);
    assert_eq!(set["distances"], serde_json::json!([]));
    assert!(number(&set["coast"], "time_s") > 0.0);
    // Downhill it rolls on and gets no slower.
    let rolling = of_a(&["--show", "run", "--grade", "-15", "--coast", "120:60"]);
    assert_eq!(rolling["sets"][0]["coast"], Value::Null);
}

#[test]
fn a_run_that_cannot_be_asked_for_is_refused_with_its_flag() {
    let asked = [VEHICLE_A, &["--show", "run"]].concat();
    for (more, says) in [
        (&["--from", "60"][..], "--from needs --to"),
        (&["--from", "60", "--to", "60"], "--to must be above --from"),
        (
            &["--from", "0", "--to", "60"],
            "--from: a road speed must be between",
        ),
        (&["--to", "0"], "--to: a road speed must be between"),
        (&["--to", "a lot"], "--to holds \"a\""),
        (
            &["--coast", "60:120"],
            "the higher road speed and the lower one",
        ),
        (
            &["--coast", "120"],
            "the higher road speed and the lower one",
        ),
        (&["--coast", "fast:60"], "--coast"),
    ] {
        let answer = answer(asked.iter().chain(more).copied());
        assert!(answer.sentence().contains(says), "{more:?}: {answer:?}");
    }
    for flag in ["--to", "--from", "--coast"] {
        let answer = answer_to_one_set("table", &[flag, "100"]);
        let says = format!("{flag} goes with --show run, not with --show speed");
        assert!(answer.sentence().contains(&says), "{answer:?}");
    }
}

#[test]
fn a_reader_is_told_every_part_of_a_run() {
    let printed = |format: &str, more: &[&str]| {
        let mut arguments = VEHICLE_A.to_vec();
        arguments[2] = format;
        arguments.extend(["--show", "run"]);
        arguments.extend(more);
        answer(arguments).printed().to_owned()
    };
    for format in ["text", "markdown", "bbcode"] {
        let run = printed(format, &["--coast", "120:60"]);
        let words = run.replace('|', " ");
        let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
        for told in [
            "Starts at 2800 rpm. Each change takes 0.4 s. Rolls the first foot in 0.39 s.",
            "2–3 6500 7040",
            "to 60 mph 9.03 140 8.87 8.46 2",
            "to 100 km/h 9.51 153 9.35",
            "400 m 16.82 138",
            "¼ mile 16.88 139",
            "4 8.15 8.08 6.47",
            "120 to 60 km/h 50.17 1194",
            "closed roads",
        ] {
            assert!(words.contains(told), "{format}: {told} in {run}");
        }
    }
    let other = printed("text", &["--gears", "3.32 2.02 1.41 1.07 0.9 0.8"]);
    assert!(other.contains("+1.51 against 5th"), "{other}");
    let csv = printed("csv", &[]);
    let row = csv.lines().find(|line| line.contains(",to 100 km/h,"));
    assert!(row.unwrap().contains(",9.5089626"), "{csv}");
}

/// Every path of an output: `sets[].times[].time_s`.
pub(super) fn paths(json: &Value, at: &str, found: &mut BTreeSet<String>) {
    match json {
        Value::Object(entries) => {
            for (key, value) in entries {
                let path = if at.is_empty() {
                    key.clone()
                } else {
                    format!("{at}.{key}")
                };
                found.insert(path.clone());
                paths(value, &path, found);
            }
        }
        Value::Array(entries) => {
            for entry in entries {
                paths(entry, &format!("{at}[]"), found);
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
    }
}

#[test]
fn every_key_of_motion_stands_in_the_reference_and_every_row_of_it_in_the_output() {
    let everywhere = [
        "format",
        "title",
        "sets",
        "sets[].name",
        "sets[].gears",
        "sets[].gears[].gear",
    ];
    for (show, more) in [
        ("effort", &["--speed", "90"][..]),
        ("run", &["--coast", "120:60"]),
        ("cruise", &["--speed", "90"]),
    ] {
        let mut printed = BTreeSet::new();
        paths(&of_a(&[&["--show", show], more].concat()), "", &mut printed);
        printed.retain(|path| {
            let is_like_times = ["sets[].times_best[]", "sets[].times_staying[]", "findings"];
            !is_like_times.iter().any(|start| path.starts_with(start))
        });
        let rows = FIGURE_KEYS.iter().filter(|(of, _, _)| *of == show);
        let rows = rows.map(|(_, path, _)| *path).chain(everywhere);
        assert_eq!(printed, rows.map(str::to_owned).collect(), "{show}");
    }
    for (_, path, meaning) in FIGURE_KEYS {
        let unit = match path.rsplit_once('_').map(|(_, unit)| unit) {
            Some("kmh") => "(km/h)",
            Some("rpm") => "(rpm)",
            Some("m") => "(m)",
            Some("n") => "(N)",
            Some("kw") => "(kW)",
            _ => "",
        };
        assert!(meaning.ends_with(unit), "{path}: {meaning}");
    }
}

#[test]
fn a_part_without_rows_leaves_no_heading_behind() {
    // Nothing to change up to, and on such a road it does not start.
    let printed = |format: &'static str, more: &[&str]| {
        let mut arguments = VEHICLE_A.to_vec();
        (arguments[2], arguments[4]) = (format, "3.32");
        arguments.extend(["--show", "run", "--grade", "50"]);
        arguments.extend(more);
        answer(arguments).printed().to_owned()
    };
    for format in ["text", "markdown", "bbcode"] {
        let run = printed(format, &[]);
        assert!(run.contains("From rest"), "{format}: {run}");
        for heading in ["Changing up", "Over a distance"] {
            assert!(!run.contains(heading), "{format}: {run}");
        }
        // Where no part has any, no frame stays either.
        let run = printed(format, &["--from", "60", "--to", "100"]);
        for mark in ["[code]", "|", "\n\n\n"] {
            assert!(!run.contains(mark), "{format}: {run}");
        }
    }
}
