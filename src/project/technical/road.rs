//! What a vehicle carries and pulls, and the road that it is on.

use crate::motion::{AddedMass, Grade, Headwind, LoadCase, Trailer};
use crate::project::{Marks, TooManyMarks};

/// The grades in per cent whose road load is shown until others are typed.
const USUAL_GRADES_PERCENT: [f64; 4] = [5.0, 10.0, 20.0, 30.0];

/// Why so many grades cannot be shown.
pub fn too_many_grades(TooManyMarks(count): TooManyMarks) -> String {
    let most = Marks::<Grade>::MOST;
    format!("at most {most} grades can be shown, not {count}")
}

/// The load case and the road.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RoadData {
    /// What is carried.
    pub load: Option<AddedMass>,
    /// What is pulled.
    pub trailer: Option<Trailer>,
    /// Wind from ahead.
    pub headwind: Option<Headwind>,
    /// How steep the road is.
    pub grade: Option<Grade>,
    /// The other roads whose load is shown; none is the usual ones.
    pub grades: Option<Marks<Grade>>,
    /// What of load, trailer and wind is left out for now.
    pub aside: SetAside,
}

/// What of a load case is known and left out for now: one looks at the empty vehicle, and back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct SetAside {
    /// What is carried.
    pub load: bool,
    /// What is pulled.
    pub trailer: bool,
    /// Wind from ahead.
    pub headwind: bool,
}

impl RoadData {
    /// The load case; what is absent or set aside is nothing, or still air.
    pub fn load_case(&self) -> LoadCase {
        let counted = self.counted();
        LoadCase {
            extra: counted.load.unwrap_or(AddedMass::NONE),
            trailer: counted.trailer,
            headwind: counted.headwind.unwrap_or(Headwind::NONE),
        }
    }

    /// The same without what is set aside.
    #[must_use]
    pub fn counted(&self) -> Self {
        let aside = self.aside;
        Self {
            load: self.load.filter(|_| !aside.load),
            trailer: self.trailer.filter(|_| !aside.trailer),
            headwind: self.headwind.filter(|_| !aside.headwind),
            grade: self.grade,
            grades: self.grades.clone(),
            aside: SetAside::default(),
        }
    }

    /// The roads whose load is shown, level first of those that rise: the level one, those that were typed
    /// or the usual ones, and the one that all figures are for.
    pub fn shown_grades(&self) -> Vec<Grade> {
        let usual = || {
            let usual = USUAL_GRADES_PERCENT.into_iter();
            usual.filter_map(|percent| Grade::from_percent(percent).ok())
        };
        let listed: Vec<Grade> = match &self.grades {
            Some(grades) => grades.as_slice().to_vec(),
            None => usual().collect(),
        };
        let mut all: Vec<Grade> = [Grade::LEVEL]
            .into_iter()
            .chain(listed)
            .chain(self.grade)
            .collect();
        all.sort_by(|a, b| a.percent().total_cmp(&b.percent()));
        all.dedup();
        all
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_set_aside_counts_for_nothing_and_is_not_forgotten() {
        let road = RoadData {
            load: AddedMass::from_kg(300.0).ok(),
            headwind: Headwind::from_kmh(20.0).ok(),
            aside: SetAside {
                load: true,
                ..SetAside::default()
            },
            ..RoadData::default()
        };
        assert_eq!(road.load_case().extra, AddedMass::NONE);
        assert_eq!(Some(road.load_case().headwind), road.headwind);
        let back = RoadData {
            aside: SetAside::default(),
            ..road.clone()
        };
        assert_eq!(Some(back.load_case().extra), road.load);
    }

    #[test]
    fn the_level_road_and_the_one_that_counts_are_always_shown() {
        let percents = |road: &RoadData| -> Vec<f64> {
            let grades = road.shown_grades();
            grades.iter().map(|grade| grade.percent()).collect()
        };
        let mut road = RoadData::default();
        assert_eq!(percents(&road), [0.0, 5.0, 10.0, 20.0, 30.0]);
        road.grade = Grade::from_percent(-4.0).ok();
        let typed = [12.0, 6.0].map(|percent| Grade::from_percent(percent).unwrap());
        road.grades = Marks::new(typed.to_vec()).ok();
        assert_eq!(percents(&road), [-4.0, 0.0, 6.0, 12.0]);
    }
}
