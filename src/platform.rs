//! What does each operating system want done differently?
//!
//! Everything that asks which system this is stands here, so that the rest of the crate need not.
//! The answers for Windows and macOS are from their documentation; only Linux is tested.

use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// The flag for "do not wait for the other end of a pipe", which the standard library does not name.
///
/// Zero, which asks for nothing, where the value is not known.
#[cfg(unix)]
const DO_NOT_WAIT: i32 = if cfg!(any(target_vendor = "apple", target_os = "freebsd")) {
    0x4
} else if cfg!(all(
    target_os = "linux",
    any(
        target_arch = "x86_64",
        target_arch = "aarch64",
        target_arch = "riscv64"
    )
)) {
    0o4000
} else {
    0
};

/// The pauses before a rename is tried again, in ms: about one second in all.
///
/// On Windows a virus scanner or an indexer may hold a fresh file for a moment.
const RENAME_PAUSES_MS: &[u64] = if cfg!(windows) {
    &[10, 20, 40, 80, 160, 320, 400]
} else {
    &[]
};

/// `path` opened as `options` say, without waiting if it is a pipe with nobody at the other end.
pub(crate) fn open_without_waiting(path: &Path, options: &mut OpenOptions) -> io::Result<File> {
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::custom_flags(options, DO_NOT_WAIT);
    options.open(path)
}

/// A new file that `options` make, which only its owner may read and change, whatever the umask.
#[cfg(unix)]
pub(crate) fn open_for_owner(path: &Path, options: &mut OpenOptions) -> io::Result<File> {
    use std::os::unix::fs::{OpenOptionsExt, PermissionsExt};
    const OWNER: u32 = 0o600;
    let file = options.mode(OWNER).open(path)?;
    // A umask may have taken away even more; some disks refuse every change of mode.
    if file.metadata()?.permissions().mode() & 0o777 != OWNER {
        let _ = file.set_permissions(fs::Permissions::from_mode(OWNER));
    }
    Ok(file)
}

/// A new file that `options` make: here folders in a user's home are the user's own already.
#[cfg(not(unix))]
pub(crate) fn open_for_owner(path: &Path, options: &mut OpenOptions) -> io::Result<File> {
    options.open(path)
}

/// Makes a folder and those on the way to it, for their owner alone, and narrows one that is there.
#[cfg(unix)]
pub(crate) fn make_private_folder(folder: &Path) -> io::Result<()> {
    use std::os::unix::fs::{DirBuilderExt, PermissionsExt};
    fs::DirBuilder::new()
        .recursive(true)
        .mode(0o700)
        .create(folder)?;
    if fs::metadata(folder)?.permissions().mode() & 0o077 != 0 {
        // Some disks refuse every change of mode: better work kept in sight of others than none.
        let _ = fs::set_permissions(folder, fs::Permissions::from_mode(0o700));
    }
    Ok(())
}

/// Makes a folder and those on the way to it: a user's home is the user's own already.
#[cfg(not(unix))]
pub(crate) fn make_private_folder(folder: &Path) -> io::Result<()> {
    fs::create_dir_all(folder)
}

/// Whether `path`, no link followed, leads to the open file.
#[cfg(unix)]
pub(crate) fn is_at(file: &File, path: &Path) -> io::Result<bool> {
    use std::os::unix::fs::MetadataExt;
    let open = file.metadata()?;
    match fs::symlink_metadata(path) {
        Ok(named) => Ok((open.dev(), open.ino()) == (named.dev(), named.ino())),
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error),
    }
}

/// Whether `path` leads to an ordinary file: which one it is, the standard library does not tell here.
#[cfg(not(unix))]
pub(crate) fn is_at(_file: &File, path: &Path) -> io::Result<bool> {
    match fs::symlink_metadata(path) {
        Ok(named) => Ok(named.is_file()),
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error),
    }
}

/// What tells this machine from others: its number and its name together, because copied machines
/// have the same number; none where nothing is known.
pub(crate) fn machine() -> Option<String> {
    let line = |path| fs::read_to_string(path).map(|text| text.trim().to_owned());
    let number = line("/etc/machine-id").unwrap_or_default();
    let name = line("/proc/sys/kernel/hostname")
        .or_else(|_| std::env::var("COMPUTERNAME"))
        .unwrap_or_default();
    // What nobody named is called so everywhere.
    let is_named = !matches!(name.as_str(), "" | "(none)") && !name.starts_with("localhost");
    (!number.is_empty() || is_named).then(|| format!("{number} {name}"))
}

/// A path in bytes that [`path_from_bytes`] turns back into the same path, whatever it holds.
#[cfg(unix)]
pub(crate) fn path_bytes(path: &Path) -> Vec<u8> {
    use std::os::unix::ffi::OsStrExt;
    path.as_os_str().as_bytes().to_vec()
}

