//! Is a column defined in one place? A column that is defined here alone stands in every rendering.

use super::json::keys::reference_with;
use super::page::Page;
use super::{bbcode, csv, json, markdown, text};
use crate::analysis::{Analysis, ProjectResults};
use crate::chart::table::{
    AtTheBench, COLUMNS, ColumnDefinition, ForReaders, Holds, Key, Measure, Need,
};
use crate::chart::{MarkedSpeeds, Table};
use crate::project::examples::EXAMPLES;
use crate::project::{PageForm, Project, SetId};
use crate::units::reckoned_number;

/// A step over the step after it: `1.10` for the first gear of the example.
static PROGRESSION: ColumnDefinition = ColumnDefinition {
    key: "progression",
    meaning: Some("step ÷ the step after it"),
    csv_title: "step over step",
    holds: Holds::Number(Measure::Step, |g| g.gear.progression),
    is_forward_only: true,
    readers: Some(ForReaders {
        title: "evenness",
        need: Need::Always,
        difference: Some(|now, before| format!("{:+.2} steps", now - before)),
        bench: Some(AtTheBench {
            title: "evens out",
            stands_out: false,
        }),
    }),
};

/// A road speed at every marked engine speed, once more.
static PACES: ColumnDefinition = ColumnDefinition {
    key: "paces",
    meaning: Some("minutes for a kilometre at the engine speeds that were asked for"),
    csv_title: "pace at",
    holds: Holds::AtEngineSpeeds(
        Measure::Step,
        |g, rpm| 60.0 / g.speed_kmh(rpm),
        Key {
            name: "pace_min",
            meaning: "minutes for a kilometre",
        },
    ),
    is_forward_only: false,
    readers: Some(ForReaders {
        title: "pace at",
        need: Need::Always,
        difference: None,
        bench: None,
    }),
};

fn project() -> Project {
    EXAMPLES[0].project().unwrap()
}

fn columns() -> Vec<&'static ColumnDefinition> {
    let mut columns = COLUMNS.to_vec();
    columns.extend([&PROGRESSION, &PACES]);
    columns
}

/// First gear of the first set, as a reader sees it.
fn progression(project: &Project) -> String {
    let results = ProjectResults::of(project);
    let progression = results.sets[0].gears[0].progression.unwrap();
    format!("{progression:.2}")
}

fn page_texts(form: PageForm) -> Vec<String> {
    let mut project = project();
    project.write_up.form = form;
    let sets: Vec<SetId> = project.sets.iter().map(|c| c.id).collect();
    let page = Page::with_columns(&project, &sets, &columns()).unwrap();
    let texts = page.texts().unwrap();
    texts.into_iter().map(|(_, text)| text).collect()
}

#[test]
fn a_new_column_stands_in_every_text_with_its_difference() {
    let project = project();
    let marked = MarkedSpeeds::of(&project);
    let results = ProjectResults::of(&project);
    let table = Table::with(&project, &results, &marked, &columns());
    for text in [
        text::table(None, &table),
        markdown::table(None, &table),
        bbcode::table(None, &table),
    ] {
        for words in ["evenness", "pace", " steps", &progression(&project)] {
            assert!(text.contains(words), "{words} is not in:\n{text}");
        }
    }
}

#[test]
fn a_new_column_stands_in_csv_and_json_and_in_the_reference() {
    let project = project();
    let marked = MarkedSpeeds::of(&project);
    let results = ProjectResults::of(&project);
    let progression = results.sets[0].gears[0].progression.unwrap();
    let full = progression.to_string();
    let reckoned = reckoned_number(progression);
    let csv = csv::table_with(
        &project,
        &results,
        &marked,
        csv::DecimalMark::Point,
        &columns(),
    );
    let json = json::table_with(&Analysis::from(&project), &marked, &columns()).unwrap();
    for (text, words) in [
        (&csv, ",step over step,pace at 2000 rpm"),
        (&csv, &reckoned),
        (&json, "\"progression\": "),
        (&json, &full),
        (&json, "\"pace_min\": "),
    ] {
        assert!(text.contains(words), "{words} is not in:\n{text}");
    }
    let reference = reference_with(&columns());
    for path in [
        "progression",
        "paces",
        "paces[].engine_rpm",
        "paces[].pace_min",
    ] {
        let path = format!("sets[].gears[].{path}");
        assert!(reference.iter().any(|(row, _)| *row == path), "{path}");
    }
    let reverse = reference.iter().find(|(row, _)| row == "sets[].reverse");
    assert!(reverse.unwrap().1.contains("rpm_drop and progression; "));
}

#[test]
fn a_new_column_stands_in_the_picture_and_on_the_page_for_the_bench() {
    let first = progression(&project());
    for (form, head) in [(PageForm::Picture, "evenness"), (PageForm::A4, "evens out")] {
        let texts = page_texts(form);
        for words in [head, &first] {
            assert!(texts.iter().any(|text| text == words), "{words}: {texts:?}");
        }
    }
}

#[test]
fn every_column_has_a_key_of_its_own() {
    let mut keys: Vec<&str> = COLUMNS.iter().map(|column| column.key).collect();
    keys.sort_unstable();
    keys.dedup();
    assert_eq!(keys.len(), COLUMNS.len());
}
