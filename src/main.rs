//! Arguments to a command or the window, and to an exit code.

use layshaft::cli::{self, Outcome};
use std::io::{stderr, stdout};
use std::path::PathBuf;
use std::process::ExitCode;

fn main() -> ExitCode {
    cli::answer_panics_with_a_sentence();
    let arguments = std::env::args_os().skip(1);
    let code = match cli::run(arguments, &mut stdout(), &mut stderr()) {
        Outcome::Exit(code) => code,
        Outcome::Window(file) => cli::answer(open_window(file), &mut stderr()),
    };
    ExitCode::from(code)
}

/// Opens the window on a file, or on the example. To be replaced by the window itself.
fn open_window(_file: Option<PathBuf>) -> Result<(), String> {
    Err("the window is not part of this build yet".to_owned())
}
