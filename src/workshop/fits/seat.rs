//! A seat: a shaft that a ring sits on, or a bore that it sits in.

use super::class::{BoreClass, ShaftClass};
use super::interference::Interference;
use super::limits::SizeLimits;
use super::quantity::Diameter;
use super::table::{BORE_STEPS, DiameterStep, SHAFT_STEPS, bearing_bore, bearing_outside};
use crate::units::plain_number;
use std::fmt;

/// Which side of a fit the seat is, because the sign hangs on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SeatSide {
    /// The part sits on it.
    Shaft,
    /// The part sits in it.
    Bore,
}

/// The tolerance class of a seat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SeatClass {
    /// Of a shaft.
    Shaft(ShaftClass),
    /// Of a bore.
    Bore(BoreClass),
}

/// A diameter that the tables do not have.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("the table of {of} has diameters over {} mm up to and including {} mm", plain_number(*over_mm), plain_number(*to_mm))]
pub struct OutsideTable {
    of: &'static str,
    over_mm: f64,
    to_mm: f64,
}

impl SeatClass {
    /// Which side it is.
    pub fn side(self) -> SeatSide {
        match self {
            Self::Shaft(_) => SeatSide::Shaft,
            Self::Bore(_) => SeatSide::Bore,
        }
    }

    /// Its limits at a nominal diameter.
    ///
    /// # Errors
    /// When the diameter lies outside the steps of the table.
    pub fn limits(self, diameter: Diameter) -> Result<SizeLimits, OutsideTable> {
        let limits = match self {
            Self::Shaft(class) => class.limits(diameter),
            Self::Bore(class) => class.limits(diameter),
        };
        limits.ok_or_else(|| self.side().outside_table())
    }
}

impl SeatSide {
    /// The tolerance of a bearing of the Normal class where it meets the seat, its bore on a shaft and its outside
    /// in a bore: what to begin with until the part is measured or its maker asked.
    ///
    /// # Errors
    /// When the diameter lies outside the steps of the table.
    pub fn normal_bearing(self, diameter: Diameter) -> Result<SizeLimits, OutsideTable> {
        let limits = match self {
            Self::Shaft => bearing_bore(diameter),
            Self::Bore => bearing_outside(diameter),
        };
        limits.ok_or_else(|| self.outside_table())
    }

    /// Which tolerance that is, and of which bearings it is not.
    pub fn normal_bearing_words(self) -> &'static str {
        match self {
            Self::Shaft => "bore of a bearing of the Normal class, unless it has tapered rollers",
            Self::Bore => "outside of a bearing of the Normal class, unless it has tapered rollers",
        }
    }

    /// What it is called.
    pub fn word(self) -> &'static str {
        match self {
            Self::Shaft => "shaft",
            Self::Bore => "bore",
        }
    }

    /// The interference of a part with the seat: on a shaft seat − part, in a bore part − seat.
    ///
    /// # Source
    /// Definition (ISO 286-1).
    pub fn interference(self, seat: SizeLimits, part: SizeLimits) -> Interference {
        let (inner, outer) = match self {
            Self::Shaft => (seat, part),
            Self::Bore => (part, seat),
        };
        Interference {
            least_um: inner.lower_um() - outer.upper_um(),
            most_um: inner.upper_um() - outer.lower_um(),
        }
    }

    fn outside_table(self) -> OutsideTable {
        let outside = |of, steps: &[DiameterStep]| OutsideTable {
            of,
            over_mm: steps.iter().map(|s| s.over_mm).fold(f64::MAX, f64::min),
            to_mm: steps.iter().map(|s| s.to_mm).fold(0.0, f64::max),
        };
        match self {
            Self::Shaft => outside("shafts", &SHAFT_STEPS),
            Self::Bore => outside("bores", &BORE_STEPS),
        }
    }
}

impl fmt::Display for SeatClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Shaft(class) => class.fmt(f),
            Self::Bore(class) => class.fmt(f),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outside_its_steps_a_table_says_how_far_it_goes() {
        let at = |mm| Diameter::from_mm(mm).unwrap();
        let shaft = SeatClass::Shaft(ShaftClass::K6);
        let bore = SeatClass::Bore(BoreClass::K7);
        let says = "the table of shafts has diameters over 10 mm up to and including 120 mm";
        assert_eq!(shaft.limits(at(10.0)).unwrap_err().to_string(), says);
        assert!(shaft.limits(at(10.001)).is_ok() && shaft.limits(at(120.0)).is_ok());
        assert!(shaft.limits(at(120.001)).is_err());
        assert!(bore.limits(at(18.0)).is_err() && bore.limits(at(18.5)).is_ok());
        assert!(SeatSide::Bore.normal_bearing(at(15.0)).is_err());
    }
}
