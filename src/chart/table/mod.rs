//! The table of ratios, steps and speeds, as text in cells.

use crate::gearing::{
    EngineLimits, EngineSpeed, GearId, GearResult, GearSet, Ratio, RoadSpeed, SetResults,
};
use crate::project::{Candidate, Project, ProjectResults, SetId};
use crate::units::{
    mm_text, percent_difference_text, percent_text, ratio_text, rpm_difference_text, rpm_text,
    speed_per_1000_rpm_text, speed_text, step_text, typed_rpm_text, typed_speed_text,
};

/// The comparison of all sets.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// What the cells of every row hold, from left to right.
    pub columns: Vec<Column>,
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

/// The heading of one column.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// What it holds: `overall`, `at 2000 rpm`.
    pub title: String,
    /// The unit of its numbers; empty for a pure number or text.
    pub unit: String,
    /// Whether it holds numbers, which stand to the right.
    pub is_number: bool,
}

/// The rows of one set with what is said of it as a whole.
#[derive(Debug, Clone, PartialEq)]
pub struct SetTable {
    /// The set.
    pub set: SetId,
    /// Its place among all sets, counted from 0.
    pub place: usize,
    /// Its name.
    pub name: String,
    /// Whether the others are compared with it.
    pub is_baseline: bool,
    /// Spread, tyre, final drive and reverse: one short phrase each.
    pub facts: Vec<String>,
    /// What is strange about it, one sentence each.
    pub findings: Vec<String>,
    /// Its gears in typed order, then reverse.
    pub rows: Vec<Row>,
}

/// One gear.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The gear; [`GearId::REVERSE`] is reverse.
    pub id: GearId,
    /// The gear's label.
    pub gear: String,
    /// One for each column.
    pub cells: Vec<Cell>,
}

/// One figure.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Cell {
    /// The figure, without its unit; empty where there is none.
    pub text: String,
    /// The difference from the baseline set, with its sign; empty where there is nothing to compare.
    pub difference: String,
    /// Whether it lies outside the useful range, and steps back.
    pub is_dim: bool,
}

impl Cell {
    /// The difference where it is shown: beside a figure outside the useful range it says nothing.
    pub fn shown_difference(&self) -> Option<&str> {
        (!self.is_dim && !self.difference.is_empty()).then_some(&self.difference)
    }

    /// The figure with the difference that is shown beside it.
    pub fn words(&self) -> String {
        match self.shown_difference() {
            Some(difference) => format!("{} {difference}", self.text),
            None => self.text.clone(),
        }
    }

    fn plain(text: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            ..Self::default()
        }
    }

    fn optional(text: Option<String>) -> Self {
        Self::plain(text.unwrap_or_default())
    }
}

impl Table {
    /// The table of a project, at the speeds that it marks.
    pub fn of(project: &Project, results: &ProjectResults) -> Self {
        Self::at(project, results, &MarkedSpeeds::of(project))
    }

    /// The table of a project, at other speeds than it marks.
    pub fn at(project: &Project, results: &ProjectResults, marked: &MarkedSpeeds) -> Self {
        let baseline = &results.sets[project.sets.baseline_place()];
        let sets = project.sets.iter().zip(&results.sets).enumerate();
        Self {
            columns: columns(project, marked),
            sets: sets
                .map(|(place, (candidate, set))| {
                    let is_baseline = place == project.sets.baseline_place();
                    let compared = Some(baseline).filter(|_| !is_baseline);
                    SetTable {
                        set: candidate.id,
                        place,
                        name: candidate.set.name.to_string(),
                        is_baseline,
                        facts: facts(project, candidate, set),
                        findings: set.findings.iter().map(ToString::to_string).collect(),
                        rows: rows(project, marked, &candidate.set, set, compared),
                    }
                })
                .collect(),
        }
    }
}

fn columns(project: &Project, marked: &MarkedSpeeds) -> Vec<Column> {
    let unit = project.units.sign();
    let number = |title: &str, unit: &str| Column {
        title: title.to_owned(),
        unit: unit.to_owned(),
        is_number: true,
    };
    let mut columns = vec![
        Column {
            title: "gear".to_owned(),
            unit: String::new(),
            is_number: false,
        },
        number("ratio", ""),
        number("overall", ""),
        number("step", ""),
        number("shift at", "rpm"),
        number("falls to", "rpm"),
        number("drop", "rpm"),
        number("drop", "%"),
        number("per 1000 rpm", unit),
    ];
    for rpm in &marked.engine_speeds {
        columns.push(number(
            &format!("at {} rpm", typed_rpm_text(rpm.rpm())),
            unit,
        ));
    }
    columns.push(number("at redline", unit));
    for speed in &marked.road_speeds {
        let speed = typed_speed_text(speed.kmh(), project.units);
        columns.push(number(&format!("at {speed} {unit}"), "rpm"));
    }
    columns
}

