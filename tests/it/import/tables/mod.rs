//! What the program writes, does it read?

mod cut;
mod given_back;
mod left_out;
mod speedometer;

use layshaft::analysis::ProjectResults;
use layshaft::chart::{MarkedSpeeds, Table};
use layshaft::gearing::{Name, Ratio};
use layshaft::import::tables::{Missing, OwnTable, TableError, read};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Edit, Project, SetEdit, SetId};
use layshaft::sheet::csv::DecimalMark;
use layshaft::sheet::{bbcode, csv, markdown, text};

use crate::support::gear_sets::rpm;

/// In which form a table is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Form {
    Text,
    Markdown,
    BbCode,
    CsvPoint,
    CsvComma,
}

impl Form {
    const ALL: [Self; 5] = [
        Self::Text,
        Self::Markdown,
        Self::BbCode,
        Self::CsvPoint,
        Self::CsvComma,
    ];

    /// Whether it carries every typed digit.
    fn is_exact(self) -> bool {
        matches!(self, Self::CsvPoint | Self::CsvComma)
    }

    fn print(self, project: &Project) -> String {
        let results = ProjectResults::of(project);
        let marked = MarkedSpeeds::of(project);
        let title = project.title.as_ref().map(Name::as_str);
        let table = || Table::of(project, &results);
        let csv = |mark| csv::table(project, &results, &marked, mark);
        match self {
            Self::Text => text::table(title, &table()),
            Self::Markdown => markdown::table(title, &table()),
            Self::BbCode => bbcode::table(title, &table()),
            Self::CsvPoint => csv(DecimalMark::Point),
            Self::CsvComma => csv(DecimalMark::Comma),
        }
    }

    /// A typed text as the form can say it: BBCode has no square brackets for others.
    fn said(self, text: &str) -> String {
        match self {
            Self::BbCode => text.replace('[', "(").replace(']', ")"),
            _ => text.to_owned(),
        }
    }
}

/// The farm vehicle with a crawler, each set in both positions of its transfer box.
fn farm_in_both_ranges() -> Project {
    let mut project = EXAMPLES[2].project().unwrap();
    let sets: Vec<SetId> = project.sets.iter().map(|candidate| candidate.id).collect();
    for set in sets {
        let shows = Edit::Set(set, SetEdit::StageShowsOthers(0, true));
        project = shows.applied_to(&project).unwrap();
    }
    project
}

/// The table that stands in the text.
fn table(text: &str) -> OwnTable {
    match read(text) {
        Some(Ok(table)) => table,
        other => panic!("{other:?} from\n{text}"),
    }
}

/// Why the table that stands in the text cannot be read.
fn refused(text: &str) -> TableError {
    match read(text) {
        Some(Err(error)) => error,
        other => panic!("{other:?} from\n{text}"),
    }
}

/// What stands in for what a table left out.
fn missing() -> Missing {
    Missing {
        final_drives: vec![Ratio::from_number(4.0).unwrap().into()],
        shift: rpm(6000.0),
    }
}
