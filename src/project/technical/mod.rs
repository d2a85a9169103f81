//! Technical data: what is known of engine, vehicle, road and driving, all of it optional.
//!
//! Nobody who only compares ratios meets any of it. What is absent is not known; where the kind of
//! vehicle is, its starting values stand in for it, so a starting value is whatever is not typed.

mod check_words;
mod engine;
mod limits;
mod of_set;
mod road;
mod second_axle;
mod speedometer;
mod vehicle;
mod words;

pub(super) use check_words::{
    limits_words, second_axle_words, set_checks_words, speedometer_words,
};
pub use engine::EngineData;
pub use limits::LimitsData;
pub use of_set::{SetChecks, SetEfficiencies, SetTechnical};
pub use road::{RoadData, SetAside, too_many_grades};
pub use second_axle::SecondAxleData;
pub use speedometer::{SignalData, SpeedometerData};
pub use vehicle::{CoastDown, VehicleData};
pub(super) use words::{
    Words, driving_words, efficiency_words, engine_words, known_fuel_words, road_words,
    vehicle_words,
};

use super::document::{Candidates, SetId};
use super::view::{View, Views};
use crate::gearing::{EngineSpeed, GearId, RoadSpeed};
use crate::motion::{Driving, FuelConsumption, ShiftPause, YearlyDistance};

/// What is known of a vehicle beyond its gearing; each part may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TechnicalData {
    /// The engine, for every set that has none of its own.
    pub engine: EngineData,
    /// The vehicle without its engine.
    pub vehicle: VehicleData,
    /// What it carries, and the road that it is on.
    pub road: RoadData,
    /// How it is driven.
    pub driving: DrivingData,
    /// Its speedometer.
    pub speedometer: SpeedometerData,
    /// What tyres, box and shafts are rated for.
    pub limits: LimitsData,
    /// Its other driven axle.
    pub second_axle: SecondAxleData,
    /// What it is known to burn in one gear.
    pub known_fuel: Option<KnownFuel>,
}

impl TechnicalData {
    /// As far as it is about these candidates: a consumption of another set is left out.
    pub(super) fn among(&self, sets: &Candidates) -> Self {
        Self {
            known_fuel: self.known_fuel.filter(|known| known.is_of(sets)),
            ..self.clone()
        }
    }

    /// Whether anything is known of engine, vehicle, road or driving.
    pub fn knows_of_motion(&self) -> bool {
        let rest = Self {
            speedometer: SpeedometerData::default(),
            limits: LimitsData::default(),
            second_axle: SecondAxleData::default(),
            ..self.clone()
        };
        rest != Self::default()
    }

    /// As far as these views show it: whoever shows ratios alone gives away nothing of engine and vehicle.
    pub(super) fn shown_in(self, views: &Views) -> Self {
        let Self {
            engine,
            vehicle,
            road,
            driving,
            speedometer,
            limits,
            second_axle,
            known_fuel,
        } = self;
        let motion = views
            .need_motion()
            .then_some((engine, vehicle, road, driving));
        let (engine, vehicle, road, driving) = motion.unwrap_or_default();
        let checked = (speedometer, limits, second_axle);
        let checked = views.has(View::Speedometer).then_some(checked);
        let (speedometer, limits, second_axle) = checked.unwrap_or_default();
        Self {
            engine,
            vehicle,
            road,
            driving,
            speedometer,
            limits,
            second_axle,
            known_fuel: known_fuel.filter(|_| views.need_motion()),
        }
    }

    /// The engine of a candidate: its own, else that of the vehicle.
    pub fn engine_of<'a>(&'a self, candidate: &'a SetTechnical) -> &'a EngineData {
        candidate.engine.as_ref().unwrap_or(&self.engine)
    }
}

/// How the vehicle is driven.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct DrivingData {
    /// How long a change of gear takes; none is 0.
    pub shift_pause: Option<ShiftPause>,
    /// The engine speed at which the clutch slips at the start.
    pub launch: Option<EngineSpeed>,
    /// What is driven in a year.
    pub yearly_distance: Option<YearlyDistance>,
}

impl DrivingData {
    /// How it is started and shifted; a pause that is absent is none.
    pub fn driving(&self) -> Driving {
        Driving {
            launch: self.launch,
            pause: self.shift_pause.unwrap_or(ShiftPause::NONE),
        }
    }
}

/// A consumption that somebody knows: in this gear of this set, at this steady speed on the level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KnownFuel {
    /// The set that was fitted.
    pub set: SetId,
    /// The gear that was engaged.
    pub gear: GearId,
    /// The steady speed.
    pub speed: RoadSpeed,
    /// What was burnt.
    pub consumption: FuelConsumption,
}

impl KnownFuel {
    /// Whether set and gear are among the candidates.
    pub(super) fn is_of(&self, sets: &Candidates) -> bool {
        let set = sets.get(self.set).map(|candidate| &candidate.set);
        set.is_some_and(|set| set.gear(self.gear).is_some())
    }
}
