//! Columns and lines that hold a gear set each: "stock | close", "old: 3.54/1.91/… new: …".

use super::MOST_SETS;
use super::blocks;
use super::names::{is_name, name_of};
use super::spaced;
use super::tokens::{Kind, Token};

/// How many lines beneath a heading are looked at for its rows.
const MOST_ROWS: usize = 24;

/// A part of a text that holds one gear set.
#[derive(Debug)]
pub(super) struct Part {
    /// What the text calls it.
    pub(super) name: Option<String>,
    pub(super) tokens: Vec<Token>,
}

/// The parts of a text: one for each of two or three sets, or the whole, with its name if it has one.
pub(super) fn parted(tokens: &[Token]) -> Vec<Part> {
    let lines: Vec<&[Token]> = tokens
        .split_inclusive(|t| t.kind == Kind::LineEnd)
        .collect();
    let parts = by_columns(&lines)
        .or_else(|| by_blanks(&lines))
        .or_else(|| by_rows(&lines))
        .or_else(|| by_lists(&lines))
        .or_else(|| blocks::parted(&lines));
    parts.unwrap_or_else(|| {
        vec![Part {
            name: None,
            tokens: tokens.to_vec(),
        }]
    })
}

/// The cells of a line, without the frame of a Markdown table.
pub(super) fn cells(line: &[Token], separator: char) -> Vec<&[Token]> {
    let is_separator = |t: &Token| t.kind == Kind::Sign(separator);
    let line = match line {
        [rest @ .., end] if end.kind == Kind::LineEnd => rest,
        line => line,
    };
    let line = match line {
        [first, rest @ .., last] if is_separator(first) && is_separator(last) => rest,
        line => line,
    };
    let is_blank = |t: &Token| t.kind == Kind::Sign('\t') && separator != '\t';
    line.split(is_separator)
        .map(|cell| {
            let start = cell.iter().take_while(|t| is_blank(t)).count();
            let end = cell.iter().rev().take_while(|t| is_blank(t)).count();
            cell.get(start..cell.len() - end).unwrap_or_default()
        })
        .collect()
}

fn has_value(cell: &[Token]) -> bool {
    cell.iter().any(|t| t.kind == Kind::Number)
}

/// A heading row whose cells name sets, and rows with a value in each of those columns.
fn by_columns(lines: &[&[Token]]) -> Option<Vec<Part>> {
    ['|', '\t', ';', ',']
        .into_iter()
        .find_map(|separator| columns_parted_by(lines, separator))
}

/// The same with a single blank between the columns.
fn by_blanks(lines: &[&[Token]]) -> Option<Vec<Part>> {
    let tabbed = spaced::tabbed(lines)?;
    let lines: Vec<&[Token]> = tabbed.iter().map(Vec::as_slice).collect();
    columns_parted_by(&lines, '\t')
}

fn columns_parted_by(lines: &[&[Token]], separator: char) -> Option<Vec<Part>> {
    let (head, shift, columns) = (0..lines.len()).find_map(|head| {
        let (shift, columns) = set_columns(lines, head, separator)?;
        Some((head, shift, columns))
    })?;
    let names = cells(lines[head], separator);
    let parts = columns.iter().map(|column| {
        let other = |at: usize| at != *column && columns.contains(&at);
        let mut tokens = Vec::new();
        for (at, line) in lines.iter().enumerate() {
            let cells = cells(line, separator);
            if at == head {
                continue;
            }
            let is_body = at > head && cells.len() > *columns.last().unwrap_or(&0);
            if !is_body {
                tokens.extend_from_slice(line);
                continue;
            }
            for (at, cell) in cells.into_iter().enumerate() {
                if !other(at) {
                    tokens.extend_from_slice(cell);
                    tokens.push(sign('\t'));
                }
            }
            tokens.push(line_end());
        }
        let name = names.get(column - shift).and_then(|cell| name_of(cell));
        Part { name, tokens }
    });
    Some(parts.collect())
}

