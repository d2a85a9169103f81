//! What stands between a document and harm: copies of unsaved work, locks, what windows left.

use super::Lifecycle;
use super::question::Question;
use super::step::Step;
use crate::app::desk::Desk;
use crate::app::files;
use crate::app::recovery::{Abandoned, Keeper, Latest, Lock, Standing, abandoned};
use crate::project::{Disk, FileSystem};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

/// Stands for what a file held where that is not known: no text is known to have this digest.
const NEVER_SEEN: u64 = 0;

/// How often it is tried to see what is unsaved when the program fails, and the pause between.
const LAST_TRIES: usize = 20;
const LAST_PAUSE: Duration = Duration::from_millis(5);

/// What a window keeps so that nothing is lost.
#[derive(Debug, Default)]
pub(super) struct Safety {
    folder: Option<PathBuf>,
    keeper: Option<Keeper>,
    /// What windows left that are gone, not yet offered.
    left: Vec<Abandoned>,
    /// The lock on the open document's file.
    document: Option<Lock>,
    /// Why nothing can be kept at all.
    problem: Option<String>,
}

impl Safety {
    /// Passes on what has changed in the document.
    pub(super) fn follow(&mut self, desk: &Desk) {
        if let Some(keeper) = &mut self.keeper {
            keeper.follow(desk);
        }
    }

    /// Why unsaved work is not being kept, for as long as it is not.
    pub(super) fn problem(&self) -> Option<String> {
        let keeper = self.keeper.as_ref().and_then(Keeper::problem);
        keeper.or_else(|| self.problem.clone())
    }

    /// The orderly end.
    pub(super) fn end(&mut self, fs: &dyn FileSystem) {
        self.unlock(fs);
        if let Some(keeper) = &mut self.keeper {
            keeper.end();
        }
    }

    /// Lets go of the document, where it had a file.
    fn unlock(&mut self, fs: &dyn FileSystem) {
        if let Some(lock) = self.document.take() {
            lock.end(fs);
        }
    }
}

impl Lifecycle {
    /// Keeps copies of unsaved work in a folder from now on; what lies there is offered.
    pub(in crate::app) fn keep_unsaved_work_in(&mut self, folder: &Path) {
        let fs = Arc::clone(&self.surroundings.file_system);
        let keeper = Keeper::new(fs, folder, self.wake.clone(), self.surroundings.pace);
        self.safety = Safety {
            left: abandoned(self.files(), folder),
            keeper: Some(keeper),
            folder: Some(folder.to_owned()),
            ..Safety::default()
        };
        self.lock_document();
    }

    /// Notes why unsaved work cannot be kept at all.
    pub(in crate::app) fn cannot_keep_unsaved_work(&mut self, why: &str) {
        self.safety.problem = Some(why.to_owned());
    }

    /// Where a copy is written when the program fails, and what it then holds.
    pub(in crate::app) fn last_resort(&self) -> Option<(PathBuf, Latest)> {
        self.safety.keeper.as_ref().map(Keeper::last_resort)
    }

    /// Whether there is work that windows left.
    pub(in crate::app) fn has_left_work(&self) -> bool {
        !self.safety.left.is_empty()
    }

    /// Offers the next thing that a window left, where nothing else is being asked and nothing is
    /// unsaved that would have to make room for it.
    pub(in crate::app) fn offer_next(&mut self) {
        let has_room = self.asked.is_none() && !self.desk.is_unsaved();
        if has_room && !self.safety.left.is_empty() {
            let left = self.safety.left.remove(0);
            self.ask_about_left(left);
        }
    }

    fn ask_about_left(&mut self, left: Abandoned) {
        let report = left.report(self.files());
        let file = left.copy.file.clone();
        let left = Box::new(left);
        let question = match (report.standing, file) {
            (Standing::Apart, Some(file)) => Question::new(
                "Unsaved work was found, and its file has changed",
                report.text,
            )
            .safely("Open yours", Step::Recover(left.clone()))
            .or("Open theirs", Step::Open(file))
            .or("Throw yours away", Step::ThrowAway(left))
            .or("Keep yours for later", Step::Stay),
            _ => Question::new("Unsaved work was found", report.text)
                .safely("Open it", Step::Recover(left.clone()))
                .or("Throw it away", Step::ThrowAway(left))
                .or("Keep it for later", Step::Stay),
        };
        self.ask(question.with(report.details));
    }

