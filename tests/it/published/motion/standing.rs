//! Do top speed and consumption come out as closed forms give them?

use crate::published::row::Status::Derived;
use crate::published::row::{assert_rows, published};
use crate::support::gear_sets::redline;
use crate::support::vehicles::{coast_down, drivetrain, efficiency, engine, vehicle};
use layshaft::motion::{
    Displacement, Engine, FrictionPressure, FuelUse, LoadCase, OnRoad, Powertrain, SlopeEfficiency,
    TopSpeedLimit, WillansLine, torque_of_power_nm,
};
use std::f64::consts::PI;

const CLOSED: &str = "closed form";

/// A rolling radius in m that makes n ÷ 100 m/s of n rpm behind a ratio of 4.
const HUNDREDTHS: f64 = 2.4 / (2.0 * PI);

#[test]
fn the_top_speed_of_a_constant_power_is_the_root_of_its_cubic() {
    // A 200 N, C 0.4 N/(m/s)², 100 kW at the wheels.
    let expected = 60.352_005;
    let speeds = [1000.0, 2000.0, 3500.0, 5000.0, expected * 100.0, 7000.0];
    let points = speeds.map(|rpm| (rpm, torque_of_power_nm(100_000.0, rpm)));
    let (gears, of) = (drivetrain(&[4.0], 1.0, HUNDREDTHS), efficiency(1.0));
    let limits = redline(7000.0);
    let powertrain = Powertrain::new(&gears, &engine(&points), &limits, &of).unwrap();
    let car = vehicle(1500.0, coast_down(200.0, 0.0, 0.4));
    let (_, top) = powertrain.top_speed(&car, &LoadCase::empty()).unwrap();
    assert_eq!(top.limit, TopSpeedLimit::Power);
    let row = published(expected, 5e-7, CLOSED, Derived);
    assert_rows([("200 N, 0.4, 100 kW", top.speed_m_s, row)]);
}

#[test]
fn consumption_at_three_engine_speeds_is_the_worked_one() {
    // f 0.012 · 1500 kg · 9.81 m/s², ½ · 1.2 kg/m³ · 0.65 m².
    let car = vehicle(1500.0, coast_down(176.58, 0.0, 0.39));
    let on_road = OnRoad::level_and_still(&car, &LoadCase::empty());
    let engine = Engine {
        displacement: Some(Displacement::from_l(2.0).unwrap()),
        willans: Some(WillansLine {
            slope_efficiency: SlopeEfficiency::new(0.42).unwrap(),
            friction: FrictionPressure::from_bar(1.6).unwrap(),
        }),
        ..engine(&[(1000.0, 150.0), (5000.0, 150.0)])
    };
    let fuel = FuelUse::of(&engine).unwrap();
    let speed_m_s = 100.0 / 3.6;
    let rows = [
        (2000.0, 5.290_388),
        (2500.0, 5.647_531),
        (3000.0, 6.004_674),
    ];
    assert_rows(rows.map(|(rpm, litres)| {
        let ratio = 4.0 * rpm / (100.0 * speed_m_s);
        let (gears, of) = (drivetrain(&[ratio], 1.0, HUNDREDTHS), efficiency(0.92));
        let powertrain = Powertrain::new(&gears, &engine, &redline(6000.0), &of).unwrap();
        let cruise = powertrain.cruise(&powertrain.gears[0], &on_road, speed_m_s);
        let found = cruise.l_per_100km(&fuel).unwrap();
        (rpm, found, published(litres, 5e-7, CLOSED, Derived))
    }));
}
