//! Is somebody else at this already?
//!
//! A lock lives as long as the process that holds it: the system lets go of it after a crash. The
//! file that it is held on stays then, until the next start sweeps it away; so what is opened here to
//! be locked may be gone by the time that the lock is had.

use crate::project::{Access, FileSystem, LockableFile, digest};
use std::fs::TryLockError;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// How often a lock is tried. A sweep, or somebody who only asks, holds one for a moment.
const TRIES: usize = 4;

/// The pause between two tries, in ms.
const PAUSE_MS: u64 = 2;

/// A lock that is held until it is dropped.
pub(in crate::app) struct Lock {
    path: PathBuf,
    /// Holds it.
    file: Box<dyn LockableFile>,
}

impl std::fmt::Debug for Lock {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Lock")
            .field("path", &self.path)
            .finish_non_exhaustive()
    }
}

impl Lock {
    /// The lock on a file made for it; none where somebody else holds it or there can be none.
    pub(in crate::app) fn taken(fs: &dyn FileSystem, path: &Path) -> Option<Self> {
        let tried = tried(|| match lock_file(fs, path) {
            Ok((file, is_new)) => match file.try_lock() {
                Ok(()) if file.is_at(path).is_ok_and(|is_at| is_at) => Try::Done(Some(file)),
                Ok(()) => Try::Again,
                Err(TryLockError::WouldBlock) => Try::AgainLater,
                Err(TryLockError::Error(problem)) => {
                    if is_new {
                        // It stands for nothing.
                        let _ = fs.remove(path);
                    }
                    told(path, &problem)
                }
            },
            // Somebody made it or took it away since we looked.
            Err(error) if error.kind() == ErrorKind::AlreadyExists => Try::Again,
            Err(problem) => told(path, &problem),
        });
        let file = tried.flatten()?;
        let path = path.to_owned();
        Some(Self { path, file })
    }

    /// The file that the lock is held on.
    pub(in crate::app) fn path(&self) -> &Path {
        &self.path
    }

    /// Lets go of the lock and takes its file away.
    pub(in crate::app) fn end(self, fs: &dyn FileSystem) {
        // Still held, or it might be the next one's. A file that stays is swept later.
        let _ = fs.remove(&self.path);
        drop(self.file);
    }

    /// Whether somebody holds the lock on a file. Where locks are not known, nobody does.
    pub(in crate::app) fn is_held(fs: &dyn FileSystem, path: &Path) -> bool {
        let asked = tried(
            || match fs.open_lockable(path).map(|file| file.try_lock()) {
                Ok(Err(TryLockError::WouldBlock)) => Try::AgainLater,
                _ => Try::Done(()),
            },
        );
        asked.is_none()
    }

    /// The file in `folder` whose lock stands for an open document.
    pub(in crate::app) fn of_document(
        fs: &dyn FileSystem,
        folder: &Path,
        document: &Path,
    ) -> PathBuf {
        let real = fs.canonicalize(document);
        let real = real.unwrap_or_else(|_| document.to_owned());
        let digest = digest(real.as_os_str().as_encoded_bytes());
        folder.join(format!("open-{digest:016x}.lock"))
    }
}

/// The file for a lock, opened or made, and whether it was made.
fn lock_file(fs: &dyn FileSystem, path: &Path) -> io::Result<(Box<dyn LockableFile>, bool)> {
    match fs.open_lockable(path) {
        Err(error) if error.kind() == ErrorKind::NotFound => {
            let made = fs.create_new(path, Access::Owner)?;
            Ok((made, true))
        }
        opened => opened.map(|file| (file, false)),
    }
}

/// What came of one try.
enum Try<T> {
    Done(T),
    Again,
    AgainLater,
}

/// What came of the first try that came to an end; none if none did.
fn tried<T>(mut attempt: impl FnMut() -> Try<T>) -> Option<T> {
    for n in 1..=TRIES {
        match attempt() {
            Try::Done(outcome) => return Some(outcome),
            Try::AgainLater if n < TRIES => {
                std::thread::sleep(Duration::from_millis(PAUSE_MS));
            }
            Try::Again | Try::AgainLater => {}
        }
    }
    None
}

fn told<T>(path: &Path, problem: &io::Error) -> Try<Option<T>> {
    log::warn!("no lock on {}: {problem}", path.display());
    Try::Done(None)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::Disk;

    #[test]
    fn a_lock_is_held_once_and_let_go_when_it_is_dropped() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.lock");
        assert!(!Lock::is_held(&Disk, &path));
        let lock = Lock::taken(&Disk, &path);
        assert!(lock.is_some());
        assert!(Lock::is_held(&Disk, &path));
        assert!(Lock::taken(&Disk, &path).is_none());
        drop(lock);
        assert!(!Lock::is_held(&Disk, &path));
        let lock = Lock::taken(&Disk, &path).unwrap();
        lock.end(&Disk);
        assert!(!path.exists());
    }
}
