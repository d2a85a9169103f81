//! Why can a file not be saved, in one sentence that says what to do?

use super::file_system::shown;
use std::path::PathBuf;

/// Why a file was not saved, or not surely.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SaveError {
    /// The path ends in no name.
    #[error("this path ends in no file name, add one: {}", shown(path))]
    NoFileName {
        /// The path as given.
        path: PathBuf,
    },
    /// The folder to save in does not exist.
    #[error(
        "there is no such folder, create it or save somewhere else: {}",
        shown(folder)
    )]
    NoFolder {
        /// The folder as given.
        folder: PathBuf,
    },
    /// A folder has this name.
    #[error("a folder has this name, choose another name: {}", shown(path))]
    IsAFolder {
        /// The path as given.
        path: PathBuf,
    },
    /// A device, a pipe or a socket has this name.
    #[error(
        "a device or a pipe has this name, choose another name: {}",
        shown(path)
    )]
    NotAFile {
        /// The path as given.
        path: PathBuf,
    },
    /// A link has this name, and leads nowhere.
    #[error(
        "a link that leads nowhere has this name, choose another name: {}",
        shown(path)
    )]
    BrokenLink {
        /// The path as given.
        path: PathBuf,
    },
    /// Only from [`save_new`](super::save_new): the name is taken.
    #[error(
        "there is already a file of this name, choose another name: {}",
        shown(path)
    )]
    NameTaken {
        /// The path as given.
        path: PathBuf,
    },
    /// The file is there, and this user may not change it.
    #[error(
        "the file is write-protected ({reason}), choose another name: {}",
        shown(path)
    )]
    Protected {
        /// Why, in words.
        reason: String,
        /// The path as given.
        path: PathBuf,
    },
    /// No new file can be made in the folder.
    #[error(
        "the folder cannot be written ({reason}), save somewhere else: {}",
        shown(folder)
    )]
    FolderNotWritable {
        /// Why, in words.
        reason: String,
        /// The folder, links followed.
        folder: PathBuf,
    },
    /// Any other failure; the file is as it was before.
    #[error(
        "saving failed ({reason}), what was there before is untouched: {}",
        shown(path)
    )]
    NotSaved {
        /// Why, in words.
        reason: String,
        /// The path as given.
        path: PathBuf,
    },
    /// The new content is in place, but the disk did not confirm its name.
    ///
    /// Saved for every program that looks now; after a power cut the previous version may be back.
    #[error(
        "saved, but the disk has not confirmed it ({reason}) and it may not survive a power cut: {}",
        shown(path)
    )]
    NotConfirmed {
        /// Why, in words.
        reason: String,
        /// The path as given.
        path: PathBuf,
    },
}

impl SaveError {
    /// Whether the new content is in place all the same.
    pub fn is_saved(&self) -> bool {
        matches!(self, Self::NotConfirmed { .. })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_error_is_one_short_line_with_the_path_last() {
        let path = PathBuf::from(format!("/{}/end.ron", "long folder/".repeat(300)));
        let folder = path.clone();
        let reason = "r".repeat(80);
        let errors = [
            SaveError::NoFileName { path: path.clone() },
            SaveError::NoFolder {
                folder: folder.clone(),
            },
            SaveError::IsAFolder { path: path.clone() },
            SaveError::NotAFile { path: path.clone() },
            SaveError::BrokenLink { path: path.clone() },
            SaveError::NameTaken { path: path.clone() },
            SaveError::Protected {
                reason: reason.clone(),
                path: path.clone(),
            },
            SaveError::FolderNotWritable {
                reason: reason.clone(),
                folder,
            },
            SaveError::NotSaved {
                reason: reason.clone(),
                path: path.clone(),
            },
            SaveError::NotConfirmed { reason, path },
        ];
        for error in errors {
            let sentence = error.to_string();
            assert!(sentence.chars().count() < 300, "{sentence}");
            assert!(sentence.ends_with("/end.ron"), "{sentence}");
            assert_eq!(
                error.is_saved(),
                sentence.starts_with("saved"),
                "{sentence}"
            );
        }
    }
}
