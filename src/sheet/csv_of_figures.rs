//! What engine and vehicle make of the sets, for a spreadsheet: one row for each row of each set's parts, to
//! fifteen digits.
//!
//! All parts share one header: a cell whose column another part has stays empty. Where there are several, a
//! column says which part a row is of.

use super::csv::{DecimalMark, line, with_unit};
use crate::chart::{FigureCell, FigureColumn, FigurePart, FigureTable};
use crate::formula::harmless;
use crate::units::reckoned_number;

/// The figures of every set, a header with units first; lines end in CR LF.
pub fn figures(table: &FigureTable, mark: DecimalMark) -> String {
    let parts = || table.sets.iter().flat_map(|set| &set.parts);
    let mut columns: Vec<&FigureColumn> = Vec::new();
    for column in parts().flat_map(|part| &part.columns) {
        if !columns.contains(&column) {
            columns.push(column);
        }
    }
    let first = table.sets.first().map_or(&[][..], |set| &set.parts);
    let (names, has_parts) = match first {
        [part] => (part.names, false),
        _ => ("row", true),
    };
    let part_of = |title: &str| has_parts.then(|| title.to_owned());
    let mut titles = vec!["set".to_owned(), "name".to_owned()];
    titles.extend(part_of("part"));
    titles.push(names.to_owned());
    titles.extend(
        columns
            .iter()
            .map(|column| with_unit(&column.title, column.unit)),
    );
    let mut lines = vec![line(&titles, mark)];
    for set in &table.sets {
        for part in &set.parts {
            let places: Vec<Option<usize>> = columns.iter().map(|c| place_in(part, c)).collect();
            for row in &part.rows {
                let mut cells = vec![(set.place + 1).to_string(), harmless(&set.name)];
                cells.extend(part_of(part.title));
                cells.push(harmless(&row.name()));
                let found = places.iter().map(|at| at.and_then(|at| row.cells.get(at)));
                cells.extend(found.map(|cell| cell.map_or_else(String::new, |c| spelled(c, mark))));
                lines.push(line(&cells, mark));
            }
        }
    }
    lines.concat()
}

fn place_in(part: &FigurePart, column: &FigureColumn) -> Option<usize> {
    part.columns.iter().position(|own| own == column)
}

/// The figure in full precision, or the word in its place.
fn spelled(cell: &FigureCell, mark: DecimalMark) -> String {
    match cell.number {
        Some(number) => mark.spelled(&reckoned_number(number)),
        None if cell.cell.is_remark => String::new(),
        None => harmless(&cell.cell.text),
    }
}
