//! Do the laws of motion hold for every vehicle, and does a second method agree with them?

mod agreement;
mod any_vehicle;
mod curves;
mod ends_of_the_ranges;
mod energy;
mod events;
mod extremes;
mod faster;
mod standing;
mod stepping;
