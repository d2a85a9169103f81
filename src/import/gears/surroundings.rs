//! What stands around a value and says that it is something else, or more than itself.
//!
//! The head of its column, the words before it in its line, and the brackets behind it.

use super::labels::listed;
use super::pieces::{Amount, Line, Piece, Tag, checked};
use super::remarks::{LeftOut, Remarks};
use crate::gearing::quoted;

/// Leaves out the columns whose head says "speed", "overall" or the like.
pub(super) fn leave_out_columns(lines: &mut [Line], remarks: &mut Remarks) {
    let mut head: Option<Head> = None;
    for line in lines {
        if let Some(found) = Head::of(line) {
            head = Some(found);
        } else if let Some(head) = &head {
            head.apply(line, remarks);
        }
    }
}

/// A head row with a column of something else.
struct Head {
    separator: char,
    /// For each column, whether its values are left out.
    is_measured: Vec<bool>,
}

impl Head {
    fn of(line: &[Piece]) -> Option<Self> {
        let has_numbers = line.iter().any(Piece::is_number);
        let separator = ['|', '\t', ';', ','].into_iter().find(|sign| {
            line.iter()
                .any(|p| matches!(p, Piece::Break(s) if s == sign))
        })?;
        let cells = line.split(|p| matches!(p, Piece::Break(s) if *s == separator));
        let is_measured: Vec<bool> = cells
            .map(|cell| {
                cell.iter()
                    .any(|p| matches!(p, Piece::Measure | Piece::Speeds))
            })
            .collect();
        // A row that opens with the word is a row of speeds, not a head.
        let is_row = is_measured.iter().position(|m| *m) == Some(0);
        let is_head = !has_numbers && !is_row && is_measured.contains(&true);
        is_head.then_some(Self {
            separator,
            is_measured,
        })
    }

    fn apply(&self, line: &mut Line, remarks: &mut Remarks) {
        let is_separator = |p: &Piece| matches!(p, Piece::Break(s) if *s == self.separator);
        let cells = 1 + line.iter().filter(|p| is_separator(p)).count();
        if cells != self.is_measured.len() {
            return;
        }
        let mut column = 0;
        for piece in line {
            if is_separator(piece) {
                column += 1;
            } else if self.is_measured[column]
                && let Piece::Amount(amount) = piece
            {
                remarks.left_out(&amount.text, LeftOut::Measure);
                *piece = Piece::LeftOut;
            }
        }
    }
}

/// What the last telling word of a line was about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum About {
    Ratios,
    /// All numbers of the clause, or of the whole line where the word opens it.
    Measures,
    /// All numbers of the line, with the labels before them: "overall: 1st 14.4, 2nd 7.8".
    LabelledMeasures,
    /// As `Measures`, but only up to the next label.
    Speeds,
    /// The next number, if it stands alone.
    Property,
    /// All numbers up to the next gear, high and low included.
    Stage,
}

/// Leaves out the numbers that belong to speeds, weights and further stages, as the words before
/// them in the line say.
pub(super) fn leave_out_in_line(line: &mut Line, remarks: &mut Remarks) {
    let mut about = About::Ratios;
    // Whether a number followed the telling word already.
    let mut is_answered = false;
    let is_row = opens_row(line);
    for at in 0..line.len() {
        about = after_word(about, &line[at], is_answered, is_row);
        match &line[at] {
            Piece::Measure | Piece::Speeds | Piece::Stage => is_answered = false,
            Piece::Property => {
                is_answered = false;
                leave_out_before(line, at, remarks);
            }
            Piece::Tag(Tag::High | Tag::Low) if about == About::Stage => line[at] = Piece::And,
            Piece::Amount(amount) => {
                is_answered = true;
                if let Some(why) = reason(about, line, at) {
                    remarks.left_out(&amount.text, why);
                    line[at] = Piece::LeftOut;
                }
                if about == About::Property {
                    about = About::Ratios;
                }
            }
            Piece::LeftOut => is_answered = true,
            _ => {}
        }
    }
}

