//! Which cells does a text table have, whatever marks stand between them?
//!
//! A difference from the baseline gets a column of its own, so that figures stand under figures. A
//! figure outside the useful engine speeds stands in brackets and has no difference: it is no gear
//! that one would drive in.

use crate::chart::{Row, SetTable, Table};
use crate::units::typed_rpm_text;

/// What explains the brackets, where there are any.
pub(super) const BRACKETS_NOTE: &str =
    "In brackets: above the redline, or below the lowest useful engine speed.";

/// The headings and all cells of one set.
pub(super) struct Grid {
    pub(super) headings: Vec<Heading>,
    pub(super) rows: Vec<Vec<GridCell>>,
}

/// What stands above a column.
pub(super) struct Heading {
    pub(super) title: String,
    /// Empty for a pure number or text.
    pub(super) unit: &'static str,
    /// Whether its cells stand to the right.
    pub(super) is_number: bool,
    /// Whether it says something about the column before it.
    pub(super) is_difference: bool,
}

/// One cell of a grid.
#[derive(Default)]
pub(super) struct GridCell {
    /// The cell as it is read, brackets and all.
    pub(super) text: String,
    /// Whether it stands in brackets.
    pub(super) is_bracketed: bool,
}

impl Grid {
    /// One grid for each set, all with the same columns.
    pub(super) fn of_all(table: &Table) -> Vec<Self> {
        let against = against(table);
        let has_difference: Vec<bool> = (0..table.columns.len())
            .map(|at| table.sets.iter().any(|set| has_difference(set, at)))
            .collect();
        let sets = table.sets.iter();
        sets.map(|set| Self {
            headings: headings(table, &has_difference, &against),
            rows: rows(table, set, &has_difference),
        })
        .collect()
    }

    /// The grid without the columns in which no row has anything.
    pub(super) fn without_empty_columns(self) -> Self {
        let is_used: Vec<bool> = (0..self.headings.len())
            .map(|at| self.rows.iter().any(|row| !row[at].text.is_empty()))
            .collect();
        let rows = self.rows.into_iter().map(|row| kept(row, &is_used));
        Self {
            rows: rows.collect(),
            headings: kept(self.headings, &is_used),
        }
    }
}

/// What stands above all sets: `redline 6500 rpm; idle 800 rpm; baseline set 1 of 2`.
pub(super) fn head_line(table: &Table) -> String {
    let engine = &table.engine;
    let speeds = [
        ("redline", Some(engine.redline)),
        ("lowest useful", engine.lowest_useful),
        ("idle", engine.idle),
    ];
    let said = speeds.iter().filter_map(|(what, speed)| {
        let rpm = typed_rpm_text((*speed)?.rpm());
        Some(format!("{what} {rpm} rpm"))
    });
    // A set that is alone is compared with nothing.
    let count = table.sets.len();
    let baseline = table.sets.iter().find(|set| set.is_baseline);
    let baseline = baseline.filter(|_| count > 1);
    let baseline = baseline.map(|set| format!("baseline set {} of {count}", set.place + 1));
    said.chain(baseline).collect::<Vec<String>>().join("; ")
}

/// What stands above a set.
pub(super) fn set_heading(set: &SetTable) -> String {
    numbered(set.place + 1, &set.name)
}

/// A set with its number, counted from 1: `Set 2: Taller final drive`, or just its name if that says the same.
pub(super) fn numbered(number: usize, name: &str) -> String {
    let number = format!("Set {number}");
    if name == number {
        number
    } else {
        format!("{number}: {name}")
    }
}

/// Whether any cell of any set stands in brackets.
pub(super) fn has_brackets(table: &Table) -> bool {
    let mut cells = table
        .sets
        .iter()
        .flat_map(|set| set.rows.iter().flat_map(|row| &row.cells));
    cells.any(|cell| cell.is_dim)
}

fn against(table: &Table) -> String {
    let baseline = table.sets.iter().find(|set| set.is_baseline);
    let number = baseline.map_or(1, |set| set.place + 1);
    format!("against set {number}")
}

fn has_difference(set: &SetTable, at: usize) -> bool {
    let mut cells = set.rows.iter().filter_map(|row| row.cells.get(at));
    cells.any(|cell| cell.difference.is_some())
}

fn headings(table: &Table, has_difference: &[bool], against: &str) -> Vec<Heading> {
    let mut headings = Vec::new();
    for (column, &has_difference) in table.columns.iter().zip(has_difference) {
        headings.push(Heading {
            title: column.title.clone(),
            unit: column.unit,
            is_number: column.is_number,
            is_difference: false,
        });
        if has_difference {
            headings.push(Heading {
                title: against.to_owned(),
                unit: column.unit,
                is_number: true,
                is_difference: true,
            });
        }
    }
    headings.extend(table.typed.iter().map(|column| Heading {
        title: column.title.to_owned(),
        unit: column.unit,
        is_number: true,
        is_difference: false,
    }));
    headings
}

fn rows(table: &Table, set: &SetTable, has_difference: &[bool]) -> Vec<Vec<GridCell>> {
    let cells = |row: &Row| {
        let mut cells = Vec::new();
        let columns = table.columns.iter().zip(has_difference);
        for (cell, (column, &has_difference)) in row.cells.iter().zip(columns) {
            cells.push(GridCell {
                text: if column.is_number {
                    cell.shown().into_owned()
                } else {
                    label(row)
                },
                is_bracketed: cell.is_dim,
            });
            if has_difference {
                cells.push(GridCell {
                    text: cell.difference.clone().unwrap_or_default(),
                    is_bracketed: false,
                });
            }
        }
        cells.extend(row.typed.iter().map(|text| GridCell {
            text: text.clone(),
            is_bracketed: false,
        }));
        cells
    };
    set.rows.iter().map(cells).collect()
}

/// What a gear is called: with its position, where that is not the present one. That it is a crawler has
/// a column of its own.
fn label(row: &Row) -> String {
    match &row.position {
        Some(position) => format!("{} {}", row.gear, position.name),
        None => row.gear.clone(),
    }
}

fn kept<T>(cells: Vec<T>, is_used: &[bool]) -> Vec<T> {
    let pairs = cells.into_iter().zip(is_used);
    pairs
        .filter_map(|(cell, used)| used.then_some(cell))
        .collect()
}
