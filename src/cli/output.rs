//! Where does a result go, and what is said beside it?
//!
//! A file is written whole or not at all; what flows (standard output, a pipe, a terminal) is
//! written straight.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::named_text::TEXT_FLAGS;
use crate::platform;
use crate::project::{Disk, check_target, save_whole, shown};
use crate::unseen::printable;
use std::fs::OpenOptions;
use std::io::{self, ErrorKind, Write, stdout};
use std::path::{Path, PathBuf};

/// Standard output of this process; where it was closed from the start, every write fails.
///
/// The standard library puts something in the place of what is closed that takes all in silence.
pub fn standard_output() -> Box<dyn Write> {
    if platform::standard_output_was_closed() {
        Box::new(Closed)
    } else {
        Box::new(stdout())
    }
}

/// What stands for a standard output that was closed.
struct Closed;

impl Write for Closed {
    fn write(&mut self, _: &[u8]) -> io::Result<usize> {
        Err(io::Error::other("it is closed"))
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// Where a result goes.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Output {
    /// To standard output.
    Standard,
    /// To standard error.
    StandardError,
    /// To a device, a pipe, or what this process was handed as open.
    Stream(PathBuf),
    /// Into a file, whole or not at all.
    File(PathBuf),
}

/// Where `-o` sends the result; what is read is never its own output.
pub(super) fn wanted(arguments: &Arguments) -> Result<Output, CliError> {
    let Some(out) = arguments.path(Flag::Output)? else {
        return Ok(Output::Standard);
    };
    if out == Path::new("-") {
        return Ok(Output::Standard);
    }
    match platform::descriptor_named(out) {
        Some(1) => Ok(Output::Standard),
        Some(2) => Ok(Output::StandardError),
        Some(_) => Ok(Output::Stream(out.to_owned())),
        None if platform::is_stream(out) => Ok(Output::Stream(out.to_owned())),
        None => {
            let is_read = |file: Option<&Path>| file.is_some_and(|file| is_same_file(file, out));
            if is_read(arguments.file.as_deref()) {
                return Err(CliError::OwnInput);
            }
            for flag in TEXT_FLAGS {
                if is_read(arguments.path(flag)?) {
                    return Err(CliError::OwnText(flag.name()));
                }
            }
            Ok(Output::File(out.to_owned()))
        }
    }
}

/// Whether both paths lead to one file, whatever links are on the way.
fn is_same_file(file: &Path, out: &Path) -> bool {
    match (file.canonicalize(), out.canonicalize()) {
        (Ok(file), Ok(out)) => file == out,
        _ => file == out,
    }
}

impl Output {
    /// Whether a file could be written there, found out before the work is done.
    pub(super) fn check(&self) -> Result<(), CliError> {
        match self {
            Self::Standard | Self::StandardError | Self::Stream(_) => Ok(()),
            Self::File(path) => check_target(&Disk, path).map_err(CliError::NotWritten),
        }
    }

    /// Brings a whole text for readers to where it goes; only a file keeps what cannot be seen.
    pub(super) fn write_text(
        &self,
        text: &str,
        stdout: &mut dyn Write,
        stderr: &mut dyn Write,
    ) -> Result<(), CliError> {
        match self {
            Self::File(_) => self.write(text.as_bytes(), stdout, stderr),
            _ => self.write(for_terminal(text).as_bytes(), stdout, stderr),
        }
    }

    /// Brings the whole result to where it goes.
    pub(super) fn write(
        &self,
        bytes: &[u8],
        stdout: &mut dyn Write,
        stderr: &mut dyn Write,
    ) -> Result<(), CliError> {
        match self {
            Self::Standard => print_bytes(stdout, bytes),
            Self::StandardError => {
                streamed(write_through(stderr, bytes), Path::new("standard error"))
            }
            Self::Stream(path) => {
                // Appending leaves what another program wrote before into a file handed to both. A
                // named pipe is waited for until somebody reads it, as pipes are.
                let opened = OpenOptions::new().append(true).open(path);
                streamed(
                    opened.and_then(|mut stream| write_through(&mut stream, bytes)),
                    path,
                )
            }
            Self::File(path) => match save_whole(&Disk, path, bytes) {
                Err(error) if error.is_saved() => {
                    message(stderr, &error.to_string());
                    Ok(())
                }
                saved => saved.map_err(CliError::NotWritten),
            },
        }
    }
}

fn write_through(stream: &mut dyn Write, bytes: &[u8]) -> io::Result<()> {
    stream.write_all(bytes)?;
    stream.flush()
}

/// What became of a stream. Whoever closes the pipe has read enough: that is no error.
fn streamed(written: io::Result<()>, path: &Path) -> Result<(), CliError> {
    match written {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(CliError::NotStreamed {
            reason: platform::reason_in_words(&error),
            path: shown(path),
        }),
        _ => Ok(()),
    }
}

/// The lines as a terminal may have them: nothing in them moves or turns about what is shown.
fn for_terminal(text: &str) -> String {
    let clean = |c: char| if c == '\n' { c } else { printable(c) };
    text.chars().map(clean).collect()
}

/// Prints a text for readers. Whoever closes the pipe has read enough: that is no error.
pub(super) fn print(stdout: &mut dyn Write, text: &str) -> Result<(), CliError> {
    print_bytes(stdout, for_terminal(text).as_bytes())
}

/// Prints what is for programs, or what was made harmless before.
pub(super) fn print_bytes(stdout: &mut dyn Write, bytes: &[u8]) -> Result<(), CliError> {
    match write_through(stdout, bytes) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(CliError::NotPrinted(platform::reason_in_words(&error)))
        }
        _ => Ok(()),
    }
}

/// Says one sentence beside the result. Where nobody hears it, nothing is to be done.
pub(super) fn message(stderr: &mut dyn Write, sentence: &str) {
    notes(stderr, &format!("{sentence}\n"));
}

/// Says whole lines beside the result.
pub(super) fn notes(stderr: &mut dyn Write, lines: &str) {
    drop(write_through(stderr, for_terminal(lines).as_bytes()));
}
