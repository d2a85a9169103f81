//! The document: what somebody typed, how it changes, how it is kept.

mod file_system;
mod reading;
mod saving;

pub use file_system::{Disk, EntryKind, Facts, FileSystem, NewFile};
pub use reading::{LARGEST_FILE_BYTES, ReadError, read_text};
pub use saving::{SaveError, save_new, save_whole, sweep_stale};
