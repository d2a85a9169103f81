//! Is somebody else at this already?
//!
//! A lock lives as long as the process that holds it: the system lets go of it after a crash.

use crate::project::digest;
use std::fs::{File, OpenOptions, TryLockError};
use std::path::{Path, PathBuf};

/// A lock that is held until it is dropped.
#[derive(Debug)]
pub(in crate::app) struct Lock {
    _held: File,
}

impl Lock {
    /// The lock on a file made for it; none where somebody else holds it or there can be none.
    pub(in crate::app) fn taken(path: &Path) -> Option<Self> {
        let file = lock_file(path)?;
        match file.try_lock() {
            Ok(()) => Some(Self { _held: file }),
            Err(_) => None,
        }
    }

    /// Whether somebody holds the lock on a file. Where locks are not known, nobody does.
    pub(in crate::app) fn is_held(path: &Path) -> bool {
        let Ok(file) = File::open(path) else {
            return false;
        };
        matches!(file.try_lock(), Err(TryLockError::WouldBlock))
    }

    /// The file in `folder` whose lock stands for an open document.
    pub(in crate::app) fn of_document(folder: &Path, document: &Path) -> PathBuf {
        let real = document
            .canonicalize()
            .unwrap_or_else(|_| document.to_owned());
        let digest = digest(real.as_os_str().as_encoded_bytes());
        folder.join(format!("open-{digest:016x}.lock"))
    }
}

fn lock_file(path: &Path) -> Option<File> {
    let opened = OpenOptions::new()
        .create(true)
        .truncate(false)
        .write(true)
        .open(path);
    match opened {
        Ok(file) => Some(file),
        Err(problem) => {
            log::warn!("no lock on {}: {problem}", path.display());
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lock_is_held_once_and_let_go_when_it_is_dropped() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.lock");
        assert!(!Lock::is_held(&path));
        let lock = Lock::taken(&path);
        assert!(lock.is_some());
        assert!(Lock::is_held(&path));
        assert!(Lock::taken(&path).is_none());
        drop(lock);
        assert!(!Lock::is_held(&path));
        assert!(Lock::taken(&path).is_some());
    }
}
