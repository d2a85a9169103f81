//! A gear set in format 1. Gears are named by their labels, final drives counted from 1.

use super::super::shared::gears::{GearEntry, ReverseEntry};
use super::super::shared::ratio::RatioEntry;
use super::super::shared::values::{NameText, Rpm};
use super::super::v2::final_drive::FinalDriveV2;
use super::super::v2::set::SetV2;
use super::BeyondFormat1;
use super::stage::StageV1;
use super::tyre::TyreV1;
use crate::gearing::FinalDrive;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "Set", deny_unknown_fields)]
pub(super) struct SetV1 {
    name: NameText,
    visible: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    tyre: Option<TyreV1>,
    shift_rpm: Rpm,
    final_drives: Vec<RatioEntry>,
    gears: Vec<GearEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    reverse: Option<ReverseEntry>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    stages: Vec<StageV1>,
}

impl From<SetV1> for SetV2 {
    fn from(set: SetV1) -> Self {
        Self {
            name: set.name,
            visible: set.visible,
            livery: None,
            tyre: set.tyre.map(Into::into),
            shift_rpm: set.shift_rpm,
            final_drives: set.final_drives.into_iter().map(Into::into).collect(),
            gears: set.gears,
            reverse: set.reverse,
            stages: set.stages.into_iter().map(Into::into).collect(),
            engine: None,
            efficiency: None,
            direct_efficiency: None,
            gear_efficiencies: Vec::new(),
            signal: None,
            rated_torque_nm: None,
            second_final_drive: None,
        }
    }
}

impl TryFrom<SetV2> for SetV1 {
    type Error = BeyondFormat1;

    fn try_from(set: SetV2) -> Result<Self, BeyondFormat1> {
        let SetV2 {
            name,
            visible,
            livery,
            tyre,
            shift_rpm,
            final_drives,
            gears,
            reverse,
            stages,
            engine,
            efficiency,
            direct_efficiency,
            gear_efficiencies,
            signal,
            rated_torque_nm,
            second_final_drive,
        } = set;
        // There the place of a set alone tells its livery.
        let has_more = livery.is_some()
            || engine.is_some()
            || efficiency.is_some()
            || direct_efficiency.is_some()
            || !gear_efficiencies.is_empty()
            || signal.is_some()
            || rated_torque_nm.is_some()
            || second_final_drive.is_some();
        if has_more {
            return Err(BeyondFormat1);
        }
        let ratios = final_drives.into_iter().map(ratio);
        let stages = stages.into_iter().map(StageV1::try_from);
        Ok(Self {
            name,
            visible,
            tyre: tyre.map(TyreV1::try_from).transpose()?,
            shift_rpm,
            final_drives: ratios.collect::<Result<_, _>>()?,
            gears,
            reverse,
            stages: stages.collect::<Result<_, _>>()?,
        })
    }
}

/// A final drive as format 1 says it; of chains it knows nothing.
fn ratio(drive: FinalDriveV2) -> Result<RatioEntry, BeyondFormat1> {
    match drive.0 {
        FinalDrive::Gears(ratio) => Ok(RatioEntry(ratio)),
        FinalDrive::Chain(_) => Err(BeyondFormat1),
    }
}
