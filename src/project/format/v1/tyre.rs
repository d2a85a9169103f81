//! A tyre in format 1.

use super::values::{PlainNumber, WrittenNumber, WrittenOutOfRange, file_number};
use crate::gearing::{
    Construction, OutOfRange, OverallDiameter, RevsPerKm, RevsPerMile, RollingCircumference, Tyre,
    TyreDiameter, TyreSize, TyreSizeError,
};
use serde::{Deserialize, Serialize};

/// The unit of every number stands in the name of its variant or key.
#[derive(Serialize, Deserialize)]
#[serde(rename = "Tyre", deny_unknown_fields)]
pub(super) enum TyreV1 {
    /// The designation on the wall.
    Size(SizeText),
    OverallDiameter(DiameterV1),
    RollingCircumferenceMm(CircumferenceMm),
    RevsPerKm(PerKm),
    RevsPerMile(PerMile),
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Construction")]
enum ConstructionV1 {
    Radial,
    CrossPly,
}

/// Diameter and construction are checked together: the circumference must exist as well.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "DiameterParts", into = "DiameterParts")]
pub(super) struct DiameterV1(TyreDiameter);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Diameter", deny_unknown_fields)]
struct DiameterParts {
    overall_diameter_mm: DiameterMm,
    construction: ConstructionV1,
}

file_number!(DiameterMm, OverallDiameter, from_mm, mm);
file_number!(CircumferenceMm, RollingCircumference, from_mm, mm);
file_number!(PerKm, RevsPerKm, new, revs_per_km);
file_number!(PerMile, RevsPerMile, new, revs_per_mile);

#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub(super) struct SizeText(TyreSize);

impl TryFrom<String> for SizeText {
    type Error = TyreSizeError;

    fn try_from(text: String) -> Result<Self, TyreSizeError> {
        text.parse().map(Self)
    }
}

impl From<SizeText> for String {
    fn from(size: SizeText) -> Self {
        size.0.to_string()
    }
}

impl TryFrom<DiameterParts> for DiameterV1 {
    type Error = OutOfRange;

    fn try_from(parts: DiameterParts) -> Result<Self, OutOfRange> {
        let construction = match parts.construction {
            ConstructionV1::Radial => Construction::Radial,
            ConstructionV1::CrossPly => Construction::CrossPly,
        };
        TyreDiameter::new(parts.overall_diameter_mm.0, construction).map(Self)
    }
}

impl From<DiameterV1> for DiameterParts {
    fn from(diameter: DiameterV1) -> Self {
        Self {
            overall_diameter_mm: DiameterMm(diameter.0.diameter()),
            construction: match diameter.0.construction() {
                Construction::Radial => ConstructionV1::Radial,
                Construction::CrossPly => ConstructionV1::CrossPly,
            },
        }
    }
}

impl From<TyreV1> for Tyre {
    fn from(tyre: TyreV1) -> Self {
        match tyre {
            TyreV1::Size(size) => Self::Size(size.0),
            TyreV1::OverallDiameter(diameter) => Self::OverallDiameter(diameter.0),
            TyreV1::RollingCircumferenceMm(length) => Self::RollingCircumference(length.0),
            TyreV1::RevsPerKm(revs) => Self::RevsPerKm(revs.0),
            TyreV1::RevsPerMile(revs) => Self::RevsPerMile(revs.0),
        }
    }
}

impl From<&Tyre> for TyreV1 {
    fn from(tyre: &Tyre) -> Self {
        match *tyre {
            Tyre::Size(size) => Self::Size(SizeText(size)),
            Tyre::OverallDiameter(diameter) => Self::OverallDiameter(DiameterV1(diameter)),
            Tyre::RollingCircumference(length) => {
                Self::RollingCircumferenceMm(CircumferenceMm(length))
            }
            Tyre::RevsPerKm(revs) => Self::RevsPerKm(PerKm(revs)),
            Tyre::RevsPerMile(revs) => Self::RevsPerMile(PerMile(revs)),
        }
    }
}
