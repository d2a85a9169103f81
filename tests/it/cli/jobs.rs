//! Does `layshaft jobs` print what the window says of the bench, and `layshaft chart --job` its sheets?

use super::{answer, json_of};
use std::path::Path;

/// A project with a job of which the wanted setting is not known.
const FILE: &str = "tests/it/edits/start.ron";

#[test]
fn every_job_is_printed_with_its_state_what_is_typed_and_its_answer() {
    let text = answer(vec!["jobs", FILE]);
    let text = text.printed();
    assert!(
        text.contains("\n\n1 input shaft: to be measured\n"),
        "{text}"
    );
    assert!(text.contains("  Trial shim, mm: 0.508\n"), "{text}");
    assert!(
        text.contains("  - still missing: the wanted setting"),
        "{text}"
    );
    let json = json_of(&answer(vec!["jobs", FILE, "--as", "json"]));
    let job = &json["jobs"][0];
    assert_eq!(job["name"], "input shaft");
    assert_eq!(job["kind"], "Shim for end play or preload");
    assert_eq!(job["state"], "to_measure");
    assert_eq!(job["answer"][0], "still missing: the wanted setting");
}

#[test]
fn a_project_without_jobs_says_so() {
    let answer = answer(vec!["jobs", "saves/camper-van.ron"]);
    assert_eq!(answer.printed(), "");
    assert_eq!(answer.stderr, "no jobs\n");
}

#[test]
fn a_sheet_is_made_without_a_window_and_of_no_other_job() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("sheet.png");
    let out_text = out.to_str().unwrap();
    let made = answer(vec!["chart", FILE, "--job", "1", "-o", out_text]);
    made.printed();
    let [width, height] = size(&out);
    // A4, which is a page for the bench where nothing else is said.
    assert!((f64::from(height) / f64::from(width) - 297.0 / 210.0).abs() < 0.01);
    answer(vec!["chart", FILE, "--job", "plan", "-o", out_text]).printed();
    assert_eq!(size(&out), [width, height]);
    for number in ["0", "2", "x"] {
        let refused = answer(vec!["chart", FILE, "--job", number, "-o", out_text]);
        let sentence = refused.sentence();
        assert!(
            sentence.contains("layshaft jobs FILE lists them"),
            "{sentence}"
        );
    }
}

#[test]
fn the_plan_is_printed_before_the_jobs_with_what_it_comes_to() {
    let golden = "tests/it/format/golden-v2.ron";
    let text = answer(vec!["jobs", golden]);
    let text = text.printed();
    let opening = "what changes\n  Layshaft box, every gear: 1 open, 1 not decided; €120.50 in all, \
                   €120.50 still open\n    mounts: from the donor, altered: weld the bracket · €120.50\n    \
                   breather: not decided\n";
    assert!(text.starts_with(opening), "{text}");
    let json = json_of(&answer(vec!["jobs", golden, "--as", "json"]));
    let plan = &json["plan"];
    assert_eq!(plan["currency"], "€");
    assert_eq!(plan["parts"][0]["sets"][1]["source"], "new");
    assert_eq!(plan["parts"][1]["struck"], true);
    assert_eq!(plan["totals"][0]["open_price"], 120.5);
    assert_eq!(plan["totals"][1]["undecided"], 1);
}

#[test]
fn a_plan_that_is_not_there_has_no_sheet() {
    let refused = answer(vec![
        "chart",
        "saves/camper-van.ron",
        "--job",
        "plan",
        "-o",
        "nowhere.png",
    ]);
    let sentence = refused.sentence();
    assert!(sentence.contains("no plan of what changes"), "{sentence}");
}

fn size(path: &Path) -> [u32; 2] {
    image::image_dimensions(path).unwrap().into()
}
