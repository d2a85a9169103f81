//! The best shift points of a set as one edit, with what it gains, told before anybody makes it.

use super::motion::{Motion, SetMotion};
use super::run::{m_s, usual_target};
use crate::gearing::{EngineSpeed, GearId, GearSet, RoadSpeed};
use crate::motion::RunGoal;
use crate::project::{Candidate, Project, SetEdit};
use crate::units::{SpeedUnit, decimals_text, mark_text, round_to, typed_rpm_text};

/// Shift points are taken in such steps, rounded down: above the best one the next gear would be ahead.
const GRAIN_RPM: f64 = 10.0;

/// The most changes that a line names one by one.
const MOST_NAMED: usize = 5;

/// What a time is told to, in s.
const GRAIN_S: f64 = 0.01;

/// The best shift points of a set that is changed up elsewhere.
#[derive(Debug, Clone, PartialEq)]
pub struct BestShifts {
    /// Each change of the chain, the labels of both gears, with the engine speed to take.
    pub changes: Vec<([String; 2], EngineSpeed)>,
    /// The one edit that takes them all.
    pub edit: SetEdit,
    /// What it does to the times from rest, slowest target first; there is one at least.
    pub gains: Vec<Gain>,
}

/// The time from rest to a road speed, as a set is changed up now and as it would be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gain {
    /// The road speed.
    pub to: RoadSpeed,
    /// The time in s now; none where it is not reached.
    pub now_s: Option<f64>,
    /// The time in s with the best shift points, as they would be taken.
    pub best_s: f64,
}

impl Gain {
    fn is_told(&self) -> bool {
        let hundredths = |time_s: f64| round_to(time_s, GRAIN_S);
        self.now_s.map(hundredths) != Some(hundredths(self.best_s))
    }

    /// `to 100 km/h 9.71 s instead of 9.93 s`.
    fn text(&self, unit: SpeedUnit) -> String {
        let (speed, sign) = (mark_text(self.to.kmh(), unit), unit.sign());
        let best = decimals_text(self.best_s, 2);
        let now = match self.now_s {
            None => ", which is not reached now".to_owned(),
            Some(_) if !self.is_told() => " as now".to_owned(),
            Some(now_s) => format!(" instead of {} s", decimals_text(now_s, 2)),
        };
        format!("to {speed} {sign} {best} s{now}")
    }
}

impl BestShifts {
    /// Those of a set; none where it has them, or is never on its way to any speed that is asked for.
    pub(super) fn of(
        project: &Project,
        candidate: &Candidate,
        motion: &Motion,
        place: usize,
    ) -> Option<Self> {
        let (set, of_motion) = (&*candidate.set, motion.sets.get(place)?);
        let best = motion.best_shift_rpms(place);
        let now = of_motion.powertrain.shift_rpms();
        let taken: Vec<EngineSpeed> = best.iter().map(|rpm| taken(*rpm)).collect::<Option<_>>()?;
        let mut both = now.iter().zip(&taken);
        // What rounds down to the best is as good.
        if both.all(|(now, best)| self::taken(*now) == Some(*best)) {
            return None;
        }
        let gains = gains(project, of_motion, motion, &now, &taken);
        (!gains.is_empty()).then(|| Self {
            changes: changes(set, &taken),
            edit: edit(set, &taken),
            gains,
        })
    }

    /// `1–2 at 6150, 2–3 at 5980 rpm`; of many changes only between which speeds they lie.
    pub fn changes_text(&self) -> String {
        let speeds = self.changes.iter().map(|(_, speed)| speed.rpm());
        if self.changes.len() > MOST_NAMED {
            let low = speeds.clone().fold(f64::INFINITY, f64::min);
            let high = speeds.fold(0.0, f64::max);
            return format!(
                "{} changes at {} to {} rpm",
                self.changes.len(),
                typed_rpm_text(low),
                typed_rpm_text(high)
            );
        }
        let named = self.changes.iter();
        let named =
            named.map(|([a, b], speed)| format!("{a}–{b} at {}", typed_rpm_text(speed.rpm())));
        format!("{} rpm", named.collect::<Vec<_>>().join(", "))
    }

