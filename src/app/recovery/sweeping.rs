//! What else did dead windows leave, which is no work and goes?
//!
//! Files that stand for a window or a document as long as somebody holds their lock, and what
//! killed saves left. Unsaved work itself only its owner throws away.

use crate::project::{FileSystem, WithoutLocks, remove_unheld, sweep_stale};
use std::ffi::OsStr;
use std::path::Path;

/// Takes away what nobody alive holds in the folder of copies; the number of files.
pub(in crate::app) fn sweep(fs: &dyn FileSystem, folder: &Path) -> usize {
    let names = fs.names(folder).unwrap_or_default();
    let locks = names.iter().filter(|name| is_lock(name));
    let removed = locks
        // Without locks nobody knows who lives; but then no such file is left either.
        .filter(|name| remove_unheld(fs, &folder.join(name), WithoutLocks::Leave))
        .count();
    removed + sweep_stale(fs, folder)
}

/// Whether a name is exactly one that we give to the lock of a document, `open-` and sixteen digits
/// of base 16, or of a window, process id and microseconds.
fn is_lock(name: &OsStr) -> bool {
    let Some(stem) = name.to_str().and_then(|name| name.strip_suffix(".lock")) else {
        return false;
    };
    let is_of_document = |digits: &str| {
        digits.len() == 16
            && digits
                .bytes()
                .all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
    };
    let is_number = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    stem.strip_prefix("open-").is_some_and(is_of_document)
        || stem
            .split_once('-')
            .is_some_and(|(process, begun)| is_number(process) && is_number(begun))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_names_of_our_own_locks_are_theirs() {
        for name in ["open-0123456789abcdef.lock", "12-1700000000000000.lock"] {
            assert!(is_lock(OsStr::new(name)), "{name}");
        }
        for name in [
            "open-0123456789abcde.lock",
            "open-0123456789ABCDEF.lock",
            "open-.lock",
            "12-1700000000000000.ron",
            "12.lock",
            "12-.lock",
            "-12.lock",
            "12-3-4.lock",
            "apt-12.lock",
            ".lock",
            "",
        ] {
            assert!(!is_lock(OsStr::new(name)), "{name}");
        }
    }
}
