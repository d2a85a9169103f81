//! A tyre in format 1.

use super::super::shared::tyre::{CircumferenceMm, DiameterEntry, PerKm, PerMile, SizeText};
use crate::gearing::Tyre;
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
            Tyre::OverallDiameter(diameter) => Self::OverallDiameter(DiameterEntry(diameter)),
            Tyre::RollingCircumference(length) => {
                Self::RollingCircumferenceMm(CircumferenceMm(length))
            }
            Tyre::RevsPerKm(revs) => Self::RevsPerKm(PerKm(revs)),
            Tyre::RevsPerMile(revs) => Self::RevsPerMile(PerMile(revs)),
        }
    }
}
