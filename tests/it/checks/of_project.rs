//! What follows for the road checks from a document: which figures meet which limits, and when they are told.

use crate::support::window::camper_van;
use layshaft::analysis::Analysis;
use layshaft::checks::{
    Axle, Part, RatedTorque, RatingFactor, ReadingRatio, ShaftSpeed, SharingShafts, SignalSource,
    TopSpeedSource, TyresOnAxle,
};
use layshaft::gearing::{RoadSpeed, parse_ratio, parse_tyre};
use layshaft::motion::{Mass, MeasuredAt};
use layshaft::project::{Edit, Project, SetChecks, SetId, TechnicalData};
use std::sync::Arc;

fn codes(project: &Project, place: usize) -> Vec<&'static str> {
    let analysis = Analysis::from(project);
    let findings = analysis.findings_of(place);
    let codes = findings.map(|finding| finding.code);
    let of_checks = ["tyre", "torque", "shaft", "axles", "speed"];
    codes
        .filter(|code| of_checks.iter().any(|part| code.contains(part)))
        .collect()
}

fn second(project: &Project) -> SetId {
    project.sets.iter().nth(1).unwrap().id
}

fn with_checks(project: &Project, change: impl FnOnce(&mut SetChecks)) -> Project {
    let set = second(project);
    let mut checks = project.sets.get(set).unwrap().technical.checks.clone();
    change(&mut checks);
    let edit = Edit::SetChecks(set, Box::new(checks));
    edit.applied_to(project).unwrap()
}

#[test]
fn nothing_is_said_of_what_nobody_has_told() {
    let project = camper_van();
    for place in 0..project.sets.len() {
        assert!(codes(&project, place).is_empty());
    }
}

#[test]
fn the_peak_of_the_engine_is_held_against_the_rating_times_the_factor() {
    let rated = |nm| RatedTorque::from_nm(nm).ok();
    let project = with_checks(&camper_van(), |checks| checks.rated_torque = rated(400.0));
    let torque = |project: &Project| {
        let analysis = Analysis::from(project);
        analysis.road_checks()[1].checked.input_torque
    };
    let borne = torque(&project).unwrap();
    assert_eq!(borne.part, Part::GearboxInput);
    let curve = project.technical.engine.curve.as_ref().unwrap();
    let [peak, _] = curve.peaks().unwrap();
    assert!((borne.load - peak.torque_nm).abs() < 1e-9 && (borne.limit - 400.0).abs() < 1e-9);
    let mut halved = project.clone();
    halved.technical.limits.torque_factor = RatingFactor::new(0.5).ok();
    assert!((torque(&halved).unwrap().limit - 200.0).abs() < 1e-9);
    assert_eq!(codes(&halved, 1), ["torque_above_rating"]);
    assert!(
        codes(&halved, 0).is_empty(),
        "the rating is that of one set"
    );
    let mut at_wheels = halved;
    at_wheels.technical.engine.measured_at = MeasuredAt::Wheels;
    assert_eq!(torque(&at_wheels), None, "losses hide what the box gets");
}

#[test]
fn the_papers_say_how_fast_the_tyre_must_be_before_the_engine_does() {
    let top = |project: &Project| {
        let analysis = Analysis::from(project);
        analysis.road_checks()[0].checked.top.unwrap()
    };
    let mut project = camper_van();
    assert_eq!(top(&project).source, TopSpeedSource::Power);
    project.tyre = parse_tyre("215/65 R 16 C 109/107 Q").unwrap();
    assert!(codes(&project, 0).is_empty());
    project.technical.limits.top_speed = RoadSpeed::from_kmh(165.0).ok();
    assert_eq!(top(&project).source, TopSpeedSource::Registration);
    assert_eq!(codes(&project, 0), ["tyre_too_slow"]);
    let mut unknown = project.clone();
    unknown.technical = TechnicalData::default();
    assert_eq!(top(&unknown).source, TopSpeedSource::Redline);
    assert!(codes(&unknown, 0).is_empty(), "every overdrive would alarm");
}

#[test]
fn two_tyres_or_four_carry_an_axle() {
    let mut project = camper_van();
    project.tyre = parse_tyre("215/65 R 16 C 109/107 Q").unwrap();
    // 109 is 1030 kg, 107 is 975 kg (UN R30, from memory).
    project.technical.limits.front_axle = Mass::from_kg(2060.0).ok();
    project.technical.limits.rear_axle = Mass::from_kg(2061.0).ok();
    assert_eq!(codes(&project, 0), ["tyre_overloaded"]);
    project.technical.limits.rear_tyres = TyresOnAxle::Four;
    assert!(codes(&project, 0).is_empty());
    project.technical.limits.rear_axle = Mass::from_kg(3901.0).ok();
    assert_eq!(codes(&project, 0), ["tyre_overloaded"]);
}

