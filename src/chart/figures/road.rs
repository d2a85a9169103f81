//! What the figures are for where it is no empty vehicle on a level road in still air, in words.

use crate::motion::{AddedMass, Grade, Headwind};
use crate::project::RoadData;
use crate::units::{SpeedUnit, mark_text, plain_number};

/// One short phrase each, `on a fall of 5 %`; none where there is nothing to say.
pub(super) fn conditions(road: &RoadData, units: SpeedUnit) -> Vec<String> {
    let grade = grade_percent(road).map(|percent| {
        let slope = if percent < 0.0 { "fall" } else { "grade" };
        format!("on a {slope} of {} %", plain_number(percent.abs()))
    });
    let wind = headwind_kmh(road).map(|kmh| {
        let wind = if kmh < 0.0 { "tailwind" } else { "headwind" };
        let speed = mark_text(kmh.abs(), units);
        format!("in a {wind} of {speed} {}", units.sign())
    });
    let load = road.load.map(AddedMass::kg).filter(|kg| *kg > 0.0);
    let load = load.map(|kg| format!("carrying {} kg", plain_number(kg)));
    let trailer = road.trailer.map(|trailer| {
        let drag = if trailer.drag_area.m2() > 0.0 {
            ""
        } else {
            ", its drag counted as none"
        };
        format!("pulling {} kg{drag}", plain_number(trailer.mass.kg()))
    });
    [grade, wind, load, trailer].into_iter().flatten().collect()
}

/// Whether the road is level and the air still.
pub(super) fn is_level_and_still(road: &RoadData) -> bool {
    grade_percent(road).is_none() && headwind_kmh(road).is_none()
}

/// None on the level.
fn grade_percent(road: &RoadData) -> Option<f64> {
    let percent = road.grade.map(Grade::percent);
    percent.filter(|percent| *percent != 0.0)
}

/// Below 0 from behind; none in still air.
fn headwind_kmh(road: &RoadData) -> Option<f64> {
    let kmh = road.headwind.map(Headwind::kmh);
    kmh.filter(|kmh| *kmh != 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::motion::{DragArea, Trailer};

    #[test]
    fn whatever_the_figures_are_for_is_said_once() {
        let road = |percent, kmh, kg| RoadData {
            load: AddedMass::from_kg(kg).ok(),
            trailer: None,
            headwind: Headwind::from_kmh(kmh).ok(),
            grade: Grade::from_percent(percent).ok(),
            ..RoadData::default()
        };
        let steep = road(2.5, 32.186_88, 350.0);
        let said = [
            "on a grade of 2.5 %",
            "in a headwind of 20 mph",
            "carrying 350 kg",
        ];
        assert_eq!(conditions(&steep, SpeedUnit::Mph), said);
        let level = road(0.0, 0.0, 0.0);
        assert!(is_level_and_still(&level) && !is_level_and_still(&steep));
        assert_eq!(conditions(&level, SpeedUnit::Kmh), Vec::<String>::new());
        let falling = RoadData {
            trailer: Some(Trailer {
                mass: AddedMass::from_kg(900.0).unwrap(),
                drag_area: DragArea::from_m2(1.5).unwrap(),
            }),
            ..road(-5.0, -15.0, 0.0)
        };
        let said = [
            "on a fall of 5 %",
            "in a tailwind of 15 km/h",
            "pulling 900 kg",
        ];
        assert_eq!(conditions(&falling, SpeedUnit::Kmh), said);
    }
}
