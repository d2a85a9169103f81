//! The tables of what engine and vehicle make of every set, as text in cells: effort, runs, steady speeds.
//!
//! Each of them is defined in a file of its own; `by_gear.rs` makes rows of figures that every gear has at
//! every road speed that was asked for. Figures keep their full precision beside what a reader sees.

mod by_gear;
mod cruise;
mod effort;
mod road;
mod run;

use crate::project::{Candidate, Project, SetId};
use std::borrow::Cow;

/// One of these tables.
#[derive(Debug, Clone)]
pub struct MotionTable {
    /// What of load, wind and grade they are for: one short phrase each; none for an empty vehicle on a level
    /// road in still air.
    pub conditions: Vec<String>,
    /// One for each set, in their order.
    pub sets: Vec<MotionOfSet>,
    /// What holds for all figures, in whole sentences.
    pub notes: Vec<String>,
}

/// What is told of one set; every set of a table has the same parts with the same columns.
#[derive(Debug, Clone)]
pub struct MotionOfSet {
    /// The set.
    pub set: SetId,
    /// Its place among all sets, counted from 0.
    pub place: usize,
    /// Its name.
    pub name: String,
    /// Whether the others are compared with it.
    pub is_baseline: bool,
    /// What is said of it as a whole: one short phrase each.
    pub facts: Vec<String>,
    /// Its figures.
    pub parts: Vec<MotionPart>,
}

/// Rows that have their columns in common.
#[derive(Debug, Clone)]
pub struct MotionPart {
    /// What they are about.
    pub title: &'static str,
    /// What the names of its rows are: `gear`, `change`.
    pub names: &'static str,
    /// What the cells of every row hold, from left to right.
    pub columns: Vec<MotionColumn>,
    /// The rows.
    pub rows: Vec<MotionRow>,
}

/// One column of figures.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MotionColumn {
    /// Its heading.
    pub title: String,
    /// The unit of its figures.
    pub unit: &'static str,
}

/// A row of figures.
#[derive(Debug, Clone)]
pub struct MotionRow {
    /// What they are of: the label of a gear, `1–2`, `to 100 km/h`.
    pub name: String,
    /// One for each column.
    pub cells: Vec<MotionCell>,
}

/// A figure.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MotionCell {
    /// The figure in full precision, in the unit of its column; none where there is none, and for a word.
    pub number: Option<f64>,
    /// The figure as a reader sees it, without its unit; empty where there is none.
    pub text: String,
    /// The difference from the baseline set, with its sign; none where there is nothing to compare.
    pub difference: Option<String>,
    /// Whether it lies outside the useful range, and steps back.
    pub is_dim: bool,
}

impl MotionCell {
    /// A figure, as `rounded` spells it.
    fn of(number: Option<f64>, rounded: fn(f64) -> String) -> Self {
        let number = number.filter(|number| number.is_finite());
        Self {
            number,
            text: number.map(rounded).unwrap_or_default(),
            difference: None,
            is_dim: false,
        }
    }

    /// A word in place of a figure.
    fn word(word: impl Into<String>) -> Self {
        Self {
            text: word.into(),
            ..Self::default()
        }
    }

    /// The same beside the figure that it is compared with, where there are both.
    fn against(mut self, before: Option<f64>, difference: fn(f64, f64) -> String) -> Self {
        let both = self.number.zip(before.filter(|before| before.is_finite()));
        self.difference = both.map(|(number, before)| difference(number, before));
        self
    }

    /// The figure as it is read: in brackets where it lies outside the useful range.
    pub fn shown(&self) -> Cow<'_, str> {
        if self.is_dim {
            Cow::Owned(format!("({})", self.text))
        } else {
            Cow::Borrowed(&self.text)
        }
    }
}

impl MotionTable {
    /// Whether any figure lies outside the useful range.
    pub fn has_dim(&self) -> bool {
        let parts = self.sets.iter().flat_map(|set| &set.parts);
        let mut rows = parts.flat_map(|part| &part.rows);
        rows.any(|row| row.cells.iter().any(|cell| cell.is_dim))
    }

    /// One entry for each set, with what `told` tells of the set at that place.
    fn of_sets(
        project: &Project,
        notes: Vec<String>,
        told: impl Fn(usize, &Candidate) -> (Vec<String>, Vec<MotionPart>),
    ) -> Self {
        let baseline_place = project.sets.baseline_place();
        let sets = project.sets.iter().enumerate();
        let sets = sets.map(|(place, candidate)| {
            let (facts, parts) = told(place, candidate);
            MotionOfSet {
                set: candidate.id,
                place,
                name: candidate.set.name.to_string(),
                is_baseline: place == baseline_place,
                facts,
                parts,
            }
        });
        Self {
            conditions: road::conditions(&project.technical.road, project.units),
            sets: sets.collect(),
            notes,
        }
    }
}