#[test]
fn an_axle_shaft_bears_its_share_of_the_lowest_gear_as_far_as_the_tyres_hold() {
    let mut project = camper_van();
    project.technical.limits.axle_shaft = RatedTorque::from_nm(5000.0).ok();
    let load = |project: &Project| {
        let analysis = Analysis::from(project);
        let (_, torque) = analysis.road_checks()[0]
            .checked
            .axle_shaft
            .clone()
            .unwrap();
        torque.load
    };
    let held = load(&project);
    project.technical.limits.shafts = Some(SharingShafts::One);
    assert!(
        (load(&project) / held - 2.0).abs() < 1e-9,
        "one shaft bears what two share"
    );
    project.technical.vehicle.adhesion = layshaft::motion::Adhesion::new(0.1).ok();
    assert!(load(&project) < held, "on ice the wheels spin");
}

#[test]
fn a_propeller_shaft_turns_as_the_final_drive_says() {
    let mut project = camper_van();
    project.technical.limits.top_speed = RoadSpeed::from_kmh(150.0).ok();
    project.technical.limits.propeller_shaft = ShaftSpeed::from_rpm(3000.0).ok();
    let analysis = Analysis::from(&project);
    for (place, candidate) in project.sets.iter().enumerate() {
        let borne = analysis.road_checks()[place]
            .checked
            .propeller_shaft
            .unwrap();
        let tyre = candidate.set.tyre.unwrap_or(project.tyre);
        let turns = 150.0 / 0.06 / tyre.rolling_circumference_mm() * 1000.0;
        let rpm = turns * candidate.set.final_drives[0].value();
        assert!((borne.load - rpm).abs() < 1e-6, "{} {rpm}", borne.load);
    }
    assert!(
        codes(&project, 0)
            .iter()
            .any(|code| code.contains("propeller"))
    );
}

#[test]
fn a_second_axle_follows_the_final_drive_of_each_set() {
    let mut project = camper_van();
    let first = project.sets.baseline().set.final_drives[0].value();
    let ratio = parse_ratio(&first.to_string())
        .unwrap()
        .driven_first()
        .clone();
    project.technical.second_axle.final_drive = Some(ratio.clone());
    let mismatch = |project: &Project, place: usize| {
        let analysis = Analysis::from(project);
        let (axles, _) = analysis.road_checks()[place].checked.two_axles.unwrap();
        axles.mismatch()
    };
    assert!(mismatch(&project, 0).1 < 1e-9, "both as they were");
    let taller = project.sets.iter().nth(1).unwrap().set.final_drives[0].value();
    let (farther, percent) = mismatch(&project, 1);
    assert_eq!(
        farther,
        Axle::Rear,
        "the taller axle rolls farther for a turn"
    );
    assert!((percent - 100.0 * (first / taller - 1.0)).abs() < 1e-9);
    assert_eq!(codes(&project, 1), ["axles_differ"]);
    let own = parse_ratio(&taller.to_string())
        .unwrap()
        .driven_first()
        .clone();
    let mended = with_checks(&project, |checks| checks.second_final_drive = Some(own));
    assert!(codes(&mended, 1).is_empty());
}

#[test]
fn a_speedometer_is_judged_once_something_is_known_of_its_signal() {
    let mut project = camper_van();
    project.technical.speedometer.reading.needle_ratio = ReadingRatio::new(1.02).ok();
    assert!(codes(&project, 0).is_empty());
    assert_eq!(
        codes(&project, 1),
        ["speedometer_breaks_rule"],
        "taller, so it reads low"
    );
    let without = with_checks(&project, |checks| {
        checks.signal.source = Some(SignalSource::None);
    });
    assert_eq!(
        codes(&without, 1),
        ["no_speed_signal"],
        "there is nothing to be judged, and that is told"
    );
    project.technical.speedometer.signal.source = Some(SignalSource::Wheel);
    assert!(
        codes(&project, 1).is_empty(),
        "a wheel knows nothing of final drives"
    );
}

#[test]
fn what_is_compared_with_another_baseline_is_judged_anew() {
    let mut project = camper_van();
    project.technical.speedometer.reading.needle_ratio = ReadingRatio::new(1.02).ok();
    let mut analysis = Analysis::from(&project);
    let is_told = |analysis: &Analysis, place: usize| {
        let mut findings = analysis.findings_of(place);
        findings.any(|finding| finding.code == "speedometer_breaks_rule")
    };
    assert!(is_told(&analysis, 1));
    let other = Edit::Baseline(second(&project));
    let other = Arc::new(other.applied_to(&project).unwrap());
    analysis.follow(&other);
    assert!(!is_told(&analysis, 1), "it is what is fitted now");
    assert_eq!(
        analysis.findings(),
        Analysis::of(Arc::clone(&other)).findings()
    );
}
