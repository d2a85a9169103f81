//! Does `--pasted` give a command the sets of a text, and do the flags say what the text does not?

use super::{answer, assert_is_one_sentence, program};
use serde_json::Value;
use std::fs;
use std::io::Write;
use std::process::{Output, Stdio};
use tempfile::TempDir;

const WHOLE: &str = "stock: 3.42/1.98/1.36/1.02\nclose: 2.92/1.95/1.41/1.12\naxle 3.94\n\
                     tyres 185/70 R 13, redline 6,200, shift at 5800";

/// The arguments with the path of a file that holds the text, and the folder that keeps it.
fn pasted<'a>(command: &'a str, text: &str, more: &[&'a str]) -> (TempDir, Vec<String>) {
    let folder = TempDir::new().unwrap();
    let file = folder.path().join("pasted.txt");
    fs::write(&file, text).unwrap();
    let path = file.to_str().unwrap().to_owned();
    let mut arguments = vec![command.to_owned(), "--pasted".to_owned(), path];
    arguments.extend(more.iter().map(|word| (*word).to_owned()));
    (folder, arguments)
}

fn json(text: &str, more: &[&str]) -> Value {
    let more = [&["--as", "json"], more].concat();
    let (_folder, arguments) = pasted("table", text, &more);
    serde_json::from_str(answer(arguments).printed()).unwrap()
}

/// The redline, from what first gear does at it.
fn redline(table: &Value) -> String {
    let first = &table["sets"][0]["gears"][0];
    let figure = |key: &str| first[key].as_f64().unwrap();
    let rpm = 1000.0 * figure("redline_speed_kmh") / figure("speed_per_1000_rpm_kmh");
    format!("{rpm:.0}")
}

#[test]
fn a_text_that_says_all_needs_no_other_flag() {
    let table = json(WHOLE, &[]);
    let names: Vec<&str> = table["sets"]
        .as_array()
        .unwrap()
        .iter()
        .map(|set| set["name"].as_str().unwrap())
        .collect();
    assert_eq!(names, ["stock", "close"]);
    assert_eq!(table["sets"][1]["gears"][0]["ratio"], 2.92);
    assert_eq!(redline(&table), "6200");
    assert_eq!(table["sets"][0]["gears"][0]["shift_rpm"], 5800.0);
}

#[test]
fn flags_say_what_the_text_does_not_and_win_where_both_speak() {
    let flags = ["--redline", "7000", "--tyre", "195/60R14", "--final", "4.5"];
    let table = json("3.42/1.98/1.36/1.02", &flags);
    assert_eq!(redline(&table), "7000");
    assert_eq!(table["sets"][0]["gears"][0]["overall_ratio"], 3.42 * 4.5);

    let table = json(
        WHOLE,
        &["--redline", "6500", "--final", "4.5", "--name", "Mine"],
    );
    assert_eq!(redline(&table), "6500");
    assert_eq!(table["sets"][0]["name"], "Mine");
    assert_eq!(table["sets"][0]["gears"][0]["overall_ratio"], 3.42 * 4.5);
}

#[test]
fn road_speeds_of_a_text_meet_the_tyre_of_the_flags() {
    let text = "km/h per 1000 rpm: 1st 7.5, 2nd 15, 3rd 30; axle 4.0";
    let table = json(text, &["--redline", "6000", "--circumference", "2000"]);
    let third = table["sets"][0]["gears"][2]["overall_ratio"]
        .as_f64()
        .unwrap();
    assert!((third - 4.0).abs() < 1e-9, "{third}");
}

#[test]
fn what_was_guessed_is_said_beside_the_result() {
    let (_folder, arguments) = pasted(
        "table",
        "3.42 1.98 1.36 1.02 3.94",
        &["--redline", "6000", "--tyre", "195/60R14"],
    );
    let answer = answer(arguments);
    answer.printed();
    assert!(
        answer
            .stderr
            .contains("pasted: 3.94 was taken as the final drive")
    );
}

#[test]
fn check_and_chart_take_a_text_too() {
    let (_folder, arguments) = pasted("check", WHOLE, &[]);
    let checked = answer(arguments);
    assert!(!checked.stdout.is_empty() || checked.stderr.contains("no findings"));

    let (folder, mut arguments) = pasted("chart", WHOLE, &[]);
    let picture = folder.path().join("out.png");
    arguments.extend(["-o".to_owned(), picture.to_str().unwrap().to_owned()]);
    answer(arguments).printed();
    assert!(fs::read(picture).unwrap().starts_with(b"\x89PNG"));
}

