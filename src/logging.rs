//! Where do the toolkit's warnings go? To standard error, one line each.
//!
//! Some libraries only log what went wrong: without this, a file dialog that cannot be shown would
//! fail in silence. What is not wrong is not said.

use crate::unseen::printable;
use log::{Level, LevelFilter, Log, Metadata, Record};
use std::io::{Write, stderr};

/// The most characters of a message; some libraries print whole structures.
const MOST_CHARACTERS: usize = 240;

/// Who is heard less, by the beginning of the module: the highest level that is said.
const LESS_HEARD: &[(&str, LevelFilter)] = &[
    // Warns of peculiarities of the display that nobody needs to mend.
    ("winit", LevelFilter::Error),
    // Warns its developers where the window closes right after a text was selected, which X11 counts as
    // a copy; nothing is lost that anybody copied.
    ("arboard", LevelFilter::Error),
    // Says again what `StartError` says.
    ("eframe::native::run", LevelFilter::Off),
];

/// From here on warnings and errors of all libraries are written to standard error.
pub(crate) fn write_warnings_to_stderr() {
    // Whoever came first stays: a test or a program that uses this crate has its own.
    if log::set_logger(&StandardError).is_ok() {
        log::set_max_level(LevelFilter::Warn);
    }
}

struct StandardError;

impl Log for StandardError {
    fn enabled(&self, metadata: &Metadata<'_>) -> bool {
        let target = metadata.target();
        let less = LESS_HEARD.iter().find(|(of, _)| target.starts_with(of));
        metadata.level() <= less.map_or(LevelFilter::Warn, |(_, most)| *most)
    }

    fn log(&self, record: &Record<'_>) {
        // Whoever is torn down by a panic complains, but the panic has been told.
        if self.enabled(record.metadata()) && !std::thread::panicking() {
            let line = line(record.level(), &record.args().to_string());
            // Where standard error is closed there is nobody to tell.
            drop(writeln!(stderr(), "{line}"));
        }
    }

    fn flush(&self) {}
}

fn line(level: Level, message: &str) -> String {
    let word = match level {
        Level::Error => "error",
        _ => "warning",
    };
    let words: Vec<&str> = message.split_whitespace().collect();
    let message = words.join(" ");
    let message: String = message
        .chars()
        .take(MOST_CHARACTERS)
        .map(printable)
        .collect();
    format!("layshaft: {word}: {message}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_message_is_one_short_line_with_its_level() {
        let text = line(Level::Error, "the dialog\n  could not\r\nbe shown");
        assert_eq!(text, "layshaft: error: the dialog could not be shown");
        let text = line(Level::Warn, &"long ".repeat(1000));
        assert!(text.starts_with("layshaft: warning: long long"), "{text}");
        assert!(text.chars().count() < 300, "{text}");
    }

    #[test]
    fn a_path_in_a_message_cannot_turn_the_line_about() {
        let text = line(Level::Warn, "no lock on /a\u{202e}b\u{200b}c\u{1b}[2J");
        assert!(!text.contains(['\u{202e}', '\u{200b}', '\u{1b}']), "{text}");
        assert!(text.contains("[2J"), "{text}");
    }

    #[test]
    fn what_is_not_wrong_is_not_said() {
        let is_said = |target, level| {
            StandardError.enabled(&Metadata::builder().target(target).level(level).build())
        };
        for level in [Level::Error, Level::Warn] {
            assert!(is_said("rfd::backend", level), "{level}");
        }
        for level in [Level::Info, Level::Debug, Level::Trace] {
            assert!(!is_said("rfd::backend", level), "{level}");
        }
        assert!(is_said("winit::x11", Level::Error) && !is_said("winit::x11", Level::Warn));
        assert!(!is_said("arboard::platform::linux::x11", Level::Warn));
        assert!(!is_said("eframe::native::run", Level::Error));
    }
}
