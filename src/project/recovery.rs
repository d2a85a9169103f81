//! What does a copy of unsaved work hold, and how is it kept and read again?
//!
//! A copy is a file of its own, apart from the project's: it says which file the work belongs to and
//! when it was written. It is never put in the place of a project by itself.

use super::document::Project;
use super::file_system::FileSystem;
use super::format;
use super::save_error::SaveError;
use super::saving::save_whole;
use super::text_file::read_text;
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};

/// Unsaved work.
#[derive(Debug, Clone, PartialEq)]
pub struct RecoveryCopy {
    /// The file that the work belongs to, where it has one.
    pub file: Option<PathBuf>,
    /// When it was written, in seconds since 1970.
    pub written_unix_s: u64,
    /// The work.
    pub project: Project,
}

/// A copy as it stands in a file. The project is text of its own format, read by its own reader.
#[derive(Serialize, Deserialize)]
struct CopyFile {
    recovery: u32,
    file: Option<PathBuf>,
    written_unix_s: u64,
    project: String,
}

/// The format of a copy that is written.
const FORMAT: u32 = 1;

impl RecoveryCopy {
    /// Writes the copy into a file, whole or not at all.
    ///
    /// # Errors
    /// When it cannot be written; an older copy is then as it was.
    pub fn write(&self, fs: &dyn FileSystem, path: &Path) -> Result<(), SaveError> {
        let copy = CopyFile {
            recovery: FORMAT,
            file: self.file.clone(),
            written_unix_s: self.written_unix_s,
            project: format::write(&self.project),
        };
        let text = ron::ser::to_string(&copy).unwrap_or_default();
        save_whole(fs, path, text.as_bytes())
    }

    /// The copy in a file; none where it cannot be read, and the file stays.
    pub fn read(fs: &dyn FileSystem, path: &Path) -> Option<Self> {
        let text = read_text(fs, path).ok()?;
        let copy: CopyFile = ron::from_str(&text).ok()?;
        if copy.recovery != FORMAT {
            return None;
        }
        Some(Self {
            file: copy.file,
            written_unix_s: copy.written_unix_s,
            project: format::read(&copy.project).ok()?,
        })
    }
}
