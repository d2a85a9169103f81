//! Does `layshaft chart` write the picture that was asked for, whole, or one sentence and nothing?

use super::{
    ONE_SET, about, answer, answer_to_one_set, assert_is_one_sentence, changed_project,
    program_answer, three_sets,
};
use image::RgbaImage;
use std::ffi::OsString;
use std::path::Path;

const SIGNATURE: &[u8] = b"\x89PNG\r\n\x1a\n";

fn decoded(bytes: &[u8]) -> RgbaImage {
    assert!(bytes.starts_with(SIGNATURE));
    image::load_from_memory(bytes).unwrap().into_rgba8()
}

/// The picture of the three sets with more flags, by way of a file.
fn picture(more: &[&str]) -> RgbaImage {
    picture_of(&three_sets(), more)
}

fn picture_of(project: &Path, more: &[&str]) -> RgbaImage {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out.png");
    let mut arguments = about("chart", project, more);
    arguments.extend([OsString::from("-o"), out.clone().into()]);
    let answer = answer(arguments);
    assert_eq!(answer.printed(), "");
    assert_eq!(answer.stderr, "");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
    decoded(&std::fs::read(&out).unwrap())
}

#[test]
fn the_picture_is_1600_pixels_wide_unless_another_width_is_wanted() {
    let usual = picture(&[]);
    assert_eq!(usual.width(), 1600);
    assert!(usual.height() > 1600);
    for width in ["800", "4000"] {
        let other = picture(&["--width", width]);
        assert_eq!(other.width().to_string(), width);
        let ratio = |p: &RgbaImage| f64::from(p.height()) / f64::from(p.width());
        assert!((ratio(&other) - ratio(&usual)).abs() < 0.02);
    }
}

#[test]
fn the_theme_is_that_of_the_flag() {
    let corner = |theme| {
        picture(&["--theme", theme, "--width", "800"])
            .get_pixel(0, 0)
            .0
    };
    assert_eq!(corner("light"), [255, 255, 255, 255]);
    assert!(corner("dark")[..3].iter().all(|level| *level < 40));
}

#[test]
fn the_picture_is_about_what_is_to_be_shown() {
    let picture = |more: &[&str]| picture(&[&["--width", "800"], more].concat());
    let usual = picture(&[]);
    let speed = picture(&["--show", "speed"]);
    let steps = picture(&["--show", "steps"]);
    assert!(usual == speed);
    assert!(usual != steps);
    // The table and all else is the same, but that steps have no drops of which something is said.
    let usual = picture(&["--drops", "none"]);
    assert!(steps.height() >= usual.height());
}

#[test]
fn what_is_left_out_makes_the_picture_lower() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("noted.ron");
    let note = "note: \"Heard a whine in third.\",\n    units: Kmh,";
    let text = changed_project("units: Kmh,", note);
    std::fs::write(&file, text).unwrap();
    let height = |more: &[&str]| picture_of(&file, &[&["--width", "800"], more].concat()).height();
    let whole = height(&[]);
    let (bare, noteless) = (height(&["--no-table"]), height(&["--no-note"]));
    assert!(bare < whole && noteless < whole);
    assert!(height(&["--no-table", "--no-note"]) < bare);
    assert!(height(&["--sets", "1,3"]) < whole);
    assert!(height(&["--sets", "2"]) < height(&["--sets", "1,3"]));
    assert_eq!(height(&["--sets", "1 2 3"]), whole);
    assert_eq!(height(&["--sets", "3,1,3"]), height(&["--sets", "1,3"]));
}

#[test]
fn a_hidden_set_is_shown_where_it_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("hidden.ron");
    let text = std::fs::read_to_string(three_sets()).unwrap();
    std::fs::write(&file, text.replace("visible: true", "visible: false")).unwrap();
    let out = folder.path().join("out.png");
    let mut arguments = about("chart", &file, &["-o"]);
    arguments.push(out.clone().into());
    let refused = answer(arguments);
    assert!(refused.sentence().contains("no gear set is chosen"));
    assert!(!out.exists());
    assert!(picture_of(&file, &["--sets", "1"]) == picture(&["--sets", "1"]));
}

