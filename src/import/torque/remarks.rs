//! What is said about a reading: why there is none, what was guessed, what was left out.

use crate::gearing::quoted;
pub(super) use crate::import::said::{MOST_NAMED, listed};
use crate::import::said::{Reason, Said};

/// Why a text holds no torque curve.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CurveError {
    /// More text than a dyno sheet has.
    #[error(
        "the text has {characters} characters; paste at most {most}, just the lines with the figures"
    )]
    TooLong {
        /// How many characters there were.
        characters: usize,
        /// How many are read.
        most: usize,
    },
    /// Nothing that could be a point.
    #[error(
        "no torque curve was found; paste lines such as \"1000 rpm 120 Nm\" or columns with a heading such as \"rpm  Nm\""
    )]
    NoCurve,
    /// Points, but none that can be.
    #[error(
        "no point was found that can be: \"{example}\" is none; an engine turns at 1 to 30000 rpm and gives 0 to 20000 N·m and 0 to 5000 kW"
    )]
    NoneInRange {
        /// A point that was left out, as it was written.
        example: String,
    },
    /// A single point.
    #[error("only the point at {rpm} was found; a torque curve needs two at least")]
    OnePoint {
        /// Where the point is, with its unit.
        rpm: String,
    },
    /// Powers without a unit and no torque beside them: kW and horsepower are too far apart to guess.
    #[error(
        "the powers have no unit; write kW, hp or PS behind {figure} or in the heading of its column"
    )]
    PowerWithoutUnit {
        /// The first of them, as it was written.
        figure: String,
    },
}

/// What is said of a text that speaks of the wheels; whoever knows where it was measured leaves it out.
pub const SPEAKS_OF_WHEELS: &str =
    "The text speaks of the wheels: its figures may have lost what the drivetrain takes.";

/// Why something was left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LeftOut {
    /// A column that holds something else.
    Column,
    /// A figure that is not engine speed, torque or power, or belongs to no point.
    Figure,
    /// An engine speed that cannot be.
    Speed,
    /// A torque or power that cannot be.
    Output,
    /// A line that does not read.
    Line,
}

impl Reason for LeftOut {
    const ALL: &'static [Self] = &[
        Self::Column,
        Self::Figure,
        Self::Speed,
        Self::Output,
        Self::Line,
    ];

    fn reason(self) -> &'static str {
        match self {
            Self::Column => "a column without engine speed, torque or power",
            Self::Figure => "not known as engine speed, torque or power of a point",
            Self::Speed => "an engine turns at 1 to 30000 rpm",
            Self::Output => "torque is 0 to 20000 N·m, power 0 to 5000 kW",
            Self::Line => "does not read as a point of the curve",
        }
    }
}

/// The sentences about one reading.
pub(super) type Remarks = Said<LeftOut>;

impl Remarks {
    /// Notes that `text` is not taken.
    pub(super) fn left_out(&mut self, text: &str, why: LeftOut) {
        self.leave_out(in_quotes(text), why);
    }

    /// Notes a column of something else, once however many rows it has.
    pub(super) fn other_column(&mut self, name: &str) {
        let named = self.named(LeftOut::Column);
        let is_known = named.contains(&in_quotes(name));
        if !name.trim().is_empty() && !is_known && named.len() < MOST_NAMED {
            self.left_out(name, LeftOut::Column);
        }
    }
}

/// A text as it stands in a sentence.
fn in_quotes(text: &str) -> String {
    format!("\"{}\"", quoted(text.trim()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_left_out_is_named_in_one_sentence_a_reason() {
        let mut remarks = Remarks::default();
        for n in 1..=6 {
            remarks.left_out(&format!("line {n}"), LeftOut::Line);
        }
        remarks.left_out("0", LeftOut::Speed);
        remarks.other_column("boost");
        remarks.other_column("boost");
        let sentences = remarks.into_sentences();
        assert_eq!(sentences.len(), 3);
        assert!(sentences[0].starts_with("Left out: \"boost\" (a column"));
        assert!(sentences[1].starts_with("Left out: \"0\" (an engine"));
        assert!(sentences[2].contains("\"line 4\" and 2 more ("));
    }
}
