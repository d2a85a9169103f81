//! What makes a run faster, and what never does?

use super::any_vehicle::any_vehicle;
use crate::support::plain_vehicle::Plain;
use crate::support::vehicles::until;
use layshaft::motion::Run;
use proptest::prelude::*;

/// What rounding leaves open, in s.
const ROUNDING_S: f64 = 1e-7;

/// By how much random shift points may win over the best ones, in s.
const LUCK_S: f64 = 1e-4;

const TARGETS: [f64; 4] = [30.0 / 3.6, 60.0 / 3.6, 100.0 / 3.6, 150.0 / 3.6];

fn run(plain: &Plain, shift_rpms: &[f64]) -> Run {
    let (powertrain, on_road) = (plain.powertrain(), plain.on_road());
    powertrain.run(
        &on_road,
        &plain.driving(),
        shift_rpms,
        until(TARGETS[3], 0.0),
    )
}

fn times(plain: &Plain) -> [f64; 4] {
    let run = run(plain, &plain.shift_rpms);
    TARGETS.map(|target| {
        run.at_speed(target)
            .map_or(f64::INFINITY, |moment| moment.time_s)
    })
}

/// Fails where one of the times of `better` is later.
fn assert_no_later(better: &Plain, worse: &Plain) -> Result<(), TestCaseError> {
    for (better, worse) in times(better).into_iter().zip(times(worse)) {
        prop_assert!(
            better <= worse + ROUNDING_S,
            "{better} s, not at most {worse}"
        );
    }
    Ok(())
}

/// On a level road, with shift points that land within the next gear.
fn driven_well() -> impl Strategy<Value = Plain> {
    any_vehicle().prop_map(|plain| {
        let mut plain = plain.on_level();
        let low_rpm = plain.points[0].0.max(plain.idle_rpm);
        let steps = plain.ratios.windows(2).map(|pair| pair[0] / pair[1]);
        // A fifth more than what lands at the lowest engine speed, so that no pause takes it below.
        let least: Vec<f64> = steps.map(|step| 1.2 * low_rpm * step).collect();
        for (shift, least) in plain.shift_rpms.iter_mut().zip(least) {
            *shift = shift.max(least);
        }
        plain
    })
}

fn lands_within(plain: &Plain) -> bool {
    let high_rpm = plain
        .redline_rpm
        .min(plain.points[plain.points.len() - 1].0);
    plain.shift_rpms.iter().all(|shift| *shift <= high_rpm)
}

/// The same with a torque that rises to one peak and falls from there.
fn with_one_peak(plain: Plain) -> Plain {
    let mut torques: Vec<f64> = plain.points.iter().map(|(_, torque)| *torque).collect();
    torques.sort_by(f64::total_cmp);
    let (rising, falling): (Vec<_>, Vec<_>) = torques
        .into_iter()
        .enumerate()
        .partition(|(at, _)| at % 2 == 0);
    let in_order = rising.into_iter().chain(falling.into_iter().rev());
    let speeds = plain.points.iter().map(|(rpm, _)| *rpm);
    Plain {
        points: speeds.zip(in_order.map(|(_, torque)| torque)).collect(),
        ..plain
    }
}

/// Whether each gear is ahead of the next up to one speed, or all the way, and behind it from there on.
fn crosses_once(plain: &Plain) -> bool {
    let (powertrain, free) = (plain.powertrain(), plain.on_road().without_grip_limit());
    powertrain.gears.windows(2).all(|pair| {
        let (low, high) = (pair[1].low_m_s(), pair[0].high_m_s());
        let speeds = (0..=400).map(|step| low + (high - low) * f64::from(step) / 400.0);
        let leads = speeds.filter_map(|speed| {
            let lower = pair[0].acceleration_m_s2(&free, speed)?;
            Some(lower >= pair[1].acceleration_m_s2(&free, speed)?)
        });
        leads
            .collect::<Vec<bool>>()
            .windows(2)
            .all(|pair| pair[0] || !pair[1])
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(192) })]
    #[test]
    fn more_power_is_never_slower(plain in driven_well(), more in 1.0..1.6) {
        let stronger = Plain {
            points: plain.points.iter().map(|(rpm, torque)| (*rpm, torque * more)).collect(),
            ..plain.clone()
        };
        assert_no_later(&stronger, &plain)?;
    }

    #[test]
    fn on_level_road_below_the_grip_limit_more_mass_is_never_faster(
        plain in driven_well(), more in 1.0..1.6
    ) {
        // A pause is what a heavier vehicle bears better.
        let plain = Plain { pause_s: 0.0, ..plain.without_grip_limit() };
        let heavier = Plain { mass_kg: plain.mass_kg * more, ..plain.clone() };
        assert_no_later(&plain, &heavier)?;
    }

    #[test]
    fn on_level_road_a_longer_pause_is_never_faster(plain in driven_well(), longer in 0.0..1.0) {
        let patient = Plain { pause_s: plain.pause_s + longer, ..plain.clone() };
        assert_no_later(&plain, &patient)?;
    }

    #[test]
    fn without_a_pause_best_shift_points_that_cross_once_are_never_slower_than_others(plain in driven_well()) {
        let plain = with_one_peak(Plain { pause_s: 0.0, ..plain });
        prop_assume!(lands_within(&plain) && crosses_once(&plain));
        let (powertrain, on_road) = (plain.powertrain(), plain.on_road());
        let best = powertrain.best_shift_rpms(&on_road, &plain.driving());
        let gears = powertrain.gears.iter();
        // The law speaks of targets above all changes.
        let shift_m_s = gears.zip(plain.shift_rpms.iter().zip(&best));
        let last = shift_m_s.fold(0.0, |last: f64, (gear, (other, best))| {
            last.max(gear.speed_m_s(other.max(*best)))
        });
        let goal = until(last * 1.02, 0.0);
        let time = |shifts: &[f64]| {
            let run = powertrain.run(&on_road, &plain.driving(), shifts, goal);
            run.at_speed(goal.speed_m_s).map_or(f64::INFINITY, |moment| moment.time_s)
        };
        let (with_best, with_others) = (time(&best), time(&plain.shift_rpms));
        prop_assert!(with_best <= with_others + LUCK_S, "{with_best} s at {best:?}, {with_others}");
    }
}
