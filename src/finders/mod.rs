//! The pure answers to a wish: which teeth, which ratio, which tyre would fulfil it.
//!
//! Nothing here knows a window, a file, a clock or chance; the same wish finds the same. What is wished
//! is a value of its own ([`PairWish`], [`SpeedWish`], [`FillWish`]), what is found keeps what one chooses by.

mod centre;
mod had;
mod layout;
mod target;
mod teeth;
mod tooth_pairs;

pub use centre::{
    CentreDistance, CentreFit, DiametralPitch, FixedCentre, HelixAngle, NormalModule, PressureAngle,
};
pub use had::{Part, PartError, PartKind, RankedPart, parse_parts, ranked};
pub use layout::{FillWish, LayoutError, Progression, StepLayout, TAKEN_GRAIN};
pub use target::{FoundValue, RpmDrop, Sought, SpeedWish, WishError};
pub use teeth::{TeethError, TeethLimits, ToothSum, parse_teeth_limits, parse_tooth_sum};
pub use tooth_pairs::{FoundPair, Hunting, PairWish, RatioTolerance, tooth_pairs};
