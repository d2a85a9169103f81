//! A shaft that is turned down: what is left of its strength, its stiffness and its hardened layer.

use super::quantity::{CaseDepth, ShaftTorque};
use super::stop::Stop;
use crate::units::NMM_PER_NM;
use crate::workshop::fits::Diameter;
use std::f64::consts::PI;

/// A shaft, solid or hollow, from the one diameter to a smaller one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TurnedShaft {
    old: Diameter,
    new: Diameter,
    bore: Option<Diameter>,
}

impl TurnedShaft {
    /// The shaft with its old and its new diameter, and its bore where it is hollow.
    ///
    /// # Errors
    /// When the new diameter is not below the old one, or the bore leaves no wall.
    pub fn new(old: Diameter, new: Diameter, bore: Option<Diameter>) -> Result<Self, Stop> {
        if new >= old {
            return Err(Stop::NotSmaller { old, new });
        }
        match bore {
            Some(bore) if bore >= new => Err(Stop::NoWall { bore, new }),
            _ => Ok(Self { old, new, bore }),
        }
    }

    /// The new diameter.
    pub fn new_diameter(self) -> Diameter {
        self.new
    }

    /// What is left of its strength in torsion and bending: (d1/d0)³ of a solid one; of a hollow one the ratio of
    /// (d⁴ − bore⁴)/d.
    ///
    /// # Source
    /// Strength of materials, section moduli of round bars and tubes.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::{Diameter, TurnedShaft};
    /// let [from, to] = [40.0, 39.0].map(|mm| Diameter::from_mm(mm).unwrap());
    /// let shaft = TurnedShaft::new(from, to, None).unwrap();
    /// assert!((shaft.strength_share() - 0.9269).abs() < 5e-5);
    /// ```
    pub fn strength_share(self) -> f64 {
        self.stiffness_share() * self.old.mm() / self.new.mm()
    }

    /// What is left of its stiffness: (d1/d0)⁴ of a solid one; of a hollow one the ratio of d⁴ − bore⁴.
    ///
    /// # Source
    /// Strength of materials, second moments of area of round bars and tubes.
    pub fn stiffness_share(self) -> f64 {
        self.fourth_powers_mm4(self.new) / self.fourth_powers_mm4(self.old)
    }

    /// The shear at a torque, in MPa, nominal at the new diameter: 16 T d ÷ (π (d⁴ − bore⁴)).
    ///
    /// # Source
    /// Strength of materials, torsion of round bars and tubes.
    pub fn shear_mpa(self, torque: ShaftTorque) -> f64 {
        let turning_nmm_mm = 16.0 * torque.nm() * NMM_PER_NM * self.new.mm();
        turning_nmm_mm / (PI * self.fourth_powers_mm4(self.new))
    }

    /// How deep the hardened layer still is, in mm: half of what comes off the diameter is taken off it.
    pub fn case_left_mm(self, depth: CaseDepth) -> f64 {
        let taken = (self.old.mm() - self.new.mm()) / 2.0;
        let left = depth.mm() - taken;
        if left > ROUNDING_MM { left } else { 0.0 }
    }

    fn fourth_powers_mm4(self, outer: Diameter) -> f64 {
        let bore_mm = self.bore.map_or(0.0, Diameter::mm);
        outer.mm().powi(4) - bore_mm.powi(4)
    }
}

/// What rounding may leave of a depth, in mm.
const ROUNDING_MM: f64 = 1e-9;

#[cfg(test)]
mod tests {
    use super::*;

    fn shaft(old: f64, new: f64, bore: Option<f64>) -> Result<TurnedShaft, Stop> {
        let at = |mm| Diameter::from_mm(mm).unwrap();
        TurnedShaft::new(at(old), at(new), bore.map(at))
    }

    #[test]
    fn a_shaft_only_gets_thinner_and_keeps_a_wall() {
        assert!(matches!(
            shaft(40.0, 40.0, None),
            Err(Stop::NotSmaller { .. })
        ));
        assert!(matches!(
            shaft(40.0, 39.0, Some(39.0)),
            Err(Stop::NoWall { .. })
        ));
        assert!(shaft(40.0, 39.0, Some(38.9)).is_ok());
    }

    #[test]
    fn half_of_what_comes_off_is_taken_off_the_case() {
        let turned = shaft(40.0, 39.0, None).unwrap();
        let left = |mm| turned.case_left_mm(CaseDepth::from_mm(mm).unwrap());
        assert!((left(0.8) - 0.3).abs() < 1e-12);
        assert!(left(0.5).abs() < f64::MIN_POSITIVE && left(0.3).abs() < f64::MIN_POSITIVE);
    }

    #[test]
    fn a_hollow_shaft_is_sheared_more() {
        let torque = ShaftTorque::from_nm(500.0).unwrap();
        let shear = |bore| shaft(40.0, 39.0, bore).unwrap().shear_mpa(torque);
        // 16 · 500000 ÷ (π · 39³) = 42.9286 MPa.
        assert!((shear(None) - 42.9286).abs() < 5e-5, "{}", shear(None));
        let by_hand = 42.9286 / (1.0 - (20.0_f64 / 39.0).powi(4));
        assert!((shear(Some(20.0)) - by_hand).abs() < 1e-3);
    }
}
