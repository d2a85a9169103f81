//! A tyre in format 2: that of format 1, or a size with its service description.

use super::super::shared::tyre::{CircumferenceMm, DiameterEntry, PerKm, PerMile, SizeText};
use crate::gearing::{LoadIndex, ServiceDescription, ServiceError, SpeedSymbol, Tyre, TyreSize};
use serde::{Deserialize, Serialize};

/// The unit of every number stands in the name of its variant or key.
#[derive(Serialize, Deserialize)]
#[serde(rename = "Tyre", deny_unknown_fields)]
pub(crate) enum TyreV2 {
    /// The designation on the wall.
    Size(SizeText),
    /// The same with the load index that stands behind it.
    Rated(RatedSize),
    OverallDiameter(DiameterEntry),
    RollingCircumferenceMm(CircumferenceMm),
    RevsPerKm(PerKm),
    RevsPerMile(PerMile),
}

/// A size and its service description, which are put together where they stand.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "RatedParts", into = "RatedParts")]
pub(crate) struct RatedSize {
    size: TyreSize,
    service: ServiceDescription,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Rated", deny_unknown_fields)]
struct RatedParts {
    size: SizeText,
    load_index: LoadIndexNumber,
    /// That of each of two tyres side by side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    dual_load_index: Option<LoadIndexNumber>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    speed_symbol: Option<SymbolText>,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "u16", into = "u16")]
struct LoadIndexNumber(LoadIndex);

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
struct SymbolText(SpeedSymbol);

/// Why a size and its service description cannot be put together.
#[derive(Debug, thiserror::Error)]
enum RatedError {
    #[error("the size says {0} already, so leave that out of its text")]
    Twice(ServiceDescription),
    #[error(transparent)]
    Service(#[from] ServiceError),
}

impl TryFrom<u16> for LoadIndexNumber {
    type Error = ServiceError;

    fn try_from(number: u16) -> Result<Self, ServiceError> {
        LoadIndex::new(number).map(Self)
    }
}

impl From<LoadIndexNumber> for u16 {
    fn from(index: LoadIndexNumber) -> Self {
        index.0.number()
    }
}

impl TryFrom<String> for SymbolText {
    type Error = ServiceError;

    fn try_from(text: String) -> Result<Self, ServiceError> {
        text.parse().map(Self)
    }
}

impl From<SymbolText> for String {
    fn from(symbol: SymbolText) -> Self {
        symbol.0.as_str().to_owned()
    }
}

impl TryFrom<RatedParts> for RatedSize {
    type Error = RatedError;

    fn try_from(parts: RatedParts) -> Result<Self, RatedError> {
        let size = parts.size.0;
        if let Some(service) = size.service_description() {
            return Err(RatedError::Twice(service));
        }
        let service = ServiceDescription::new(
            parts.load_index.0,
            parts.dual_load_index.map(|index| index.0),
            parts.speed_symbol.map(|symbol| symbol.0),
        )?;
        Ok(Self { size, service })
    }
}

impl From<RatedSize> for RatedParts {
    fn from(RatedSize { size, service }: RatedSize) -> Self {
        Self {
            size: SizeText(size),
            load_index: LoadIndexNumber(service.load_index()),
            dual_load_index: service.dual_load_index().map(LoadIndexNumber),
            speed_symbol: service.speed_symbol().map(SymbolText),
        }
    }
}

impl From<TyreSize> for TyreV2 {
    fn from(size: TyreSize) -> Self {
        match size.service_description() {
            None => Self::Size(SizeText(size)),
            Some(service) => Self::Rated(RatedSize {
                size: size.with_service_description(None),
                service,
            }),
        }
    }
}

impl From<TyreV2> for Tyre {
    fn from(tyre: TyreV2) -> Self {
        match tyre {
            TyreV2::Size(size) => Self::Size(size.0),
            TyreV2::Rated(RatedSize { size, service }) => {
                Self::Size(size.with_service_description(Some(service)))
            }
            TyreV2::OverallDiameter(diameter) => Self::OverallDiameter(diameter.0),
            TyreV2::RollingCircumferenceMm(length) => Self::RollingCircumference(length.0),
            TyreV2::RevsPerKm(revs) => Self::RevsPerKm(revs.0),
            TyreV2::RevsPerMile(revs) => Self::RevsPerMile(revs.0),
        }
    }
}

impl From<&Tyre> for TyreV2 {
    fn from(tyre: &Tyre) -> Self {
        match *tyre {
            Tyre::Size(size) => size.into(),
            Tyre::OverallDiameter(diameter) => Self::OverallDiameter(DiameterEntry(diameter)),
            Tyre::RollingCircumference(length) => {
                Self::RollingCircumferenceMm(CircumferenceMm(length))
            }
            Tyre::RevsPerKm(revs) => Self::RevsPerKm(PerKm(revs)),
            Tyre::RevsPerMile(revs) => Self::RevsPerMile(PerMile(revs)),
        }
    }
}
