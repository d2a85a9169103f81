//! Which gears are meant by `1–4`, `5th & 6th`, `5, 6, R`?

use super::pieces::{Line, Piece};
use super::tags::Tag;
use super::tokens::is_whole;

/// The line with its gears drawn together; those behind "for" are put in brackets: `4.12 for 1–4`.
pub(super) fn with_gear_lists(line: Line) -> Line {
    let mut drawn: Line = Vec::with_capacity(line.len());
    for piece in with_ranges(line) {
        match (&drawn[..], piece) {
            ([.., Piece::Amount(_), Piece::For], gears @ (Piece::Gears(_) | Piece::Tag(_))) => {
                drawn.pop();
                drawn.push(Piece::Bracket(vec![gears]));
            }
            (_, piece) => drawn.push(piece),
        }
    }
    drawn
}

/// The line with ranges of gears, and gears joined by "and", drawn together; brackets are not
/// looked into.
fn with_ranges(line: Line) -> Line {
    let mut joined: Line = Vec::with_capacity(line.len());
    for piece in line {
        joined.push(piece);
        if let Some(gears) = range_at_end(&joined).or_else(|| pair_at_end(&joined)) {
            joined.truncate(joined.len() - 3);
            joined.push(Piece::Gears(gears));
        }
    }
    joined
}

/// `1–4` and `1st to 4th`. Of `1-2-3` the first two are no range.
fn range_at_end(line: &[Piece]) -> Option<Vec<Tag>> {
    let [before @ .., first, Piece::Dash | Piece::To, last] = line else {
        return None;
    };
    let is_chain = matches!(before.last(), Some(Piece::Dash));
    match (gear_of(first)?, gear_of(last)?) {
        (from, to) if from < to && !is_chain => Some((from..=to).map(Tag::Gear).collect()),
        _ => None,
    }
}

/// `5th & 6th`, `5–6 and R`.
fn pair_at_end(line: &[Piece]) -> Option<Vec<Tag>> {
    let [.., first, Piece::And, last] = line else {
        return None;
    };
    let mut gears = tags_of(first)?;
    for tag in tags_of(last)? {
        if !gears.contains(&tag) {
            gears.push(tag);
        }
    }
    let are_shafts = gears.contains(&Tag::Final);
    (!are_shafts).then_some(gears)
}

fn gear_of(piece: &Piece) -> Option<u8> {
    match piece {
        Piece::Tag(Tag::Gear(n)) => Some(*n),
        other => other.whole_gear(),
    }
}

fn tags_of(piece: &Piece) -> Option<Vec<Tag>> {
    match piece {
        Piece::Tag(tag) => Some(vec![*tag]),
        Piece::Gears(gears) => Some(gears.clone()),
        _ => None,
    }
}

/// The gears that a bracket lists, if it holds nothing but gears, or the one label in it.
pub(super) fn listed(bracket: &[Piece]) -> Option<Vec<Tag>> {
    if let [Piece::Tag(tag)] = bracket {
        return Some(vec![*tag]);
    }
    let mut gears = Vec::new();
    for piece in with_ranges(bracket.to_vec()) {
        match piece {
            Piece::Tag(Tag::Final) => return None,
            Piece::Tag(tag) => gears.push(tag),
            Piece::Gears(more) => gears.extend(more),
            Piece::Amount(amount) => match amount.gear() {
                Some(n) => gears.push(Tag::Gear(n)),
                None => gears.extend(comma_list(&amount.text)?),
            },
            Piece::Break(_) | Piece::And | Piece::Dash | Piece::Unknown => {}
            _ => return None,
        }
    }
    (!gears.is_empty()).then_some(gears)
}

/// `5,6`, which elsewhere is a number, and `5/6`, which elsewhere is a tooth pair.
fn comma_list(text: &str) -> Option<Vec<Tag>> {
    let (first, second) = text.split_once([',', '/'])?;
    let gears = [Tag::gear(first)?, Tag::gear(second)?];
    let follow = is_whole(first) && gears[0].place() + 10 == gears[1].place();
    follow.then(|| gears.to_vec())
}
