//! What can be taken hold of in a diagram, how far it moves, and which edit moving it means.

use super::axis::Along;
use crate::gearing::{EngineLimits, EngineSpeed, GearId};
use crate::project::{Edit, SetEdit, SetId};
use crate::units::{round_to, typed_rpm_text};

/// A shift point that can be dragged.
#[derive(Debug, Clone, PartialEq)]
pub struct Handle {
    /// The set.
    pub set: SetId,
    /// The gear that is left.
    pub gear: GearId,
    /// Its label and that of the next gear.
    pub labels: [String; 2],
    /// Where it stands.
    pub at: [f64; 2],
    /// Which way it moves: along the axis that carries engine speeds, or road speeds.
    pub along: Along,
    /// The engine speed in rev/min for each unit of that axis.
    pub rpm_per_unit: f64,
    /// How it moves.
    pub travel: Travel,
    /// Engine speed after the shift, in rev/min.
    pub rpm_after_shift: f64,
}

/// A line through all shift points of a set, which moves them together.
#[derive(Debug, Clone, PartialEq)]
pub struct HandleLine {
    /// The set.
    pub set: SetId,
    /// The shift points that have a handle, in their order.
    pub points: Vec<[f64; 2]>,
    /// Which way it moves: along the axis that carries engine speeds.
    pub along: Along,
    /// How every shift point moves.
    pub travel: Travel,
    /// The set's common shift point.
    pub common: EngineSpeed,
    /// The gears with a shift point of their own.
    pub own: Vec<(GearId, EngineSpeed)>,
}

/// The steps in which a hand moves a shift point, in rev/min.
const STEP_RPM: f64 = 10.0;

/// A shift point is moved between idle and the redline.
pub(super) fn travel(engine: &EngineLimits) -> Travel {
    let redline_rpm = engine.redline.rpm();
    let idle_rpm = engine.idle.map_or(STEP_RPM, EngineSpeed::rpm);
    Travel {
        rpm: [idle_rpm.min(redline_rpm), redline_rpm],
        step_rpm: STEP_RPM,
    }
}

/// How far and in which steps a shift point can be moved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Travel {
    /// The least and the greatest engine speed, in rev/min: idle and the redline.
    pub rpm: [f64; 2],
    /// The steps in which it is moved by hand, in rev/min.
    pub step_rpm: f64,
}

impl Travel {
    /// The nearest engine speed that a hand can choose, in rev/min.
    pub fn to_step(self, engine_rpm: f64) -> f64 {
        (engine_rpm / self.step_rpm).round() * self.step_rpm
    }
}

impl Handle {
    /// The shift point, in rev/min.
    pub fn shift_rpm(&self) -> f64 {
        self.rpm_at(self.at)
    }

    /// The engine speed in rev/min that a point of the diagram means to it.
    pub fn rpm_at(&self, point: [f64; 2]) -> f64 {
        self.along.of(point) * self.rpm_per_unit
    }

    /// What it is called, in the set of this name: `Shift point 2 to 3, Fitted`.
    pub fn name(&self, set: &str) -> String {
        let [from, to] = &self.labels;
        format!("Shift point {from} to {to}, {set}")
    }

    /// The shift in words: `2→3 at 4200 rpm, falls 1480 to 2720`.
    pub fn words(&self) -> String {
        let after = round_to(self.rpm_after_shift, 10.0);
        let [from, to] = &self.labels;
        let change = round_to(self.shift_rpm() - after, 10.0);
        let falls = if change >= 0.0 { "falls" } else { "rises" };
        format!(
            "{from}→{to} at {} rpm, {falls} {} to {}",
            typed_rpm_text(self.shift_rpm()),
            typed_rpm_text(change.abs()),
            typed_rpm_text(after)
        )
    }

    /// The edit that moves it to an engine speed in rev/min, or as near as it may go; none where
    /// that is no engine speed at all.
    pub fn moved_to(&self, engine_rpm: f64) -> Option<Edit> {
        let [least, most] = self.travel.rpm;
        let shift = EngineSpeed::from_rpm(engine_rpm.clamp(least, most)).ok()?;
        Some(Edit::Set(self.set, SetEdit::Shift(self.gear, shift)))
    }
}

impl HandleLine {
    /// Where all shift points are: one figure where they agree, else how far apart they lie.
    pub fn words(&self) -> String {
        let [lowest, highest] = self.shown_rpm().map(typed_rpm_text);
        if lowest == highest {
            format!("all shift points at {lowest} rpm")
        } else {
            format!("all shift points, {lowest} to {highest} rpm")
        }
    }

    /// The edit that moves all shift points by the same amount in rev/min, as far as the highest
    /// and the lowest handle may go; none where that is nowhere.
    pub fn moved_by(&self, change_rpm: f64) -> Option<Edit> {
        let [lowest, highest] = self.shown_rpm();
        let [least, most] = self.travel.rpm;
        let change = change_rpm.clamp((least - lowest).min(0.0), (most - highest).max(0.0));
        if change == 0.0 {
            return None;
        }
        // What no handle shows goes along, but stops nothing.
        let moved = |shift: EngineSpeed| {
            let [least, most] = [least.min(shift.rpm()), most.max(shift.rpm())];
            EngineSpeed::from_rpm((shift.rpm() + change).clamp(least, most)).ok()
        };
        let own: Option<Vec<(GearId, EngineSpeed)>> = self
            .own
            .iter()
            .map(|(gear, shift)| Some((*gear, moved(*shift)?)))
            .collect();
        let edit = SetEdit::Shifts(moved(self.common)?, own?);
        Some(Edit::Set(self.set, edit))
    }

    /// The lowest and the highest shift point that has a handle, in rev/min.
    fn shown_rpm(&self) -> [f64; 2] {
        let all = || self.points.iter().map(|at| self.along.of(*at));
        [
            all().fold(f64::INFINITY, f64::min),
            all().fold(f64::NEG_INFINITY, f64::max),
        ]
    }
}
