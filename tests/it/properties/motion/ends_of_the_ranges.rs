//! Does everything that can be typed give finite figures, in bounded work?

use crate::support::plain_vehicle::{Held, Plain, Tyres};
use crate::support::vehicles::until;
use layshaft::motion::{DrivenAxle, Moment, OnRoad, Powertrain, Run};
use proptest::prelude::*;

/// The most pieces of a run: twelve gears, 199 spans of the torque curve in each, and what cuts them.
const MOST_PIECES: usize = 12 * 199 * 4;

/// From one end of a range to the other, with the ends themselves now and then.
fn between(low: f64, high: f64) -> BoxedStrategy<f64> {
    prop_oneof![1 => Just(low), 1 => Just(high), 3 => low..=high].boxed()
}

/// The same evenly by decade, and 0 now and then.
fn by_decade(low: f64, high: f64) -> BoxedStrategy<f64> {
    let decades = (low.log10()..=high.log10()).prop_map(|decade| 10.0_f64.powf(decade));
    let within = decades.prop_map(move |number| number.clamp(low, high));
    prop_oneof![1 => Just(0.0), 1 => Just(high), 4 => within].boxed()
}

/// Points as close as numbers can be, or far from each other.
fn points() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let step = by_decade(1e-12, 3000.0);
    let steps = prop::collection::vec((step, between(0.0, 20_000.0)), 1..=199);
    (between(1.0, 20_000.0), between(0.0, 20_000.0), steps).prop_map(|(first, torque, steps)| {
        let mut points = vec![(first, torque)];
        let mut speed = first;
        for (step, torque) in steps {
            let next = (speed + step).max(speed.next_up());
            if next <= 30_000.0 {
                points.push((next, torque));
                speed = next;
            }
        }
        if points.len() < 2 {
            points.push((30_000.0, torque));
        }
        points
    })
}

fn held() -> impl Strategy<Value = Held> {
    let estimated = (by_decade(1e-300, 0.2), by_decade(1e-300, 20.0));
    let measured = (
        by_decade(1e-300, 100_000.0),
        between(-1000.0, 1000.0),
        by_decade(1e-300, 100.0),
    );
    prop_oneof![
        estimated.prop_map(|(rolling, area)| Held::Estimated(rolling, area)),
        measured.prop_map(|(a, b, c)| Held::Measured(a, b, c)),
    ]
}

fn tyres() -> impl Strategy<Value = Option<Tyres>> {
    let driven = prop_oneof![
        Just(DrivenAxle::Front),
        Just(DrivenAxle::Rear),
        Just(DrivenAxle::All)
    ];
    let transfer = prop::option::of((between(0.3, 20.0), by_decade(1e-300, 5.0)));
    let tyres = (driven, between(0.0, 5.0), between(0.0, 1.0), transfer);
    prop::option::of(
        tyres.prop_map(|(driven, adhesion, front_share, transfer)| Tyres {
            driven,
            adhesion,
            front_share,
            transfer,
        }),
    )
}

fn ratio() -> BoxedStrategy<f64> {
    let usual = (-0.3..=0.7).prop_map(|decade: f64| 10.0_f64.powf(decade));
    let any = (-3.0..=2.6).prop_map(|decade: f64| 10.0_f64.powf(decade).clamp(0.001, 400.0));
    prop_oneof![usual, any].boxed()
}

fn whatever_can_be_typed() -> impl Strategy<Value = Plain> {
    let engine = (points(), between(1.0, 30_000.0), between(1.0, 30_000.0));
    let gears = (
        prop::collection::vec(ratio(), 1..=12),
        ratio(),
        between(900.0, 13_000.0),
    );
    let car = (
        between(50.0, 100_000.0),
        held(),
        between(0.01, 1.0),
        prop::option::of((by_decade(1e-300, 1000.0), by_decade(1e-300, 1000.0))),
        tyres(),
    );
    let road = (between(-50.0, 50.0), between(-200.0, 200.0));
    let driver = (
        between(1.0, 30_000.0),
        by_decade(1e-300, 10.0),
        prop::collection::vec(between(1.0, 30_000.0), 11),
    );
    (engine, gears, car, road, driver).prop_map(|(engine, gears, car, road, driver)| Plain {
        points: engine.0,
        redline_rpm: engine.1,
        idle_rpm: engine.2,
        ratios: gears.0,
        final_drive: gears.1,
        circumference_mm: gears.2,
        mass_kg: car.0,
        held: car.1,
        efficiency: car.2,
        inertias: car.3,
        tyres: car.4,
        grade_percent: road.0,
        headwind_kmh: road.1,
        launch_rpm: driver.0,
        pause_s: driver.1,
        shift_rpms: driver.2,
    })
}

