//! The parts of a stage behind the gearbox as they stand in a file. Gears are named by their labels.

use super::super::outline::Step::{Item, Key};
use super::misfit::Misfit;
use super::ratio::RatioEntry;
use super::values::{LabelText, NameText};
use crate::gearing::{ActsOn, GearId, GearSet, Label, Position, REVERSE_LABEL};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

#[derive(Serialize, Deserialize)]
#[serde(rename = "Position", deny_unknown_fields)]
pub(crate) struct PositionEntry {
    name: NameText,
    ratio: RatioEntry,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "ActsOn")]
pub(crate) enum ActsOnEntry {
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

impl From<PositionEntry> for Position {
    fn from(position: PositionEntry) -> Self {
        Self {
            name: position.name.0,
            ratio: position.ratio.0,
        }
    }
}

impl From<&Position> for PositionEntry {
    fn from(position: &Position) -> Self {
        Self {
            name: NameText(position.name.clone()),
            ratio: RatioEntry(position.ratio.clone()),
        }
    }
}

impl ActsOnEntry {
    pub(crate) fn into_acts_on(self, named: &NamedGears) -> Result<ActsOn, Misfit> {
        let id = |(place, name): (usize, &LabelText)| {
            named.id(&name.0).ok_or_else(|| {
                let reason = format!("a stage acts on gear \"{}\", which is not there", name.0);
                // The names are a list within the variant.
                Misfit::new([Key("acts_on"), Item(0), Item(place)], &reason)
            })
        };
        Ok(match self {
            Self::EveryGear => ActsOn::EveryGear,
            Self::Gears(names) => {
                ActsOn::Only((0..).zip(&names).map(id).collect::<Result<_, _>>()?)
            }
        })
    }

    /// The gears of that set as they stand in a file.
    pub(crate) fn of(acts_on: &ActsOn, set: &GearSet) -> Self {
        match acts_on {
            ActsOn::EveryGear => Self::EveryGear,
            ActsOn::Only(ids) => Self::Gears(labels_of(set, ids)),
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
