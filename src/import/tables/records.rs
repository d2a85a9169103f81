//! CSV after RFC 4180, and what a spreadsheet copies of it: one record for each gear of each set.

use super::error::TableError;
use super::found::{Found, FoundRow, FoundSet};
use super::headings::{Column, Heading, are_own};
use super::lines::Lines;
use crate::formula::as_typed;

/// What may stand between two cells.
const SEPARATORS: [char; 3] = [',', ';', '\t'];

/// The records of a table, from its headings on.
pub(super) struct Records<'a> {
    lines: Lines<'a>,
    headings_at: usize,
    headings: Vec<Heading>,
    separator: char,
}

impl<'a> Records<'a> {
    /// The records of the table of the program that stands in the text.
    pub(super) fn of(text: &'a str) -> Option<Self> {
        let lines = Lines::of(text.trim_start_matches('\u{feff}'));
        (0..lines.count()).find_map(|at| {
            let lines = lines.seen_from(at);
            let found = SEPARATORS.into_iter().find_map(|separator| {
                let headings = headings(lines.get(at), separator)?;
                Some((separator, headings))
            });
            let (separator, headings) = found?;
            Some(Self {
                lines,
                headings_at: at,
                headings,
                separator,
            })
        })
    }

    /// Everything that stands in the records.
    ///
    /// # Errors
    /// When a record has other cells than there are headings.
    pub(super) fn found(&self) -> Result<Found, TableError> {
        let mut found = Found::default();
        for at in self.headings_at + 1..=self.lines.last() {
            if self.lines.is_blank(at) {
                continue;
            }
            let mut cells = cells(self.lines.get(at), self.separator);
            if let Some(cells) = cells.as_mut().filter(|_| self.separator == '\t') {
                // Empty cells at the end of a line look like blanks.
                cells.resize(cells.len().max(self.headings.len()), String::new());
            }
            let cells = cells.filter(|cells| cells.len() == self.headings.len());
            let cells = cells.ok_or_else(|| self.lines.fault(at))?;
            self.add(&mut found, cells);
        }
        if found.sets.is_empty() {
            return Err(TableError::BreaksOff {
                line: self.headings_at + 1,
            });
        }
        Ok(found)
    }

    /// Adds a gear to the set that it belongs to: the last, or one behind it.
    fn add(&self, found: &mut Found, cells: Vec<String>) {
        let cell = |column: Column| {
            let at = self.headings.iter().position(|h| h.column == column);
            at.and_then(|at| cells.get(at)).map(|cell| as_typed(cell))
        };
        let number = cell(Column::SetNumber).and_then(|number| number.trim().parse().ok());
        let name = cell(Column::SetName).filter(|name| !name.trim().is_empty());
        let label = cell(Column::Gear).unwrap_or_default();
        let is_last = |set: &FoundSet| set.number == number && set.name == name;
        if !found.sets.last().is_some_and(is_last) {
            found.sets.push(FoundSet {
                number,
                name,
                facts: None,
                headings: self.headings.clone(),
                rows: Vec::new(),
            });
        }
        if let Some(set) = found.sets.last_mut() {
            set.rows.push(FoundRow { label, cells });
        }
    }
}

/// The headings in a line whose cells that separator parts, where they are those of the program.
fn headings(line: &str, separator: char) -> Option<Vec<Heading>> {
    if !line.contains(separator) {
        return None;
    }
    let cells = cells(line, separator)?;
    let headings: Vec<Heading> = cells.iter().map(|c| Heading::in_brackets(c)).collect();
    are_own(&headings).then_some(headings)
}

/// The cells of a record; none where a quotation mark is not closed.
fn cells(line: &str, separator: char) -> Option<Vec<String>> {
    let mut cells = vec![String::new()];
    let mut is_quoted = false;
    let mut letters = line.chars().peekable();
    while let Some(letter) = letters.next() {
        let cell = cells.last_mut()?;
        if is_quoted {
            match letter {
                '"' if letters.next_if_eq(&'"').is_some() => cell.push('"'),
                '"' => is_quoted = false,
                letter => cell.push(letter),
            }
        } else if letter == separator {
            cells.push(String::new());
        } else if letter == '"' && cell.is_empty() {
            is_quoted = true;
        } else {
            cell.push(letter);
        }
    }
    (!is_quoted).then_some(cells)
}