/// The path of [`path_bytes`].
#[cfg(unix)]
#[expect(clippy::unnecessary_wraps, reason = "elsewhere some bytes are no path")]
pub(crate) fn path_from_bytes(bytes: Vec<u8>) -> Option<PathBuf> {
    use std::os::unix::ffi::OsStringExt;
    Some(std::ffi::OsString::from_vec(bytes).into())
}

/// A path in bytes that [`path_from_bytes`] turns back into the same path: its 16-bit units, the
/// lower half of each first.
#[cfg(windows)]
pub(crate) fn path_bytes(path: &Path) -> Vec<u8> {
    use std::os::windows::ffi::OsStrExt;
    let units = path.as_os_str().encode_wide();
    units.flat_map(u16::to_le_bytes).collect()
}

/// The path of [`path_bytes`]; none where half a unit is left over.
#[cfg(windows)]
pub(crate) fn path_from_bytes(bytes: Vec<u8>) -> Option<PathBuf> {
    use std::os::windows::ffi::OsStringExt;
    let (units, rest) = bytes.as_chunks::<2>();
    let units: Vec<u16> = units.iter().map(|unit| u16::from_le_bytes(*unit)).collect();
    rest.is_empty()
        .then(|| std::ffi::OsString::from_wide(&units).into())
}

/// Gives the file `to` the mode of the file `from`, and its owner and group where that is allowed.
///
/// Access lists and extended attributes are not carried over.
#[cfg(unix)]
pub(crate) fn copy_permissions(from: &Path, to: &Path) -> io::Result<()> {
    use std::os::unix::fs::{MetadataExt, chown};
    let (old, new) = (fs::metadata(from)?, fs::metadata(to)?);
    let (uid, gid) = (old.uid(), old.gid());
    if (uid, gid) != (new.uid(), new.gid()) {
        // Only root may give a file away, and a group only to its members: no reason not to save.
        let _ = chown(to, Some(uid), Some(gid)).or_else(|_| chown(to, None, Some(gid)));
    }
    // Some disks refuse every change of mode, and there all files have the same one.
    if old.mode() == new.mode() {
        Ok(())
    } else {
        fs::set_permissions(to, old.permissions())
    }
}

/// Nothing to do: the only permission known here, "read-only", has been refused before.
#[cfg(not(unix))]
pub(crate) fn copy_permissions(_from: &Path, _to: &Path) -> io::Result<()> {
    Ok(())
}

/// Renames, replacing `to`; tries again for about a second where another program holds the file.
pub(crate) fn rename(from: &Path, to: &Path) -> io::Result<()> {
    // Access denied, sharing violation.
    let is_held = |error: &io::Error| matches!(error.raw_os_error(), Some(5 | 32));
    tried_again(RENAME_PAUSES_MS, is_held, || fs::rename(from, to))
}

/// Brings the file to the disk.
///
/// A file system that has no such operation (some network shares) has done all it can.
pub(crate) fn sync_file(file: &File) -> io::Result<()> {
    where_it_exists(file.sync_all())
}

/// Brings the names in the folder to the disk.
#[cfg(unix)]
pub(crate) fn sync_folder(folder: &Path) -> io::Result<()> {
    where_it_exists(File::open(folder)?.sync_all())
}

/// Nothing to do: here a folder cannot be opened as a file, the file system keeps its own journal.
#[cfg(not(unix))]
pub(crate) fn sync_folder(_folder: &Path) -> io::Result<()> {
    Ok(())
}

/// Whether it is certain that no process has this id; `false` where that cannot be found out.
pub(crate) fn process_is_gone(process_id: u32) -> bool {
    let is_there = |entry: &str| Path::new("/proc").join(entry).try_exists().ok();
    cfg!(target_os = "linux")
        && is_there("self") == Some(true)
        && is_there(&process_id.to_string()) == Some(false)
}

/// Calls `act` whenever the system asks the program to end (SIGTERM, SIGINT, SIGHUP); a program that
/// has not ended two seconds later ends as if nobody had listened.
///
/// # Errors
/// When the system does not let signals be answered.
#[cfg(unix)]
pub(crate) fn on_signal_to_end(act: impl Fn() + Send + 'static) -> io::Result<()> {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    let mut signals = signal_hook::iterator::Signals::new([SIGTERM, SIGINT, SIGHUP])?;
    std::thread::spawn(move || {
        for signal in signals.forever() {
            act();
            std::thread::sleep(Duration::from_secs(2));
            if let Err(problem) = signal_hook::low_level::emulate_default_handler(signal) {
                log::warn!("signal {signal} could not be passed on: {problem}");
            }
        }
    });
    Ok(())
}

/// Nothing to do: here a window is asked to close like by its button.
#[cfg(not(unix))]
pub(crate) fn on_signal_to_end(_act: impl Fn() + Send + 'static) -> io::Result<()> {
    Ok(())
}

