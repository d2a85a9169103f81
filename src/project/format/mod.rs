//! The text of a project in its file: which formats are read, and in which one is written.
//!
//! A project file is RON. Its `format` is read first, so that a newer file is answered as such; then
//! the types of that format read the rest. Formats form a chain: a file of format 1 becomes one of
//! format 2, and that a project. A project is written in the lowest format that can say all of it, so
//! that older programs read it. Each format has its own types, apart from the domain's: the domain
//! can change, a format that was released never does.

mod outline;
mod shared;
mod v1;
mod v2;

use super::document::Project;
use crate::gearing::quoted;
use ron::error::SpannedError;
use serde::Deserialize;
use shared::text::{parsed, spelled};
use v1::{BeyondFormat1, ProjectV1};
use v2::ProjectV2;

/// The highest format that can be read, and that is written where a lower one does not suffice.
pub const NEWEST_FORMAT: u32 = 2;

/// Why a text is not a project.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum FormatError {
    /// Nothing in it says that it is a project.
    #[error("this is not a Layshaft project: {0}")]
    NotAProject(Place),
    /// A later program wrote it.
    #[error(
        "this project has format {0}, but this program reads up to format {NEWEST_FORMAT}; \
         a newer Layshaft opens it"
    )]
    Newer(u32),
    /// Format 0 never was.
    #[error("there is no project format {0}")]
    Unknown(u32),
    /// Something in it cannot be.
    #[error("{0}")]
    Broken(Place),
}

impl FormatError {
    /// The parser stopped in `text`.
    fn broken(error: SpannedError, text: &str) -> Self {
        Self::Broken(Place::of(error, text))
    }
}

/// What is wrong with a text, and where.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("line {line}, column {column}: {reason}")]
pub struct Place {
    /// Counted from 1.
    pub line: usize,
    /// Counted from 1, in characters.
    pub column: usize,
    /// One sentence without an end mark.
    pub reason: String,
}

impl Place {
    /// Where a word of format 2 stands in a file of format 1.
    fn beyond_format_1(word: &str, error: &SpannedError) -> Self {
        let (line, column) = (error.span.start.line, error.span.start.col);
        let reason = format!(
            "\"{}\" belongs to format 2, but the file says format 1: write \"format: 2\" there",
            quoted(word)
        );
        Self {
            line,
            column,
            reason,
        }
    }

    /// Where and why the parser stopped before it knew the format.
    fn of_head(error: SpannedError, text: &str) -> Self {
        // The parser names a type of this program, of which nobody who opens a file knows.
        let names_a_type = matches!(
            error.code,
            ron::Error::ExpectedStructLike
                | ron::Error::ExpectedNamedStructLike(_)
                | ron::Error::ExpectedDifferentStructName { .. }
        );
        let place = Self::of(error, text);
        if !names_a_type {
            return place;
        }
        Self {
            reason: "a project begins with \"(format: \"".to_owned(),
            ..place
        }
    }

    /// Where and why the parser stopped in `text`.
    fn of(error: SpannedError, text: &str) -> Self {
        let (line, column) = (error.span.start.line, error.span.start.col);
        let (column, reason) = match error.code {
            // Its own words speak to whoever calls the parser.
            ron::Error::ExceededRecursionLimit => (
                column,
                "the brackets stand too deep in one another for a project; \
                 take some of them away"
                    .to_owned(),
            ),
            // A value of ours is refused when it has been read, and the parser stands behind it.
            ron::Error::Message(reason) => (
                column - letters_before(text, line, column),
                shortened(&reason),
            ),
            code => (column, shortened(&code.to_string())),
        };
        Self {
            line,
            column,
            reason,
        }
    }
}

/// How many letters a number or name has that ends right before a place; 0 where none ends there.
fn letters_before(text: &str, line: usize, column: usize) -> usize {
    let is_of_word = |c: char| c.is_alphanumeric() || ['.', '_', '+', '-'].contains(&c);
    let line = text.split('\n').nth(line - 1).unwrap_or_default();
    let mut places = line.char_indices().skip(column - 1);
    let end = places.next().map_or(line.len(), |(at, _)| at);
    let (before, behind) = line.split_at(end);
    if behind.starts_with(is_of_word) {
        return 0;
    }
    before.chars().rev().take_while(|&c| is_of_word(c)).count()
}

/// The only part of a file that every format shares.
#[derive(Deserialize)]
struct Header {
    format: u32,
}

/// The project that `text` holds.
///
/// # Errors
/// When it is no project, has a newer format, or holds something that cannot be: with its line and
/// column where there is one.
pub fn read(text: &str) -> Result<Project, FormatError> {
    let header: Header =
        parsed(text).map_err(|error| FormatError::NotAProject(Place::of_head(error, text)))?;
    match header.format {
        1 => v1::read(text),
        2 => v2::read(text),
        0 => Err(FormatError::Unknown(0)),
        newer => Err(FormatError::Newer(newer)),
    }
}

/// Why a project has no text.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("this project cannot be spelled ({0}); nothing was written, report it")]
pub struct WriteError(String);

impl From<ron::Error> for WriteError {
    fn from(error: ron::Error) -> Self {
        Self(shortened(&error.to_string()))
    }
}

/// The text of a project, the same for equal projects, with one line break at its end.
///
/// It has the lowest format that can say all of the project.
///
/// # Errors
/// When the serialiser gives up; no project is known for which it does.
pub fn write(project: &Project) -> Result<String, WriteError> {
    match ProjectV1::try_from(ProjectV2::from(project)) {
        Ok(file) => spelled(&file),
        Err(BeyondFormat1) => spelled(&ProjectV2::from(project)),
    }
}

/// Whether the text that `project` was read from is not how a program would have written it:
/// comments and a layout of its own go when it is saved.
///
/// Judged in the text's own format, for a program may write a lower one than another did.
///
/// # Errors
/// When the serialiser gives up.
pub fn is_written_by_hand(text: &str, project: &Project) -> Result<bool, WriteError> {
    let is_of_format_1 = parsed(text).is_ok_and(|header: Header| header.format == 1);
    let own = match is_of_format_1.then(|| ProjectV1::try_from(ProjectV2::from(project))) {
        None => spelled(&ProjectV2::from(project))?,
        Some(Ok(file)) => spelled(&file)?,
        // What that format cannot say, no program wrote into it.
        Some(Err(BeyondFormat1)) => return Ok(true),
    };
    Ok(own != text)
}

/// At most 200 characters of a reason, on one line, and at most 40 of each of its words: ron quotes
/// names from the file in full.
fn shortened(reason: &str) -> String {
    let words: Vec<String> = reason.split([' ', '\n', '\r']).map(quoted).collect();
    let one_line = words.join(" ");
    if one_line.chars().count() <= 200 {
        return one_line;
    }
    one_line.chars().take(199).chain(['…']).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_unknown_key_of_any_length_is_quoted_with_40_characters_at_most() {
        let text = format!("(format: 1, {}: 2)", "k".repeat(300));
        let sentence = read(&text).unwrap_err().to_string();
        assert!(sentence.contains(&"k".repeat(30)), "{sentence}");
        assert!(!sentence.contains(&"k".repeat(41)), "{sentence}");
        assert!(sentence.contains("title"), "{sentence}");
    }
}
