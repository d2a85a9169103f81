//! Why a text in the tyre field names no tyre, and what is to be written instead.

use super::super::number::NumberError;
use super::TyreSizeError;

/// Why a text names no tyre.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum TyreError {
    /// Nothing but blanks.
    #[error("there is no tyre yet: write a size like 195/65 R 15, or \"circumference 1935 mm\"")]
    Empty,
    /// It was read as a size, and is none.
    #[error(transparent)]
    Size(#[from] TyreSizeError),
    /// A figure that is no number.
    #[error(transparent)]
    Number(#[from] NumberError),
    /// A figure without a word that says what it is.
    #[error(
        "\"{text}\" does not say what was measured: write \"circumference {text}\" for what it \
         rolls in a turn, or \"diameter {text}\" for how high it is"
    )]
    Ambiguous {
        /// What was written, at most 40 characters.
        text: String,
    },
    /// Words without a figure.
    #[error("\"{text}\" has no figure: write it as \"circumference 1935 mm\"")]
    NoFigure {
        /// What was written, at most 40 characters.
        text: String,
    },
    /// More than one figure, or one with blanks between its digits.
    #[error(
        "\"{text}\" has more than one figure: write either a tyre size or one measured figure, \
         without blanks in it"
    )]
    SeveralFigures {
        /// What was written, at most 40 characters.
        text: String,
    },
    /// Words that do not go together.
    #[error(
        "\"{text}\" mixes what does not go together: write one of \"diameter 632 mm\", \
         \"circumference 1935 mm\", \"520 revs per km\" and \"682 revs per mile\""
    )]
    Mixed {
        /// What was written, at most 40 characters.
        text: String,
    },
    /// Turns, or a distance, without the other.
    #[error(
        "\"{text}\" does not say how often the tyre turns: write it as \"520 revs per km\" or \
         \"682 revs per mile\""
    )]
    IncompleteRevs {
        /// What was written, at most 40 characters.
        text: String,
    },
    /// A rolling radius or diameter, which is a circumference divided by 2 π or π.
    #[error(
        "a radius or a rolling diameter is not read: write the rolling circumference (6.2832 × a \
         rolling radius, 3.1416 × a rolling diameter) or the overall diameter"
    )]
    RadiusOrRollingDiameter,
    /// A word or sign that means nothing here.
    #[error(
        "\"{word}\" is not understood in a tyre's measure: write it as \"diameter 632 mm\" or as \
         \"circumference 1935 mm\""
    )]
    UnknownWord {
        /// The word, at most 40 characters.
        word: String,
    },
    /// A decimal mark that was meant to part the thousands.
    #[error(
        "\"{figure}\" is read as a decimal number, which is too small in mm: leave the mark out \
         ({ungrouped_mm} mm), or write m behind it"
    )]
    Thousands {
        /// The figure as it was written, at most 40 characters.
        figure: String,
        /// The figure without its mark, in mm.
        ungrouped_mm: u32,
    },
    /// A figure that no tyre has.
    #[error("{what} must be {bounds}, which \"{text}\" is not")]
    OutOfRange {
        /// The quantity with its article.
        what: &'static str,
        /// The range in words, with its unit.
        bounds: &'static str,
        /// What was written, at most 40 characters.
        text: String,
    },
}