    /// Takes away what a window left.
    pub(super) fn throw_away(&mut self, left: &Abandoned) {
        self.asked = None;
        left.remove(self.files());
    }

    /// Puts recovered work on the desk, as unsaved changes of its file.
    pub(super) fn recover(&mut self, left: Abandoned) {
        match left.copy.file.clone() {
            Some(file) if self.is_in_use(&file) => self.ask_about_use_of_left(&file, left),
            file => self.put_recovered(&left, file),
        }
    }

    fn ask_about_use_of_left(&mut self, file: &Path, left: Abandoned) {
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        let text = format!(
            "Another window has \"{name}\" open, to which the unsaved work belongs. It can be \
             opened as a copy and saved under another name."
        );
        let left = Box::new(left);
        let question = Question::new("The project is open already", text)
            .safely("Open as a copy", Step::RecoverCopy(left.clone()))
            .or("Try again", Step::Recover(left))
            .or("Keep it for later", Step::Stay);
        self.ask(question);
    }

    /// Puts recovered work on the desk without its file: saving asks for a name.
    pub(super) fn recover_copy(&mut self, left: &Abandoned) {
        self.put_recovered(left, None);
    }

    fn put_recovered(&mut self, left: &Abandoned, file: Option<PathBuf>) {
        self.asked = None;
        let now = file.as_deref().map(|file| files::open(self.files(), file));
        let now = now.and_then(Result::ok);
        // What is not known to be what the work began from is somebody else's: saving asks first.
        let began_from = left.copy.began_from.unwrap_or(NEVER_SEEN);
        self.put(Arc::clone(&left.copy.project), file, false);
        self.desk.history.mark_unsaved();
        self.desk.on_disk = self.desk.file.as_ref().map(|_| began_from);
        if let Some(now) = now.filter(|now| now.digest == began_from) {
            self.has_other_form = now.has_other_form;
            self.desk.history.mark_saved(Arc::new(now.project));
        }
        self.take_over(left);
        // What else was left lies where it is until the next start: this work is unsaved now.
        let more = self.safety.left.drain(..).count();
        self.say(match more {
            0 => "Opened what was not saved; save it to keep it".to_owned(),
            _ => format!(
                "Opened what was not saved; save it to keep it. {more} more will be offered at \
                 the next start"
            ),
        });
    }

    /// Keeps recovered work in a copy of our own; only then the old one goes.
    fn take_over(&mut self, left: &Abandoned) {
        self.safety.follow(&self.desk);
        let is_kept = match self.last_resort() {
            Some((path, latest)) => written_at_once(self.files(), &path, &latest),
            None => false,
        };
        if is_kept {
            left.remove(self.files());
        }
    }

    /// Holds the lock on the open document's file.
    pub(super) fn lock_document(&mut self) {
        let fs = Arc::clone(&self.surroundings.file_system);
        self.safety.unlock(&*fs);
        let folder = self.safety.folder.as_deref();
        let paths = folder.zip(self.desk.file.as_deref());
        let lock = paths.and_then(|(f, d)| Lock::taken(&*fs, &Lock::of_document(&*fs, f, d)));
        self.safety.document = lock;
    }

    /// Whether another window has a file open.
    pub(super) fn is_in_use(&self, path: &Path) -> bool {
        let Some(folder) = &self.safety.folder else {
            return false;
        };
        let lock = Lock::of_document(self.files(), folder, path);
        let own = self.safety.document.as_ref();
        let is_own = own.is_some_and(|own| own.path() == lock);
        !is_own && Lock::is_held(self.files(), &lock)
    }
}

/// Writes a copy at once, on this thread, when the program ends or fails; whether there was unsaved
/// work and it is kept now.
pub(in crate::app) fn write_last(path: &Path, latest: &Latest) -> bool {
    written_at_once(&Disk, path, latest)
}

/// The same on any disk.
fn written_at_once(fs: &dyn FileSystem, path: &Path, latest: &Latest) -> bool {
    let copy = (0..LAST_TRIES).find_map(|_| {
        let copy = latest.try_lock().ok().map(|copy| copy.clone());
        if copy.is_none() {
            // Held for a moment by the window, or for ever by whoever failed.
            std::thread::sleep(LAST_PAUSE);
        }
        copy
    });
    let copy = copy.flatten();
    copy.is_some_and(|copy| copy.keep(fs, path).is_ok())
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
            began_from: None,
            written_unix_s: 7,
            project: Arc::new(EXAMPLES[0].project().unwrap()),
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
