//! Does `--pasted-torque` give a command the torque curve of a text, and say how it was read?

use super::{answer, answer_to_one_set, json_of, program};
use crate::support::close::assert_close;
use serde_json::Value;
use std::fs;
use std::io::Write;
use std::process::Stdio;
use tempfile::TempDir;

/// A vehicle for one set.
const VEHICLE: &[&str] = &[
    "--mass",
    "1050",
    "--drag-area",
    "0.66",
    "--rolling",
    "0.012",
    "--efficiency",
    "0.8",
    "--show",
    "effort",
    "--speed",
    "60",
];

const TYPED: &str = "1000:90 2500:130 4500:140 6500:105";

/// A folder with that text in a file, and its path.
fn file_of(text: &str) -> (TempDir, String) {
    let folder = TempDir::new().unwrap();
    let file = folder.path().join("torque.txt");
    fs::write(&file, text).unwrap();
    (folder, file.to_str().unwrap().to_owned())
}

/// The efforts of the vehicle with the curve of that text, and what is said of it.
fn efforts_with(text: &str, more: &[&str]) -> (Value, String) {
    let (_folder, file) = file_of(text);
    let curve = ["--as", "json", "--pasted-torque", &file];
    let answer = answer_to_one_set("table", &[VEHICLE, &curve, more].concat());
    let notes = answer.stderr.lines();
    let notes = notes.filter(|line| line.starts_with("pasted torque: "));
    let notes = notes.collect::<Vec<_>>().join("\n");
    (json_of(&answer), notes)
}

/// The tractive effort in N of a gear at the lowest of its speeds.
fn lowest_effort_n(table: &Value) -> f64 {
    let points = &table["sets"][0]["gears"][2]["points"];
    points[0]["tractive_effort_n"].as_f64().unwrap()
}

/// Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, ex. 1 (from memory), with a set for the efficiency
/// of each gear that is asked for.
#[test]
fn a_published_curve_in_pound_feet_has_its_published_efforts() {
    let text = "Engine speed (rpm)\tTorque (lb-ft)\n800\t120\n1200\t132\n1600\t145\n2000\t160\n2400\t175\n\
                2800\t181\n3200\t190\n3600\t198\n4000\t200\n4400\t201\n4800\t198\n5200\t180\n";
    let (_folder, file) = file_of(text);
    let gears = "4.28 2.79 1.83 1.36 1.00";
    let circumference_mm = (1_609_344.0_f64 / 801.0).to_string();
    let [first, fifth] = [0.966 * 0.99, 0.970 * 0.99].map(|share: f64| share.to_string());
    let answer = answer([
        "table",
        "--as",
        "json",
        "--show",
        "effort",
        "--gears",
        gears,
        "--gears",
        gears,
        "--final",
        "2.92",
        "--circumference",
        &circumference_mm,
        "--redline",
        "5200",
        "--pasted-torque",
        &file,
        "--efficiency",
        &first,
        "--efficiency",
        &fifth,
        "--mass",
        "1500",
        "--road-load",
        "200 0 0.4",
        "--units",
        "mph",
        "--speed",
        "26.4 112.9",
    ]);
    let table = json_of(&answer);
    assert!(!answer.stderr.contains("pasted torque"), "{answer:?}");
    for (set, gear, mph, pounds) in [(0, 0, 26.4, 2290.0), (1, 4, 112.9, 537.0)] {
        let points = table["sets"][set]["gears"][gear]["points"]
            .as_array()
            .unwrap();
        let is_asked =
            |p: &&Value| (p["speed_kmh"].as_f64().unwrap() - mph * 1.609_344).abs() < 1e-9;
        let at = points.iter().find(is_asked).unwrap();
        let found = at["tractive_effort_n"].as_f64().unwrap() / 4.448_221_615_260_5;
        assert!((found - pounds).abs() < 0.5, "{mph} mph: {found} lb");
    }
}

#[test]
fn a_text_gives_what_the_same_points_typed_give() {
    let (pasted, notes) = efforts_with("rpm;Nm\n1000;90\n2500;130\n4500;140\n6500;105\n", &[]);
    let typed = answer_to_one_set(
        "table",
        &[VEHICLE, &["--as", "json", "--torque", TYPED]].concat(),
    );
    assert_eq!(pasted, json_of(&typed));
    assert_eq!(notes, "");
}

