//! Do runs, in-gear times, coast-downs and shift points come out as closed forms give them?

use crate::published::row::Status::{Derived, Read};
use crate::published::row::{Published, assert_rows, published};
use crate::support::gear_sets::redline;
use crate::support::vehicles::{
    coast_down, drivetrain, driving, efficiency, engine, grip, until, vehicle,
};
use layshaft::motion::{
    DrivenAxle, LoadCase, OnRoad, PoweredGear, Powertrain, ROLLOUT_M, RotatingMasses, Run, Vehicle,
    torque_of_power_nm,
};
use std::f64::consts::PI;

const CLOSED: &str = "closed form";
const CFR: &str = "40 CFR 86.529-98, figure F98-9";

const KMH: f64 = 1.0 / 3.6;
const QUARTER_MILE_M: f64 = 402.336;

/// A rolling radius in m that makes n ÷ 100 m/s of n rpm behind a ratio of 4.
const HUNDREDTHS: f64 = 2.4 / (2.0 * PI);

/// The torque in N·m that makes 1000 N for each unit of ratio there.
const PER_THOUSAND_N: f64 = 1000.0 * HUNDREDTHS;

/// To the millionth that is promised, and what the last printed digit leaves open.
fn closed(expected: f64) -> Published {
    published(expected, 1e-6, CLOSED, Derived)
}

fn geared(ratios: &[f64], points: &[(f64, f64)]) -> Powertrain {
    let (gears, of) = (drivetrain(ratios, 1.0, HUNDREDTHS), efficiency(1.0));
    Powertrain::new(&gears, &engine(points), &redline(12_000.0), &of).unwrap()
}

fn on_level(car: &Vehicle) -> OnRoad {
    OnRoad::level_and_still(car, &LoadCase::empty())
}

fn heavy(a: f64, c: f64) -> Vehicle {
    vehicle(1500.0, coast_down(a, 0.0, c))
}

/// 90 kW from one engine speed to another, as points in geometric steps.
fn ninety_kw(from_rpm: f64, to_rpm: f64, points: i32) -> Vec<(f64, f64)> {
    let share = |point: i32| f64::from(point) / f64::from(points - 1);
    let speeds = (0..points).map(|point| from_rpm * (to_rpm / from_rpm).powf(share(point)));
    speeds
        .map(|rpm| (rpm, torque_of_power_nm(90_000.0, rpm)))
        .collect()
}

#[test]
fn constant_power_from_ten_metres_a_second() {
    let on_road = on_level(&heavy(0.0, 0.0));
    let passage = |points| {
        let powertrain = geared(&[4.0], &ninety_kw(900.0, 3000.0, points));
        powertrain.gears[0]
            .in_gear(&on_road, 10.0, 100.0 * KMH)
            .unwrap()
    };
    // What a cubic between twenty points is beside a hyperbola counts then, not the law of motion.
    let nearly = published(5.596_708, 5e-6, CLOSED, Derived);
    assert_rows([
        ("s to 100 km/h", passage(80).time_s, closed(5.596_708)),
        ("m to 100 km/h", passage(80).distance_m, closed(113.519_281)),
        ("s by twenty points", passage(20).time_s, nearly),
    ]);
}

/// One gear that pulls with 4000 N at any speed.
fn four_thousand_n() -> Powertrain {
    let torque = 4.0 * PER_THOUSAND_N / 4.0;
    geared(&[4.0], &[(500.0, torque), (9000.0, torque)])
}

#[test]
fn a_constant_force_against_the_air() {
    let (powertrain, on_road) = (four_thousand_n(), on_level(&heavy(0.0, 0.4)));
    let goal = until(100.0 * KMH, QUARTER_MILE_M);
    let run = powertrain.run(&on_road, &driving(None, 0.0), &[], goal);
    let hundred = run.at_speed(100.0 * KMH).unwrap();
    let quarter = run.at_distance(QUARTER_MILE_M).unwrap();
    let gear = &powertrain.gears[0];
    let in_gear = gear.in_gear(&on_road, 80.0 * KMH, 120.0 * KMH).unwrap();
    assert_rows([
        ("s to 100 km/h", hundred.time_s, closed(10.697_716)),
        ("m to 100 km/h", hundred.distance_m, closed(150.562_392)),
        ("s for a quarter", quarter.time_s, closed(17.683_234)),
        ("m/s at a quarter", quarter.speed_m_s, closed(43.945_318)),
        ("80-120 km/h", in_gear.time_s, closed(4.521_789)),
    ]);
}

#[test]
fn a_foot_of_rollout_under_a_constant_acceleration() {
    let car = vehicle(1000.0, coast_down(0.0, 0.0, 0.0));
    let goal = until(10.0, ROLLOUT_M);
    let run = four_thousand_n().run(&on_level(&car), &driving(None, 0.0), &[], goal);
    let rollout_s = run.at_distance(ROLLOUT_M).unwrap().time_s;
    assert_rows([("4 m/s²", rollout_s, closed(0.390_384))]);
}

#[test]
fn coasting_down_against_air_and_tyres() {
    let on_road = on_level(&heavy(200.0, 0.4));
    let passage = on_road.coast_down(0.3, 120.0 * KMH, 60.0 * KMH).unwrap();
    assert_rows([
        ("s", passage.time_s, closed(56.919_322)),
        ("m", passage.distance_m, closed(1_365.447_188)),
    ]);
}

