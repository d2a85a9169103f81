//! Which numbers of a line belong to speeds, weights and further stages, as the words before say?

use super::pieces::{Line, Piece};
use super::remarks::{LeftOut, Remarks};
use super::tags::Tag;

/// What the last telling word of a line was about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum About {
    Ratios,
    /// All numbers up to the next label.
    Measures,
    /// The next number, if it stands alone.
    Property,
    /// All numbers up to the next gear, its high and low included.
    Stage,
}

/// The line with those numbers left out.
pub(super) fn left_out(line: &mut Line, remarks: &mut Remarks) {
    let mut about = About::Ratios;
    let mut has_number = false;
    for at in 0..line.len() {
        let is_lone = !matches!(next_telling(line, at), Some(Piece::Amount(_)));
        match &line[at] {
            Piece::Measure => (about, has_number) = (About::Measures, false),
            Piece::Property => about = About::Property,
            Piece::Stage => about = About::Stage,
            Piece::Tag(Tag::High | Tag::Low) if about == About::Stage => line[at] = Piece::And,
            Piece::Tag(_) | Piece::Gears(_) => about = About::Ratios,
            // A word with its values ends where the next cell or clause begins.
            Piece::Break(';' | ',' | '|' | '\t') if has_number && about == About::Measures => {
                let is_row = opens_row(&line[..at]);
                about = if is_row { about } else { About::Ratios };
            }
            Piece::Amount(amount) => {
                has_number = true;
                let why = match about {
                    About::Ratios => None,
                    About::Property => is_lone.then_some(LeftOut::Implausible),
                    About::Measures => Some(LeftOut::Measure),
                    About::Stage => Some(LeftOut::Stage),
                };
                if about == About::Property {
                    about = About::Ratios;
                }
                if let Some(why) = why {
                    remarks.left_out(&amount.text, why);
                    line[at] = Piece::LeftOut;
                }
            }
            _ => {}
        }
    }
}

/// Whether the line so far is a measure's name and its values: `Speed | 7.2 |`.
fn opens_row(line: &[Piece]) -> bool {
    let telling = line
        .iter()
        .find(|p| !matches!(p, Piece::Break(_) | Piece::Bracket(_)));
    matches!(telling, Some(Piece::Measure))
}

fn next_telling(line: &[Piece], at: usize) -> Option<&Piece> {
    let slash = |p: &&Piece| !matches!(p, Piece::Break('/' | ',') | Piece::Bracket(_));
    line[at + 1..].iter().find(slash)
}
