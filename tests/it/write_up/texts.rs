//! Are the texts of a table the ones that were looked at?
//!
//! They stand beside this file as they would stand in a forum or a spreadsheet;
//! `UPDATE_GOLDENS=1 cargo test --locked --test it write_up` renews them.

use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::chart::{MarkedSpeeds, Table};
use layshaft::gearing::Name;
use layshaft::project::Project;
use layshaft::project::examples::EXAMPLES;
use layshaft::sheet::csv::DecimalMark;
use layshaft::sheet::{bbcode, csv, json, markdown, text};
use std::path::Path;

/// The two-seater: tooth pairs, miles, a gear more than the baseline.
fn two_seater() -> Project {
    EXAMPLES[1].project().unwrap()
}

/// All texts of a project by the names of their files.
pub(super) fn texts(project: &Project) -> [(&'static str, String); 6] {
    let results = ProjectResults::of(project);
    let table = Table::of(project, &results);
    let marked = MarkedSpeeds::of(project);
    let title = project.title.as_ref().map(Name::as_str);
    let csv = |mark| csv::table(project, &results, &marked, mark);
    [
        ("two-seater.txt", text::table(title, &table)),
        ("two-seater.md", markdown::table(title, &table)),
        ("two-seater.bbcode", bbcode::table(title, &table)),
        ("two-seater.point.csv", csv(DecimalMark::Point)),
        ("two-seater.comma.csv", csv(DecimalMark::Comma)),
        (
            "two-seater.json",
            json::table(&Analysis::from(project), &marked).unwrap(),
        ),
    ]
}

#[test]
fn the_texts_are_those_that_were_looked_at() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/it/write_up");
    let mut problems = Vec::new();
    for (name, now) in texts(&two_seater()) {
        let path = folder.join(name);
        if std::env::var_os("UPDATE_GOLDENS").is_some() {
            std::fs::write(&path, &now).unwrap();
        }
        let before = std::fs::read_to_string(&path).unwrap_or_default();
        if before != now {
            let lines = before.lines().zip(now.lines());
            let number = lines.take_while(|(a, b)| a == b).count();
            let line = |text: &str| text.lines().nth(number).unwrap_or("nothing").to_owned();
            problems.push(format!(
                "{name}, line {}: was {:?}, is {:?}",
                number + 1,
                line(&before),
                line(&now)
            ));
        }
    }
    assert!(problems.is_empty(), "{}", problems.join("\n"));
}
