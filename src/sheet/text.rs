//! The table for a terminal or a plain letter: columns aligned with blanks.
//!
//! All sets share their columns and widths, so that they can be compared down the page. Where the
//! columns do not fit a page side by side, they stand in bands, one under another.

use super::framed::Framed;
use super::grid::{Grid, GridCell};
use crate::chart::{FigureTable, Table};

/// Two blanks part columns: one would part the words of a heading as well.
const GAP: &str = "  ";

/// The widest line, in characters, that neither a forum nor most terminals break.
const PAGE: usize = 100;

/// What is left for figures beside gears of the longest names, in characters: else a table of many rows
/// would have a band for each of its columns.
const FIGURES: usize = 60;

/// What the engine can, then the sets one under another, each under its name and what is said of it as a whole.
pub fn table(title: Option<&str>, table: &Table) -> String {
    written(&Framed::of_table(title, table))
}

/// The sets one under another, each under its name and what is said of its motion as a whole.
pub fn figures(title: Option<&str>, table: &FigureTable) -> String {
    written(&Framed::of_figures(title, table))
}

fn written(framed: &Framed) -> String {
    let line = |text: &String| (!text.is_empty()).then(|| format!("{text}\n"));
    let title = line(&framed.title).into_iter().chain(line(&framed.head));
    let sets = framed.sets.iter().zip(aligned(framed));
    let sets = sets.map(|(set, parts)| {
        let gap = if parts.is_empty() { "" } else { "\n" };
        format!("{}\n{}\n{gap}{parts}", set.heading, set.facts)
    });
    let notes = framed.notes.iter().filter_map(line);
    title
        .chain(sets)
        .chain(notes)
        .collect::<Vec<_>>()
        .join("\n")
}

/// The aligned rows of every set with their headings, without names; each part that has rows under its title.
pub(super) fn aligned(framed: &Framed) -> Vec<String> {
    let mut texts = vec![String::new(); framed.sets.len()];
    let parts = framed.sets.iter().map(|set| set.parts.len()).max();
    for at in 0..parts.unwrap_or(0) {
        let of_sets = framed.sets.iter().filter_map(|set| set.parts.get(at));
        let (titles, grids): (Vec<_>, Vec<_>) =
            of_sets.map(|part| (part.title, &part.grid)).unzip();
        let aligned = aligned_grids(&grids);
        let parts = titles.iter().zip(&grids).zip(aligned);
        for (text, ((title, grid), rows)) in texts.iter_mut().zip(parts) {
            if grid.rows.is_empty() {
                continue;
            }
            if !text.is_empty() {
                text.push('\n');
            }
            text.extend(title.map(|title| format!("{title}\n")));
            *text += &rows;
        }
    }
    texts
}

/// The aligned rows of one grid with their headings.
pub(super) fn aligned_grid(grid: &Grid) -> String {
    aligned_grids(&[grid]).concat()
}

/// The aligned rows of grids of the same columns, with their headings.
fn aligned_grids(grids: &[&Grid]) -> Vec<String> {
    let count = grids.first().map_or(0, |grid| grid.headings.len());
    let columns: Vec<AlignedColumn> = (0..count).map(|at| AlignedColumn::of(grids, at)).collect();
    let bands = bands(&columns);
    let set = |grid: &&Grid| {
        let bands: Vec<String> = bands
            .iter()
            .map(|band| band_text(&columns, band, grid))
            .collect();
        bands.join("\n")
    };
    grids.iter().map(set).collect()
}

/// How one column of all sets is laid out.
struct AlignedColumn {
    /// Title and unit, broken into lines.
    heading: Vec<String>,
    /// In characters.
    width: usize,
    is_number: bool,
    is_difference: bool,
    has_brackets: bool,
}

impl AlignedColumn {
    fn of(grids: &[&Grid], at: usize) -> Self {
        let heading = &grids[0].headings[at];
        let cells = || {
            let rows = grids.iter().flat_map(|grid| &grid.rows);
            rows.map(|row| &row[at])
        };
        let mut column = Self {
            heading: Vec::new(),
            width: 0,
            is_number: heading.is_number,
            is_difference: heading.is_difference,
            has_brackets: cells().any(|cell| cell.is_bracketed),
        };
        let cell_width = cells().map(|cell| width(&column.shown(cell))).max();
        column.heading = wrapped(&heading.title, cell_width.unwrap_or(0));
        if !heading.unit.is_empty() {
            column.heading.push(heading.unit.to_owned());
        }
        let heading_width = column.heading.iter().map(|line| width(line)).max();
        column.width = heading_width.max(cell_width).unwrap_or(0);
        column
    }

