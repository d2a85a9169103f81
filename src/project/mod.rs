//! The document: what somebody typed, how it changes, how it is kept.

mod as_shown;
mod differences;
mod digest;
mod document;
mod edits;
pub mod examples;
mod file_system;
pub mod format;
mod history;
mod in_picture;
mod livery;
mod naming;
mod plan_words;
mod planned;
mod project_text;
mod recovery;
mod save_error;
mod saving;
mod set_edits;
mod sweeping;
mod technical;
mod temporary;
mod text_file;
mod typed_figures;
mod view;
mod workshop_edits;
mod workshop_words;
mod write_up;

pub use differences::{Difference, differences};
pub(crate) use digest::digest;
pub use document::{
    Candidate, Candidates, CandidatesError, Marks, Note, Project, SetId, TooManyMarks,
};
pub use edits::{Edit, EditError};
pub(crate) use file_system::shown;
pub use file_system::{Access, Disk, EntryKind, Facts, FileSystem, LockableFile, NewFile};
pub use history::{Cause, Change, DocumentId, History, Revision};
pub use in_picture::{LARGEST_TEXT_BYTES, PICTURE_KEYWORD, PictureError, text_in_picture};
pub use livery::Livery;
pub use naming::Named;
pub use project_text::{ProjectText, ProjectTextError, is_picture_file, read_project_text};
pub use recovery::{CopyError, RecoveryCopy};
pub use save_error::SaveError;
pub(crate) use saving::ends_in_separator;
pub use saving::{check_target, save_new, save_private, save_whole};
pub use set_edits::SetEdit;
pub(crate) use sweeping::{WithoutLocks, remove_unheld};
pub use sweeping::{sweep_beside, sweep_stale};
pub use technical::{
    CoastDown, DrivingData, EngineData, KnownFuel, LimitsData, RoadData, SecondAxleData, SetAside,
    SetChecks, SetEfficiencies, SetTechnical, SignalData, SpeedometerData, TechnicalData,
    VehicleData, too_many_grades,
};
pub(crate) use text_file::digest_of_file;
pub use text_file::{LARGEST_FILE_BYTES, ReadError, read_text};
pub use typed_figures::{Figure, TypedFigure};
pub use view::{View, Views};
pub use workshop_edits::WorkshopEdit;
pub use write_up::{ColumnKey, Drops, NoColumnKey, PageForm, PictureWidth, WriteUp, WrongWidth};
