//! Is what engine and vehicle make of a set found strange where a builder wants to hear of it, and else not?

use crate::support::gear_sets::{redline, rpm};
use crate::support::variants::{assert_all_met, variants};
use crate::support::vehicles::{
    coast_down, drivetrain, driving, efficiency, engine, grade, grip, inertia, vehicle,
};
use layshaft::analysis::Analysis;
use layshaft::gearing::{EngineLimits, RoadSpeed};
use layshaft::motion::{
    AddedMass, Asked, DrivenAxle, Grade, Headwind, LoadCase, MotionFinding, MotionFindingKind,
    Powertrain, RotatingMasses, Vehicle,
};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Marks, Project};
use layshaft::units::SpeedUnit;

variants!(
    KINDS,
    kind_name,
    MotionFindingKind {
        NotHeldInTop,
        BestShiftBeyondRedline,
        Overdrive,
        GearedBeyondTopSpeed,
        DoesNotStart,
    }
);

/// A tonne on a radius of 0.3 m: 100 N·m up to 6000 rpm and 60 N·m at 7000, so that a ratio of 3 is 1000 N.
struct Car {
    ratios: &'static [f64],
    vehicle: Vehicle,
    load: LoadCase,
    grade: Grade,
    limits: EngineLimits,
    marked_kmh: &'static [f64],
    unit: SpeedUnit,
}

/// Nothing turns in it; at standstill that many N hold it back.
fn held_by(n: f64) -> Vehicle {
    let wheels = inertia(0.0);
    Vehicle {
        rotating: RotatingMasses::Inertias { wheels },
        ..vehicle(1000.0, coast_down(n, 0.0, 0.4))
    }
}

/// Held back by 150 N and 0.4 N/(m/s)²; its third gear is geared for top speed, 184 km/h.
fn car() -> Car {
    Car {
        ratios: &[9.0, 6.0, 3.73],
        vehicle: held_by(150.0),
        load: LoadCase::empty(),
        grade: grade(0.0),
        limits: redline(7000.0),
        marked_kmh: &[50.0, 90.0, 180.0],
        unit: SpeedUnit::Kmh,
    }
}

impl Car {
    fn found(&self) -> Vec<MotionFinding> {
        let engine = engine(&[(1000.0, 100.0), (6000.0, 100.0), (7000.0, 60.0)]);
        let gears = drivetrain(self.ratios, 1.0, 0.3);
        let behind = |limits| Powertrain::new(&gears, &engine, limits, &efficiency(1.0)).unwrap();
        let marked = self.marked_kmh.iter();
        let marked: Vec<_> = marked.map(|v| RoadSpeed::from_kmh(*v).unwrap()).collect();
        let asked = Asked {
            vehicle: &self.vehicle,
            load: &self.load,
            grade: self.grade,
            driving: &driving(None, 0.0),
            powertrain: &behind(&self.limits),
            beyond_redline: Some(&behind(&redline(7000.0))),
            limits: &self.limits,
            marked: &marked,
            unit: self.unit,
        };
        asked.findings()
    }

    /// The kind, the gear and the sentence of what is found.
    fn told(&self) -> Vec<(&'static str, Option<String>, String)> {
        let found = self.found().into_iter();
        let told = found.map(|f| (kind_name(&f.kind), f.gear.clone(), f.to_string()));
        told.collect()
    }

    #[track_caller]
    fn tells(&self, kind: &'static str, gear: Option<&str>, sentence: &str) {
        let expected = (kind, gear.map(str::to_owned), sentence.to_owned());
        assert_eq!(self.told(), [expected]);
    }

    #[track_caller]
    fn is_plain(&self) {
        assert_eq!(self.found(), []);
    }
}

fn carrying(kg: f64, headwind_kmh: f64) -> LoadCase {
    LoadCase {
        extra: AddedMass::from_kg(kg).unwrap(),
        headwind: Headwind::from_kmh(headwind_kmh).unwrap(),
        ..LoadCase::empty()
    }
}

