//! Which files did killed saves leave, and may they be taken away?

use std::ffi::OsStr;
use std::path::Path;
use std::time::{Duration, SystemTime};

use super::file_system::{EntryKind, FileSystem};
use super::temporary::process_id_in;

/// After this time a temporary file is stale, whoever wrote it: no save takes a day.
const STALE_AFTER: Duration = Duration::from_hours(24);

/// The number of stale temporary files that were removed from `folder`.
///
/// Stale is a file that carries our kind of name and whose process is gone, or that is older than a
/// day. The process is looked for on this machine: on a shared folder, a save that another machine
/// is making at this very moment may fail, and says so there; its old file stays.
/// What cannot be listed or removed is left.
pub fn sweep_stale(fs: &dyn FileSystem, folder: &Path) -> usize {
    let names = fs.names(folder).unwrap_or_default();
    let stale = names.iter().filter(|name| is_stale(fs, folder, name));
    stale
        .filter(|name| fs.remove(&folder.join(name)).is_ok())
        .count()
}

fn is_stale(fs: &dyn FileSystem, folder: &Path, name: &OsStr) -> bool {
    let Some(process_id) = name.to_str().and_then(process_id_in) else {
        return false;
    };
    let Ok(facts) = fs.entry_facts(&folder.join(name)) else {
        return false;
    };
    let age = facts
        .modified
        .and_then(|at| SystemTime::now().duration_since(at).ok());
    let is_old = age.is_some_and(|age| age > STALE_AFTER);
    facts.kind == EntryKind::File && (is_old || fs.process_is_gone(process_id))
}
