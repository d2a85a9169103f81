//! What is each number and word of a pasted text good for?

use super::amount::{Amount, Shape};
use super::tags::Tag;

/// A part of a line, understood as far as it can be by itself.
#[derive(Debug, Clone)]
pub(super) enum Piece {
    /// Says what the value beside it is.
    Tag(Tag),
    /// Several gears: `1st–4th`, `5, 6 & R`.
    Gears(Vec<Tag>),
    /// A number that could be a ratio.
    Amount(Amount),
    /// A number that was left out.
    LeftOut,
    /// What stands in brackets.
    Bracket(Line),
    /// A comma, semicolon, slash, pipe or tab.
    Break(char),
    /// "and".
    And,
    /// A dash between two things.
    Dash,
    /// "to".
    To,
    /// "for": the gears behind it are those of the value before it.
    For,
    /// "ratio".
    Heading,
    /// Opens a row or heads a column of something else.
    Measure,
    /// "speeds": as `Measure`, but gears with labels behind it are gears of a gearbox.
    Speeds,
    /// Has one number of its own that is no ratio.
    Property,
    /// A further stage of the drivetrain.
    Stage,
    /// A word or code that is not known.
    Unknown,
}

/// The parts of one line, or of one pair of brackets.
pub(super) type Line = Vec<Piece>;

impl Piece {
    /// The number, where it could be a ratio.
    pub(super) fn amount(&self) -> Option<&Amount> {
        match self {
            Self::Amount(amount) => Some(amount),
            _ => None,
        }
    }

    /// The gear that a bare whole number could name.
    pub(super) fn whole_gear(&self) -> Option<u8> {
        match self {
            Self::Amount(amount) => amount.gear(),
            _ => None,
        }
    }

    /// Whether it is a number, taken or left out.
    pub(super) fn is_number(&self) -> bool {
        matches!(self, Self::Amount(_) | Self::LeftOut)
    }

    /// Whether it says what a value is.
    pub(super) fn is_label(&self) -> bool {
        matches!(self, Self::Tag(_) | Self::Gears(_))
    }

    /// Whether it is a number whose shape is not a bare whole one.
    pub(super) fn is_broken_number(&self) -> bool {
        matches!(self, Self::Amount(amount) if amount.shape != Shape::Whole)
    }
}
