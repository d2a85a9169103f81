//! Layshaft shows what a change of gearing will be like to drive.
//!
//! The way through the crate, lower layers first; a layer uses only those before it:
//!
//! * [`gearing`] computes: ratios, tyres, speeds, shifting, findings. No window, no files.

pub mod gearing;
