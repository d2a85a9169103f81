//! What stands between a document and harm: copies of unsaved work, other windows, other people?

use super::desk::Desk;
use super::dialogs::{After, Choice, Dialog, Question, question_ui};
use super::file_picker::Purpose;
use super::files::{self, Opened};
use super::recovery::{Abandoned, Keeper, Latest, Lock, abandoned};
use super::window::App;
use crate::project::examples::BLANK;
use crate::project::{Disk, read_text};
use egui::Context;
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

impl App {
    /// Keeps copies of unsaved work in a folder from now on, and offers what lies there.
    pub fn keep_unsaved_work_in(&mut self, folder: &Path) {
        let fs = &*self.surroundings.file_system;
        self.safety = Safety {
            left: abandoned(fs, folder),
            keeper: Some(Keeper::new(Arc::new(Disk), folder)),
            folder: Some(folder.to_owned()),
            document: None,
        };
        self.lock_document();
        self.offer_what_was_left();
    }

    /// Where a copy is written when the program fails, and what it then holds.
    pub(super) fn last_resort(&self) -> Option<(PathBuf, Latest)> {
        self.safety.keeper.as_ref().map(Keeper::last_resort)
    }

    /// Offers the next thing that a window left, where no other question stands.
    fn offer_what_was_left(&mut self) {
        if self.dialog.is_none() && !self.safety.left.is_empty() {
            self.dialog = Some(Dialog::Recover(self.safety.left.remove(0)));
        }
    }

    pub(super) fn recover_ui(&mut self, ctx: &Context, left: Abandoned) {
        let text = left.summary(&*self.surroundings.file_system);
        let question = Question {
            heading: "Unsaved work was found",
            text: &text,
            yes: "Open it",
            no: Some("Throw it away"),
            other: None,
            cancel: "Keep it for later",
        };
        match question_ui(ctx, &question) {
            None => self.dialog = Some(Dialog::Recover(left)),
            Some(Choice::Yes) => self.recover(&left),
            Some(Choice::No) => {
                left.remove(&*self.surroundings.file_system);
                self.offer_what_was_left();
            }
            Some(Choice::Other | Choice::Cancel) => self.offer_what_was_left(),
        }
    }

    /// Puts recovered work on the desk, as unsaved changes of its file.
    fn recover(&mut self, left: &Abandoned) {
        let file = left.copy.file.clone();
        let fs = Arc::clone(&self.surroundings.file_system);
        let before = file
            .as_deref()
            .and_then(|file| files::open(&*fs, file).ok());
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
        left.remove(&*self.surroundings.file_system);
        self.say("Opened what was not saved; save it to keep it");
    }

    /// Holds the lock on the open document's file.
    pub(super) fn lock_document(&mut self) {
        self.safety.document = None;
        let folder = self.safety.folder.as_deref();
        let paths = folder.zip(self.desk.file.as_deref());
        let fs = &*self.surroundings.file_system;
        let lock = paths.and_then(|(f, d)| Lock::taken(fs, &Lock::of_document(fs, f, d)));
        self.safety.document = lock;
    }

    /// Whether another window has a file open.
    pub(super) fn is_in_use(&self, path: &Path) -> bool {
        let is_own = self.desk.file.as_deref() == Some(path);
        let folder = self.safety.folder.as_deref();
        let fs = &*self.surroundings.file_system;
        !is_own && folder.is_some_and(|f| Lock::is_held(fs, &Lock::of_document(fs, f, path)))
    }

    pub(super) fn in_use_ui(&mut self, ctx: &Context, path: PathBuf) {
        let name = path.file_name().map(|n| n.to_string_lossy().into_owned());
        let text = format!(
            "Another window has \"{}\" open. A copy can be changed and saved under another name.",
            name.unwrap_or_default()
        );
        let question = Question {
            heading: "The project is open already",
            text: &text,
            yes: "Open a copy",
            no: None,
            other: Some("Try again"),
            cancel: "Cancel",
        };
        match question_ui(ctx, &question) {
            None => self.dialog = Some(Dialog::InUse(path)),
            Some(Choice::Yes) => self.open_copy(&path),
            Some(Choice::Other) => self.open(&path),
            Some(Choice::No | Choice::Cancel) => {}
        }
    }

    /// Opens what a file holds without the file: saving asks for a name.
    pub(super) fn open_copy(&mut self, path: &Path) {
        match files::open(&*self.surroundings.file_system, path) {
            Ok(opened) => {
                self.put(opened.project, None, false);
                self.say(format!("Opened a copy of {}", path.display()));
            }
            Err(problem) => self.say(problem.to_string()),
        }
    }

    /// Whether a file holds something else than when it was last read or written.
    pub(super) fn is_changed_on_disk(&self, path: &Path) -> bool {
        let fs = &*self.surroundings.file_system;
        match (&self.desk.on_disk, read_text(fs, path)) {
            (None, _) => false,
            (Some(known), Ok(now)) => now != *known,
            // What is gone can be written again; what is there but no text is somebody else's.
            (Some(_), Err(_)) => fs.entry_facts(path).is_ok(),
        }
    }

    pub(super) fn changed_ui(&mut self, ctx: &Context, then: Option<After>) {
        let text = format!(
            "\"{}\" was changed by somebody else since it was opened here.",
            self.desk.name()
        );
        let question = Question {
            heading: "The file has changed",
            text: &text,
            yes: "Save under another name",
            no: Some("Replace theirs"),
            other: Some("Open theirs"),
            cancel: "Cancel",
        };
        match question_ui(ctx, &question) {
            None => self.dialog = Some(Dialog::ChangedOnDisk(then)),
            Some(Choice::Yes) => self.ask_for_path(ctx, Purpose::Save, then),
            Some(Choice::No) => {
                self.desk.on_disk = None;
                self.save(ctx, then);
            }
            Some(Choice::Other) => {
                if let Some(path) = self.desk.file.clone() {
                    self.open(&path);
                }
            }
            Some(Choice::Cancel) => {}
        }
    }
}

/// Writes a copy at once, on this thread; whether there was unsaved work and it is kept now.
pub(super) fn write_last(path: &Path, latest: &Latest) -> bool {
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
