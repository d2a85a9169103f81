//! The tables of all views of a write-up in one text, in the format that its readers want.

use super::csv::DecimalMark;
use super::json::JsonError;
use super::{bbcode, csv, json, markdown, text};
use crate::analysis::{Analysis, Motion, RunQuestions};
use crate::chart::{FigureTable, MarkedSpeeds, Table};
use crate::gearing::Name;
use crate::project::{View, Views};

/// A format of text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TextFormat {
    /// Columns of text.
    Text,
    /// Markdown.
    Markdown,
    /// BBCode, as forums take it.
    BbCode,
    /// For spreadsheets.
    Csv(DecimalMark),
    /// For programs: one object, or an array of one for each table.
    Json,
}

/// The tables of these views, each once: the first under the title of the project, the others under their
/// own names, at which the reader of pasted tables ends.
///
/// A view of which something is not known has none; where none has one, it is the table of ratios.
///
/// # Errors
/// When the serialiser gives up.
pub fn written(
    analysis: &Analysis,
    views: &Views,
    format: TextFormat,
) -> Result<String, JsonError> {
    let is_known = |view: &View| !view.needs_motion() || analysis.motion().is_ok();
    let views = views.as_slice().iter().map(|view| view.with_table());
    let mut views: Vec<View> = views.filter(is_known).collect();
    views.dedup();
    if views.is_empty() {
        views.push(View::Speed);
    }
    let texts = views.iter().enumerate().map(|(at, view)| {
        let title = analysis.project().title.as_ref().map(Name::as_str);
        let title = if at == 0 { title } else { Some(view.name()) };
        let text = of_view(analysis, *view, title, format)?;
        Ok(match format {
            // Else nothing would say where the next table begins.
            TextFormat::Csv(_) if at > 0 => format!("{}\n{text}", view.name()),
            _ => text,
        })
    });
    let texts: Vec<String> = texts.collect::<Result<_, JsonError>>()?;
    Ok(match (format, texts.as_slice()) {
        (TextFormat::Json, [_, _, ..]) => {
            let objects: Vec<&str> = texts.iter().map(|text| text.trim_end()).collect();
            format!("[\n{}\n]\n", objects.join(",\n"))
        }
        _ => texts.join("\n"),
    })
}

fn of_view(
    analysis: &Analysis,
    view: View,
    title: Option<&str>,
    format: TextFormat,
) -> Result<String, JsonError> {
    match (FigureTable::of_view(view, analysis), analysis.motion()) {
        (Some(table), Ok(motion)) => of_motion((analysis, motion), view, (title, &table), format),
        (None, _) | (_, Err(_)) => of_ratios(analysis, title, format),
    }
}

fn of_ratios(
    analysis: &Analysis,
    title: Option<&str>,
    format: TextFormat,
) -> Result<String, JsonError> {
    let (project, results) = (analysis.project(), analysis.results());
    let table = || Table::of(project, results);
    let marked = || MarkedSpeeds::of(project);
    Ok(match format {
        TextFormat::Text => text::table(title, &table()),
        TextFormat::Markdown => markdown::table(title, &table()),
        TextFormat::BbCode => bbcode::table(title, &table()),
        TextFormat::Csv(mark) => csv::table(project, results, &marked(), mark),
        TextFormat::Json => json::table(analysis, &marked())?,
    })
}

fn of_motion(
    of: (&Analysis, &Motion),
    view: View,
    (title, table): (Option<&str>, &FigureTable),
    format: TextFormat,
) -> Result<String, JsonError> {
    Ok(match format {
        TextFormat::Text => text::figures(title, table),
        TextFormat::Markdown => markdown::figures(title, table),
        TextFormat::BbCode => bbcode::figures(title, table),
        TextFormat::Csv(mark) => csv::figures(table, mark),
        TextFormat::Json => json_of_motion(of, view)?,
    })
}

/// The figures behind a table that there is.
fn json_of_motion(
    (analysis, motion): (&Analysis, &Motion),
    view: View,
) -> Result<String, JsonError> {
    let project = analysis.project();
    let marked = project.marked_road_speeds.as_slice();
    match view.with_table() {
        View::Effort => json::effort(analysis, motion, marked),
        View::Run | View::Revs | View::Distance => {
            json::run(analysis, motion, &RunQuestions::usual(marked))
        }
        View::Cruise => json::cruise(analysis, motion, marked),
        View::Speed | View::Steps => json::table(analysis, &MarkedSpeeds::of(project)),
    }
}
