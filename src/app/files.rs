//! How does a document come from a file and get into one?

use crate::platform;
use crate::project::{
    EntryKind, FileSystem, Project, ProjectTextError, ReadError, SaveError, digest,
    ends_in_separator, format, is_picture_file, read_project_text, read_text, save_whole, shown,
    sweep_beside,
};
use percent_encoding::percent_decode_str;
use std::path::{Path, PathBuf};

/// A document, where it was found.
pub(super) enum Found {
    /// In a project file.
    InFile(Opened),
    /// In a picture, which nothing is ever saved in.
    InPicture(Project),
}

/// A document as it was read.
pub(super) struct Opened {
    /// The document.
    pub project: Project,
    /// The digest of what the file holds.
    pub digest: u64,
    /// Whether saving would change the file's form: comments and layout of a hand-edited file go.
    pub has_other_form: bool,
}

/// Why a file could not be opened.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    /// Its path leads nowhere that could be told.
    #[error(transparent)]
    Path(#[from] PathError),
    /// It could not be read.
    #[error(transparent)]
    Read(#[from] ReadError),
    /// There is no text of a project to be had from it.
    #[error(transparent)]
    Text(#[from] ProjectTextError),
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

/// The document in a project file or in a picture; what killed saves left beside it is taken away.
///
/// # Errors
/// When it cannot be read or holds no project; one sentence, the path last.
pub(super) fn found(fs: &dyn FileSystem, path: &Path) -> Result<Found, OpenError> {
    sweep_beside(fs, path);
    let found = read_project_text(fs, path)?;
    if found.is_in_picture {
        return project_of(&found.text, path).map(Found::InPicture);
    }
    opened(&found.text, path).map(Found::InFile)
}

/// The document in a project file; what killed saves left beside it is taken away.
///
/// # Errors
/// When it cannot be read or is no project; one sentence, the path last.
pub(super) fn open(fs: &dyn FileSystem, path: &Path) -> Result<Opened, OpenError> {
    sweep_beside(fs, path);
    opened(&read_text(fs, path)?, path)
}

fn opened(text: &str, path: &Path) -> Result<Opened, OpenError> {
    let project = project_of(text, path)?;
    Ok(Opened {
        // A project that has no text cannot be saved at all: that is said when it is.
        has_other_form: format::is_written_by_hand(text, &project).is_ok_and(|by_hand| by_hand),
        digest: digest(text.as_bytes()),
        project,
    })
}

fn project_of(text: &str, path: &Path) -> Result<Project, OpenError> {
    format::read(text).map_err(|reason| OpenError::Format {
        reason,
        path: path.to_owned(),
    })
}

/// Why a document was not put into a file, or not surely.
#[derive(Debug, thiserror::Error)]
pub(super) enum KeepError {
    /// It has no text.
    #[error(transparent)]
    Format(#[from] format::WriteError),
    /// Its text would not read back.
    #[error("this project cannot be written so that it reads back; nothing was saved, report it")]
    NotReadable,
    /// The file could not be written.
    #[error(transparent)]
    Save(#[from] SaveError),
}

/// A document in its file.
pub(super) struct Saved {
    /// The digest of what the file holds.
    pub digest: u64,
    /// Why it may not survive a power cut, where it may not.
    pub doubt: Option<SaveError>,
}

/// Puts a document into a file, whole or not at all.
///
/// # Errors
/// When it cannot be written; the file is then as it was. A text that would not read back is
/// never put in the place of one that does.
pub(super) fn save(
    fs: &dyn FileSystem,
    path: &Path,
    project: &Project,
) -> Result<Saved, KeepError> {
    let text = format::write(project)?;
    if format::read(&text).is_err() {
        return Err(KeepError::NotReadable);
    }
    let doubt = match save_whole(fs, path, text.as_bytes()) {
        Ok(()) => None,
        Err(doubt) if doubt.is_saved() => Some(doubt),
        Err(problem) => return Err(problem.into()),
    };
    Ok(Saved {
        digest: digest(text.as_bytes()),
        doubt,
    })
}

/// The path that was typed or dropped in: with `~` for the home folder, in the quotation marks of a
/// shell, or as the address of a file.
pub(super) fn typed_path(text: &str) -> Option<PathBuf> {
    let text = without_quotes(text.trim());
    if text.is_empty() {
        return None;
    }
    if let Some(address) = text.strip_prefix("file://") {
        return Some(path_of_address(address));
    }
    let from_home = if text == "~" {
        Some("")
    } else {
        text.strip_prefix("~/")
    };
    let path = match (from_home, home()) {
        (Some(rest), Some(home)) => home.join(rest),
        _ => PathBuf::from(text),
    };
    Some(path)
}

/// A text without the quotation marks around it.
fn without_quotes(text: &str) -> &str {
    let marks = ["\"", "'"];
    let bare = marks.iter().find_map(|mark| {
        let inner = text.strip_prefix(mark)?.strip_suffix(mark)?;
        Some(inner.trim())
    });
    bare.unwrap_or(text)
}

/// The path in the address of a file, without `file://`.
///
/// # Source
/// RFC 8089, appendix B: the host is empty or this machine; RFC 3986, 2.1, for `%20` and the like.
fn path_of_address(address: &str) -> PathBuf {
    let path = address.strip_prefix("localhost").unwrap_or(address);
    let bytes: Vec<u8> = percent_decode_str(path).collect();
    // What is no path here stays as it was typed, and will be said not to be there.
    platform::path_from_bytes(bytes).unwrap_or_else(|| PathBuf::from(path))
}

/// Why a path leads nowhere that could be told.
#[derive(Debug, thiserror::Error)]
#[error(
    "the path cannot be made whole ({reason}), type it from the root: {}",
    shown(path)
)]
pub struct PathError {
    /// Why, in words.
    reason: String,
    /// The path as given.
    path: PathBuf,
}

/// A path from the root: a document's place must not change its meaning with the folder that the
/// program is started from.
///
/// # Errors
/// When the path is empty, or the folder that it begins in is gone.
pub(super) fn whole_path(path: &Path) -> Result<PathBuf, PathError> {
    std::path::absolute(path).map_err(|error| PathError {
        reason: platform::reason_in_words(&error),
        path: path.to_owned(),
    })
}

/// Refuses to save where a folder is meant, with the words in which opening one is answered.
///
/// # Errors
/// One sentence, the path last.
pub(super) fn check_is_no_folder(fs: &dyn FileSystem, path: &Path) -> Result<(), String> {
    let is_folder = fs
        .facts(path)
        .is_ok_and(|facts| facts.kind == EntryKind::Folder);
    let has_no_name = ends_in_separator(path);
    let path = path.to_owned();
    if is_folder {
        Err(ReadError::IsAFolder { path }.to_string())
    } else if has_no_name {
        Err(SaveError::NoFileName { path }.to_string())
    } else {
        Ok(())
    }
}

fn home() -> Option<PathBuf> {
    directories::BaseDirs::new().map(|dirs| dirs.home_dir().to_owned())
}

/// Refuses to save a project in a picture, or under the name of one: what it came out of stays as it is.
///
/// # Errors
/// One sentence, the path last.
pub(super) fn check_is_no_picture(fs: &dyn FileSystem, path: &Path) -> Result<(), String> {
    let what = if has_name_of_picture(path) {
        "the name of a picture"
    } else if is_picture_file(fs, path) {
        "a picture"
    } else {
        return Ok(());
    };
    let path = shown(path);
    Err(format!(
        "this is {what}, choose another one that ends in .ron: {path}"
    ))
}

/// Whether a name ends as those of pictures do.
pub(super) fn has_name_of_picture(path: &Path) -> bool {
    let ending = path.extension();
    ending.is_some_and(|ending| ending.eq_ignore_ascii_case("png"))
}

/// A path to save at: the ending is added where there is none, and completed where it is half-typed.
pub(super) fn with_ending(path: PathBuf, ending: &str) -> PathBuf {
    let typed = path.extension().map(|typed| typed.to_string_lossy());
    match typed {
        Some(typed) if !ending.starts_with(&*typed) => path,
        _ => path.with_extension(ending),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_is_taken_as_shells_and_file_managers_give_it() {
        for (text, path) in [
            ("/home/a/van.ron", "/home/a/van.ron"),
            ("  \"/home/a/my van.ron\" ", "/home/a/my van.ron"),
            ("'/home/a/my van.ron'", "/home/a/my van.ron"),
            ("file:///home/a/my%20van.ron", "/home/a/my van.ron"),
            (
                "file://localhost/home/a/b%C3%BCs.ron",
                "/home/a/b\u{fc}s.ron",
            ),
            ("it's.ron", "it's.ron"),
        ] {
            assert_eq!(typed_path(text), Some(PathBuf::from(path)), "{text}");
        }
        for text in ["", "  ", "\"\"", "' '"] {
            assert_eq!(typed_path(text), None, "{text:?}");
        }
    }
}
