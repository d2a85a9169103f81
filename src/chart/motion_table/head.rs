//! What is said of all sets together: the vehicle, what it carries and pulls, and the road.

use crate::analysis::Motion;
use crate::motion::Grade;
use crate::project::Project;
use crate::units::{KM_PER_MILE, SpeedUnit, plain_number, round_to};

/// `Vehicle 1650 kg; carries 230 kg; pulls 800 kg; grade 3 %; headwind 20 km/h; 12000 km a year`.
pub(super) fn of(project: &Project, motion: &Motion) -> String {
    let load = &motion.load;
    let kg = |kg: f64| format!("{} kg", plain_number(round_to(kg, 1.0)));
    let mass = motion.sets.first().map(|set| set.vehicle.mass.kg());
    let vehicle = mass.map(|mass| format!("Vehicle {}", kg(mass)));
    let above_0 = |number: f64| Some(number).filter(|number| *number > 0.0);
    let carried = above_0(load.extra.kg()).map(|mass| format!("carries {}", kg(mass)));
    let pulled = load.trailer.map(|trailer| trailer.mass.kg());
    let pulled = pulled.map(|mass| format!("pulls {}", kg(mass)));
    let grade = project.technical.road.grade.map(Grade::percent);
    let grade = grade.filter(|percent| *percent != 0.0);
    let grade = grade.map(|percent| format!("grade {} %", plain_number(percent)));
    let wind = Some(project.units.from_kmh(load.headwind.kmh()));
    let wind = wind.filter(|wind| *wind != 0.0);
    let wind = wind.map(|wind| {
        let wind = plain_number(round_to(wind, 0.1));
        format!("headwind {wind} {}", project.units.sign())
    });
    let year = project.technical.driving.yearly_distance.map(|year| {
        let (distance, unit) = match project.units {
            SpeedUnit::Kmh => (year.km(), "km"),
            SpeedUnit::Mph => (year.km() / KM_PER_MILE, "miles"),
        };
        format!("{} {unit} a year", plain_number(distance.round()))
    });
    let said = [vehicle, carried, pulled, grade, wind, year];
    said.into_iter().flatten().collect::<Vec<_>>().join("; ")
}
