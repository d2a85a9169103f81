//! What must be said beside a tyre whose figures are less sure than they look.

use std::fmt;

/// A remark beside a valid tyre; its text is one sentence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TyreNotice {
    /// An inch size, whose diameter is a name.
    NominalDiameter {
        /// The overall diameter that is reckoned with.
        design_diameter_mm: u32,
    },
    /// A size that is marked as a motorcycle's, or spelt like one.
    MotorcycleSize,
    /// A dash before the rim, which some write for radial tyres too.
    DashReadAsCrossPly,
}

impl fmt::Display for TyreNotice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NominalDiameter { design_diameter_mm } => write!(
                f,
                "The diameter in this size is nominal, so the tyre is taken half an inch smaller, \
                 at {design_diameter_mm} mm: give its revs per mile or a measured roll-out to be \
                 sure."
            ),
            Self::MotorcycleSize => f.write_str(
                "This looks like a motorcycle size, and how far such a tyre rolls for its diameter \
                 is not established: give a measured rolling circumference to be sure.",
            ),
            Self::DashReadAsCrossPly => f.write_str(
                "The dash before the rim is read as cross-ply: write R there if the tyre is radial.",
            ),
        }
    }
}
