//! Layshaft shows what a change of gearing will be like to drive.
//!
//! The way through the crate, lower layers first; a layer uses only those before it:
//!
//! * [`gearing`] computes: ratios, tyres, speeds, shifting, findings. No window, no files.
//! * [`project`] is the document: what somebody typed, and how it is kept safely.

pub mod gearing;
pub mod project;

mod platform;
