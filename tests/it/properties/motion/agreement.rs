//! Do runs by quadrature over the speed and by steps in time agree?

use super::any_vehicle::any_vehicle;
use super::stepping::stepped;
use crate::support::vehicles::until;
use layshaft::motion::Moment;
use proptest::prelude::*;

/// How long both are followed, in s.
const MOST_S: f64 = 40.0;

/// What both methods may differ by in s.
const AGREE_S: f64 = 1e-6;

/// Below this acceleration in m/s² a time says more of the last digits of the speed than of the method.
const LEAST_M_S2: f64 = 0.01;

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(96) })]
    #[test]
    fn both_methods_agree_to_a_millionth_of_a_second(plain in any_vehicle()) {
        let speeds = [5.0, 40.0, 60.0, 100.0, 130.0, 160.0].map(|kmh| kmh / 3.6);
        let distances = [0.3048, 50.0, 400.0, 402.336];
        let other = stepped(&plain, &speeds, &distances, MOST_S);
        let (powertrain, on_road) = (plain.powertrain(), plain.on_road());
        let goal = until(speeds[5], 1000.0);
        let run = powertrain.run(&on_road, &plain.driving(), &plain.shift_rpms, goal);
        let by_speed = speeds.iter().map(|speed| run.at_speed(*speed)).zip(&other.speeds);
        for (speed, (mine, other)) in speeds.iter().zip(by_speed) {
            let mine = mine.filter(|moment| moment.time_s < MOST_S - 0.01);
            let other = other.filter(|(time, ..)| *time < MOST_S - 0.01);
            let Some((time_s, distance_m, acceleration)) = other else {
                prop_assert!(mine.is_none(), "{speed} m/s: {mine:?}");
                continue;
            };
            if acceleration < LEAST_M_S2 {
                continue;
            }
            let Some(mine) = mine else {
                return Err(TestCaseError::fail(format!("{speed} m/s: only by steps, {time_s}")));
            };
            agree(&format!("{speed} m/s"), mine, time_s, (mine.distance_m, distance_m))?;
        }
        let by_distance = distances.iter().map(|way| run.at_distance(*way)).zip(&other.distances);
        for (way, (mine, other)) in distances.iter().zip(by_distance) {
            let mine = mine.filter(|moment| moment.time_s < MOST_S - 0.01);
            let other = other.filter(|(time, ..)| *time < MOST_S - 0.01);
            match (mine, other) {
                (Some(mine), Some((time_s, speed, _))) => {
                    agree(&format!("{way} m"), mine, time_s, (mine.speed_m_s, speed))?;
                }
                (None, None) => {}
                (mine, other) => {
                    return Err(TestCaseError::fail(format!("{way} m: {mine:?}, {other:?}")));
                }
            }
        }
    }
}

/// Compares times, and distances or speeds beside them.
fn agree(what: &str, mine: Moment, time_s: f64, beside: (f64, f64)) -> Result<(), TestCaseError> {
    prop_assert!(
        (mine.time_s - time_s).abs() <= AGREE_S,
        "{what}: {} s, by steps {time_s}",
        mine.time_s
    );
    let (found, expected) = beside;
    prop_assert!(
        (found - expected).abs() <= 1e-5 + 1e-7 * expected.abs(),
        "{what}: beside it {found}, by steps {expected}"
    );
    Ok(())
}