    /// What matters most of what it gains: the time that everybody compares, or where that stays as it is the
    /// fastest target whose time does not.
    pub fn gain_text(&self, unit: SpeedUnit) -> String {
        let usual = self.gains.iter().find(|gain| is_usual(gain, unit));
        let changed = self.gains.iter().rev().find(|gain| gain.is_told());
        let told = usual.filter(|gain| gain.is_told()).or(changed).or(usual);
        told.or_else(|| self.gains.last())
            .map_or_else(String::new, |gain| gain.text(unit))
    }

    /// All that it changes, a line for each target; where it is nothing, what it is.
    pub fn gains_text(&self, unit: SpeedUnit) -> String {
        let told = self.gains.iter().filter(|gain| gain.is_told());
        let lines: Vec<String> = told.map(|gain| gain.text(unit)).collect();
        if lines.is_empty() {
            self.gain_text(unit)
        } else {
            lines.join("\n")
        }
    }
}

fn is_usual(gain: &Gain, unit: SpeedUnit) -> bool {
    usual_target(unit).is_some_and(|usual| gain.to == usual)
}

/// A best shift point in rev/min as it is taken; itself where the grain leaves nothing of it.
fn taken(rpm: f64) -> Option<EngineSpeed> {
    let rounded = EngineSpeed::from_rpm((rpm / GRAIN_RPM).floor() * GRAIN_RPM);
    rounded.or_else(|_| EngineSpeed::from_rpm(rpm)).ok()
}

/// The times to the marked speeds, and to the one that everybody compares; what is not reached with the best
/// shift points is left out.
fn gains(
    project: &Project,
    set: &SetMotion,
    motion: &Motion,
    now: &[f64],
    taken: &[EngineSpeed],
) -> Vec<Gain> {
    let marked = project.marked_road_speeds.as_slice().iter().copied();
    let mut targets: Vec<RoadSpeed> = marked.chain(usual_target(project.units)).collect();
    targets.sort_by(|a, b| a.kmh().total_cmp(&b.kmh()));
    targets.dedup();
    let goal = RunGoal {
        speed_m_s: targets.iter().copied().map(m_s).fold(0.0, f64::max),
        distance_m: 0.0,
    };
    let taken: Vec<f64> = taken.iter().copied().map(EngineSpeed::rpm).collect();
    let [now, best] = [now, &taken].map(|shift_rpms| {
        let powertrain = &set.powertrain;
        powertrain.run(&set.on_road, &motion.driving, shift_rpms, goal)
    });
    let gains = targets.iter().filter_map(|to| {
        Some(Gain {
            to: *to,
            now_s: now.at_speed(m_s(*to)).map(|moment| moment.time_s),
            best_s: best.at_speed(m_s(*to))?.time_s,
        })
    });
    gains.collect()
}

fn changes(set: &GearSet, taken: &[EngineSpeed]) -> Vec<([String; 2], EngineSpeed)> {
    let labels: Vec<String> = set.chain().map(|gear| gear.label.to_string()).collect();
    let pairs = labels.windows(2).zip(taken);
    pairs
        .map(|(pair, speed)| ([pair[0].clone(), pair[1].clone()], *speed))
        .collect()
}

/// One shift point for all changes as long as all are alike and none has one of its own.
fn edit(set: &GearSet, taken: &[EngineSpeed]) -> SetEdit {
    let has_own = set.gears.iter().any(|gear| gear.shift.is_some());
    match taken.split_first() {
        Some((first, others)) if !has_own && others.iter().all(|other| other == first) => {
            SetEdit::ShiftAll(*first)
        }
        Some(_) | None => {
            let own = set.chain().map(|gear| gear.id).zip(taken.iter().copied());
            SetEdit::Shifts(set.shift, own.collect::<Vec<(GearId, EngineSpeed)>>())
        }
    }
}
