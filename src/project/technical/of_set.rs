//! The technical data of one candidate: its own engine, and what its gears leave of the power.

use super::{EngineData, SignalData};
use crate::checks::RatedTorque;
use crate::gearing::{GearId, GearSet, Ratio};
use crate::motion::Efficiency;
use crate::project::view::{View, Views};
use std::collections::BTreeMap;

/// What is known of one candidate beyond its gears.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SetTechnical {
    /// Its engine, where that is not the vehicle's.
    pub engine: Option<EngineData>,
    /// What its gears leave of the power.
    pub efficiencies: SetEfficiencies,
    /// What is its own of what is checked.
    pub checks: SetChecks,
}

/// What of the road checks is a candidate's own.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SetChecks {
    /// What of the speedometer's signal.
    pub signal: SignalData,
    /// The torque that its gearbox is rated for at the input.
    pub rated_torque: Option<RatedTorque>,
    /// The final drive of the second axle, where it is not the vehicle's.
    pub second_final_drive: Option<Ratio>,
}

impl SetTechnical {
    /// Whether an engine or efficiencies are its own.
    pub fn knows_of_motion(&self) -> bool {
        self.engine.is_some() || self.efficiencies != SetEfficiencies::default()
    }

    /// As far as these views show it.
    pub(in super::super) fn shown_in(&self, views: &Views) -> Self {
        let Self {
            engine,
            efficiencies,
            checks,
        } = self;
        let motion = views
            .need_motion()
            .then(|| (engine.clone(), efficiencies.clone()));
        let (engine, efficiencies) = motion.unwrap_or_default();
        let checks = views.has(View::Speedometer).then(|| checks.clone());
        Self {
            engine,
            efficiencies,
            checks: checks.unwrap_or_default(),
        }
    }
}

/// What the gears of a set leave of the power, as far as that is known.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SetEfficiencies {
    /// Of every gear that has none of its own.
    pub of_set: Option<Efficiency>,
    /// Of a direct gear.
    pub direct: Option<Efficiency>,
    /// Of single forward gears.
    pub of_gears: BTreeMap<GearId, Efficiency>,
}

impl SetEfficiencies {
    /// Whether every gear that has its own is there.
    pub(in super::super) fn fit(&self, set: &GearSet) -> bool {
        self.of_gears.keys().all(|id| set.gear(*id).is_some())
    }

    /// The same without gears that are not there.
    #[must_use]
    pub(in super::super) fn of(&self, set: &GearSet) -> Self {
        let mut efficiencies = self.clone();
        efficiencies
            .of_gears
            .retain(|id, _| set.gear(*id).is_some());
        efficiencies
    }
}
