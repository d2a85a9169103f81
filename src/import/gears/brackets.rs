//! What does a pair of brackets add to what stands before it?

use super::amount::Amount;
use super::cross_check::checked;
use super::gear_lists::listed;
use super::pieces::{Line, Piece};
use super::remarks::{LeftOut, Remarks};
use super::tags::Tag;

/// Opens the brackets that a line begins with: `(1) 3.54 (2) 1.91`, where each is a label, and
/// `[3.54, 1.91, 1.31]`, which is the line itself.
pub(super) fn opened(mut line: Line) -> Line {
    number_by_brackets(&mut line);
    let first = line.iter().position(|p| p.is_number() || p.is_label());
    let bracket = line.iter().position(|p| matches!(p, Piece::Bracket(_)));
    if let Some(at) = bracket
        && first.is_none_or(|first| at < first)
        && let Piece::Bracket(inside) = &mut line[at]
        && inside.iter().any(|piece| piece.amount().is_some())
    {
        let inside = std::mem::take(inside);
        let behind = line.split_off(at + 1);
        line.pop();
        line.extend(inside);
        line.push(Piece::Break(';'));
        line.extend(behind);
    }
    line
}

fn number_by_brackets(line: &mut Line) {
    let gear = |piece: &Piece| match piece {
        Piece::Bracket(inside) => match listed(inside)?[..] {
            [gear] => Some(gear),
            _ => None,
        },
        _ => None,
    };
    if line.first().and_then(gear).is_none() {
        return;
    }
    for piece in line {
        if let Some(tag) = gear(piece) {
            *piece = Piece::Tag(tag);
        }
    }
}

/// The line without brackets: what they say is with the amount or label before them.
pub(super) fn resolved(line: Line, remarks: &mut Remarks) -> Line {
    let mut resolved: Line = Vec::with_capacity(line.len());
    let line = with_final_drive(line);
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

/// Opens the bracket behind a list without labels, if it holds a single and clearly larger value:
/// `3.54/1.91/1.31 (4.06)`.
fn with_final_drive(mut line: Line) -> Line {
    let has_labels = line.iter().any(Piece::is_label);
    let amounts = line.iter().filter_map(Piece::amount);
    let last = amounts.clone().next_back().and_then(Amount::value);
    let is_list = !has_labels && amounts.count() >= 3;
    if is_list
        && let Some(Piece::Bracket(inside)) = line.last_mut()
        && let [Piece::Amount(amount)] = &inside[..]
        && amount.gear().is_none()
        && amount.value() > last.map(|last| 1.2 * last)
        && amount.is_plausible(false)
    {
        let inside = std::mem::take(inside);
        line.pop();
        line.push(Piece::Break(';'));
        line.extend(inside);
    }
    line
}

fn attach(line: &mut Line, before: Option<usize>, inside: Line, remarks: &mut Remarks) {
    let amounts = inside.iter().filter_map(Piece::amount).count();
    let before = before.and_then(|at| line.get_mut(at));
    let is_behind_number = before.as_deref().is_some_and(Piece::is_number);
    match before {
        Some(Piece::Amount(amount)) if let Some(gears) = listed(&inside) => {
            amount.gears.extend(gears);
        }
        Some(Piece::Amount(amount)) if let Some(both) = check(amount, &inside, remarks) => {
            *amount = both;
        }
        Some(Piece::Tag(Tag::Final)) if let Some(gears) = listed(&inside) => {
            line.push(Piece::Gears(gears));
        }
        _ if is_behind_number => insert(line, inside, amounts, remarks),
        // Behind a label, or at the start: values in brackets are values.
        _ if amounts > 0 => line.extend(inside),
        _ => {}
    }
}

/// The amount, checked against the first number of the bracket behind it.
fn check(amount: &Amount, inside: &[Piece], remarks: &mut Remarks) -> Option<Amount> {
    inside.iter().find_map(|piece| match piece {
        Piece::Amount(second) => checked(amount, second, remarks),
        _ => None,
    })
}

/// A bracket with a list or labels in it is a clause of the line; other numbers in brackets are
/// left out.
fn insert(line: &mut Line, inside: Line, amounts: usize, remarks: &mut Remarks) {
    let has_label = amounts > 0 && inside.iter().any(Piece::is_label);
    let is_list = amounts >= 3
        && inside.iter().all(|piece| match piece {
            Piece::Amount(amount) => amount.is_plausible(false),
            _ => true,
        });
    if is_list || has_label {
        line.push(Piece::Break(';'));
        line.extend(inside);
        line.push(Piece::Break(';'));
        return;
    }
    for piece in &inside {
        if let Piece::Amount(amount) = piece {
            remarks.left_out(&amount.text, LeftOut::BesideRatio);
        }
    }
}
