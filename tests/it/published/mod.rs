//! Do the laws give the numbers others have published?

mod motion;
mod row;
mod speeds;
mod steps;
mod tyres;
mod units;
