//! Do laid out steps keep first, top and their law, whatever is moved, and does a set take them whole?

use crate::support::close::is_close;
use crate::support::gear_sets::ratio;
use crate::support::projects::any_gear_set;
use layshaft::finders::{FillWish, LayoutError, Progression, StepLayout, TAKEN_GRAIN};
use layshaft::gearing::{Drivetrain, GearRole, GearSet, RollingCircumference, Tyre, ratio_behind};
use proptest::prelude::*;

fn any_layout() -> impl Strategy<Value = StepLayout> {
    (2_usize..=12, 0.3..=2.0_f64, 1.2..=20.0_f64, 0.9..=1.1_f64).prop_filter_map(
        "a step not above 1",
        |(gears, top, spread, factor)| {
            let progression = Progression::from_factor(factor).unwrap();
            StepLayout::between(top * spread, top, gears, progression).ok()
        },
    )
}

fn agree(found: f64, expected: f64) -> bool {
    is_close(found / expected, 1.0, 1e-12)
}

proptest! {
    #[test]
    fn a_layout_keeps_first_and_top_and_narrows_by_one_factor(
        gears in 2_usize..=12, top in 0.3..=2.0_f64, spread in 1.01..=30.0_f64, factor in 0.5..=2.0_f64,
    ) {
        let progression = Progression::from_factor(factor).unwrap();
        let first = top * spread;
        match StepLayout::between(first, top, gears, progression) {
            Ok(layout) => {
                let ratios = layout.ratios();
                prop_assert_eq!(ratios.len(), gears);
                prop_assert!(is_close(ratios[0], first, 0.0));
                prop_assert!(is_close(ratios[gears - 1], top, 0.0));
                let steps = layout.steps();
                prop_assert!(steps.iter().all(|step| *step > 1.0), "{:?}", steps);
                for two in steps.windows(2) {
                    prop_assert!(agree(two[0] / two[1], factor), "{:?}", steps);
                }
            }
            Err(problem) => {
                // Some step of the law would not lead up.
                prop_assert_eq!(&problem, &LayoutError::Progression(factor));
                let count = gears as f64 - 1.0;
                let last = (spread / factor.powf(0.5 * count * (count - 1.0))).powf(1.0 / count);
                let first = last * factor.powf(count - 1.0);
                prop_assert!(last.min(first) < 1.0 + 1e-9, "{} {}", last, first);
            }
        }
    }

    #[test]
    fn a_moved_step_becomes_what_is_wished_and_moves_one_gear_between_first_and_top(
        layout in any_layout(), at in 0_usize..12, wished in 0.5..=10.0_f64,
    ) {
        let moved = layout.with_step(at, wished);
        let pairs = || layout.ratios().iter().zip(moved.ratios());
        let changed = pairs().filter(|(before, after)| before.to_bits() != after.to_bits()).count();
        let last = layout.ratios().len() - 1;
        if let Some([least, most]) = layout.range_of_step(at) {
            prop_assert!(agree(moved.steps()[at], wished.clamp(least, most)), "{:?}", moved);
            prop_assert!(changed <= 1);
            // No step near it becomes narrower than a hand may leave it.
            let least = StepLayout::LEAST_STEP * (1.0 - 1e-12);
            for near in [at.wrapping_sub(1), at, at + 1] {
                let [before, after] = [&layout, &moved].map(|of| of.steps().get(near).copied());
                let is_kept = after.zip(before).is_none_or(|(after, before)| after >= least.min(before));
                prop_assert!(is_kept, "{:?}", moved.steps());
            }
        } else {
            prop_assert_eq!(changed, 0);
        }
        for end in [0, last] {
            prop_assert!(is_close(moved.ratios()[end], layout.ratios()[end], 0.0));
        }
    }

    #[test]
    fn a_filled_set_has_the_gears_and_the_overall_steps_that_were_laid_out(
        set in any_gear_set(), gears in 2_usize..=8, top in 0.4..=1.2_f64, spread in 2.0..=9.0_f64,
    ) {
        let wish = FillWish { first: ratio(top * spread), top: ratio(top), gears };
        // Behind several output shafts first may not be shorter than top.
        let Ok(layout) = wish.layout(&set, Progression::EVEN) else { return Ok(()) };
        let crawlers = set.gears.iter().filter(|gear| gear.role == GearRole::Crawler);
        if crawlers.clone().count() + gears > GearSet::MOST_GEARS {
            prop_assert!(wish.filled(&set, &layout).is_err());
            return Ok(());
        }
        let Ok(spec) = wish.filled(&set, &layout) else {
            // A ratio that no gear can have.
            return Ok(());
        };
        let filled = GearSet::try_from(spec).unwrap();
        prop_assert_eq!(filled.chain().count(), gears);
        prop_assert_eq!(&filled.reverse, &set.reverse);
        prop_assert_eq!(&filled.final_drives, &set.final_drives);
        for crawler in crawlers {
            prop_assert_eq!(filled.gear(crawler.id), Some(crawler));
        }
        for (before, after) in set.chain().zip(filled.chain()) {
            prop_assert_eq!((before.id, &before.label), (after.id, &after.label));
        }
        let circumference = RollingCircumference::from_mm(2000.0).unwrap();
        let tyre = Tyre::RollingCircumference(circumference);
        let drivetrain = Drivetrain::resolve(&filled, &tyre);
        for (gear, wished) in drivetrain.chain().zip(layout.ratios()) {
            let grain = TAKEN_GRAIN * ratio_behind(&filled, gear.id).unwrap();
            prop_assert!((gear.overall_ratio - wished).abs() <= 0.51 * grain, "{:?}", gear);
        }
    }
}

#[test]
fn what_cannot_be_laid_out_is_answered_with_a_sentence() {
    let between = |first: f64, top: f64, gears: usize, factor: f64| {
        let progression = Progression::from_factor(factor).unwrap();
        let layout = StepLayout::between(first, top, gears, progression);
        layout.unwrap_err().to_string()
    };
    assert!(between(3.6, 0.8, 1, 1.0).contains("2 to 12 gears, not 1"));
    assert!(between(3.6, 0.8, 13, 1.0).contains("not 13"));
    assert!(between(0.8, 0.8, 5, 1.0).contains("0.8 is not above 0.8"));
    assert!(between(3.6, 0.8, 9, 1.5).contains("a progression of 1.5"));
}
