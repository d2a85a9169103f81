//! A gear set in format 2. Gears are named by their labels, final drives counted from 1.

use super::super::outline::Step::{Item, Key};
use super::super::shared::gears::{GearEntry, ReverseEntry};
use super::super::shared::misfit::Misfit;
use super::super::shared::ratio::RatioEntry;
use super::super::shared::stages::NamedGears;
use super::super::shared::values::{NameText, Rpm};
use super::engine::EngineDataV2;
use super::final_drive::FinalDriveV2;
use super::limits::RatedNm;
use super::livery::LiveryNumber;
use super::speedometer::SignalV2;
use super::stage::StageV2;
use super::technical::{self, EfficiencyShare, GearEfficiencyV2};
use super::tyre::TyreV2;
use crate::gearing::{Gear, GearId, GearSet, GearSetSpec, Stage};
use crate::project::document::Candidate;
use crate::project::livery::Livery;
use crate::project::technical::{SetChecks, SetTechnical};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "Set", deny_unknown_fields)]
pub(crate) struct SetV2 {
    pub(crate) name: NameText,
    pub(crate) visible: bool,
    /// Counted from 1; absent where it is that of the set's place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) livery: Option<LiveryNumber>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) tyre: Option<TyreV2>,
    pub(crate) shift_rpm: Rpm,
    pub(crate) final_drives: Vec<FinalDriveV2>,
    pub(crate) gears: Vec<GearEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) reverse: Option<ReverseEntry>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(crate) stages: Vec<StageV2>,
    /// Its own engine, where it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) engine: Option<EngineDataV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) efficiency: Option<EfficiencyShare>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) direct_efficiency: Option<EfficiencyShare>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(crate) gear_efficiencies: Vec<GearEfficiencyV2>,
    /// What of the speedometer's signal is its own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) signal: Option<SignalV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) rated_torque_nm: Option<RatedNm>,
    /// The final drive of the second axle, where it is its own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) second_final_drive: Option<RatioEntry>,
}

impl SetV2 {
    /// The set, and what is known of it beyond its gears.
    pub(super) fn into_parts(mut self) -> Result<(GearSet, SetTechnical), Misfit> {
        let engine = self.engine.take().map(Into::into);
        let checks = SetChecks {
            signal: self.signal.take().map(Into::into).unwrap_or_default(),
            rated_torque: self.rated_torque_nm.take().map(|n| n.0),
            second_final_drive: self.second_final_drive.take().map(|entry| entry.0),
        };
        let gears = std::mem::take(&mut self.gear_efficiencies);
        let efficiencies = (self.efficiency, self.direct_efficiency, gears);
        let set = self.into_gear_set()?;
        let technical = SetTechnical {
            engine,
            efficiencies: technical::from_file(efficiencies, &set)?,
            checks,
        };
        Ok((set, technical))
    }

    fn into_gear_set(self) -> Result<GearSet, Misfit> {
        let named = NamedGears {
            labels: self.gears.iter().map(|g| g.label().clone()).collect(),
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
            reverse: self.reverse.map(ReverseEntry::into_reverse).transpose()?,
            final_drives: self.final_drives.into_iter().map(|d| d.0).collect(),
            stages: stages?,
            tyre: self.tyre.map(Into::into),
            shift: self.shift_rpm.0,
        };
        GearSet::try_from(spec.clone()).map_err(|error| Misfit::of_set(&error, &spec))
    }
}

impl SetV2 {
    /// The candidate at that place, counted from 0, as it stands in a file.
    pub(super) fn of(place: usize, candidate: &Candidate) -> Self {
        let set = &candidate.set;
        let livery =
            Some(candidate.livery).filter(|livery| Livery::of_place(place) != Some(*livery));
        let known = &candidate.technical;
        let (efficiency, direct_efficiency, gear_efficiencies) =
            technical::in_file(&known.efficiencies, set);
        Self {
            name: NameText(set.name.clone()),
            visible: candidate.visible,
            livery: livery.map(LiveryNumber),
            tyre: set.tyre.as_ref().map(TyreV2::from),
            shift_rpm: Rpm(set.shift),
            final_drives: set.final_drives.iter().cloned().map(FinalDriveV2).collect(),
            gears: set.gears.iter().map(GearEntry::from).collect(),
            reverse: set.reverse.as_ref().map(ReverseEntry::from),
            stages: set.stages.iter().map(|s| StageV2::of(s, set)).collect(),
            engine: known.engine.as_ref().map(EngineDataV2::from),
            efficiency,
            direct_efficiency,
            gear_efficiencies,
            signal: SignalV2::of(known.checks.signal),
            rated_torque_nm: known.checks.rated_torque.map(RatedNm),
            second_final_drive: known.checks.second_final_drive.clone().map(RatioEntry),
        }
    }
}
