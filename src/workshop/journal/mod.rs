//! A shaft that is turned down: what is left of it, what stops the job, and the list that goes to the lathe.
//!
//! Lengths are in mm, torques in N·m, stresses in MPa. What comes out is a proposal: the maker's figures decide.

mod answered;
mod cutting_list;
mod fillet;
mod quantity;
mod stop;
mod turned;

pub use answered::AnsweredJournal;
pub use cutting_list::{CutLine, CuttingList};
pub use fillet::{SHOULDER_SHARES, fillet_factor};
pub use quantity::{CaseDepth, FilletRadius, RunOut, SeatLength, ShaftTorque};
pub use stop::{MeantShaft, OnShaft, Stop};
pub use turned::TurnedShaft;
