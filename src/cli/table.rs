//! `layshaft table`: the comparison of all sets, in the format that was asked for.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::{choice, decimal_mark};
use super::{PRINTED, findings, output, run_questions, source};
use crate::analysis::Analysis;
use crate::chart::{AskedFigures, BUILT_CURVE};
use crate::gearing::Name;
use crate::project::{Project, View};
use crate::sheet::TextFormat;
use crate::sheet::csv::DecimalMark;
use std::io::Write;

/// The formats that a table can be printed in.
const FORMATS: [(&str, TextFormat); 5] = [
    ("text", TextFormat::Text),
    ("markdown", TextFormat::Markdown),
    ("bbcode", TextFormat::BbCode),
    ("csv", TextFormat::Csv(DecimalMark::Point)),
    ("json", TextFormat::Json),
];

/// The exit code, when the table is printed.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    let shown = shown(arguments)?;
    let format = format(arguments)?;
    let out = output::wanted(arguments)?;
    let source::Sourced { project, notes } = source::project(arguments)?;
    let marked = source::marked(arguments, &project)?;
    let asked = match shown {
        View::Run => {
            let questions = run_questions::questions(arguments, &marked.road_speeds)?;
            Some(AskedFigures::Run(questions))
        }
        _ => AskedFigures::usual(shown, &marked.road_speeds),
    };
    if shown != View::Run {
        run_questions::refuse_all(arguments, shown.word())?;
    }
    let analysis = Analysis::of(project);
    let title = analysis.project().title.as_ref().map(Name::as_str);
    let text = match asked {
        None => format.of_ratios(&analysis, title, &marked)?,
        Some(asked) => {
            let text = format.of_figures(&analysis, title, &asked);
            text.map_err(|reason| CliError::not_written(shown.word(), reason))?
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

/// Which sets have a torque curve that was built: readers are told so in the table itself.
fn built_curves(project: &Project) -> String {
    let technical = &project.technical;
    let sets = (1..).zip(project.sets.iter());
    let built = sets.filter(|(_, set)| technical.engine_of(&set.technical).is_built());
    let told = built.map(|(number, _)| format!("set {number}: its {BUILT_CURVE}\n"));
    told.collect()
}

fn shown(arguments: &Arguments) -> Result<View, CliError> {
    let choices: Vec<(&str, View)> = View::all_with_tables().map(|v| (v.word(), v)).collect();
    match arguments.once(Flag::Show)? {
        None => Ok(View::default()),
        Some(text) if text.contains(',') => Err(CliError::OneTable),
        Some(text) => choice(Flag::Show, text, &choices),
    }
}

fn format(arguments: &Arguments) -> Result<TextFormat, CliError> {
    let word = arguments.once(Flag::As)?;
    let format = match word {
        None => TextFormat::Text,
        Some(text) => choice(Flag::As, text, &FORMATS)?,
    };
    let mark = decimal_mark(arguments, matches!(format, TextFormat::Csv(_)))?;
    Ok(match format {
        TextFormat::Csv(_) => TextFormat::Csv(mark),
        other => other,
    })
}
