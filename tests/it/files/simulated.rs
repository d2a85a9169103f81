//! How does a disk behave whose steps fail on demand and whose power can be cut?
//!
//! One folder in memory. The content of a file and the names in the folder are each kept twice: as
//! programs see them, and as they are on the disk, where they arrive only by a sync.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::ffi::OsString;
use std::io::{self, ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

use layshaft::project::{EntryKind, Facts, FileSystem, NewFile};

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

/// The simulated disk.
#[derive(Debug, Default)]
pub(super) struct SimulatedDisk(RefCell<State>);

impl SimulatedDisk {
    /// The path of a name in the folder.
    pub(super) fn path(name: &str) -> PathBuf {
        Path::new(FOLDER).join(name)
    }

    /// Puts a file in the folder, with everything on the disk.
    pub(super) fn put(&self, name: &str, bytes: &[u8], mode: u32) {
        self.0.borrow_mut().put(name, bytes, mode);
    }

    /// Puts a file there that never ends, but states this size.
    pub(super) fn put_endless(&self, name: &str, stated_bytes: u64) {
        self.put(name, b"", 0o644);
        self.0.borrow_mut().endless = Some((Self::path(name), stated_bytes));
    }

    /// Makes a file look as if it had been written some time ago.
    pub(super) fn age(&self, name: &str, age: Duration) {
        let mut state = self.0.borrow_mut();
        let number = state.names[&Self::path(name)];
        state.contents[number].modified = SystemTime::now() - age;
    }

    /// Lets the step with this number, from 0, go wrong.
    pub(super) fn fail_at(&self, step: usize, fault: Fault) {
        self.0.borrow_mut().fault = Some((step, fault));
    }

    /// Lets files have only one name each, as on a memory stick.
    pub(super) fn without_links(&self) {
        self.0.borrow_mut().has_no_links = true;
    }

    /// From now on this process is gone.
    pub(super) fn end_process(&self, process_id: u32) {
        self.0.borrow_mut().gone_processes.push(process_id);
    }

    /// A new process looks at the disk after the old one was killed, and nothing fails any more.
    pub(super) fn start_again(&self) {
        self.end_process(std::process::id());
        let mut state = self.0.borrow_mut();
        (state.fault, state.condition) = (None, Condition::Sound);
    }

    /// The steps that were taken or failed.
    pub(super) fn steps(&self) -> Vec<&'static str> {
        self.0.borrow().steps.clone()
    }

    /// How many bytes were read.
    pub(super) fn bytes_read(&self) -> usize {
        self.0.borrow().bytes_read
    }

    /// The files as programs see them.
    pub(super) fn files(&self) -> BTreeMap<PathBuf, Vec<u8>> {
        let state = self.0.borrow();
        let seen = |(path, &number): (&PathBuf, &usize)| {
            (path.clone(), state.contents[number].seen.clone())
        };
        state.names.iter().map(seen).collect()
    }

    /// The files that are left if the power is cut now: content that was not synced is lost, names
    /// that were not synced may have arrived or not.
    pub(super) fn files_after_power_cut(&self, names_arrived: bool) -> BTreeMap<PathBuf, Vec<u8>> {
        let state = self.0.borrow();
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
        let state = self.0.borrow();
        state.contents[state.names[&Self::path(name)]].mode
    }

    /// Counts a step, and lets it fail if it is to.
    fn step(&self, name: &'static str) -> io::Result<()> {
        let mut state = self.0.borrow_mut();
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
        let number = self.0.borrow().names.get(path).copied();
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
        let state = self.0.borrow();
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
        let state = self.0.borrow();
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
            .0
            .borrow()
            .endless
            .as_ref()
            .is_some_and(|(it, _)| it == path);
        let bytes = (!is_endless).then(|| self.0.borrow().contents[number].seen.clone());
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

    fn create_new(&self, path: &Path) -> io::Result<Box<dyn NewFile + '_>> {
        self.step("create")?;
        let mut state = self.0.borrow_mut();
        if state.names.contains_key(path) {
            return Err(ErrorKind::AlreadyExists.into());
        }
        let (seen, on_disk, modified) = (Vec::new(), Vec::new(), SystemTime::now());
        let number = state.contents.len();
        state.contents.push(Content {
            seen,
            on_disk,
            mode: 0o644,
            modified,
        });
        state.names.insert(path.to_owned(), number);
        Ok(Box::new(Writing { disk: self, number }))
    }

    fn copy_permissions(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("copy permissions")?;
        let (from, to) = (self.number_of(from)?, self.number_of(to)?);
        let mut state = self.0.borrow_mut();
        state.contents[to].mode = state.contents[from].mode;
        Ok(())
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("rename")?;
        let number = self.number_of(from)?;
        let mut state = self.0.borrow_mut();
        state.names.remove(from);
        state.names.insert(to.to_owned(), number);
        Ok(())
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("link")?;
        let number = self.number_of(from)?;
        let mut state = self.0.borrow_mut();
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
        let mut state = self.0.borrow_mut();
        if state.condition == Condition::KeepsEverything {
            return Err(ErrorKind::PermissionDenied.into());
        }
        state.names.remove(path);
        Ok(())
    }

    fn sync_folder(&self, _folder: &Path) -> io::Result<()> {
        self.step("sync folder")?;
        let mut state = self.0.borrow_mut();
        state.names_on_disk = state.names.clone();
        Ok(())
    }

    fn process_is_gone(&self, process_id: u32) -> bool {
        self.0.borrow().gone_processes.contains(&process_id)
    }
}

/// A file being written on the simulated disk.
struct Writing<'a> {
    disk: &'a SimulatedDisk,
    number: usize,
}

impl Write for Writing<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let was_full = self.disk.0.borrow().condition == Condition::Full;
        self.disk.step("write")?;
        let mut state = self.disk.0.borrow_mut();
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

impl NewFile for Writing<'_> {
    fn sync(&mut self) -> io::Result<()> {
        self.disk.step("sync")?;
        let content = &mut self.disk.0.borrow_mut().contents[self.number];
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
        self.disk.0.borrow_mut().bytes_read += taken;
        Ok(taken)
    }
}
