//! Where does a result go, and what is said beside it?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use crate::gearing::quoted;
use std::ffi::OsString;
use std::io::{self, ErrorKind, Write};
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
    /// Brings the whole text to where it goes.
    pub(super) fn write(&self, stdout: &mut dyn Write, text: &str) -> Result<(), CliError> {
        match self {
            Self::Standard => print(stdout, text),
            Self::File(path) => {
                write_whole(path, text.as_bytes()).map_err(|error| CliError::Unwritable {
                    file: shown(path),
                    reason: error.kind().to_string(),
                })
            }
        }
    }
}

/// Prints a result. Whoever closes the pipe has read enough: that is no error.
pub(super) fn print(stdout: &mut dyn Write, text: &str) -> Result<(), CliError> {
    let printed = stdout
        .write_all(text.as_bytes())
        .and_then(|()| stdout.flush());
    match printed {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(CliError::Unwritable {
            file: "standard output".to_owned(),
            reason: error.kind().to_string(),
        }),
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

/// A path as it stands in a sentence: at most 40 characters, the end of a long one, where its name is.
pub(super) fn shown(path: &Path) -> String {
    let text = path.to_string_lossy();
    let length = text.chars().count();
    if length <= 40 {
        return quoted(&text);
    }
    let end: String = text.chars().skip(length - 39).collect();
    format!("…{}", quoted(&end))
}

/// Writes a file whole or not at all.
fn write_whole(path: &Path, bytes: &[u8]) -> io::Result<()> {
    // Nothing but a file is replaced: not a folder, and above all not a device.
    if path.exists() && !path.is_file() {
        return Err(ErrorKind::AlreadyExists.into());
    }
    let mut name = path.file_name().map_or_else(OsString::new, OsString::from);
    name.push(format!(".{}.layshaft-tmp", std::process::id()));
    let temporary = path.with_file_name(name);
    let written =
        std::fs::write(&temporary, bytes).and_then(|()| std::fs::rename(&temporary, path));
    if written.is_err() {
        // Best effort: it may not even be there.
        drop(std::fs::remove_file(&temporary));
    }
    written
}