fn rows(
    project: &Project,
    marked: &MarkedSpeeds,
    set: &GearSet,
    results: &SetResults,
    baseline: Option<&SetResults>,
) -> Vec<Row> {
    let mut rows = Vec::new();
    for (gear, result) in set.gears.iter().zip(&results.gears) {
        let like = baseline.and_then(|b| b.counterpart(results, result));
        rows.push(row(project, marked, &gear.ratio.to_string(), result, like));
    }
    if let (Some(reverse), Some(result)) = (&set.reverse, &results.reverse) {
        let like = baseline.and_then(|b| b.counterpart(results, result));
        rows.push(row(
            project,
            marked,
            &reverse.ratio.to_string(),
            result,
            like,
        ));
    }
    rows
}

fn row(
    project: &Project,
    marked: &MarkedSpeeds,
    typed: &str,
    result: &GearResult,
    baseline: Option<&GearResult>,
) -> Row {
    let unit = project.units;
    let upshift = result.upshift;
    let ratio = ratio_text(result.gear.ratio);
    let mut cells = vec![
        Cell::plain(&result.gear.label),
        // A typed tooth pair stands before its value; a typed number is its value.
        if typed.contains(':') {
            Cell::plain(format!("{typed} = {ratio}"))
        } else {
            Cell::plain(ratio)
        },
        Cell::plain(ratio_text(result.gear.overall_ratio)),
        Cell::optional(result.step.map(step_text)),
        Cell::optional(upshift.map(|up| typed_rpm_text(up.shift_rpm))),
        Cell::optional(upshift.map(|up| rpm_text(up.rpm_after_shift))),
        Cell::optional(upshift.map(|up| rpm_text(up.rpm_drop()))),
        Cell::optional(upshift.map(|up| percent_text(up.drop_share()).replace(" %", ""))),
        Cell::plain(speed_per_1000_rpm_text(result.speed_per_1000_rpm_kmh, unit)),
    ];
    for rpm in &marked.engine_speeds {
        let speed = result.speed_per_1000_rpm_kmh * rpm.rpm() / 1000.0;
        cells.push(Cell {
            text: speed_text(speed, unit),
            is_dim: !project.engine.allow(rpm.rpm()),
            ..Cell::default()
        });
    }
    cells.push(Cell::plain(speed_text(result.redline_speed_kmh, unit)));
    for speed in &marked.road_speeds {
        cells.push(rpm_cell(&project.engine, result, baseline, speed.kmh()));
    }
    Row {
        id: result.gear.id,
        gear: result.gear.label.clone(),
        cells,
    }
}

/// The engine speed of a gear at a road speed, with its difference from its counterpart.
fn rpm_cell(
    engine: &EngineLimits,
    result: &GearResult,
    baseline: Option<&GearResult>,
    speed_kmh: f64,
) -> Cell {
    let rpm_of = |g: &GearResult| speed_kmh / g.speed_per_1000_rpm_kmh * 1000.0;
    let rpm = rpm_of(result);
    let difference = baseline.map(|b| {
        let before = rpm_of(b);
        // Top against a top of another label says so: 6 is compared with 5.
        let other = if b.gear.label == result.gear.label {
            String::new()
        } else {
            format!(" on {}", b.gear.label)
        };
        format!(
            "{} ({}){other}",
            rpm_difference_text(rpm - before),
            percent_difference_text(rpm / before - 1.0)
        )
    });
    Cell {
        text: rpm_text(rpm),
        difference: difference.unwrap_or_default(),
        is_dim: !engine.allow(rpm),
    }
}

fn facts(project: &Project, candidate: &Candidate, results: &SetResults) -> Vec<String> {
    let set = &candidate.set;
    let finals: Vec<String> = set.final_drives.iter().map(Ratio::reading).collect();
    let mut facts = vec![format!("spread {}", step_text(results.spread))];
    facts.push(format!("final drive {}", finals.join(" and ")));
    for stage in &set.stages {
        let position = &stage.positions[stage.present];
        let ratio = ratio_text(position.ratio.value());
        facts.push(format!("{} in {} = {ratio}", stage.name, position.name));
    }
    facts.push(tyre_fact(project, set, results));
    facts
}

fn tyre_fact(project: &Project, set: &GearSet, results: &SetResults) -> String {
    let tyre = set.tyre.as_ref().unwrap_or(&project.tyre);
    let circumference = mm_text(results.drivetrain.rolling_circumference_mm);
    format!("tyre {tyre}, rolls {circumference} mm a turn")
}
