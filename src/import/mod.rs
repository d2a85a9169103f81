//! What people copy from elsewhere, read into the crate's own terms.
//!
//! A reading is a proposal: whatever was guessed or left out is said, and nothing here changes a
//! project. Nothing here knows a window, a file, a clock or chance either.

pub mod gears;
mod plain;
mod said;
pub mod tables;
pub mod torque;
