//! Names and labels that can exist.
//!
//! Names stand in diagrams, tables and file lines: one line each, and of a length that fits.

use super::number::quoted;

/// A text that cannot be a name or a label.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TextError {
    /// Nothing but blanks.
    #[error("{what} must not be empty")]
    Empty {
        /// The kind of text, as it opens a sentence.
        what: &'static str,
    },
    /// More characters than fit.
    #[error("{what} has at most {most} characters; \"{text}\" has {length}")]
    TooLong {
        /// The kind of text, as it opens a sentence.
        what: &'static str,
        /// How many characters fit.
        most: usize,
        /// How many there were.
        length: usize,
        /// The beginning of the text.
        text: String,
    },
    /// A line break, a tab or another control character.
    #[error("{what} stands on one line; \"{text}\" holds a line break or a control character")]
    Control {
        /// The kind of text, as it opens a sentence.
        what: &'static str,
        /// The beginning of the text.
        text: String,
    },
}

/// One line of 1 to `most` characters without blanks at its ends.
pub(crate) fn one_line(what: &'static str, most: usize, text: &str) -> Result<String, TextError> {
    let text = text.trim();
    let length = text.chars().count();
    if text.is_empty() {
        Err(TextError::Empty { what })
    } else if text.chars().any(char::is_control) {
        Err(TextError::Control {
            what,
            text: quoted(text),
        })
    } else if length > most {
        Err(TextError::TooLong {
            what,
            most,
            length,
            text: quoted(text),
        })
    } else {
        Ok(text.to_owned())
    }
}

/// A text of one line with a most of characters, such as a [`Name`].
macro_rules! one_line_text {
    ($(#[$doc:meta])* $Name:ident, $what:literal, $most:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $Name(String);

        impl $Name {
            /// The most characters it can have.
            pub const MOST_CHARACTERS: usize = $most;

            /// The text without blanks at its ends.
            ///
            /// # Errors
            /// When it is empty, too long, or holds a line break or control character.
            pub fn new(text: &str) -> Result<Self, $crate::gearing::TextError> {
                $crate::gearing::one_line($what, $most, text).map(Self)
            }

            /// The text itself.
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl std::fmt::Display for $Name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.pad(&self.0)
            }
        }
    };
}

pub(crate) use one_line_text;

one_line_text! {
    /// The name of a gear set, a stage or a position: one line of 1 to 80 characters.
    Name, "a name", 80
}

one_line_text! {
    /// What a gear is called on the lever: one line of 1 to 8 characters.
    Label, "a gear's label", 8
}
