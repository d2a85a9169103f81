//! Engine speed against road speed for every gear of every set, as data.

use super::axis::Range;
use crate::gearing::{EngineSpeed, GearId, GearResult, GearRole, SetResults};
use crate::project::{Candidate, Project, ProjectResults, SetId};
use crate::units::{SpeedUnit, round_to, typed_rpm_text};

/// The speed diagram: x is road speed in `unit`, y is engine speed in rev/min.
#[derive(Debug, Clone, PartialEq)]
pub struct SpeedDiagram {
    /// The unit of every road speed in here.
    pub unit: SpeedUnit,
    /// The range that holds everything.
    pub whole: Range,
    /// Highest permitted engine speed, in rev/min.
    pub redline_rpm: f64,
    /// The lowest useful engine speed, else idle, in rev/min; 0 where neither is known.
    pub floor_rpm: f64,
    /// Marked road speeds.
    pub marked_speeds: Vec<f64>,
    /// Marked engine speeds, in rev/min.
    pub marked_rpm: Vec<f64>,
    /// One for each visible set, in their order.
    pub traces: Vec<SetTrace>,
}

/// The lines of one set.
#[derive(Debug, Clone, PartialEq)]
pub struct SetTrace {
    /// The set.
    pub set: SetId,
    /// Its place among all sets, counted from 0: it decides colour and dash.
    pub place: usize,
    /// Its name.
    pub name: String,
    /// Forward gears in typed order.
    pub gears: Vec<GearTrace>,
    /// The upshifts of the chain, lowest first.
    pub shifts: Vec<ShiftTrace>,
}

/// The line of one gear: from standstill straight to its speed at the redline.
#[derive(Debug, Clone, PartialEq)]
pub struct GearTrace {
    /// The gear.
    pub gear: GearId,
    /// What it is called.
    pub label: String,
    /// Road speed per 1 rev/min.
    pub speed_per_rpm: f64,
    /// The engine speeds between which the gear is really driven, in rev/min: from the last
    /// upshift to the next; none for a crawler.
    pub driven_rpm: Option<[f64; 2]>,
}

impl GearTrace {
    /// Road speed at an engine speed, in the diagram's unit.
    pub fn speed_at(&self, engine_rpm: f64) -> f64 {
        self.speed_per_rpm * engine_rpm
    }

    /// Engine speed in rev/min at a road speed of the diagram's unit.
    pub fn rpm_at(&self, speed: f64) -> f64 {
        speed / self.speed_per_rpm
    }
}

/// One upshift: the needle falls at a constant road speed.
#[derive(Debug, Clone, PartialEq)]
pub struct ShiftTrace {
    /// The gear that is left.
    pub gear: GearId,
    /// Its label and that of the next gear.
    pub labels: [String; 2],
    /// Road speed, in the diagram's unit.
    pub speed: f64,
    /// Engine speed before the shift, in rev/min.
    pub shift_rpm: f64,
    /// Engine speed after it, in rev/min.
    pub rpm_after_shift: f64,
}

impl ShiftTrace {
    /// The shift in words: `2→3 at 4200 rpm, falls 1480 to 2720`.
    pub fn words(&self) -> String {
        let after = round_to(self.rpm_after_shift, 10.0);
        let [from, to] = &self.labels;
        let change = round_to(self.shift_rpm - after, 10.0);
        let falls = if change >= 0.0 { "falls" } else { "rises" };
        format!(
            "{from}→{to} at {} rpm, {falls} {} to {}",
            typed_rpm_text(self.shift_rpm),
            typed_rpm_text(change.abs()),
            typed_rpm_text(after)
        )
    }
}

impl SpeedDiagram {
    /// The diagram of the visible sets of a project.
    pub fn of(project: &Project, results: &ProjectResults) -> Self {
        Self::of_sets(project, results, |candidate| candidate.visible)
    }

    /// The diagram of chosen sets of a project.
    pub fn of_sets(
        project: &Project,
        results: &ProjectResults,
        is_chosen: impl Fn(&Candidate) -> bool,
    ) -> Self {
        let unit = project.units;
        let redline_rpm = project.engine.redline.rpm();
        let traces: Vec<SetTrace> = project
            .sets
            .iter()
            .zip(&results.sets)
            .enumerate()
            .filter(|(_, (candidate, _))| is_chosen(candidate))
            .map(|(place, (candidate, set))| trace(place, candidate, set, project))
            .collect();
        let marked_speeds = project.marked_road_speeds.as_slice();
        Self {
            unit,
            whole: whole_range(&traces, redline_rpm),
            redline_rpm,
            floor_rpm: project.engine.floor_rpm(),
            marked_speeds: marked_speeds
                .iter()
                .map(|v| unit.from_kmh(v.kmh()))
                .collect(),
            marked_rpm: rpm_values(project.marked_engine_speeds.as_slice()),
            traces,
        }
    }

