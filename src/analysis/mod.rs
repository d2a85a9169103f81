//! What follows from a document: figures and findings of every set.

mod results;

pub use results::ProjectResults;