fn is_sound(moment: Moment) -> bool {
    let Moment {
        time_s,
        distance_m,
        speed_m_s,
    } = moment;
    let figures = [time_s, distance_m, speed_m_s];
    figures
        .iter()
        .all(|figure| figure.is_finite() && *figure >= 0.0)
        && time_s <= 600.0 + 1e-9
}

fn assert_sound(run: &Run) -> Result<(), TestCaseError> {
    prop_assert!(run.pieces().len() < MOST_PIECES);
    for piece in run.pieces() {
        prop_assert!(is_sound(piece.from) && is_sound(piece.to), "{piece:?}");
        prop_assert!(piece.from.time_s <= piece.to.time_s, "{piece:?}");
        prop_assert!(piece.from.distance_m <= piece.to.distance_m, "{piece:?}");
    }
    let end = run.end();
    for share in [0.0, 0.1, 0.5, 0.9, 1.0] {
        let by_time = run.at_time(share * end.time_s);
        let by_distance = run.at_distance(share * end.distance_m);
        let found = by_time.into_iter().chain(by_distance);
        for moment in found {
            prop_assert!(is_sound(moment), "{share}: {moment:?}");
        }
        prop_assert_eq!(by_time.is_some(), !run.pieces().is_empty());
    }
    for target in [1e-9, 1.0, 30.0, 200.0, 270.0] {
        prop_assert!(run.at_speed(target).is_none_or(is_sound), "{target}");
    }
    let energy = run.energy(run.pieces());
    prop_assert!(
        energy.crank_j.is_finite() && energy.load_j.is_finite(),
        "{energy:?}"
    );
    Ok(())
}

/// Runs with these and with the best shift points, in-gear times and a coast-down.
fn assert_all_sound(
    plain: &Plain,
    powertrain: &Powertrain,
    on_road: &OnRoad,
) -> Result<(), TestCaseError> {
    let (driving, goal) = (plain.driving(), until(270.0, 10_000.0));
    let run = powertrain.run(on_road, &driving, &plain.shift_rpms, goal);
    assert_sound(&run)?;
    let best = powertrain.best_shift_rpms(on_road, &driving);
    let band = &powertrain.band;
    for shift_rpm in &best {
        prop_assert!(
            (band.low_rpm()..=band.high_rpm()).contains(shift_rpm),
            "{best:?}"
        );
    }
    assert_sound(&powertrain.run(on_road, &driving, &best, goal))?;
    for target in [10.0, 30.0] {
        let shifts = &plain.shift_rpms;
        let stays = powertrain.run_in_gear_to_target(&run, on_road, &driving, shifts, target);
        if let Some(stays) = stays {
            assert_sound(&stays)?;
        }
    }
    let in_gear = powertrain.gears.iter().map(|gear| {
        let (low, high) = (gear.low_m_s(), gear.high_m_s());
        gear.in_gear(on_road, low + 0.1 * (high - low), low + 0.9 * (high - low))
    });
    let coast = on_road.coast_down(plain.radius_m(), 270.0, 0.001);
    for passage in in_gear.chain([coast]).flatten() {
        let figures = [passage.time_s, passage.distance_m];
        prop_assert!(
            figures
                .iter()
                .all(|figure| figure.is_finite() && *figure >= 0.0),
            "{passage:?}"
        );
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(96) })]
    #[test]
    fn whatever_can_be_typed_gives_finite_figures(plain in whatever_can_be_typed()) {
        let Some(powertrain) = plain.powertrain_if_any() else {
            return Ok(());
        };
        assert_all_sound(&plain, &powertrain, &plain.on_road())?;
    }
}
