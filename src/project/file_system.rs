//! Which single steps can be taken with files?
//!
//! Saving and reading are recipes of these steps and touch files in no other way, so that a test
//! can put a simulated file system here and let any step fail.
//! A step does what its line says or nothing; only a write may be done in part.

use std::ffi::OsString;
use std::fs::{self, File, Metadata, OpenOptions, TryLockError};
use std::io::{self, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use crate::platform;
use crate::unseen::printable;

/// What a name in a folder stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EntryKind {
    /// An ordinary file.
    File,
    /// A folder.
    Folder,
    /// A symbolic link.
    Link,
    /// A device, a pipe, a socket.
    Other,
}

/// What is known about a file without opening it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Facts {
    /// What it is.
    pub kind: EntryKind,
    /// Its size in bytes, as the file system states it: some state too little.
    pub size_bytes: u64,
    /// When its content last changed, where the file system keeps that.
    pub modified: Option<SystemTime>,
}

/// Who may read and change a new file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Access {
    /// Whoever may read and change any new file.
    Usual,
    /// Its owner alone.
    Owner,
}

/// An open file whose lock only one can hold, of all programs on this machine at least.
pub trait LockableFile: Send {
    /// Takes the lock without waiting; it is let go when the file is dropped or the process ends.
    ///
    /// # Errors
    /// When somebody holds it; any other error means that the disk knows no locks.
    fn try_lock(&self) -> Result<(), TryLockError>;

    /// Whether the name, no link followed, leads to this very file.
    ///
    /// # Errors
    /// When that cannot be found out.
    fn is_at(&self, path: &Path) -> io::Result<bool>;
}

/// A new file being written.
pub trait NewFile: Write + LockableFile {
    /// Returns when all that was written is on the disk.
    ///
    /// # Errors
    /// When the disk does not confirm it.
    fn sync(&mut self) -> io::Result<()>;
}

/// The single steps; errors are those of the operating system.
#[expect(
    clippy::missing_errors_doc,
    reason = "each passes on the operating system's error"
)]
pub trait FileSystem {
    /// The absolute path with every link on the way followed; what it names must exist.
    fn canonicalize(&self, path: &Path) -> io::Result<PathBuf>;

    /// The facts about what `path` leads to, links followed.
    fn facts(&self, path: &Path) -> io::Result<Facts>;

    /// The facts about `path` itself, which may be a link.
    fn entry_facts(&self, path: &Path) -> io::Result<Facts>;

    /// The names in a folder.
    fn names(&self, folder: &Path) -> io::Result<Vec<OsString>>;

    /// An ordinary file, opened for reading; never waits for a pipe.
    fn open(&self, path: &Path) -> io::Result<Box<dyn Read + '_>>;

    /// Whether this user may change the file; changes nothing and never waits for a pipe.
    fn check_writable(&self, path: &Path) -> io::Result<()>;

    /// A new empty file, not yet locked; fails where the name is taken.
    fn create_new(&self, path: &Path, access: Access) -> io::Result<Box<dyn NewFile>>;

    /// An ordinary file, opened for its lock; changes nothing, follows no link, never waits for a pipe.
    ///
    /// Whoever then holds the lock asks [`LockableFile::is_at`]: between opening and locking, whoever
    /// held it before may have taken the file away.
    fn open_lockable(&self, path: &Path) -> io::Result<Box<dyn LockableFile>>;

    /// Makes a folder that only its owner may enter, with those on the way to it, or makes it so.
    fn make_private_folder(&self, folder: &Path) -> io::Result<()>;

