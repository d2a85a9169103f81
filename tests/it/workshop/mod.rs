//! Does every job of the bench go through its states, and warn where it must?

mod fit;
mod heat;
mod jobs;
mod journal;
mod limits;
mod pinion_depth;
mod shim;
mod side_bearings;
mod turning_torque;
