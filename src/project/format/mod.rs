//! How does a project stand in a file, and which files can be read?
//!
//! A project file is RON. Its `format` is read first, so that a newer file is answered as such; then
//! the types of that format read the rest. Each format has its own types, apart from the domain's:
//! the domain can change, a format never does.

mod outline;
mod shared;
mod v1;

use super::document::Project;
use crate::gearing::quoted;
use ron::error::SpannedError;
use serde::Deserialize;
use shared::text::parsed;

/// The format that is written.
pub const CURRENT_FORMAT: u32 = 1;

/// Why a text is not a project.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum FormatError {
    /// Nothing in it says that it is a project.
    #[error("this is not a Layshaft project: {0}")]
    NotAProject(Place),
    /// A later program wrote it.
    #[error(
        "this project has format {0}, but this program reads up to format {CURRENT_FORMAT}; \
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
        parsed(text).map_err(|error| FormatError::NotAProject(Place::of(error, text)))?;
    match header.format {
        1 => v1::read(text),
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
/// # Errors
/// When the serialiser gives up; no project is known for which it does.
pub fn write(project: &Project) -> Result<String, WriteError> {
    v1::write(project)
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
