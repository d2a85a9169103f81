//! A band of columns that are aligned with blanks: headings on several lines, rows.
//!
//! The first column names the gear and stands to the left, all others to the right: where a word of
//! the lowest line of the headings ends, its column ends.

use super::error::TableError;
use super::found::FoundRow;
use super::headings::{Heading, MOST_COLUMNS, are_known, are_own};
use super::lines::Lines;

/// The heading of the first column, on the lowest line of the headings.
const FIRST: &str = "gear";

/// The most lines that a heading is broken into.
const MOST_HEADING_LINES: usize = 12;

/// The headings of a band, and where its columns stand.
pub(super) struct Band {
    /// Those of all columns, the first of which names the gear.
    pub(super) headings: Vec<Heading>,
    /// How many lines of them stand above the lowest.
    pub(super) lines_above: usize,
    /// Where each column ends, in characters; that of the gears is not known.
    ends: Vec<usize>,
}

/// A piece of a line with where it ends, in characters.
struct Piece {
    text: String,
    end: usize,
}

/// The headings whose lowest line is that, where they could be those of a table of the program: a band
/// may have the ratios alone.
pub(super) fn headings(lines: &Lines<'_>, at: usize) -> Option<Band> {
    if !lines.get(at).strip_prefix(FIRST)?.starts_with("  ") {
        return None;
    }
    let lowest = pieces(lines.get(at));
    let ends: Vec<usize> = lowest.iter().skip(1).map(|piece| piece.end).collect();
    if ends.len() > MOST_COLUMNS {
        return None;
    }
    let blanks = " ".repeat(FIRST.len());
    let is_heading = |line: &str| line.starts_with(&blanks) && !line.trim().is_empty();
    let lines_above = (1..=MOST_HEADING_LINES.min(at))
        .take_while(|above| is_heading(lines.get(at - above)))
        .count();
    let mut words = vec![String::new(); ends.len()];
    for line in at - lines_above..at {
        for piece in pieces(lines.get(line)) {
            let column = ends.iter().position(|end| piece.end <= *end);
            if let Some(words) = column.and_then(|column| words.get_mut(column)) {
                words.push_str(&piece.text);
                words.push(' ');
            }
        }
    }
    let named = words.iter().zip(lowest.iter().skip(1));
    let named = named.map(|(above, lowest)| Heading::in_words(&format!("{above}{}", lowest.text)));
    let headings: Vec<Heading> = std::iter::once(Heading::in_words(FIRST))
        .chain(named)
        .collect();
    (are_own(&headings) || are_known(&headings)).then_some(Band {
        headings,
        lines_above,
        ends,
    })
}

/// The pieces of a line that two or more blanks part.
fn pieces(line: &str) -> Vec<Piece> {
    let mut pieces: Vec<Piece> = Vec::new();
    let mut blanks = 2;
    for (at, c) in line.chars().enumerate() {
        if c == ' ' {
            blanks += 1;
            continue;
        }
        match pieces.last_mut() {
            Some(piece) if blanks < 2 => {
                piece.text.extend((0..blanks).map(|_| ' ').chain([c]));
                piece.end = at + 1;
            }
            _ => pieces.push(Piece {
                text: c.to_string(),
                end: at + 1,
            }),
        }
        blanks = 0;
    }
    pieces
}

impl Band {
    /// The rows beneath the headings whose lowest line is that, and the line behind them.
    ///
    /// In a further band the gears are those of the first; there a row may have nothing but its gear.
    ///
    /// # Errors
    /// When a cell does not end where its column ends, or rows are missing.
    pub(super) fn rows(
        &self,
        lines: &Lines<'_>,
        at: usize,
        gears: Option<&[FoundRow]>,
    ) -> Result<(Vec<FoundRow>, usize), TableError> {
        let mut rows = Vec::new();
        let mut line = at + 1;
        while !lines.is_blank(line) && !is_end(lines.get(line)) {
            let row = match gears {
                None => self.first_row(lines.get(line)),
                Some(gears) => match gears.get(rows.len()) {
                    None => break,
                    Some(gear) => self.further_row(lines.get(line), &gear.label),
                },
            };
            rows.push(row.ok_or_else(|| lines.fault(line))?);
            line += 1;
        }
        let wanted = gears.map_or(1, <[FoundRow]>::len);
        if rows.len() < wanted {
            return Err(TableError::BreaksOff { line });
        }
        Ok((rows, line))
    }

    /// A row that says which gear it is about: what stands left of the first gap before the first cell.
    fn first_row(&self, line: &str) -> Option<FoundRow> {
        let characters: Vec<char> = line.chars().collect();
        let first_end = self.ends.first().copied()?.min(characters.len());
        let opening: String = characters[..first_end].iter().collect();
        // Digits stand under digits: a cell may leave room for a bracket behind it.
        let (label, _) = opening.trim_end().rsplit_once("  ")?;
        let label = label.trim_end();
        self.row(&characters, label)
    }

    fn further_row(&self, line: &str, label: &str) -> Option<FoundRow> {
        let rest = line.strip_prefix(label)?;
        let characters: Vec<char> = line.chars().collect();
        (rest.is_empty() || rest.starts_with("  "))
            .then(|| self.row(&characters, label))
            .flatten()
    }

    /// The row of a gear whose cells stand behind its label.
    fn row(&self, characters: &[char], label: &str) -> Option<FoundRow> {
        let mut begin = label.chars().count();
        let mut cells = Vec::with_capacity(self.ends.len());
        for end in &self.ends {
            let part = characters.get(begin..(*end).min(characters.len()));
            let part: String = part.unwrap_or_default().iter().collect();
            let room = part.chars().rev().take_while(|c| *c == ' ').count();
            let cell = part.trim_matches(' ');
            let is_short = characters.len() + 1 < *end;
            if !cell.is_empty() && (is_short || room > 1) {
                return None;
            }
            cells.push(cell.to_owned());
            begin = begin.max(*end);
        }
        let mut named = self.headings.iter().skip(1).zip(&cells);
        let is_whole =
            named.all(|(heading, cell)| !heading.column.is_always_filled() || !cell.is_empty());
        let is_within = characters.len() <= begin;
        let is_named = !label.is_empty() && !label.starts_with(' ');
        (is_whole && is_within && is_named).then(|| FoundRow {
            label: label.to_owned(),
            cells,
        })
    }
}

/// Whether a block of code ends here.
fn is_end(line: &str) -> bool {
    matches!(line, "[/code]" | "```")
}
