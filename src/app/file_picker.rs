//! How is a file chosen with the system's own dialog, without waiting for it?
//!
//! The dialog may never answer, so it runs on a thread of its own that nobody waits for.

use super::background::Wake;
use std::path::PathBuf;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::time::{Duration, Instant};

/// What a file is chosen for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Purpose {
    /// To be read.
    Open,
    /// To be written.
    Save,
    /// To hold the picture of the write-up.
    SavePicture,
}

/// What a dialog came back with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// Which call it answers.
    pub request: u64,
    /// The chosen file; none when it was cancelled or no dialog could be shown.
    pub path: Option<PathBuf>,
    /// Whether it came back so fast that no one can have seen a dialog.
    pub was_unseen: bool,
}

/// Something that lets the user choose a file.
pub trait FilePicker {
    /// Begins to ask; `suggested` is a name or path to start from, `wake` is called with the answer.
    fn start(&mut self, purpose: Purpose, suggested: Option<PathBuf>, wake: Wake) -> u64;

    /// The next answer, if one came.
    fn poll(&mut self) -> Option<Answer>;
}

/// No person answers a dialog faster.
const UNSEEN: Duration = Duration::from_millis(300);

/// The system's own dialog.
#[derive(Debug)]
pub struct SystemPicker {
    sender: Sender<Answer>,
    receiver: Receiver<Answer>,
    requests: u64,
}

impl Default for SystemPicker {
    fn default() -> Self {
        let (sender, receiver) = channel();
        Self {
            sender,
            receiver,
            requests: 0,
        }
    }
}

impl FilePicker for SystemPicker {
    fn start(&mut self, purpose: Purpose, suggested: Option<PathBuf>, wake: Wake) -> u64 {
        self.requests += 1;
        let request = self.requests;
        let sender = self.sender.clone();
        std::thread::spawn(move || {
            let begun = Instant::now();
            let path = ask(purpose, suggested);
            let was_unseen = path.is_none() && begun.elapsed() < UNSEEN;
            // Nobody listens any more when the window is closed: then the answer is moot.
            let _ = sender.send(Answer {
                request,
                path,
                was_unseen,
            });
            wake.wake();
        });
        request
    }

    fn poll(&mut self) -> Option<Answer> {
        self.receiver.try_recv().ok()
    }
}

fn ask(purpose: Purpose, suggested: Option<PathBuf>) -> Option<PathBuf> {
    let (name, ending) = match purpose {
        Purpose::Open | Purpose::Save => ("Layshaft project", "ron"),
        Purpose::SavePicture => ("PNG picture", "png"),
    };
    let mut dialog = rfd::FileDialog::new().add_filter(name, &[ending]);
    if let Some(path) = suggested {
        if let Some(folder) = path.parent().filter(|f| f.is_dir()) {
            dialog = dialog.set_directory(folder);
        }
        if let Some(name) = path.file_name() {
            dialog = dialog.set_file_name(name.to_string_lossy());
        }
    }
    match purpose {
        Purpose::Open => dialog.set_title("Open a project").pick_file(),
        Purpose::Save => dialog.set_title("Save the project").save_file(),
        Purpose::SavePicture => dialog.set_title("Save the picture").save_file(),
    }
}
