//! Where do the toolkit's warnings go? To standard error, one line each.
//!
//! Some libraries only log what went wrong: without this, a file dialog that cannot be shown would
//! fail in silence. What is not wrong is not said.

use log::{Level, LevelFilter, Log, Metadata, Record};
use std::io::{Write, stderr};

/// The most characters of a message; some libraries print whole structures.
const MOST_CHARACTERS: usize = 240;

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
        metadata.level() <= Level::Warn
    }

    fn log(&self, record: &Record<'_>) {
        if self.enabled(record.metadata()) {
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
    let message: String = words.join(" ").chars().take(MOST_CHARACTERS).collect();
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
    fn what_is_not_wrong_is_not_said() {
        let is_said = |level| StandardError.enabled(&Metadata::builder().level(level).build());
        assert!(is_said(Level::Error) && is_said(Level::Warn));
        assert!(!is_said(Level::Info) && !is_said(Level::Debug) && !is_said(Level::Trace));
    }
}
