//! How is a file chosen with the system's own dialog, without waiting for it?
//!
//! The dialog may never answer, so it runs in the background and nobody waits for it.

use super::background::{Background, Wake};
use std::convert::Infallible;
use std::path::PathBuf;
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

impl Purpose {
    /// What the names of such files end in as a rule.
    pub(super) fn endings(self) -> &'static [&'static str] {
        match self {
            Self::Open => &["ron", "png"],
            Self::Save => &["ron"],
            Self::SavePicture => &["png"],
        }
    }

    /// The ending that a name gets which has none.
    pub(super) fn ending(self) -> &'static str {
        match self {
            Self::Open | Self::Save => "ron",
            Self::SavePicture => "png",
        }
    }
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
#[derive(Debug, Default)]
pub struct SystemPicker {
    /// The newest dialog; what an older one comes back with is moot.
    dialog: Option<Background<Infallible, Answer>>,
    requests: u64,
}

impl FilePicker for SystemPicker {
    fn start(&mut self, purpose: Purpose, suggested: Option<PathBuf>, wake: Wake) -> u64 {
        self.requests += 1;
        let request = self.requests;
        self.dialog = Some(Background::started(wake, move |task| {
            let begun = Instant::now();
            let path = ask(purpose, suggested);
            let was_unseen = path.is_none() && begun.elapsed() < UNSEEN;
            task.tell(Answer {
                request,
                path,
                was_unseen,
            });
        }));
        request
    }

    fn poll(&mut self) -> Option<Answer> {
        self.dialog.as_ref()?.news()
    }
}

fn ask(purpose: Purpose, suggested: Option<PathBuf>) -> Option<PathBuf> {
    let name = match purpose {
        Purpose::Open => "Layshaft project or picture",
        Purpose::Save => "Layshaft project",
        Purpose::SavePicture => "PNG picture",
    };
    let mut dialog = rfd::FileDialog::new().add_filter(name, purpose.endings());
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
