//! The lines of a text, without what whoever quoted or indented it put before each.

use super::error::TableError;
use std::rc::Rc;

/// Lines that share what stands before them.
#[derive(Debug, Clone)]
pub(super) struct Lines<'a> {
    lines: Rc<[&'a str]>,
    /// Quote marks and blanks.
    before: &'a str,
}

/// Whether a character may stand before the lines of a quoted text.
fn is_before(c: char) -> bool {
    matches!(c, ' ' | '\t' | '>')
}

impl<'a> Lines<'a> {
    /// All lines as they stand.
    pub(super) fn of(text: &'a str) -> Self {
        let lines = text.split('\n');
        Self {
            lines: lines.map(|l| l.strip_suffix('\r').unwrap_or(l)).collect(),
            before: "",
        }
    }

    /// The same lines, seen from one that opens with what stands before all of them.
    pub(super) fn seen_from(&self, at: usize) -> Self {
        let line = self.lines.get(at).copied().unwrap_or_default();
        let length = line.find(|c| !is_before(c)).unwrap_or(line.len());
        Self {
            lines: Rc::clone(&self.lines),
            before: &line[..length],
        }
    }

    /// How many there are.
    pub(super) fn count(&self) -> usize {
        self.lines.len()
    }

    /// A line without what stands before it, and without blanks at its end; empty beyond the last.
    pub(super) fn get(&self, at: usize) -> &'a str {
        let line = self.lines.get(at).copied().unwrap_or_default();
        let line = line.trim_end_matches([' ', '\t']);
        let mut rest = line;
        for c in self.before.chars() {
            match rest.strip_prefix(c) {
                Some(shorter) => rest = shorter,
                None => break,
            }
        }
        rest
    }

    /// Whether a line holds nothing.
    pub(super) fn is_blank(&self, at: usize) -> bool {
        self.get(at).is_empty()
    }

    /// The last line that holds something, counted from 0.
    pub(super) fn last(&self) -> usize {
        let filled = (0..self.count()).rev().find(|at| !self.is_blank(*at));
        filled.unwrap_or(0)
    }

    /// What is said of a line in which cells are missing or out of place: at the end it was cut.
    pub(super) fn fault(&self, at: usize) -> TableError {
        let line = at + 1;
        if at >= self.last() {
            TableError::BreaksOff { line }
        } else {
            TableError::OutOfLine { line }
        }
    }
}
