//! Do the laws give the numbers others have published?

mod jobs;
pub(crate) mod motion;
pub(crate) mod row;
mod speedometer;
mod speeds;
mod steps;
mod tooth_pairs;
mod tyres;
mod units;
mod workshop;
