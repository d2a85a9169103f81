//! Phrases in a row of tokens, and the words that tokens came from.

use super::tokens::{Kind, Token};
use super::words::{LONGEST_PHRASE, Meaning, meaning};
use crate::import::plain::folded;

/// How many words the longest phrase looked for has.
const LONGEST: usize = 4;

/// Whether the token is that sign.
pub(super) fn is_sign(token: Option<&Token>, sign: char) -> bool {
    token.is_some_and(|t| t.kind == Kind::Sign(sign))
}

/// The longest of `phrases`, each parted by "; ", that begins at `at`, and how many tokens it takes.
///
/// Hyphens and the points of abbreviations may stand within it.
pub(super) fn phrase_at(tokens: &[Token], at: usize, phrases: &str) -> Option<(String, usize)> {
    let first = tokens.get(at).filter(|t| t.kind == Kind::Word)?;
    if !phrases.contains(&folded(&first.text)) {
        return None;
    }
    let mut text = String::new();
    let mut longest = None;
    let mut end = at;
    for _ in 0..LONGEST {
        let Some(word) = tokens.get(end).filter(|t| t.kind == Kind::Word) else {
            break;
        };
        if !text.is_empty() {
            text.push(' ');
        }
        text.push_str(&folded(&word.text));
        end += 1;
        if phrases.split("; ").any(|phrase| phrase == text) {
            longest = Some((text.clone(), end - at));
        }
        let is_joint = |sign| is_sign(tokens.get(end), sign) && !tokens[end].is_apart;
        end += usize::from(is_joint('-') || is_joint('.'));
    }
    longest
}

/// The meaning of the longest known phrase that begins at `at`, and its length in tokens.
pub(super) fn meaning_at(tokens: &[Token], at: usize) -> Option<(Meaning, usize)> {
    let mut text = String::new();
    let mut longest = None;
    let mut end = at;
    for _ in 0..LONGEST_PHRASE {
        let word = tokens.get(end).filter(|t| t.kind == Kind::Word);
        let Some(word) = word else {
            break;
        };
        if !text.is_empty() {
            text.push(' ');
        }
        text.push_str(&word.text);
        end += 1;
        longest = meaning(&text).map(|m| (m, end - at)).or(longest);
        let hyphen = tokens.get(end).filter(|t| t.kind == Kind::Sign('-'));
        end += usize::from(hyphen.is_some_and(|t| !t.is_apart));
    }
    longest
}

/// The text that the tokens came from, on one line.
pub(super) fn spelled(tokens: &[Token]) -> String {
    let mut text = String::new();
    for token in tokens {
        if token.is_apart && !text.is_empty() && !text.ends_with(' ') {
            text.push(' ');
        }
        match token.kind {
            Kind::Sign('\t') | Kind::LineEnd => {}
            Kind::Sign(sign) => text.push(sign),
            _ => text.push_str(&token.text),
        }
    }
    text.trim().to_owned()
}

/// The tokens without those at the places that `is_taken` marks.
pub(super) fn without(tokens: Vec<Token>, is_taken: &[bool]) -> Vec<Token> {
    let kept = tokens.into_iter().zip(is_taken);
    kept.filter(|(_, taken)| !**taken)
        .map(|(token, _)| token)
        .collect()
}
