//! The document: what somebody typed, how it changes, how it is kept.

mod differences;
mod document;
mod edits;
pub mod examples;
mod file_system;
pub mod format;
mod history;
mod recovery;
mod results;
mod save_error;
mod saving;
mod set_edits;
mod text_file;
mod write_up;

pub use differences::differences;
pub use document::{
    Candidate, Candidates, CandidatesError, Marks, Note, Project, SetId, TooManyMarks,
};
pub use edits::{Edit, EditError};
pub(crate) use file_system::shown;
pub use file_system::{Disk, EntryKind, Facts, FileSystem, NewFile};
pub use history::History;
pub use recovery::RecoveryCopy;
pub use results::ProjectResults;
pub use save_error::SaveError;
pub use saving::{check_target, save_new, save_whole, sweep_stale};
pub use set_edits::SetEdit;
pub use text_file::{LARGEST_FILE_BYTES, ReadError, read_text};
pub use write_up::{PageForm, PictureWidth, WriteUp, WrongWidth};
