//! Which columns of a pasted table hold something else than ratios, as their head says?

use super::pieces::{Line, Piece};
use super::remarks::{LeftOut, Remarks};

/// Leaves out what stands below "speed", "overall" and their like.
pub(super) fn leave_out_measured(lines: &mut [Line], remarks: &mut Remarks) {
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
