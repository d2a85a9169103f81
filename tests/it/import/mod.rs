//! Is text that was copied from elsewhere read as it was meant?

mod gears;
mod tables;
mod torque;
