//! How does a disk behave whose steps fail on demand and whose power can be cut?
//!
//! One folder in memory. The content of a file and the names in the folder are each kept twice: as
//! programs see them, and as they are on the disk, where they arrive only by a sync. The unit tests of
//! the window use it too.

use std::cell::Cell;
use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs::TryLockError;
use std::io::{self, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard};
use std::time::{Duration, SystemTime};

use layshaft::project::{Access, EntryKind, Facts, FileSystem, LockableFile, NewFile};

/// The one folder.
pub(super) const FOLDER: &str = "/sim";

/// How much one write takes, in bytes, so that saving takes several.
const ONE_WRITE: usize = 1000;

/// What goes wrong at the chosen step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Fault {
    /// The step fails and does nothing.
    Refused(ErrorKind),
    /// A write takes a single byte, and all that follow fail; any other step is refused.
    CutShort,
    /// The step is refused, and so is every removal after it.
    RefusedAndNothingIsRemoved,
    /// The process is killed: neither this step nor any later one is taken.
    Killed,
    /// Just before the step, another program makes a file of this name.
    Made(&'static str),
}

/// What another program writes.
pub(super) const OF_ANOTHER: &[u8] = b"text of another program";

#[derive(Debug, Clone)]
struct Content {
    seen: Vec<u8>,
    on_disk: Vec<u8>,
    mode: u32,
    modified: SystemTime,
}

/// What a fault left behind.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
enum Condition {
    #[default]
    Sound,
    Full,
    KeepsEverything,
    ProcessKilled,
}

#[derive(Debug, Default)]
struct State {
    contents: Vec<Content>,
    names: BTreeMap<PathBuf, usize>,
    names_on_disk: BTreeMap<PathBuf, usize>,
    steps: Vec<&'static str>,
    fault: Option<(usize, Fault)>,
    condition: Condition,
    has_no_links: bool,
    gone_processes: Vec<u32>,
    endless: Option<(PathBuf, u64)>,
    bytes_read: usize,
    /// The content and the machine of every lock that is held.
    locks: Vec<(usize, &'static str)>,
    locking: Locking,
    holds_new_files: bool,
    meanwhile: Option<Meanwhile>,
}

/// How far locks reach.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) enum Locking {
    /// To every machine that has the disk.
    #[default]
    Everywhere,
    /// To one machine, as on some shared disks.
    OneMachine,
    /// There are none.
    Unknown,
}

/// What another program does just before a step.
struct Meanwhile {
    step: usize,
    action: Box<dyn FnOnce(&SimulatedDisk) + Send>,
}

impl std::fmt::Debug for Meanwhile {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "another program before step {}", self.step)
    }
}

impl State {
    fn put(&mut self, name: &str, bytes: &[u8], mode: u32) {
        let number = self.contents.len();
        self.contents.push(Content {
            seen: bytes.to_vec(),
            on_disk: bytes.to_vec(),
            mode,
            modified: SystemTime::now(),
        });
        self.names.insert(SimulatedDisk::path(name), number);
        self.names_on_disk = self.names.clone();
    }
}

/// The simulated disk, as one process of one machine sees it.
#[derive(Debug, Clone)]
pub(super) struct SimulatedDisk {
    state: Arc<Mutex<State>>,
    machine: &'static str,
    /// Whether it is the process whose steps are counted and fail.
    is_observed: bool,
}

impl Default for SimulatedDisk {
    fn default() -> Self {
        Self {
            state: Arc::default(),
            machine: "this machine",
            is_observed: true,
        }
    }
}

