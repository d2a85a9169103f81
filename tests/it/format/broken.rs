//! Is every broken file answered with one sentence, and with the place where it is broken?

use super::GOLDEN;
use layshaft::project::format::{self, FormatError, Place};

/// Fails unless an answer is one line of fewer than 300 characters.
#[track_caller]
pub(super) fn assert_is_a_sentence(answer: &str) {
    assert_eq!(unlike_a_sentence(answer), None);
}

fn unlike_a_sentence(answer: &str) -> Option<String> {
    let is_one_line = !answer.contains(char::is_control);
    let is_short = (10..300).contains(&answer.chars().count());
    (!is_one_line || !is_short).then(|| format!("no short sentence: {answer:?}"))
}

/// Where an answer has to point.
#[derive(Debug, Clone, Copy)]
enum At {
    /// At the first of these letters, at one of them or right behind them.
    Text(&'static str),
    /// At the first of these letters, which open the value that does not fit the others.
    Value(&'static str),
    /// At the last line.
    End,
    /// At the first line.
    Start,
    /// At no place: the file is not broken, only not for this program.
    Nowhere,
}

/// A text that is no project of this program, and what has to be said of it.
struct Broken {
    text: String,
    at: At,
    says: Vec<&'static str>,
}

/// The golden file with `from` turned into `to`, at which the answer has to point.
fn changed(from: &str, to: &'static str, says: &[&'static str]) -> Broken {
    changed_at(At::Text(to), from, to, says)
}

/// The golden file with `from` turned into `to`, the answer pointing elsewhere.
fn changed_at(at: At, from: &str, to: &str, says: &[&'static str]) -> Broken {
    assert!(GOLDEN.contains(from), "the golden file has no {from}");
    whole(at, GOLDEN.replacen(from, to, 1), says)
}

/// A text of its own.
fn whole(at: At, text: impl Into<String>, says: &[&'static str]) -> Broken {
    let (text, says) = (text.into(), says.to_vec());
    Broken { text, at, says }
}

/// Fails with everything that is wrong with any of the answers.
#[track_caller]
fn assert_answered(rows: &[Broken]) {
    let failures: Vec<String> = rows.iter().flat_map(failures).collect();
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

fn failures(row: &Broken) -> Vec<String> {
    let Err(error) = format::read(&row.text) else {
        return vec![format!("read without complaint: {:?}", row.at)];
    };
    let answer = error.to_string();
    let unsaid = row.says.iter().filter(|part| !answer.contains(**part));
    let unsaid = unsaid.map(|part| format!("\"{part}\" is not said: {answer}"));
    let astray = (!points(place(&error), row.at, &row.text))
        .then(|| format!("points elsewhere than {:?}: {answer}", row.at));
    unsaid
        .chain(astray)
        .chain(unlike_a_sentence(&answer))
        .collect()
}

fn place(error: &FormatError) -> Option<&Place> {
    match error {
        FormatError::NotAProject(place) | FormatError::Broken(place) => Some(place),
        FormatError::Newer(_) | FormatError::Unknown(_) => None,
    }
}

/// Whether a place is the one that the answer has to point at.
fn points(place: Option<&Place>, at: At, text: &str) -> bool {
    let (Some(place), false) = (place, matches!(at, At::Nowhere)) else {
        return place.is_none() && matches!(at, At::Nowhere);
    };
    let points_at = |letters: &str, reach: usize| {
        let start = text.find(letters).expect("the letters are in the text");
        let start = text[..start].chars().count();
        (start..=start + reach).contains(&offset(text, place))
    };
    match at {
        At::Text(letters) => points_at(letters, letters.chars().count()),
        At::Value(letters) => points_at(letters, 0),
        At::End => place.line + 1 >= text.split('\n').count(),
        At::Start => place.line == 1,
        At::Nowhere => false,
    }
}

/// How many characters stand before a place.
fn offset(text: &str, place: &Place) -> usize {
    let before = text.split('\n').take(place.line - 1);
    let before: usize = before.map(|line| line.chars().count() + 1).sum();
    before + place.column - 1
}

#[test]
fn an_engine_speed_or_road_speed_that_cannot_be_is_pointed_at() {
    let redline = "redline_rpm: 5200";
    let range = ["an engine speed", "between 1 and 30000 rpm"];
    assert_answered(&[
        changed(redline, "redline_rpm: 1e400", &range).saying("not 1e400"),
        changed(redline, "redline_rpm: 1_0e999", &range).saying("not 1_0e999"),
        changed(redline, "redline_rpm: 5200.5e9 /* 5200 */", &range).saying("not 5200.5e9"),
        changed(redline, "redline_rpm: NaN", &range),
        changed(redline, "redline_rpm: inf", &range),
        changed(redline, "redline_rpm: -inf", &range),
        changed(redline, "redline_rpm: -5200", &range),
        changed(redline, "redline_rpm: 0", &range),
        changed(redline, "redline_rpm: 30000.5", &range),
        changed(redline, "redline_rpm: 1e300", &range),
        changed(redline, "redline_rpm: \"5200\"", &["a number", "\"5200\""]),
        changed(redline, "redline_rpm: 5,2", &[]),
        changed(" 0.5,", " 0.0,", &["a road speed", "between 0.001"]),
        changed("112.65408,", "1001,", &["a road speed", "1000 km/h"]),
        changed("112.65408,", "1e400,", &["a road speed", "not 1e400"]),
    ]);
}

#[test]
fn a_number_that_cannot_be_is_pointed_at_where_it_begins() {
    let at = |value, from: &str, to: &str| changed_at(At::Value(value), from, to, &["not 1e400"]);
    assert_answered(&[
        at("1e400", "redline_rpm: 5200", "redline_rpm: 1e400"),
        at("1e400", "idle_rpm: 800", "idle_rpm: 1e400"),
        at("1e400", "3000.5,", "1e400,"),
        at("1e400", "112.65408,", "1e400,"),
        at("1e400", "Number(0.756)", "Number(1e400)"),
        at("1e400", "Number(2.25)", "Number(1e400)"),
        at(
            "1e400",
            "overall_diameter_mm: 686.5",
            "overall_diameter_mm: 1e400",
        ),
        at("1e400", "RevsPerMile(682)", "RevsPerMile(1e400)"),
        at("1e400", "shift_rpm: 4000", "shift_rpm: 1e400"),
    ]);
}

#[test]
fn a_ratio_that_cannot_be_is_pointed_at() {
    let top = "Number(0.756)";
    let range = ["a ratio", "0.001", "400"];
    let teeth = ["teeth", "1 to 999"];
    let product = "Product([Teeth(driven: 44, driving: 29), Number(2.25)])";
    assert_answered(&[
        changed(top, "Number(500)", &["a ratio", "0.001", "400", "500"]),
        changed(top, "Number(0)", &range),
        changed(top, "Number(NaN)", &range),
        changed(top, "Number(1e400)", &range).saying("not 1e400"),
        changed(top, "Number(5e-324)", &range),
        changed(top, "Number(-0.756)", &range),
        changed(top, "Number(\"0.756\")", &[]),
        changed(top, "0.756", &["0.756"]),
        changed(top, "Numer(0.756)", &["Numer", "Number"]),
        changed(
            product,
            "Product([Number(500), Number(0.01)])",
            &["a ratio", "500"],
        ),
        changed(
            product,
            "Product([Number(2), Number(1e400)])",
            &["a ratio", "not 1e400"],
        ),
        changed(
            product,
            "Product([Number(399), Number(399)])",
            &["a ratio", "159201"],
        ),
        changed(product, "Product([])", &["a ratio"]),
        changed("driving: 17", "driving: 0", &teeth),
        changed("driven: 38", "driven: 1000", &teeth).reaching("driven: 1000, driving: 17"),
        changed("driven: 38", "driven: 70000", &[]),
        changed("driven: 38", "driven: 38.5", &[]),
        changed("driven: 38", "driven: -38", &[]),
        changed("driven: 38, driving: 17", "driven: 38", &["driving"]),
    ]);
}

#[test]
fn a_tyre_that_cannot_be_is_pointed_at() {
    let size = "215/65 R 16 C";
    let diameter = "overall_diameter_mm: 686.5,";
    let diameter_block =
        "overall_diameter_mm: 5,\n                construction: CrossPly,\n            ))";
    assert_answered(&[
        changed(size, "9999/65 R 16", &["width", "9999"]),
        changed(size, "banana", &["banana", "not a tyre size"]),
        changed(size, "215 R 16 C", &["aspect ratio"]),
        changed(
            "Size(\"215/65 R 16 C\")",
            "Size(\"\")",
            &["not a tyre size"],
        ),
        changed(
            diameter,
            "overall_diameter_mm: 5,",
            &["overall diameter", "300", "5"],
        )
        .reaching(diameter_block),
        changed("CrossPly", "Crossply", &["Crossply", "CrossPly"]),
        changed(
            "Mm(1936.75)",
            "Mm(899)",
            &["rolling circumference", "900", "899"],
        ),
        changed("RevsPerMile(682)", "RevsPerMile(0)", &["per mile", "123.8"]),
        changed("RevsPerMile(682)", "RevsPerKm(NaN)", &["per km", "76.93"]),
        changed("RevsPerMile(682)", "RevsPerKm(1e400)", &["not 1e400"]),
        changed(diameter, "overall_diameter_mm: 1e400,", &["not 1e400"]),
        changed(
            "RevsPerMile(682)",
            "RevsPerLeague(682)",
            &["RevsPerLeague", "RevsPerMile"],
        ),
        changed("Size(\"215/65 R 16 C\")", "\"215/65 R 16 C\"", &[]),
    ]);
}

#[test]
fn a_name_or_note_that_cannot_be_is_pointed_at() {
    let hidden = "Hidden, one gear";
    assert_answered(&[
        changed(hidden, "", &["a name", "empty"]).reaching("\"\",\n            visible: false"),
        changed(hidden, "two\\nlines", &["a name", "line"]),
        changed("\"C\"", "\"crawlergear\"", &["label", "8", "crawlergear"]),
        changed("1 → 5.", "1 \\u{7} 5.", &["the note", "control character"]),
        changed("Every corner", "Every\\q corner", &["escape"]),
        changed("title: \"Every", "title: 'Every", &[]),
    ]);
}

#[test]
fn what_is_not_spelled_as_ron_is_pointed_at() {
    assert_answered(&[
        changed_at(At::Text("tyre:"), "units: Mph,", "units: Mph", &["comma"]),
        changed("\"C\", ratio", "\"C\" ratio", &["comma"]),
        changed("units: Mph", "units Mph", &["colon"]),
        changed("units: Mph", "units = Mph", &["colon"]),
        changed("engine: (", "engine: [", &[]).reaching("engine: [\n        idle_rpm:"),
        changed("visible: true", "visible: yes", &[]),
        changed_at(At::Text("date: \""), "format 1\"", "format 1", &[]),
        whole(At::End, format!("{GOLDEN}/* and"), &["comment"]),
        whole(At::End, format!("{GOLDEN}and more"), &[]),
        whole(At::Text(")\n("), format!("{GOLDEN}{GOLDEN}"), &[]),
    ]);
}

#[test]
fn a_key_or_variant_that_is_not_known_is_named() {
    assert_answered(&[
        changed("units: Mph", "colour: 3, units: Mph", &["colour"]),
        changed(
            "label: \"C\"",
            "colour: 3, label: \"C\"",
            &["colour", "label"],
        ),
        changed(
            "redline_rpm: 5200",
            "redline: 5200",
            &["redline", "redline_rpm"],
        ),
        changed("units: Mph", "units: Knots", &["Knots", "Kmh", "Mph"]),
        changed("EveryGear", "SomeGears", &["SomeGears", "EveryGear"]),
        changed("units: Mph", "units: Mph, units: Mph", &["units"]),
        changed("format: 1", "format: 1, format: 1", &["format"]),
        changed(
            "visible: true",
            "visible: true, visible: true",
            &["visible"],
        ),
    ]);
}

#[test]
fn a_key_that_is_missing_is_named() {
    assert_answered(&[
        changed_at(At::End, "    units: Mph,\n", "", &["units"]),
        changed_at(At::End, "    format: 1,\n", "", &["format"]),
        changed_at(
            At::Text("),\n        (\n            name: \"Hidden"),
            "            visible: true,\n",
            "",
            &["visible"],
        ),
        changed_at(
            At::Text("),\n    marked"),
            "        redline_rpm: 5200,\n",
            "",
            &["redline_rpm"],
        ),
    ]);
}

/// The golden file with other sets.
fn with_sets(sets: &str) -> String {
    let (vehicle, _) = GOLDEN.split_once("sets: [").expect("a list of sets");
    format!("{vehicle}sets: [{sets}],\n)\n")
}

fn one_set(gears: &str) -> String {
    format!(
        "(name: \"a\", visible: true, shift_rpm: 4000, final_drives: [Number(4)], gears: [{gears}]),"
    )
}

#[test]
fn gears_that_do_not_fit_together_are_told_with_their_set_and_pointed_at() {
    let gear = "(label: \"1\", ratio: Number(1)),";
    let labelled = |n: u32| gear.replace("\"1\"", &format!("\"{n}\""));
    let thirteen: String = (1..=13).map(labelled).collect();
    let crawler = "(label: \"1\", ratio: Number(1), crawler: true),";
    let sets =
        |value, sets: &str, says: &[&'static str]| whole(At::Value(value), with_sets(sets), says);
    let count = "1 to 12 forward gears";
    assert_answered(&[
        changed_at(
            At::Value("\"1\", ratio: Product([Teeth(driven: 44, driving: 29), Number(2.25)])"),
            "label: \"C\"",
            "label: \"1\"",
            &["set 1", "two gears", "\"1\""],
        ),
        changed_at(
            At::Value("\"R\", ratio: Product"),
            "label: \"C\"",
            "label: \"R\"",
            &["set 1", "two gears", "\"R\""],
        ),
        sets(
            "[(label: \"1\"",
            &one_set(&thirteen),
            &["set 1", count, "not 13"],
        ),
        sets("[]),", &one_set(""), &["set 1", count, "not 0"]),
        sets(
            "[(label: \"1\"",
            &one_set(crawler),
            &["set 1", "no crawler"],
        ),
        sets(
            "[(label: \"2\", ratio: Number(1), crawler",
            &format!(
                "{}{}",
                one_set(gear),
                one_set(&crawler.replace('1', "2").replace("(2)", "(1)"))
            ),
            &["set 2", "no crawler"],
        ),
    ]);
}

#[test]
fn final_drives_and_stages_that_do_not_fit_are_told_with_their_set_and_pointed_at() {
    let gear = "(label: \"1\", ratio: Number(1)),";
    let low = "name: \"Transfer box\",";
    let five_stages = format!(
        "{}{low}",
        "name: \"more\", present: 1, positions: [(name: \"a\", ratio: Number(1))], acts_on: EveryGear), (".repeat(3)
    );
    let at = |value, from: &str, to: &str, says: &[&'static str]| {
        changed_at(At::Value(value), from, to, says)
    };
    let sets =
        |value, sets: &str, says: &[&'static str]| whole(At::Value(value), with_sets(sets), says);
    assert_answered(&[
        at(
            "4, shift_rpm: 3899.25",
            "final_drive: 3",
            "final_drive: 4",
            &["set 1", "gear top", "final drive 4", "only 3"],
        ),
        at(
            "0, shift_rpm: 3899.25",
            "final_drive: 3",
            "final_drive: 0",
            &["set 1", "counted from 1"],
        ),
        at(
            "7,\n            ),\n            stages",
            "final_drive: 2,\n            ),",
            "final_drive: 7,\n            ),",
            &["set 1", "gear R", "final drive 7", "only 3"],
        ),
        at(
            "3, positions",
            "present: 2",
            "present: 3",
            &["set 1", "Transfer box", "positions"],
        ),
        at(
            "0, positions",
            "present: 2",
            "present: 0",
            &["set 1", "counted from 1"],
        ),
        at(
            "[], acts_on: Gears",
            "positions: [(name: \"out\", ratio: Number(1))]",
            "positions: []",
            &["set 1", "Overdrive", "positions"],
        ),
        at(
            "\"7\", \"R\"",
            "\"2\", \"top\"",
            "\"2\", \"7\"",
            &["set 1", "\"7\"", "not there"],
        ),
        at(
            "\"R\"])",
            "            reverse: (\n                ratio: Number(3.45),\n                final_drive: 2,\n            ),\n",
            "",
            &["set 1", "\"R\"", "not there"],
        ),
        at(
            "[\n                (name: \"more\"",
            low,
            &five_stages,
            &["set 1", "at most 4", "not 5"],
        ),
        sets(
            "[], gears",
            &one_set(gear).replace("Number(4)", ""),
            &["set 1", "1 to 3 final drives", "not 0"],
        ),
        sets(
            "4),]),",
            &one_set("(label: \"1\", ratio: Number(1), final_drive: 4),")
                .replace("Number(4)", "Number(4), Number(3)"),
            &["set 1", "gear 1", "final drive 4", "only 2"],
        ),
    ]);
}

#[test]
fn what_does_not_fit_the_number_of_sets_or_marks_is_pointed_at() {
    let gear = "(label: \"1\", ratio: Number(1)),";
    let at = |value, from: &str, to: &str, says: &[&'static str]| {
        changed_at(At::Value(value), from, to, says)
    };
    let write_up = "write_up: (width_px: 800, dark: true, table: true, note: true, form: A4, \
                    left_out: [1, 9]), sets";
    assert_answered(&[
        at(
            "9,\n    sets",
            "baseline: 2",
            "baseline: 9",
            &["set 9", "only 3"],
        ),
        at(
            "0,\n    sets",
            "baseline: 2",
            "baseline: 0",
            &["counted from 1"],
        ),
        changed("baseline: 2", "baseline: -1", &[]),
        // Letters that only look like the key do not lead astray.
        at(
            "9 /* , */,\n    sets",
            "title: \"Every corner of format 1\",",
            "title: \"baseline: 7, (\", // baseline: 8\n",
            &["set 9", "only 3"],
        )
        .with("baseline: 2", "baseline /* : 6 */ : 9 /* , */"),
        at(
            "[\n        1, 2, 3",
            "2000,",
            "1, 2, 3, 4, 5, 6, 7, 8,",
            &["at most 8 speeds", "not 9"],
        ),
        at(
            "[\n        1, 2.5, 3",
            " 0.5,",
            " 1, 2.5, 3, 4, 5, 6, 7, 8,",
            &["at most 8 speeds", "not 9"],
        ),
        at(
            "9]), sets",
            "sets",
            write_up,
            &["leaves out set 9", "not there"],
        ),
        whole(
            At::Value("[],\n)"),
            with_sets(""),
            &["1 to 3 gear sets", "not 0"],
        ),
        whole(
            At::Value("[(name: \"a\""),
            with_sets(&one_set(gear).repeat(4)),
            &["1 to 3 gear sets", "not 4"],
        ),
    ]);
}

#[test]
fn a_count_or_width_of_any_size_is_answered_before_anything_is_made_of_it() {
    let most = usize::MAX.to_string();
    let write_up = |width: &str| {
        format!(
            "write_up: (width_px: {width}, dark: true, table: true, note: true, form: A4), sets"
        )
    };
    let width = |width: &'static str, says: &[&'static str]| {
        changed_at(At::Value(width), "sets", &write_up(width), says)
    };
    let many = |value, from: &str, key: &str, says: &[&'static str]| {
        let to = format!("{key}: {most}");
        changed_at(At::Value(value), from, &to, says)
    };
    let range = ["800 to 4000 pixels", "not 4294967296"];
    assert_answered(&[
        width("4294967296", &range),
        width("18446744073709551615", &["800 to 4000 pixels"]),
        width("18446744073709551616", &[]),
        many(
            "18446744073709551615,\n    sets",
            "baseline: 2",
            "baseline",
            &["only 3"],
        ),
        many(
            "18446744073709551615, shift",
            "final_drive: 3",
            "final_drive",
            &["only 3"],
        ),
        many(
            "18446744073709551615, positions",
            "present: 2",
            "present",
            &["positions"],
        ),
    ]);
}

#[test]
fn another_format_is_told_by_its_number() {
    let newer = ["format 3", "up to format 2", "newer"];
    assert_answered(&[
        changed_at(At::Nowhere, "format: 1", "format: 3", &newer),
        whole(
            At::Nowhere,
            "(format: 3, axles: [(teeth: 3)], sets: {})",
            &newer,
        ),
        changed_at(
            At::Nowhere,
            "format: 1",
            "format: 0",
            &["no project format 0"],
        ),
        changed("format: 1", "format: -1", &[]),
        changed("format: 1", "format: 99999999999", &[]),
        changed("format: 1", "format: \"1\"", &[]),
    ]);
}

#[test]
fn what_is_no_project_at_all_is_told_as_such() {
    let says = ["not a Layshaft project"];
    let foreign = [
        "not a Layshaft project",
        "a project begins with \"(format: \"",
    ];
    let nested = |open: &str| format!("(format: 1, x: {}", open.repeat(100_000));
    let deep = ["too deep in one another", "take some of them away"];
    assert_answered(&[
        whole(At::Start, "", &says),
        whole(At::Start, " \t ", &says),
        whole(At::Start, "Dear Sir, please find enclosed", &foreign),
        whole(
            At::Start,
            "{ \"format\": 1, \"title\": \"a page of JSON\" }",
            &says,
        ),
        whole(
            At::Start,
            "(window: (width: 800, height: 600), recent: [\"a.ron\"])",
            &says,
        ),
        whole(At::Start, "Scene(entities: {0: (components: {})})", &says),
        whole(At::Start, "\0\u{1}\u{fffd}PNG", &says),
        whole(At::Start, "(".repeat(100_000), &says),
        whole(At::Start, "[".repeat(100_000), &says),
        whole(At::Start, "/*".repeat(100_000), &says),
        whole(At::Start, nested("["), &deep),
        whole(At::Start, nested("("), &deep),
        whole(At::Start, nested("Some("), &deep),
        whole(At::Start, nested("{1:"), &deep),
    ]);
}

#[test]
fn a_file_cut_short_is_told_where_it_ends() {
    let whole_file = GOLDEN.trim_end();
    let cut = |at: usize| whole(At::End, &whole_file[..at], &[]);
    let length = whole_file.len();
    assert_answered(&[
        cut(1),
        cut(length / 8),
        cut(length / 4),
        cut(length / 2),
        cut(length * 3 / 4),
        cut(length - 10),
        cut(length - 1),
    ]);
}

#[test]
fn an_endless_word_is_quoted_with_40_characters_at_most() {
    let word: &'static str = "x".repeat(1000).leak();
    let key: &'static str = format!("{word}: 3, units: Mph").leak();
    let variant: &'static str = format!("units: {word}").leak();
    let rows = [
        changed("units: Mph", key, &["title"]),
        changed("units: Mph", variant, &["Mph"]),
        changed("Every corner", word, &["a name has at most 80 characters"]),
    ];
    assert_answered(&rows);
    for row in &rows {
        let answer = format::read(&row.text)
            .expect_err("a broken file")
            .to_string();
        assert!(!answer.contains(&word[..41]), "{answer}");
    }
}

impl Broken {
    /// The same, and this has to be said as well.
    fn saying(mut self, part: &'static str) -> Self {
        self.says.push(part);
        self
    }

    /// The same with another part of the file turned into something else.
    fn with(self, from: &str, to: &str) -> Self {
        assert!(self.text.contains(from), "the text has no {from}");
        let text = self.text.replacen(from, to, 1);
        Self { text, ..self }
    }

    /// The same, but the error shows only with all of `letters` read.
    fn reaching(self, letters: &'static str) -> Self {
        let at = At::Text(letters);
        Self { at, ..self }
    }
}
