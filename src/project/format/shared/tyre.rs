//! What is known about a tyre as it stands in a file: the unit of every number stands in a name.

use super::values::{PlainNumber, WrittenNumber, WrittenOutOfRange, file_number};
use crate::gearing::{
    Construction, OutOfRange, OverallDiameter, RevsPerKm, RevsPerMile, RollingCircumference,
    TyreDiameter, TyreSize, TyreSizeError,
};
use serde::{Deserialize, Serialize};

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Construction")]
enum ConstructionEntry {
    Radial,
    CrossPly,
}

/// Diameter and construction are checked together: the circumference must exist as well.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "DiameterParts", into = "DiameterParts")]
pub(crate) struct DiameterEntry(pub(crate) TyreDiameter);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Diameter", deny_unknown_fields)]
struct DiameterParts {
    overall_diameter_mm: DiameterMm,
    construction: ConstructionEntry,
}

file_number!(DiameterMm, OverallDiameter, from_mm, mm);
file_number!(CircumferenceMm, RollingCircumference, from_mm, mm);
file_number!(PerKm, RevsPerKm, new, revs_per_km);
file_number!(PerMile, RevsPerMile, new, revs_per_mile);

#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub(crate) struct SizeText(pub(crate) TyreSize);

impl TryFrom<String> for SizeText {
    type Error = TyreSizeError;

    /// The size; a service description that is none was passed over until it had a meaning, so a
    /// file that holds one still opens, without it.
    fn try_from(text: String) -> Result<Self, TyreSizeError> {
        let read = text.parse();
        match (read, text.trim().rsplit_once(' ')) {
            (Err(TyreSizeError::Service(_)), Some((size, _))) => size.parse().map(Self),
            (read, _) => read.map(Self),
        }
    }
}

impl From<SizeText> for String {
    fn from(size: SizeText) -> Self {
        size.0.to_string()
    }
}

impl TryFrom<DiameterParts> for DiameterEntry {
    type Error = OutOfRange;

    fn try_from(parts: DiameterParts) -> Result<Self, OutOfRange> {
        let construction = match parts.construction {
            ConstructionEntry::Radial => Construction::Radial,
            ConstructionEntry::CrossPly => Construction::CrossPly,
        };
        TyreDiameter::new(parts.overall_diameter_mm.0, construction).map(Self)
    }
}

impl From<DiameterEntry> for DiameterParts {
    fn from(diameter: DiameterEntry) -> Self {
        Self {
            overall_diameter_mm: DiameterMm(diameter.0.diameter()),
            construction: match diameter.0.construction() {
                Construction::Radial => ConstructionEntry::Radial,
                Construction::CrossPly => ConstructionEntry::CrossPly,
            },
        }
    }
}
