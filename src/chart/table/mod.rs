//! The table of ratios, steps and speeds, as text in cells.
//!
//! What its columns hold is defined in `columns`, what is said of a set in `facts`; here cells are
//! made of both. A column may also give back what was typed (`typed`).

mod against;
mod aligned;
mod columns;
mod definition;
mod facts;
mod gears;
mod measure;
mod offered;
mod typed;

pub(super) use against::{other_label, spoken};
pub use aligned::{Beside, aligned};
pub use columns::{COLUMNS, TYPED_COLUMNS};
pub use definition::{
    AtTheBench, ColumnDefinition, Figure, ForReaders, Holds, Key, Mark, Need, NumberAtEngineSpeed,
    NumberAtRoadSpeed, NumberOf, SetGear, Value,
};
pub use facts::{FACTS, Fact, FactDefinition, FactFigures, FactPart, ProjectSet, bench_facts};
pub use gears::RowGear;
pub use measure::Measure;
pub use offered::{OfferedColumn, offered_columns};
pub use typed::{Typed, TypedColumn, TypedGear, spelled};

use super::scene::GearOfSet;
use crate::analysis::{ProjectFinding, ProjectResults};
use crate::gearing::{
    EngineLimits, EngineSpeed, GearId, GearRole, OtherPosition, Ratio, RoadSpeed, SetResults,
};
use crate::project::{Livery, Project, SetId};
use std::borrow::Cow;

/// The comparison of all sets.
#[derive(Debug, Clone)]
pub struct Table {
    /// What the cells of every row hold, from left to right.
    pub columns: Vec<Column>,
    /// What a text for readers adds to them, so that its sets can be given back.
    pub typed: Vec<&'static TypedColumn>,
    /// What the engine can.
    pub engine: EngineLimits,
    /// One for each set, in their order.
    pub sets: Vec<SetTable>,
}

/// The speeds that have a column of their own; more than a project can mark, where somebody asks.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MarkedSpeeds {
    /// Engine speeds at which road speeds are wanted.
    pub engine_speeds: Vec<EngineSpeed>,
    /// Road speeds at which engine speeds are wanted.
    pub road_speeds: Vec<RoadSpeed>,
}

impl MarkedSpeeds {
    /// Those that the project marks.
    pub fn of(project: &Project) -> Self {
        Self {
            engine_speeds: project.marked_engine_speeds.as_slice().to_vec(),
            road_speeds: project.marked_road_speeds.as_slice().to_vec(),
        }
    }
}

/// One column of the table.
#[derive(Debug, Clone)]
pub struct Column {
    /// What is said of it, and of all that are like it.
    pub definition: &'static ColumnDefinition,
    /// What it is to readers.
    pub readers: ForReaders,
    /// What stands in it.
    pub figure: Figure,
    /// Its heading: `overall`, `at 2000 rpm`.
    pub title: String,
    /// The unit of its numbers; empty for a pure number or text.
    pub unit: &'static str,
    /// Whether it holds numbers, which stand to the right.
    pub is_number: bool,
}

/// The rows of one set with what is said of it as a whole.
#[derive(Debug, Clone)]
pub struct SetTable {
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
    /// Spread, final drive, stages and tyre: one short phrase each.
    pub facts: Vec<Fact>,
    /// What is strange about it, one sentence each.
    pub findings: Vec<String>,
    /// Its gears in typed order, then reverse; behind them those of every other position that it shows.
    pub rows: Vec<Row>,
}

/// One gear.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The gear; [`GearId::REVERSE`] is reverse.
    pub id: GearId,
    /// The gear's label.
    pub gear: String,
    /// Whether it is a crawler.
    pub is_crawler: bool,
    /// The position in which it is shown, where that is not the present one.
    pub position: Option<RowPosition>,
    /// One for each column.
    pub cells: Vec<Cell>,
    /// One for each of the columns that a text adds.
    pub typed: Vec<String>,
}

/// The position of stages in which a row shows its gear.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RowPosition {
    /// Which of the set's other positions it is, counted from 0.
    pub other: usize,
    /// What it is called: `Low`.
    pub name: String,
}

/// What explains the brackets around figures, where there are any.
pub const BRACKETS_NOTE: &str =
    "In brackets: above the redline, or below the lowest useful engine speed.";