#[test]
fn a_car_that_holds_what_is_marked_and_is_driven_to_its_redline_is_not_strange() {
    car().is_plain();
    // First and second pull harder up to the redline than the next gear does behind it, as in most cars.
    let wide = Car {
        ratios: &[18.0, 8.5, 3.73],
        limits: redline(6200.0),
        marked_kmh: &[50.0, 90.0],
        ..car()
    };
    wide.is_plain();
}

#[test]
fn a_marked_speed_that_top_does_not_hold_on_the_level_is_told_with_the_gear_that_does() {
    // At 130 km/h 671 N hold it back, and the third gear has 667 N.
    let tall = |marked_kmh| Car {
        ratios: &[9.0, 3.73, 2.0],
        marked_kmh,
        ..car()
    };
    let sentence = |car: Car| {
        let mut told = car.told().into_iter();
        let told = told.find(|(kind, ..)| *kind == "NotHeldInTop");
        told.map(|(_, _, sentence)| sentence)
    };
    assert_eq!(sentence(tall(&[129.0])), None);
    let one = "gear 3 does not hold 130 km/h on the level; gear 2 does";
    assert_eq!(sentence(tall(&[50.0, 130.0])).unwrap(), one);
    let several = "gear 3 does not hold 130, 150 and 200 km/h on the level; gear 2 holds 150 km/h";
    assert_eq!(sentence(tall(&[130.0, 150.0, 200.0])).unwrap(), several);
    let many =
        "gear 3 does not hold 130, 140, 150 and 2 more km/h on the level; gear 2 holds 170 km/h";
    let marked_kmh = &[130.0, 140.0, 150.0, 160.0, 170.0];
    assert_eq!(sentence(tall(marked_kmh)).unwrap(), many);
    let in_miles = Car {
        unit: SpeedUnit::Mph,
        ..tall(&[128.747_52])
    };
    assert_eq!(sentence(in_miles), None);
    let in_miles = Car {
        unit: SpeedUnit::Mph,
        ..tall(&[136.794_24])
    };
    let told = sentence(in_miles).unwrap();
    assert!(told.starts_with("gear 3 does not hold 85 mph on the level"));
}

#[test]
fn a_marked_speed_beyond_the_redline_is_not_held_either() {
    // 6000 rpm of the second gear are 151 km/h.
    let short = |marked_kmh| Car {
        ratios: &[9.0, 4.5],
        limits: redline(6000.0),
        marked_kmh,
        ..car()
    };
    short(&[150.0]).is_plain();
    let says = "no gear holds 152 km/h on the level";
    short(&[152.0]).tells("NotHeldInTop", Some("2"), says);
}

#[test]
fn what_no_gear_holds_is_told_so_and_with_what_it_is_carried_against() {
    // The third gear would be at 6270 rpm there, the second beyond the redline.
    let fast = Car {
        marked_kmh: &[190.0],
        ..car()
    };
    let nothing_else = "no gear holds 190 km/h on the level";
    fast.tells("NotHeldInTop", Some("3"), nothing_else);
    let against = |load| Car {
        load,
        marked_kmh: &[180.0],
        ..car()
    };
    let rows = [
        (carrying(0.0, 30.0), " in this wind"),
        (carrying(20_000.0, 0.0), " with this load"),
        (carrying(20_000.0, 30.0), " with this load in this wind"),
    ];
    for (load, conditions) in rows {
        let told = against(load).told().into_iter();
        let told: Vec<_> = told.filter(|(kind, ..)| *kind == "NotHeldInTop").collect();
        let sentence = format!("no gear holds 180 km/h on the level{conditions}");
        assert_eq!(told, [("NotHeldInTop", Some("3".to_owned()), sentence)]);
    }
}

#[test]
fn speeds_at_which_nobody_drives_in_top_are_not_asked_of_it() {
    // 1300 N hold it back, and top has 1243 N; at 50 km/h it turns at 1649 rpm, at 25 km/h at 825.
    let heavy = |lowest_useful, marked_kmh| Car {
        vehicle: held_by(1300.0),
        limits: EngineLimits {
            lowest_useful,
            ..redline(7000.0)
        },
        marked_kmh,
        ..car()
    };
    let is_told = |car: Car| {
        let told = car.told();
        told.iter().any(|(kind, ..)| *kind == "NotHeldInTop")
    };
    assert!(is_told(heavy(None, &[50.0])));
    assert!(is_told(heavy(Some(rpm(1600.0)), &[50.0])));
    assert!(!is_told(heavy(Some(rpm(1700.0)), &[50.0])));
    assert!(!is_told(heavy(None, &[25.0])));
}

