//! What shim a place takes, in words.

use crate::units::LengthUnit;
use crate::workshop::AnsweredShim;

/// What was measured, what is wanted, and what of the stock to take.
pub fn text(answered: &AnsweredShim, unit: LengthUnit) -> String {
    let mut lines = Vec::new();
    if let Some(readings) = answered.job.measurement.readings() {
        let sign = unit.sign();
        let [mean, spread] = [readings.mean_mm(), readings.spread_mm()].map(|mm| unit.reckoned(mm));
        let wanted = answered.job.wanted_words(unit);
        lines.push(format!(
            "measured {mean} {sign}, spread {spread} {sign}; wanted {wanted}"
        ));
    }
    lines.push(answered.place_words(unit));
    lines.extend(answered.choice_words(unit));
    lines.extend(answered.neighbour_words(unit));
    lines.push("The maker's figures decide; seat the bearings and measure again.".to_owned());
    lines.join("\n") + "\n"
}