    /// Gives the file `to` the permissions of the file `from`.
    fn copy_permissions(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Gives a file another name in one indivisible step; a file of that name is replaced.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Gives a file a second name in one indivisible step; fails where that name is taken.
    fn link(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Takes away a file's name, and the file if that was its last.
    fn remove(&self, path: &Path) -> io::Result<()>;

    /// Returns when the folder's names are on the disk.
    fn sync_folder(&self, folder: &Path) -> io::Result<()>;

    /// Whether it is certain that no process has this id.
    fn process_is_gone(&self, process_id: u32) -> bool;

    /// What tells this machine from others; none where nothing is known that does.
    fn machine(&self) -> Option<String>;
}

/// The files of this machine.
#[derive(Debug, Clone, Copy, Default)]
pub struct Disk;

impl FileSystem for Disk {
    fn canonicalize(&self, path: &Path) -> io::Result<PathBuf> {
        fs::canonicalize(path)
    }

    fn facts(&self, path: &Path) -> io::Result<Facts> {
        fs::metadata(path).map(|metadata| facts_from(&metadata))
    }

    fn entry_facts(&self, path: &Path) -> io::Result<Facts> {
        fs::symlink_metadata(path).map(|metadata| facts_from(&metadata))
    }

    fn names(&self, folder: &Path) -> io::Result<Vec<OsString>> {
        fs::read_dir(folder)?
            .map(|entry| Ok(entry?.file_name()))
            .collect()
    }

    fn open(&self, path: &Path) -> io::Result<Box<dyn Read + '_>> {
        let file = platform::open_without_waiting(path, OpenOptions::new().read(true))?;
        // Asked once more of the open file: since the path was looked at, it may lead elsewhere.
        if file.metadata()?.is_file() {
            Ok(Box::new(file))
        } else {
            Err(io::Error::other("it is not an ordinary file"))
        }
    }

    fn check_writable(&self, path: &Path) -> io::Result<()> {
        platform::open_without_waiting(path, OpenOptions::new().write(true)).map(drop)
    }

    fn create_new(&self, path: &Path, access: Access) -> io::Result<Box<dyn NewFile>> {
        let mut options = OpenOptions::new();
        options.write(true).create_new(true);
        let file = match access {
            Access::Usual => options.open(path)?,
            Access::Owner => platform::open_for_owner(path, &mut options)?,
        };
        Ok(Box::new(OpenFile(file)))
    }

    fn open_lockable(&self, path: &Path) -> io::Result<Box<dyn LockableFile>> {
        let no_file = || io::Error::other("it is not an ordinary file");
        if !fs::symlink_metadata(path)?.is_file() {
            return Err(no_file());
        }
        // Network disks give a lock only on a file that is open for writing.
        let file = platform::open_without_waiting(path, OpenOptions::new().write(true))?;
        // Asked once more of the open file: since the path was looked at, it may lead elsewhere.
        if !file.metadata()?.is_file() {
            return Err(no_file());
        }
        if !platform::is_at(&file, path)? {
            return Err(ErrorKind::NotFound.into());
        }
        Ok(Box::new(OpenFile(file)))
    }

    fn make_private_folder(&self, folder: &Path) -> io::Result<()> {
        platform::make_private_folder(folder)
    }

    fn copy_permissions(&self, from: &Path, to: &Path) -> io::Result<()> {
        platform::copy_permissions(from, to)
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        platform::rename(from, to)
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::hard_link(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        fs::remove_file(path)
    }

    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        platform::sync_folder(folder)
    }

    fn process_is_gone(&self, process_id: u32) -> bool {
        platform::process_is_gone(process_id)
    }

    fn machine(&self) -> Option<String> {
        platform::machine()
    }
}

/// A file of this machine that may be locked.
struct OpenFile(File);

impl LockableFile for OpenFile {
    fn try_lock(&self) -> Result<(), TryLockError> {
        self.0.try_lock()
    }

    fn is_at(&self, path: &Path) -> io::Result<bool> {
        platform::is_at(&self.0, path)
    }
}

impl Write for OpenFile {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.0.flush()
    }
}

impl NewFile for OpenFile {
    fn sync(&mut self) -> io::Result<()> {
        platform::sync_file(&self.0)
    }
}

impl Drop for OpenFile {
    fn drop(&mut self) {
        // Closing alone would not do while another program is being started, which for a moment has
        // all our files open too. Without a lock there is nothing to let go.
        let _ = self.0.unlock();
    }
}

fn facts_from(metadata: &Metadata) -> Facts {
    let kind = match metadata.file_type() {
        t if t.is_file() => EntryKind::File,
        t if t.is_dir() => EntryKind::Folder,
        t if t.is_symlink() => EntryKind::Link,
        _ => EntryKind::Other,
    };
    Facts {
        kind,
        size_bytes: metadata.len(),
        modified: metadata.modified().ok(),
    }
}

/// The path as it stands in a sentence: on one line, at most 40 characters, without the beginning of
/// a longer one, because the name stands at its end.
pub(crate) fn shown(path: &Path) -> String {
    const MOST_CHARACTERS: usize = 40;
    let text = path.to_string_lossy();
    // The long form that Windows gives to resolved paths says nothing to a reader.
    let text = on_one_line(text.strip_prefix(r"\\?\").unwrap_or(&text));
    let length = text.chars().count();
    if length <= MOST_CHARACTERS {
        return text;
    }
    let end = text.chars().skip(length - (MOST_CHARACTERS - 1));
    std::iter::once('…').chain(end).collect()
}

/// The operating system's reason as it stands in a sentence: at most 80 characters.
pub(super) fn reason(error: &io::Error) -> String {
    on_one_line(&platform::reason_in_words(error))
        .chars()
        .take(80)
        .collect()
}

fn on_one_line(text: &str) -> String {
    text.chars().map(printable).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_of_40_characters_is_shown_whole_and_a_longer_one_without_its_beginning() {
        let whole = format!("/{}", "a".repeat(39));
        assert_eq!(shown(Path::new(&whole)), whole);
        let long = format!("/start/{}/end.ron", "ё".repeat(300));
        let short = shown(Path::new(&long));
        assert_eq!(short.chars().count(), 40);
        assert!(
            short.starts_with("…ё") && short.ends_with("ё/end.ron"),
            "{short}"
        );
    }

    #[test]
    fn a_line_break_in_a_path_does_not_break_the_sentence() {
        assert_eq!(shown(Path::new("/a\nb\u{1b}c")), "/a b c");
    }

    #[test]
    fn a_path_cannot_pretend_to_be_another_one() {
        let turned = Path::new("/a\u{202e}nor.exe\u{200b}");
        assert_eq!(shown(turned), "/a\u{fffd}nor.exe\u{fffd}");
        let error = io::Error::other("no\u{2066}body");
        assert_eq!(reason(&error), "no\u{fffd}body");
    }

    #[test]
    fn a_long_reason_is_cut_to_80_characters() {
        let error = io::Error::other("x".repeat(500));
        assert_eq!(reason(&error).chars().count(), 80);
    }
}
