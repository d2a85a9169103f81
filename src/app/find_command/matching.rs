//! How well do the words of an offer fit what was typed?
//!
//! Every word that was typed must be found, in whatever order and case.

/// The words of something that can be found.
#[derive(Debug, Clone, Copy)]
pub(super) struct Words<'a> {
    /// What it is called.
    pub(super) name: &'a str,
    /// Where it stands, its keys, and what it does.
    pub(super) more: [&'a str; 3],
    /// Whether it cannot be done just now.
    pub(super) is_barred: bool,
}

/// How far from what was typed; the least fits best.
pub(super) type Distance = (usize, usize);

/// What a typed word that is found only beside the name weighs more.
const BESIDE_THE_NAME: usize = 2;

/// How far an offer is from what was typed; none where a word is not found.
///
/// Above all counts where the words are found: at the beginning of a word of the name, within one,
/// or beside the name; then a name that begins with what was typed comes first.
pub(super) fn distance(typed: &str, words: Words<'_>) -> Option<Distance> {
    let typed = typed.trim().to_lowercase();
    let name = words.name.to_lowercase();
    let more = words.more.join(" ").to_lowercase();
    let mut sum = 0;
    for word in typed.split_whitespace() {
        let in_name = place_of(word, &name);
        sum += in_name.or_else(|| place_of(word, &more).map(|place| place + BESIDE_THE_NAME))?;
    }
    Some((sum, usize::from(!name.starts_with(&typed))))
}

/// 0 where a word of the text begins with what was typed, 1 where it stands within one.
fn place_of(typed: &str, text: &str) -> Option<usize> {
    let mut places = text.match_indices(typed).map(|(at, _)| {
        let before = text[..at].chars().next_back();
        usize::from(before.is_some_and(char::is_alphanumeric))
    });
    let first = places.next()?;
    Some(places.fold(first, usize::min))
}

/// Which of several fit, the best first; of those that fit equally well, what can be done before what
/// cannot, in their order.
pub(super) fn best_first<'a>(typed: &str, all: impl Iterator<Item = Words<'a>>) -> Vec<usize> {
    let found = all.enumerate().filter_map(|(at, words)| {
        let distance = distance(typed, words)?;
        Some((distance, words.is_barred, at))
    });
    let mut found: Vec<_> = found.collect();
    found.sort_unstable();
    found.into_iter().map(|(_, _, at)| at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [Words<'static>; 5] = [
        Words {
            name: "Save",
            more: ["File", "Ctrl+S", "Saves the project in its file"],
            is_barred: false,
        },
        Words {
            name: "Save as…",
            more: ["File", "Ctrl+Shift+S", "Saves the project in another file"],
            is_barred: false,
        },
        Words {
            name: "Undo: redline",
            more: ["Edit", "Ctrl+Z", "Takes the last change back"],
            is_barred: false,
        },
        Words {
            name: "Whole diagram",
            more: ["View", "Home", "Shows the whole diagram again"],
            is_barred: false,
        },
        Words {
            name: "Été 185/60R14",
            more: ["Gear set", "", ""],
            is_barred: false,
        },
    ];

    fn found(typed: &str) -> Vec<usize> {
        best_first(typed, ALL.into_iter())
    }

    #[test]
    fn nothing_typed_finds_everything_in_its_order() {
        assert_eq!(found(""), [0, 1, 2, 3, 4]);
        assert_eq!(found("  "), [0, 1, 2, 3, 4]);
    }

    #[test]
    fn words_are_found_in_any_order_and_case() {
        assert_eq!(found("AS save"), [1]);
        assert_eq!(found("diagram wh"), [3]);
        assert_eq!(found("été"), [4]);
        assert_eq!(found("r14 ÉT"), [4]);
    }

    #[test]
    fn a_word_that_is_nowhere_finds_nothing() {
        assert!(found("save nothing").is_empty());
        assert!(found("x").is_empty());
    }

    #[test]
    fn keys_place_and_what_it_does_are_searched_behind_the_name() {
        assert_eq!(found("ctrl+z"), [2]);
        assert_eq!(found("another"), [1]);
        assert_eq!(found("edit"), [2]);
        // Within "redline", as a word beside both ways to save, within "again".
        assert_eq!(found("in"), [2, 0, 1, 3]);
    }

    fn named(name: &str, is_barred: bool) -> Words<'_> {
        Words {
            name,
            more: [""; 3],
            is_barred,
        }
    }

    #[test]
    fn a_name_that_begins_with_it_comes_before_one_that_holds_it() {
        let all = ["Remove set", "Paste set", "Set", "Reset"].map(|name| named(name, false));
        assert_eq!(best_first("set", all.into_iter()), [2, 0, 1, 3]);
    }

    #[test]
    fn what_cannot_be_done_comes_behind_what_fits_as_well() {
        let all = [("Set one", true), ("Set two", false), ("Reset", false)];
        let all = all.map(|(name, is_barred)| named(name, is_barred));
        assert_eq!(best_first("set", all.into_iter()), [1, 0, 2]);
    }
}
