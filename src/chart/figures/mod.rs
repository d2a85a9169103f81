//! The tables of figures that every set has in parts, as text in cells: effort, runs, steady speeds.
//!
//! Each of them is defined in a file of its own; `by_gear.rs` makes rows of figures that every gear has at
//! every road speed that was asked for. Figures keep their full precision beside what a reader sees.

mod asked;
mod by_gear;
mod cruise;
mod effort;
mod engine_words;
mod head;
mod road;
mod road_checks;
mod run;
mod speedometer;

pub use asked::AskedFigures;

use super::scene::GearOfSet;
use super::table::Cell;
use crate::analysis::Motion;
use crate::gearing::GearId;
use crate::project::{Candidate, Livery, Project, SetId};
use std::borrow::Cow;

/// What is said of a set whose torque nobody has measured.
pub const BUILT_CURVE: &str =
    "torque curve is built from the four figures of a brochure, and a guess below and beyond them";

/// One of these tables.
#[derive(Debug, Clone)]
pub struct FigureTable {
    /// The vehicle, what it carries and pulls, and the road.
    pub head: String,
    /// One for each set, in their order.
    pub sets: Vec<FiguresOfSet>,
    /// What holds for all figures, in whole sentences.
    pub notes: Vec<String>,
}

/// What is told of one set; every set of a table has the same parts with the same columns.
#[derive(Debug, Clone)]
pub struct FiguresOfSet {
    /// The set.
    pub set: SetId,
    /// Its place among all sets, counted from 0.
    pub place: usize,
    /// Its colour and dash, where it is drawn.
    pub livery: Livery,
    /// Its name.
    pub name: String,
    /// Whether the others are compared with it.
    pub is_baseline: bool,
    /// What is said of it as a whole: one sentence each, without its full stop.
    pub facts: Vec<String>,
    /// Its figures.
    pub parts: Vec<FigurePart>,
}

/// Rows that have their columns in common.
#[derive(Debug, Clone)]
pub struct FigurePart {
    /// What they are about.
    pub title: &'static str,
    /// Whether the first figure of every row is said in words beneath a diagram.
    pub is_said: bool,
    /// What the names of its rows are: `gear`, `change`.
    pub names: &'static str,
    /// What the cells of every row hold, from left to right.
    pub columns: Vec<FigureColumn>,
    /// The rows.
    pub rows: Vec<FigureRow>,
}

/// One column of figures.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FigureColumn {
    /// Its heading.
    pub title: String,
    /// The unit of its figures.
    pub unit: &'static str,
}

/// A row of figures.
#[derive(Debug, Clone)]
pub struct FigureRow {
    /// The gear that they are about, where they are about one.
    pub gear: Option<GearId>,
    /// What they are of: the label of a gear, `1–2`, `to 100 km/h`; rows of several sets that have it in
    /// common are compared.
    pub label: String,
    /// What each set has of its own there: `in 5th`.
    pub remark: Option<String>,
    /// One for each column.
    pub cells: Vec<FigureCell>,
}

/// A figure.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FigureCell {
    /// The figure in full precision, in the unit of its column; none where there is none, and for a word.
    pub number: Option<f64>,
    /// What a reader sees of it.
    pub cell: Cell,
}

impl FigureCell {
    /// A figure, as `rounded` spells it.
    fn of(number: Option<f64>, rounded: fn(f64) -> String) -> Self {
        let number = number.filter(|number| number.is_finite());
        Self {
            number,
            cell: Cell::plain(number.map(rounded).unwrap_or_default()),
        }
    }

    /// Why there is no figure.
    fn remark(words: &str) -> Self {
        let mut remark = Self::word(words);
        remark.cell.is_remark = true;
        remark
    }

    /// A word in place of a figure.
    fn word(word: impl Into<String>) -> Self {
        Self {
            number: None,
            cell: Cell::plain(word),
        }
    }

    /// The same beside the figure that it is compared with, where there are both.
    fn against(mut self, before: Option<f64>, difference: fn(f64, f64) -> String) -> Self {
        let both = self.number.zip(before.filter(|before| before.is_finite()));
        self.cell.difference = both.map(|(number, before)| difference(number, before));
        self
    }
}

impl FigureRow {
    /// The label with the remark: `at 90 km/h in 5th`.
    pub fn name(&self) -> Cow<'_, str> {
        match &self.remark {
            Some(remark) => Cow::Owned(format!("{} {remark}", self.label)),
            None => Cow::Borrowed(&self.label),
        }
    }
}

