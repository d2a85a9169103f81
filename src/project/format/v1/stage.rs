//! A stage behind the gearbox in format 1. Positions are counted from 1.

use super::super::shared::stages::{ActsOnEntry, PositionEntry};
use super::super::shared::values::NameText;
use super::super::v2::stage::StageV2;
use super::BeyondFormat1;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "Stage", deny_unknown_fields)]
pub(super) struct StageV1 {
    name: NameText,
    /// Counted from 1.
    present: usize,
    positions: Vec<PositionEntry>,
    acts_on: ActsOnEntry,
}

impl From<StageV1> for StageV2 {
    fn from(stage: StageV1) -> Self {
        Self {
            name: stage.name,
            present: stage.present,
            positions: stage.positions,
            acts_on: stage.acts_on,
            shows_others: false,
        }
    }
}

impl TryFrom<StageV2> for StageV1 {
    type Error = BeyondFormat1;

    fn try_from(stage: StageV2) -> Result<Self, BeyondFormat1> {
        if stage.shows_others {
            return Err(BeyondFormat1);
        }
        Ok(Self {
            name: stage.name,
            present: stage.present,
            positions: stage.positions,
            acts_on: stage.acts_on,
        })
    }
}
