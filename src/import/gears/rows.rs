//! Which values belong to which labels?
//!
//! Labels stand before their value or behind it, on the line above, or all in a row above a row
//! of values. A row here is one or several labels with the values that follow them.

use super::amount::Amount;
use super::cross_check::merged;
use super::pieces::{Line, Piece};
use super::tags::Tag;

/// Labels and the values behind them; without labels, values of a list.
#[derive(Debug, Clone, Default)]
pub(super) struct Row {
    pub(super) tags: Vec<Tag>,
    pub(super) amounts: Vec<Amount>,
}

/// The rows of all lines. Lines hold no brackets any more.
pub(super) fn rows(lines: Vec<Line>) -> Vec<Row> {
    let mut gatherer = Gatherer::default();
    for line in lines {
        gatherer.line(forward(line));
    }
    gatherer.rows
}

#[derive(Default)]
struct Gatherer {
    rows: Vec<Row>,
    /// Labels of lines that hold nothing else, still without values.
    pending: Vec<Tag>,
}

impl Gatherer {
    fn line(&mut self, line: Line) {
        let has_labels = line.iter().any(Piece::is_label);
        let has_numbers = line.iter().any(Piece::is_number);
        if has_labels && !has_numbers {
            self.pending.extend(line.into_iter().flat_map(tags));
            return;
        }
        let mut rows = rows_of(line);
        if has_labels {
            self.pending.clear();
        } else if let [row] = &mut rows[..] {
            self.label_from_above(row);
        }
        self.rows.extend(rows.into_iter().flat_map(promoted));
    }

    /// Gives the values of a line without labels those of the lines above.
    fn label_from_above(&mut self, row: &mut Row) {
        let values = row.amounts.len();
        if values == self.pending.len() || (values < self.pending.len() && values == 1) {
            row.tags = self.pending.drain(..values).collect();
        } else if values > 0 {
            self.pending.clear();
        }
    }
}

fn tags(piece: Piece) -> Vec<Tag> {
    match piece {
        Piece::Tag(tag) => vec![tag],
        Piece::Gears(gears) => gears,
        _ => Vec::new(),
    }
}

/// The rows of one line, in which labels come first.
fn rows_of(line: Line) -> Vec<Row> {
    let mut rows = Vec::new();
    let mut row = Row::default();
    let mut is_answered = false;
    for piece in line {
        if is_answered && matches!(piece, Piece::Heading) {
            rows.push(std::mem::take(&mut row));
            is_answered = false;
        } else if piece.is_label() {
            if is_answered {
                rows.push(std::mem::take(&mut row));
                is_answered = false;
            }
            row.tags.extend(tags(piece));
        } else if piece.is_number() {
            is_answered = true;
            if let Piece::Amount(amount) = piece {
                row.amounts.push(amount);
            }
        }
    }
    rows.push(row);
    for row in &mut rows {
        row.amounts = merged(std::mem::take(&mut row.amounts));
    }
    rows.retain(|row| !row.amounts.is_empty());
    rows
}

/// A row without labels whose values have their gears in brackets becomes labelled rows.
fn promoted(row: Row) -> Vec<Row> {
    let has_gears = row.amounts.iter().any(|a| !a.gears.is_empty());
    if !row.tags.is_empty() || !has_gears {
        return vec![row];
    }
    let labelled = |mut amount: Amount| Row {
        tags: std::mem::take(&mut amount.gears),
        amounts: vec![amount],
    };
    row.amounts.into_iter().map(labelled).collect()
}

/// The line with labels that stand behind their value put before it.
fn forward(line: Line) -> Line {
    let is_break = |p: &Piece| matches!(p, Piece::Break(_));
    let has_both = |clause: &[Piece]| {
        clause.iter().any(Piece::is_label) && clause.iter().any(Piece::is_number)
    };
    if !line.split(is_break).any(has_both) {
        return if is_backward(&line) {
            swapped(line)
        } else {
            line
        };
    }
    let mut forward = Vec::with_capacity(line.len());
    for clause in line.split_inclusive(is_break) {
        let clause = clause.to_vec();
        forward.extend(if is_backward(&clause) {
            swapped(clause)
        } else {
            clause
        });
    }
    forward
}

/// Whether a clause opens with a value and closes with the label of one.
fn is_backward(clause: &[Piece]) -> bool {
    let mut telling = clause.iter().filter(|p| p.is_number() || p.is_label());
    let opens = telling.next().is_some_and(Piece::is_number);
    opens && telling.next_back().is_some_and(Piece::is_label)
}

/// Every label that stands behind a value changes places with it.
fn swapped(clause: Line) -> Line {
    let mut swapped: Line = Vec::with_capacity(clause.len());
    let mut free = None;
    for piece in clause {
        match free {
            Some(at) if piece.is_label() => {
                swapped.insert(at, piece);
                free = None;
            }
            _ => {
                if piece.is_number() {
                    free = Some(swapped.len());
                }
                swapped.push(piece);
            }
        }
    }
    swapped
}
