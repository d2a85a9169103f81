//! All tests that look at the crate from outside.

#[cfg(test)]
mod files;
mod pasted;
mod published;
mod raster;
mod support;
