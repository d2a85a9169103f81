//! Which files did programs leave that were killed, and how are they taken away from nobody?
//!
//! Whoever needs a file holds its lock: a save its temporary file from the making to the renaming, a
//! window the files that stand for it and its document. The system lets go of a lock when its process
//! ends, however it ends. What nobody holds may go, and it goes while we hold it ourselves, so that
//! whoever makes or takes it at this very moment finds out: see [`FileSystem::open_lockable`].
//!
//! On a folder that is shared between machines a lock may reach no further than one of them. So what
//! is not certain to be of this machine goes only after a day.

use std::fs::TryLockError;
use std::path::Path;
use std::time::{Duration, SystemTime};

use super::file_system::{EntryKind, Facts, FileSystem};
use super::temporary::{Origin, origin};

/// After this time a temporary file that nobody is seen to hold is stale, whoever wrote it: no save
/// takes a day.
const STALE_AFTER: Duration = Duration::from_hours(24);

/// The number of stale temporary files that were removed from `folder`.
///
/// Stale is an ordinary file that carries our kind of name and whose lock nobody holds: at once if
/// it was made on this machine, else after a day. Where the disk knows no locks, one of this machine
/// is stale when its process is gone or a day has passed.
/// What cannot be listed, looked at or removed is left.
pub fn sweep_stale(fs: &dyn FileSystem, folder: &Path) -> usize {
    let machine = fs.machine();
    let names = fs.names(folder).unwrap_or_default();
    let ours = names.iter().filter_map(|name| Some((name, origin(name)?)));
    ours.filter(|(name, origin)| {
        let is_of_this_machine = origin.is(machine.as_deref());
        remove_stale(fs, &folder.join(name), origin, is_of_this_machine)
    })
    .count()
}

/// The same for the folder that the file `path` lies in, links followed.
pub fn sweep_beside(fs: &dyn FileSystem, path: &Path) -> usize {
    match fs.canonicalize(path) {
        Ok(real) => real.parent().map_or(0, |folder| sweep_stale(fs, folder)),
        Err(_) => 0,
    }
}

fn remove_stale(
    fs: &dyn FileSystem,
    path: &Path,
    origin: &Origin,
    is_of_this_machine: bool,
) -> bool {
    let Ok(facts) = fs.entry_facts(path) else {
        return false;
    };
    let is_old = is_old(&facts);
    if facts.kind != EntryKind::File || !(is_of_this_machine || is_old) {
        return false;
    }
    let without_locks = if is_old || fs.process_is_gone(origin.process_id) {
        WithoutLocks::Remove
    } else {
        WithoutLocks::Leave
    };
    remove_unheld(fs, path, without_locks)
}

fn is_old(facts: &Facts) -> bool {
    let age = facts
        .modified
        .and_then(|at| SystemTime::now().duration_since(at).ok());
    age.is_some_and(|age| age > STALE_AFTER)
}

/// What becomes of a file on a disk that knows no locks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum WithoutLocks {
    Remove,
    Leave,
}

/// Takes an ordinary file away if nobody holds its lock; whether it was taken away.
pub(crate) fn remove_unheld(fs: &dyn FileSystem, path: &Path, without_locks: WithoutLocks) -> bool {
    let Ok(file) = fs.open_lockable(path) else {
        return false;
    };
    let may_go = match file.try_lock() {
        Ok(()) => true,
        Err(TryLockError::WouldBlock) => false,
        Err(TryLockError::Error(_)) => without_locks == WithoutLocks::Remove,
    };
    // The lock is held until after the removal.
    may_go && file.is_at(path).is_ok_and(|is_at| is_at) && fs.remove(path).is_ok()
}
