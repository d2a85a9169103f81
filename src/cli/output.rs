//! Where does a result go, and what is said beside it?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use crate::platform;
use crate::project::{Disk, check_target, save_whole};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

/// Where a result goes.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Output {
    /// To standard output.
    Standard,
    /// Into a file, whole or not at all.
    File(PathBuf),
}

/// Where `-o` sends the result; a project file is never its own output.
pub(super) fn wanted(arguments: &Arguments) -> Result<Output, CliError> {
    match arguments.path(Flag::Output)? {
        None => Ok(Output::Standard),
        Some(out) if out == Path::new("-") => Ok(Output::Standard),
        Some(out) => match &arguments.file {
            Some(file) if is_same_file(file, out) => Err(CliError::OwnInput),
            _ => Ok(Output::File(out.to_owned())),
        },
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
            Self::Standard => Ok(()),
            Self::File(path) => check_target(&Disk, path).map_err(CliError::NotWritten),
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

/// Prints a text. Whoever closes the pipe has read enough: that is no error.
pub(super) fn print(stdout: &mut dyn Write, text: &str) -> Result<(), CliError> {
    print_bytes(stdout, text.as_bytes())
}

fn print_bytes(stdout: &mut dyn Write, bytes: &[u8]) -> Result<(), CliError> {
    let printed = stdout.write_all(bytes).and_then(|()| stdout.flush());
    match printed {
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
    let said = stderr
        .write_all(lines.as_bytes())
        .and_then(|()| stderr.flush());
    drop(said);
}
