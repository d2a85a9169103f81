//! A stage behind the gearbox as it stands in a file. Gears are named by their labels, positions
//! counted from 1.

use super::super::outline::Step::{Item, Key};
use super::gears::from_one;
use super::misfit::Misfit;
use super::ratio::RatioEntry;
use super::values::{LabelText, NameText};
use crate::gearing::{ActsOn, GearId, GearSet, Label, Position, REVERSE_LABEL, Stage};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

#[derive(Serialize, Deserialize)]
#[serde(rename = "Stage", deny_unknown_fields)]
pub(crate) struct StageEntry {
    name: NameText,
    /// Counted from 1.
    present: usize,
    positions: Vec<PositionEntry>,
    acts_on: ActsOnEntry,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Position", deny_unknown_fields)]
struct PositionEntry {
    name: NameText,
    ratio: RatioEntry,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "ActsOn")]
enum ActsOnEntry {
    EveryGear,
    Gears(Vec<LabelText>),
}

/// The gears that a stage can name.
pub(crate) struct NamedGears {
    /// Of the forward gears, in typed order, which their identities follow from 1.
    pub(crate) labels: Vec<Label>,
    pub(crate) has_reverse: bool,
}

impl NamedGears {
    fn id(&self, name: &Label) -> Option<GearId> {
        let mut forward = (1..).zip(&self.labels);
        let forward = forward.find(|(_, label)| *label == name);
        let reverse = self.has_reverse && name.as_str() == REVERSE_LABEL;
        forward
            .map(|(id, _)| GearId(id))
            .or_else(|| reverse.then_some(GearId::REVERSE))
    }
}

impl StageEntry {
    pub(crate) fn into_stage(self, named: &NamedGears) -> Result<Stage, Misfit> {
        let id = |(place, name): (usize, &LabelText)| {
            named.id(&name.0).ok_or_else(|| {
                let reason = format!("a stage acts on gear \"{}\", which is not there", name.0);
                // The names are a list within the variant.
                Misfit::new([Key("acts_on"), Item(0), Item(place)], &reason)
            })
        };
        let acts_on = match self.acts_on {
            ActsOnEntry::EveryGear => ActsOn::EveryGear,
            ActsOnEntry::Gears(names) => {
                ActsOn::Only((0..).zip(&names).map(id).collect::<Result<_, _>>()?)
            }
        };
        Ok(Stage {
            name: self.name.0,
            present: from_one(self.present, "present", "positions")?,
            positions: self
                .positions
                .into_iter()
                .map(|p| Position {
                    name: p.name.0,
                    ratio: p.ratio.0,
                })
                .collect(),
            acts_on,
        })
    }
}

impl StageEntry {
    /// A stage of that set as it stands in a file.
    pub(crate) fn of(stage: &Stage, set: &GearSet) -> Self {
        let positions = stage.positions.iter().map(|p| PositionEntry {
            name: NameText(p.name.clone()),
            ratio: RatioEntry(p.ratio.clone()),
        });
        Self {
            name: NameText(stage.name.clone()),
            present: stage.present + 1,
            positions: positions.collect(),
            acts_on: match &stage.acts_on {
                ActsOn::EveryGear => ActsOnEntry::EveryGear,
                ActsOn::Only(ids) => ActsOnEntry::Gears(labels_of(set, ids)),
            },
        }
    }
}

fn labels_of(set: &GearSet, ids: &BTreeSet<GearId>) -> Vec<LabelText> {
    let forward = set.gears.iter().filter(|g| ids.contains(&g.id));
    let mut labels: Vec<LabelText> = forward.map(|g| LabelText(g.label.clone())).collect();
    if ids.contains(&GearId::REVERSE) {
        labels.extend(Label::new(REVERSE_LABEL).map(LabelText));
    }
    labels
}
