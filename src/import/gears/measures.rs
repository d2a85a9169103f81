//! Which numbers of a line belong to speeds, weights and further stages, as the words before say?

use super::pieces::{Line, Piece};
use super::remarks::{LeftOut, Remarks};
use super::tags::Tag;

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

/// Leaves out those numbers.
pub(super) fn leave_out(line: &mut Line, remarks: &mut Remarks) {
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

/// Whether the line is a measure's name and its values: `Speed | 7.2 | 13.4`.
fn opens_row(line: &[Piece]) -> bool {
    let telling = line.iter().find(|p| !matches!(p, Piece::Break(_)));
    matches!(telling, Some(Piece::Measure | Piece::Speeds))
}
