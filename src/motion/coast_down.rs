//! Coast-down: how long and how far a vehicle rolls in neutral from one speed to a lower one.

use super::follow::{Met, More, follow};
use super::on_road::OnRoad;
use super::stretch::Passage;

impl OnRoad {
    /// What it takes to roll from a road speed down to a lower one, both in m/s, in neutral on tyres of that
    /// rolling radius in m; none where the vehicle does not get that slow.
    ///
    /// t = ∫m0 dv ÷ R: of what turns only the wheels count, and efficiency plays no part.
    ///
    /// # Accuracy
    /// 1e-9 s.
    ///
    /// # Source
    /// 40 CFR 86.529.
    pub fn coast_down(&self, rolling_radius_m: f64, from_m_s: f64, to_m_s: f64) -> Option<Passage> {
        if from_m_s <= to_m_s {
            return None;
        }
        let pieces = self.neutral(self.neutral_mass_kg(rolling_radius_m), to_m_s, from_m_s);
        let mut sum = Passage::NOTHING;
        let met = follow(&pieces, from_m_s, f64::INFINITY, |_, _, passage| {
            sum = sum.and(passage);
            More::Asked
        });
        sum.if_reached().filter(|_| met == Met::Bottom)
    }
}
