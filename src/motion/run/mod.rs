//! The run from rest: the clutch slips, the gears are driven one after the other, the vehicle rolls between
//! them.
//!
//! `course.rs` drives it, `trace.rs` is what came of it, piece by piece; `in_one_gear.rs` stays in a gear
//! where that is sooner, and `energy.rs` says where the energy went.

mod course;
mod energy;
mod in_one_gear;
mod trace;

pub use energy::RunEnergy;
pub use trace::{Moment, Phase, Run, RunGear, RunPiece};

use super::on_road::OnRoad;
use super::powertrain::{PoweredGear, Powertrain};
use super::quantity::ShiftPause;
use crate::gearing::EngineSpeed;

/// The distance in m by which a timing beam at a drag strip lets a vehicle roll before the clock starts: one
/// foot.
pub const ROLLOUT_M: f64 = 0.3048;

/// The longest run in s: whoever is not there by then is left out.
///
/// # Source
/// Our own convention.
pub const LONGEST_RUN_S: f64 = 600.0;

/// How somebody starts and shifts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Driving {
    /// The engine speed that is held while the clutch slips; none for the lowest at which the engine is
    /// driven.
    pub launch: Option<EngineSpeed>,
    /// How long each change of gear leaves the wheels without drive.
    pub pause: ShiftPause,
}

impl Driving {
    /// The engine speed in rev/min that is held while the clutch slips.
    pub fn launch_rpm(&self, powertrain: &Powertrain) -> f64 {
        let band = &powertrain.band;
        let launch = self.launch.map_or_else(|| band.low_rpm(), EngineSpeed::rpm);
        band.nearest_rpm(launch)
    }
}

/// What a run is to reach before it ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunGoal {
    /// The highest of its target speeds, in m/s; 0 for none.
    pub speed_m_s: f64,
    /// The farthest of its distances, in m; 0 for none.
    pub distance_m: f64,
}

impl Powertrain {
    /// The engine speeds in rev/min at which the set is changed up, one for each change of the shift chain.
    pub fn shift_rpms(&self) -> Vec<f64> {
        let shifts = self.chain().rev().skip(1).map(|powered| {
            let shift = powered.gear.shift;
            shift.map_or_else(|| self.band.high_rpm(), EngineSpeed::rpm)
        });
        let mut shifts: Vec<f64> = shifts.collect();
        shifts.reverse();
        shifts
    }

    /// A run from rest at full load through the gears of the shift chain, changed up at these engine speeds
    /// in rev/min; a change that has none comes at the highest speed of its gear.
    ///
    /// * Start: first gear, the engine held at its launch speed with full torque until the clutch has no
    ///   slip left; until then nothing of the engine's inertia counts. Where the force is not above the load
    ///   at rest, nothing moves.
    /// * Change: at its engine speed, held to the band and in first gear to the launch speed. For the pause
    ///   the vehicle rolls in neutral, no slower than standing; then the next gear is in at once. A gear that
    ///   is at or above its own change already is left at once, with another pause.
    /// * Below the band the clutch slips with the engine at the lowest speed of the band; above it there is
    ///   no drive until the vehicle has slowed down.
    /// * A gear that does not hold its speed loses it by the same law: nobody changes down.
    /// * At the end of top gear the limiter holds the speed.
    ///
    /// It ends where everything was reached, where the vehicle stands, or after 600 s.
    ///
    /// # Accuracy
    /// 1e-9 s: every event is landed on.
    ///
    /// # Source
    /// Newton's second law; how it is driven is our own convention.
    pub fn run(
        &self,
        on_road: &OnRoad,
        driving: &Driving,
        shift_rpms: &[f64],
        goal: RunGoal,
    ) -> Run {
        let gears: Vec<&PoweredGear> = self.chain().collect();
        course::driven(self, &gears, on_road, driving, shift_rpms, goal)
    }
}
