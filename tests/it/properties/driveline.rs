//! Do the checks of the driveline belong to the set they are of, whatever set?

use crate::support::close::is_close;
use crate::support::gear_sets::{self, rpm, tyre};
use crate::support::projects::{any_gear_set, engine_speed, number};
use layshaft::checks::{
    Axle, DownBy, EngineSpeedError, LowestGear, Measured, RoadSpeedError, SecondAxle, TakenOff,
    TwoAxles, downshifts, worst_missed_shift,
};
use layshaft::gearing::{DrivenGear, Drivetrain, GearSet, RoadSpeed, RollingCircumference, Tyre};
use proptest::prelude::*;

proptest! {
    #[test]
    fn the_lowest_gear_is_the_lowest_of_all_gears_in_all_positions(set in any_gear_set()) {
        let lowest = LowestGear::of(&set).unwrap();
        let mut all = Vec::new();
        let counts: Vec<usize> = set.stages.iter().map(|stage| stage.positions.len()).collect();
        for number in 0..counts.iter().product::<usize>() {
            let mut spec = set.to_spec();
            let mut rest = number;
            for (stage, count) in spec.stages.iter_mut().zip(&counts) {
                stage.present = rest % count;
                rest /= count;
            }
            let set = GearSet::try_from(spec).unwrap();
            let drivetrain = Drivetrain::resolve(&set, &tyre(2000.0));
            all.extend(drivetrain.gears.into_iter().map(|gear| gear.overall_ratio));
        }
        let most = all.into_iter().fold(0.0, f64::max);
        prop_assert!(is_close(lowest.overall_ratio, most, most * 1e-12));
    }

    #[test]
    fn at_the_fastest_road_speed_of_a_downshift_the_lower_gear_is_at_the_redline(
        set in any_gear_set(), redline in engine_speed(),
    ) {
        let drivetrain = Drivetrain::resolve(&set, &tyre(2000.0));
        let chain: Vec<&DrivenGear> = drivetrain.chain().collect();
        let found = downshifts(&drivetrain, redline);
        prop_assert_eq!(found.len() + 1, chain.len());
        for (downshift, gears) in found.iter().zip(chain.windows(2)) {
            prop_assert_eq!([&downshift.to, &downshift.from], [&gears[0].label, &gears[1].label]);
            let lower_rpm = drivetrain.engine_rpm(gears[0], downshift.fastest_kmh);
            prop_assert!(is_close(lower_rpm, redline.rpm(), redline.rpm() * 1e-12));
        }
    }

    #[test]
    fn no_missed_shift_is_worse_than_the_worst(set in any_gear_set(), redline in engine_speed()) {
        let drivetrain = Drivetrain::resolve(&set, &tyre(2000.0));
        let chain: Vec<&DrivenGear> = drivetrain.chain().collect();
        for down_by in DownBy::BOTH {
            let worst = worst_missed_shift(&drivetrain, redline, down_by);
            prop_assert_eq!(worst.is_some(), chain.len() > down_by.gears() + 1);
            let Some(worst) = worst else { continue };
            for at in down_by.gears()..chain.len() - 1 {
                let step = chain[at - down_by.gears()].overall_ratio / chain[at].overall_ratio;
                let after_rpm = chain[at].shift.unwrap().rpm() * step;
                prop_assert!(after_rpm <= worst.engine_rpm * (1.0 + 1e-12));
            }
            let over_rpm = redline.rpm() * (1.0 + worst.over_share);
            // A share of the redline has the digits of the redline.
            let digits = (worst.engine_rpm + redline.rpm()) * 1e-12;
            prop_assert!(is_close(over_rpm, worst.engine_rpm, digits));
        }
    }

    #[test]
    fn an_engine_speed_read_at_a_road_speed_gives_the_overall_ratio_back(
        set in any_gear_set(), rpm in number(1.0..=30_000.0), mm in number(900.0..=13_000.0),
    ) {
        let circumference = RollingCircumference::from_mm(mm).unwrap();
        let drivetrain = Drivetrain::resolve(&set, &Tyre::RollingCircumference(circumference));
        prop_assume!(is_close(drivetrain.rolling_circumference_mm, mm, 0.0));
        for gear in &drivetrain.gears {
            let road = RoadSpeed::from_kmh(drivetrain.speed_kmh(gear, rpm));
            let Ok(road) = road else { continue };
            let measured = Measured::Driven {
                engine: gear_sets::rpm(rpm),
                engine_error: EngineSpeedError::from_rpm(0.0).unwrap(),
                road,
                road_error: RoadSpeedError::from_kmh(0.0).unwrap(),
                circumference,
            };
            let found = measured.overall_ratio();
            let expected = gear.overall_ratio;
            prop_assert!(is_close(found.overall_ratio, expected, expected * 1e-12));
            let all: Vec<f64> = drivetrain.gears.iter().map(|gear| gear.overall_ratio).collect();
            let nearest = found.nearest(&all).unwrap();
            prop_assert!(is_close(all[nearest.at], expected, expected * 1e-12));
            prop_assert!(nearest.within_error.contains(&nearest.at));
        }
    }

    #[test]
    fn a_mismatch_is_the_same_from_either_axle_and_a_tyre_makes_up_for_a_final_drive(
        ratios in [number(0.5..=20.0), number(0.5..=20.0)],
        mm in [number(900.0..=13_000.0), number(900.0..=13_000.0)],
    ) {
        let of = |first: usize, axle, second_mm| {
            let other = 1 - first;
            let second = SecondAxle {
                axle,
                taken_off: TakenOff::BeforeFinalDrive,
                angle_drive: None,
                final_drive: gear_sets::ratio(ratios[other]),
                rolling_circumference_mm: second_mm,
            };
            TwoAxles::of(ratios[first], mm[first], &second)
        };
        let (from_front, from_rear) = (of(0, Axle::Rear, mm[1]), of(1, Axle::Front, mm[0]));
        prop_assert_eq!(from_front.mismatch(), from_rear.mismatch());
        let made_up_mm = mm[0] * ratios[1] / ratios[0];
        let (_, percent) = of(0, Axle::Rear, made_up_mm).mismatch();
        prop_assert!(percent < 1e-10, "{percent}");
    }
}

#[test]
fn the_worst_missed_shifts_of_a_plain_set_are_those_into_first() {
    let set = gear_sets::set(&[4.0, 2.0, 1.5, 1.0, 0.8], 4.0);
    let drivetrain = Drivetrain::resolve(&set, &tyre(2000.0));
    let worst = |down_by| worst_missed_shift(&drivetrain, rpm(6500.0), down_by).unwrap();
    // All are shifted at 6000 rpm.
    let single = worst(DownBy::One);
    assert_eq!((single.from.as_str(), single.to.as_str()), ("2", "1"));
    assert!(is_close(single.engine_rpm, 12_000.0, 1e-9));
    let double = worst(DownBy::Two);
    assert_eq!((double.from.as_str(), double.to.as_str()), ("3", "1"));
    assert!(is_close(double.engine_rpm, 16_000.0, 1e-9));
    assert!(is_close(double.over_share, 16.0 / 6.5 - 1.0, 1e-12));
}
