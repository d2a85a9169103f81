//! How does unsaved work survive a crash?
//!
//! About a second after the last change a copy is written on a thread of its own, into a folder of
//! the program's. A lock tells whether the window that wrote it still lives; the next start offers
//! what a dead one left. Saving, discarding and an orderly end take the copy away.

mod abandoned;
mod lock;
mod sweeping;
mod worker;

pub(super) use abandoned::{Abandoned, abandoned};
pub(super) use lock::Lock;
#[cfg(test)]
pub(super) use sweeping::sweep;

use super::desk::Desk;
use crate::project::{Disk, FileSystem, RecoveryCopy, Revision};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use std::time::{SystemTime, UNIX_EPOCH};
use worker::{Wish, Worker};

/// Unsaved work as it stands now, shared with whoever writes it when the program fails.
pub(super) type Latest = Arc<Mutex<Option<RecoveryCopy>>>;

/// Keeps a copy of unsaved work for one window.
pub(super) struct Keeper {
    fs: Arc<dyn FileSystem + Send + Sync>,
    path: PathBuf,
    lock: Option<Lock>,
    worker: Worker,
    latest: Latest,
    /// The revision that was last passed on, and whether it was unsaved.
    followed: Option<(Revision, bool)>,
}

impl std::fmt::Debug for Keeper {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Keeper")
            .field("path", &self.path)
            .finish_non_exhaustive()
    }
}

impl Keeper {
    /// A keeper with a copy and a lock of its own in a folder.
    pub(super) fn new(fs: Arc<dyn FileSystem + Send + Sync>, folder: &Path) -> Self {
        let begun = SystemTime::now()
            .duration_since(UNIX_EPOCH)
            .unwrap_or_default();
        let stem = format!("{}-{}", std::process::id(), begun.as_micros());
        let path = folder.join(format!("{stem}.ron"));
        Self {
            lock: Lock::taken(&*fs, &lock_of(&path)),
            fs: Arc::clone(&fs),
            worker: Worker::started(fs, path.clone()),
            latest: Latest::default(),
            path,
            followed: None,
        }
    }

    /// Where the copy lies, and what would be written there at once.
    pub(super) fn last_resort(&self) -> (PathBuf, Latest) {
        (self.path.clone(), Arc::clone(&self.latest))
    }

    /// Passes on what has changed since the last call.
    pub(super) fn follow(&mut self, desk: &Desk) {
        let state = (desk.history.revision(), desk.history.is_unsaved());
        if self.followed == Some(state) {
            return;
        }
        self.followed = Some(state);
        let copy = state.1.then(|| RecoveryCopy {
            file: desk.file.clone(),
            written_unix_s: now_unix_s(),
            project: desk.project().clone(),
        });
        if let Ok(mut latest) = self.latest.lock() {
            latest.clone_from(&copy);
        }
        self.worker
            .wish(copy.map_or(Wish::Forget, |copy| Wish::Keep(Box::new(copy))));
    }

    /// The orderly end: what is unsaved now was to be.
    pub(super) fn end(&mut self) {
        if let Ok(mut latest) = self.latest.lock() {
            *latest = None;
        }
        self.worker.end();
        if let Some(lock) = self.lock.take() {
            lock.end(&*self.fs);
        }
    }
}

/// The lock that says whether the window of a copy still lives.
fn lock_of(copy: &Path) -> PathBuf {
    copy.with_extension("lock")
}

/// Seconds since 1970.
pub(super) fn now_unix_s() -> u64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH);
    since.map_or(0, |since| since.as_secs())
}

/// The folder for copies in the user's home, made if need be; none where there is no home.
pub(super) fn folder() -> Option<PathBuf> {
    let folders = directories::ProjectDirs::from("", "", "layshaft")?;
    let folder = folders.data_local_dir().join("recovery");
    if let Err(problem) = Disk.make_private_folder(&folder) {
        log::warn!("unsaved work cannot be kept: {problem}");
        return None;
    }
    Some(folder)
}
