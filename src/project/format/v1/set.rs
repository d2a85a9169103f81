//! A gear set in format 1. Gears are named by their labels, final drives counted from 1.

use super::super::outline::Step::{Item, Key};
use super::misfit::Misfit;
use super::tyre::TyreV1;
use super::values::{FactorNumber, LabelText, NameText, Rpm};
use crate::gearing::{
    ActsOn, Factor, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Position, REVERSE_LABEL,
    Ratio, RatioError, Reverse, Stage, ToothPair,
};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "Set", deny_unknown_fields)]
pub(super) struct SetV1 {
    name: NameText,
    pub(super) visible: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    tyre: Option<TyreV1>,
    shift_rpm: Rpm,
    final_drives: Vec<RatioV1>,
    gears: Vec<GearV1>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    reverse: Option<ReverseV1>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    stages: Vec<StageV1>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Gear", deny_unknown_fields)]
struct GearV1 {
    label: LabelText,
    ratio: RatioV1,
    #[serde(default = "first", skip_serializing_if = "is_first")]
    final_drive: usize,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    crawler: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    shift_rpm: Option<Rpm>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Reverse", deny_unknown_fields)]
struct ReverseV1 {
    ratio: RatioV1,
    #[serde(default = "first", skip_serializing_if = "is_first")]
    final_drive: usize,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Stage", deny_unknown_fields)]
struct StageV1 {
    name: NameText,
    /// Counted from 1.
    present: usize,
    positions: Vec<PositionV1>,
    acts_on: ActsOnV1,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Position", deny_unknown_fields)]
struct PositionV1 {
    name: NameText,
    ratio: RatioV1,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "ActsOn")]
enum ActsOnV1 {
    EveryGear,
    Gears(Vec<LabelText>),
}

/// A ratio is checked where it stands, so that an error points at it.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "RatioParts", into = "RatioParts")]
struct RatioV1(Ratio);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Ratio", deny_unknown_fields)]
enum RatioParts {
    Number(FactorNumber),
    Teeth { driven: u16, driving: u16 },
    Product(Vec<FactorV1>),
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Factor", deny_unknown_fields)]
enum FactorV1 {
    Number(FactorNumber),
    Teeth { driven: u16, driving: u16 },
}

fn first() -> usize {
    1
}

#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "the signature that serde asks for"
)]
fn is_first(number: &usize) -> bool {
    *number == 1
}

impl TryFrom<RatioParts> for RatioV1 {
    type Error = RatioError;

