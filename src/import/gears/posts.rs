//! The numbers of posts: "Post 13:", "#7", "reply 4:" count answers in a forum, not gears.

use super::phrases::is_sign;
use super::tokens::{Kind, Token};
use super::words::{LONGEST_PHRASE, Meaning, meaning};
use crate::import::plain::folded;

/// The tokens without what numbers a post; where gears have no other label, `#1` numbers a gear.
pub(super) fn without_posts(tokens: &[Token]) -> Vec<Token> {
    let has_labels = has_explicit_labels(tokens);
    let mut kept: Vec<Token> = Vec::with_capacity(tokens.len());
    let mut at = 0;
    while at < tokens.len() {
        if let Some(used) = number_of_post(&tokens[at..], kept.last(), has_labels) {
            at += used;
        } else {
            kept.push(tokens[at].clone());
            at += 1;
        }
    }
    kept
}

/// Whether something other than a bare number or a `#` names a gear.
fn has_explicit_labels(tokens: &[Token]) -> bool {
    let names_a_gear = |token: &Token| match token.kind {
        Kind::Ordinal(_) => true,
        Kind::Word => match meaning(&token.text) {
            Some(Meaning::Gear) => true,
            Some(Meaning::Tag(tag)) => tag.is_forward(),
            _ => false,
        },
        _ => false,
    };
    tokens.iter().any(names_a_gear)
}

/// How many tokens from here on number a post, if they do.
fn number_of_post(rest: &[Token], before: Option<&Token>, has_labels: bool) -> Option<usize> {
    let word = usize::from(rest.first().is_some_and(is_post_word));
    let hash = usize::from(is_sign(rest.get(word), '#'));
    rest.get(word + hash).filter(|t| t.is_whole())?;
    let is_post = match (word, hash) {
        (1, _) => true,
        (_, 1) => {
            let is_of_gear = before.is_some_and(|t| meaning(&t.text) == Some(Meaning::Gear));
            let has_value = rest.get(2..).is_some_and(has_value_in_line);
            !is_of_gear && (has_labels || !has_value)
        }
        _ => false,
    };
    let mark = rest.get(word + hash + 1);
    let has_mark = is_sign(mark, ':') || is_sign(mark, ')') || is_sign(mark, '.');
    is_post.then_some(word + hash + 1 + usize::from(has_mark))
}

fn is_post_word(token: &Token) -> bool {
    const WORDS: [&str; 14] = [
        "post",
        "posts",
        "posting",
        "reply",
        "replies",
        "comment",
        "message",
        "msg",
        "beitrag",
        "antwort",
        "kommentar",
        "reponse",
        "messaggio",
        "risposta",
    ];
    token.kind == Kind::Word && WORDS.contains(&folded(&token.text).as_str())
}

fn has_value_in_line(tokens: &[Token]) -> bool {
    let line = tokens.iter().take_while(|t| t.kind != Kind::LineEnd);
    line.take(LONGEST_PHRASE).any(|t| t.kind == Kind::Number)
}
