//! Effort and steady speeds as text tables: one row for each gear, figures side by side for each speed
//! that was asked for.
//!
//! What is rounded for a reader stands to fifteen digits in CSV, as in the table of speeds.

use super::csv::{DecimalMark, line, with_unit};
use super::grid::{Grid, GridCell, Heading, numbered};
use super::{bbcode, markdown, text};
use crate::analysis::{Motion, SetMotion};
use crate::formula::harmless;
use crate::gearing::{Name, RoadSpeed};
use crate::motion::{PoweredGear, TopSpeedLimit};
use crate::project::Project;
use crate::units::{
    KMH_PER_M_S, SpeedUnit, mark_text, percent_text, plain_number, reckoned_number, rpm_text,
    speed_text, step_text, two_figures_text, typed_rpm_text,
};

/// A table of what engine and vehicle make of every set.
#[derive(Debug)]
pub struct MotionTable {
    title: Option<String>,
    columns: Vec<MotionColumn>,
    sets: Vec<MotionOfSet>,
}

#[derive(Debug)]
struct MotionColumn {
    title: String,
    unit: &'static str,
    rounded: fn(f64) -> String,
}

#[derive(Debug)]
struct MotionOfSet {
    name: String,
    facts: String,
    /// The label of each gear with its figures.
    gears: Vec<(String, Vec<Option<f64>>)>,
}

/// A figure of a gear at a road speed in m/s: what it is called, its unit, how it is rounded, and itself.
type FigureAt = (
    &'static str,
    &'static str,
    fn(f64) -> String,
    fn(&SetMotion, &PoweredGear, f64) -> Option<f64>,
);

/// What is told of effort at each speed.
const EFFORT: [FigureAt; 4] = [
    ("effort", "N", typed_rpm_text, |_, gear, at| {
        gear.effort_n(at)
    }),
    ("load", "N", typed_rpm_text, |set, gear, at| {
        gear.covered_m_s(at).map(|at| set.on_road.road_load_n(at))
    }),
    ("acceleration", "m/s²", step_text, |set, gear, at| {
        gear.acceleration_m_s2(&set.on_road, at)
    }),
    ("gradient", "%", tenths_text, |set, gear, at| {
        gear.gradient_percent(&set.on_road, at)
    }),
];

/// What is told of each steady speed.
const CRUISE: [FigureAt; 4] = [
    ("engine speed", "rpm", rpm_text, |_, gear, at| {
        Some(gear.engine_rpm(at))
    }),
    ("load", "%", tenths_text, |set, gear, at| {
        let held = set.powertrain.cruise(gear, &set.on_road, at).held;
        held.map(|held| 100.0 * held.load_share())
    }),
    ("power", "kW", tenths_text, |set, gear, at| {
        let held = set.powertrain.cruise(gear, &set.on_road, at).held;
        held.map(|held| held.power_w / 1000.0)
    }),
    ("fuel", "L/100 km", two_figures_text, |set, gear, at| {
        let cruise = set.powertrain.cruise(gear, &set.on_road, at);
        cruise.l_per_100km(&set.fuel?)
    }),
];

fn tenths_text(number: f64) -> String {
    percent_text(number / 100.0)
}

impl MotionTable {
    /// The tractive effort of every gear at the wanted speeds, with the top speed of each set.
    pub fn effort(project: &Project, motion: &Motion, speeds: &[RoadSpeed]) -> Self {
        let facts = |set: &SetMotion| {
            let Some((gear, top)) = set.powertrain.top_speed(&set.vehicle, &motion.load) else {
                return "holds no speed on the level".to_owned();
            };
            let speed = speed_text(top.speed_m_s * KMH_PER_M_S, project.units);
            let (unit, label) = (project.units.sign(), &gear.gear.label);
            let limit = match top.limit {
                TopSpeedLimit::Power => "power",
                TopSpeedLimit::Redline => "engine speed",
            };
            let gearing = set.powertrain.top_gearing(&set.vehicle, &motion.load);
            let gearing = gearing.map_or_else(String::new, |gearing| format!(". {gearing}"));
            format!("top speed {speed} {unit} in {label}, limited by {limit}{gearing}")
        };
        Self::of(project, motion, speeds, &EFFORT, facts)
    }

    /// What each gear asks of the engine at the wanted speeds.
    pub fn cruise(project: &Project, motion: &Motion, speeds: &[RoadSpeed]) -> Self {
        let facts = |set: &SetMotion| match set.fuel {
            Some(fuel) => {
                let share = plain_number((100.0 * fuel.uncertainty_share()).round());
                format!("fuel is an estimate, {share} % either way")
            }
            None => "without a displacement there is no estimate of fuel".to_owned(),
        };
        Self::of(project, motion, speeds, &CRUISE, facts)
    }

