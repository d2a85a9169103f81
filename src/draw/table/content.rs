//! What stands in a table, whichever table it is?
//!
//! Parts of rows under headings, one beneath the other, each with rows of every set.

use super::words::kept_together;
use crate::chart::table::{BRACKETS_NOTE, Beside};
use crate::chart::{
    Cell, FigureColumn, FigurePart, FigureRow, FigureTable, GearOfSet, Row, SetTable, Table,
    sentences,
};
use crate::project::{Livery, SetId};

/// All that is written of a table.
#[derive(Debug)]
pub struct Content<'t> {
    pub(super) sets: Vec<SetWords<'t>>,
    /// One at least, all with rows of the same sets.
    pub(super) parts: Vec<Part<'t>>,
    /// What holds for all figures; may be empty.
    pub(super) note: String,
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
    /// What tells it from the others of every table; empty for ratios.
    pub(super) key: &'t str,
    /// What its rows are about, where there are several parts.
    pub(super) title: Option<&'t str>,
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
                key: "",
                title: None,
                names: heading(*first),
                headings: figures.iter().map(|at| heading(*at)).collect(),
                rows: rows.collect(),
            }],
            note: String::new(),
        }
    }

    /// A table of what engine and vehicle make of all sets.
    pub fn of_figures(table: &'t FigureTable) -> Self {
        // Once is enough.
        let of_all = table.said_of_all();
        let words = table.sets.iter().map(|set| {
            let baseline = set.is_baseline.then_some("Baseline");
            let own = set.facts.iter().map(String::as_str);
            let own = own.filter(|fact| !of_all.contains(fact));
            let facts: Vec<&str> = baseline.into_iter().chain(own).collect();
            SetWords {
                livery: set.livery,
                name: &set.name,
                facts: sentences(&facts),
                findings: &[],
            }
        });
        let first = table.sets.first().map_or(&[][..], |set| &set.parts);
        let parts = first.iter().enumerate();
        let parts = parts.map(|(at, part)| figure_part(table, at, part));
        let mut parts: Vec<Part<'t>> = parts.collect();
        let has_figures = |part: &Part<'_>| {
            let has_rows = part.rows.iter().any(|rows| !rows.is_empty());
            has_rows && !part.headings.is_empty()
        };
        let mut note = figure_note(table, &of_all);
        if parts.iter().any(has_figures) {
            parts.retain(has_figures);
        } else {
            // Names alone say nothing.
            parts.truncate(1);
            for rows in parts.iter_mut().flat_map(|part| &mut part.rows) {
                rows.clear();
            }
            note.insert_str(0, UNMARKED);
        }
        if parts.len() == 1 {
            for part in &mut parts {
                part.title = None;
            }
        }
        Self {
            sets: words.collect(),
            parts,
            note,
        }
    }
}

/// What is said where there are no figures, with a blank behind.
const UNMARKED: &str = "Figures stand here for every road speed that is marked. ";

/// The same part of every set.
fn figure_part<'t>(table: &'t FigureTable, at: usize, first: &'t FigurePart) -> Part<'t> {
    let heading = |(at, column): (usize, &'t FigureColumn)| Heading {
        at: at + 1,
        title: &column.title,
        unit: column.unit,
    };
    let rows = table.sets.iter().enumerate().map(|(place, set)| {
        let row = |row: &'t FigureRow| ContentRow {
            of: RowOf {
                set: set.set,
                gear: set.gear(row),
            },
            at: place,
            label: &row.label,
            remark: row.remark.as_deref(),
            beside: Beside::called(&row.label),
            cells: row.cells.iter().map(|cell| &cell.cell).collect(),
        };
        let rows = set.parts.get(at).map_or(&[][..], |part| &part.rows);
        // A gear that does none of the speeds has nothing to say.
        let has_any = |row: &&FigureRow| row.cells.iter().any(|cell| !cell.cell.text.is_empty());
        rows.iter().filter(has_any).map(row).collect()
    });
    Part {
        key: first.title,
        title: Some(first.title),
        names: Heading {
            at: 0,
            title: first.names,
            unit: "",
        },
        headings: first.columns.iter().enumerate().map(heading).collect(),
        rows: rows.collect(),
    }
}

/// What the figures are of, and what every reader of them should know.
fn figure_note(table: &FigureTable, of_all: &[&str]) -> String {
    let head = Some(table.head.as_str()).filter(|head| !head.is_empty());
    let said: Vec<&str> = head.into_iter().chain(of_all.iter().copied()).collect();
    let said = sentences(&said);
    let brackets = table.has_dim().then_some(BRACKETS_NOTE);
    let notes = [said.as_str()].into_iter().chain(brackets);
    let notes: Vec<&str> = notes
        .chain(table.notes.iter().map(String::as_str))
        .collect();
    notes.join(" ")
}

/// The facts about a set behind what it is compared with.
fn with_baseline(is_baseline: bool, facts: &str) -> String {
    let baseline = if is_baseline { "baseline, " } else { "" };
    format!("{baseline}{facts}")
}