#[test]
fn grip_at_first_and_constant_power_from_there() {
    // 6000 N on all wheels: 0.4078865 of the weight.
    let car = Vehicle {
        grip: Some(grip(DrivenAxle::All, 0.407_886_5, 0.5, None)),
        ..heavy(0.0, 0.0)
    };
    let powertrain = geared(&[4.0], &ninety_kw(500.0, 6000.0, 80));
    let goal = until(100.0 * KMH, QUARTER_MILE_M);
    let run = powertrain.run(&on_level(&car), &driving(None, 0.0), &[], goal);
    let quarter = run.at_distance(QUARTER_MILE_M).unwrap();
    let hundred_s = run.at_speed(100.0 * KMH).unwrap().time_s;
    assert_rows([
        ("s to 100 km/h", hundred_s, closed(8.305_041)),
        ("s for a quarter", quarter.time_s, closed(16.127_796)),
        ("m/s at a quarter", quarter.speed_m_s, closed(41.356_202)),
    ]);
}

/// 6000 N to 15 m/s, half a second of pause, 4000 N from there.
fn two_gears(car: &Vehicle) -> Run {
    let powertrain = geared(
        &[6.0, 4.0],
        &[(500.0, PER_THOUSAND_N), (9000.0, PER_THOUSAND_N)],
    );
    let goal = until(100.0 * KMH, 0.0);
    powertrain.run(&on_level(car), &driving(None, 0.5), &[2250.0], goal)
}

#[test]
fn a_change_with_a_pause_between_two_forces() {
    let mut rows = Vec::new();
    for (car, time_s, distance_m) in [
        (heavy(0.0, 0.0), 9.041_667, 138.113_426),
        (heavy(200.0, 0.4), 9.747_229, 151.271_462),
    ] {
        let hundred = two_gears(&car).at_speed(100.0 * KMH).unwrap();
        rows.push(("s", hundred.time_s, closed(time_s)));
        rows.push(("m", hundred.distance_m, closed(distance_m)));
    }
    assert_rows(rows);
}

/// The best change of two gears behind a torque of 400 − 0.04 · n N·m: before it and after it, in rev/min.
fn falling_torque(ratios: [f64; 2], car: &Vehicle) -> (f64, f64) {
    let (gears, of) = (drivetrain(&ratios, 4.0, 0.3), efficiency(0.9));
    let engine = engine(&[(1000.0, 360.0), (9000.0, 40.0)]);
    let powertrain = Powertrain::new(&gears, &engine, &redline(9000.0), &of).unwrap();
    let best = powertrain.best_shift_rpms(&on_level(car), &driving(None, 0.0));
    let [lower, upper]: &[PoweredGear; 2] = powertrain.gears.as_slice().try_into().unwrap();
    (best[0], upper.engine_rpm(lower.speed_m_s(best[0])))
}

#[test]
fn equal_effort_and_equal_acceleration_are_where_algebra_puts_them() {
    let nothing_turns = vehicle(1400.0, coast_down(0.0, 0.0, 0.0));
    let by_formula = Vehicle {
        rotating: RotatingMasses::Formula,
        ..vehicle(1400.0, coast_down(200.0, 0.0, 0.4))
    };
    let row = |expected| published(expected, 0.5e-4, CLOSED, Derived);
    let (near, wide) = ([2.0, 1.5], [3.5, 2.0]);
    assert_rows([
        (
            "effort, near",
            falling_torque(near, &nothing_turns).0,
            row(5714.2857),
        ),
        (
            "after it",
            falling_torque(near, &nothing_turns).1,
            row(4285.7143),
        ),
        (
            "effort, wide",
            falling_torque(wide, &nothing_turns).0,
            row(6363.6364),
        ),
        (
            "acceleration, near",
            falling_torque(near, &by_formula).0,
            row(5112.8379),
        ),
        (
            "acceleration, wide",
            falling_torque(wide, &by_formula).0,
            row(4719.0188),
        ),
    ]);
}

#[test]
fn from_seventy_to_sixty_a_motorcycle_rolls_as_long_as_the_regulation_says() {
    // Mass in kg, A in N, C in N/(km/h)², time in s.
    let table = [
        (100.0, 0.0, 0.0224, 2.95),
        (110.0, 0.82, 0.0227, 3.18),
        (120.0, 1.70, 0.0230, 3.39),
        (130.0, 2.57, 0.0233, 3.60),
        (140.0, 3.44, 0.0235, 3.80),
        (150.0, 4.32, 0.0238, 3.99),
        (170.0, 6.06, 0.0244, 4.36),
        (180.0, 6.94, 0.0246, 4.53),
        (190.0, 7.81, 0.0249, 4.69),
        (200.0, 8.69, 0.0252, 4.85),
        (210.0, 9.56, 0.0255, 5.00),
        (220.0, 10.43, 0.0257, 5.15),
    ];
    assert_rows(table.map(|(mass_kg, a, c, time_s)| {
        let car = vehicle(mass_kg, coast_down(a, 0.0, c * 3.6 * 3.6));
        let passage = on_level(&car).coast_down(0.3, 70.0 * KMH, 60.0 * KMH);
        let found = passage.unwrap().time_s;
        (
            format!("{mass_kg} kg"),
            found,
            published(time_s, 0.015, CFR, Read),
        )
    }));
}
