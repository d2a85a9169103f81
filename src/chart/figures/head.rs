//! What is said of all sets together: the vehicle, what the figures are for, and what is driven in a year.

use super::engine_words;
use super::road::conditions;
use crate::analysis::Motion;
use crate::project::Project;
use crate::units::{KM_PER_MILE, SpeedUnit, plain_number, round_to};

/// `Vehicle 1650 kg; engine 1.6 L petrol, 152 N·m at 4000, 83 kW at 5500 rpm; on a grade of 3 %; carrying
/// 230 kg; 12000 km a year`. An engine that every set has in the place of it is none of all.
pub(super) fn of(project: &Project, motion: &Motion) -> String {
    let mass = motion.sets.first().map(|set| set.vehicle.mass.kg());
    let vehicle = mass.map(|kg| format!("Vehicle {} kg", plain_number(round_to(kg, 1.0))));
    let year = project.technical.driving.yearly_distance.map(|year| {
        let (distance, unit) = match project.units {
            SpeedUnit::Kmh => (year.km(), "km"),
            SpeedUnit::Mph => (year.km() / KM_PER_MILE, "miles"),
        };
        format!("{} {unit} a year", plain_number(distance.round()))
    });
    let mut sets = project.sets.iter();
    let is_anybodys = sets.any(|set| set.technical.engine.is_none());
    let engine = engine_words::of(&project.technical.engine).filter(|_| is_anybodys);
    let engine = engine.map(|engine| format!("engine {engine}"));
    let said = vehicle.into_iter().chain(engine);
    let said = said.chain(conditions(&project.technical.road.counted(), project.units));
    said.chain(year).collect::<Vec<_>>().join("; ")
}
