//! Does what is found for a wish fulfil it, in every gear of every set?

use crate::support::close::is_close;
use crate::support::projects::{any_project, engine_speed, road_speed};
use layshaft::finders::{Part, RpmDrop, Sought, SpeedWish, ranked};
use layshaft::gearing::{
    DrivenGear, Drivetrain, EngineSpeed, FinalDrive, GearId, GearSet, GearSetSpec, Ratio,
    RollingCircumference, Tyre, upshifts,
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

    #[test]
    fn a_drop_that_is_wished_is_the_drop_of_the_set_with_the_ratio_that_was_found(
        project in any_project(), drop_rpm in 1.0..=20_000.0_f64,
    ) {
        let drop = RpmDrop::from_rpm(drop_rpm).unwrap();
        for candidate in &project.sets {
            let drivetrain = Drivetrain::resolve(&candidate.set, &project.tyre);
            let chain: Vec<&DrivenGear> = drivetrain.chain().collect();
            for (at, pair) in chain.windows(2).enumerate() {
                let shift_rpm = pair[0].shift.unwrap().rpm();
                let Ok(wish) = SpeedWish::after_drop(&drivetrain, pair[0], drop) else { continue };
                prop_assert!(drop_rpm < shift_rpm);
                let sought = Sought::GearRatio;
                let Ok(found) = sought.found(&drivetrain, pair[1], wish) else { continue };
                let changed = with_found(&candidate.set, pair[1].id, sought, found.value);
                let after = Drivetrain::resolve(&changed, &project.tyre);
                let upshift = upshifts(&after)[at];
                prop_assert!(is_close(upshift.rpm_drop(), drop_rpm, 1e-12 * shift_rpm));
            }
        }
    }

    #[test]
    fn whoever_wishes_a_gear_as_it_is_keeps_it_on_any_tyre(
        project in any_project(), circumference_mm in 900.0..=13_000.0_f64, kmh in 1.0..=300.0_f64,
    ) {
        let other = RollingCircumference::from_mm(circumference_mm).unwrap();
        for candidate in &project.sets {
            let fitted = Drivetrain::resolve(&candidate.set, &project.tyre);
            let mut spec = candidate.set.to_spec();
            spec.tyre = Some(Tyre::RollingCircumference(other));
            let on_others = GearSet::try_from(spec).unwrap();
            let drivetrain = Drivetrain::resolve(&on_others, &project.tyre);
            for (gear, as_fitted) in all_gears(&drivetrain).zip(all_gears(&fitted)) {
                let Ok(wish) = SpeedWish::as_now(&fitted, as_fitted) else { continue };
                let sought = Sought::FinalDrive;
                let Ok(found) = sought.found(&drivetrain, gear, wish) else { continue };
                let changed = with_found(&on_others, gear.id, sought, found.value);
                let after = Drivetrain::resolve(&changed, &project.tyre);
                let same = all_gears(&after).find(|other| other.id == gear.id).unwrap();
                let (before, after) = (fitted.engine_rpm(as_fitted, kmh), after.engine_rpm(same, kmh));
                prop_assert!(is_close(after / before, 1.0, 1e-12), "{before} {after}");
            }
        }
    }

    #[test]
    fn parts_are_ranked_by_nearness_and_each_does_in_the_set_what_is_told_of_it(
        project in any_project(), engine in engine_speed(), road in road_speed(),
        values in proptest::collection::vec(0.3..=9.0_f64, 0..9),
        circumferences in proptest::collection::vec(900.0..=13_000.0_f64, 0..5),
    ) {
        let wish = SpeedWish { engine, road };
        let set = &project.sets.baseline().set;
        let drivetrain = Drivetrain::resolve(set, &project.tyre);
        let gear = drivetrain.chain().last().unwrap();
        for sought in EACH {
            let Ok(found) = sought.found(&drivetrain, gear, wish) else { continue };
            let ratio = |value: &f64| Ratio::from_number(*value).unwrap();
            let tyre = |mm: &f64| RollingCircumference::from_mm(*mm).map(Tyre::RollingCircumference);
            let parts: Vec<Part> = match sought {
                Sought::FinalDrive => {
                    values.iter().map(|value| Part::FinalDrive(ratio(value).into())).collect()
                }
                Sought::GearRatio => values.iter().map(|value| Part::Gear(ratio(value))).collect(),
                Sought::RollingCircumference => {
                    circumferences.iter().map(|mm| Part::Tyre(tyre(mm).unwrap())).collect()
                }
            };
            let ranked = ranked(parts.clone(), (sought, &found, wish));
            prop_assert_eq!(ranked.len(), parts.len());
            let off = |value: f64| (value / found.value - 1.0).abs();
            for two in ranked.windows(2) {
                prop_assert!(off(two[0].value) <= off(two[1].value));
            }
            for one in &ranked {
                let changed = with_found(set, gear.id, sought, one.part.value());
                let after = Drivetrain::resolve(&changed, &project.tyre);
                let same = all_gears(&after).find(|other| other.id == gear.id).unwrap();
                let rpm = after.engine_rpm(same, road.kmh());
                prop_assert!(is_close(one.engine_rpm / rpm, 1.0, 1e-12), "{one:?} {rpm}");
            }
        }
    }
}
