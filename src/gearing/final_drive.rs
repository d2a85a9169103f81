//! A final drive: what stands behind the gearbox's output shaft.

use super::ratio::{Ratio, RatioError, parse_ratio, read_reduction};
use std::fmt;

/// What drives the wheels from an output shaft.
#[derive(Debug, Clone, PartialEq)]
pub enum FinalDrive {
    /// A pair of gears, or a number from a data sheet.
    Gears(Ratio),
}

impl FinalDrive {
    /// Turns of the output shaft for one turn of the wheel.
    pub fn value(&self) -> f64 {
        match self {
            Self::Gears(ratio) => ratio.value(),
        }
    }

    /// How it was understood: `37 driven by 9 = 4.111`; just the number for a plain one.
    pub fn reading(&self) -> String {
        match self {
            Self::Gears(ratio) => ratio.reading(),
        }
    }
}

impl From<Ratio> for FinalDrive {
    fn from(ratio: Ratio) -> Self {
        Self::Gears(ratio)
    }
}

impl fmt::Display for FinalDrive {
    /// The spelling that [`parse_final_drive`] reads back.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Gears(ratio) => ratio.fmt(f),
        }
    }
}

/// The final drive that `text` spells: a ratio that reduces, see [`read_reduction`].
///
/// # Errors
/// A sentence that says why it is none.
pub fn parse_final_drive(text: &str) -> Result<FinalDrive, RatioError> {
    Ok(read_reduction(&parse_ratio(text)?).into())
}
