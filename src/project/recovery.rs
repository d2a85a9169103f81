//! A copy of unsaved work as a file: what it holds, how it is written and read again.
//!
//! A copy is a file of its own, apart from the project's: it says which file the work belongs to,
//! what that file held when the work began, and when it was written. It is never put in the place of
//! a project by itself.

use super::document::Project;
use super::file_system::FileSystem;
use super::format::{self, WriteError};
use super::save_error::SaveError;
use super::saving::save_private;
use super::text_file::read_text;
use crate::platform;
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Unsaved work.
#[derive(Debug, Clone, PartialEq)]
pub struct RecoveryCopy {
    /// The file that the work belongs to, where it has one: an absolute path.
    pub file: Option<PathBuf>,
    /// The digest of what that file held when it was last read or written, where that is known.
    pub began_from: Option<u64>,
    /// When the copy was written, in seconds since 1970.
    pub written_unix_s: u64,
    /// The work.
    pub project: Arc<Project>,
}

/// Why unsaved work was not kept.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CopyError {
    /// The project has no text.
    #[error(transparent)]
    Project(#[from] WriteError),
    /// The copy has none.
    #[error("the copy cannot be spelled ({0}), report it")]
    Copy(String),
    /// The file could not be written.
    #[error(transparent)]
    Save(#[from] SaveError),
}

impl CopyError {
    /// Whether the copy is in place all the same.
    pub fn is_kept(&self) -> bool {
        matches!(self, Self::Save(error) if error.is_saved())
    }
}

/// The format of a copy that is written.
const FORMAT: u32 = 2;

/// The part that every format of a copy shares.
#[derive(Deserialize)]
struct Header {
    recovery: u32,
}

/// A copy as it stands in a file. The project is text of its own format, read by its own reader.
#[derive(Serialize, Deserialize)]
struct CopyFile {
    recovery: u32,
    file: Option<FileText>,
    began_from: Option<u64>,
    written_unix_s: u64,
    project: String,
}

/// The first format: paths as they were typed, and no word of what the file held.
#[derive(Deserialize)]
struct FirstCopyFile {
    file: Option<PathBuf>,
    written_unix_s: u64,
    project: String,
}

/// A path without loss: as text where it is text, else in the bytes of the operating system.
#[derive(Serialize, Deserialize)]
enum FileText {
    Text(String),
    Bytes(Vec<u8>),
}

impl RecoveryCopy {
    /// Writes the copy into a file, whole or not at all.
    ///
    /// # Errors
    /// When it cannot be written; an older copy is then as it was.
    pub fn write(&self, fs: &dyn FileSystem, path: &Path) -> Result<(), CopyError> {
        let copy = CopyFile {
            recovery: FORMAT,
            file: self.file.as_deref().map(FileText::of),
            began_from: self.began_from,
            written_unix_s: self.written_unix_s,
            project: format::write(&self.project)?,
        };
        let text = ron::ser::to_string(&copy).map_err(|e| CopyError::Copy(e.to_string()))?;
        save_private(fs, path, text.as_bytes())?;
        Ok(())
    }

    /// The same, where a copy that the disk has not confirmed counts as kept: it is read all the same.
    ///
    /// # Errors
    /// When it cannot be written; an older copy is then as it was.
    pub fn keep(&self, fs: &dyn FileSystem, path: &Path) -> Result<(), CopyError> {
        match self.write(fs, path) {
            Err(problem) if problem.is_kept() => Ok(()),
            written => written,
        }
    }

    /// The copy in a file; none where it cannot be read, and the file stays.
    pub fn read(fs: &dyn FileSystem, path: &Path) -> Option<Self> {
        let text = read_text(fs, path).ok()?;
        let header: Header = ron::from_str(&text).ok()?;
        let (file, began_from, written_unix_s, project) = match header.recovery {
            1 => {
                let copy: FirstCopyFile = ron::from_str(&text).ok()?;
                (copy.file, None, copy.written_unix_s, copy.project)
            }
            FORMAT => {
                let copy: CopyFile = ron::from_str(&text).ok()?;
                let file = copy.file.and_then(FileText::into_path);
                (file, copy.began_from, copy.written_unix_s, copy.project)
            }
            _ => return None,
        };
        Some(Self {
            // Where a path that does not begin at the root once led, nobody knows any more.
            file: file.filter(|file| file.is_absolute()),
            began_from,
            written_unix_s,
            project: Arc::new(format::read(&project).ok()?),
        })
    }
}

impl FileText {
    fn of(path: &Path) -> Self {
        match path.to_str() {
            Some(text) => Self::Text(text.to_owned()),
            None => Self::Bytes(platform::path_bytes(path)),
        }
    }

    fn into_path(self) -> Option<PathBuf> {
        match self {
            Self::Text(text) => Some(text.into()),
            Self::Bytes(bytes) => platform::path_from_bytes(bytes),
        }
    }
}
