//! What stands between a document and harm: copies of unsaved work, locks, what windows left.

use super::Lifecycle;
use super::question::Question;
use super::step::Step;
use crate::app::desk::Desk;
use crate::app::files::{self, Opened};
use crate::app::recovery::{Abandoned, Keeper, Latest, Lock, abandoned};
use crate::project::Disk;
use crate::project::examples::BLANK;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// What a window keeps so that nothing is lost.
#[derive(Debug, Default)]
pub(super) struct Safety {
    folder: Option<PathBuf>,
    keeper: Option<Keeper>,
    /// What windows left that are gone, not yet offered.
    left: Vec<Abandoned>,
    /// The lock on the open document's file.
    document: Option<Lock>,
}

impl Safety {
    /// Passes on what has changed in the document.
    pub(super) fn follow(&mut self, desk: &Desk) {
        if let Some(keeper) = &mut self.keeper {
            keeper.follow(desk);
        }
    }

    /// The orderly end.
    pub(super) fn end(&mut self) {
        if let Some(keeper) = &mut self.keeper {
            keeper.end();
        }
    }
}

impl Lifecycle {
    /// Keeps copies of unsaved work in a folder from now on, and offers what lies there.
    pub(in crate::app) fn keep_unsaved_work_in(&mut self, folder: &Path) {
        self.safety = Safety {
            left: abandoned(self.files(), folder),
            keeper: Some(Keeper::new(Arc::new(Disk), folder)),
            folder: Some(folder.to_owned()),
            document: None,
        };
        self.lock_document();
        if self.asked.is_none() {
            self.offer_next();
        }
    }

    /// Where a copy is written when the program fails, and what it then holds.
    pub(in crate::app) fn last_resort(&self) -> Option<(PathBuf, Latest)> {
        self.safety.keeper.as_ref().map(Keeper::last_resort)
    }

    /// Offers the next thing that a window left.
    pub(super) fn offer_next(&mut self) {
        self.asked = None;
        if self.safety.left.is_empty() {
            return;
        }
        let left = Box::new(self.safety.left.remove(0));
        let text = left.summary(self.files());
        let question = Question::new("Unsaved work was found", text)
            .or("Open it", Step::Recover(left.clone()))
            .or("Throw it away", Step::ThrowAway(left))
            .or("Keep it for later", Step::OfferNext);
        self.ask(question);
    }

    /// Takes away what a window left.
    pub(super) fn throw_away(&mut self, left: &Abandoned) {
        left.remove(self.files());
        self.offer_next();
    }

    /// Puts recovered work on the desk, as unsaved changes of its file.
    pub(super) fn recover(&mut self, left: &Abandoned) {
        self.asked = None;
        let file = left.copy.file.clone();
        let before = file
            .as_deref()
            .and_then(|file| files::open(self.files(), file).ok());
        self.put(left.copy.project.clone(), file, false);
        let (saved, text) = match before {
            Some(Opened {
                project,
                text,
                has_other_form,
            }) => {
                self.has_other_form = has_other_form;
                (Some(project), Some(text))
            }
            None => (BLANK.project().ok(), None),
        };
        self.desk.on_disk = text;
        if let Some(saved) = saved {
            self.desk.history.mark_saved(Arc::new(saved));
        }
        // Our own copy first, then the old one may go.
        self.safety.follow(&self.desk);
        if let Some((path, latest)) = self.last_resort() {
            write_last(&path, &latest);
        }
        left.remove(self.files());
        self.say("Opened what was not saved; save it to keep it");
    }

    /// Holds the lock on the open document's file.
    pub(super) fn lock_document(&mut self) {
        self.safety.document = None;
        let folder = self.safety.folder.as_deref();
        let paths = folder.zip(self.desk.file.as_deref());
        let fs = self.files();
        let lock = paths.and_then(|(f, d)| Lock::taken(fs, &Lock::of_document(fs, f, d)));
        self.safety.document = lock;
    }

    /// Whether another window has a file open.
    pub(super) fn is_in_use(&self, path: &Path) -> bool {
        let is_own = self.desk.file.as_deref() == Some(path);
        let folder = self.safety.folder.as_deref();
        let fs = self.files();
        !is_own && folder.is_some_and(|f| Lock::is_held(fs, &Lock::of_document(fs, f, path)))
    }
}

/// Writes a copy at once, on this thread; whether there was unsaved work and it is kept now.
pub(in crate::app) fn write_last(path: &Path, latest: &Latest) -> bool {
    // Whoever failed may hold the lock: then there is nothing to be had.
    let copy = latest.try_lock().ok().and_then(|copy| copy.clone());
    copy.is_some_and(|copy| copy.write(&Disk, path).is_ok())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::RecoveryCopy;
    use crate::project::examples::EXAMPLES;

    #[test]
    fn the_last_resort_keeps_what_is_unsaved_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("1-1.ron");
        let latest = Latest::default();
        assert!(!write_last(&path, &latest));
        assert!(!path.exists());
        let copy = RecoveryCopy {
            file: None,
            written_unix_s: 7,
            project: EXAMPLES[0].project().unwrap(),
        };
        *latest.lock().unwrap() = Some(copy.clone());
        assert!(write_last(&path, &latest));
        assert_eq!(RecoveryCopy::read(&Disk, &path), Some(copy));
    }

    #[test]
    fn a_lock_that_the_failing_thread_holds_does_not_hang_the_last_resort() {
        let latest = Latest::default();
        let _held = latest.lock().unwrap();
        assert!(!write_last(Path::new("/nowhere/1-1.ron"), &latest));
    }
}
