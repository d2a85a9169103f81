//! Arguments to a command or the window, and to an exit code.

use std::process::ExitCode;

fn main() -> ExitCode {
    let file = std::env::args_os().nth(1).map(Into::into);
    match layshaft::app::run(file) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::from(2),
    }
}