/// Leaves out the number before a property, as in "a 1.8 engine", where none stands behind it.
fn leave_out_before(line: &mut Line, at: usize, remarks: &mut Remarks) {
    let is_answered = line.get(at + 1).is_some_and(Piece::is_number);
    let has_label = at >= 2 && line[at - 2].is_label();
    if let Some(Piece::Amount(amount)) = at.checked_sub(1).and_then(|before| line.get(before))
        && !is_answered
        && !has_label
    {
        remarks.left_out(&amount.text, LeftOut::Implausible);
        line[at - 1] = Piece::LeftOut;
    }
}

/// What the line is about from `piece` on.
fn after_word(about: About, piece: &Piece, is_answered: bool, is_row: bool) -> About {
    let is_label = piece.is_label();
    match (piece, about) {
        (Piece::Measure, _) => About::Measures,
        (Piece::Speeds, _) => About::Speeds,
        (Piece::Property, _) => About::Property,
        (Piece::Stage, _) | (Piece::Tag(Tag::High | Tag::Low), About::Stage) => About::Stage,
        (Piece::Tag(Tag::Final) | Piece::Heading, _) => About::Ratios,
        (_, About::LabelledMeasures) if is_label => about,
        (_, About::Measures) if is_label && !is_answered => About::LabelledMeasures,
        (Piece::Break(sign), About::Measures | About::Speeds)
            if *sign != '/' && is_answered && !is_row =>
        {
            About::Ratios
        }
        _ if is_label => About::Ratios,
        _ => about,
    }
}

/// Why the number at `at` is left out, if it is.
fn reason(about: About, line: &[Piece], at: usize) -> Option<LeftOut> {
    match about {
        About::Ratios => None,
        About::Measures | About::LabelledMeasures | About::Speeds => Some(LeftOut::Measure),
        About::Stage => Some(LeftOut::Stage),
        About::Property => {
            let is_lone = !matches!(line.get(at + 1), Some(Piece::Amount(_) | Piece::Break('/')));
            is_lone.then_some(LeftOut::Implausible)
        }
    }
}

/// Names the final drive that stands behind reverse and a slash: `3,455/1,944 R-3,167/3,938`.
pub(super) fn name_final_behind_reverse(lines: &mut [Line], remarks: &mut Remarks) {
    let is_final = |piece: &Piece| piece.tags().contains(&Tag::Final);
    if lines.iter().flatten().any(is_final) {
        return;
    }
    for line in lines {
        let [
            before @ ..,
            Piece::Amount(_),
            Piece::Break('/'),
            Piece::Amount(last),
        ] = &line[..]
        else {
            continue;
        };
        let Some(Piece::Tag(Tag::Reverse) | Piece::Dash) = before.last() else {
            continue;
        };
        if !before.iter().rev().take(2).any(is_reverse) {
            continue;
        }
        remarks.say(format!(
            "{} was taken as the final drive: it stands behind reverse.",
            quoted(&last.text)
        ));
        line.insert(line.len() - 1, Piece::Tag(Tag::Final));
        return;
    }
}

fn is_reverse(piece: &Piece) -> bool {
    matches!(piece, Piece::Tag(Tag::Reverse))
}

/// Whether the line is a measure's name and its values: `Speed | 7.2 | 13.4`.
fn opens_row(line: &[Piece]) -> bool {
    let telling = line.iter().find(|p| !matches!(p, Piece::Break(_)));
    matches!(telling, Some(Piece::Measure | Piece::Speeds))
}

/// Opens the brackets that a line begins with: `(1) 3.54 (2) 1.91`, where each is a label, and
/// `[3.54, 1.91, 1.31]`, which is the line itself.
pub(super) fn with_brackets_opened(mut line: Line) -> Line {
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
pub(super) fn without_brackets(line: Line, remarks: &mut Remarks) -> Line {
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
