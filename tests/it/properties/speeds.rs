//! Do the two directions of speed invert each other, scale as they must, and stay finite?

use crate::support::close::is_close;
use crate::support::gear_sets::{name, ratio, results, rpm, spec, tyre};
use crate::support::projects::any_project;
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::gearing::{
    ActsOn, EngineLimits, GearResult, GearSet, GearSetSpec, Position, SetResults, Stage,
    rpm_from_speed, speed_from_rpm,
};
use proptest::prelude::*;

/// Whether two results of the same law agree, but for the rounding of a few operations.
fn agree(found: f64, expected: f64) -> bool {
    is_close(found, expected, expected.abs() * 1e-12)
}

fn engine_rpm() -> impl Strategy<Value = f64> {
    1.0..=30_000.0
}

/// From the smallest ratio in gearbox, final drive and four stages to the largest, evenly by decade.
fn overall_ratio() -> impl Strategy<Value = f64> {
    (-18.0..=15.6).prop_map(|decade: f64| 10.0_f64.powf(decade))
}

fn rolling_circumference_mm() -> impl Strategy<Value = f64> {
    900.0..=13_000.0
}

proptest! {
    #[test]
    fn the_two_directions_of_speed_invert_each_other(
        n in engine_rpm(), i in overall_ratio(), u in rolling_circumference_mm(), v in 0.001..=1000.0
    ) {
        prop_assert!(agree(rpm_from_speed(speed_from_rpm(n, i, u), i, u), n));
        prop_assert!(agree(speed_from_rpm(rpm_from_speed(v, i, u), i, u), v));
    }

    #[test]
    fn a_longer_circumference_goes_faster_in_proportion(
        n in engine_rpm(), i in overall_ratio(), u in 900.0..=3000.0, longer in 1.0..=4.0
    ) {
        let (before, after) = (speed_from_rpm(n, i, u), speed_from_rpm(n, i, u * longer));
        prop_assert!(agree(after, before * longer));
        let v = before;
        prop_assert!(agree(rpm_from_speed(v, i, u * longer), n / longer));
    }

    #[test]
    fn a_taller_gear_goes_faster_at_the_same_engine_speed(
        n in engine_rpm(), i in overall_ratio(), u in rolling_circumference_mm(), step in 1.001..=10.0
    ) {
        prop_assert!(speed_from_rpm(n, i / step, u) > speed_from_rpm(n, i, u));
        prop_assert!(rpm_from_speed(100.0, i / step, u) < rpm_from_speed(100.0, i, u));
    }

    #[test]
    fn every_figure_of_a_valid_project_is_finite_and_above_zero(project in any_project()) {
        for set in &ProjectResults::of(&project).sets {
            for figure in figures(set) {
                prop_assert!(figure.is_finite() && figure > 0.0, "{figure} in {set:?}");
            }
        }
    }

    #[test]
    fn every_finding_of_a_valid_project_is_one_short_sentence(project in any_project()) {
        for finding in Analysis::from(&project).findings() {
            let sentence = &finding.sentence;
            prop_assert!((20..300).contains(&sentence.chars().count()), "{sentence}");
            prop_assert!(!sentence.contains(char::is_control), "{sentence:?}");
        }
    }
}

/// Every number that is read off a set and has no sign.
fn figures(set: &SetResults) -> Vec<f64> {
    let drivetrain = &set.drivetrain;
    let of_gear = |result: &GearResult| {
        let gear = &result.gear;
        let upshift = result.upshift;
        let always = [
            gear.ratio,
            gear.final_drive,
            gear.overall_ratio,
            result.speed_per_1000_rpm_kmh,
            result.redline_speed_kmh,
            drivetrain.speed_kmh(gear, 30_000.0),
            drivetrain.engine_rpm(gear, 1000.0),
        ];
        let on_chain = [
            result.step,
            result.progression,
            result.idle_speed_kmh,
            upshift.map(|up| up.shift_rpm),
            upshift.map(|up| up.rpm_after_shift),
            upshift.map(|up| up.speed_kmh),
            // Below the share of 1 that would leave the engine standing; negative where gears rise.
            upshift.map(|up| 1.0 - up.drop_share()),
        ];
        always.into_iter().chain(on_chain.into_iter().flatten())
    };
    let gears = set.gears.iter().chain(&set.reverse).flat_map(of_gear);
    let whole = [set.spread, drivetrain.rolling_circumference_mm];
    gears.chain(whole).collect()
}

/// First gear, final drive and four stages of `number`, second gear of its counterpart.
fn extreme(number: f64, counterpart: f64) -> GearSet {
    let stage = Stage {
        name: name("stage"),
        positions: vec![Position {
            name: name("only"),
            ratio: ratio(number),
        }],
        present: 0,
        acts_on: ActsOn::EveryGear,
        shows_others: false,
    };
    let parts = GearSetSpec {
        stages: vec![stage; GearSet::MOST_STAGES],
        ..spec(vec![ratio(number), ratio(counterpart)], ratio(number))
    };
    GearSet::try_from(parts).unwrap()
}

#[test]
fn the_ends_of_every_range_give_finite_figures() {
    for (number, counterpart) in [(0.001, 400.0), (400.0, 0.001)] {
        for rolling_circumference_mm in [900.0, 13_000.0] {
            for redline_rpm in [1.0, 30_000.0] {
                let limits = EngineLimits {
                    idle: Some(rpm(30_000.0)),
                    lowest_useful: Some(rpm(1.0)),
                    redline: rpm(redline_rpm),
                };
                let set = extreme(number, counterpart);
                let results = SetResults::of(&set, &tyre(rolling_circumference_mm), &limits);
                let odd = figures(&results)
                    .into_iter()
                    .find(|f| !f.is_finite() || *f <= 0.0);
                assert_eq!(
                    odd, None,
                    "{number}, {rolling_circumference_mm}, {redline_rpm}"
                );
            }
        }
    }
}

#[test]
fn a_set_s_own_tyre_takes_the_place_of_the_vehicle_s() {
    let own = GearSetSpec {
        tyre: Some(tyre(3000.0)),
        ..spec(vec![ratio(1.0)], ratio(4.0))
    };
    let on_own = results(&GearSet::try_from(own).unwrap(), 2000.0);
    // 0.06 · 1000 · 3 ÷ 4
    assert!(agree(on_own.gears[0].speed_per_1000_rpm_kmh, 45.0));
}
