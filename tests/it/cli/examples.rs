//! Do the examples that come with the program answer what a reader asks of their engines and vehicles?

use super::answer;
use super::motion::json;
use layshaft::project::examples::EXAMPLES;
use serde_json::Value;

/// The files of the examples, one for each.
const FILES: [&str; EXAMPLES.len()] = [
    "saves/camper-van.ron",
    "saves/open-two-seater.ron",
    "saves/farm-four-wheel-drive.ron",
    "saves/motorcycle.ron",
];

fn of_sets(file: &str, show: &str) -> Vec<Value> {
    let json = json(&["table", file, "--as", "json", "--show", show]);
    json["sets"].as_array().unwrap().clone()
}

fn speed_kmh(of: &Value) -> f64 {
    of["speed_kmh"].as_f64().unwrap()
}

fn marked_speeds_kmh(place: usize) -> Vec<f64> {
    let project = EXAMPLES[place].project().unwrap();
    let marks = project.marked_road_speeds.as_slice().iter();
    marks.map(|speed| speed.kmh()).collect()
}

#[test]
fn every_set_of_every_example_reaches_every_marked_speed_and_tops_it() {
    for (place, file) in FILES.iter().enumerate() {
        let marked = marked_speeds_kmh(place);
        assert!(!marked.is_empty(), "{file}");
        for set in of_sets(file, "run") {
            for kmh in &marked {
                let mut times = set["times"].as_array().unwrap().iter();
                let is_to = |time: &Value| {
                    let to = time["to_kmh"].as_f64().unwrap();
                    time["gear"].is_null() && (to - kmh).abs() < 1e-9
                };
                assert!(times.any(is_to), "{file}: {kmh} km/h in {}", set["name"]);
            }
        }
        for set in of_sets(file, "effort") {
            let top = set["top_speed_kmh"].as_f64().unwrap();
            assert!(marked.iter().all(|kmh| *kmh < top), "{file}: {top} km/h");
        }
    }
}

#[test]
fn every_set_of_every_example_holds_the_fastest_marked_speed_in_top_and_says_what_it_burns() {
    for (place, file) in FILES.iter().enumerate() {
        let fastest = marked_speeds_kmh(place).into_iter().fold(0.0, f64::max);
        for set in of_sets(file, "cruise") {
            let top = set["gears"].as_array().unwrap().last().unwrap();
            let mut cruise = top["cruise"].as_array().unwrap().iter();
            let at = cruise
                .find(|at| (speed_kmh(at) - fastest).abs() < 1e-9)
                .unwrap();
            let burnt = at["fuel_l_per_100km"].as_f64();
            assert!(burnt.is_some(), "{file}: {} at {fastest}", set["name"]);
        }
    }
}

#[test]
fn every_format_has_the_effort_runs_and_steady_speeds_of_every_example() {
    for file in FILES {
        for show in ["effort", "run", "cruise"] {
            for format in ["text", "markdown", "bbcode", "csv", "json"] {
                let arguments = ["table", file, "--show", show, "--as", format];
                let answer = answer(arguments);
                assert!(answer.printed().lines().count() > 10, "{arguments:?}");
            }
        }
    }
}
