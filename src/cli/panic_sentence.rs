//! What is said where the program fails inside itself?
//!
//! Never a backtrace: one sentence with the place, for whoever mends it.

use std::io::Write;
use std::panic::PanicHookInfo;

/// From here on a panic prints one sentence to standard error, whatever the environment asks for.
pub fn answer_panics_with_a_sentence() {
    std::panic::set_hook(Box::new(|panic| {
        let sentence = sentence(panic);
        drop(writeln!(std::io::stderr(), "{sentence}"));
    }));
}

fn sentence(panic: &PanicHookInfo<'_>) -> String {
    let place = panic.location().map_or_else(
        || "an unknown place".to_owned(),
        |at| format!("{}, line {}", at.file(), at.line()),
    );
    format!("layshaft: this is a fault in Layshaft itself, at {place}; please report it")
}
