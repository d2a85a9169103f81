//! The ISO 286 limits of shafts and bores, and the tolerances of bearings of the Normal class, by diameter.
//!
//! Source of all tables: ISO 286 and ISO 492 as printed by bearing makers. Steps are over … up to and including;
//! outside them nothing is known here. Tapered roller bearings have a table of their own for their bore.

use super::class::{BoreClass, ShaftClass};
use super::limits::SizeLimits;
use super::quantity::Diameter;

/// A step of the tables: over the one diameter, up to and including the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DiameterStep {
    /// Over this, in mm.
    pub over_mm: f64,
    /// Up to and including this, in mm.
    pub to_mm: f64,
}

/// The steps for shafts.
pub const SHAFT_STEPS: [DiameterStep; 5] = [
    step(10.0, 18.0),
    step(18.0, 30.0),
    step(30.0, 50.0),
    step(50.0, 80.0),
    step(80.0, 120.0),
];

/// The steps for bores.
pub const BORE_STEPS: [DiameterStep; 4] = [
    step(18.0, 30.0),
    step(30.0, 50.0),
    step(50.0, 80.0),
    step(80.0, 120.0),
];

const fn step(over_mm: f64, to_mm: f64) -> DiameterStep {
    DiameterStep { over_mm, to_mm }
}

impl DiameterStep {
    /// Whether a diameter lies in it.
    pub fn has(self, diameter: Diameter) -> bool {
        diameter.mm() > self.over_mm && diameter.mm() <= self.to_mm
    }
}

/// The limits of a column at a diameter; none outside the steps.
fn at<const N: usize>(
    steps: &[DiameterStep; N],
    column: [[f64; 2]; N],
    diameter: Diameter,
) -> Option<SizeLimits> {
    let mut rows = steps.iter().zip(column);
    let row = rows.find(|(step, _)| step.has(diameter));
    row.map(|(_, row)| SizeLimits::of_row(row))
}

impl ShaftClass {
    /// Its limits at a nominal diameter; none outside 10 to 120 mm.
    pub fn limits(self, diameter: Diameter) -> Option<SizeLimits> {
        at(&SHAFT_STEPS, self.column(), diameter)
    }

    /// Upper and lower limit in µm, step by step.
    fn column(self) -> [[f64; 2]; 5] {
        match self {
            Self::H6 => [
                [0.0, -11.0],
                [0.0, -13.0],
                [0.0, -16.0],
                [0.0, -19.0],
                [0.0, -22.0],
            ],
            Self::J6 => [
                [8.0, -3.0],
                [9.0, -4.0],
                [11.0, -5.0],
                [12.0, -7.0],
                [13.0, -9.0],
            ],
            Self::Js6 => [
                [5.5, -5.5],
                [6.5, -6.5],
                [8.0, -8.0],
                [9.5, -9.5],
                [11.0, -11.0],
            ],
            Self::K5 => [
                [9.0, 1.0],
                [11.0, 2.0],
                [13.0, 2.0],
                [15.0, 2.0],
                [18.0, 3.0],
            ],
            Self::K6 => [
                [12.0, 1.0],
                [15.0, 2.0],
                [18.0, 2.0],
                [21.0, 2.0],
                [25.0, 3.0],
            ],
            Self::M5 => [
                [15.0, 7.0],
                [17.0, 8.0],
                [20.0, 9.0],
                [24.0, 11.0],
                [28.0, 13.0],
            ],
            Self::M6 => [
                [18.0, 7.0],
                [21.0, 8.0],
                [25.0, 9.0],
                [30.0, 11.0],
                [35.0, 13.0],
            ],
            Self::N6 => [
                [23.0, 12.0],
                [28.0, 15.0],
                [33.0, 17.0],
                [39.0, 20.0],
                [45.0, 23.0],
            ],
            Self::P6 => [
                [29.0, 18.0],
                [35.0, 22.0],
                [42.0, 26.0],
                [51.0, 32.0],
                [59.0, 37.0],
            ],
        }
    }
}

impl BoreClass {
    /// Its limits at a nominal diameter; none outside 18 to 120 mm.
    pub fn limits(self, diameter: Diameter) -> Option<SizeLimits> {
        at(&BORE_STEPS, self.column(), diameter)
    }

    /// Upper and lower limit in µm, step by step.
    fn column(self) -> [[f64; 2]; 4] {
        match self {
            Self::H7 => [[21.0, 0.0], [25.0, 0.0], [30.0, 0.0], [35.0, 0.0]],
            Self::J7 => [[12.0, -9.0], [14.0, -11.0], [18.0, -12.0], [22.0, -13.0]],
            Self::K7 => [[6.0, -15.0], [7.0, -18.0], [9.0, -21.0], [10.0, -25.0]],
            Self::M7 => [[0.0, -21.0], [0.0, -25.0], [0.0, -30.0], [0.0, -35.0]],
            Self::N7 => [[-7.0, -28.0], [-8.0, -33.0], [-9.0, -39.0], [-10.0, -45.0]],
            Self::P7 => [
                [-14.0, -35.0],
                [-17.0, -42.0],
                [-21.0, -51.0],
                [-24.0, -59.0],
            ],
        }
    }
}

/// The tolerance of the bore of a bearing of the Normal class: a starting value, for tapered roller bearings have
/// another; none outside 10 to 120 mm.
pub fn bearing_bore(diameter: Diameter) -> Option<SizeLimits> {
    let column = [
        [0.0, -8.0],
        [0.0, -10.0],
        [0.0, -12.0],
        [0.0, -15.0],
        [0.0, -20.0],
    ];
    at(&SHAFT_STEPS, column, diameter)
}

/// The tolerance of the outside of a bearing of the Normal class: a starting value; none outside 18 to 120 mm.
pub fn bearing_outside(diameter: Diameter) -> Option<SizeLimits> {
    let column = [[0.0, -9.0], [0.0, -11.0], [0.0, -13.0], [0.0, -15.0]];
    at(&BORE_STEPS, column, diameter)
}
