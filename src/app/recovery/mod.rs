//! How unsaved work survives a crash.
//!
//! About a second after the last change a copy is written on a thread of its own, into a folder of
//! the program's. A lock tells whether the window that wrote it still lives; the next start offers
//! what a dead one left. Saving, discarding and an orderly end take the copy away.

mod abandoned;
mod lock;
mod pace;
mod sweeping;
mod worker;

pub(super) use abandoned::{Abandoned, Standing, abandoned};
pub(super) use lock::Lock;
pub use pace::Pace;
#[cfg(test)]
pub(super) use sweeping::sweep;

use super::background::Wake;
use super::desk::Desk;
use crate::project::{FileSystem, RecoveryCopy, Revision};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use std::time::{SystemTime, UNIX_EPOCH};
use worker::{Wish, Worker};

/// Unsaved work as it stands now, shared with whoever writes it when the program fails.
pub(super) type Latest = Arc<Mutex<Option<RecoveryCopy>>>;

/// Keeps a copy of unsaved work for one window.
pub(super) struct Keeper {
    path: PathBuf,
    worker: Worker,
    latest: Latest,
    /// What was last passed on: the revision, whether it was unsaved, and what its file held.
    followed: Option<(Revision, bool, Option<u64>)>,
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
    pub(super) fn new(
        fs: Arc<dyn FileSystem + Send + Sync>,
        folder: &Path,
        wake: Wake,
        pace: Pace,
    ) -> Self {
        let begun = SystemTime::now()
            .duration_since(UNIX_EPOCH)
            .unwrap_or_default();
        let stem = format!("{}-{}", std::process::id(), begun.as_micros());
        let path = folder.join(format!("{stem}.ron"));
        Self {
            worker: Worker::started(fs, path.clone(), wake, pace),
            latest: Latest::default(),
            path,
            followed: None,
        }
    }

    /// Where the copy lies, and what would be written there at once.
    pub(super) fn last_resort(&self) -> (PathBuf, Latest) {
        (self.path.clone(), Arc::clone(&self.latest))
    }

    /// Why nothing is kept, for as long as nothing is.
    pub(super) fn problem(&self) -> Option<String> {
        self.worker.problem()
    }

    /// Passes on what has changed since the last call, open gestures included.
    pub(super) fn follow(&mut self, desk: &Desk) {
        let is_unsaved = desk.history.is_unsaved();
        let state = (desk.history.revision(), is_unsaved, desk.on_disk);
        if self.followed == Some(state) {
            return;
        }
        self.followed = Some(state);
        let copy = is_unsaved.then(|| RecoveryCopy {
            file: desk.file.clone(),
            began_from: desk.on_disk,
            written_unix_s: now_unix_s(),
            project: desk.history.snapshot(),
        });
        if let Ok(mut latest) = self.latest.lock() {
            latest.clone_from(&copy);
        }
        self.worker.wish(copy.map_or(Wish::Forget, Wish::Keep));
    }

    /// The orderly end: what is unsaved now was to be.
    pub(super) fn end(&mut self) {
        if let Ok(mut latest) = self.latest.lock() {
            *latest = None;
        }
        self.worker.end();
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

/// The folder for copies in the user's home; none where there is no home.
pub(super) fn folder() -> Option<PathBuf> {
    let folders = directories::ProjectDirs::from("", "", "layshaft")?;
    Some(folders.data_local_dir().join("recovery"))
}
