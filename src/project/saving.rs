//! How is a file saved whole or not at all?
//!
//! A new file is written beside the old one, brought to the disk, and takes the old one's name in
//! one step; then the folder is brought to the disk too.
//! Killed at any moment, the name leads to the old content or to the new, never to a mixture; what
//! may stay behind is the new file under its temporary name, which the next save in this folder, or
//! the next opening, takes away: see [`sweep_stale`]. The save holds the lock of its temporary file
//! from its making to its renaming, so that no sweep takes it.
//!
//! What a reader of this recipe should know:
//! * A link stays a link, the file that it leads to is replaced.
//! * Other names of the same file (hard links) keep the old content: that is the price of never
//!   writing into the old file.
//! * Where no new file can be made in the folder, nothing is saved: there is no writing in place.

use std::fs::TryLockError;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use super::file_system::{Access, EntryKind, FileSystem, NewFile, reason};
use super::save_error::SaveError;
use super::sweeping::sweep_stale;
use super::temporary::temporary_name;

/// How many temporary names are tried before giving up.
///
/// A name is only taken if a killed process had the same id and left a file behind, and only lost if
/// a sweep came between the making of the file and the taking of its lock.
const NAMES_TRIED: usize = 100;

/// Saves `bytes` as the file `path`, whole or not at all, replacing a file of that name.
///
/// The file keeps its permissions; a new one gets those of any new file.
/// Up to [`SaveError::NotConfirmed`], every error means that the file is as it was.
///
/// # Errors
/// When `path` names no file that can be replaced, or any step fails.
pub fn save_whole(fs: &dyn FileSystem, path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    let target = Target::existing_or_new(fs, path)?;
    replace(fs, &target, bytes)
}

/// Saves `bytes` as the file `path` that only its owner may read and change, whole or not at all.
///
/// Only the permissions differ from [`save_whole`], and that a link of that name is itself replaced
/// and not followed: where others cannot look, no link is meant.
///
/// # Errors
/// When something has this name that is no file, or any step fails.
pub fn save_private(fs: &dyn FileSystem, path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    let target = Target::private(fs, path)?;
    replace(fs, &target, bytes)
}

/// Puts a file that holds `bytes` in the place of the target.
fn replace(fs: &dyn FileSystem, target: &Target<'_>, bytes: &[u8]) -> Result<(), SaveError> {
    let temporary = write_beside(fs, target, bytes)?;
    match fs.rename(&temporary.path, &target.real) {
        Ok(()) => finish(fs, target, temporary),
        Err(error) => Err(temporary.given_up(fs, not_saved(target.given, &error))),
    }
}

/// Saves `bytes` as the new file `path`, whole or not at all; nothing is ever replaced.
///
/// Where the disk knows no second names for a file (memory sticks), a file that another program
/// makes under this name in the last instant is not noticed.
///
/// # Errors
/// When anything has this name, or any step fails.
pub fn save_new(fs: &dyn FileSystem, path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    let target = Target::new(fs, path)?;
    if target
        .is_taken(fs)
        .map_err(|error| not_saved(path, &error))?
    {
        return Err(SaveError::NameTaken {
            path: path.to_owned(),
        });
    }
    let temporary = write_beside(fs, &target, bytes)?;
    let placed = match fs.link(&temporary.path, &target.real) {
        // Should this fail, the file has a second name until the sweep that follows.
        Ok(()) => {
            let _ = fs.remove(&temporary.path);
            Ok(())
        }
        Err(_) => rename_unless_taken(fs, &temporary.path, &target),
    };
    match placed {
        Ok(()) => finish(fs, &target, temporary),
        Err(error) => Err(temporary.given_up(fs, error)),
    }
}

/// What [`save_new`] does where the name is taken after all, or a file can have only one name.
fn rename_unless_taken(
    fs: &dyn FileSystem,
    temporary: &Path,
    target: &Target<'_>,
) -> Result<(), SaveError> {
    let renamed = match target.is_taken(fs) {
        Ok(false) => fs.rename(temporary, &target.real),
        Ok(true) => Err(ErrorKind::AlreadyExists.into()),
        Err(error) => Err(error),
    };
    renamed.map_err(|error| {
        let path = target.given.to_owned();
        match error.kind() {
            ErrorKind::AlreadyExists => SaveError::NameTaken { path },
            _ => not_saved(target.given, &error),
        }
    })
}

