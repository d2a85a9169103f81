//! Which cells does a text table have, whatever marks stand between them?
//!
//! A difference from the baseline gets a column of its own, so that figures stand under figures. A
//! figure outside the useful engine speeds stands in brackets and has no difference: it is no gear
//! that one would drive in.

use crate::chart::{Row, SetTable, Table};
use crate::units::typed_rpm_text;

/// The headings and all cells of one set.
pub(super) struct Grid {
    pub(super) headings: Vec<Heading>,
    pub(super) rows: Vec<Vec<GridCell>>,
}

/// What stands above a column.
#[derive(Clone)]
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

/// A cell with the difference that is shown beside it.
pub(super) struct Compared {
    pub(super) cell: GridCell,
    pub(super) difference: Option<String>,
}

impl Compared {
    /// A cell that is compared with nothing.
    pub(super) fn alone(text: String) -> Self {
        Self {
            cell: GridCell {
                text,
                is_bracketed: false,
            },
            difference: None,
        }
    }
}

impl Grid {
    /// One grid for each set of the table, all with the same columns.
    pub(super) fn of_all(table: &Table) -> Vec<Self> {
        let baseline = table.sets.iter().find(|set| set.is_baseline);
        let against = against(baseline.map_or(0, |set| set.place));
        let sets = table.sets.iter().map(|set| rows(table, set));
        Self::compared(&headings(table), sets.collect(), &against)
    }

    /// One grid for each of several lists of rows, all with the same columns; a column in which anything
    /// is compared gets one with the differences behind it.
    pub(super) fn compared(
        headings: &[Heading],
        of_sets: Vec<Vec<Vec<Compared>>>,
        against: &str,
    ) -> Vec<Self> {
        let has_difference: Vec<bool> = (0..headings.len())
            .map(|at| {
                let mut rows = of_sets.iter().flatten();
                rows.any(|row| row[at].difference.is_some())
            })
            .collect();
        let with_differences = || {
            let columns = headings.iter().zip(&has_difference);
            columns.flat_map(|(heading, compared)| {
                let difference = compared.then(|| Heading {
                    title: against.to_owned(),
                    unit: heading.unit,
                    is_number: true,
                    is_difference: true,
                });
                [heading.clone()].into_iter().chain(difference)
            })
        };
        let row = |row: Vec<Compared>| {
            let cells = row.into_iter().zip(&has_difference);
            let cells = cells.flat_map(|(compared, has_difference)| {
                let difference = has_difference.then(|| GridCell {
                    text: compared.difference.unwrap_or_default(),
                    is_bracketed: false,
                });
                [compared.cell].into_iter().chain(difference)
            });
            cells.collect()
        };
        let grids = of_sets.into_iter().map(|rows| Self {
            headings: with_differences().collect(),
            rows: rows.into_iter().map(row).collect(),
        });
        grids.collect()
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

/// What stands above the differences from the set at that place.
pub(super) fn against(baseline_place: usize) -> String {
    format!("against set {}", baseline_place + 1)
}

fn headings(table: &Table) -> Vec<Heading> {
    let columns = table.columns.iter().map(|column| Heading {
        title: column.title.clone(),
        unit: column.unit,
        is_number: column.is_number,
        is_difference: false,
    });
    let typed = table.typed.iter().map(|column| Heading {
        title: column.title.to_owned(),
        unit: column.unit,
        is_number: true,
        is_difference: false,
    });
    columns.chain(typed).collect()
}

fn rows(table: &Table, set: &SetTable) -> Vec<Vec<Compared>> {
    let cells = |row: &Row| {
        let figures = row.cells.iter().zip(&table.columns);
        let figures = figures.map(|(cell, column)| Compared {
            cell: GridCell {
                text: if column.is_number {
                    cell.shown().into_owned()
                } else {
                    label(row)
                },
                is_bracketed: cell.is_dim,
            },
            difference: cell.difference.clone(),
        });
        let typed = row.typed.iter().cloned().map(Compared::alone);
        figures.chain(typed).collect()
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
