//! A pipe table of Markdown: headings, a rule, rows.

use super::error::TableError;
use super::found::FoundRow;
use super::headings::{Column, Heading, are_own};
use super::lines::Lines;

/// The headings in a line, where they are those of a table of the program.
pub(super) fn headings(lines: &Lines<'_>, at: usize) -> Option<Vec<Heading>> {
    let line = lines.get(at);
    let headings: Vec<Heading> = cells(line)?
        .cells
        .iter()
        .map(|cell| Heading::in_brackets(cell))
        .collect();
    (are_own(&headings) && headings[0].column == Column::Gear).then_some(headings)
}

/// The rows beneath the headings in a line, and the line behind them.
///
/// # Errors
/// When a row has other cells than there are headings.
pub(super) fn rows(
    lines: &Lines<'_>,
    headings_at: usize,
    count: usize,
) -> Result<(Vec<FoundRow>, usize), TableError> {
    let mut rows = Vec::new();
    let mut at = headings_at + 1;
    while let Some(row) = cells(lines.get(at)) {
        if row.cells.len() != count || !row.is_closed {
            return Err(lines.fault(at));
        }
        let mut cells = row.cells.into_iter();
        if !cells.as_slice().iter().all(|cell| is_rule(cell)) {
            rows.push(FoundRow {
                label: cells.next().unwrap_or_default(),
                cells: cells.collect(),
            });
        }
        at += 1;
    }
    if rows.is_empty() {
        return Err(TableError::BreaksOff { line: at });
    }
    Ok((rows, at))
}

fn is_rule(cell: &str) -> bool {
    cell.contains("--") && cell.chars().all(|c| matches!(c, '-' | ':'))
}

/// A line of a pipe table.
struct PipeRow {
    cells: Vec<String>,
    /// Whether a pipe closes it.
    is_closed: bool,
}

/// The cells of a line that opens with a pipe.
fn cells(line: &str) -> Option<PipeRow> {
    let mut rest = line.strip_prefix('|')?;
    let mut cells = Vec::new();
    while let Some(end) = next_pipe(rest) {
        cells.push(unescaped(rest[..end].trim()));
        rest = &rest[end + 1..];
    }
    let is_closed = rest.trim().is_empty();
    if !is_closed {
        cells.push(unescaped(rest.trim()));
    }
    (!cells.is_empty()).then_some(PipeRow { cells, is_closed })
}

/// Where the next pipe is that no backslash stands before.
fn next_pipe(text: &str) -> Option<usize> {
    let mut is_escaped = false;
    for (at, c) in text.char_indices() {
        match c {
            '|' if !is_escaped => return Some(at),
            '\\' => is_escaped = !is_escaped,
            _ => is_escaped = false,
        }
    }
    None
}

/// The text without the backslashes that keep Markdown from taking a sign for markup.
pub(super) fn unescaped(text: &str) -> String {
    let mut unescaped = String::with_capacity(text.len());
    let mut rest = text.chars().peekable();
    while let Some(c) = rest.next() {
        match rest.peek() {
            Some(next) if c == '\\' && next.is_ascii_punctuation() => {
                unescaped.extend(rest.next());
            }
            _ => unescaped.push(c),
        }
    }
    unescaped
}
