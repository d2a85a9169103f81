//! Do `layshaft shim` and `layshaft preload` print what the bench asks for, and refuse in sentences?

use super::{answer, is_close, json_of};

const JOB: [&str; 9] = [
    "shim",
    "--seat",
    "behind",
    "--trial",
    "0.65",
    "--play",
    "0.30",
    "--setting",
    "-0.20,-0.20",
];

fn shim(more: &[&str]) -> super::Answer {
    answer([&JOB[..], more].concat())
}

fn numbers(json: &serde_json::Value) -> Vec<f64> {
    let list = json.as_array().unwrap();
    list.iter().map(|number| number.as_f64().unwrap()).collect()
}

#[test]
fn a_shim_that_fits_is_printed_with_its_setting() {
    let json = json_of(&shim(&["--sizes", "0.65 to 1.40 by 0.05", "--as", "json"]));
    assert_eq!(json.as_object().unwrap().len(), 6);
    assert!(is_close(json["play_mm"].as_f64().unwrap(), 0.30));
    assert!(json["spread_mm"].as_f64().unwrap().abs() < 1e-12);
    let wanted = numbers(&json["wanted_mm"]);
    assert!(is_close(wanted[0], 1.15) && is_close(wanted[1], 1.15));
    assert!(is_close(numbers(&json["shims_mm"])[0], 1.15));
    assert!(is_close(json["setting_mm"].as_f64().unwrap(), -0.20));
    assert_eq!(json["verdict"], "fits");
}

#[test]
fn without_sizes_there_is_no_choice() {
    let json = json_of(&shim(&["--as", "json"]));
    assert!(numbers(&json["shims_mm"]).is_empty());
    assert!(json["setting_mm"].is_null() && json["verdict"].is_null());
}

#[test]
fn what_does_not_fit_is_said_with_the_nearest() {
    let sizes = [
        "--sizes",
        "0.10 0.12 0.15 0.18 0.30 0.40 0.50",
        "--most",
        "2",
    ];
    let job = [
        "shim",
        "--seat",
        "behind",
        "--trial",
        "0",
        "--play",
        "0.53",
        "--setting",
        "0,0",
    ];
    let json = json_of(&answer([&job[..], &sizes, &["--as", "json"]].concat()));
    assert_eq!(json["verdict"], "none_fits");
    assert!(is_close(numbers(&json["shims_mm"]).iter().sum(), 0.52));
    assert!(is_close(json["setting_mm"].as_f64().unwrap(), 0.01));
    let text = answer([&job[..], &sizes].concat());
    let says = "none fits; the nearest is 0.40 + 0.12 mm: clearance 0.01 mm";
    assert!(text.printed().contains(says), "{}", text.printed());
}

#[test]
fn a_play_that_cannot_be_is_no_measurement() {
    let job = [
        "shim",
        "--seat",
        "under",
        "--trial",
        "0.2",
        "--play",
        "0.9",
        "--setting",
        "0.05,0.10",
    ];
    let json = json_of(&answer(
        [&job[..], &["--sizes", "0.5", "--as", "json"]].concat(),
    ));
    assert_eq!(json["verdict"], "no_measurement");
    assert!(numbers(&json["shims_mm"]).is_empty() && json["setting_mm"].is_null());
    let text = answer(job.to_vec());
    assert!(
        text.printed().contains("measure again"),
        "{}",
        text.printed()
    );
}

#[test]
fn the_text_says_the_word_of_the_sign() {
    let text = shim(&["--sizes", "0.65 to 1.40 by 0.05"]);
    let text = text.printed();
    assert!(text.contains("wanted preload 0.20 mm"), "{text}");
    assert!(text.contains("take 1.15 mm: preload 0.20 mm"), "{text}");
    assert!(
        text.contains("with 1.10 mm it would be preload 0.15 mm"),
        "{text}"
    );
    assert!(text.contains("maker's figures decide"), "{text}");
}

#[test]
fn a_torque_is_told_beside_the_band() {
    let pull = [
        "preload",
        "--pull",
        "31.1375513",
        "--radius",
        "228.6",
        "--as",
        "json",
    ];
    let json = json_of(&answer(pull.to_vec()));
    // Source: 9 in × 7 lb = 63 lb·in = 7.118 N·m, an axle service procedure.
    assert!((json["torque_nmm"].as_f64().unwrap() - 7118.0).abs() < 0.5);
    assert!(json["verdict"].is_null());
    let wrench = |band: &str| {
        let reading = [
            "preload",
            "--reading",
            "2",
            "--ratio",
            "4",
            "--before",
            "0.5",
        ];
        let rest = ["--seals", "1", "--band", band, "--as", "json"];
        json_of(&answer([&reading[..], &rest].concat()))
    };
    let within = wrench("5,6");
    assert!(is_close(within["torque_nmm"].as_f64().unwrap(), 5000.0));
    assert_eq!(within["verdict"], "within");
    assert_eq!(wrench("5.1,6")["verdict"], "too_loose");
    assert_eq!(wrench("1,4.9")["verdict"], "too_tight");
    let text = answer(["preload", "--reading", "2", "--band", "1,3"].to_vec());
    assert!(
        text.printed()
            .contains("2.000 N·m, within 1.000 to 3.000 N·m")
    );
}

#[test]
fn nonsense_gets_one_sentence() {
    for (args, says) in [
        (&["shim"][..], "--seat behind or under"),
        (&["shim", "--seat", "on"], "--seat"),
        (
            &[
                "shim",
                "--seat",
                "behind",
                "--trial",
                "1",
                "--play",
                "0.3",
                "--setting",
                "-0.15,-0.20",
            ],
            "lower number first",
        ),
        (
            &[
                "shim",
                "--seat",
                "behind",
                "--trial",
                "1",
                "--play",
                " ",
                "--setting",
                "0,0",
            ],
            "--play",
        ),
        (
            &[
                "shim",
                "--seat",
                "behind",
                "--trial",
                "60",
                "--play",
                "0.3",
                "--setting",
                "0,0",
            ],
            "between 0 and 50 mm",
        ),
        (&["shim", "x.ron"], "reads no file"),
        (&["preload"], "--pull and --radius"),
        (&["preload", "--pull", "7"], "--pull and --radius"),
        (
            &["preload", "--reading", "1", "--wrench", "200"],
            "--adapter",
        ),
        (
            &["preload", "--reading", "1", "--seals", "2"],
            "measure again",
        ),
        (&["preload", "--reading", "1", "--band", "2"], "LOW,HIGH"),
    ] {
        let answer = answer(args.to_vec());
        let sentence = answer.sentence();
        assert!(sentence.contains(says), "{args:?}: {sentence}");
    }
    for sizes in ["", "0.5 to 0.1 by 0.1", "thin", "0.1 to 50 by 0.001"] {
        let answer = shim(&["--sizes", sizes]);
        assert!(
            answer.sentence().contains("--sizes"),
            "{}",
            answer.sentence()
        );
    }
    assert!(
        shim(&["--sizes", "1", "--most", "11"])
            .sentence()
            .contains("--most")
    );
}
