//! What a text calls its gear sets: cells and lines that say nothing of what the values are.

use super::phrases::spelled;
use super::tokens::{Kind, Token};
use super::words::{LONGEST_PHRASE, Meaning, meaning};
use crate::gearing::Name;

/// How many words, numbers and signs the name of a set has at most.
const LONGEST_NAME: usize = 10;

/// Whether a cell says nothing of what its values are, so that it can be the name of a set.
pub(super) fn is_name(cell: &[Token]) -> bool {
    if cell.len() > LONGEST_NAME {
        return false;
    }
    let known = |at: usize, length: usize| {
        let words = cell.get(at..at + length)?;
        let are_words = words.iter().all(|t| t.kind == Kind::Word);
        are_words.then(|| meaning(&spelled(words))).flatten()
    };
    let has_unknown = (0..cell.len())
        .any(|at| matches!(cell[at].kind, Kind::Word | Kind::Code) && known(at, 1).is_none());
    let phrases = (0..cell.len()).flat_map(|at| (1..=LONGEST_PHRASE).map(move |n| (at, n)));
    let mut meanings = phrases.filter_map(|(at, length)| known(at, length));
    let says_something = meanings.any(|known| match known {
        Meaning::Heading | Meaning::Gear => !has_unknown,
        Meaning::Filler
        | Meaning::And
        | Meaning::For
        | Meaning::To
        | Meaning::Gears
        | Meaning::Speed => false,
        _ => true,
    });
    let has_words = cell
        .iter()
        .any(|t| matches!(t.kind, Kind::Word | Kind::Code));
    let is_ratio = |t: &Token| t.kind == Kind::Number && !t.is_whole();
    let is_gear = |t: &Token| matches!(t.kind, Kind::Ordinal(_));
    has_words && !says_something && !cell.iter().any(|t| is_ratio(t) || is_gear(t))
}

/// The text of a cell as the name of a set, where it can be one.
pub(super) fn name_of(cell: &[Token]) -> Option<String> {
    let text = spelled(cell);
    let short: String = text
        .trim_matches(|c: char| !c.is_alphanumeric())
        .chars()
        .take(Name::MOST_CHARACTERS)
        .collect();
    Name::new(&short).is_ok().then_some(short)
}
