//! All tests that look at the crate from outside.

mod published;
mod raster;
mod support;
