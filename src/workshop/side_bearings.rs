//! The two shims beside a differential: how they are split, and how backlash and preload are moved.

use super::quantity::{Angle, Reading, ShimThickness};
use crate::gearing::quantity;

/// The shims at both side bearings, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SideShims {
    /// On the side of the ring gear.
    pub ring_gear_mm: f64,
    /// On the other side.
    pub other_mm: f64,
}

impl SideShims {
    /// From the travel without the ring gear, that with it to full mesh, and the allowance: ring-gear side the
    /// travel to full mesh, other side what is left of the whole and the allowance.
    ///
    /// # Source
    /// Axle service procedures (common practice, no source).
    pub fn from_travel(whole: Reading, to_mesh: Reading, allowance: Reading) -> Self {
        Self {
            ring_gear_mm: to_mesh.mm(),
            other_mm: whole.mm() - to_mesh.mm() + allowance.mm(),
        }
    }

    /// Both together, in mm.
    pub fn total_mm(self) -> f64 {
        self.ring_gear_mm + self.other_mm
    }

    /// With so much more backlash taken away, in mm: what is taken off the other side comes to that of the ring
    /// gear, so that it goes towards the pinion and the total stays.
    #[must_use]
    pub fn with_less_backlash(self, backlash_mm: f64, rate: BacklashMove) -> Self {
        let moved = rate.moved_mm(backlash_mm);
        Self {
            ring_gear_mm: self.ring_gear_mm + moved,
            other_mm: self.other_mm - moved,
        }
    }

    /// With so much less preload, in mm: the same off both sides.
    #[must_use]
    pub fn with_less_preload(self, preload: ShimThickness) -> Self {
        let half = preload.mm() / 2.0;
        Self {
            ring_gear_mm: self.ring_gear_mm - half,
            other_mm: self.other_mm - half,
        }
    }
}

quantity! {
    /// How much the backlash changes while the ring gear moves along by 1 mm: 0.1 to 2 mm.
    BacklashMove, from_per_mm, per_mm, "backlash per mm moved", "between 0.1 and 2 mm",
    |per_mm| (0.1..=2.0).contains(&per_mm)
}

impl BacklashMove {
    /// What workshops reckon with: 0.6 mm for 1 mm (common practice, no source).
    pub const USUAL: Self = Self(0.6);

    /// From pressure angle and pitch angle: 2 tan α sin δ; none where that is no rate.
    ///
    /// # Source
    /// Geometry of bevel gears (from memory).
    pub fn of_angles(pressure: Angle, pitch: Angle) -> Option<Self> {
        let [pressure, pitch] = [pressure, pitch].map(|angle| angle.deg().to_radians());
        Self::from_per_mm(2.0 * pressure.tan() * pitch.sin()).ok()
    }

    fn moved_mm(self, backlash_mm: f64) -> f64 {
        backlash_mm / self.per_mm()
    }
}
