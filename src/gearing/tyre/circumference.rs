//! The law of rolling circumference: how far a loaded tyre rolls in one turn, and how well that is
//! known.
//!
//! A loaded tyre is flattened where it stands, so it covers about 3 % less than π × diameter.

use super::super::{OutOfRange, OverallDiameter, RollingCircumference};

/// How the cords of a tyre lie, which decides how far it rolls for its diameter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Construction {
    /// Cords straight across, under a belt.
    Radial,
    /// Cords crossing each other; also called bias-ply or diagonal.
    CrossPly,
}

impl Construction {
    /// Rolling circumference over overall diameter: 3.05 for radial, 2.99 for cross-ply tyres.
    ///
    /// For motorcycle tyres these factors are not established.
    ///
    /// # Accuracy
    /// See [`Tolerance::COMPUTED`].
    ///
    /// # Source
    /// ETRTO Standards Manual (from memory).
    pub fn rolling_factor(self) -> f64 {
        match self {
            Self::Radial => 3.05,
            Self::CrossPly => 2.99,
        }
    }

    /// The distance per turn in mm of a loaded tyre of that diameter, not rounded.
    pub(super) fn rolling_circumference_mm(self, overall_diameter_mm: f64) -> f64 {
        self.rolling_factor() * overall_diameter_mm
    }
}

/// An overall diameter with the construction that says how far it rolls.
///
/// One that exists rolls between 900 and 13000 mm a turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TyreDiameter {
    diameter: OverallDiameter,
    construction: Construction,
}

impl TyreDiameter {
    /// The tyre of that overall diameter and construction.
    ///
    /// # Errors
    /// When it would roll less than 900 or more than 13000 mm a turn.
    pub fn new(diameter: OverallDiameter, construction: Construction) -> Result<Self, OutOfRange> {
        RollingCircumference::from_mm(construction.rolling_circumference_mm(diameter.mm()))?;
        Ok(Self {
            diameter,
            construction,
        })
    }

    /// The overall diameter, unloaded.
    pub fn diameter(self) -> OverallDiameter {
        self.diameter
    }

    /// Radial or cross-ply.
    pub fn construction(self) -> Construction {
        self.construction
    }

    /// The distance per turn in mm, not rounded.
    pub fn rolling_circumference_mm(self) -> f64 {
        self.construction
            .rolling_circumference_mm(self.diameter.mm())
    }
}

/// How far a real tyre may be from its computed rolling circumference.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tolerance {
    /// How much longer it may be, in per cent.
    pub above_percent: f64,
    /// How much shorter it may be, in per cent.
    pub below_percent: f64,
}

impl Tolerance {
    /// +1.5 and −2.5 %, where the circumference was computed from a size or a diameter.
    ///
    /// # Source
    /// ETRTO Standards Manual (from memory).
    pub const COMPUTED: Self = Self {
        above_percent: 1.5,
        below_percent: 2.5,
    };

    /// The shortest a tyre of that rolling circumference may roll, in mm.
    pub fn shortest_mm(self, rolling_circumference_mm: f64) -> f64 {
        rolling_circumference_mm * (1.0 - self.below_percent / 100.0)
    }

    /// The longest a tyre of that rolling circumference may roll, in mm.
    pub fn longest_mm(self, rolling_circumference_mm: f64) -> f64 {
        rolling_circumference_mm * (1.0 + self.above_percent / 100.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cross_ply_tyre_too_small_to_roll_900_mm_is_refused() {
        let smallest = OverallDiameter::from_mm(300.0).unwrap();
        assert!(TyreDiameter::new(smallest, Construction::Radial).is_ok());
        assert!(TyreDiameter::new(smallest, Construction::CrossPly).is_err());
    }

    #[test]
    fn the_largest_diameter_stays_a_valid_circumference() {
        let largest = OverallDiameter::from_mm(4000.0).unwrap();
        let tyre = TyreDiameter::new(largest, Construction::Radial).unwrap();
        assert!((tyre.rolling_circumference_mm() - 12_200.0).abs() < 1e-9);
    }

    #[test]
    fn the_tolerance_reaches_further_down_than_up() {
        let (shortest, longest) = (
            Tolerance::COMPUTED.shortest_mm(2000.0),
            Tolerance::COMPUTED.longest_mm(2000.0),
        );
        assert!((shortest - 1950.0).abs() < 1e-9, "{shortest}");
        assert!((longest - 2030.0).abs() < 1e-9, "{longest}");
    }
}
