//! A tyre in format 1.

use super::super::shared::tyre::{CircumferenceMm, DiameterEntry, PerKm, PerMile, SizeText};
use super::super::v2::tyre::TyreV2;
use super::BeyondFormat1;
use serde::{Deserialize, Serialize};

/// The unit of every number stands in the name of its variant or key.
#[derive(Serialize, Deserialize)]
#[serde(rename = "Tyre", deny_unknown_fields)]
pub(super) enum TyreV1 {
    /// The designation on the wall.
    Size(SizeText),
    OverallDiameter(DiameterEntry),
    RollingCircumferenceMm(CircumferenceMm),
    RevsPerKm(PerKm),
    RevsPerMile(PerMile),
}

impl From<TyreV1> for TyreV2 {
    fn from(tyre: TyreV1) -> Self {
        match tyre {
            // By hand a service description may stand in it; it was never written there.
            TyreV1::Size(size) => size.0.into(),
            TyreV1::OverallDiameter(diameter) => Self::OverallDiameter(diameter),
            TyreV1::RollingCircumferenceMm(length) => Self::RollingCircumferenceMm(length),
            TyreV1::RevsPerKm(revs) => Self::RevsPerKm(revs),
            TyreV1::RevsPerMile(revs) => Self::RevsPerMile(revs),
        }
    }
}

impl TryFrom<TyreV2> for TyreV1 {
    type Error = BeyondFormat1;

    fn try_from(tyre: TyreV2) -> Result<Self, BeyondFormat1> {
        match tyre {
            TyreV2::Size(size) if size.0 == size.0.without_service() => Ok(Self::Size(size)),
            TyreV2::Size(_) | TyreV2::Rated(_) => Err(BeyondFormat1),
            TyreV2::OverallDiameter(diameter) => Ok(Self::OverallDiameter(diameter)),
            TyreV2::RollingCircumferenceMm(length) => Ok(Self::RollingCircumferenceMm(length)),
            TyreV2::RevsPerKm(revs) => Ok(Self::RevsPerKm(revs)),
            TyreV2::RevsPerMile(revs) => Ok(Self::RevsPerMile(revs)),
        }
    }
}