impl SimulatedDisk {
    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap()
    }

    /// The same disk as another process sees it, whose steps neither count nor fail.
    pub(super) fn of_another_process(&self) -> Self {
        Self {
            is_observed: false,
            ..self.clone()
        }
    }

    /// The same disk as seen from another machine.
    pub(super) fn of_another_machine(&self) -> Self {
        Self {
            machine: "another machine",
            ..self.clone()
        }
    }

    /// Lets another process do something just before the step with this number, from 0.
    pub(super) fn meanwhile(&self, step: usize, action: impl FnOnce(&Self) + Send + 'static) {
        let action = Box::new(action);
        self.state().meanwhile = Some(Meanwhile { step, action });
    }

    /// Lets locks reach as far as this from now on.
    pub(super) fn reach_of_locks(&self, locking: Locking) {
        self.state().locking = locking;
    }

    /// Lets another process hold the lock of whatever is made from now on.
    pub(super) fn hold_every_new_file(&self) {
        self.state().holds_new_files = true;
    }

    /// The path of a name in the folder.
    pub(super) fn path(name: &str) -> PathBuf {
        Path::new(FOLDER).join(name)
    }

    /// Puts a file in the folder, with everything on the disk.
    pub(super) fn put(&self, name: &str, bytes: &[u8], mode: u32) {
        self.state().put(name, bytes, mode);
    }

    /// Puts a file there that never ends, but states this size.
    pub(super) fn put_endless(&self, name: &str, stated_bytes: u64) {
        self.put(name, b"", 0o644);
        self.state().endless = Some((Self::path(name), stated_bytes));
    }

    /// Makes a file look as if it had been written some time ago.
    pub(super) fn age(&self, name: &str, age: Duration) {
        let mut state = self.state();
        let number = state.names[&Self::path(name)];
        state.contents[number].modified = SystemTime::now() - age;
    }

    /// Lets the step with this number, from 0, go wrong.
    pub(super) fn fail_at(&self, step: usize, fault: Fault) {
        self.state().fault = Some((step, fault));
    }

    /// Lets files have only one name each, as on a memory stick.
    pub(super) fn without_links(&self) {
        self.state().has_no_links = true;
    }

    /// From now on this process is gone.
    pub(super) fn end_process(&self, process_id: u32) {
        self.state().gone_processes.push(process_id);
    }

    /// A new process looks at the disk after the old one was killed, and nothing fails any more.
    pub(super) fn start_again(&self) {
        self.end_process(std::process::id());
        let mut state = self.state();
        (state.fault, state.condition) = (None, Condition::Sound);
    }

    /// The steps that were taken or failed.
    pub(super) fn steps(&self) -> Vec<&'static str> {
        self.state().steps.clone()
    }

    /// How many bytes were read.
    pub(super) fn bytes_read(&self) -> usize {
        self.state().bytes_read
    }

    /// The files as programs see them.
    pub(super) fn files(&self) -> BTreeMap<PathBuf, Vec<u8>> {
        let state = self.state();
        let seen = |(path, &number): (&PathBuf, &usize)| {
            (path.clone(), state.contents[number].seen.clone())
        };
        state.names.iter().map(seen).collect()
    }

    /// The files that are left if the power is cut now: content that was not synced is lost, names
    /// that were not synced may have arrived or not.
    pub(super) fn files_after_power_cut(&self, names_arrived: bool) -> BTreeMap<PathBuf, Vec<u8>> {
        let state = self.state();
        let names = if names_arrived {
            &state.names
        } else {
            &state.names_on_disk
        };
        let on_disk = |(path, &number): (&PathBuf, &usize)| {
            (path.clone(), state.contents[number].on_disk.clone())
        };
        names.iter().map(on_disk).collect()
    }

    /// The permissions of a file.
    pub(super) fn mode(&self, name: &str) -> u32 {
        let state = self.state();
        state.contents[state.names[&Self::path(name)]].mode
    }

    /// Counts a step, and lets it fail if it is to.
    fn step(&self, name: &'static str) -> io::Result<()> {
        if !self.is_observed {
            return Ok(());
        }
        let next = self.state().steps.len();
        let meanwhile = self.state().meanwhile.take_if(|m| m.step == next);
        if let Some(Meanwhile { action, .. }) = meanwhile {
            action(&self.of_another_process());
        }
        let mut state = self.state();
        if state.condition == Condition::ProcessKilled {
            return Err(ErrorKind::Other.into());
        }
        let number = state.steps.len();
        state.steps.push(name);
        match state.fault {
            Some((at, fault)) if at == number => {
                state.condition = match fault {
                    Fault::Refused(_) | Fault::Made(_) => Condition::Sound,
                    Fault::CutShort => Condition::Full,
                    Fault::RefusedAndNothingIsRemoved => Condition::KeepsEverything,
                    Fault::Killed => Condition::ProcessKilled,
                };
                match fault {
                    Fault::Refused(kind) => Err(kind.into()),
                    Fault::CutShort if name == "write" => Ok(()),
                    Fault::Made(other) => {
                        state.put(other, OF_ANOTHER, 0o644);
                        Ok(())
                    }
                    _ => Err(ErrorKind::Other.into()),
                }
            }
            _ => Ok(()),
        }
    }

    fn number_of(&self, path: &Path) -> io::Result<usize> {
        let number = self.state().names.get(path).copied();
        number.ok_or_else(|| ErrorKind::NotFound.into())
    }

    fn facts_about(&self, path: &Path) -> io::Result<Facts> {
        if path == Path::new(FOLDER) {
            return Ok(Facts {
                kind: EntryKind::Folder,
                size_bytes: 0,
                modified: None,
            });
        }
        let number = self.number_of(path)?;
        let state = self.state();
        let content = &state.contents[number];
        let stated_bytes = match &state.endless {
            Some((endless, stated_bytes)) if endless == path => *stated_bytes,
            _ => content.seen.len() as u64,
        };
        let modified = Some(content.modified);
        Ok(Facts {
            kind: EntryKind::File,
            size_bytes: stated_bytes,
            modified,
        })
    }
}