/// What `table --pasted -` answers to these bytes on standard input.
fn piped(bytes: &[u8]) -> Output {
    let mut child = program()
        .args(["table", "--pasted", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // Who refuses what is too large closes the pipe.
    drop(child.stdin.take().unwrap().write_all(bytes));
    child.wait_with_output().unwrap()
}

#[test]
fn the_text_may_come_from_standard_input() {
    let output = piped(WHOLE.as_bytes());
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    assert!(String::from_utf8(output.stdout).unwrap().contains("close"));
}

#[test]
fn standard_input_is_read_whole_or_not_at_all() {
    let utf_16 = b"\xFF\xFE3\0.\x004\0".to_vec();
    let too_large = b"3.42/1.98/1.36\n".repeat(1_200_000);
    for (bytes, says) in [
        (utf_16, "it is not text in UTF-8"),
        (too_large, "it is larger than 16 MB"),
    ] {
        let output = piped(&bytes);
        assert_eq!(output.status.code(), Some(2), "{says}");
        let sentence = String::from_utf8(output.stderr).unwrap();
        assert_is_one_sentence(&sentence);
        assert!(sentence.contains(says), "{sentence}");
    }
}

#[test]
fn what_is_missing_or_wrong_is_said_in_one_sentence() {
    let vehicle = ["--redline", "6000", "--tyre", "195/60R14"];
    let cases: [(&str, &[&str], &str); 9] = [
        (
            "a box from the scrapyard",
            &vehicle,
            "no gear ratio was found",
        ),
        ("3.42/1.98/1.36", &vehicle, "needs --final"),
        (
            "3.42/1.98/1.36; axle 3.94",
            &vehicle[2..],
            "needs --redline",
        ),
        ("3.42/1.98/1.36; axle 3.94", &vehicle[..2], "needs --tyre"),
        ("0 0 0 -1 -2", &vehicle, "are no gear ratios"),
        (WHOLE, &["--gears", "3 2 1"], "--gears and --pasted"),
        (WHOLE, &["--shift", "5000 5500"], "shift points"),
        (
            WHOLE,
            &["--final", "4", "--final", "5", "--final", "6"],
            "--final is given 3 times",
        ),
        (
            WHOLE,
            &["--name", "a", "--name", "b", "--name", "c"],
            "--name is given 3 times",
        ),
    ];
    for (text, more, part) in cases {
        let (_folder, arguments) = pasted("table", text, more);
        let answer = answer(arguments);
        assert!(
            answer.sentence().contains(part),
            "{text:?} {more:?}: {}",
            answer.stderr
        );
    }
    let missing = answer(["table", "--pasted", "nowhere.txt"]);
    assert!(missing.sentence().contains("no such file: nowhere.txt"));
    let both = answer(["table", "a.ron", "--pasted", "b.txt"]);
    assert!(both.sentence().contains("not both"));
}

#[test]
fn the_text_is_never_written_over() {
    let (folder, mut arguments) = pasted("table", WHOLE, &[]);
    let file = folder.path().join("pasted.txt");
    arguments.extend(["-o".to_owned(), file.to_str().unwrap().to_owned()]);
    let answer = answer(arguments);
    assert!(answer.sentence().contains("the text that --pasted reads"));
    assert_eq!(fs::read_to_string(file).unwrap(), WHOLE);
    assert_is_one_sentence(&answer.stderr);
}

#[test]
fn what_a_command_prints_another_reads() {
    for example in [
        "camper-van",
        "farm-four-wheel-drive",
        "motorcycle",
        "open-two-seater",
    ] {
        let file = format!("{}/saves/{example}.ron", env!("CARGO_MANIFEST_DIR"));
        let printed = |arguments: &[&str]| answer(arguments.to_vec()).printed().to_owned();
        let before = printed(&["table", &file, "--as", "text"]);
        for format in ["text", "markdown", "bbcode", "csv"] {
            let text = printed(&["table", &file, "--as", format]);
            let (_folder, arguments) = pasted("table", &text, &["--as", "text"]);
            let again = answer(arguments).printed().to_owned();
            let figures = |table: &str| {
                let rows = table.lines().filter(|line| {
                    let first = line.split_whitespace().next().unwrap_or_default();
                    first.parse::<u32>().is_ok() || first == "R"
                });
                let shown =
                    rows.map(|row| row.split_whitespace().take(2).collect::<Vec<_>>().join(" "));
                shown.collect::<Vec<_>>()
            };
            assert_eq!(figures(&again), figures(&before), "{example} as {format}");
        }
    }
}

#[test]
fn flags_fill_in_what_a_table_of_the_program_lacks() {
    let table = "| gear | ratio |\n| :--- | ---: |\n| 1 | 3.500 |\n| 2 | 2.000 |\n";
    let flags = ["--redline", "6000", "--tyre", "195/60R14"];
    let (_folder, arguments) = pasted("table", table, &flags);
    assert_is_one_sentence(&answer(arguments).stderr);
    let flags = [&flags[..], &["--final", "4.1", "--name", "Back again"]].concat();
    let read = json(table, &flags);
    assert_eq!(read["sets"][0]["name"], "Back again");
    assert_eq!(read["sets"][0]["gears"][1]["overall_ratio"], 2.0 * 4.1);
}
