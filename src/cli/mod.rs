//! Headless commands: what the window shows, for a terminal, a script, another program.
//!
//! Arguments become typed options, options a project, the project its results, and these a text.
//! Results go to standard output, what is said about them to standard error. A command either
//! prints its whole result or nothing but one sentence.

mod arguments;
mod brochure;
mod chart;
mod check;
mod count;
mod error;
mod find;
mod findings;
mod fit;
mod flag;
mod flag_row;
mod flags;
mod help;
mod jobs;
mod journal;
mod named_text;
mod nearest;
mod output;
mod pairs;
mod pasted;
mod preload;
mod run_questions;
mod sets_by_flags;
mod shim;
mod source;
mod subcommand;
mod table;
mod technical_by_flags;
mod torque_by_flags;
mod typed_set;
mod values;

use arguments::Asked;
use error::CliError;
pub use output::standard_output;
use std::ffi::OsString;
use std::fmt::Display;
use std::io::Write;
use std::path::PathBuf;
use subcommand::Subcommand;

/// Exit code where a result was printed.
pub const PRINTED: u8 = 0;

/// Exit code where `check` lists findings.
pub const FINDINGS: u8 = 1;

/// Exit code where nothing was printed: wrong usage, unreadable, unwritable.
pub const FAILED: u8 = 2;

/// What remains to be done after the arguments were answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outcome {
    /// Nothing: leave with this exit code.
    Exit(u8),
    /// The window is asked for, on this file or on the example.
    Window(Option<PathBuf>),
}

/// What remains to be done after `arguments`, without the program's own name, were answered.
///
/// A headless command is done when this returns. A failed one has printed nothing to `stdout` and
/// one sentence to `stderr`.
pub fn run(
    arguments: impl IntoIterator<Item = OsString>,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Outcome {
    match answered(arguments, stdout, stderr) {
        Ok(outcome) => outcome,
        Err(error) => Outcome::Exit(answer(Err(error), stderr)),
    }
}

/// The exit code of what is done; its error is told in one sentence.
pub fn answer(done: Result<(), impl Display>, stderr: &mut dyn Write) -> u8 {
    match done {
        Ok(()) => PRINTED,
        Err(error) => {
            output::message(stderr, &error::sentence(&error));
            FAILED
        }
    }
}

fn answered(
    arguments: impl IntoIterator<Item = OsString>,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<Outcome, CliError> {
    let code = match arguments::read(arguments)? {
        Asked::Window(file) => return Ok(Outcome::Window(file)),
        Asked::Help(about) => output::print(stdout, &help::text(about)).map(|()| PRINTED)?,
        Asked::Version => output::print(stdout, &help::version()).map(|()| PRINTED)?,
        Asked::Command(Subcommand::Table, arguments) => table::run(&arguments, stdout, stderr)?,
        Asked::Command(Subcommand::Chart, arguments) => chart::run(&arguments, stdout, stderr)?,
        Asked::Command(Subcommand::Check, arguments) => check::run(&arguments, stdout, stderr)?,
        Asked::Command(Subcommand::Pairs, arguments) => pairs::run(&arguments, stdout, stderr)?,
        Asked::Command(Subcommand::Find, arguments) => find::run(&arguments, stdout, stderr)?,
        Asked::Command(Subcommand::Jobs, arguments) => jobs::run(&arguments, stdout, stderr)?,
        Asked::Command(Subcommand::Shim, arguments) => shim::run(&arguments, stdout)?,
        Asked::Command(Subcommand::Preload, arguments) => preload::run(&arguments, stdout)?,
        Asked::Command(Subcommand::Fit, arguments) => fit::run(&arguments, stdout)?,
        Asked::Command(Subcommand::Journal, arguments) => journal::run(&arguments, stdout)?,
        Asked::Command(Subcommand::Count, arguments) => count::run(&arguments, stdout, stderr)?,
    };
    Ok(Outcome::Exit(code))
}
