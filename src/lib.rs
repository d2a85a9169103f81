//! Layshaft shows what a change of gearing will be like to drive.
//!
//! The way through the crate, lower layers first; a layer uses only those before it:
//!
//! * [`gearing`] computes: ratios, tyres, speeds, shifting, findings. No window, no files.
//! * [`draw`] turns diagrams and tables into shapes and pixels.

pub mod draw;
pub mod gearing;
