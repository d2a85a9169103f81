//! The turns per distance that a tyre can be given in.
//!
//! Their ranges are those of the rolling circumference, 900 to 13000 mm, a little inside.

use crate::gearing::quantity;
use crate::units::KM_PER_MILE;

const MM_PER_KM: f64 = 1_000_000.0;
const MM_PER_MILE: f64 = KM_PER_MILE * MM_PER_KM;

quantity! {
    /// Turns of a loaded tyre in one kilometre: 76.93 to 1111.1.
    RevsPerKm, new, revs_per_km, "the revs of a tyre", "between 76.93 and 1111.1 per km",
    |revs| (76.93..=1111.1).contains(&revs)
}

quantity! {
    /// Turns of a loaded tyre in one mile of 1609.344 m: 123.8 to 1788.1.
    RevsPerMile, new, revs_per_mile, "the revs of a tyre", "between 123.8 and 1788.1 per mile",
    |revs| (123.8..=1788.1).contains(&revs)
}

impl RevsPerKm {
    /// The distance per turn in mm.
    pub fn rolling_circumference_mm(self) -> f64 {
        MM_PER_KM / self.0
    }
}

impl RevsPerMile {
    /// The distance per turn in mm.
    pub fn rolling_circumference_mm(self) -> f64 {
        MM_PER_MILE / self.0
    }
}

/// The turns in one kilometre at that many mm per turn.
pub(super) fn revs_per_km(rolling_circumference_mm: f64) -> f64 {
    MM_PER_KM / rolling_circumference_mm
}

/// The turns in one mile of 1609.344 m at that many mm per turn.
pub(super) fn revs_per_mile(rolling_circumference_mm: f64) -> f64 {
    MM_PER_MILE / rolling_circumference_mm
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_of_the_ranges_are_valid_circumferences() {
        let ends = [
            RevsPerKm::new(76.93).unwrap().rolling_circumference_mm(),
            RevsPerKm::new(1111.1).unwrap().rolling_circumference_mm(),
            RevsPerMile::new(123.8).unwrap().rolling_circumference_mm(),
            RevsPerMile::new(1788.1).unwrap().rolling_circumference_mm(),
        ];
        for mm in ends {
            assert!((900.0..=13_000.0).contains(&mm), "{mm}");
        }
    }

    #[test]
    fn turns_that_no_tyre_makes_are_refused() {
        for revs in [0.0, -520.0, f64::NAN, f64::INFINITY, 76.0, 1789.0] {
            assert!(RevsPerKm::new(revs).is_err(), "{revs} per km");
            assert!(RevsPerMile::new(revs).is_err(), "{revs} per mile");
        }
    }
}