/// Whether a file could be saved there, as far as that can be known without writing.
///
/// # Errors
/// What [`save_whole`] would find wrong with the path before it writes.
pub fn check_target(fs: &dyn FileSystem, path: &Path) -> Result<(), SaveError> {
    Target::existing_or_new(fs, path).map(drop)
}

/// Where a save goes.
struct Target<'a> {
    /// The path that the user knows.
    given: &'a Path,
    /// The path with links followed.
    real: PathBuf,
    /// The folder of `real`.
    folder: PathBuf,
    /// What the permissions of the new file are to be.
    permissions: Permissions,
}

/// What the permissions of a saved file are to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Permissions {
    /// Those of the file that is replaced.
    AsBefore,
    /// Those of any new file.
    Usual,
    /// The owner's alone.
    Private,
}

impl<'a> Target<'a> {
    /// The file that `given` leads to, or a new one of that name.
    fn existing_or_new(fs: &dyn FileSystem, given: &'a Path) -> Result<Self, SaveError> {
        let is_nothing = |error: &io::Error| {
            matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory)
        };
        match fs.canonicalize(given) {
            Ok(real) => Self::existing(fs, given, real),
            Err(error) if is_nothing(&error) => match fs.entry_facts(given) {
                Ok(_) => Err(SaveError::BrokenLink {
                    path: given.to_owned(),
                }),
                Err(error) if is_nothing(&error) => Self::new(fs, given),
                Err(error) => Err(not_saved(given, &error)),
            },
            Err(error) => Err(not_saved(given, &error)),
        }
    }

    /// An ordinary file that this user may change.
    fn existing(fs: &dyn FileSystem, given: &'a Path, real: PathBuf) -> Result<Self, SaveError> {
        let path = given.to_owned();
        match fs.facts(&real).map(|facts| facts.kind) {
            Ok(EntryKind::File) => {}
            Ok(EntryKind::Folder) => return Err(SaveError::IsAFolder { path }),
            Ok(_) => return Err(SaveError::NotAFile { path }),
            Err(error) => return Err(not_saved(given, &error)),
        }
        match fs.check_writable(&real) {
            // A rename needs no permission of the file itself, so that of the user is asked for.
            Err(error) if error.kind() == ErrorKind::PermissionDenied => {
                return Err(SaveError::Protected {
                    reason: reason(&error),
                    path,
                });
            }
            // Whatever else is wrong, the save itself finds out and words it better.
            _ => {}
        }
        let folder = real.parent().unwrap_or(&real).to_owned();
        Ok(Self {
            given,
            real,
            folder,
            permissions: Permissions::AsBefore,
        })
    }

    /// A name in an existing folder.
    fn new(fs: &dyn FileSystem, given: &'a Path) -> Result<Self, SaveError> {
        let ends_in_a_name = !ends_in_separator(given);
        let Some(name) = given.file_name().filter(|_| ends_in_a_name) else {
            return Err(SaveError::NoFileName {
                path: given.to_owned(),
            });
        };
        let parent = given
            .parent()
            .filter(|parent| !parent.as_os_str().is_empty());
        let parent = parent.unwrap_or_else(|| Path::new("."));
        let is_folder = |path: &Path| fs.facts(path).is_ok_and(|f| f.kind == EntryKind::Folder);
        match fs.canonicalize(parent) {
            Ok(folder) if is_folder(&folder) => Ok(Self {
                given,
                real: folder.join(name),
                folder,
                permissions: Permissions::Usual,
            }),
            Err(error) if error.kind() == ErrorKind::PermissionDenied => {
                let folder = parent.to_owned();
                Err(SaveError::FolderNotWritable {
                    reason: reason(&error),
                    folder,
                })
            }
            _ => Err(SaveError::NoFolder {
                folder: parent.to_owned(),
            }),
        }
    }

    /// A name in an existing folder, or the file or link of that name, not followed.
    fn private(fs: &dyn FileSystem, given: &'a Path) -> Result<Self, SaveError> {
        let target = Self {
            permissions: Permissions::Private,
            ..Self::new(fs, given)?
        };
        let path = || given.to_owned();
        match fs.entry_facts(&target.real).map(|facts| facts.kind) {
            Ok(EntryKind::File | EntryKind::Link) => Ok(target),
            Ok(EntryKind::Folder) => Err(SaveError::IsAFolder { path: path() }),
            Ok(EntryKind::Other) => Err(SaveError::NotAFile { path: path() }),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(target),
            Err(error) => Err(not_saved(given, &error)),
        }
    }

    /// Whether anything has this name, be it a link that leads nowhere.
    fn is_taken(&self, fs: &dyn FileSystem) -> io::Result<bool> {
        match fs.entry_facts(&self.real) {
            Ok(_) => Ok(true),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(false),
            Err(error) => Err(error),
        }
    }
}