#[test]
fn a_best_shift_point_that_is_known_beyond_the_redline_is_told_where_it_is_worth_it() {
    // Torque falls to 83 % at 6560 rpm: there the third gear pulls as hard as the second.
    let close = |redline_rpm| Car {
        ratios: &[9.0, 4.5, 3.73],
        limits: redline(redline_rpm),
        marked_kmh: &[],
        ..car()
    };
    let told = close(5500.0).told();
    let [(kind, gear, sentence)] = &told[..] else {
        panic!("{told:?}");
    };
    assert_eq!((*kind, gear), ("BestShiftBeyondRedline", &None));
    // From first the engine pulls harder up to the end of the curve: nothing is known of a better change.
    let says = "changing up would be best beyond the redline of 5500 rpm: 2 to 3 at 6560 rpm";
    assert_eq!(sentence, says);
    // Within 5 % it is worth no word.
    assert_eq!(close(6230.0).told().len(), 1);
    close(6270.0).is_plain();
}

#[test]
fn an_overdrive_is_told_as_such_where_a_lower_gear_is_clearly_faster() {
    let topped = |ratios| Car {
        ratios,
        marked_kmh: &[],
        ..car()
    };
    let says = "gear 3 is an overdrive: it ends at 129 km/h on the level, gear 2 at 187 km/h";
    topped(&[9.0, 3.73, 2.0]).tells("Overdrive", Some("3"), says);
    // Its 184 km/h are less than 2 % slower.
    topped(&[9.0, 3.73, 3.6]).is_plain();
    let stuck = Car {
        vehicle: held_by(700.0),
        ..topped(&[9.0, 3.73, 2.0])
    };
    let says = "gear 3 is an overdrive: it holds no speed on the level, gear 2 at 133 km/h";
    stuck.tells("Overdrive", Some("3"), says);
}

#[test]
fn a_top_gear_that_is_the_fastest_and_too_tall_is_told_with_what_a_shorter_one_would_reach() {
    let alone = |ratios| Car {
        ratios,
        marked_kmh: &[],
        ..car()
    };
    let says = "geared beyond top speed: gear 2 ends at 166 km/h on the level, and shorter gearing would \
                reach 187 km/h";
    alone(&[9.0, 3.0]).tells("GearedBeyondTopSpeed", Some("2"), says);
    alone(&[9.0, 3.6]).is_plain();
    // Short of top speed: it ends at the redline.
    alone(&[9.0, 4.5]).is_plain();
}

#[test]
fn a_first_gear_that_does_not_start_on_the_typed_grade_is_told_with_what_it_starts_on() {
    // 3000 N less 150 are 0.2906 of the weight: 30.4 %.
    let on = |percent| Car {
        grade: grade(percent),
        ..car()
    };
    on(30.0).is_plain();
    let says = "gear 1 starts on 30.4 % at most, not on the grade of 30.5 %";
    on(30.5).tells("DoesNotStart", Some("1"), says);
    let says = "gear 1 just does not start on the grade of 30.4 %";
    on(30.4).tells("DoesNotStart", Some("1"), says);
    let stuck = |percent| Car {
        vehicle: held_by(3500.0),
        marked_kmh: &[],
        ratios: &[9.0],
        ..on(percent)
    };
    let first = |car: Car| car.told()[0].2.clone();
    assert_eq!(first(stuck(0.0)), "gear 1 does not start on the level");
    let falling = "gear 1 does not start on the fall of 4 %";
    assert_eq!(first(stuck(-4.0)), falling);
    stuck(-6.0).is_plain();
}

#[test]
fn where_grip_ends_the_start_no_other_gear_is_named() {
    // Half of the weight at adhesion 0.5 is a quarter of it, on a slope a little less.
    let slippery = Car {
        vehicle: Vehicle {
            grip: Some(grip(DrivenAxle::Rear, 0.5, 0.5, None)),
            ..car().vehicle
        },
        grade: grade(28.0),
        ..car()
    };
    let says = "gear 1 starts on 23.4 % at most, where grip ends, not on the grade of 28 %";
    slippery.tells("DoesNotStart", Some("1"), says);
}