    /// The diagram in one spoken sentence.
    pub fn summary(&self) -> String {
        let sets: Vec<String> = self.traces.iter().map(spoken_set).collect();
        let sets = if sets.is_empty() {
            "no visible set".to_owned()
        } else {
            sets.join("; ")
        };
        format!(
            "Engine speed against road speed up to {} {} and a redline of {} rpm: {sets}",
            self.whole.x[1],
            self.unit.sign(),
            typed_rpm_text(self.redline_rpm)
        )
    }

    /// The trace of a set, where it is visible.
    pub fn trace(&self, set: SetId) -> Option<&SetTrace> {
        self.traces.iter().find(|t| t.set == set)
    }
}

fn spoken_set(trace: &SetTrace) -> String {
    format!("{} with {} gears", trace.name, trace.gears.len())
}

fn rpm_values(speeds: &[EngineSpeed]) -> Vec<f64> {
    speeds.iter().map(|n| n.rpm()).collect()
}

fn trace(place: usize, candidate: &Candidate, set: &SetResults, project: &Project) -> SetTrace {
    let unit = project.units;
    let redline_rpm = project.engine.redline.rpm();
    let mut entered_at = project.engine.idle.map_or(0.0, EngineSpeed::rpm);
    let mut gears = Vec::new();
    let mut shifts = Vec::new();
    let chain: Vec<&GearResult> = set.chain().collect();
    for result in &set.gears {
        let mut driven_rpm = None;
        if result.gear.role == Some(GearRole::Shifted) {
            let left_at = result.upshift.map_or(redline_rpm, |up| up.shift_rpm);
            driven_rpm = Some([entered_at, left_at]);
            if let Some(up) = result.upshift {
                entered_at = up.rpm_after_shift;
                shifts.push(ShiftTrace {
                    gear: result.gear.id,
                    labels: [
                        result.gear.label.clone(),
                        chain[shifts.len() + 1].gear.label.clone(),
                    ],
                    speed: unit.from_kmh(up.speed_kmh),
                    shift_rpm: up.shift_rpm,
                    rpm_after_shift: up.rpm_after_shift,
                });
            }
        }
        gears.push(GearTrace {
            gear: result.gear.id,
            label: result.gear.label.clone(),
            speed_per_rpm: unit.from_kmh(result.speed_per_1000_rpm_kmh) / 1000.0,
            driven_rpm,
        });
    }
    SetTrace {
        set: candidate.id,
        place,
        name: candidate.set.name.to_string(),
        gears,
        shifts,
    }
}

/// From standstill to a little beyond the highest redline speed, up to the redline; farther where a
/// shift point lies beyond, so that its handle can be seen.
fn whole_range(traces: &[SetTrace], redline_rpm: f64) -> Range {
    let gears = traces.iter().flat_map(|t| &t.gears);
    let shifts = || traces.iter().flat_map(|t| &t.shifts);
    let at_redline = gears.map(|g| g.speed_at(redline_rpm));
    let fastest = at_redline
        .chain(shifts().map(|s| s.speed))
        .fold(0.0, f64::max);
    let highest_shift = shifts().map(|s| s.shift_rpm).fold(0.0, f64::max);
    Range {
        x: [0.0, next_round(fastest * 1.02)],
        y: [0.0, redline_rpm.max(highest_shift * 1.02)],
    }
}

/// The next round number above `speed`, no more than a tenth away: 163 gives 165.
fn next_round(speed: f64) -> f64 {
    if speed <= 0.0 || !speed.is_finite() {
        return 100.0;
    }
    let grain = 10_f64.powf(speed.log10().floor()) / 20.0;
    (speed / grain).ceil() * grain
}

impl SetTrace {
    /// The top gear of the shift chain.
    pub fn top(&self) -> Option<&GearTrace> {
        self.gears.iter().rev().find(|g| g.driven_rpm.is_some())
    }

    /// Engine speed in rev/min of every forward gear at a road speed of the diagram's unit.
    pub fn rpm_at(&self, speed: f64) -> impl Iterator<Item = (&GearTrace, f64)> {
        self.gears.iter().map(move |g| (g, g.rpm_at(speed)))
    }
}
