//! Who writes the copy while the window goes on?
//!
//! A thread of its own: it waits until nothing has changed for a second, but never longer than half
//! a minute, and writes the newest state.

use crate::project::{FileSystem, RecoveryCopy};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

/// So long nothing must have changed.
const QUIET: Duration = Duration::from_secs(1);

/// So long a change waits at most.
const LONGEST_WAIT: Duration = Duration::from_secs(30);

/// What is wanted.
pub(super) enum Wish {
    /// A copy of this.
    Keep(Box<RecoveryCopy>),
    /// No copy any more.
    Forget,
}

/// The thread and the way to it.
pub(super) struct Worker {
    wishes: Option<Sender<Wish>>,
    thread: Option<JoinHandle<()>>,
}

impl Worker {
    pub(super) fn started(fs: Arc<dyn FileSystem + Send + Sync>, path: PathBuf) -> Self {
        let (wishes, wished) = channel();
        let thread = std::thread::spawn(move || work(&*fs, &path, &wished));
        Self {
            wishes: Some(wishes),
            thread: Some(thread),
        }
    }

    pub(super) fn wish(&self, wish: Wish) {
        if let Some(wishes) = &self.wishes {
            // Without its thread nothing is kept; the window goes on.
            let _ = wishes.send(wish);
        }
    }

    /// Takes the copy away and ends the thread.
    pub(super) fn end(&mut self) {
        self.wish(Wish::Forget);
        self.wishes = None;
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

fn work(fs: &dyn FileSystem, path: &Path, wished: &Receiver<Wish>) {
    let mut pending: Option<(Box<RecoveryCopy>, Instant)> = None;
    loop {
        let wish = match &pending {
            None => wished.recv().map_err(RecvTimeoutError::from),
            Some((_, since)) => {
                let left = LONGEST_WAIT.saturating_sub(since.elapsed());
                wished.recv_timeout(QUIET.min(left))
            }
        };
        match wish {
            Ok(Wish::Keep(copy)) => {
                let since = pending.map_or_else(Instant::now, |(_, since)| since);
                pending = Some((copy, since));
            }
            Ok(Wish::Forget) => {
                pending = None;
                let _ = fs.remove(path);
            }
            Err(RecvTimeoutError::Timeout) => {
                if let Some((copy, _)) = pending.take()
                    && let Err(problem) = copy.write(fs, path)
                {
                    log::warn!("unsaved work was not kept: {problem}");
                }
            }
            Err(RecvTimeoutError::Disconnected) => return,
        }
    }
}
