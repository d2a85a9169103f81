//! All tests that look at the crate from outside.

mod raster;
mod support;
