//! Is advice given where a swap should not be driven, and nothing said where it may?

mod findings;
mod of_project;
