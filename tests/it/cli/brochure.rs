//! Do the four figures of a brochure give a command a torque curve, marked as built wherever it is read?

use super::{Answer, about, answer, answer_to_one_set, json_of};
use crate::support::close::assert_close;
use serde_json::Value;
use std::fs;

const VEHICLE: &[&str] = &[
    "--mass",
    "1050",
    "--drag-area",
    "0.66",
    "--rolling",
    "0.012",
    "--efficiency",
    "0.9",
    "--displacement",
    "2",
    "--speed",
    "60,90",
];

const BUILT: &str =
    "torque curve is built from the four figures of a brochure, and a guess below and beyond them";

fn with_brochure(figures: &str, more: &[&str]) -> Answer {
    answer_to_one_set("table", &[VEHICLE, &["--brochure", figures], more].concat())
}

fn efforts(figures: &str) -> Value {
    json_of(&with_brochure(
        figures,
        &["--as", "json", "--show", "effort"],
    ))
}

#[test]
fn a_plateau_gives_the_same_effort_from_its_first_engine_speed_to_its_last() {
    // In fourth the engine turns 1750 rpm at 44.27 km/h, and 3000 rpm at 75.89 km/h.
    let table = efforts("320@1750-3000 110@3600");
    let points = table["sets"][0]["gears"][3]["points"].as_array().unwrap();
    let figure = |point: &Value, key: &str| point[key].as_f64().unwrap();
    let on_plateau: Vec<f64> = points
        .iter()
        .filter(|point| (44.4..75.8).contains(&figure(point, "speed_kmh")))
        .map(|point| figure(point, "tractive_effort_n"))
        .collect();
    assert!(on_plateau.len() > 10, "{on_plateau:?}");
    for outside in [points.first(), points.last()] {
        let outside_n = figure(outside.unwrap(), "tractive_effort_n");
        assert!(outside_n < 0.99 * on_plateau[0], "{outside_n}");
    }
    for force_n in &on_plateau {
        assert_close(*force_n, on_plateau[0], 1e-9, "on the plateau");
    }
}

#[test]
fn however_the_figures_are_spelled_they_are_the_same() {
    let spelled = efforts("320@1750-3000 110@3600");
    for figures in [
        "320 @ 1750-3000 110 @ 3600",
        "320@1750–3000, 110@3600",
        "320@1,750 - 3.000  110,0@3 600",
    ] {
        assert_eq!(efforts(figures), spelled, "{figures}");
    }
    assert_eq!(
        efforts("150@4000 80@6000"),
        efforts("150@4000-4000 80@6000")
    );
}

#[test]
fn beside_what_is_for_programs_it_is_said_on_standard_error() {
    let said = format!("set 1: its {BUILT}\n");
    for (show, format, is_said) in [
        ("effort", "json", true),
        ("run", "csv", true),
        ("effort", "text", false),
        ("speed", "json", false),
    ] {
        let more = ["--as", format, "--show", show];
        let answer = with_brochure("150@4000 80@6000", &more);
        assert_eq!(answer.stderr.contains(&said), is_said, "{show} as {format}");
    }
}

#[test]
fn every_text_says_that_the_curve_was_built_and_none_says_it_of_a_measured_one() {
    for show in ["effort", "run", "cruise"] {
        for format in ["text", "markdown", "bbcode"] {
            let more = ["--as", format, "--show", show];
            let built = with_brochure("150@4000 80@6000", &more);
            assert!(built.printed().contains(BUILT), "{show} as {format}");
            let torque = ["--torque", "1000:90 4000:150 6500:105"];
            let measured = answer_to_one_set("table", &[VEHICLE, &torque, &more].concat());
            assert!(!measured.printed().contains("built"), "{show} as {format}");
        }
    }
}

/// A project of two sets, of which the second has an engine that was measured.
const PROJECT: &str = r#"(
    format: 2,
    units: Kmh,
    tyre: RollingCircumferenceMm(1795),
    engine: (redline_rpm: 6500),
    marked_road_speeds_kmh: [60, 90],
    baseline: 1,
    technical: (
        engine: (
            torque: Brochure((
                torque_nm: 150, torque_from_rpm: 4000, torque_to_rpm: 4000, power_kw: 80,
                power_rpm: 6000,
            )),
        ),
        vehicle: (mass_kg: 1050, rolling_coefficient: 0.012, drag_area_m2: 0.66),
    ),
    sets: [
        (
            name: "Built", visible: true, shift_rpm: 6500, final_drives: [Number(3.9)],
            gears: [(label: "1", ratio: Number(3.32))],
        ),
        (
            name: "Measured", visible: true, shift_rpm: 6500, final_drives: [Number(3.9)],
            gears: [(label: "1", ratio: Number(3.32))],
            engine: (torque: Points([(rpm: 1000, torque_nm: 90), (rpm: 6500, torque_nm: 105)])),
        ),
    ],
)
"#;

#[test]
fn a_file_says_it_of_the_set_whose_curve_was_built() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    fs::write(&file, PROJECT).unwrap();
    let answer_of = |more: &[&str]| answer(about("table", &file, more));
    let text = answer_of(&["--show", "effort"]);
    let (first, second) = text.printed().split_once("Measured").unwrap();
    assert!(first.contains(BUILT), "{first}");
    assert!(!second.contains(BUILT), "{second}");
    let by_file = json_of(&answer_of(&["--as", "json", "--show", "effort"]));
    let by_flags = json_of(&answer([
        "table",
        "--as",
        "json",
        "--show",
        "effort",
        "--gears",
        "3.32",
        "--final",
        "3.9",
        "--circumference",
        "1795",
        "--redline",
        "6500",
        "--name",
        "Built",
        "--brochure",
        "150@4000 80@6000",
        "--mass",
        "1050",
        "--rolling",
        "0.012",
        "--drag-area",
        "0.66",
        "--speed",
        "60,90",
    ]));
    assert_eq!(by_flags["sets"][0], by_file["sets"][0]);
}