/// The columns of the table beneath a heading that hold sets, and by how many cells the heading is
/// short: where blanks part the columns, an empty first cell is not seen.
fn set_columns(lines: &[&[Token]], head: usize, separator: char) -> Option<(usize, Vec<usize>)> {
    let names = cells(lines[head], separator);
    let named: Vec<usize> = (0..names.len()).filter(|at| is_name(names[*at])).collect();
    if !(2..=MOST_SETS + 1).contains(&named.len()) || names.iter().any(|c| is_gear_cell(c)) {
        return None;
    }
    if (2..=MOST_SETS).contains(&names.len()) && named.len() == names.len() {
        let is_row = |line: &&[Token]| {
            let cells = cells(line, separator);
            cells.len() == names.len() && cells.iter().all(|cell| is_lone_ratio(cell))
        };
        let body = lines[head + 1..].iter().take(MOST_ROWS);
        if body.filter(|line| is_row(line)).count() >= 2 {
            return Some((0, named));
        }
    }
    for shift in [0, 1] {
        let columns: Vec<usize> = named.iter().map(|at| at + shift).collect();
        let columns: Vec<usize> = columns.into_iter().filter(|at| *at > 0).collect();
        let is_row = |line: &&[Token]| {
            let cells = cells(line, separator);
            let has_label = cells.first().is_some_and(|cell| !cell.is_empty());
            cells.len() == names.len() + shift
                && has_label
                && columns
                    .iter()
                    .all(|at| cells.get(*at).is_some_and(|c| has_value(c)))
        };
        let body = lines[head + 1..].iter().take(MOST_ROWS);
        let rows = body.filter(|line| is_row(line)).count();
        if rows >= 2 && (2..=MOST_SETS).contains(&columns.len()) {
            return Some((shift, columns));
        }
    }
    None
}

/// Whether a cell is a ratio without a label.
pub(super) fn is_lone_ratio(cell: &[Token]) -> bool {
    matches!(cell, [only] if only.kind == Kind::Number && !only.is_whole())
}

fn is_gear_cell(cell: &[Token]) -> bool {
    cell.iter().any(|t| matches!(t.kind, Kind::Ordinal(_)))
}

/// A heading row of gears, and two or three rows that each open with a name.
fn by_rows(lines: &[&[Token]]) -> Option<Vec<Part>> {
    ['|', '\t', ';', ','].into_iter().find_map(|separator| {
        let head = (0..lines.len()).find(|at| {
            let labels = cells(lines[*at], separator);
            let is_label = |cell: &&[Token]| !is_name(cell) && !cell.is_empty();
            labels.iter().filter(|c| is_label(c)).count() >= 3
                && !lines[*at]
                    .iter()
                    .any(|t| t.kind == Kind::Number && !t.is_whole())
        })?;
        let rows: Vec<usize> = (head + 1..lines.len())
            .filter(|at| {
                let cells = cells(lines[*at], separator);
                let values = cells.iter().skip(1).filter(|c| has_value(c)).count();
                values >= 3 && cells.first().is_some_and(|cell| is_name(cell))
            })
            .collect();
        (2..=MOST_SETS)
            .contains(&rows.len())
            .then(|| parts_of_rows(lines, &rows, separator))
    })
}

fn parts_of_rows(lines: &[&[Token]], rows: &[usize], separator: char) -> Vec<Part> {
    let part = |row: &usize| {
        let mut tokens = Vec::new();
        for (at, line) in lines.iter().enumerate() {
            if at == *row {
                let name = line.iter().take_while(|t| t.kind != Kind::Sign(separator));
                tokens.extend_from_slice(&line[name.count()..]);
            } else if !rows.contains(&at) {
                tokens.extend_from_slice(line);
            }
        }
        let name = cells(lines[*row], separator)
            .first()
            .and_then(|cell| name_of(cell));
        Part { name, tokens }
    };
    rows.iter().map(part).collect()
}

/// Two or three lines that each open with a name and a colon, and hold a list.
fn by_lists(lines: &[&[Token]]) -> Option<Vec<Part>> {
    let head = |line: &[Token]| {
        let colon = line.iter().position(|t| t.kind == Kind::Sign(':'))?;
        let values = line[colon..].iter().filter(|t| t.kind == Kind::Number);
        (is_name(&line[..colon]) && values.count() >= 3).then_some(colon)
    };
    let rows: Vec<usize> = (0..lines.len())
        .filter(|at| head(lines[*at]).is_some())
        .collect();
    if !(2..=MOST_SETS).contains(&rows.len()) {
        return None;
    }
    let part = |row: &usize| {
        let mut tokens = Vec::new();
        let mut name = None;
        for (at, line) in lines.iter().enumerate() {
            if at == *row {
                let colon = head(line).unwrap_or(0);
                name = name_of(&line[..colon]);
                tokens.extend_from_slice(&line[colon + 1..]);
            } else if !rows.contains(&at) {
                tokens.extend_from_slice(line);
            }
        }
        Part { name, tokens }
    };
    Some(rows.iter().map(part).collect())
}

pub(super) fn sign(sign: char) -> Token {
    Token {
        kind: Kind::Sign(sign),
        text: String::new(),
        is_apart: true,
    }
}

pub(super) fn line_end() -> Token {
    Token {
        kind: Kind::LineEnd,
        text: String::new(),
        is_apart: false,
    }
}
