//! Which bare whole numbers are the numbers of gears?
//!
//! `1 3.54` and a row `1 2 3 4 5` above the ratios number gears; the 4 in `4 2.5 1.6 1` does not.

use super::amount::{Amount, Shape};
use super::pieces::{Line, Piece};
use super::tags::Tag;

/// Turns the whole numbers that number gears into labels.
pub(super) fn number_gears(lines: &mut [Line]) {
    settle_to_one(lines);
    number_heads(lines);
    number_lines(lines);
}

/// In `1:3.54` above `2:1.91` the 1 is a gear's number, not "one to".
fn settle_to_one(lines: &mut [Line]) {
    let has = |n: u8| {
        let mut pieces = lines.iter().flatten();
        pieces.any(|p| matches!(p, Piece::Tag(Tag::Gear(gear)) if *gear == n))
    };
    if !has(2) || has(1) {
        return;
    }
    let is_to_one = |p: &Piece| matches!(p, Piece::Amount(a) if a.text.starts_with("1:"));
    for line in lines {
        if let Some(at) = line.iter().position(is_to_one) {
            if at > 0 && line[at - 1].is_label() {
                continue;
            }
            if let Piece::Amount(amount) = &line[at] {
                let shape = Shape::Decimal;
                let rest = Amount::new(amount.text["1:".len()..].to_owned(), shape);
                line[at] = Piece::Amount(rest);
                line.insert(at, Piece::Tag(Tag::Gear(1)));
            }
            return;
        }
    }
}

/// Numbers the gears of a head row, and of a line that holds its own head: `1/2/3: 3.5/2.1/1.4`.
fn number_heads(lines: &mut [Line]) {
    let has_ratios = |line: &Line| line.iter().any(Piece::is_broken_number);
    let last_ratios = lines.iter().rposition(has_ratios);
    for (at, line) in lines.iter_mut().enumerate() {
        let heads = counted_up(line);
        let others = line.iter().filter(|p| p.is_number()).count() - heads;
        let is_head_row = others == 0 && heads >= 2 && last_ratios > Some(at);
        let is_own_head = heads >= 3 && others >= heads;
        if is_head_row || is_own_head {
            label_first(line, heads);
        }
    }
}

/// How many whole numbers open a line and count up by one; labels may stand between.
fn counted_up(line: &[Piece]) -> usize {
    let numbers = line.iter().filter(|piece| piece.is_number());
    let mut last = None;
    let follows = |piece: &&Piece| {
        let next = piece.whole_gear();
        let is_next = match (last, next) {
            (_, None) => false,
            (None, Some(_)) => true,
            (Some(before), Some(now)) => before + 1 == now,
        };
        last = next;
        is_next
    };
    numbers.take_while(follows).count()
}

/// Labels the first `count` whole numbers of a line.
fn label_first(line: &mut Line, count: usize) {
    for piece in line.iter_mut().filter(|p| p.is_number()).take(count) {
        if let Some(n) = piece.whole_gear() {
            *piece = Piece::Tag(Tag::Gear(n));
        }
    }
}

/// Numbers the gears where whole numbers open the lines, or alternate with ratios in one.
fn number_lines(lines: &mut [Line]) {
    for line in lines.iter_mut() {
        for at in alternating(line) {
            if let Some(n) = line[at].whole_gear() {
                line[at] = Piece::Tag(Tag::Gear(n));
            }
        }
    }
    let openings: Vec<(usize, u8)> = lines
        .iter()
        .enumerate()
        .filter_map(|(at, line)| Some((at, opening(line)?)))
        .collect();
    let steps = |by: i16| {
        let follow = |pair: &[(usize, u8)]| i16::from(pair[0].1) + by == i16::from(pair[1].1);
        openings.windows(2).all(follow)
    };
    let are_numbered = match &openings[..] {
        [(at, n)] => *n == 1 || follows_a_label(lines, *at, *n),
        _ => steps(1) || steps(-1),
    };
    if are_numbered {
        for (at, _) in openings {
            label_first(&mut lines[at], 1);
        }
    }
}

/// Whether a line near `at` carries the label of a neighbouring gear.
fn follows_a_label(lines: &[Line], at: usize, number: u8) -> bool {
    let around = lines.iter().take(at + 2).skip(at.saturating_sub(1));
    around
        .flatten()
        .any(|piece| matches!(piece, Piece::Tag(Tag::Gear(n)) if n.abs_diff(number) == 1))
}

/// The whole number that opens a line of one or more further numbers and no labels.
fn opening(line: &[Piece]) -> Option<u8> {
    let mut numbers = line.iter().filter(|p| p.is_number() || p.is_label());
    let number = numbers.next()?.whole_gear()?;
    numbers.next().filter(|p| p.is_number()).map(|_| number)
}

/// Where the numbers stand that have no label before them.
fn unlabelled(line: &[Piece]) -> Vec<usize> {
    let mut has_label = false;
    let mut free = Vec::new();
    for (at, piece) in line.iter().enumerate() {
        if piece.is_number() && !has_label {
            free.push(at);
        }
        if piece.is_number() || piece.is_label() {
            has_label = piece.is_label();
        }
    }
    free
}

/// Where the gear numbers stand in a line that runs gear number, ratio, gear number, ratio, apart
/// from values with labels.
fn alternating(line: &[Piece]) -> Vec<usize> {
    let numbers = unlabelled(line);
    let mut before = None;
    let mut gears = Vec::new();
    for pair in numbers.chunks_exact(2) {
        let gear = line[pair[0]].whole_gear();
        let follows = before.is_none_or(|before: u8| gear == Some(before + 1));
        let is_ratio = line[pair[1]].is_broken_number() || !gears.is_empty();
        if gear.is_none() || !follows || !is_ratio {
            break;
        }
        before = gear;
        gears.push(pair[0]);
    }
    let is_whole_line = numbers.len() == 2 * gears.len();
    if gears.len() >= 3 || (gears.len() == 2 && is_whole_line) {
        gears
    } else {
        Vec::new()
    }
}
