//! What is in the folder that a path is being typed in, found out beside the window.
//!
//! A folder on a sleeping disk or a lost network takes its time; the window goes on meanwhile.

use super::background::{Background, Task, Wake};
use super::completion::Entry;
use crate::platform;
use crate::project::{EntryKind, FileSystem, shown};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// A folder as it was looked into.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Looked {
    /// The folder.
    pub(super) folder: PathBuf,
    /// What is in it, or why that cannot be told.
    pub(super) entries: Result<Vec<Entry>, String>,
}

/// The looking into folders, one after another.
#[derive(Debug)]
pub(super) struct FolderLook {
    work: Background<PathBuf, Option<Looked>>,
    /// The folder that was wished for last.
    wanted: Option<PathBuf>,
    is_awaited: bool,
}

impl FolderLook {
    /// Begins with no folder.
    pub(super) fn started(files: Arc<dyn FileSystem + Send + Sync>, wake: Wake) -> Self {
        let work = Background::started(wake, move |task: &Task<PathBuf, _>| {
            while let Some(folder) = task.newest() {
                let entries = entries_of(&*files, &folder, &|| task.is_overtaken());
                task.tell(entries.map(|entries| Looked { folder, entries }));
            }
        });
        Self {
            work,
            wanted: None,
            is_awaited: false,
        }
    }

    /// Looks into a folder, unless that is being done or was `known` last.
    pub(super) fn follow(&mut self, folder: Option<PathBuf>, known: Option<&Looked>) {
        let is_known = known.map(|looked| &looked.folder) == folder.as_ref();
        if self.wanted != folder || !(is_known || self.is_awaited) {
            self.is_awaited = folder.is_some();
            self.wanted.clone_from(&folder);
            if let Some(folder) = folder {
                self.work.wish(folder);
            }
        }
    }

    /// What was found since the last time, if it is still wanted.
    pub(super) fn news(&mut self) -> Option<Looked> {
        let mut newest = None;
        while let Some(news) = self.work.news() {
            newest = news.or(newest);
        }
        let looked = newest.filter(|looked| self.wanted.as_ref() == Some(&looked.folder));
        self.is_awaited &= looked.is_none();
        looked
    }

    /// Whether the folder that is wanted has not been looked into yet.
    pub(super) fn is_awaited(&self) -> bool {
        self.is_awaited
    }
}

/// What is in a folder; none where a newer wish has overtaken the looking.
fn entries_of(
    files: &dyn FileSystem,
    folder: &Path,
    is_overtaken: &dyn Fn() -> bool,
) -> Option<Result<Vec<Entry>, String>> {
    let names = match files.names(folder) {
        Ok(names) => names,
        Err(error) if error.kind() == ErrorKind::NotFound => {
            return Some(Err(format!("there is no such folder: {}", shown(folder))));
        }
        Err(error) => {
            let reason = platform::reason_in_words(&error);
            let place = shown(folder);
            return Some(Err(format!(
                "the folder cannot be read ({reason}): {place}"
            )));
        }
    };
    let mut entries = Vec::new();
    // What is no text cannot be typed.
    for name in names.into_iter().filter_map(|name| name.into_string().ok()) {
        if is_overtaken() {
            return None;
        }
        // What leads nowhere is offered as it stands; opening it says why it cannot be.
        let facts = files.facts(&folder.join(&name));
        let is_folder = facts.is_ok_and(|facts| facts.kind == EntryKind::Folder);
        entries.push(Entry { name, is_folder });
    }
    Some(Ok(entries))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::simulated::{FOLDER, SimulatedDisk};
    use crate::project::Disk;
    use std::time::{Duration, Instant};

    /// What is found once it is found.
    fn found(look: &mut FolderLook) -> Looked {
        let end = Instant::now() + Duration::from_mins(1);
        loop {
            if let Some(looked) = look.news() {
                return looked;
            }
            assert!(Instant::now() < end, "nothing was ever found");
            std::thread::sleep(Duration::from_millis(1));
        }
    }

    #[test]
    fn of_two_folders_the_one_that_is_wanted_last_is_told() {
        let disk = SimulatedDisk::default();
        disk.put("van.ron", b"", 0o644);
        let mut look = FolderLook::started(Arc::new(disk), Wake::default());
        look.follow(Some(PathBuf::from("/nowhere")), None);
        look.follow(Some(PathBuf::from(FOLDER)), None);
        assert!(look.is_awaited());
        let looked = found(&mut look);
        assert_eq!(looked.folder, Path::new(FOLDER));
        let names: Vec<String> = looked
            .entries
            .unwrap()
            .into_iter()
            .map(|e| e.name)
            .collect();
        assert_eq!(names, ["van.ron"]);
        assert!(!look.is_awaited());
    }

    #[test]
    fn a_folder_that_is_not_there_is_told_in_a_sentence() {
        let mut look = FolderLook::started(Arc::new(Disk), Wake::default());
        look.follow(Some(PathBuf::from("/nowhere")), None);
        let looked = found(&mut look);
        assert_eq!(
            looked.entries,
            Err("there is no such folder: /nowhere".to_owned())
        );
    }
}
