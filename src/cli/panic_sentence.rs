//! What is said where the program fails inside itself?
//!
//! Never a backtrace: one sentence with the place, for whoever mends it.

use std::io::Write;
use std::panic::Location;

/// From here on a panic prints one sentence to standard error, whatever the environment asks for.
pub fn answer_panics_with_a_sentence() {
    std::panic::set_hook(Box::new(|panic| {
        drop(writeln!(
            std::io::stderr(),
            "{}",
            sentence(panic.location())
        ));
    }));
}

fn sentence(place: Option<&Location<'_>>) -> String {
    let place = place.map_or_else(
        || "at an unknown place".to_owned(),
        |at| format!("in {}, line {}", at.file(), at.line()),
    );
    format!("layshaft: this is a fault in Layshaft itself, {place}; please report it")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_is_told_with_its_place_in_one_line() {
        let told = sentence(Some(Location::caller()));
        assert!(told.contains("panic_sentence.rs, line "), "{told}");
        assert!(!told.contains('\n') && told.chars().count() < 300, "{told}");
        assert!(sentence(None).contains("unknown place"));
    }
}