    fn of(
        project: &Project,
        motion: &Motion,
        speeds: &[RoadSpeed],
        figures: &[FigureAt],
        facts: impl Fn(&SetMotion) -> String,
    ) -> Self {
        let at_each = || {
            speeds
                .iter()
                .flat_map(|at| figures.iter().map(move |f| (at, f)))
        };
        let columns = at_each().map(|(at, (what, unit, rounded, _))| MotionColumn {
            title: format!("{what} {}", at_speed(*at, project.units)),
            unit,
            rounded: *rounded,
        });
        let candidates = project.sets.iter().zip(&motion.sets);
        let sets = candidates.map(|(candidate, set)| {
            let gears = set.powertrain.gears.iter().map(|gear| {
                let cells = at_each().map(|(at, (.., figure))| {
                    let found = figure(set, gear, at.kmh() / KMH_PER_M_S);
                    found.filter(|number| number.is_finite())
                });
                (gear.gear.label.clone(), cells.collect())
            });
            MotionOfSet {
                name: candidate.set.name.to_string(),
                facts: facts(set),
                gears: gears.collect(),
            }
        });
        Self {
            title: project.title.as_ref().map(Name::to_string),
            columns: columns.collect(),
            sets: sets.collect(),
        }
    }

    /// For a terminal: columns aligned with blanks.
    pub fn text(&self) -> String {
        let title = self.title.iter().map(|title| format!("{title}\n"));
        let grids = self.grids();
        let sets = self.headed().zip(text::aligned_grids(&grids));
        let sets = sets.map(|((heading, facts), rows)| format!("{heading}\n{facts}\n\n{rows}"));
        title.chain(sets).collect::<Vec<_>>().join("\n")
    }

    /// A pipe table for each set.
    pub fn markdown(&self) -> String {
        let escaped = markdown::escaped;
        let title = self.title.iter();
        let title = title.map(|title| format!("## {}\n", escaped(title)));
        let sets = self
            .headed()
            .zip(self.grids())
            .map(|((heading, facts), grid)| {
                let rows = markdown::pipe_table(&grid);
                format!("### {}\n\n{}\n\n{rows}", escaped(&heading), escaped(facts))
            });
        title.chain(sets).collect::<Vec<_>>().join("\n")
    }

    /// A code block for each set.
    pub fn bbcode(&self) -> String {
        let round = bbcode::round;
        let bold = |text: &str| format!("[b]{}[/b]\n", round(text));
        let title = self.title.iter().map(|title| bold(title));
        let grids = self.grids();
        let sets = self.headed().zip(text::aligned_grids(&grids));
        let sets = sets.map(|((heading, facts), rows)| {
            let rows = round(&rows);
            format!(
                "{}{}\n[code]\n{rows}[/code]\n",
                bold(&heading),
                round(facts)
            )
        });
        title.chain(sets).collect::<Vec<_>>().join("\n")
    }

    /// For a spreadsheet: one row for each gear of each set.
    pub fn csv(&self, mark: DecimalMark) -> String {
        let mut titles = ["set", "name", "gear"].map(str::to_owned).to_vec();
        titles.extend(self.columns.iter().map(|c| with_unit(&c.title, c.unit)));
        let mut lines = vec![line(&titles, mark)];
        for (number, set) in (1..).zip(&self.sets) {
            for (label, figures) in &set.gears {
                let mut cells = vec![format!("{number}"), harmless(&set.name), harmless(label)];
                let spelled = |figure: &Option<f64>| {
                    figure.map_or_else(String::new, |n| mark.spelled(&reckoned_number(n)))
                };
                cells.extend(figures.iter().map(spelled));
                lines.push(line(&cells, mark));
            }
        }
        lines.concat()
    }

    /// Heading and facts of each set.
    fn headed(&self) -> impl Iterator<Item = (String, &str)> {
        let sets = (1..).zip(&self.sets);
        sets.map(|(number, set)| (numbered(number, &set.name), set.facts.as_str()))
    }

    fn grids(&self) -> Vec<Grid> {
        let heading = |title: &str, unit, is_number| Heading {
            title: title.to_owned(),
            unit,
            is_number,
            is_difference: false,
        };
        let cell = |text: String| GridCell {
            text,
            is_bracketed: false,
        };
        let grid = |set: &MotionOfSet| {
            let columns = self.columns.iter();
            let headings = columns.map(|c| heading(&c.title, c.unit, true));
            let rows = set.gears.iter().map(|(label, figures)| {
                let figures = figures.iter().zip(&self.columns);
                let figures = figures.map(|(figure, column)| figure.map(column.rounded));
                let cells = figures.map(|text| cell(text.unwrap_or_default()));
                [cell(label.clone())].into_iter().chain(cells).collect()
            });
            Grid {
                headings: [heading("gear", "", false)]
                    .into_iter()
                    .chain(headings)
                    .collect(),
                rows: rows.collect(),
            }
        };
        self.sets.iter().map(grid).collect()
    }
}

/// `at 90 km/h`.
fn at_speed(speed: RoadSpeed, units: SpeedUnit) -> String {
    format!("at {} {}", mark_text(speed.kmh(), units), units.sign())
}
