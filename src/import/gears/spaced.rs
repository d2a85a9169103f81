//! Tables whose columns are parted by a single blank, as forums leave them: tabs put in their place.
//!
//! A blank parts words as well, so it counts as the edge of a column only where a heading names as
//! many sets as the rows beneath it have ratios, and the ratios of each row are alike.

use super::names::is_name;
use super::splitting::{cells, is_lone_ratio, line_end, sign};
use super::tokens::{Kind, Token};

/// How far the ratios of one gear lie apart at most, as a quotient: beyond it, the further column
/// holds an overall ratio or a speed.
const FURTHEST_APART: f64 = 2.0;

/// Fewer rows are no table.
const FEWEST_ROWS: usize = 3;

/// The lines with the blanks of one table made tabs; none where there is no such table.
pub(super) fn tabbed(lines: &[&[Token]]) -> Option<Vec<Vec<Token>>> {
    let (head, names) = lines.iter().enumerate().find_map(|(at, line)| {
        let names = names(line)?;
        let beneath = lines[at + 1..].iter();
        let rows = beneath
            .filter_map(|line| row(line))
            .filter(|row| row.ratios.len() == names.len() && row.is_of_one_gear());
        (rows.count() >= FEWEST_ROWS).then_some((at, names))
    })?;
    let count = names.len();
    let tabbed = lines.iter().enumerate().map(|(at, line)| {
        let row = row(line).filter(|row| at > head && row.ratios.len() == count);
        match row {
            _ if at == head => joined(&[], &names),
            Some(row) => joined(row.label, &row.ratios),
            None => line.to_vec(),
        }
    });
    Some(tabbed.collect())
}

/// A label and the ratios behind it.
struct Row<'a> {
    label: &'a [Token],
    ratios: Vec<&'a [Token]>,
}

impl Row<'_> {
    /// Whether the ratios are so much alike that they can be the same gear of several sets.
    fn is_of_one_gear(&self) -> bool {
        let ratios = self.ratios.iter().flat_map(|cell| cell.iter());
        let ratios: Vec<f64> = ratios
            .filter_map(|t| t.text.replace(',', ".").parse().ok())
            .collect();
        let most = ratios.iter().copied().fold(0.0, f64::max);
        let least = ratios.iter().copied().fold(f64::INFINITY, f64::min);
        most <= least * FURTHEST_APART
    }
}

/// What stands between blanks, in order.
fn words(line: &[Token]) -> Vec<&[Token]> {
    let line = match line {
        [rest @ .., end] if end.kind == Kind::LineEnd => rest,
        line => line,
    };
    line.chunk_by(|_, next| !next.is_apart).collect()
}

/// The names in a heading, each of one word unless a sign parts them.
fn names(line: &[Token]) -> Option<Vec<&[Token]>> {
    let is_bar = |t: &Token| t.kind == Kind::Sign('|');
    let words = if line.iter().any(is_bar) {
        cells(line, '|')
    } else {
        words(line)
    };
    let names = match words.as_slice() {
        [first, rest @ ..] if !is_name(first) => rest,
        all => all,
    };
    let are_names = names.len() >= 2 && names.iter().all(|name| is_name(name));
    are_names.then(|| names.to_vec())
}

/// The row that a line is: a label, then two ratios or more with nothing but blanks between.
fn row(line: &[Token]) -> Option<Row<'_>> {
    let words = words(line);
    let is_gap = |word: &&[Token]| matches!(word, [only] if only.kind == Kind::Sign('-'));
    let is_cell = |word: &&&[Token]| is_lone_ratio(word) || is_gap(word);
    let count = words.iter().rev().take_while(is_cell).count();
    let (label, ratios) = words.split_at(words.len() - count);
    let length: usize = label.iter().map(|word| word.len()).sum();
    (length > 0 && count >= 2).then(|| Row {
        label: &line[..length],
        ratios: ratios.to_vec(),
    })
}

fn joined(label: &[Token], cells: &[&[Token]]) -> Vec<Token> {
    let mut line = label.to_vec();
    for cell in cells {
        line.push(sign('\t'));
        line.extend_from_slice(cell);
    }
    line.push(line_end());
    line
}
