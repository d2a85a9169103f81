//! Where does a window under test keep its files? In memory, in folders that it knows.

use layshaft::project::{Access, EntryKind, Facts, FileSystem, LockableFile, NewFile};
use std::collections::{BTreeMap, BTreeSet};
use std::ffi::OsString;
use std::fs::TryLockError;
use std::io::{self, Cursor, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard};

/// The folder that is always there.
pub(crate) const HOME: &str = "/home/somebody";

#[derive(Debug, Default)]
struct State {
    files: BTreeMap<PathBuf, Vec<u8>>,
    is_read_only: bool,
    /// Whether no folder can be looked into.
    is_barred: bool,
    /// Whether somebody else holds a lock on every file that is made for one.
    is_locked: bool,
}

/// Files in memory; the folders are [`HOME`] and those that hold files, and there are no locks but those
/// of others.
#[derive(Debug, Clone, Default)]
pub(crate) struct MemoryDisk(Arc<Mutex<State>>);

impl MemoryDisk {
    fn state(&self) -> MutexGuard<'_, State> {
        self.0.lock().unwrap()
    }

    /// The path of a name at home.
    pub(crate) fn path(name: &str) -> PathBuf {
        Path::new(HOME).join(name)
    }

    /// Puts a file there.
    pub(crate) fn put(&self, name: &str, text: &str) {
        self.put_bytes(name, text.as_bytes());
    }

    /// Puts a file there that is no text.
    pub(crate) fn put_bytes(&self, name: &str, bytes: &[u8]) {
        let path = Self::path(name);
        self.state().files.insert(path, bytes.to_vec());
    }

    /// What a file holds, which must be there.
    pub(crate) fn bytes(&self, name: &str) -> Vec<u8> {
        self.state().files[&Self::path(name)].clone()
    }

    /// The text of a file, if it is there.
    pub(crate) fn text(&self, name: &str) -> Option<String> {
        let bytes = self.state().files.get(&Self::path(name)).cloned();
        bytes.map(|bytes| String::from_utf8(bytes).unwrap())
    }

    /// All names, sorted.
    pub(crate) fn file_names(&self) -> Vec<String> {
        let state = self.state();
        let names = state.files.keys().filter_map(|path| path.file_name());
        names.map(|n| n.to_string_lossy().into_owned()).collect()
    }

    /// From now on no folder can be looked into.
    pub(crate) fn bar_folders(&self) {
        self.state().is_barred = true;
    }

    /// From now on nothing can be written.
    pub(crate) fn make_read_only(&self) {
        self.state().is_read_only = true;
    }

    /// From now on somebody else holds every lock that there could be.
    pub(crate) fn hold_all_locks(&self) {
        self.state().is_locked = true;
    }

    /// Whether somebody else holds the lock that a file stands for.
    fn is_held(&self, path: &Path) -> bool {
        self.state().is_locked && path.extension().is_some_and(|ending| ending == "lock")
    }

    fn writable(&self) -> io::Result<MutexGuard<'_, State>> {
        let state = self.state();
        if state.is_read_only {
            return Err(ErrorKind::ReadOnlyFilesystem.into());
        }
        Ok(state)
    }
}

fn not_found() -> io::Error {
    ErrorKind::NotFound.into()
}

impl FileSystem for MemoryDisk {
    fn canonicalize(&self, path: &Path) -> io::Result<PathBuf> {
        self.facts(path).map(|_| path.to_owned())
    }

    fn facts(&self, path: &Path) -> io::Result<Facts> {
        let facts = |kind, size_bytes| Facts {
            kind,
            size_bytes,
            modified: None,
        };
        let state = self.state();
        let is_within = |file: &PathBuf| file != path && file.starts_with(path);
        if Path::new(HOME).starts_with(path) || state.files.keys().any(is_within) {
            return Ok(facts(EntryKind::Folder, 0));
        }
        let bytes = state.files.get(path).ok_or_else(not_found)?;
        Ok(facts(EntryKind::File, bytes.len() as u64))
    }

    fn entry_facts(&self, path: &Path) -> io::Result<Facts> {
        self.facts(path)
    }

    fn names(&self, folder: &Path) -> io::Result<Vec<OsString>> {
        if self.facts(folder)?.kind != EntryKind::Folder {
            return Err(ErrorKind::NotADirectory.into());
        }
        let state = self.state();
        if state.is_barred {
            return Err(ErrorKind::PermissionDenied.into());
        }
        let home = PathBuf::from(HOME);
        let paths = state.files.keys().chain([&home]);
        let within = paths.filter_map(|path| path.strip_prefix(folder).ok());
        let names = within.filter_map(|path| path.iter().next());
        let names: BTreeSet<OsString> = names.map(Into::into).collect();
        Ok(names.into_iter().collect())
    }

    fn open(&self, path: &Path) -> io::Result<Box<dyn Read + '_>> {
        let bytes = self.state().files.get(path).cloned();
        Ok(Box::new(Cursor::new(bytes.ok_or_else(not_found)?)))
    }

    fn check_writable(&self, path: &Path) -> io::Result<()> {
        drop(self.writable()?);
        self.facts(path).map(drop)
    }

    fn create_new(&self, path: &Path, _access: Access) -> io::Result<Box<dyn NewFile>> {
        self.writable()?.files.insert(path.to_owned(), Vec::new());
        Ok(Box::new(OpenFile {
            disk: self.clone(),
            path: path.to_owned(),
        }))
    }

    fn open_lockable(&self, path: &Path) -> io::Result<Box<dyn LockableFile>> {
        drop(self.writable()?);
        if !self.is_held(path) {
            self.facts(path)?;
        }
        Ok(Box::new(OpenFile {
            disk: self.clone(),
            path: path.to_owned(),
        }))
    }

    fn make_private_folder(&self, folder: &Path) -> io::Result<()> {
        self.facts(folder).map(drop)
    }

    fn copy_permissions(&self, _from: &Path, _to: &Path) -> io::Result<()> {
        Ok(())
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        let mut state = self.writable()?;
        let bytes = state.files.remove(from).ok_or_else(not_found)?;
        state.files.insert(to.to_owned(), bytes);
        Ok(())
    }

    fn link(&self, _from: &Path, _to: &Path) -> io::Result<()> {
        Err(ErrorKind::Unsupported.into())
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        let removed = self.writable()?.files.remove(path);
        removed.map(drop).ok_or_else(not_found)
    }

    fn sync_folder(&self, _folder: &Path) -> io::Result<()> {
        Ok(())
    }

    fn process_is_gone(&self, _process_id: u32) -> bool {
        false
    }

    fn machine(&self) -> Option<String> {
        None
    }
}

struct OpenFile {
    disk: MemoryDisk,
    path: PathBuf,
}

impl LockableFile for OpenFile {
    fn try_lock(&self) -> Result<(), TryLockError> {
        if self.disk.is_held(&self.path) {
            return Err(TryLockError::WouldBlock);
        }
        Err(TryLockError::Error(ErrorKind::Unsupported.into()))
    }

    fn is_at(&self, path: &Path) -> io::Result<bool> {
        Ok(path == self.path && self.disk.facts(path).is_ok())
    }
}

impl Write for OpenFile {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let mut state = self.disk.state();
        let file = state.files.get_mut(&self.path).ok_or_else(not_found)?;
        file.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl NewFile for OpenFile {
    fn sync(&mut self) -> io::Result<()> {
        Ok(())
    }
}
