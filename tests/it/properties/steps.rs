//! Do steps, spread, progression and upshifts of any gear set belong together?

use crate::support::close::is_close;
use crate::support::gear_sets::{name, ratio, redline, results, spec, tyre};
use crate::support::projects::any_gear_set;
use layshaft::gearing::{
    ActsOn, GearResult, GearRole, GearSet, GearSetSpec, Label, Position, Reverse, SetResults, Stage,
};
use proptest::prelude::*;

/// Whether two results agree, but for the rounding of a dozen operations.
fn agree(found: f64, expected: f64) -> bool {
    is_close(found, expected, expected.abs() * 1e-12)
}

proptest! {
    #[test]
    fn the_steps_multiply_to_the_spread(set in any_gear_set()) {
        let results = results(&set, 2000.0);
        let product: f64 = results.gears.iter().filter_map(|g| g.step).product();
        prop_assert!(agree(product, results.spread), "{product}, {}", results.spread);
    }

    #[test]
    fn only_a_gear_with_a_next_one_has_a_step_and_an_upshift(set in any_gear_set()) {
        let results = results(&set, 2000.0);
        let top = results.chain().last().map(|g| g.gear.id);
        for gear in results.gears.iter().chain(&results.reverse) {
            let shifts = gear.gear.role == Some(GearRole::Shifted) && Some(gear.gear.id) != top;
            prop_assert_eq!(gear.step.is_some(), shifts);
            prop_assert_eq!(gear.upshift.is_some(), shifts);
        }
    }

    #[test]
    fn a_progression_is_a_step_over_the_step_after_it(set in any_gear_set()) {
        let results = results(&set, 2000.0);
        let chain: Vec<&GearResult> = results.chain().collect();
        for (gear, next) in chain.iter().zip(chain.iter().skip(1)) {
            let expected = gear.step.zip(next.step).map(|(step, after)| step / after);
            prop_assert_eq!(gear.progression.is_some(), expected.is_some());
            if let (Some(found), Some(expected)) = (gear.progression, expected) {
                prop_assert!(agree(found, expected), "{found}, {expected}");
            }
        }
    }

    #[test]
    fn an_upshift_keeps_the_road_speed_and_starts_at_the_gear_s_shift_point(
        set in any_gear_set()
    ) {
        let results = results(&set, 2000.0);
        let drivetrain = &results.drivetrain;
        let chain: Vec<&GearResult> = results.chain().collect();
        for (gear, next) in chain.iter().zip(chain.iter().skip(1)) {
            let upshift = gear.upshift.unwrap();
            let typed = set.gear(gear.gear.id).unwrap();
            prop_assert!(agree(upshift.shift_rpm, set.shift_of(typed).rpm()));
            let before = drivetrain.speed_kmh(&gear.gear, upshift.shift_rpm);
            let after = drivetrain.speed_kmh(&next.gear, upshift.rpm_after_shift);
            prop_assert!(agree(upshift.speed_kmh, before) && agree(after, before));
            let down_again = upshift.rpm_after_shift + upshift.rpm_drop();
            let tolerance = 1e-9 * upshift.shift_rpm.max(upshift.rpm_after_shift);
            prop_assert!(is_close(down_again, upshift.shift_rpm, tolerance));
        }
    }

    #[test]
    fn a_set_laid_out_by_the_progressive_law_reads_back_its_factor(
        z in 3_u32..=10, top in 0.5..=1.2, spread in 2.0..=9.0, narrowing in 1.0..=1.12
    ) {
        let spread: f64 = spread;
        let (z_f, narrowing): (f64, f64) = (f64::from(z), narrowing);
        let whole = 0.5 * (z_f - 1.0) * (z_f - 2.0);
        let last = (spread / narrowing.powf(whole)).powf(1.0 / (z_f - 1.0));
        let gear = |n: u32| {
            let below_top = f64::from(z - n);
            ratio(top * last.powf(below_top) * narrowing.powf(0.5 * below_top * (below_top - 1.0)))
        };
        let set = GearSet::try_from(spec((1..=z).map(gear).collect(), ratio(4.0))).unwrap();
        let results = results(&set, 2000.0);
        prop_assert!(is_close(results.spread, spread, 1e-9));
        for found in results.gears.iter().filter_map(|g| g.progression) {
            prop_assert!(is_close(found, narrowing, 1e-9), "{found}");
        }
    }

    #[test]
    fn a_stage_that_acts_on_every_gear_changes_speeds_but_no_steps(
        set in any_gear_set(), number in 0.3..=3.0
    ) {
        let mut parts = set.to_spec();
        parts.stages.truncate(3);
        let plain = results(&GearSet::try_from(parts.clone()).unwrap(), 2000.0);
        parts.stages.push(Stage {
            name: name("one more"),
            positions: vec![Position { name: name("only"), ratio: ratio(number) }],
            present: 0,
            acts_on: ActsOn::EveryGear,
            shows_others: false,
        });
        let staged = results(&GearSet::try_from(parts).unwrap(), 2000.0);
        prop_assert!(agree(staged.spread, plain.spread));
        for (with, without) in staged.gears.iter().zip(&plain.gears) {
            prop_assert!(agree(with.redline_speed_kmh * number, without.redline_speed_kmh));
            if let (Some(with), Some(without)) = (with.step, without.step) {
                prop_assert!(agree(with, without));
            }
        }
    }
}

