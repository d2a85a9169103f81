//! Does `layshaft check` list what is strange, and tell so by its exit code?

use super::{Answer, about, answer, answer_to_one_set, changed_project, json_of, three_sets};
use layshaft::cli::Outcome;
use layshaft::project::format;
use serde_json::json;
use std::path::Path;

fn checked(text: &str, more: &[&str]) -> Answer {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::write(&file, text).unwrap();
    answer(about("check", &file, more))
}

/// Three sets whose idle is above the redline and whose second set has a hole.
fn strange() -> String {
    changed_project("idle_rpm: 800", "idle_rpm: 5000").replace("1.99", "0.99")
}

#[test]
fn nothing_strange_lists_nothing_and_says_so() {
    let answer = answer(about("check", &three_sets(), &[]));
    assert_eq!(answer.printed(), "");
    assert_eq!(answer.stderr, "no findings\n");
}

#[test]
fn findings_are_listed_with_their_set_and_gear() {
    let answer = checked(&strange(), &[]);
    assert_eq!(answer.outcome, Outcome::Exit(1));
    assert_eq!(answer.stderr, "");
    let lines: Vec<&str> = answer.stdout.lines().collect();
    assert_eq!(
        lines[0],
        "vehicle: idle at 5000 rpm is not below the redline of 4500 rpm"
    );
    assert!(
        lines
            .iter()
            .any(|line| line.starts_with("set 1, gear 2: gear 3 is not taller"))
    );
    assert!(lines.iter().any(|line| line.starts_with("set 2, gear 2: ")));
}

#[test]
fn a_finding_about_a_whole_set_names_no_gear() {
    let answer = checked(&changed_project("215/65 R 16 C", "31x10.50 R 15 LT"), &[]);
    assert_eq!(answer.outcome, Outcome::Exit(1));
    assert!(
        answer
            .stdout
            .starts_with("set 1: The diameter in this size"),
        "{}",
        answer.stdout
    );
}

#[test]
fn json_has_the_same_findings_as_the_table() {
    let check: serde_json::Value =
        serde_json::from_str(&checked(&strange(), &["--as", "json"]).stdout).unwrap();
    assert_eq!(check["format"], 1);
    assert_eq!(check["title"], "Camper van: which gears for the long road?");
    let kinds = check["findings"].as_array().unwrap();
    assert!(kinds.iter().any(|finding| finding["kind"] == "not_falling"));

    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::write(&file, strange()).unwrap();
    let table: serde_json::Value =
        serde_json::from_str(answer(about("table", &file, &["--as", "json"])).printed()).unwrap();
    assert_eq!(check["findings"], table["findings"]);
}

#[test]
fn json_without_findings_is_still_a_document() {
    let answer = answer(about("check", &three_sets(), &["--as", "json"]));
    let json: serde_json::Value = serde_json::from_str(answer.printed()).unwrap();
    assert_eq!(json["findings"], serde_json::Value::Array(Vec::new()));
    assert_eq!(answer.stderr, "no findings\n");
}

#[test]
fn the_table_prints_its_findings_beside_itself_and_leaves_with_0() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::write(&file, strange()).unwrap();
    let table = answer(about("table", &file, &[]));
    assert!(!table.printed().contains("not taller"));
    assert_eq!(table.stderr, checked(&strange(), &[]).stdout);
}

#[test]
fn a_set_by_flags_is_checked_too() {
    let arguments = "check --final 4 --tyre 185/60R14 --redline 6000 --gears";
    let answer = answer(arguments.split(' ').chain(["3 1 0.99"]));
    assert_eq!(answer.outcome, Outcome::Exit(1));
    assert_eq!(
        answer.stdout,
        "set 1, gear 1: the step 1 to 2 of 3.00 is wider than 2\n\
         set 1, gear 2: gears 2 and 3 are nearly the same, 1.0 % apart\n"
    );
    assert_eq!(answer_to_one_set("check", &[]).printed(), "");
}

#[test]
fn what_an_engine_makes_of_a_set_is_found_by_every_command_and_nothing_without_one() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("saves/farm-four-wheel-drive.ron");
    let text = answer(about("check", &file, &[]));
    assert_eq!(text.outcome, Outcome::Exit(1));
    let first = "set 1, gear 5: gear 5 is an overdrive: it ends at 101 km/h on the level, gear 4 at 109 km/h";
    assert_eq!(text.stdout.lines().next(), Some(first));
    let json_text = answer(about("check", &file, &["--as", "json"])).stdout;
    let json: serde_json::Value = serde_json::from_str(&json_text).unwrap();
    let told = &json["findings"][0];
    assert_eq!((&told["set"], &told["gear"]), (&json!(1), &json!("5")));
    assert_eq!(told["kind"], "overdrive");
    for show in ["speed", "effort", "run", "cruise"] {
        let table = answer(about("table", &file, &["--show", show]));
        assert!(table.stderr.ends_with(&text.stdout), "{show}");
        let table = json_of(&answer(about(
            "table",
            &file,
            &["--show", show, "--as", "json"],
        )));
        assert_eq!(table["findings"], json["findings"], "{show}");
    }
    let mut project = format::read(&std::fs::read_to_string(&file).unwrap()).unwrap();
    project.technical.engine.curve = None;
    let without = checked(&format::write(&project).unwrap(), &[]);
    assert_eq!((without.printed(), &*without.stderr), ("", "no findings\n"));
}
