//! Does what is found for a wish fulfil it, in every gear of every set?

use crate::support::close::is_close;
use crate::support::projects::{any_project, engine_speed, road_speed};
use layshaft::finders::{Sought, SpeedWish};
use layshaft::gearing::{
    DrivenGear, Drivetrain, EngineSpeed, FinalDrive, GearId, GearSet, GearSetSpec, Ratio,
    RollingCircumference, Tyre,
};
use proptest::prelude::*;

/// The set with the found value in its place.
fn with_found(set: &GearSet, gear: GearId, sought: Sought, value: f64) -> GearSet {
    let mut spec: GearSetSpec = set.to_spec();
    let ratio = || Ratio::from_number(value).unwrap();
    match (sought, gear) {
        (Sought::RollingCircumference, _) => {
            let circumference = RollingCircumference::from_mm(value).unwrap();
            spec.tyre = Some(Tyre::RollingCircumference(circumference));
        }
        (Sought::FinalDrive, GearId::REVERSE) => {
            let at = spec.reverse.as_ref().unwrap().final_drive;
            spec.final_drives[at] = FinalDrive::Gears(ratio());
        }
        (Sought::FinalDrive, forward) => {
            let at = set.gear(forward).unwrap().final_drive;
            spec.final_drives[at] = FinalDrive::Gears(ratio());
        }
        (Sought::GearRatio, GearId::REVERSE) => spec.reverse.as_mut().unwrap().ratio = ratio(),
        (Sought::GearRatio, forward) => {
            let gear = spec.gears.iter_mut().find(|gear| gear.id == forward);
            gear.unwrap().ratio = ratio();
        }
    }
    GearSet::try_from(spec).unwrap()
}

fn all_gears(drivetrain: &Drivetrain) -> impl Iterator<Item = &DrivenGear> {
    drivetrain.gears.iter().chain(&drivetrain.reverse)
}

const EACH: [Sought; 3] = [
    Sought::FinalDrive,
    Sought::RollingCircumference,
    Sought::GearRatio,
];

proptest! {
    #[test]
    fn the_set_with_what_was_found_does_what_was_wished(
        project in any_project(), engine in engine_speed(), road in road_speed(),
    ) {
        let wish = SpeedWish { engine, road };
        for candidate in &project.sets {
            let drivetrain = Drivetrain::resolve(&candidate.set, &project.tyre);
            for gear in all_gears(&drivetrain) {
                for sought in EACH {
                    // What no part that can exist fulfils is refused.
                    let Ok(found) = sought.found(&drivetrain, gear, wish) else { continue };
                    let changed = with_found(&candidate.set, gear.id, sought, found.value);
                    let after = Drivetrain::resolve(&changed, &project.tyre);
                    let same = all_gears(&after).find(|other| other.id == gear.id).unwrap();
                    let rpm = after.engine_rpm(same, road.kmh());
                    prop_assert!(is_close(rpm / engine.rpm(), 1.0, 1e-12), "{sought:?}: {rpm}");
                }
            }
        }
    }

    #[test]
    fn a_wish_for_what_a_set_does_already_finds_what_it_has(
        project in any_project(), road in road_speed(),
    ) {
        for candidate in &project.sets {
            let drivetrain = Drivetrain::resolve(&candidate.set, &project.tyre);
            for gear in all_gears(&drivetrain) {
                let rpm = drivetrain.engine_rpm(gear, road.kmh());
                let Ok(engine) = EngineSpeed::from_rpm(rpm) else { continue };
                let wish = SpeedWish { engine, road };
                let present = [gear.final_drive, drivetrain.rolling_circumference_mm, gear.ratio];
                for (sought, present) in EACH.into_iter().zip(present) {
                    // At the ends of its range the last digit may lie beyond.
                    let Ok(found) = sought.found(&drivetrain, gear, wish) else { continue };
                    prop_assert!(is_close(found.value / present, 1.0, 1e-12), "{found:?}");
                    prop_assert!(is_close(found.present, present, 0.0));
                    prop_assert!(found.difference_share().abs() < 1e-12);
                }
            }
        }
    }
}