/// Whether a path is spelled like that of a folder, with a separator behind the name.
pub(crate) fn ends_in_separator(path: &Path) -> bool {
    let last = path.as_os_str().as_encoded_bytes().last();
    last.is_some_and(|last| std::path::is_separator(char::from(*last)))
}

fn not_saved(path: &Path, error: &io::Error) -> SaveError {
    SaveError::NotSaved {
        reason: reason(error),
        path: path.to_owned(),
    }
}

/// A file under its temporary name; its lock is held until this is dropped.
struct Temporary {
    path: PathBuf,
    file: Box<dyn NewFile>,
}

impl Temporary {
    /// `error`, after the file was removed; if it cannot be, a later sweep takes it away.
    fn given_up(self, fs: &dyn FileSystem, error: SaveError) -> SaveError {
        let _ = fs.remove(&self.path);
        error
    }
}

/// The temporary file beside the target that holds `bytes`, on the disk.
fn write_beside(
    fs: &dyn FileSystem,
    target: &Target<'_>,
    bytes: &[u8],
) -> Result<Temporary, SaveError> {
    let mut temporary = create_temporary(fs, target)?;
    // Permissions first: what only the owner may read shall not lie open for a moment.
    let permitted = match target.permissions {
        Permissions::AsBefore => fs.copy_permissions(&target.real, &temporary.path),
        Permissions::Usual | Permissions::Private => Ok(()),
    };
    let written = permitted.and_then(|()| write_through(temporary.file.as_mut(), bytes));
    match written {
        Ok(()) => Ok(temporary),
        Err(error) => Err(temporary.given_up(fs, not_saved(target.given, &error))),
    }
}

fn write_through(file: &mut dyn NewFile, bytes: &[u8]) -> io::Result<()> {
    file.write_all(bytes)?;
    file.flush()?;
    file.sync()
}

/// A new empty file beside the target, its lock held.
fn create_temporary(fs: &dyn FileSystem, target: &Target<'_>) -> Result<Temporary, SaveError> {
    let name = target.real.file_name().unwrap_or_default();
    let machine = fs.machine();
    let access = match target.permissions {
        Permissions::Private => Access::Owner,
        Permissions::AsBefore | Permissions::Usual => Access::Usual,
    };
    let mut last = io::Error::from(ErrorKind::AlreadyExists);
    for _ in 0..NAMES_TRIED {
        let path = target.folder.join(temporary_name(name, machine.as_deref()));
        match create_held(fs, &path, access) {
            Ok(file) => return Ok(Temporary { path, file }),
            Err(error) if error.kind() == ErrorKind::AlreadyExists => last = error,
            Err(error) => {
                last = error;
                break;
            }
        }
    }
    match last.kind() {
        ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => {
            Err(SaveError::FolderNotWritable {
                reason: reason(&last),
                folder: target.folder.clone(),
            })
        }
        _ => Err(not_saved(target.given, &last)),
    }
}

/// A new empty file whose lock is held, where the disk knows locks.
///
/// # Errors
/// `AlreadyExists` where the name is taken or a sweep has taken hold of the file: then another name
/// does. Else when the file cannot be made.
fn create_held(fs: &dyn FileSystem, path: &Path, access: Access) -> io::Result<Box<dyn NewFile>> {
    let file = fs.create_new(path, access)?;
    let is_ours = match file.try_lock() {
        // A sweep may have come before us, and the file that we hold has no name any more.
        Ok(()) => file.is_at(path),
        Err(TryLockError::WouldBlock) => Ok(false),
        // Without locks, sweeps go by the process, which is here.
        Err(TryLockError::Error(_)) => Ok(true),
    };
    match is_ours {
        Ok(true) => Ok(file),
        Ok(false) => Err(ErrorKind::AlreadyExists.into()),
        Err(error) => {
            let _ = fs.remove(path);
            Err(error)
        }
    }
}

/// Brings the new name to the disk, and takes away what killed saves left beside it.
fn finish(fs: &dyn FileSystem, target: &Target<'_>, temporary: Temporary) -> Result<(), SaveError> {
    // The file under its own name needs no lock.
    drop(temporary);
    let confirmed = fs.sync_folder(&target.folder);
    sweep_stale(fs, &target.folder);
    confirmed.map_err(|error| SaveError::NotConfirmed {
        reason: reason(&error),
        path: target.given.to_owned(),
    })
}
