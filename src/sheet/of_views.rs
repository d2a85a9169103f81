//! The tables of all views of a write-up in one text, in the format that its readers want.

use super::csv::DecimalMark;
use super::json::JsonError;
use super::{bbcode, csv, json, markdown, text};
use crate::analysis::{Analysis, NoMotion};
use crate::chart::{AskedFigures, FigureTable, MarkedSpeeds, Table};
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

impl TextFormat {
    /// Whether a program reads it, which gets every character as it was typed.
    pub fn is_for_programs(self) -> bool {
        match self {
            Self::Csv(_) | Self::Json => true,
            Self::Text | Self::Markdown | Self::BbCode => false,
        }
    }

    /// The table of ratios at these speeds.
    ///
    /// # Errors
    /// When the serialiser gives up.
    pub fn of_ratios(
        self,
        analysis: &Analysis,
        title: Option<&str>,
        marked: &MarkedSpeeds,
    ) -> Result<String, JsonError> {
        let (project, results) = (analysis.project(), analysis.results());
        let table = || Table::at(project, results, marked);
        Ok(match self {
            Self::Text => text::table(title, &table()),
            Self::Markdown => markdown::table(title, &table()),
            Self::BbCode => bbcode::table(title, &table()),
            Self::Csv(mark) => csv::table(project, results, marked, mark),
            Self::Json => json::table(analysis, marked)?,
        })
    }

    /// The figures that are asked for.
    ///
    /// # Errors
    /// When something is not known that they need, or the serialiser gives up.
    pub fn of_figures(
        self,
        analysis: &Analysis,
        title: Option<&str>,
        asked: &AskedFigures,
    ) -> Result<String, NotWritten> {
        let table = || FigureTable::of(asked, analysis).map_err(NoMotion::clone);
        Ok(match self {
            Self::Text => text::figures(title, &table()?),
            Self::Markdown => markdown::figures(title, &table()?),
            Self::BbCode => bbcode::figures(title, &table()?),
            Self::Csv(mark) => csv::figures(&table()?, mark),
            Self::Json => json::figures(analysis, asked)?,
        })
    }
}

/// Why there is no text of figures.
#[derive(Debug, thiserror::Error)]
pub enum NotWritten {
    /// Something is not known that they need.
    #[error(transparent)]
    NoMotion(#[from] NoMotion),
    /// The serialiser gave up.
    #[error(transparent)]
    Json(#[from] JsonError),
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
    let marked = MarkedSpeeds::of(analysis.project());
    let asked = AskedFigures::usual(view, &marked.road_speeds);
    match asked.map(|asked| format.of_figures(analysis, title, &asked)) {
        Some(Ok(text)) => Ok(text),
        Some(Err(NotWritten::Json(error))) => Err(error),
        None | Some(Err(NotWritten::NoMotion(_))) => format.of_ratios(analysis, title, &marked),
    }
}
