//! The pure computation: what a gear set does at the wheels.
//!
//! Nothing here knows a window, a file, a clock or chance; the same input gives the same figures.
//! Engine speeds are in rev/min, road speeds in km/h, lengths in mm: the units stand in the names.

mod number;
mod quantity;
mod tyre;

pub use number::{NumberError, parse_decimal};
pub use quantity::{EngineSpeed, OutOfRange, OverallDiameter, RoadSpeed, RollingCircumference};
pub use tyre::{
    Construction, RevsPerKm, RevsPerMile, Rim, SizePart, Tolerance, Tyre, TyreDiameter, TyreError,
    TyreNotice, TyreSize, TyreSizeError, parse_tyre,
};
