//! Why a table of the program cannot be read back.

use crate::gearing::{GearSetError, TextError};

/// Why there is nothing to give back; line and set are counted from 1.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TableError {
    /// More text than any table has.
    #[error("the text has more than {most} characters; copy the table alone")]
    TooLong {
        /// How many are read.
        most: usize,
    },
    /// The end of it is missing.
    #[error("the table breaks off in line {line}; copy it again to its end")]
    BreaksOff {
        /// The last line there is.
        line: usize,
    },
    /// Gears are missing at the end of a set.
    #[error(
        "set {set} breaks off at gear {gear}: another must follow; copy the table again to its end"
    )]
    MissesGears {
        /// The number of the set in the text.
        set: usize,
        /// The label of the last gear that is there.
        gear: String,
    },
    /// Its columns do not stand under their headings any more.
    #[error(
        "in line {line} the columns do not stand under their headings; copy the table as Markdown or CSV"
    )]
    OutOfLine {
        /// The first line of which that is so.
        line: usize,
    },
    /// Its blanks were folded into one.
    #[error(
        "the columns have run together, for the blanks between them were folded; copy the table from a block of code, or as Markdown or CSV"
    )]
    Folded,
    /// It is spelled for other programs.
    #[error(
        "this is a table as JSON, which is for programs; copy it as text, Markdown, BBCode or CSV instead"
    )]
    ForPrograms,
    /// It is one of figures that follow from the sets.
    #[error(
        "this table tells figures of the sets and no ratios; copy the table of ratios, which the view Speed has"
    )]
    OfFigures,
    /// The columns that tell ratios were left out.
    #[error(
        "set {set} has neither ratios nor overall ratios; copy the table with one of these columns"
    )]
    NoRatios {
        /// Its number in the text.
        set: usize,
    },
    /// A cell holds something else than its heading says.
    #[error("set {set}, gear {gear}: \"{text}\" is not a value of the column \"{column}\"")]
    NotAValue {
        /// The number of the set in the text.
        set: usize,
        /// The label of the gear.
        gear: String,
        /// The heading of the column.
        column: String,
        /// What stands there.
        text: String,
    },
    /// What stands in the place of a name is none.
    #[error("set {set}: {error}")]
    NoName {
        /// Its number in the text.
        set: usize,
        /// Why it is none.
        error: TextError,
    },
    /// The gears do not make a set.
    #[error("set {set}: {error}")]
    NoSet {
        /// Its number in the text.
        set: usize,
        /// What does not fit.
        error: GearSetError,
    },
}
