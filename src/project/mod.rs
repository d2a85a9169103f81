//! The document: what somebody typed, how it changes, how it is kept.

mod document;
mod edits;
pub mod format;
mod history;
mod results;
mod set_edits;

pub use document::{
    Candidate, Candidates, CandidatesError, Marks, Note, Project, SetId, TooManyMarks,
};
pub use edits::{Edit, EditError};
pub use history::History;
pub use results::ProjectResults;
pub use set_edits::SetEdit;