#[test]
fn what_was_guessed_or_left_out_is_said_beside_the_result() {
    let text = "rpm boost torque\n1000 0.2 90\n2500 0.9 130\n6500 0.7 105\nran hot after that";
    let (_, notes) = efforts_with(text, &[]);
    for said in [
        "pasted torque: No unit is written: 90 was taken for 90 N·m.",
        "\"boost\" (a column without engine speed, torque or power)",
        "\"ran hot after that\"",
    ] {
        assert!(notes.contains(said), "{said}: {notes}");
    }
}

#[test]
fn losses_that_were_measured_with_the_torque_are_not_taken_again() {
    let text = "1000 rpm 90 Nm\n2500 rpm 130 Nm\n6500 rpm 105 Nm";
    let at = |place| lowest_effort_n(&efforts_with(text, &["--measured-at", place]).0);
    let without = lowest_effort_n(&efforts_with(text, &[]).0);
    assert_close(at("crank"), without, 1e-12, "at the crank");
    assert_close(at("wheels"), without / 0.8, 1e-12, "80 % of it");
}

#[test]
fn a_text_that_speaks_of_the_wheels_asks_where_it_was_measured() {
    let text = "rpm, wheel torque Nm\n1000, 80\n2500, 115\n6500, 95";
    let (_, notes) = efforts_with(text, &[]);
    assert!(notes.contains("speaks of the wheels"), "{notes}");
    assert!(
        notes.contains("Give --measured-at wheels or crank."),
        "{notes}"
    );
    for place in ["crank", "wheels"] {
        let (_, notes) = efforts_with(text, &["--measured-at", place]);
        assert_eq!(notes, "", "{place}");
    }
}

#[test]
fn sets_and_torque_may_each_be_a_text_and_one_of_them_standard_input() {
    let sets = "3.42/1.98/1.36/1.02, axle 3.94, tyres 185/70 R 13, redline 6200";
    let torque = "1000 rpm 90 Nm\n2500 rpm 130 Nm\n6500 rpm 105 Nm";
    let (_first, file_of_sets) = file_of(sets);
    let (_second, file_of_torque) = file_of(torque);
    let printed = |paths: [&str; 2], piped: &str| {
        let mut child = program()
            .args(["table", "--pasted", paths[0], "--pasted-torque", paths[1]])
            .args(VEHICLE)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let mut stdin = child.stdin.take().unwrap();
        stdin.write_all(piped.as_bytes()).unwrap();
        drop(stdin);
        let output = child.wait_with_output().unwrap();
        assert_eq!(output.status.code(), Some(0), "{output:?}");
        String::from_utf8(output.stdout).unwrap()
    };
    let by_sets = printed(["-", &file_of_torque], sets);
    assert!(by_sets.contains("top speed"), "{by_sets}");
    assert_eq!(printed([&file_of_sets, "-"], torque), by_sets);
}

#[test]
fn what_gives_no_curve_is_said_in_one_sentence() {
    for (text, part) in [
        (
            "a dyno day in May",
            "no torque curve was found; paste lines such as",
        ),
        ("rpm power\n1000 9\n2500 34", "write kW, hp or PS behind 9"),
        ("1000 rpm 90 Nm", "only the point at 1000 rpm was found"),
        ("1000:90000 2000:95000", "no point was found that can be"),
    ] {
        let (_folder, file) = file_of(text);
        let answer = answer_to_one_set("table", &["--pasted-torque", &file]);
        let sentence = answer.sentence();
        assert!(sentence.contains("--pasted-torque: "), "{sentence}");
        assert!(sentence.contains(part), "{text:?}: {sentence}");
    }
}

#[test]
fn the_text_is_never_written_over() {
    let text = "1000 rpm 90 Nm\n2500 rpm 130 Nm";
    let (_folder, file) = file_of(text);
    let answer = answer_to_one_set("table", &["--pasted-torque", &file, "-o", &file]);
    let says = "the text that --pasted-torque reads";
    assert!(answer.sentence().contains(says), "{answer:?}");
    assert_eq!(fs::read_to_string(&file).unwrap(), text);
}
