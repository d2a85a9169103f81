//! A tyre, whatever is known about it: how far it rolls in one turn.

mod circumference;
mod designation;
mod entry;
mod entry_error;
mod mark;
mod marking;
mod notice;
mod revs;
mod rim;
mod service;
mod size;
mod size_error;

use std::fmt;

pub use circumference::{Construction, Tolerance, TyreDiameter};
pub use entry::parse_tyre;
pub use entry_error::TyreError;
pub use notice::TyreNotice;
pub use revs::{RevsPerKm, RevsPerMile};
pub use rim::Rim;
pub use service::{LoadIndex, ServiceDescription, ServiceError, SpeedSymbol};
pub use size::TyreSize;
pub use size_error::{SizePart, TyreSizeError};

use super::RollingCircumference;

/// What is known about a tyre: its size, or a measured figure.
///
/// Its text is the canonical spelling, which [`parse_tyre`] reads back to an equal value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tyre {
    /// The designation on its wall.
    Size(TyreSize),
    /// Its diameter without load, and how it is built.
    OverallDiameter(TyreDiameter),
    /// The distance that it covers in one turn under load.
    RollingCircumference(RollingCircumference),
    /// Its turns in a kilometre.
    RevsPerKm(RevsPerKm),
    /// Its turns in a mile of 1609.344 m.
    RevsPerMile(RevsPerMile),
}

impl Tyre {
    /// The overall diameter, unloaded, in mm; none where only the rolling was measured.
    pub fn overall_diameter_mm(self) -> Option<f64> {
        match self {
            Self::Size(size) => Some(f64::from(size.overall_diameter_mm())),
            Self::OverallDiameter(tyre) => Some(tyre.diameter().mm()),
            Self::RollingCircumference(_) | Self::RevsPerKm(_) | Self::RevsPerMile(_) => None,
        }
    }

    /// The distance per turn of the loaded tyre in mm, not rounded, from 900 to 13000.
    ///
    /// A measured figure as it is; otherwise 3.05 × overall diameter for radial, 2.99 for
    /// cross-ply tyres.
    ///
    /// # Accuracy
    /// See [`Tyre::tolerance`] and [`Tyre::notices`].
    ///
    /// # Source
    /// ETRTO Standards Manual (from memory).
    ///
    /// # Example
    /// ```
    /// let tyre = layshaft::gearing::parse_tyre("195/65 R 15")?;
    /// assert!((tyre.rolling_circumference_mm() - 3.05 * 635.0).abs() < 1e-9);
    /// # Ok::<(), layshaft::gearing::TyreError>(())
    /// ```
    pub fn rolling_circumference_mm(self) -> f64 {
        match self {
            Self::Size(size) => size.rolling_circumference_mm(),
            Self::OverallDiameter(tyre) => tyre.rolling_circumference_mm(),
            Self::RollingCircumference(circumference) => circumference.mm(),
            Self::RevsPerKm(revs) => revs.rolling_circumference_mm(),
            Self::RevsPerMile(revs) => revs.rolling_circumference_mm(),
        }
    }

    /// The turns of the loaded tyre in one kilometre.
    pub fn revs_per_km(self) -> f64 {
        match self {
            Self::RevsPerKm(revs) => revs.revs_per_km(),
            _ => revs::revs_per_km(self.rolling_circumference_mm()),
        }
    }

    /// The turns of the loaded tyre in one mile of 1609.344 m.
    pub fn revs_per_mile(self) -> f64 {
        match self {
            Self::RevsPerMile(revs) => revs.revs_per_mile(),
            _ => revs::revs_per_mile(self.rolling_circumference_mm()),
        }
    }

    /// How far the real tyre may be from the computed figure; none where it was measured.
    pub fn tolerance(self) -> Option<Tolerance> {
        match self {
            Self::Size(_) | Self::OverallDiameter(_) => Some(Tolerance::COMPUTED),
            Self::RollingCircumference(_) | Self::RevsPerKm(_) | Self::RevsPerMile(_) => None,
        }
    }

    /// What a reader must know before trusting the figures of this tyre.
    pub fn notices(self) -> Vec<TyreNotice> {
        match self {
            Self::Size(size) => size.notices(),
            Self::OverallDiameter(_)
            | Self::RollingCircumference(_)
            | Self::RevsPerKm(_)
            | Self::RevsPerMile(_) => Vec::new(),
        }
    }
}

impl fmt::Display for Tyre {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Size(size) => write!(f, "{size}"),
            Self::OverallDiameter(tyre) => {
                write!(f, "diameter {} mm", tyre.diameter().mm())?;
                match tyre.construction() {
                    Construction::Radial => Ok(()),
                    Construction::CrossPly => f.write_str(" cross-ply"),
                }
            }
            Self::RollingCircumference(circumference) => {
                write!(f, "circumference {} mm", circumference.mm())
            }
            Self::RevsPerKm(revs) => write!(f, "{} revs per km", revs.revs_per_km()),
            Self::RevsPerMile(revs) => write!(f, "{} revs per mile", revs.revs_per_mile()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tyre(text: &str) -> Tyre {
        parse_tyre(text).unwrap_or_else(|error| panic!("{text}: {error}"))
    }

    #[test]
    fn only_what_was_computed_has_a_tolerance() {
        for text in ["195/65 R 15", "diameter 632 mm"] {
            assert_eq!(tyre(text).tolerance(), Some(Tolerance::COMPUTED), "{text}");
        }
        for text in [
            "circumference 1935 mm",
            "520 revs per km",
            "682 revs per mile",
        ] {
            assert_eq!(tyre(text).tolerance(), None, "{text}");
        }
    }

    #[test]
    fn a_measured_tyre_has_no_diameter_and_nothing_to_warn_of() {
        for text in [
            "circumference 1935 mm",
            "520 revs per km",
            "682 revs per mile",
        ] {
            assert_eq!(tyre(text).overall_diameter_mm(), None, "{text}");
            assert_eq!(tyre(text).notices(), [], "{text}");
        }
    }

    #[test]
    fn the_same_tyre_named_four_ways_rolls_the_same() {
        for text in [
            "circumference 2000 mm",
            "500 revs per km",
            "804.672 revs per mile",
        ] {
            let tyre = tyre(text);
            assert!(
                (tyre.rolling_circumference_mm() - 2000.0).abs() < 1e-9,
                "{text}"
            );
            assert!((tyre.revs_per_km() - 500.0).abs() < 1e-9, "{text}");
            assert!((tyre.revs_per_mile() - 804.672).abs() < 1e-9, "{text}");
        }
        let by_diameter = tyre("diameter 655.737704918 mm");
        assert!((by_diameter.rolling_circumference_mm() - 2000.0).abs() < 1e-6);
    }

    #[test]
    fn a_cross_ply_diameter_rolls_less_far() {
        let (radial, cross_ply) = (tyre("diameter 600 mm"), tyre("diameter 600 mm cross-ply"));
        assert!((radial.rolling_circumference_mm() - 1830.0).abs() < 1e-9);
        assert!((cross_ply.rolling_circumference_mm() - 1794.0).abs() < 1e-9);
    }
}
