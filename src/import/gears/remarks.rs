//! What is said about a reading: why there is none, what was guessed, what was left out.

use crate::gearing::quoted;
use crate::import::said::{Reason, Said};

/// Why a text holds no gear set.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PasteError {
    /// More text than a data sheet has.
    #[error(
        "the text has {characters} characters; paste at most {most}, just the lines with the ratios"
    )]
    TooLong {
        /// How many characters there were.
        characters: usize,
        /// How many are read.
        most: usize,
    },
    /// No number that could be a gear.
    #[error(
        "no gear ratio was found; paste lines such as \"1st 3.54\" or a list such as 3.54/1.91/1.31"
    )]
    NoGears,
    /// Numbers that cannot be ratios.
    #[error(
        "{numbers} are no gear ratios: a ratio is above 0, and only reverse can have a minus; paste lines such as \"1st 3.54\""
    )]
    NoRatios {
        /// The numbers, as they stand in a sentence.
        numbers: String,
    },
    /// A final drive, reverse or overall figures, but nothing to drive forward with.
    #[error("the text gives {found} but no gear ratio; paste the gear ratios with it")]
    NoForwardGears {
        /// What was found, as it stands in a sentence.
        found: &'static str,
    },
    /// More forward gears than a set can have.
    #[error("{found} gears were found and a gear set has at most {most}; paste one gear set alone")]
    TooManyGears {
        /// How many gears were found.
        found: usize,
        /// How many fit.
        most: usize,
    },
    /// More final drives than a set can have.
    #[error(
        "{found} final drives were found and a gear set has at most {most}; leave out those that are not meant"
    )]
    TooManyFinalDrives {
        /// How many final drives were found.
        found: usize,
        /// How many fit.
        most: usize,
    },
}

/// What is said of a set without a final drive.
pub const NO_FINAL_DRIVE: &str = "No final drive was found; type it in.";

/// Why a number was left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LeftOut {
    /// It has a unit, or stands in a row or column of speeds, steps, overall ratios.
    Measure,
    /// It stands in further columns, or in brackets, behind the ratio.
    BesideRatio,
    /// It is out of proportion: a year, a price, a type.
    Implausible,
    /// It belongs to a further stage.
    Stage,
    /// Its gear already has a ratio, or it is part of a second set.
    Repeated,
    /// It stands alone while the others have labels.
    Unlabelled,
}

impl Reason for LeftOut {
    const ALL: &'static [Self] = &[
        Self::Measure,
        Self::BesideRatio,
        Self::Implausible,
        Self::Stage,
        Self::Repeated,
        Self::Unlabelled,
    ];

    fn reason(self) -> &'static str {
        match self {
            Self::Measure => "a speed, unit, percentage or overall figure, not a gear ratio",
            Self::BesideRatio => "beside the ratio, in brackets or in a further column",
            Self::Implausible => "not likely to be a ratio",
            Self::Stage => "a further stage, which is typed on its own",
            Self::Repeated => "repeated; what stood first was taken",
            Self::Unlabelled => "without a label among labelled gears",
        }
    }
}

/// The sentences about one reading.
pub(super) type Remarks = Said<LeftOut>;

impl Remarks {
    /// Notes that the number in `text` is not taken.
    pub(super) fn left_out(&mut self, text: &str, why: LeftOut) {
        self.leave_out(quoted(text), why);
    }

    /// Whether a number was left out for that reason.
    pub(super) fn has_left_out(&self, why: LeftOut) -> bool {
        !self.named(why).is_empty()
    }

    /// Notes that the commas of `run` were read as decimal marks and separators in turn.
    pub(super) fn guess_decimal_commas(&mut self, run: &str) {
        self.say(format!(
            "In \"{}\" every second comma was read as a decimal mark.",
            quoted(run)
        ));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_left_out_is_named_in_one_sentence_a_reason() {
        let mut remarks = Remarks::default();
        for n in 1..=6 {
            remarks.left_out(&format!("{n} mph"), LeftOut::Measure);
        }
        remarks.left_out("1998", LeftOut::Implausible);
        let sentences = remarks.into_sentences();
        assert_eq!(sentences.len(), 2);
        assert!(sentences[0].starts_with("Left out: 1 mph, 2 mph, 3 mph, 4 mph and 2 more ("));
        assert!(sentences[1].starts_with("Left out: 1998 ("));
    }
}