#[test]
fn the_drops_are_those_of_the_set_that_is_named() {
    let with = |more: &[&str]| picture(&[&["--width", "800"], more].concat());
    let [usual, all, none] = [&[][..], &["--drops", "all"], &["--drops", "none"]].map(with);
    assert!(usual != all && all != none && usual != none);
    assert!(
        usual == with(&["--drops", "2"]),
        "the first that is compared"
    );
    assert!(usual != with(&["--drops", "1"]));
    let of_two = with(&["--sets", "1,2"]);
    assert!(of_two == with(&["--sets", "1,2", "--drops", "all"]));
    let unseen = about(
        "chart",
        &three_sets(),
        &["--sets", "1,2", "--drops", "3", "-o", "-"],
    );
    let refused = answer(unseen);
    assert!(
        refused.sentence().contains("does not show"),
        "{}",
        refused.stderr
    );
}

#[test]
fn paper_has_its_proportions() {
    for (paper, height_over_width) in [("a4", 297.0 / 210.0), ("letter", 11.0 / 8.5)] {
        let page = picture(&["--page", paper]);
        let ratio = f64::from(page.height()) / f64::from(page.width());
        assert!((ratio - height_over_width).abs() < 0.001, "{paper}");
    }
}

#[test]
fn marked_speeds_of_the_flags_are_drawn_instead_of_those_of_the_file() {
    let usual = picture(&["--width", "800"]);
    let marked = picture(&["--width", "800", "--speed", "100", "--rpm", "2500"]);
    assert!(usual != marked);
    assert!(
        usual
            == picture(&[
                "--width",
                "800",
                "--speed",
                "50,90,110",
                "--rpm",
                "2000 3000"
            ])
    );
}

#[test]
fn a_set_by_flags_gives_a_picture_on_standard_output() {
    let output = program_answer([&["chart"], &ONE_SET[..], &["-o", "-"]].concat());
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stderr.is_empty());
    assert_eq!(decoded(&output.stdout).width(), 1600);
    assert!(output.stdout.len() < 1_000_000);
    let again = program_answer([&["chart"], &ONE_SET[..], &["-o", "-"]].concat());
    assert!(output.stdout == again.stdout, "the same bytes twice");
}

#[test]
fn the_program_needs_no_display() {
    let mut program = super::program();
    program.args([&["chart"], &ONE_SET[..], &["-o", "-"]].concat());
    for variable in ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET", "HOME"] {
        program.env_remove(variable);
    }
    let output = program.output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    decoded(&output.stdout);
}

/// What is wrong beside a complete set, and what the sentence must speak of.
const WRONG: &[(&[&str], &str)] = &[
    (&[], "-o OUT.png"),
    (&["-o", "-", "-o", "-"], "-o is given twice"),
    (&["-o"], "-o needs a value"),
    (&["-o", ""], "no file name"),
    (&["-o", "/"], "folder"),
    (&["-o", "/no/such/folder/a.png"], "no such folder"),
    (
        &["-o", "-", "--width", "799"],
        "800 to 4000 pixels wide, not 799",
    ),
    (&["-o", "-", "--width", "4001"], "not 4001"),
    (&["-o", "-", "--width", "0"], "800 to 4000"),
    (
        &["-o", "-", "--width", "-5"],
        "\"-5\" is not a whole number",
    ),
    (&["-o", "-", "--width", "1600.5"], "whole number"),
    (&["-o", "-", "--width", "wide"], "\"wide\""),
    (
        &["-o", "-", "--width", "99999999999999999999999"],
        "whole number",
    ),
    (&["-o", "-", "--width", ""], "\"\""),
    (
        &["-o", "-", "--width", "900", "--width", "900"],
        "--width is given twice",
    ),
    (
        &["-o", "-", "--theme", "blue"],
        "--theme is light or dark, not \"blue\"",
    ),
    (
        &["-o", "-", "--theme", "dark", "--page", "a4"],
        "--theme goes with a picture",
    ),
    (&["-o", "-", "--page", "a5"], "--page is a4 or letter"),
    (&["-o", "-", "--page", "A4"], "not \"A4\""),
    (
        &["-o", "-", "--show", "power"],
        "--show is speed, steps, effort, run, revs, distance, cruise or speedometer",
    ),
    (
        &["-o", "-", "--show", "steps", "--page", "a4"],
        "--show goes with a picture",
    ),
    (&["-o", "-", "--drops", "some"], "--drops is all, none or 1"),
    (&["-o", "-", "--drops", "2"], "--drops is all, none or 1"),
    (
        &["-o", "-", "--drops", "all", "--page", "a4"],
        "--drops goes with a picture",
    ),
    (
        &["-o", "-", "--drops", "all", "--show", "steps"],
        "--drops goes with --show speed",
    ),
    (&["-o", "-", "--sets", "2"], "there is only one"),
    (&["-o", "-", "--sets", "0"], "\"0\""),
    (&["-o", "-", "--sets", ""], "\"\""),
    (&["-o", "-", "--sets", ","], "\"\""),
    (&["-o", "-", "--sets", "1,,1"], "\"\""),
    (&["-o", "-", "--sets", "one"], "\"one\""),
    (&["-o", "-", "--sets", "-1"], "\"-1\""),
    (
        &["-o", "-", "--as", "csv"],
        "--as does not go with layshaft chart",
    ),
    (
        &["-o", "-", "--decimal", "comma"],
        "--decimal does not go with layshaft chart",
    ),
    (&["-o", "-", "--no-table=yes"], "--no-table takes no value"),
    (&["-o", "-", "--speed", "1,2,3,4,5,6,7,8,9"], "--speed"),
    (&["-o", "-", "--rpm", "0"], "between 1 and 30000 rpm"),
    (&["-o", "-", "--speed", "50,,60"], "empty item"),
];

