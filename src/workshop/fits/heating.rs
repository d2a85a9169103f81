//! How warm a part must be to slip onto its seat, and what a bearing bears.

use super::limits::UM_PER_MM;
use super::quantity::{Diameter, RoomTemperature, SlipClearance};
use crate::workshop::heat::{Material, outgrown_mm};
use crate::workshop::quantity::TemperatureRise;

/// The warmest that a bearing may get, in °C: above it, its hardness goes.
///
/// # Source
/// Bearing makers' catalogues.
pub const BEARING_MOST_C: f64 = 120.0;

/// What is lost on the way from the heater to the seat, from the least to the most, in K.
///
/// # Source
/// Bearing makers' catalogues.
const HANDLING_K: [f64; 2] = [20.0, 30.0];

/// How much warmer than its seat a part must be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heating {
    /// Where it slips on, in K.
    pub rise_k: f64,
}

impl Heating {
    /// (Interference + slip clearance) ÷ (α d); 0 where there is clearance enough, none for a material that does
    /// not grow.
    ///
    /// # Source
    /// Bearing makers' catalogues.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::{Diameter, Heating, Material, SlipClearance};
    /// let (d, no_slip) = (Diameter::from_mm(40.0)?, SlipClearance::from_um(0.0)?);
    /// let heating = Heating::needed(30.0, no_slip, d, Material::BearingSteel).unwrap();
    /// assert!((heating.rise_k - 60.0).abs() < 1e-9);
    /// # Ok::<(), layshaft::gearing::OutOfRange>(())
    /// ```
    pub fn needed(
        interference_um: f64,
        slip: SlipClearance,
        diameter: Diameter,
        part: Material,
    ) -> Option<Self> {
        let missing_um = (interference_um + slip.um()).max(0.0);
        let um_per_k = part.per_k() * diameter.mm() * UM_PER_MM;
        let rise_k = missing_um / um_per_k;
        rise_k.is_finite().then_some(Self { rise_k })
    }

    /// The temperatures in °C to warm it to, with the least and the most that handling takes.
    pub fn temperatures_c(self, room: RoomTemperature) -> [f64; 2] {
        HANDLING_K.map(|handling| room.c() + self.rise_k + handling)
    }

    /// Whether that is more than a bearing bears, even with the least for handling.
    pub fn is_too_hot_for_bearing(self, room: RoomTemperature) -> bool {
        let [least, _] = self.temperatures_c(room);
        least > BEARING_MOST_C
    }
}

/// How much a case outgrows the ring that sits in it, in µm, where both run so much warmer: a light-alloy case
/// wants a tighter fit, for it loosens hot. Of a case that grows less it is below 0.
///
/// # Source
/// Linear expansion, as the end play of [`crate::workshop::HeatChange`].
pub fn case_outgrows_um(diameter: Diameter, case: Material, rise: TemperatureRise) -> f64 {
    outgrown_mm(diameter.mm(), (case, rise), (Material::BearingSteel, rise)) * UM_PER_MM
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::quantity::Expansion;

    #[test]
    fn a_bearing_is_not_warmed_above_what_it_bears() {
        let d = Diameter::from_mm(20.0).unwrap();
        let slip = SlipClearance::from_um(10.0).unwrap();
        let room = RoomTemperature::from_c(20.0).unwrap();
        let heating = |um| Heating::needed(um, slip, d, Material::BearingSteel).unwrap();
        let [least, most] = heating(10.0).temperatures_c(room);
        assert!((least - 120.0).abs() < 1e-9 && (most - 130.0).abs() < 1e-9);
        assert!(!heating(9.9).is_too_hot_for_bearing(room));
        assert!(heating(10.1).is_too_hot_for_bearing(room));
        assert!(heating(-30.0).rise_k.abs() < 1e-12, "it slips on cold");
        for per_mk in [0.0, 1e-308] {
            let rigid = Material::Other(Expansion::from_per_mk(per_mk).unwrap());
            assert_eq!(Heating::needed(30.0, slip, d, rigid), None);
        }
    }
}
