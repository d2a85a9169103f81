//! How is a file saved whole or not at all?
//!
//! A new file is written beside the old one, brought to the disk, and takes the old one's name in
//! one step; then the folder is brought to the disk too.
//! Killed at any moment, the name leads to the old content or to the new, never to a mixture; what
//! may stay behind is the new file under its temporary name, which [`sweep_stale`](super::sweep_stale) takes
//! away.
//!
//! What a reader of this recipe should know:
//! * A link stays a link, the file that it leads to is replaced.
//! * Other names of the same file (hard links) keep the old content: that is the price of never
//!   writing into the old file.
//! * Where no new file can be made in the folder, nothing is saved: there is no writing in place.

use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use super::file_system::{EntryKind, FileSystem, NewFile, reason};
use super::save_error::SaveError;
use super::temporary::temporary_name;

/// How many temporary names are tried before giving up.
///
/// A name is only taken if a killed process had the same id and left a file behind.
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
    let temporary = write_beside(fs, &target, bytes)?;
    if let Err(error) = fs.rename(&temporary, &target.real) {
        return Err(given_up(fs, &temporary, not_saved(target.given, &error)));
    }
    confirm(fs, &target)
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
    match fs.link(&temporary, &target.real) {
        // Should this fail, the file has a second name until a later sweep.
        Ok(()) => drop(fs.remove(&temporary)),
        Err(_) => rename_unless_taken(fs, &temporary, &target)?,
    }
    confirm(fs, &target)
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
        let told = match error.kind() {
            ErrorKind::AlreadyExists => SaveError::NameTaken { path },
            _ => not_saved(target.given, &error),
        };
        given_up(fs, temporary, told)
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
    /// Whether there is a file to be replaced.
    exists: bool,
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
            exists: true,
        })
    }

    /// A name in an existing folder.
    fn new(fs: &dyn FileSystem, given: &'a Path) -> Result<Self, SaveError> {
        let Some(name) = given.file_name() else {
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
                exists: false,
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

    /// Whether anything has this name, be it a link that leads nowhere.
    fn is_taken(&self, fs: &dyn FileSystem) -> io::Result<bool> {
        match fs.entry_facts(&self.real) {
            Ok(_) => Ok(true),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(false),
            Err(error) => Err(error),
        }
    }
}

fn not_saved(path: &Path, error: &io::Error) -> SaveError {
    SaveError::NotSaved {
        reason: reason(error),
        path: path.to_owned(),
    }
}

/// The temporary file beside the target that holds `bytes`, on the disk and closed.
fn write_beside(
    fs: &dyn FileSystem,
    target: &Target<'_>,
    bytes: &[u8],
) -> Result<PathBuf, SaveError> {
    let (temporary, mut file) = create_temporary(fs, target)?;
    // Permissions first: what only the owner may read shall not lie open for a moment.
    let permitted = if target.exists {
        fs.copy_permissions(&target.real, &temporary)
    } else {
        Ok(())
    };
    let written = permitted.and_then(|()| write_through(file.as_mut(), bytes));
    // Closed before it is renamed or removed: Windows does neither with some open files.
    drop(file);
    match written {
        Ok(()) => Ok(temporary),
        Err(error) => Err(given_up(fs, &temporary, not_saved(target.given, &error))),
    }
}

fn write_through(file: &mut dyn NewFile, bytes: &[u8]) -> io::Result<()> {
    file.write_all(bytes)?;
    file.flush()?;
    file.sync()
}

/// A new empty file beside the target, and its path.
fn create_temporary<'f>(
    fs: &'f dyn FileSystem,
    target: &Target<'_>,
) -> Result<(PathBuf, Box<dyn NewFile + 'f>), SaveError> {
    let name = target.real.file_name().unwrap_or_default();
    let mut last = io::Error::from(ErrorKind::AlreadyExists);
    for _ in 0..NAMES_TRIED {
        let path = target.folder.join(temporary_name(name));
        match fs.create_new(&path) {
            Ok(file) => return Ok((path, file)),
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

/// Brings the new name to the disk.
fn confirm(fs: &dyn FileSystem, target: &Target<'_>) -> Result<(), SaveError> {
    fs.sync_folder(&target.folder)
        .map_err(|error| SaveError::NotConfirmed {
            reason: reason(&error),
            path: target.given.to_owned(),
        })
}

/// `error`, after the temporary file was removed; if it cannot be, a later sweep takes it away.
fn given_up(fs: &dyn FileSystem, temporary: &Path, error: SaveError) -> SaveError {
    drop(fs.remove(temporary));
    error
}