fn camper_van() -> Project {
    EXAMPLES[0].project().unwrap()
}

/// Pulls a trailer, has a crawler and an engine built from a brochure.
fn farm_four_wheel_drive() -> Project {
    let mut projects = EXAMPLES.iter().map(|example| example.project().unwrap());
    projects
        .find(|project| project.technical.engine.is_built())
        .unwrap()
}

/// The codes of what is found in a project, with their sets.
fn codes(project: &Project) -> Vec<(Option<usize>, &'static str)> {
    let analysis = Analysis::from(project);
    let findings = analysis.findings().iter();
    findings.map(|f| (f.set, f.code)).collect()
}

#[test]
fn a_crawler_that_starts_where_first_does_not_is_named() {
    let mut project = farm_four_wheel_drive();
    project.technical.road.grade = Grade::from_percent(30.0).ok();
    let analysis = Analysis::from(&project);
    let starts = analysis.findings().iter();
    let starts = starts.filter(|finding| finding.code == "does_not_start");
    let starts: Vec<_> = starts.map(|f| (f.set, f.sentence.as_str())).collect();
    let says = [
        "gear 1 starts on 28.5 % at most, not on the grade of 30 %; gear C does",
        "gear 1 starts on 27.4 % at most, not on the grade of 30 %; gear C does",
    ];
    assert_eq!(starts, [(Some(0), says[0]), (Some(1), says[1])]);
}

#[test]
fn nobody_hears_of_motion_without_an_engine() {
    let mut project = farm_four_wheel_drive();
    assert_eq!(codes(&project).len(), 3);
    project.technical.engine.curve = None;
    assert_eq!(codes(&project), []);
}

#[test]
fn what_a_brochure_leaves_open_beyond_the_redline_is_no_finding() {
    let mut project = farm_four_wheel_drive();
    assert!(project.technical.engine.is_built());
    let told = |project: &Project| {
        let codes = codes(project).into_iter();
        codes
            .filter(|(_, code)| *code == "best_shift_beyond_redline")
            .count()
    };
    project.engine.redline = rpm(3000.0);
    assert_eq!(told(&project), 0);
    let curve = project.technical.engine.curve.take().unwrap();
    project.technical.engine.curve = Some(measured(curve.points()));
    assert_eq!(told(&project), 3);
}

fn measured(points: &[layshaft::motion::TorquePoint]) -> layshaft::motion::TorqueCurve {
    layshaft::motion::TorqueCurve::new(points.to_vec()).unwrap()
}

#[test]
fn findings_follow_what_is_marked_and_in_which_unit() {
    let mut project = camper_van();
    assert_eq!(codes(&project), []);
    let marks = vec![RoadSpeed::from_kmh(160.934_4).unwrap()];
    project.marked_road_speeds = Marks::new(marks).unwrap();
    project.units = SpeedUnit::Mph;
    let mut analysis = Analysis::from(&project);
    let told = analysis.findings().iter();
    let told: Vec<_> = told.map(|f| (f.set, f.sentence.clone())).collect();
    let says = "no gear holds 100 mph on the level with this load".to_owned();
    let sets = [Some(0), Some(1), Some(2)];
    assert_eq!(told, sets.map(|set| (set, says.clone())));
    project.marked_road_speeds = Marks::default();
    analysis.follow(&std::sync::Arc::new(project));
    assert_eq!(analysis.findings(), []);
}

#[test]
fn every_kind_of_finding_has_been_provoked() {
    let fast = Car {
        marked_kmh: &[190.0],
        ratios: &[9.0, 4.5, 3.73],
        grade: grade(40.0),
        limits: redline(6100.0),
        ..car()
    };
    let tall = |ratios| Car { ratios, ..car() };
    let cars = [fast, tall(&[9.0, 3.73, 2.0]), tall(&[9.0, 3.0])];
    let met = cars.iter().flat_map(Car::told).map(|(kind, ..)| kind);
    assert_all_met(KINDS, met);
}