#[test]
fn every_wrong_command_line_has_its_sentence() {
    let mut problems = Vec::new();
    for (more, words) in WRONG {
        let answer = answer_to_one_set("chart", more);
        if !answer.sentence().contains(words) {
            problems.push(format!("{more:?}: {:?} lacks {words:?}", answer.stderr));
        }
    }
    assert!(problems.is_empty(), "{}", problems.join("\n"));
}

#[test]
fn the_flags_of_a_chart_go_with_nothing_else() {
    for flags in [
        &["--width", "900"][..],
        &["--sets", "1"],
        &["--drops", "1"],
        &["--no-note"],
    ] {
        let answer = answer_to_one_set("table", flags);
        assert!(
            answer
                .sentence()
                .contains("does not go with layshaft table")
        );
    }
}

#[test]
fn the_real_program_ends_with_2_and_prints_nothing() {
    let output = program_answer([&["chart"], &ONE_SET[..], &["-o", "-", "--width", "1"]].concat());
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
    assert_is_one_sentence(&String::from_utf8(output.stderr).unwrap());
}

#[test]
fn the_output_is_looked_at_before_the_project_is() {
    let answer = answer(["chart", "nowhere.ron", "-o", "/no/such/folder/a.png"]);
    assert!(answer.sentence().contains("no such folder"));
}

#[test]
fn a_project_is_never_overwritten_by_its_picture() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    let text = std::fs::read_to_string(three_sets()).unwrap();
    std::fs::write(&file, &text).unwrap();
    for name in [file.clone(), folder.path().join("./a.ron")] {
        let mut arguments = about("chart", &file, &["-o"]);
        arguments.push(name.into());
        assert!(
            answer(arguments)
                .sentence()
                .contains("the project file itself")
        );
        assert_eq!(std::fs::read_to_string(&file).unwrap(), text);
    }
}

#[test]
fn a_picture_replaces_the_one_before_whole_or_not_at_all() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out.png");
    std::fs::write(&out, "before").unwrap();
    let shown = out.to_str().unwrap();
    answer_to_one_set("chart", &["-o", shown, "--sets", "7"]).sentence();
    assert_eq!(std::fs::read(&out).unwrap(), b"before");
    assert_eq!(answer_to_one_set("chart", &["-o", shown]).printed(), "");
    decoded(&std::fs::read(&out).unwrap());
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn a_picture_that_cannot_be_written_leaves_nothing_behind() {
    let folder = tempfile::tempdir().unwrap();
    let taken = folder.path().join("taken.png");
    std::fs::create_dir(&taken).unwrap();
    let answer = answer_to_one_set("chart", &["-o", taken.to_str().unwrap()]);
    assert!(answer.sentence().contains("a folder has this name"));
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}
