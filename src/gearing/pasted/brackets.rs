//! What does a pair of brackets add to what stands before it?

use super::amount::Amount;
use super::cross_check::checked;
use super::gear_lists::listed;
use super::pieces::{Line, Piece};
use super::remarks::{LeftOut, Remarks};
use super::tags::Tag;

/// The line without brackets: what they say is with the amount or label before them.
pub(super) fn resolved(line: Line, remarks: &mut Remarks) -> Line {
    let mut resolved: Line = Vec::with_capacity(line.len());
    for piece in line {
        match piece {
            Piece::Bracket(inside) => {
                let before = resolved.iter().rposition(|p| p.is_number() || p.is_label());
                attach(&mut resolved, before, inside, remarks);
            }
            piece => resolved.push(piece),
        }
    }
    resolved
}

fn attach(line: &mut Line, before: Option<usize>, inside: Line, remarks: &mut Remarks) {
    let amounts = inside
        .iter()
        .filter(|p| matches!(p, Piece::Amount(_)))
        .count();
    match before.and_then(|at| line.get_mut(at)) {
        Some(Piece::Amount(amount)) => {
            if !annotate(amount, &inside, remarks) {
                insert(line, inside, amounts, remarks);
            }
        }
        Some(Piece::Tag(Tag::Final)) if let Some(gears) = listed(&inside) => {
            line.push(Piece::Gears(gears));
        }
        Some(Piece::LeftOut) => insert(line, inside, amounts, remarks),
        // Behind a label, or at the start: values in brackets are values.
        _ if amounts > 0 => line.extend(inside),
        _ => {}
    }
}

/// Adds to `amount` what the bracket behind it says, if it is about that amount.
fn annotate(amount: &mut Amount, inside: &[Piece], remarks: &mut Remarks) -> bool {
    if let Some(gears) = listed(inside) {
        amount.gears.extend(gears);
        return true;
    }
    let check = inside.iter().find_map(|piece| match piece {
        Piece::Amount(second) => checked(amount, second, remarks),
        _ => None,
    });
    match check {
        Some(both) => {
            *amount = both;
            true
        }
        None => false,
    }
}

/// A bracket with a list in it is part of the line; other numbers in brackets are left out.
fn insert(line: &mut Line, inside: Line, amounts: usize, remarks: &mut Remarks) {
    if amounts >= 3 {
        line.push(Piece::Break(';'));
        line.extend(inside);
        return;
    }
    for piece in &inside {
        if let Piece::Amount(amount) = piece {
            remarks.left_out(&amount.text, LeftOut::BesideRatio);
        }
    }
}