    fn try_from(parts: RatioParts) -> Result<Self, RatioError> {
        let factors = match parts {
            RatioParts::Number(number) => vec![FactorV1::Number(number)],
            RatioParts::Teeth { driven, driving } => vec![FactorV1::Teeth { driven, driving }],
            RatioParts::Product(factors) => factors,
        };
        let factors: Result<Vec<Factor>, RatioError> = factors
            .into_iter()
            .map(|factor| match factor {
                FactorV1::Number(number) => Ok(Factor::Number(number.0)),
                FactorV1::Teeth { driven, driving } => {
                    ToothPair::new(driven, driving).map(Factor::Teeth)
                }
            })
            .collect();
        Ratio::from_factors(factors?).map(Self)
    }
}

impl From<RatioV1> for RatioParts {
    fn from(ratio: RatioV1) -> Self {
        match *ratio.0.factors() {
            [Factor::Number(number)] => Self::Number(FactorNumber(number)),
            [Factor::Teeth(pair)] => Self::Teeth {
                driven: pair.driven(),
                driving: pair.driving(),
            },
            ref factors => Self::Product(factors.iter().map(FactorV1::from).collect()),
        }
    }
}

impl From<&Factor> for FactorV1 {
    fn from(factor: &Factor) -> Self {
        match factor {
            Factor::Number(number) => Self::Number(FactorNumber(*number)),
            Factor::Teeth(pair) => Self::Teeth {
                driven: pair.driven(),
                driving: pair.driving(),
            },
        }
    }
}

impl SetV1 {
    pub(super) fn into_gear_set(self) -> Result<GearSet, Misfit> {
        let named = NamedGears {
            labels: self.gears.iter().map(|g| g.label.0.clone()).collect(),
            has_reverse: self.reverse.is_some(),
        };
        let gears: Result<Vec<Gear>, Misfit> = (0..)
            .zip((1..).zip(self.gears))
            .map(|(place, (id, gear))| {
                let told = |misfit: Misfit| misfit.within([Key("gears"), Item(place)]);
                gear.into_gear(GearId(id)).map_err(told)
            })
            .collect();
        let stages: Result<Vec<Stage>, Misfit> = (0..)
            .zip(self.stages)
            .map(|(place, stage)| {
                let told = |misfit: Misfit| misfit.within([Key("stages"), Item(place)]);
                stage.into_stage(&named).map_err(told)
            })
            .collect();
        let spec = GearSetSpec {
            name: self.name.0,
            gears: gears?,
            reverse: self.reverse.map(ReverseV1::into_reverse).transpose()?,
            final_drives: self.final_drives.into_iter().map(|r| r.0).collect(),
            stages: stages?,
            tyre: self.tyre.map(Into::into),
            shift: self.shift_rpm.0,
        };
        GearSet::try_from(spec.clone()).map_err(|error| Misfit::of_set(&error, &spec))
    }
}

/// The number behind a key, counted from 1 in the file, counted from 0.
fn from_one(number: usize, key: &'static str, what: &str) -> Result<usize, Misfit> {
    let told = || Misfit::new([Key(key)], &format!("{what} are counted from 1"));
    number.checked_sub(1).ok_or_else(told)
}

impl GearV1 {
    fn into_gear(self, id: GearId) -> Result<Gear, Misfit> {
        Ok(Gear {
            id,
            label: self.label.0,
            ratio: self.ratio.0,
            final_drive: from_one(self.final_drive, "final_drive", "final drives")?,
            role: if self.crawler {
                GearRole::Crawler
            } else {
                GearRole::Shifted
            },
            shift: self.shift_rpm.map(|n| n.0),
        })
    }
}

impl ReverseV1 {
    fn into_reverse(self) -> Result<Reverse, Misfit> {
        let final_drive = from_one(self.final_drive, "final_drive", "final drives");
        Ok(Reverse {
            ratio: self.ratio.0,
            final_drive: final_drive.map_err(|misfit| misfit.within([Key("reverse")]))?,
        })
    }
}

/// The gears that a stage can name.
struct NamedGears {
    /// Of the forward gears, in typed order, which their identities follow from 1.
    labels: Vec<Label>,
    has_reverse: bool,
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

impl StageV1 {
    fn into_stage(self, named: &NamedGears) -> Result<Stage, Misfit> {
        let id = |(place, name): (usize, &LabelText)| {
            named.id(&name.0).ok_or_else(|| {
                let reason = format!("a stage acts on gear \"{}\", which is not there", name.0);
                // The names are a list within the variant.
                Misfit::new([Key("acts_on"), Item(0), Item(place)], &reason)
            })
        };
        let acts_on = match self.acts_on {
            ActsOnV1::EveryGear => ActsOn::EveryGear,
            ActsOnV1::Gears(names) => {
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

impl From<&crate::project::document::Candidate> for SetV1 {
    fn from(candidate: &crate::project::document::Candidate) -> Self {
        let set = &candidate.set;
        let reverse = set.reverse.as_ref().map(|r| ReverseV1 {
            ratio: RatioV1(r.ratio.clone()),
            final_drive: r.final_drive + 1,
        });
        Self {
            name: NameText(set.name.clone()),
            visible: candidate.visible,
            tyre: set.tyre.as_ref().map(TyreV1::from),
            shift_rpm: Rpm(set.shift),
            final_drives: set.final_drives.iter().cloned().map(RatioV1).collect(),
            gears: set.gears.iter().map(GearV1::from).collect(),
            reverse,
            stages: set.stages.iter().map(|s| stage(s, set)).collect(),
        }
    }
}

impl From<&Gear> for GearV1 {
    fn from(gear: &Gear) -> Self {
        Self {
            label: LabelText(gear.label.clone()),
            ratio: RatioV1(gear.ratio.clone()),
            final_drive: gear.final_drive + 1,
            crawler: gear.role == GearRole::Crawler,
            shift_rpm: gear.shift.map(Rpm),
        }
    }
}

fn stage(stage: &Stage, set: &GearSet) -> StageV1 {
    let positions = stage.positions.iter().map(|p| PositionV1 {
        name: NameText(p.name.clone()),
        ratio: RatioV1(p.ratio.clone()),
    });
    StageV1 {
        name: NameText(stage.name.clone()),
        present: stage.present + 1,
        positions: positions.collect(),
        acts_on: match &stage.acts_on {
            ActsOn::EveryGear => ActsOnV1::EveryGear,
            ActsOn::Only(ids) => ActsOnV1::Gears(labels_of(set, ids)),
        },
    }
}

fn labels_of(set: &GearSet, ids: &std::collections::BTreeSet<GearId>) -> Vec<LabelText> {
    let forward = set.gears.iter().filter(|g| ids.contains(&g.id));
    let mut labels: Vec<LabelText> = forward.map(|g| LabelText(g.label.clone())).collect();
    if ids.contains(&GearId::REVERSE) {
        labels.extend(Label::new(REVERSE_LABEL).map(LabelText));
    }
    labels
}