/// The operating system's reason in words, to stand inside a sentence.
pub(crate) fn reason_in_words(error: &io::Error) -> String {
    let known = match error.kind() {
        ErrorKind::StorageFull => "the disk is full",
        ErrorKind::QuotaExceeded => "the disk quota is used up",
        ErrorKind::ReadOnlyFilesystem => "the disk is read-only",
        ErrorKind::PermissionDenied => "permission denied",
        ErrorKind::NotFound => "it is no longer there",
        ErrorKind::InvalidFilename => "the name is too long or not allowed",
        ErrorKind::WriteZero => "the disk took only a part",
        _ => return uncoded(&error.to_string()),
    };
    known.to_owned()
}

/// A system message without its number and its capital: it stands in the middle of a sentence.
fn uncoded(message: &str) -> String {
    let words = message
        .split(" (os error")
        .next()
        .unwrap_or_default()
        .trim_end_matches('.');
    let mut letters = words.chars();
    match letters.next() {
        Some(first) => first.to_lowercase().chain(letters).collect(),
        None => "no reason was given".to_owned(),
    }
}

/// The result of a sync, where "there is no such operation" counts as done.
fn where_it_exists(synced: io::Result<()>) -> io::Result<()> {
    match synced {
        Err(e) if matches!(e.kind(), ErrorKind::Unsupported | ErrorKind::InvalidInput) => Ok(()),
        other => other,
    }
}

/// The result of `step`, tried again after each pause for as long as its error `may_pass`.
fn tried_again(
    pauses_ms: &[u64],
    may_pass: impl Fn(&io::Error) -> bool,
    mut step: impl FnMut() -> io::Result<()>,
) -> io::Result<()> {
    for &pause_ms in pauses_ms {
        match step() {
            Err(error) if may_pass(&error) => {
                std::thread::sleep(Duration::from_millis(pause_ms));
            }
            settled => return settled,
        }
    }
    step()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A step that fails with the error code `code` until it has been called `failures` times.
    fn failing(code: i32, failures: u32, calls: &mut u32) -> impl FnMut() -> io::Result<()> {
        move || {
            *calls += 1;
            if *calls <= failures {
                Err(io::Error::from_raw_os_error(code))
            } else {
                Ok(())
            }
        }
    }

    #[test]
    fn a_held_file_is_tried_again_until_it_is_free() {
        let mut calls = 0;
        let held = |e: &io::Error| e.raw_os_error() == Some(32);
        assert!(tried_again(&[0, 0, 0], held, failing(32, 2, &mut calls)).is_ok());
        assert_eq!(calls, 3);
    }

    #[test]
    fn a_file_that_stays_held_is_given_up() {
        let mut calls = 0;
        let result = tried_again(&[0, 0], |_| true, failing(32, 99, &mut calls));
        assert_eq!(result.unwrap_err().raw_os_error(), Some(32));
        assert_eq!(calls, 3);
    }

    #[test]
    fn an_error_that_will_not_pass_is_not_tried_again() {
        let mut calls = 0;
        assert!(tried_again(&[0, 0], |_| false, failing(2, 99, &mut calls)).is_err());
        assert_eq!(calls, 1);
    }

    #[cfg(unix)]
    #[test]
    fn a_path_that_is_no_text_comes_back_from_its_bytes() {
        use std::os::unix::ffi::OsStrExt;
        let path = Path::new(std::ffi::OsStr::from_bytes(b"/caf\xe9/\xff.ron"));
        assert_eq!(path_from_bytes(path_bytes(path)).as_deref(), Some(path));
    }

    #[test]
    fn this_process_is_there() {
        assert!(!process_is_gone(std::process::id()));
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn a_process_that_has_ended_is_gone() {
        let mut child = std::process::Command::new("true").spawn().unwrap();
        let process_id = child.id();
        child.wait().unwrap();
        assert!(process_is_gone(process_id));
    }

    #[test]
    fn a_reason_has_no_number_and_no_capital() {
        let too_many = io::Error::from_raw_os_error(24);
        let words = reason_in_words(&too_many);
        assert!(!words.contains("os error"), "{words}");
        assert!(words.starts_with(char::is_lowercase), "{words}");
        assert_eq!(
            reason_in_words(&ErrorKind::StorageFull.into()),
            "the disk is full"
        );
    }

    #[test]
    fn a_sync_that_does_not_exist_counts_as_done_and_a_failed_one_does_not() {
        assert!(where_it_exists(Err(ErrorKind::Unsupported.into())).is_ok());
        assert!(where_it_exists(Err(ErrorKind::InvalidInput.into())).is_ok());
        assert!(where_it_exists(Err(ErrorKind::StorageFull.into())).is_err());
    }
}
