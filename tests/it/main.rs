//! All tests that look at the crate from outside.

#[cfg(test)]
mod bench_drawings;
#[cfg(test)]
mod carried;
#[cfg(test)]
mod checks;
#[cfg(test)]
mod cli;
#[cfg(test)]
mod contrast;
#[cfg(test)]
mod diagram;
#[cfg(test)]
mod docs;
#[cfg(test)]
mod editing;
#[cfg(test)]
mod edits;
#[cfg(test)]
mod files;
#[cfg(test)]
mod format;
#[cfg(test)]
mod heard;
#[cfg(test)]
mod house;
#[cfg(test)]
mod icon;
#[cfg(test)]
mod import;
#[cfg(test)]
mod motion;
#[cfg(test)]
mod no_display;
#[cfg(test)]
mod pictures;
#[cfg(test)]
mod properties;
#[cfg(test)]
mod published;
#[cfg(test)]
mod raster;
#[cfg(test)]
mod real_window;
#[cfg(test)]
mod recovery;
#[cfg(test)]
mod support;
#[cfg(test)]
mod window;
#[cfg(test)]
mod workshop;
#[cfg(test)]
mod write_up;
