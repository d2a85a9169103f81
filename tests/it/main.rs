//! All tests that look at the crate from outside.

#[cfg(test)]
mod cli;
#[cfg(test)]
mod files;
mod published;
mod raster;
mod support;