impl FileSystem for SimulatedDisk {
    fn canonicalize(&self, path: &Path) -> io::Result<PathBuf> {
        self.step("canonicalize")?;
        if path != Path::new(FOLDER) {
            self.number_of(path)?;
        }
        Ok(path.to_owned())
    }

    fn facts(&self, path: &Path) -> io::Result<Facts> {
        self.step("facts")?;
        self.facts_about(path)
    }

    fn entry_facts(&self, path: &Path) -> io::Result<Facts> {
        self.step("entry facts")?;
        self.facts_about(path)
    }

    fn names(&self, _folder: &Path) -> io::Result<Vec<OsString>> {
        self.step("names")?;
        let state = self.state();
        Ok(state
            .names
            .keys()
            .filter_map(|path| path.file_name().map(Into::into))
            .collect())
    }

    fn open(&self, path: &Path) -> io::Result<Box<dyn Read + '_>> {
        self.step("open")?;
        let number = self.number_of(path)?;
        let is_endless = self
            .state()
            .endless
            .as_ref()
            .is_some_and(|(it, _)| it == path);
        let bytes = (!is_endless).then(|| self.state().contents[number].seen.clone());
        Ok(Box::new(OpenFile {
            disk: self,
            bytes,
            at: 0,
        }))
    }

    fn check_writable(&self, path: &Path) -> io::Result<()> {
        self.step("check writable")?;
        self.number_of(path).map(drop)
    }

    fn create_new(&self, path: &Path, access: Access) -> io::Result<Box<dyn NewFile>> {
        self.step("create")?;
        let mut state = self.state();
        if state.names.contains_key(path) {
            return Err(ErrorKind::AlreadyExists.into());
        }
        let (seen, on_disk, modified) = (Vec::new(), Vec::new(), SystemTime::now());
        let number = state.contents.len();
        let mode = match access {
            Access::Usual => 0o644,
            Access::Owner => 0o600,
        };
        state.contents.push(Content {
            seen,
            on_disk,
            mode,
            modified,
        });
        state.names.insert(path.to_owned(), number);
        if state.holds_new_files {
            state.locks.push((number, "another process"));
        }
        Ok(Box::new(HeldFile::new(self, number)))
    }

    fn open_lockable(&self, path: &Path) -> io::Result<Box<dyn LockableFile>> {
        self.step("open lockable")?;
        let number = self.number_of(path)?;
        Ok(Box::new(HeldFile::new(self, number)))
    }

    fn make_private_folder(&self, folder: &Path) -> io::Result<()> {
        self.step("make private folder")?;
        self.facts_about(folder).map(drop)
    }

    fn copy_permissions(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("copy permissions")?;
        let (from, to) = (self.number_of(from)?, self.number_of(to)?);
        let mut state = self.state();
        state.contents[to].mode = state.contents[from].mode;
        Ok(())
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("rename")?;
        let number = self.number_of(from)?;
        let mut state = self.state();
        state.names.remove(from);
        state.names.insert(to.to_owned(), number);
        Ok(())
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("link")?;
        let number = self.number_of(from)?;
        let mut state = self.state();
        if state.has_no_links {
            return Err(ErrorKind::PermissionDenied.into());
        }
        if state.names.contains_key(to) {
            return Err(ErrorKind::AlreadyExists.into());
        }
        state.names.insert(to.to_owned(), number);
        Ok(())
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        self.step("remove")?;
        self.number_of(path)?;
        let mut state = self.state();
        if state.condition == Condition::KeepsEverything {
            return Err(ErrorKind::PermissionDenied.into());
        }
        state.names.remove(path);
        Ok(())
    }

    fn sync_folder(&self, _folder: &Path) -> io::Result<()> {
        self.step("sync folder")?;
        let mut state = self.state();
        state.names_on_disk = state.names.clone();
        Ok(())
    }

    fn process_is_gone(&self, process_id: u32) -> bool {
        self.state().gone_processes.contains(&process_id)
    }

    fn machine(&self) -> Option<String> {
        Some(self.machine.to_owned())
    }
}

