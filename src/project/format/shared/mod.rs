//! What formats share: single values, ratios, gears and stages as they stand in a file.
//!
//! A part that stands here is a part of every format that uses it, and frozen with the first of them.
//! One that has to change in a later format is copied into the folder of that format.

pub(super) mod gears;
pub(super) mod misfit;
pub(super) mod ratio;
pub(super) mod stages;
pub(super) mod text;
pub(super) mod tyre;
pub(super) mod values;
pub(super) mod vehicle;
pub(super) mod write_up;
