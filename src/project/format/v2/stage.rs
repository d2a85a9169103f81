//! A stage behind the gearbox in format 2. Positions are counted from 1.

use super::super::shared::gears::from_one;
use super::super::shared::misfit::Misfit;
use super::super::shared::stages::{ActsOnEntry, NamedGears, PositionEntry};
use super::super::shared::values::NameText;
use crate::gearing::{GearSet, Position, Stage};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "Stage", deny_unknown_fields)]
pub(crate) struct StageV2 {
    pub(crate) name: NameText,
    /// Counted from 1.
    pub(crate) present: usize,
    pub(crate) positions: Vec<PositionEntry>,
    pub(crate) acts_on: ActsOnEntry,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub(crate) shows_others: bool,
}

impl StageV2 {
    pub(super) fn into_stage(self, named: &NamedGears) -> Result<Stage, Misfit> {
        let acts_on = self.acts_on.into_acts_on(named)?;
        Ok(Stage {
            name: self.name.0,
            present: from_one(self.present, "present", "positions")?,
            positions: self.positions.into_iter().map(Position::from).collect(),
            acts_on,
            shows_others: self.shows_others,
        })
    }

    /// A stage of that set as it stands in a file.
    pub(super) fn of(stage: &Stage, set: &GearSet) -> Self {
        Self {
            name: NameText(stage.name.clone()),
            present: stage.present + 1,
            positions: stage.positions.iter().map(PositionEntry::from).collect(),
            acts_on: ActsOnEntry::of(&stage.acts_on, set),
            shows_others: stage.shows_others,
        }
    }
}
