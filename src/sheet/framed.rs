//! What stands in a text for readers, whatever marks it is written with: a title, then set by set its name,
//! what is said of it and its grids.

use super::grid::{Compared, Grid, GridCell, Heading, against, has_brackets, head_line, numbered};
use crate::chart::table::BRACKETS_NOTE;
use crate::chart::{FigureCell, FigurePart, FigureTable, Table};

/// A text that is still without marks.
pub(super) struct Framed {
    /// Empty where the project has none.
    pub(super) title: String,
    /// What is said of all sets together; may be empty.
    pub(super) head: String,
    pub(super) sets: Vec<FramedSet>,
    /// Whole sentences at the end.
    pub(super) notes: Vec<String>,
}

/// One set; all of a text have the same parts.
pub(super) struct FramedSet {
    pub(super) heading: String,
    pub(super) facts: String,
    pub(super) parts: Vec<FramedPart>,
}

/// A grid with its title, which a grid that is alone has not.
pub(super) struct FramedPart {
    pub(super) title: Option<&'static str>,
    pub(super) grid: Grid,
}

impl Framed {
    /// The table of ratios, steps and speeds.
    pub(super) fn of_table(title: Option<&str>, table: &Table) -> Self {
        let sets = table.sets.iter().zip(Grid::of_all(table));
        let sets = sets.map(|(set, grid)| FramedSet {
            heading: numbered(set.place + 1, &set.name),
            facts: set.facts_text("; "),
            parts: vec![FramedPart { title: None, grid }],
        });
        let note = has_brackets(table).then(|| BRACKETS_NOTE.to_owned());
        Self {
            title: title.unwrap_or_default().to_owned(),
            head: head_line(table),
            sets: sets.collect(),
            notes: note.into_iter().collect(),
        }
    }

    /// A table of what engine and vehicle make of the sets.
    pub(super) fn of_figures(title: Option<&str>, table: &FigureTable) -> Self {
        let baseline = table.sets.iter().find(|set| set.is_baseline);
        let against = against(baseline.map_or(0, |set| set.place));
        let sets = table.sets.iter().map(|set| FramedSet {
            heading: numbered(set.place + 1, &set.name),
            facts: set.facts_text(),
            parts: Vec::new(),
        });
        let mut sets: Vec<FramedSet> = sets.collect();
        let parts = table.sets.first().map_or(0, |set| set.parts.len());
        for at in 0..parts {
            let of_sets: Vec<&FigurePart> = table.sets.iter().map(|set| &set.parts[at]).collect();
            for (set, framed) in sets.iter_mut().zip(motion_parts(&of_sets, &against)) {
                set.parts.push(framed);
            }
        }
        if parts == 1 {
            for part in sets.iter_mut().flat_map(|set| &mut set.parts) {
                part.title = None;
            }
        }
        let brackets = table
            .has_dim()
            .then(|| BRACKETS_NOTE.to_owned())
            .into_iter();
        Self {
            title: title.unwrap_or_default().to_owned(),
            head: table.head.clone(),
            sets,
            notes: brackets.chain(table.notes.iter().cloned()).collect(),
        }
    }
}

/// The same part of every set.
fn motion_parts(of_sets: &[&FigurePart], against: &str) -> Vec<FramedPart> {
    let Some(first) = of_sets.first() else {
        return Vec::new();
    };
    let heading = |title: &str, unit, is_number| Heading {
        title: title.to_owned(),
        unit,
        is_number,
        is_difference: false,
    };
    let columns = first.columns.iter();
    let columns = columns.map(|column| heading(&column.title, column.unit, true));
    let names = [heading(first.names, "", false)];
    let headings: Vec<Heading> = names.into_iter().chain(columns).collect();
    let cell = |cell: &FigureCell| Compared {
        cell: GridCell {
            text: cell.cell.shown().into_owned(),
            is_bracketed: cell.cell.is_dim,
        },
        difference: cell.cell.difference.clone(),
    };
    let rows = of_sets.iter().map(|part| {
        let rows = part.rows.iter().map(|row| {
            let name = [Compared::alone(row.name().into_owned())];
            name.into_iter().chain(row.cells.iter().map(cell)).collect()
        });
        rows.collect()
    });
    let grids = Grid::compared(&headings, rows.collect(), against);
    let titled = of_sets.iter().zip(grids);
    titled
        .map(|(part, grid)| FramedPart {
            title: Some(part.title),
            grid,
        })
        .collect()
}
