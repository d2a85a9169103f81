//! `layshaft table`: the comparison of all sets, in the format that was asked for.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::{choice, decimal_mark};
use super::{PRINTED, findings, output, run_questions, source};
use crate::analysis::{Analysis, Motion, RunQuestions};
use crate::chart::{BUILT_CURVE, FigureTable, MarkedSpeeds, Table};
use crate::gearing::{Name, RoadSpeed};
use crate::project::{Project, View};
use crate::sheet::csv::DecimalMark;
use crate::sheet::{bbcode, csv, json, markdown, text};
use std::io::Write;

/// The formats that a table can be printed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Format {
    Text,
    Markdown,
    BbCode,
    Csv,
    Json,
}

impl Format {
    /// Whether a program reads it, which gets every character as it was typed.
    fn is_for_programs(self) -> bool {
        matches!(self, Self::Csv | Self::Json)
    }
}

const FORMATS: [(&str, Format); 5] = [
    ("text", Format::Text),
    ("markdown", Format::Markdown),
    ("bbcode", Format::BbCode),
    ("csv", Format::Csv),
    ("json", Format::Json),
];

/// The exit code, when the table is printed.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    let shown = shown(arguments)?;
    let format = format(arguments)?;
    let mark = decimal_mark(arguments, format == Format::Csv)?;
    let out = output::wanted(arguments)?;
    let source::Sourced { project, notes } = source::project(arguments)?;
    let marked = source::marked(arguments, &project)?;
    let asked = match shown {
        View::Speed | View::Steps | View::Revs | View::Distance => None,
        View::Effort => Some(Asked::Effort(&marked.road_speeds)),
        View::Run => {
            let questions = run_questions::questions(arguments, &marked.road_speeds)?;
            Some(Asked::Run(questions))
        }
        View::Cruise => Some(Asked::Cruise(&marked.road_speeds)),
    };
    if shown != View::Run {
        run_questions::refuse_all(arguments, shown.word())?;
    }
    let analysis = Analysis::of(project);
    let text = match asked {
        None => written(format, mark, &analysis, &marked)?,
        Some(asked) => {
            let motion = analysis.motion();
            let motion =
                motion.map_err(|reason| CliError::no_motion(shown.word(), reason.clone()))?;
            of_motion(&asked, format, mark, &analysis, motion)?
        }
    };
    if format.is_for_programs() {
        out.write(text.as_bytes(), stdout, stderr)?;
    } else {
        out.write_text(&text, stdout, stderr)?;
    }
    output::notes(stderr, &notes);
    if shown.needs_motion() && format.is_for_programs() {
        output::notes(stderr, &built_curves(analysis.project()));
    }
    output::notes(stderr, &findings::lines(&analysis));
    Ok(PRINTED)
}

fn written(
    format: Format,
    mark: DecimalMark,
    analysis: &Analysis,
    marked: &MarkedSpeeds,
) -> Result<String, CliError> {
    let (project, results) = (analysis.project(), analysis.results());
    let title = project.title.as_ref().map(Name::as_str);
    let cells = || Table::at(project, results, marked);
    Ok(match format {
        Format::Text => text::table(title, &cells()),
        Format::Markdown => markdown::table(title, &cells()),
        Format::BbCode => bbcode::table(title, &cells()),
        Format::Csv => csv::table(project, results, marked, mark),
        Format::Json => json::table(analysis, marked)?,
    })
}

/// What is asked of engine and vehicle.
enum Asked<'a> {
    /// Effort at these speeds.
    Effort(&'a [RoadSpeed]),
    /// Runs.
    Run(RunQuestions),
    /// These steady speeds.
    Cruise(&'a [RoadSpeed]),
}

impl Asked<'_> {
    fn table(&self, analysis: &Analysis, motion: &Motion) -> FigureTable {
        let (project, results) = (analysis.project(), analysis.results());
        match self {
            Self::Effort(speeds) => FigureTable::effort(project, results, motion, speeds),
            Self::Run(questions) => FigureTable::run(project, results, motion, questions),
            Self::Cruise(speeds) => FigureTable::cruise(project, results, motion, speeds),
        }
    }

    fn json(&self, analysis: &Analysis, motion: &Motion) -> Result<String, json::JsonError> {
        match self {
            Self::Effort(speeds) => json::effort(analysis, motion, speeds),
            Self::Run(questions) => json::run(analysis, motion, questions),
            Self::Cruise(speeds) => json::cruise(analysis, motion, speeds),
        }
    }
}

fn of_motion(
    asked: &Asked<'_>,
    format: Format,
    mark: DecimalMark,
    analysis: &Analysis,
    motion: &Motion,
) -> Result<String, CliError> {
    let title = analysis.project().title.as_ref().map(Name::as_str);
    let cells = || asked.table(analysis, motion);
    Ok(match format {
        Format::Text => text::figures(title, &cells()),
        Format::Markdown => markdown::figures(title, &cells()),
        Format::BbCode => bbcode::figures(title, &cells()),
        Format::Csv => csv::figures(&cells(), mark),
        Format::Json => asked.json(analysis, motion)?,
    })
}

/// Which sets have a torque curve that was built: readers are told so in the table itself.
fn built_curves(project: &Project) -> String {
    let technical = &project.technical;
    let sets = (1..).zip(project.sets.iter());
    let built = sets.filter(|(_, set)| technical.engine_of(&set.technical).is_built());
    let told = built.map(|(number, _)| format!("set {number}: its {BUILT_CURVE}\n"));
    told.collect()
}

fn shown(arguments: &Arguments) -> Result<View, CliError> {
    let choices = View::WITH_TABLES.map(|shown| (shown.word(), shown));
    match arguments.once(Flag::Show)? {
        None => Ok(View::default()),
        Some(text) if text.contains(',') => Err(CliError::OneTable),
        Some(text) => choice(Flag::Show, text, &choices),
    }
}

fn format(arguments: &Arguments) -> Result<Format, CliError> {
    match arguments.once(Flag::As)? {
        None => Ok(Format::Text),
        Some(text) => choice(Flag::As, text, &FORMATS),
    }
}
