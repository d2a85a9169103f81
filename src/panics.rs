//! What is said where the program fails inside itself, in a command or in the window?
//!
//! Never a backtrace: one sentence with the place, for whoever mends it.

use crate::unseen::printable;
use std::any::Any;
use std::io::Write;
use std::panic::Location;
use std::path::{Component, Path, PathBuf};

/// How much of the failure's own words is told, in characters.
const MOST_CHARACTERS: usize = 80;

/// How much of a path outside the program's own source is told, in names.
const MOST_NAMES: usize = 4;

/// From here on a panic prints one sentence to standard error, whatever the environment asks for.
pub fn answer_panics_with_a_sentence() {
    answer_panics(|| "saved files are as they were".to_owned());
}

/// The same, with words about what became of the user's work; `work` may still save some.
pub fn answer_panics(work: impl Fn() -> String + Send + Sync + 'static) {
    std::panic::set_hook(Box::new(move |panic| {
        let kept = work();
        let sentence = sentence(&told(panic.location()), words(panic.payload()), &kept);
        drop(writeln!(std::io::stderr(), "{sentence}"));
    }));
}

fn sentence(place: &str, words: &str, kept: &str) -> String {
    let words: Vec<&str> = words.split_whitespace().collect();
    let words: String = words.join(" ").chars().take(MOST_CHARACTERS).collect();
    let sentence = format!(
        "layshaft: this is a fault in Layshaft itself ({place}: {words}); \
         {kept}; please report it"
    );
    sentence.chars().map(printable).collect()
}

fn told(place: Option<&Location<'_>>) -> String {
    place.map_or_else(
        || "at an unknown place".to_owned(),
        |at| format!("{}:{}", brief(Path::new(at.file())).display(), at.line()),
    )
}

/// A path of our own source as it is, of another only its end.
fn brief(path: &Path) -> PathBuf {
    if path.is_relative() {
        return path.to_owned();
    }
    let is_name = |part: &Component<'_>| matches!(part, Component::Normal(_));
    let names: Vec<Component<'_>> = path.components().filter(is_name).collect();
    names[names.len().saturating_sub(MOST_NAMES)..]
        .iter()
        .collect()
}

fn words(payload: &dyn Any) -> &str {
    let literal = payload.downcast_ref::<&str>().copied();
    let made = payload.downcast_ref::<String>().map(String::as_str);
    literal.or(made).unwrap_or("no reason was given")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_panic_is_told_in_one_short_sentence() {
        let text = sentence("src/app/window.rs:12", "index 3 is\nout of range", "kept");
        assert!(
            text.contains("(src/app/window.rs:12: index 3 is out of range)"),
            "{text}"
        );
        let text = sentence(&"long/".repeat(20), &"many words ".repeat(100), "kept");
        assert!(text.chars().count() < 300, "{text}");
    }

    #[test]
    fn the_place_of_a_panic_is_told() {
        let place = told(Some(Location::caller()));
        assert!(place.contains("panics.rs:"), "{place}");
        assert!(told(None).contains("unknown place"));
    }

    #[test]
    fn only_the_end_of_a_strange_path_is_told() {
        let own = brief(Path::new("src/project/format/v1/set.rs"));
        assert_eq!(own, Path::new("src/project/format/v1/set.rs"));
        let strange = brief(Path::new("/far/away/crates/egui-1.0.0/src/id.rs"));
        assert_eq!(strange, Path::new("crates/egui-1.0.0/src/id.rs"));
    }

    #[test]
    fn the_words_of_a_panic_are_found_in_both_forms() {
        assert_eq!(words(&"a literal"), "a literal");
        assert_eq!(words(&"a made text".to_owned()), "a made text");
        assert_eq!(words(&7), "no reason was given");
    }
}