/// A file of the simulated disk that is open for writing or for its lock.
struct HeldFile {
    disk: SimulatedDisk,
    number: usize,
    is_locked: Cell<bool>,
}

impl HeldFile {
    fn new(disk: &SimulatedDisk, number: usize) -> Self {
        Self {
            disk: disk.clone(),
            number,
            is_locked: Cell::new(false),
        }
    }
}

impl LockableFile for HeldFile {
    fn try_lock(&self) -> Result<(), TryLockError> {
        self.disk.step("lock").map_err(|error| match error.kind() {
            ErrorKind::WouldBlock => TryLockError::WouldBlock,
            _ => TryLockError::Error(error),
        })?;
        let mut state = self.disk.state();
        let locking = state.locking;
        if locking == Locking::Unknown {
            return Err(TryLockError::Error(ErrorKind::Unsupported.into()));
        }
        let is_in_the_way = |&(number, machine): &(usize, &str)| {
            number == self.number
                && (locking == Locking::Everywhere || machine == self.disk.machine)
        };
        if state.locks.iter().any(is_in_the_way) {
            return Err(TryLockError::WouldBlock);
        }
        state.locks.push((self.number, self.disk.machine));
        self.is_locked.set(true);
        Ok(())
    }

    fn is_at(&self, path: &Path) -> io::Result<bool> {
        self.disk.step("is at")?;
        Ok(self.disk.state().names.get(path) == Some(&self.number))
    }
}

impl Drop for HeldFile {
    fn drop(&mut self) {
        if self.is_locked.get() {
            let held = (self.number, self.disk.machine);
            self.disk.state().locks.retain(|lock| *lock != held);
        }
    }
}

impl Write for HeldFile {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let was_full = self.disk.state().condition == Condition::Full;
        self.disk.step("write")?;
        let mut state = self.disk.state();
        if was_full {
            return Err(ErrorKind::StorageFull.into());
        }
        let taken = if state.condition == Condition::Full {
            1
        } else {
            bytes.len().min(ONE_WRITE)
        };
        state.contents[self.number].seen.extend(&bytes[..taken]);
        Ok(taken)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.disk.step("flush")
    }
}

impl NewFile for HeldFile {
    fn sync(&mut self) -> io::Result<()> {
        self.disk.step("sync")?;
        let content = &mut self.disk.state().contents[self.number];
        content.on_disk = content.seen.clone();
        Ok(())
    }
}

/// A file being read on the simulated disk; one without bytes never ends.
struct OpenFile<'a> {
    disk: &'a SimulatedDisk,
    bytes: Option<Vec<u8>>,
    at: usize,
}

impl Read for OpenFile<'_> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let taken = match &self.bytes {
            Some(bytes) => (&bytes[self.at..]).read(buffer)?,
            None => io::repeat(b'x').read(buffer)?,
        };
        self.at += taken;
        self.disk.state().bytes_read += taken;
        Ok(taken)
    }
}
