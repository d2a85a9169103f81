//! The units of a project and the limits of its engine as they stand in a file.

use super::values::Rpm;
use crate::gearing::EngineLimits;
use crate::units::SpeedUnit;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "Units")]
pub(crate) enum UnitsEntry {
    Kmh,
    Mph,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Engine", deny_unknown_fields)]
#[expect(
    clippy::struct_field_names,
    reason = "the keys of the file carry their unit"
)]
pub(crate) struct EngineEntry {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    idle_rpm: Option<Rpm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    lowest_useful_rpm: Option<Rpm>,
    redline_rpm: Rpm,
}

impl From<EngineEntry> for EngineLimits {
    fn from(engine: EngineEntry) -> Self {
        Self {
            idle: engine.idle_rpm.map(|n| n.0),
            lowest_useful: engine.lowest_useful_rpm.map(|n| n.0),
            redline: engine.redline_rpm.0,
        }
    }
}

impl From<EngineLimits> for EngineEntry {
    fn from(engine: EngineLimits) -> Self {
        Self {
            idle_rpm: engine.idle.map(Rpm),
            lowest_useful_rpm: engine.lowest_useful.map(Rpm),
            redline_rpm: Rpm(engine.redline),
        }
    }
}

impl From<UnitsEntry> for SpeedUnit {
    fn from(units: UnitsEntry) -> Self {
        match units {
            UnitsEntry::Kmh => Self::Kmh,
            UnitsEntry::Mph => Self::Mph,
        }
    }
}

impl From<SpeedUnit> for UnitsEntry {
    fn from(units: SpeedUnit) -> Self {
        match units {
            SpeedUnit::Kmh => Self::Kmh,
            SpeedUnit::Mph => Self::Mph,
        }
    }
}
