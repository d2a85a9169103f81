//! `layshaft table`: the comparison of all sets, in the format that was asked for.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::choice;
use super::{PRINTED, findings, output, source};
use crate::analysis::{Analysis, Motion};
use crate::chart::{MarkedSpeeds, Table, View};
use crate::gearing::Name;
use crate::sheet::csv::DecimalMark;
use crate::sheet::{MotionTable, bbcode, csv, json, markdown, text};
use std::io::Write;

/// What a table can be about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Shown {
    /// Ratios, steps and speeds.
    #[default]
    Speed,
    /// Tractive effort and what follows from it.
    Effort,
    /// Steady speeds.
    Cruise,
}

impl Shown {
    const ALL: [Self; 3] = [Self::Speed, Self::Effort, Self::Cruise];

    fn word(self) -> &'static str {
        match self {
            Self::Speed => View::Speed.word(),
            Self::Effort => "effort",
            Self::Cruise => "cruise",
        }
    }
}

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
    let mark = decimal_mark(arguments, format)?;
    let out = output::wanted(arguments)?;
    let source::Sourced { project, notes } = source::project(arguments)?;
    let marked = source::marked(arguments, &project)?;
    let analysis = Analysis::of(project);
    let text = match shown {
        Shown::Speed => written(format, mark, &analysis, &marked)?,
        of_motion => motion(of_motion, format, mark, &analysis, &marked)?,
    };
    if format.is_for_programs() {
        out.write(text.as_bytes(), stdout, stderr)?;
    } else {
        out.write_text(&text, stdout, stderr)?;
    }
    output::notes(stderr, &notes);
    output::notes(stderr, &findings::lines(analysis.results()));
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
        Format::Json => json::table(project, results, marked)?,
    })
}

/// What follows from engine and vehicle.
fn motion(
    shown: Shown,
    format: Format,
    mark: DecimalMark,
    analysis: &Analysis,
    marked: &MarkedSpeeds,
) -> Result<String, CliError> {
    let word = shown.word();
    let (project, results) = (analysis.project(), analysis.results());
    let motion = Motion::of(project).map_err(|reason| CliError::no_motion(word, reason))?;
    let speeds = &marked.road_speeds;
    let table = match shown {
        Shown::Cruise => MotionTable::cruise,
        Shown::Speed | Shown::Effort => MotionTable::effort,
    };
    let for_program = match shown {
        Shown::Cruise => json::cruise,
        Shown::Speed | Shown::Effort => json::effort,
    };
    let table = || table(project, &motion, speeds);
    Ok(match format {
        Format::Text => table().text(),
        Format::Markdown => table().markdown(),
        Format::BbCode => table().bbcode(),
        Format::Csv => table().csv(mark),
        Format::Json => for_program(project, results, &motion, speeds)?,
    })
}

fn shown(arguments: &Arguments) -> Result<Shown, CliError> {
    let choices = Shown::ALL.map(|shown| (shown.word(), shown));
    match arguments.once(Flag::Show)? {
        None => Ok(Shown::default()),
        Some(text) => choice(Flag::Show, text, &choices),
    }
}

fn format(arguments: &Arguments) -> Result<Format, CliError> {
    match arguments.once(Flag::As)? {
        None => Ok(Format::Text),
        Some(text) => choice(Flag::As, text, &FORMATS),
    }
}

fn decimal_mark(arguments: &Arguments, format: Format) -> Result<DecimalMark, CliError> {
    let choices = [("point", DecimalMark::Point), ("comma", DecimalMark::Comma)];
    match arguments.once(Flag::Decimal)? {
        None => Ok(DecimalMark::default()),
        Some(_) if format != Format::Csv => Err(CliError::DecimalWithoutCsv),
        Some(text) => choice(Flag::Decimal, text, &choices),
    }
}
