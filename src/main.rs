//! Arguments to a command or the window, and to an exit code.

use layshaft::app;
use layshaft::cli::{self, Outcome};
use layshaft::panics;
use std::io::stderr;
use std::process::ExitCode;

fn main() -> ExitCode {
    panics::answer_panics_with_a_sentence();
    let arguments = std::env::args_os().skip(1);
    let code = match cli::run(arguments, &mut cli::standard_output(), &mut stderr()) {
        Outcome::Exit(code) => code,
        Outcome::Window(file) => cli::answer(app::run(file.as_deref()), &mut stderr()),
    };
    ExitCode::from(code)
}
