//! Why a text is not a tyre size, and what is to be written instead.

use std::fmt;

use super::service::ServiceError;

/// Why a text is not a tyre size that can be reckoned with.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TyreSizeError {
    /// Nothing that looks like a size.
    #[error(
        "\"{size}\" is not a tyre size: write it like 195/65 R 15, 31x10.50 R 15 or 130/90 - 16"
    )]
    NotASize {
        /// What was written, at most 40 characters.
        size: String,
    },
    /// Width and rim only, as in `7.50 R 16` and `185 R 14 C`.
    #[error(
        "\"{size}\" has no aspect ratio, which one trade then reads as 80 and another as 82: write \
         it with the width in mm, like 195/65 R 15, or give a measured figure such as \
         \"circumference 1935 mm\""
    )]
    MissingAspect {
        /// What was written, at most 40 characters.
        size: String,
    },
    /// Width and aspect ratio only.
    #[error("\"{size}\" has no rim: write it behind the size, as in 195/65 R 15")]
    MissingRim {
        /// What was written, at most 40 characters.
        size: String,
    },
    /// A speed symbol alone before the rim.
    #[error(
        "the {symbol} before the rim does not tell the construction: write R for radial, or D, B \
         or - for cross-ply"
    )]
    UnknownConstruction {
        /// The letter.
        symbol: char,
    },
    /// Aspect ratio first.
    #[error("width and aspect ratio look swapped: is {width}/{aspect} meant?")]
    Swapped {
        /// The width in mm that was probably meant.
        width: String,
        /// The aspect ratio that was probably meant.
        aspect: String,
    },
    /// A part of the size outside its range.
    #[error("{part} must be {}, not {value}", part.bounds())]
    OutOfRange {
        /// Which part.
        part: SizePart,
        /// What was written, at most 40 characters.
        value: String,
    },
    /// A rim that is no code of the table.
    #[error(
        "{rim} is not a known rim code: it must be from 8 to 30, whole or with .5, or the rim \
         diameter in mm"
    )]
    UnknownRimCode {
        /// What was written, at most 40 characters.
        rim: String,
    },
    /// A tyre that would not go round its rim.
    #[error(
        "an overall diameter of {overall_diameter_mm} mm does not go round a rim of {rim_mm} mm: \
         make it larger, or write an aspect ratio up to 100"
    )]
    InsideItsRim {
        /// The overall diameter in mm.
        overall_diameter_mm: u32,
        /// The rim diameter in mm.
        rim_mm: u32,
    },
    /// Valid parts that make too small a tyre.
    #[error(
        "this tyre would be only {overall_diameter_mm} mm in diameter: it must be at least 300 mm \
         and roll at least 900 mm a turn"
    )]
    TooSmall {
        /// The overall diameter in mm.
        overall_diameter_mm: u32,
    },
    /// Nearly a service description.
    #[error(transparent)]
    Service(#[from] ServiceError),
    /// Something behind the size that is no marking known here.
    #[error("\"{marking}\" behind the tyre size is not a marking known here: leave it out")]
    UnknownMarking {
        /// What stands there, at most 40 characters.
        marking: String,
    },
}

/// A number in a tyre size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SizePart {
    /// The width in mm.
    Width,
    /// The aspect ratio in per cent, or the overall diameter of a race size in mm.
    Aspect,
    /// A rim in mm.
    RimDiameter,
    /// The nominal diameter of an inch size.
    NominalDiameter,
    /// The width of an inch size.
    NominalWidth,
}

impl SizePart {
    fn bounds(self) -> &'static str {
        match self {
            Self::Width => "a whole number from 50 to 600 (mm)",
            Self::Aspect => {
                "a whole number from 20 to 100, or from 300 to 4000 where it is the overall \
                 diameter in mm"
            }
            Self::RimDiameter => "a whole number from 254 to 1000 where it is not a rim code",
            Self::NominalDiameter => "from 13 to 157 (inches) with at most two decimals",
            Self::NominalWidth => "from 2 to 23.5 (inches) with at most two decimals",
        }
    }
}

impl fmt::Display for SizePart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Width => "the tyre's width",
            Self::Aspect => "the aspect ratio",
            Self::RimDiameter => "the rim diameter in mm",
            Self::NominalDiameter => "the diameter in an inch size",
            Self::NominalWidth => "the width in an inch size",
        })
    }
}
