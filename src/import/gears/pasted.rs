//! What a text was read as: up to three gear sets and what else it says, to be looked over before it
//! is taken.

use super::offers::Offer;
use crate::gearing::{FinalDrive, RatioError, Sprockets, TypedRatio, parse_ratio, read_reduction};
use crate::units::SpeedUnit;

/// All that was read from a text.
#[derive(Debug, Clone, PartialEq)]
pub struct Pasted {
    /// One to three gear sets.
    pub sets: Vec<PastedSet>,
    /// What else the text says of the vehicle.
    pub offers: Vec<Offer>,
}

/// What the figures of a set's gears are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FigureKind {
    /// Ratios of the gears themselves.
    GearRatio,
    /// Engine turns per wheel turn, as old road tests print them.
    Overall,
    /// Road speeds at 1000 rpm.
    SpeedPer1000(SpeedUnit),
}

impl FigureKind {
    /// What such figures are called.
    pub fn text(self) -> String {
        match self {
            Self::GearRatio => "gear ratios".to_owned(),
            Self::Overall => "overall ratios".to_owned(),
            Self::SpeedPer1000(unit) => format!("{} at 1000 rpm", unit.sign()),
        }
    }
}

/// A gear set as it was read from text, to be looked over before it is taken.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedSet {
    /// What the text calls it, if it does.
    pub name: Option<String>,
    /// What the figures of its gears and of reverse are.
    pub kind: FigureKind,
    /// Forward gears, crawlers first, then first to top; 1 to 12 as read.
    pub gears: Vec<PastedGear>,
    /// The reverse gear, if there was one.
    pub reverse: Option<PastedReverse>,
    /// Up to three final drives; none if there was none in the text.
    pub final_drives: Vec<PastedFinal>,
    /// Further stages between engine and wheels, up to four.
    pub stages: Vec<PastedStage>,
    /// One sentence about each thing that was guessed or left out.
    pub remarks: Vec<String>,
}

/// One forward gear as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedGear {
    /// What it is called: unlike the others, and fit for [`Label`](crate::gearing::Label).
    pub label: String,
    /// Its figure.
    pub ratio: PastedRatio,
    /// Which final drive it drives, counted from 0; 0 if there is none.
    pub final_drive: usize,
    /// Whether it stands outside the shift chain.
    pub is_crawler: bool,
}

/// The reverse gear as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedReverse {
    /// Its figure, without a sign.
    pub ratio: PastedRatio,
    /// Which final drive it drives, counted from 0; 0 if there is none.
    pub final_drive: usize,
}

/// A final drive as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedFinal {
    /// Its ratio.
    pub ratio: PastedRatio,
    /// Whether the text says that it is a chain.
    pub is_chain: bool,
}

/// A further stage as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedStage {
    /// What it is called.
    pub name: String,
    /// Its one to four positions.
    pub positions: Vec<PastedPosition>,
    /// The position it stands in, counted from 0.
    pub present: usize,
}

/// One position of a stage as it was read.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedPosition {
    /// What it is called.
    pub name: String,
    /// Its ratio, teeth with the driven one first.
    pub ratio: PastedRatio,
}

/// A ratio as it stood in the text.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedRatio {
    /// Its spelling, which [`parse_ratio`] reads.
    pub text: String,
    /// What it was read as.
    pub ratio: TypedRatio,
}

impl PastedFinal {
    /// A final drive that is known, as if a text had spelled it.
    ///
    /// # Errors
    /// None: the ratio of sprockets is one of gears.
    pub fn of(drive: &FinalDrive) -> Result<Self, RatioError> {
        let (text, ratio) = match drive {
            FinalDrive::Gears(ratio) => (ratio.to_string(), ratio.clone()),
            FinalDrive::Chain(sprockets) => (sprockets.to_string(), sprockets.as_gears()?),
        };
        Ok(Self {
            ratio: PastedRatio {
                text,
                ratio: ratio.into(),
            },
            is_chain: matches!(drive, FinalDrive::Chain(_)),
        })
    }

    /// The final drive that it means: one that reduces, a chain where its teeth are known.
    pub(super) fn drive(&self) -> FinalDrive {
        let ratio = read_reduction(&self.ratio.ratio);
        match Sprockets::of(&ratio).filter(|_| self.is_chain) {
            Some(sprockets) => sprockets.into(),
            None => ratio.into(),
        }
    }
}

impl PastedRatio {
    /// The ratio that a corrected text spells.
    ///
    /// # Errors
    /// When the text is no ratio.
    pub fn new(text: &str) -> Result<Self, RatioError> {
        Ok(Self {
            text: text.trim().to_owned(),
            ratio: parse_ratio(text)?,
        })
    }
}
