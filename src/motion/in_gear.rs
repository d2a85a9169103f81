//! In-gear times: from one speed to another at full load without a change.

use super::follow::{Met, More, follow};
use super::on_road::OnRoad;
use super::powertrain::PoweredGear;
use super::stretch::Passage;

impl PoweredGear {
    /// What it takes to get from a road speed to a higher one, both in m/s, with the clutch closed and full
    /// torque at once; none where the gear does not cover both, or does not get there.
    ///
    /// # Accuracy
    /// 1e-9 s.
    ///
    /// # Source
    /// Newton's second law; that torque is there at once is our own convention.
    pub fn in_gear(&self, on_road: &OnRoad, from_m_s: f64, to_m_s: f64) -> Option<Passage> {
        let (from, to) = (self.covered_m_s(from_m_s)?, self.covered_m_s(to_m_s)?);
        if from >= to {
            return None;
        }
        let pieces = on_road.drive_between(self, from, to);
        let mut sum = Passage::NOTHING;
        let met = follow(&pieces, from, f64::INFINITY, |_, _, passage| {
            sum = sum.and(passage);
            More::Asked
        });
        sum.if_reached().filter(|_| met == Met::Top)
    }
}
