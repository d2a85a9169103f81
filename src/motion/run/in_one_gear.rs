//! Staying in gear to the target: a run without the last change before it, where that is sooner.

use super::course;
use super::trace::Run;
use super::{Driving, RunGoal};
use crate::motion::on_road::OnRoad;
use crate::motion::powertrain::{PoweredGear, Powertrain};

impl Powertrain {
    /// The run to a target speed in m/s that stays in the gear which `run` leaves last before the target, and
    /// holds it to the end of its speeds; none where it is not there sooner. Everything else is as `run` was
    /// asked for, see [`Self::run`].
    ///
    /// A run that never reaches the target leaves its last gear before it.
    ///
    /// # Source
    /// Our own convention.
    pub fn run_in_gear_to_target(
        &self,
        run: &Run,
        on_road: &OnRoad,
        driving: &Driving,
        shift_rpms: &[f64],
        target_m_s: f64,
    ) -> Option<Run> {
        let reached = run.at_speed(target_m_s);
        let before = reached.map_or(f64::INFINITY, |moment| moment.time_s);
        let changes = run.shifts().iter();
        let begun = changes.filter(|change| change.time_s < before).count();
        if begun == 0 {
            return None;
        }
        let gears: Vec<&PoweredGear> = self.chain().take(begun).collect();
        let goal = RunGoal {
            speed_m_s: target_m_s,
            distance_m: 0.0,
        };
        let stays = course::driven(self, &gears, on_road, driving, shift_rpms, goal);
        let is_sooner = stays.at_speed(target_m_s)?.time_s < before;
        is_sooner.then_some(stays)
    }
}
