//! What is said of top speed, of gradients that nothing solves, and of gears that cannot?

use crate::support::gear_sets::redline;
use crate::support::vehicles::{Worked, coast_down, drivetrain, efficiency, engine, vehicle};
use layshaft::motion::{GRAVITY_M_S2, GearedFor, LoadCase, Powertrain, TopSpeedLimit};

/// One gear of that ratio with 30 to 60 kW behind it, on a radius of 0.3 m.
fn geared(ratio: f64) -> Powertrain {
    let engine = engine(&[(1000.0, 100.0), (6000.0, 100.0), (7000.0, 60.0)]);
    let gears = drivetrain(&[ratio], 1.0, 0.3);
    Powertrain::new(&gears, &engine, &redline(7000.0), &efficiency(1.0)).unwrap()
}

#[test]
fn a_sentence_says_what_top_gear_is_geared_for() {
    let car = vehicle(1000.0, coast_down(150.0, 0.0, 0.4));
    let said = |ratio: f64| {
        let gearing = geared(ratio).top_gearing(&car, &LoadCase::empty()).unwrap();
        (gearing.geared_for, gearing.to_string())
    };
    let behind = "where the road load takes all power, gear 1 would be at";
    let (short, fitting, beyond) = (said(4.5), said(3.73), said(3.0));
    assert_eq!(short.0, GearedFor::ShortOfTopSpeed);
    assert_eq!(fitting.0, GearedFor::TopSpeed);
    assert_eq!(beyond.0, GearedFor::BeyondTopSpeed);
    assert_eq!(
        [short.1, fitting.1, beyond.1],
        [
            format!("Geared short of top speed: {behind} 7420 rpm, and peak power is at 6120 rpm"),
            format!("Geared for top speed: {behind} 6150 rpm, and peak power is at 6120 rpm"),
            format!("Geared beyond top speed: {behind} 4950 rpm, and peak power is at 6120 rpm"),
        ]
    );
    let free = vehicle(1000.0, coast_down(0.0, 0.0, 0.0));
    let gearing = geared(4.5).top_gearing(&free, &LoadCase::empty()).unwrap();
    assert_eq!(
        gearing.to_string(),
        "Geared short of top speed: the road load never takes all power from gear 1"
    );
}

#[test]
fn a_gear_that_holds_no_speed_has_no_top_speed() {
    let heavy = vehicle(100_000.0, coast_down(100_000.0, 0.0, 0.4));
    let powertrain = geared(4.0);
    assert_eq!(
        powertrain.gears[0].top_speed(&heavy, &LoadCase::empty()),
        None
    );
    assert_eq!(powertrain.top_speed(&heavy, &LoadCase::empty()), None);
}

#[test]
fn the_end_of_the_torque_curve_limits_as_a_redline_does() {
    let engine = engine(&[(1000.0, 100.0), (6000.0, 100.0)]);
    let gears = drivetrain(&[4.0], 1.0, 0.3);
    let powertrain = Powertrain::new(&gears, &engine, &redline(9000.0), &efficiency(1.0));
    let free = vehicle(1000.0, coast_down(0.0, 0.0, 0.0));
    let powertrain = powertrain.unwrap();
    let (gear, top) = powertrain.top_speed(&free, &LoadCase::empty()).unwrap();
    assert_eq!(top.limit, TopSpeedLimit::Redline);
    assert!((gear.engine_rpm(top.speed_m_s) - 6000.0).abs() < 1e-9);
}

#[test]
fn an_effort_above_the_weight_climbs_whatever_is_steep_unless_grip_ends() {
    let car = Worked::car();
    let free = car.on_road().without_grip_limit();
    let weight_n = 1020.0 * GRAVITY_M_S2;
    assert_eq!(free.gradient_percent(1.1 * weight_n, 5.0), None);
    assert_eq!(free.gradient_percent(-1.1 * weight_n, 5.0), None);
    assert!(
        car.on_road()
            .gradient_percent(1.1 * weight_n, 5.0)
            .is_some()
    );
    // Without effort it holds the speed downhill.
    assert!(free.gradient_percent(0.0, 25.0).unwrap() < 0.0);
}

#[test]
fn a_speed_beyond_a_gear_has_its_engine_speed_and_nothing_else() {
    let car = Worked::car();
    let (powertrain, on_road) = (car.powertrain(), car.on_road());
    let first = &powertrain.gears[0];
    let cruise = powertrain.cruise(first, &on_road, 100.0 / 3.6);
    assert!(cruise.engine_rpm > 7100.0 && cruise.held.is_none());
    assert_eq!(first.effort_n(100.0 / 3.6), None);
    // Top speed takes all that the engine has, and is held.
    let (fifth, top) = powertrain
        .top_speed(&car.vehicle, &LoadCase::empty())
        .unwrap();
    let held = powertrain
        .cruise(fifth, &on_road, top.speed_m_s)
        .held
        .unwrap();
    assert!((held.load_share() - 1.0).abs() < 1e-9);
    assert_eq!(first.acceleration_m_s2(&on_road, 100.0 / 3.6), None);
    // The very end, spelled as somebody would type it, is covered.
    let end_kmh = (first.high_m_s() * 3.6 * 1e9).round() / 1e9;
    assert!(first.covered_m_s(end_kmh / 3.6).is_some());
}
