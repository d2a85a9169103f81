//! Do `layshaft fit` and `layshaft journal` print what the bench asks for, and refuse in sentences?

use super::{answer, is_close, json_of};
use serde_json::Value;

fn words(line: &str) -> Vec<String> {
    // The part's limits are one word of two numbers.
    let line = line.split('\'').enumerate();
    let words = line.flat_map(|(at, part)| match at % 2 {
        0 => part.split_whitespace().map(str::to_owned).collect(),
        _ => vec![part.to_owned()],
    });
    words.collect()
}

fn json(line: &str) -> Value {
    json_of(&answer(words(&format!("{line} --as json"))))
}

fn text(line: &str) -> String {
    answer(words(line)).printed().to_owned()
}

/// The two numbers of a list.
#[track_caller]
fn assert_pair(json: &Value, expected: [f64; 2]) {
    let list = json.as_array().unwrap();
    assert_eq!(list.len(), 2);
    for (found, expected) in list.iter().zip(expected) {
        assert!(is_close(found.as_f64().unwrap(), expected), "{json}");
    }
}

#[track_caller]
fn assert_number(json: &Value, expected: f64, tolerance: f64) {
    let found = json.as_f64().unwrap();
    assert!((found - expected).abs() <= tolerance, "{found}");
}

#[test]
fn a_shaft_is_fitted_to_a_bearing_of_the_normal_class() {
    // Source: a bearing maker's table of fits: 30–50 mm k6, 2–30 µm.
    let fit = json("fit --diameter 40 --shaft k6");
    assert_eq!(fit.as_object().unwrap().len(), 3);
    assert_pair(&fit["seat_um"], [2.0, 18.0]);
    assert_pair(&fit["part_um"], [-12.0, 0.0]);
    assert_pair(&fit["interference_um"], [2.0, 30.0]);
}

#[test]
fn a_bore_is_fitted_to_the_outside_of_one() {
    let fit = json("fit --diameter 72 --bore K7");
    assert_pair(&fit["seat_um"], [-21.0, 9.0]);
    assert_pair(&fit["part_um"], [-13.0, 0.0]);
    assert_pair(&fit["interference_um"], [-22.0, 21.0]);
}

#[test]
fn a_part_that_is_given_takes_the_place_of_the_bearing() {
    let fit = json("fit --diameter 16 --shaft js6 --part '4.5 −6'");
    assert_pair(&fit["seat_um"], [-5.5, 5.5]);
    assert_pair(&fit["part_um"], [-6.0, 4.5]);
    assert_pair(&fit["interference_um"], [-10.0, 11.5]);
    assert!(text("fit --diameter 16 --shaft js6 --part '4.5 -6'").contains("part as given: "));
}

#[test]
fn a_fit_is_told_with_its_sizes_its_warnings_and_its_cautions() {
    let k6 = text("fit --diameter 39 --shaft k6");
    for says in [
        "shaft k6 of 39 mm: 39.002 to 39.018 mm (+2 to +18 µm)",
        "38.988 to 39.000 mm (−12 to 0 µm)",
        "interference 2 to 30 µm",
        "28.5 µm on a ground seat",
        "more than 27.3 µm, 0.0007 of the diameter",
        "never over an open flame",
        "120 °C at most",
        "press",
        "maker's figures and the local law decide",
    ] {
        assert!(k6.contains(says), "{says}: {k6}");
    }
    assert!(text("fit --diameter 39 --shaft n6").contains("a ring may crack"));
    let loose = text("fit --diameter 72 --bore H7");
    assert!(loose.contains("clearance 0 to 43 µm") && !loose.contains("diameter:"));
    assert!(!loose.contains("ground seat"), "makers say it of shafts");
}

#[test]
fn a_journal_keeps_the_third_and_the_fourth_power() {
    let journal = json("journal --from 40 --to 39");
    assert_eq!(journal.as_object().unwrap().len(), 5);
    assert_number(&journal["strength_share"], 0.9269, 5e-5);
    assert_number(
        &journal["stiffness_share"],
        (39.0_f64 / 40.0).powi(4),
        1e-12,
    );
    for key in ["shear_mpa", "case_left_mm", "stress_factor"] {
        assert!(journal[key].is_null(), "{key}");
    }
}

#[test]
fn a_journal_tells_what_it_is_asked() {
    let line =
        "journal --from 52 --to 50 --torque 1000 --case-depth 1.2 --fillet 2.5 --shoulder 60";
    let journal = json(line);
    assert_number(&journal["shear_mpa"], 40.744, 5e-4);
    assert_number(&journal["case_left_mm"], 0.2, 1e-9);
    // D/d 1.2 and r/d 0.05 (from memory).
    assert_number(&journal["stress_factor"], 1.596, 5e-4);
    let hollow = json(&format!("{line} --bore 30"));
    let share = |outer: f64| outer.powi(4) - 30.0_f64.powi(4);
    assert_number(&hollow["stiffness_share"], share(50.0) / share(52.0), 1e-12);
    assert_number(
        &hollow["strength_share"],
        share(50.0) / share(52.0) * 52.0 / 50.0,
        1e-12,
    );
    assert_number(
        &hollow["shear_mpa"],
        40.744 * 50.0_f64.powi(4) / share(50.0),
        1e-3,
    );
}