/// One figure.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Cell {
    /// The figure, without its unit; empty where there is none.
    pub text: String,
    /// The difference from the baseline set, with its sign; none where there is nothing to compare,
    /// and beside a figure outside the useful range, of which it would say nothing.
    pub difference: Option<String>,
    /// Whether it lies outside the useful range, and steps back.
    pub is_dim: bool,
    /// Whether its text says why there is no figure: it has no unit, and is nothing for a spreadsheet.
    pub is_remark: bool,
}

impl Cell {
    /// The figure as it is read: in brackets where it lies outside the useful range.
    pub fn shown(&self) -> Cow<'_, str> {
        if self.is_dim {
            Cow::Owned(format!("({})", self.text))
        } else {
            Cow::Borrowed(&self.text)
        }
    }

    /// The figure with the difference that is shown beside it.
    pub fn words(&self) -> String {
        match &self.difference {
            Some(difference) => format!("{} {difference}", self.text),
            None => self.text.clone(),
        }
    }

    pub(super) fn plain(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            ..Self::default()
        }
    }
}

impl Row {
    /// What must be known of the gear besides its label: another position than the present one; that it
    /// is a crawler.
    pub fn remark(&self) -> Option<&str> {
        let position = self.position.as_ref().map(|at| at.name.as_str());
        position.or_else(|| self.is_crawler.then_some("crawler"))
    }

    /// The gear's label with that remark: `C crawler`, `1 Low`.
    pub fn name(&self) -> Cow<'_, str> {
        match self.remark() {
            Some(remark) => Cow::Owned(format!("{} {remark}", self.gear)),
            None => Cow::Borrowed(&self.gear),
        }
    }
}

impl Table {
    /// The table of a project, at the speeds that it marks.
    pub fn of(project: &Project, results: &ProjectResults) -> Self {
        Self::at(project, results, &MarkedSpeeds::of(project))
    }

    /// The table of a project, at other speeds than it marks.
    pub fn at(project: &Project, results: &ProjectResults, marked: &MarkedSpeeds) -> Self {
        Self::with(project, results, marked, COLUMNS)
    }

    /// The table of a project with these columns, the first of which names the gears.
    pub fn with(
        project: &Project,
        results: &ProjectResults,
        marked: &MarkedSpeeds,
        definitions: &[&'static ColumnDefinition],
    ) -> Self {
        let columns = columns(definitions, marked, project);
        let typed = typed_columns(project);
        let baseline_place = project.sets.baseline_place();
        let baseline = Compared {
            set: &results.sets[baseline_place],
            others: results.other_positions(project, baseline_place),
        };
        let mut sets = Vec::with_capacity(results.sets.len());
        for (place, (candidate, set)) in project.sets.iter().zip(&results.sets).enumerate() {
            let is_baseline = place == baseline_place;
            let rows = Rows {
                columns: &columns,
                typed: &typed,
                project,
                baseline: Some(baseline).filter(|_| !is_baseline),
            };
            sets.push(SetTable {
                set: candidate.id,
                place,
                livery: candidate.livery,
                name: candidate.set.name.to_string(),
                is_baseline,
                facts: facts::facts(&ProjectSet {
                    project,
                    set: &candidate.set,
                    results: set,
                }),
                findings: set.findings.iter().map(ToString::to_string).collect(),
                rows: rows.of(&RowGear::all(project, candidate, results, place)),
            });
        }
        Self {
            columns,
            typed,
            engine: project.engine,
            sets,
        }
    }

    /// The same with all that is strange about its sets, be it of the gears or of what an engine makes of
    /// them.
    #[must_use]
    pub fn with_findings(mut self, findings: &[ProjectFinding]) -> Self {
        for set in &mut self.sets {
            let own = findings.iter().filter(|f| f.set == Some(set.place));
            set.findings = own.map(ToString::to_string).collect();
        }
        self
    }
}

impl SetTable {
    /// Which gear a row of it is about.
    pub fn gear(&self, row: &Row) -> GearOfSet {
        GearOfSet {
            set: self.set,
            gear: row.id,
            other: row.position.as_ref().map(|at| at.other),
        }
    }