    /// The cell with room for a closing bracket, so that digits stand under digits.
    fn shown(&self, cell: &GridCell) -> String {
        let room = self.has_brackets && !cell.is_bracketed && !cell.text.is_empty();
        cell.text.clone() + if room { " " } else { "" }
    }

    /// The line of the heading, counted down to the ground line that all headings share.
    fn heading_line(&self, lines_below: usize) -> &str {
        let at = self.heading.len().checked_sub(lines_below + 1);
        at.map_or("", |at| &self.heading[at])
    }

    fn padded(&self, text: &str) -> String {
        let blanks = " ".repeat(self.width.saturating_sub(width(text)));
        if self.is_number {
            blanks + text
        } else {
            text.to_owned() + &blanks
        }
    }
}

/// The columns of each band; every band opens with the first column, which names the gear.
///
/// There are as few bands as fit the page, and these about equally wide.
fn bands(columns: &[AlignedColumn]) -> Vec<Vec<usize>> {
    let names = columns.first().map_or(0, |column| column.width);
    let page = PAGE.max(names + FIGURES);
    let fewest = bands_within(columns, page);
    let narrower = (1..page).map(|most| bands_within(columns, most));
    let mut as_few = narrower.filter(|bands| bands.len() <= fewest.len());
    as_few.next().unwrap_or(fewest)
}

/// Bands filled one after another, each at most as wide as that where its columns allow.
fn bands_within(columns: &[AlignedColumn], most: usize) -> Vec<Vec<usize>> {
    let mut bands: Vec<Vec<usize>> = Vec::new();
    let mut band = vec![0];
    let band_width = |band: &[usize]| -> usize {
        let widths = band.iter().map(|at| columns[*at].width + GAP.len());
        widths.sum::<usize>() - GAP.len()
    };
    let mut at = 1;
    while at < columns.len() {
        let differences = columns[at + 1..].iter().take_while(|c| c.is_difference);
        let end = at + 1 + differences.count();
        let wider: Vec<usize> = band.iter().copied().chain(at..end).collect();
        if band.len() > 1 && band_width(&wider) > most {
            bands.push(band);
            band = std::iter::once(0).chain(at..end).collect();
        } else {
            band = wider;
        }
        at = end;
    }
    bands.push(band);
    bands
}

/// The headings and rows of one set in the columns of a band.
fn band_text(columns: &[AlignedColumn], band: &[usize], grid: &Grid) -> String {
    let heading_lines = band.iter().map(|at| columns[*at].heading.len()).max();
    let headings = (0..heading_lines.unwrap_or(0)).rev().map(|below| {
        let cells = band.iter().map(|at| &columns[*at]);
        joined(cells.map(|column| column.padded(column.heading_line(below))))
    });
    let rows = grid.rows.iter().map(|row| {
        let cells = band.iter().map(|at| (&columns[*at], &row[*at]));
        joined(cells.map(|(column, cell)| column.padded(&column.shown(cell))))
    });
    headings.chain(rows).collect()
}

fn width(text: &str) -> usize {
    text.chars().count()
}

/// The words of a title on as many lines as it takes to keep to a width where they can.
fn wrapped(title: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in title.split(' ') {
        match lines.last_mut() {
            Some(line) if width(line) + 1 + width(word) <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

fn joined(cells: impl Iterator<Item = String>) -> String {
    let line = cells.collect::<Vec<String>>().join(GAP);
    format!("{}\n", line.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn column(width: usize, is_difference: bool) -> AlignedColumn {
        AlignedColumn {
            heading: Vec::new(),
            width,
            is_number: true,
            is_difference,
            has_brackets: false,
        }
    }

    #[test]
    fn a_long_heading_is_broken_at_its_blanks() {
        assert_eq!(wrapped("at 2000 rpm", 4), ["at", "2000", "rpm"]);
        assert_eq!(wrapped("at 2000 rpm", 7), ["at 2000", "rpm"]);
        assert_eq!(wrapped("overall", 3), ["overall"]);
    }

    #[test]
    fn columns_that_fit_the_page_stand_in_one_band() {
        let columns = [column(4, false), column(48, false), column(44, true)];
        assert_eq!(bands(&columns), [vec![0, 1, 2]]);
    }

    #[test]
    fn every_band_names_the_gear_and_keeps_differences_with_their_figures() {
        let mut columns = vec![column(4, false), column(70, false)];
        for _ in 0..2 {
            columns.extend([column(10, false), column(10, true)]);
        }
        assert_eq!(bands(&columns), [vec![0, 1], vec![0, 2, 3, 4, 5]]);
    }

    #[test]
    fn a_column_wider_than_the_page_has_a_band_of_its_own() {
        let columns = [column(4, false), column(200, false), column(200, false)];
        assert_eq!(bands(&columns), [vec![0, 1], vec![0, 2]]);
    }
}