#[test]
fn without_a_shoulder_the_shaft_as_it_was_is_the_shoulder() {
    let with = json("journal --from 48 --to 40 --fillet 2 --shoulder 48");
    assert_eq!(json("journal --from 48 --to 40 --fillet 2"), with);
    assert_number(&with["stress_factor"], 1.596, 5e-4);
    let flat = "journal --from 40 --to 39 --fillet 0.5";
    assert!(json(flat)["stress_factor"].is_null(), "outside the table");
    assert!(text(flat).contains("the table has shoulders of 1.09 to 2 times the shaft"));
    let round = text("journal --from 40 --to 36.5 --fillet 18");
    let no_room =
        "fillet of 18 mm at a shoulder of 40 mm: it finds no room, the step is 1.75 mm high";
    assert!(round.contains(no_room), "{round}");
    assert!(json("journal --from 40 --to 36.5 --fillet 18")["stress_factor"].is_null());
    let weak = text("journal --from 40 --to 30");
    assert!(
        weak.contains("only 42.2 % of the strength is left: whether it bears"),
        "{weak}"
    );
}

#[test]
fn a_journal_is_told_with_what_stops_it_and_its_cautions() {
    let told =
        text("journal --from 40 --to 39 --torque 500 --case-depth 0.5 --fillet 1 --shoulder 48");
    for says in [
        "from 40 to 39 mm: 92.7 % of the strength is left there, 90.4 % of the stiffness",
        "shear 42.9 MPa at 500 N·m, nominal at the new diameter",
        "of the hardened layer 0 of 0.5 mm are left",
        "stress factor 1.88 in torsion, from memory",
        "nothing is left of the hardened layer",
        "splines, needle tracks or synchroniser cones",
        "tested for cracks",
        "the key out of the chuck",
    ] {
        assert!(told.contains(says), "{says}: {told}");
    }
    assert!(!text("journal --from 40 --to 39 --case-depth 0.8").contains("nothing is left"));
}

#[test]
fn a_flag_means_what_it_means_to_its_command() {
    let sentence = |line| answer(words(line)).sentence().to_owned();
    assert!(sentence("journal --from").contains("--from needs a value: --from MM"));
    assert!(sentence("table --from").contains("--from SPEED"));
    assert!(sentence("--from 40 fit").contains("--from does not go with layshaft fit"));
    let told = sentence("--bore K7");
    assert!(told.contains("layshaft fit or layshaft journal"), "{told}");
    assert_eq!(
        text("--to 39 --from 40 journal"),
        text("journal --from 40 --to 39")
    );
    for (command, says) in [
        ("journal", "--from MM "),
        ("fit", "--bore CLASS "),
        ("table", "--from SPEED "),
    ] {
        let help = text(&format!("{command} --help"));
        assert!(help.contains(says), "{help}");
        assert!(help.lines().all(|line| line.chars().count() <= 100));
    }
}

/// Command lines that are nonsense, and what their sentence must speak of.
const WRONG: &[(&str, &str)] = &[
    ("fit", "needs --diameter MM"),
    ("fit --diameter 40", "--shaft CLASS or --bore CLASS"),
    ("fit --diameter 40 --shaft k6 --bore K7", "one of them"),
    ("fit --shaft k6", "--diameter MM"),
    (
        "fit --diameter 10 --shaft k6",
        "over 10 mm up to and including 120 mm",
    ),
    (
        "fit --diameter 18 --bore K7",
        "over 18 mm up to and including 120 mm",
    ),
    (
        "fit --diameter 121 --shaft k6 --part '0 -12'",
        "table of shafts",
    ),
    ("fit --diameter 0 --shaft k6", "between 0.5 and 1000 mm"),
    ("fit --diameter wide --shaft k6", "--diameter"),
    (
        "fit --diameter 40 --shaft K6",
        "\"K6\" is no class of a shaft: h6, ",
    ),
    ("fit --diameter 40 --bore k7", "is no class of a bore: H7, "),
    ("fit --diameter 40 --shaft k9", "no class of a shaft"),
    (
        "fit --diameter 40 --shaft k6 --part 5",
        "--part is the upper limit",
    ),
    (
        "fit --diameter 40 --shaft k6 --part '-12 0'",
        "--part is the upper limit",
    ),
    ("fit --diameter 40 --shaft k6 --part '0 x'", "--part"),
    (
        "fit --diameter 40 --shaft k6 --part '0 -2000'",
        "between -1000 and 1000 µm",
    ),
    (
        "fit --diameter 40 --shaft k6 --as csv",
        "--as is text or json",
    ),
    ("fit --diameter 40 --diameter 41 --shaft k6", "given twice"),
    ("fit x.ron", "reads no file"),
    ("journal", "needs --from MM"),
    ("journal --from 40", "needs --to MM"),
    ("journal --from 40 --to 40", "is not below the old one"),
    ("journal --from 40 --to 41", "is not below the old one"),
    ("journal --from 40 --to 39 --bore 39", "leaves no wall"),
    ("journal --from 40 --to 39 --bore K7", "--bore"),
    ("journal --from 40 --to 39 --torque 2500:130", "--torque"),
    (
        "journal --from 40 --to 39 --torque 200000",
        "between 0 and 100000 N·m",
    ),
    (
        "journal --from 40 --to 39 --case-depth 11",
        "between 0 and 10 mm",
    ),
    ("journal --from 40 --to 39 --case-depth -1", "--case-depth"),
    ("journal --from 40 --to 39 --fillet 0", "--fillet"),
    (
        "journal --from 40 --to 39 --shoulder 39",
        "stands above the new diameter, 39 mm",
    ),
    ("journal --from 40 --to inf", "--to"),
    (
        "journal --from 40 --to 39 --diameter 40",
        "does not go with layshaft journal",
    ),
    ("journal x.ron", "reads no file"),
];

#[test]
fn nonsense_gets_one_sentence() {
    for (line, says) in WRONG {
        let answer = answer(words(line));
        let sentence = answer.sentence();
        assert!(sentence.contains(says), "{line}: {sentence}");
    }
}
