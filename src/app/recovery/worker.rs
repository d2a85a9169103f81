//! The thread that writes the copy while the window goes on: a debounced autosave.
//!
//! It waits until nothing has changed for a moment, but never too long, and writes the newest state.
//! What cannot be written is tried again until it can. The times are those of its [`Pace`].

use super::lock::Lock;
use super::lock_of;
use super::pace::Pace;
use crate::app::background::{Background, Task, Wake};
use crate::platform;
use crate::project::{FileSystem, RecoveryCopy};
use std::cell::RefCell;
use std::io::ErrorKind;
use std::path::PathBuf;
use std::sync::Arc;
use std::sync::mpsc::RecvTimeoutError;
use std::time::Instant;

/// What is wanted.
pub(super) enum Wish {
    /// A copy of this.
    Keep(RecoveryCopy),
    /// No copy any more.
    Forget,
}

/// The autosave and the way to it.
pub(super) struct Worker {
    background: Background<Wish, Option<String>>,
    /// Why nothing was kept when it was last asked.
    problem: RefCell<Option<String>>,
}

impl Worker {
    pub(super) fn started(
        fs: Arc<dyn FileSystem + Send + Sync>,
        path: PathBuf,
        wake: Wake,
        pace: Pace,
    ) -> Self {
        let mut autosave = Autosave {
            fs,
            path,
            lock: None,
            problem: None,
        };
        // Before anything else: whoever finds a copy without its lock takes it for abandoned.
        autosave.prepare();
        Self {
            problem: RefCell::new(autosave.problem.clone()),
            background: Background::started(wake, move |task| work(&mut autosave, task, pace)),
        }
    }

    pub(super) fn wish(&self, wish: Wish) {
        self.background.wish(wish);
    }

    /// Why nothing is kept, for as long as nothing is.
    pub(super) fn problem(&self) -> Option<String> {
        let mut problem = self.problem.borrow_mut();
        while let Some(newer) = self.background.news() {
            *problem = newer;
        }
        problem.clone()
    }

    /// Takes the copy away and ends the thread.
    pub(super) fn end(&mut self) {
        self.wish(Wish::Forget);
        self.background.finish();
    }
}

impl Drop for Worker {
    /// Lets go of the lock before anybody looks for what was left.
    fn drop(&mut self) {
        self.background.finish();
    }
}

/// A copy that waits to be written.
struct Pending {
    copy: RecoveryCopy,
    due: Instant,
    /// When it must be written, whatever changes meanwhile.
    last: Instant,
}

impl Pending {
    /// The newest copy, where another one may wait since earlier.
    fn newest(copy: RecoveryCopy, earlier: Option<Self>, now: Instant, pace: Pace) -> Self {
        let last = earlier.map_or(now + pace.longest_wait, |earlier| earlier.last);
        Self {
            copy,
            due: last.min(now + pace.quiet),
            last,
        }
    }

    /// The same, which could not be written now.
    fn later(self, now: Instant, pace: Pace) -> Self {
        Self {
            due: now + pace.retry,
            last: now + pace.retry,
            ..self
        }
    }
}

fn work(autosave: &mut Autosave, task: &Task<Wish, Option<String>>, pace: Pace) {
    let mut pending: Option<Pending> = None;
    let mut told = autosave.problem.clone();
    loop {
        let at_most = match &pending {
            Some(waiting) => Some(waiting.due.saturating_duration_since(Instant::now())),
            None => autosave.problem.is_some().then_some(pace.retry),
        };
        match task.next(at_most) {
            Ok(Wish::Keep(copy)) => {
                let now = Instant::now();
                pending = Some(Pending::newest(copy, pending.take(), now, pace));
            }
            Ok(Wish::Forget) => {
                pending = None;
                autosave.forget();
            }
            Err(RecvTimeoutError::Timeout) => match pending.take() {
                None => autosave.prepare(),
                Some(due) if autosave.write(&due.copy) => {}
                Some(due) => pending = Some(due.later(Instant::now(), pace)),
            },
            Err(RecvTimeoutError::Disconnected) => return autosave.end(),
        }
        if autosave.problem != told {
            told.clone_from(&autosave.problem);
            task.tell(told.clone());
        }
    }
}

/// The copy's place, and why nothing can be kept there, for as long as nothing can.
struct Autosave {
    fs: Arc<dyn FileSystem + Send + Sync>,
    path: PathBuf,
    lock: Option<Lock>,
    problem: Option<String>,
}

impl Autosave {
    /// Makes folder and lock, where they are not there (any more).
    fn prepare(&mut self) {
        self.problem = self.prepared().err();
    }

    fn prepared(&mut self) -> Result<(), String> {
        let lock = lock_of(&self.path);
        if self.lock.is_some() && self.fs.entry_facts(&lock).is_ok() {
            return Ok(());
        }
        let folder = self.path.parent().unwrap_or(&self.path);
        self.fs.make_private_folder(folder).map_err(|error| {
            let reason = platform::reason_in_words(&error);
            format!("the folder {} cannot be made: {reason}", folder.display())
        })?;
        self.lock = Lock::taken(&*self.fs, &lock);
        match &self.lock {
            Some(_) => Ok(()),
            None => Err(format!("{} cannot be made and locked", lock.display())),
        }
    }

    /// Writes a copy; whether it is kept now.
    fn write(&mut self, copy: &RecoveryCopy) -> bool {
        let kept = self.prepared().and_then(|()| {
            let kept = copy.keep(&*self.fs, &self.path);
            kept.map_err(|problem| problem.to_string())
        });
        self.problem = kept.err();
        self.problem.is_none()
    }

    /// Takes the copy away: what it holds is saved, or was to go.
    fn forget(&self) {
        match self.fs.remove(&self.path) {
            Err(error)
                if !matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory) =>
            {
                let reason = platform::reason_in_words(&error);
                let path = self.path.display();
                log::warn!("a copy of saved work cannot be taken away ({reason}): {path}");
            }
            _ => {}
        }
    }

    fn end(&mut self) {
        if let Some(lock) = self.lock.take() {
            lock.end(&*self.fs);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::examples::EXAMPLES;
    use std::time::Duration;

    fn copy() -> RecoveryCopy {
        RecoveryCopy {
            file: None,
            began_from: None,
            written_unix_s: 7,
            project: Arc::new(EXAMPLES[0].project().unwrap()),
        }
    }

    #[test]
    fn a_change_waits_a_second_and_steady_changes_two_at_most() {
        let begun = Instant::now();
        let at = |tenths: u64| begun + Duration::from_millis(100 * tenths);
        let pace = Pace::default();
        let mut pending = Pending::newest(copy(), None, at(0), pace);
        assert_eq!(pending.due, at(10));
        for tenths in 1..20 {
            pending = Pending::newest(copy(), Some(pending), at(tenths), pace);
            assert!(pending.due <= at(20), "{tenths}");
        }
        assert_eq!(pending.due, at(20));
        let next = Pending::newest(copy(), None, at(21), pace);
        assert_eq!(next.due, at(31));
    }

    #[test]
    fn what_could_not_be_written_is_tried_again() {
        let now = Instant::now();
        let pace = Pace::default();
        let pending = Pending::newest(copy(), None, now, pace).later(now, pace);
        assert_eq!(pending.due, now + Duration::from_secs(5));
    }
}
