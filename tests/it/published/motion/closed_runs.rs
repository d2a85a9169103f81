//! Do runs, in-gear times, coast-downs and shift points come out as closed forms give them?

use super::checked::{
    AFTER_THE_CHANGE, BEST_CHANGES, COAST_DOWN, CONSTANT_FORCE, CONSTANT_FORCE_IN_GEAR,
    CONSTANT_FORCE_QUARTER, CONSTANT_POWER, GRIP_THEN_POWER, GRIP_THEN_POWER_QUARTER, KMH,
    MOTORCYCLES, QUARTER_MILE_M, ROLLOUT, TWO_GEARS, falling_torque, four_m_s2, four_thousand_n,
    grip_then_power, motorcycle, ninety_kw, power_points, rolling_down, two_gears,
};
use crate::published::row::assert_rows;
use crate::support::plain_vehicle::Plain;
use crate::support::vehicles::until;
use layshaft::motion::{Passage, ROLLOUT_M, Run};

fn run(car: &Plain, distance_m: f64) -> Run {
    let goal = until(100.0 * KMH, distance_m);
    let (powertrain, on_road) = (car.powertrain(), car.on_road());
    powertrain.run(&on_road, &car.driving(), &car.shift_rpms, goal)
}

fn in_gear(car: &Plain, from_m_s: f64, to_m_s: f64) -> Passage {
    let gear = &car.powertrain().gears[0];
    gear.in_gear(&car.on_road(), from_m_s, to_m_s).unwrap()
}

fn coast_down(car: &Plain, from_m_s: f64, to_m_s: f64) -> Passage {
    let on_road = car.on_road();
    on_road.coast_down(0.3, from_m_s, to_m_s).unwrap()
}

#[test]
fn constant_power_from_ten_metres_a_second() {
    // What a cubic between few points is beside a hyperbola would count, not the law of motion.
    let car = ninety_kw(&power_points(90_000.0, [900.0, 3000.0], 80));
    let passage = in_gear(&car, 10.0, 100.0 * KMH);
    let [time_s, distance_m] = CONSTANT_POWER;
    assert_rows([
        ("s to 100 km/h", passage.time_s, time_s),
        ("m to 100 km/h", passage.distance_m, distance_m),
    ]);
}

#[test]
fn a_constant_force_against_the_air() {
    let car = four_thousand_n();
    let run = run(&car, QUARTER_MILE_M);
    let hundred = run.at_speed(100.0 * KMH).unwrap();
    let quarter = run.at_distance(QUARTER_MILE_M).unwrap();
    let in_gear = in_gear(&car, 80.0 * KMH, 120.0 * KMH);
    let ([time_s, distance_m], [quarter_s, quarter_m_s]) = (CONSTANT_FORCE, CONSTANT_FORCE_QUARTER);
    assert_rows([
        ("s to 100 km/h", hundred.time_s, time_s),
        ("m to 100 km/h", hundred.distance_m, distance_m),
        ("s for a quarter", quarter.time_s, quarter_s),
        ("m/s at a quarter", quarter.speed_m_s, quarter_m_s),
        ("80-120 km/h", in_gear.time_s, CONSTANT_FORCE_IN_GEAR),
    ]);
}

#[test]
fn a_foot_of_rollout_under_a_constant_acceleration() {
    let run = run(&four_m_s2(), ROLLOUT_M);
    let rollout_s = run.at_distance(ROLLOUT_M).unwrap().time_s;
    assert_rows([("4 m/s²", rollout_s, ROLLOUT)]);
}

#[test]
fn coasting_down_against_air_and_tyres() {
    let passage = coast_down(&rolling_down(), 120.0 * KMH, 60.0 * KMH);
    let [time_s, distance_m] = COAST_DOWN;
    assert_rows([
        ("s", passage.time_s, time_s),
        ("m", passage.distance_m, distance_m),
    ]);
}

#[test]
fn grip_at_first_and_constant_power_from_there() {
    let car = grip_then_power(&power_points(90_000.0, [500.0, 6000.0], 80));
    let run = run(&car, QUARTER_MILE_M);
    let quarter = run.at_distance(QUARTER_MILE_M).unwrap();
    let hundred_s = run.at_speed(100.0 * KMH).unwrap().time_s;
    let [quarter_s, quarter_m_s] = GRIP_THEN_POWER_QUARTER;
    assert_rows([
        ("s to 100 km/h", hundred_s, GRIP_THEN_POWER),
        ("s for a quarter", quarter.time_s, quarter_s),
        ("m/s at a quarter", quarter.speed_m_s, quarter_m_s),
    ]);
}

#[test]
fn a_change_with_a_pause_between_two_forces() {
    let mut rows = Vec::new();
    for (load, [time_s, distance_m]) in TWO_GEARS {
        let hundred = run(&two_gears(load), 0.0).at_speed(100.0 * KMH).unwrap();
        rows.push(("s", hundred.time_s, time_s));
        rows.push(("m", hundred.distance_m, distance_m));
    }
    assert_rows(rows);
}

#[test]
fn equal_effort_and_equal_acceleration_are_where_algebra_puts_them() {
    let mut rows = Vec::new();
    for (ratios, turns, expected) in BEST_CHANGES {
        let car = falling_torque(ratios, turns);
        let best = car
            .powertrain()
            .best_shift_rpms(&car.on_road(), &car.driving());
        rows.push((format!("{ratios:?}, {turns}"), best[0], expected));
    }
    let powertrain = falling_torque([2.0, 1.5], false).powertrain();
    let at_m_s = powertrain.gears[0].speed_m_s(rows[0].1);
    let after_rpm = powertrain.gears[1].engine_rpm(at_m_s);
    rows.push(("after it".to_owned(), after_rpm, AFTER_THE_CHANGE));
    assert_rows(rows);
}

#[test]
fn from_seventy_to_sixty_a_motorcycle_rolls_as_long_as_the_regulation_says() {
    assert_rows(MOTORCYCLES.map(|(of, expected)| {
        let passage = coast_down(&motorcycle(of), 70.0 * KMH, 60.0 * KMH);
        (format!("{} kg", of[0]), passage.time_s, expected)
    }));
}
