//! What stands in a table, whichever table it is?
//!
//! Parts of rows under headings, one beneath the other, each with rows of every set.

use super::words::kept_together;
use crate::chart::table::Beside;
use crate::chart::{Cell, GearOfSet, Row, SetTable, Table};
use crate::project::{Livery, SetId};

/// All that is written of a table.
#[derive(Debug)]
pub struct Content<'t> {
    pub(super) sets: Vec<SetWords<'t>>,
    /// One at least, all with rows of the same sets.
    pub(super) parts: Vec<Part<'t>>,
}

/// A set, and what is said of it.
#[derive(Debug)]
pub(super) struct SetWords<'t> {
    pub(super) livery: Livery,
    pub(super) name: &'t str,
    /// What is said behind its name.
    pub(super) facts: String,
    /// What is said beneath its rows.
    pub(super) findings: &'t [String],
}

/// Rows that have their headings in common.
#[derive(Debug)]
pub(super) struct Part<'t> {
    /// What they are of.
    pub(super) names: Heading<'t>,
    /// What stands above their figures.
    pub(super) headings: Vec<Heading<'t>>,
    /// The rows of each set.
    pub(super) rows: Vec<Vec<ContentRow<'t>>>,
}

/// What stands above a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Heading<'t> {
    /// Which column of its table it is.
    pub at: usize,
    /// Its words.
    pub title: &'t str,
    /// The unit of its numbers; empty for a pure number or text.
    pub unit: &'static str,
}

/// The figures of one set in one row.
#[derive(Debug)]
pub(super) struct ContentRow<'t> {
    pub(super) of: RowOf,
    /// Which of the sets that is.
    pub(super) at: usize,
    pub(super) label: &'t str,
    /// What must be known besides the label.
    pub(super) remark: Option<&'t str>,
    /// Which rows of other sets stand beside it.
    pub(super) beside: Beside<'t>,
    /// One for each heading of its part.
    pub(super) cells: Vec<&'t Cell>,
}

/// Whose figures a row or a cell has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct RowOf {
    /// The set.
    pub set: SetId,
    /// The gear, where they are about one.
    pub gear: Option<GearOfSet>,
}

impl<'t> Content<'t> {
    /// The table of ratios, steps and speeds: some of its sets and columns, the first of which names the
    /// gears.
    pub fn of_table(table: &'t Table, sets: &[&'t SetTable], columns: &[usize]) -> Self {
        let heading = |at: usize| {
            let column = &table.columns[at];
            Heading {
                at,
                title: &column.title,
                unit: column.unit,
            }
        };
        let (first, figures) = columns.split_first().unwrap_or((&0, &[]));
        let rows = sets.iter().enumerate().map(|(at, set)| {
            let row = |row: &'t Row| ContentRow {
                of: RowOf {
                    set: set.set,
                    gear: Some(set.gear(row)),
                },
                at,
                label: &row.gear,
                remark: row.remark(),
                beside: row.beside(),
                cells: figures.iter().map(|at| &row.cells[*at]).collect(),
            };
            set.rows.iter().map(row).collect()
        });
        let words = sets.iter().map(|set| SetWords {
            livery: set.livery,
            name: &set.name,
            facts: kept_together(&with_baseline(set.is_baseline, &set.facts_text(", "))),
            findings: &set.findings,
        });
        Self {
            sets: words.collect(),
            parts: vec![Part {
                names: heading(*first),
                headings: figures.iter().map(|at| heading(*at)).collect(),
                rows: rows.collect(),
            }],
        }
    }
}

/// The facts about a set behind what it is compared with.
fn with_baseline(is_baseline: bool, facts: &str) -> String {
    let baseline = if is_baseline { "baseline, " } else { "" };
    format!("{baseline}{facts}")
}
