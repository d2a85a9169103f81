//! Layshaft shows what a change of gearing will be like to drive.
//!
//! The way through the crate, lower layers first; a layer uses only those before it:
//!
//! * [`units`] is the ground: display units and number formatting.
//! * [`gearing`] computes: ratios, tyres, speeds, shifting, findings. No window, no files.
//! * [`motion`] computes what an engine makes of it: effort, road load, top speed, cruise, runs.
//! * [`checks`] tells whether a swap may be driven so: speedometer, tyres, shafts, axles.
//! * [`finders`] answers wishes: which teeth, which ratio would fulfil one.
//! * [`workshop`] does the sums of the bench: shims, turning torque, heat.
//! * [`import`] reads what people copy from elsewhere.
//! * [`project`] is the document: what somebody typed, how it changes, how it is kept.
//! * [`analysis`] is what follows from it: the figures of every set.
//! * [`chart`] holds diagrams and tables as plain data.
//! * [`draw`] makes shapes and pixels of those.
//! * [`sheet`] writes tables as text.
//! * [`cli`] answers the command line.
//! * [`app`] is the window.

pub mod analysis;
pub mod app;
pub mod chart;
pub mod checks;
pub mod cli;
pub mod draw;
pub mod finders;
mod formula;
pub mod gearing;
pub mod import;
mod letters;
mod logging;
pub mod motion;
pub mod panics;
mod platform;
pub mod project;
pub mod sheet;
pub mod units;
mod unseen;
pub mod workshop;

// The simulated disk of the tests names this crate as everybody outside does.
#[cfg(test)]
extern crate self as layshaft;
