//! Are files saved whole or not at all, and read without being led astray?
//!
//! Partly on a simulated disk whose steps fail on demand and whose power can be cut, partly on the
//! real one.

mod killed;
mod private;
mod saving;
mod simulated;
mod sweeping;
mod text_file;

use std::path::Path;
use std::sync::mpsc;
use std::thread;
use std::time::{Duration, SystemTime};

/// The names in a folder, sorted.
fn names_in(folder: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).unwrap();
    let name = |entry: std::io::Result<std::fs::DirEntry>| {
        let name = entry.unwrap().file_name();
        name.into_string().unwrap()
    };
    let mut names: Vec<String> = entries.map(name).collect();
    names.sort();
    names
}

/// Says on stderr, past the test harness, that a part of a test could not be done here.
fn skipped(what: &str) {
    use std::io::Write;
    writeln!(std::io::stderr(), "skipped: {what}").unwrap();
}

/// Makes a pipe; whether there is one now.
fn pipe_at(path: &Path) -> bool {
    let made = std::process::Command::new("mkfifo").arg(path).status();
    let is_made = made.is_ok_and(|status| status.success());
    if !is_made {
        skipped("no pipe can be made here");
    }
    is_made
}

/// Makes a file look as if it had been written two days ago.
fn grow_old(path: &Path) {
    let file = std::fs::OpenOptions::new().write(true).open(path).unwrap();
    file.set_modified(SystemTime::now() - Duration::from_hours(48))
        .unwrap();
}

/// What `task` returns; a failed test if that takes longer than five seconds.
fn without_waiting<T: Send + 'static>(task: impl FnOnce() -> T + Send + 'static) -> T {
    let (sender, receiver) = mpsc::channel();
    thread::spawn(move || sender.send(task()));
    receiver
        .recv_timeout(Duration::from_secs(5))
        .expect("this waits")
}
