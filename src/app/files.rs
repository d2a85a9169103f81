//! How does a document come from a file and get into one?

use crate::project::{
    FileSystem, Project, ReadError, SaveError, format, read_text, save_whole, sweep_beside,
};
use std::path::{Path, PathBuf};

/// A document as it was read.
pub(super) struct Opened {
    /// The document.
    pub project: Project,
    /// What the file holds.
    pub text: String,
    /// Whether saving would change the file's form: comments and layout of a hand-edited file go.
    pub has_other_form: bool,
}

/// Why a file could not be opened.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    /// It could not be read.
    #[error(transparent)]
    Read(#[from] ReadError),
    /// What it holds is no project.
    #[error("{reason}: {}", name_of(path))]
    Format {
        /// What is wrong, and where.
        reason: format::FormatError,
        /// The file.
        path: PathBuf,
    },
}

fn name_of(path: &Path) -> String {
    path.file_name()
        .map_or_else(String::new, |name| name.to_string_lossy().into_owned())
}

/// The document in a file; what killed saves left beside it is taken away.
///
/// # Errors
/// When it cannot be read or is no project; one sentence, the path last.
pub(super) fn open(fs: &dyn FileSystem, path: &Path) -> Result<Opened, OpenError> {
    sweep_beside(fs, path);
    let text = read_text(fs, path)?;
    let project = format::read(&text).map_err(|reason| OpenError::Format {
        reason,
        path: path.to_owned(),
    })?;
    Ok(Opened {
        has_other_form: format::write(&project) != text,
        project,
        text,
    })
}

/// Why a document was not put into a file, or not surely.
#[derive(Debug, thiserror::Error)]
pub(super) enum KeepError {
    /// Its text would not read back.
    #[error("this project cannot be written so that it reads back; nothing was saved, report it")]
    NotReadable,
    /// The file could not be written.
    #[error(transparent)]
    Save(#[from] SaveError),
}

impl KeepError {
    /// Whether the file holds the document all the same.
    pub(super) fn is_saved(&self) -> bool {
        matches!(self, Self::Save(error) if error.is_saved())
    }
}

/// Puts a document into a file, whole or not at all.
///
/// # Errors
/// When it cannot be written; the file is then as it was. A text that would not read back is
/// never put in the place of one that does.
pub(super) fn save(fs: &dyn FileSystem, path: &Path, project: &Project) -> Result<(), KeepError> {
    let text = format::write(project);
    if format::read(&text).is_err() {
        return Err(KeepError::NotReadable);
    }
    save_whole(fs, path, text.as_bytes())?;
    Ok(())
}

/// The path that was typed, with `.ron` where it has no ending, `~` for the home folder.
pub(super) fn typed_path(text: &str) -> Option<PathBuf> {
    let text = text.trim();
    if text.is_empty() {
        return None;
    }
    let path = match (text.strip_prefix("~/"), home()) {
        (Some(rest), Some(home)) => home.join(rest),
        _ => PathBuf::from(text),
    };
    Some(path)
}

fn home() -> Option<PathBuf> {
    directories::BaseDirs::new().map(|dirs| dirs.home_dir().to_owned())
}

/// A path to save at: the ending is added where there is none.
pub(super) fn with_ending(path: PathBuf, ending: &str) -> PathBuf {
    if path.extension().is_some() {
        path
    } else {
        path.with_extension(ending)
    }
}