    /// All that is said of the set, parted by `between`.
    pub fn facts_text(&self, between: &str) -> String {
        let words: Vec<&str> = self.facts.iter().map(|fact| fact.words.as_str()).collect();
        words.join(between)
    }
}

/// The columns that readers see, one for each marked speed where there is one for each.
fn columns(
    definitions: &[&'static ColumnDefinition],
    marked: &MarkedSpeeds,
    project: &Project,
) -> Vec<Column> {
    let units = project.units;
    let mut columns = Vec::new();
    for definition in definitions {
        if !definition.is_known(&project.engine) {
            continue;
        }
        let Some(readers) = definition.readers else {
            continue;
        };
        let figures = definition.figures(marked).into_iter();
        columns.extend(figures.map(|figure| Column {
            definition,
            readers,
            figure,
            title: figure.heading(readers.title, units),
            unit: figure.unit(units),
            is_number: figure.measure().is_some(),
        }));
    }
    columns
}

/// The columns that a text needs for any of the sets.
fn typed_columns(project: &Project) -> Vec<&'static TypedColumn> {
    let is_needed = |column: &&&TypedColumn| {
        let mut sets = project.sets.iter();
        sets.any(|candidate| (column.texts_need_it)(&candidate.set))
    };
    TYPED_COLUMNS.iter().filter(is_needed).copied().collect()
}

/// Everything that the rows of a set have in common.
struct Rows<'a> {
    columns: &'a [Column],
    typed: &'a [&'static TypedColumn],
    project: &'a Project,
    /// The set that this one is compared with, where it is compared.
    baseline: Option<Compared<'a>>,
}

/// What the gears of a set are compared with.
#[derive(Clone, Copy)]
struct Compared<'a> {
    set: &'a SetResults,
    others: &'a [OtherPosition],
}

impl<'a> Compared<'a> {
    /// The gear that one is compared with: in the position that is called the same.
    fn counterpart(&self, gear: &RowGear<'a>) -> Option<SetGear<'a>> {
        let set = match gear.typed.position {
            None => self.set,
            Some(name) => &self.others.iter().find(|other| other.name == name)?.results,
        };
        gear.figures.counterpart_in(set)
    }
}

impl<'a> Rows<'a> {
    fn of(&self, gears: &[RowGear<'a>]) -> Vec<Row> {
        gears.iter().map(|gear| self.row(gear)).collect()
    }

    fn row(&self, row: &RowGear<'a>) -> Row {
        let like = self.baseline.and_then(|set| set.counterpart(row));
        let (gear, typed) = (row.figures, &row.typed);
        let columns = self.columns.iter();
        let mut cells: Vec<Cell> = columns
            .map(|column| self.cell(column, gear, typed.ratio(), like))
            .collect();
        // All of a row are compared with the same gear: it is said once, where the eye comes first.
        let first = cells.iter_mut().find_map(|cell| cell.difference.as_mut());
        if let Some((difference, like)) = first.zip(like) {
            difference.push_str(&other_label(gear, like));
        }
        Row {
            id: gear.gear.gear.id,
            gear: gear.gear.gear.label.clone(),
            is_crawler: gear.gear.gear.role == Some(GearRole::Crawler),
            position: row
                .other
                .zip(typed.position)
                .map(|(other, name)| RowPosition {
                    other,
                    name: name.to_owned(),
                }),
            cells,
            typed: self
                .typed
                .iter()
                .map(|column| (column.cell)(typed).shown())
                .collect(),
        }
    }

    fn cell(
        &self,
        column: &Column,
        gear: SetGear<'_>,
        typed: Option<&Ratio>,
        like: Option<SetGear<'_>>,
    ) -> Cell {
        let figure = &column.figure;
        let number = match figure.value(&gear) {
            Value::Text(text) => return Cell::plain(text),
            Value::Number(None) => return Cell::default(),
            Value::Number(Some(number)) => number,
        };
        let rounded = figure
            .measure()
            .map(|m| m.rounded(number, self.project.units));
        let text = rounded.unwrap_or_default();
        let engine_rpm = figure.engine_rpm(&gear);
        let is_dim = engine_rpm.is_some_and(|rpm| !self.project.engine.allow(rpm));
        let words = column.readers.difference.zip(like);
        let words = words.filter(|_| !is_dim);
        let difference = words.and_then(|(words, like)| match figure.value(&like) {
            Value::Number(Some(before)) => Some(words(number, before)),
            Value::Number(None) | Value::Text(_) => None,
        });
        Cell {
            text: match (figure, typed) {
                // A typed tooth pair stands before its value; a typed number is its value.
                (Figure::TypedRatio, Some(typed)) if typed.has_teeth() => {
                    format!("{typed} = {text}")
                }
                _ => text,
            },
            difference,
            is_dim,
            is_remark: false,
        }
    }
}