impl FiguresOfSet {
    /// Which gear a row of it is about.
    pub fn gear(&self, row: &FigureRow) -> Option<GearOfSet> {
        row.gear.map(|gear| GearOfSet {
            set: self.set,
            gear,
            other: None,
        })
    }

    /// What is said of it as a whole, in sentences.
    pub fn facts_text(&self) -> String {
        sentences(&self.facts)
    }

    /// What is said of it beneath a diagram: its facts, then the figures of the parts that are said.
    pub fn words(&self) -> String {
        let said = self.parts.iter().filter(|part| part.is_said);
        let said = said.filter_map(FigurePart::said);
        let facts: Vec<String> = self.facts.iter().cloned().chain(said).collect();
        sentences(&facts)
    }
}

/// Facts without their full stops in sentences.
pub fn sentences(facts: &[impl AsRef<str>]) -> String {
    let ended = facts.iter().map(|fact| format!("{}.", fact.as_ref()));
    ended.collect::<Vec<String>>().join(" ")
}

impl FigurePart {
    /// `From rest: to 100 km/h 9.71 s, +0.20; to 60 mph 9.24 s`; none where there is no figure.
    fn said(&self) -> Option<String> {
        let unit = self.columns.first()?.unit;
        let said = self.rows.iter().filter_map(|row| {
            let cell = row.cells.first().filter(|cell| cell.number.is_some())?;
            let cell = &cell.cell;
            let difference = cell.difference.as_ref().map(|d| format!(", {d}"));
            let difference = difference.unwrap_or_default();
            Some(format!("{} {} {unit}{difference}", row.name(), cell.text))
        });
        let said: Vec<String> = said.collect();
        (!said.is_empty()).then(|| format!("{}: {}", self.title, said.join("; ")))
    }
}

impl FigureTable {
    /// What is said of each of several sets; nothing of a set that is alone.
    pub fn said_of_all(&self) -> Vec<&str> {
        let [first, others @ ..] = &self.sets[..] else {
            return Vec::new();
        };
        let is_of_all = |fact: &&String| others.iter().all(|set| set.facts.contains(fact));
        let facts = first.facts.iter().filter(|_| !others.is_empty());
        facts.filter(is_of_all).map(String::as_str).collect()
    }

    /// Whether any figure lies outside the useful range.
    pub fn has_dim(&self) -> bool {
        let parts = self.sets.iter().flat_map(|set| &set.parts);
        let mut rows = parts.flat_map(|part| &part.rows);
        rows.any(|row| row.cells.iter().any(|cell| cell.cell.is_dim))
    }

    /// What follows from engine and vehicle: one entry for each set, with what `told` tells of the set at that
    /// place.
    fn of_motion(
        (project, motion): (&Project, &Motion),
        notes: Vec<String>,
        told: impl Fn(usize, &Candidate) -> (Vec<String>, Vec<FigurePart>),
    ) -> Self {
        let head = head::of(project, motion);
        Self::of_sets(project, head, notes, |place, candidate| {
            let (mut facts, parts) = told(place, candidate);
            let engine = project.technical.engine_of(&candidate.technical);
            let own = candidate.technical.engine.as_ref();
            let own = own.and_then(engine_words::of);
            facts.extend(own.map(|engine| format!("With an engine of its own: {engine}")));
            facts.extend(engine.is_built().then(|| format!("Its {BUILT_CURVE}")));
            (facts, parts)
        })
    }

    /// One entry for each set, with what `told` tells of the set at that place: facts and parts.
    fn of_sets(
        project: &Project,
        head: String,
        notes: Vec<String>,
        told: impl Fn(usize, &Candidate) -> (Vec<String>, Vec<FigurePart>),
    ) -> Self {
        let baseline_place = project.sets.baseline_place();
        let sets = project.sets.iter().enumerate();
        let sets = sets.map(|(place, candidate)| {
            let (facts, parts) = told(place, candidate);
            FiguresOfSet {
                set: candidate.id,
                place,
                livery: candidate.livery,
                name: candidate.set.name.to_string(),
                is_baseline: place == baseline_place,
                facts,
                parts,
            }
        });
        Self {
            head,
            sets: sets.collect(),
            notes,
        }
    }
}