fn five_speed() -> GearSetSpec {
    let gears = [3.54, 1.91, 1.31, 1.03, 0.83].map(ratio);
    spec(gears.to_vec(), ratio(4.06))
}

fn figures_of_chain(parts: GearSetSpec) -> Vec<GearResult> {
    let set = GearSet::try_from(parts).unwrap();
    let results = SetResults::of(&set, &tyre(2000.0), &redline(7000.0));
    results.chain().cloned().collect()
}

#[test]
fn a_crawler_and_a_reverse_gear_stand_outside_the_chain() {
    let plain = figures_of_chain(five_speed());
    let mut parts = five_speed();
    let mut crawler = crate::support::gear_sets::gear(6, ratio(6.5));
    crawler.role = GearRole::Crawler;
    crawler.label = Label::new("C").unwrap();
    parts.gears.insert(2, crawler);
    parts.reverse = Some(Reverse {
        ratio: ratio(3.3),
        final_drive: 0,
    });
    assert_eq!(figures_of_chain(parts), plain);
}

#[test]
fn each_gear_is_multiplied_by_the_final_drive_it_names() {
    let mut parts = five_speed();
    parts.final_drives.push(ratio(2.03).into());
    for gear in &mut parts.gears[2..] {
        gear.final_drive = 1;
    }
    let chain = figures_of_chain(parts);
    let overall: Vec<f64> = chain.iter().map(|g| g.gear.overall_ratio).collect();
    let expected = [
        3.54 * 4.06,
        1.91 * 4.06,
        1.31 * 2.03,
        1.03 * 2.03,
        0.83 * 2.03,
    ];
    for (found, expected) in overall.iter().zip(expected) {
        assert!(agree(*found, expected), "{found}, {expected}");
    }
}

#[test]
fn a_stage_multiplies_only_the_gears_it_acts_on_and_only_in_its_present_position() {
    let mut parts = five_speed();
    let position = |number| Position {
        name: name("position"),
        ratio: ratio(number),
    };
    parts.stages.push(Stage {
        name: name("overdrive"),
        positions: vec![position(1.0), position(0.78)],
        present: 1,
        acts_on: ActsOn::Only([parts.gears[4].id].into()),
        shows_others: false,
    });
    let chain = figures_of_chain(parts);
    assert!(agree(chain[3].gear.overall_ratio, 1.03 * 4.06));
    assert!(agree(chain[4].gear.overall_ratio, 0.83 * 4.06 * 0.78));
}
