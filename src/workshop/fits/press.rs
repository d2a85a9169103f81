//! What presses a ring onto a solid steel shaft and pulls it off again.

use super::limits::UM_PER_MM;
use super::quantity::{Diameter, RingWidth};
use std::f64::consts::PI;

/// The modulus of elasticity of steel, in MPa.
///
/// # Source
/// Bearing makers' catalogues.
const STEEL_MPA: f64 = 208_000.0;

/// A ring on a solid steel shaft.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressedRing {
    bore: Diameter,
    outer: Diameter,
    width: RingWidth,
}

/// Which way a ring goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Pressing {
    /// Onto the shaft.
    On,
    /// Off it.
    Off,
}

impl PressedRing {
    /// The ring from its bore, the diameter over which it is solid (an inner ring's raceway) and its width; none
    /// where it has no wall.
    pub fn new(bore: Diameter, outer: Diameter, width: RingWidth) -> Option<Self> {
        (outer > bore).then_some(Self { bore, outer, width })
    }

    /// The pressure in the seat, in MPa: (E/2)(Δd/d)(1 − k²) with k = bore ÷ outer; 0 of a clearance.
    ///
    /// # Source
    /// Bearing makers' catalogues.
    pub fn pressure_mpa(self, working_um: f64) -> f64 {
        let share = working_um.max(0.0) / UM_PER_MM / self.bore.mm();
        let k = self.bore.mm() / self.outer.mm();
        STEEL_MPA / 2.0 * share * (1.0 - k * k)
    }

    /// The force that moves it at the end of the way, in N: μ p π d B, μ 0.12 on and 0.18 off.
    ///
    /// # Source
    /// Bearing makers' catalogues.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::{Diameter, PressedRing, Pressing, RingWidth};
    /// let [bore, outer] = [40.0, 50.0].map(|mm| Diameter::from_mm(mm).unwrap());
    /// let ring = PressedRing::new(bore, outer, RingWidth::from_mm(19.0)?).unwrap();
    /// assert!((ring.force_n(Pressing::On, 28.571) - 7662.0).abs() < 1.0);
    /// # Ok::<(), layshaft::gearing::OutOfRange>(())
    /// ```
    pub fn force_n(self, pressing: Pressing, working_um: f64) -> f64 {
        let friction = match pressing {
            Pressing::On => 0.12,
            Pressing::Off => 0.18,
        };
        friction * self.pressure_mpa(working_um) * PI * self.bore.mm() * self.width.mm()
    }
}
