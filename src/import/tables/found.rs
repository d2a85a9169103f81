//! What stands in a table: headings and cells as texts, and the words around them.

use super::headings::{Column, Heading};
use super::phrases::Head;

/// A table as it stands in the text.
#[derive(Debug, Default)]
pub(super) struct Found {
    pub(super) title: Option<String>,
    pub(super) head: Head,
    pub(super) sets: Vec<FoundSet>,
}

/// What stands about one set.
#[derive(Debug, Default)]
pub(super) struct FoundSet {
    /// The number that it is printed with.
    pub(super) number: Option<usize>,
    pub(super) name: Option<String>,
    /// The line that says what it is as a whole.
    pub(super) facts: Option<String>,
    pub(super) headings: Vec<Heading>,
    pub(super) rows: Vec<FoundRow>,
}

/// What stands about one gear.
#[derive(Debug, Default)]
pub(super) struct FoundRow {
    pub(super) label: String,
    /// One for each heading.
    pub(super) cells: Vec<String>,
}

impl FoundSet {
    /// Whether there is a column of that kind.
    pub(super) fn has(&self, column: Column) -> bool {
        self.headings.iter().any(|heading| heading.column == column)
    }

    /// What a row has in the first column of a kind; none where it is empty or left out.
    pub(super) fn cell<'a>(&self, row: &'a FoundRow, column: Column) -> Option<&'a str> {
        let at = self.headings.iter().position(|h| h.column == column)?;
        let cell = row.cells.get(at)?;
        (!cell.is_empty()).then_some(cell.as_str())
    }

    /// Whether none of these columns is there yet.
    pub(super) fn lacks_all(&self, headings: &[Heading]) -> bool {
        let mut counted = headings
            .iter()
            .filter(|heading| heading.column.is_counted());
        counted.all(|heading| !self.headings.contains(heading))
    }
}
