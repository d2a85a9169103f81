//! Are files saved whole or not at all, and read without being led astray?
//!
//! Partly on a simulated disk whose steps fail on demand and whose power can be cut, partly on the
//! real one.

mod killed;
mod saving;
mod simulated;
mod text_file;

use std::path::Path;
use std::sync::mpsc;
use std::thread;
use std::time::Duration;

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

/// What `task` returns; a failed test if that takes longer than five seconds.
fn without_waiting<T: Send + 'static>(task: impl FnOnce() -> T + Send + 'static) -> T {
    let (sender, receiver) = mpsc::channel();
    thread::spawn(move || sender.send(task()));
    receiver
        .recv_timeout(Duration::from_secs(5))
        .expect("this waits")
}
