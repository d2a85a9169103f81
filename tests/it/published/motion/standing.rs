//! Do top speed and consumption come out as closed forms give them?

use super::checked::{CRUISE, KMH, TOP_SPEED, cruising, hundred_kw};
use crate::published::row::assert_rows;
use crate::support::vehicles::engine;
use layshaft::motion::{
    Displacement, Engine, FrictionPressure, FuelUse, LoadCase, SlopeEfficiency, TopSpeedLimit,
    WillansLine,
};

#[test]
fn the_top_speed_of_a_constant_power_is_the_root_of_its_cubic() {
    let car = hundred_kw();
    let powertrain = car.powertrain();
    let top = powertrain.top_speed(&car.vehicle(), &LoadCase::empty());
    let (_, top) = top.unwrap();
    assert_eq!(top.limit, TopSpeedLimit::Power);
    assert_rows([("200 N, 0.4, 100 kW", top.speed_m_s, TOP_SPEED)]);
}

#[test]
fn consumption_at_three_engine_speeds_is_the_worked_one() {
    assert_rows(CRUISE.map(|(rpm, expected)| {
        let car = cruising(rpm);
        let engine = Engine {
            displacement: Some(Displacement::from_l(2.0).unwrap()),
            willans: Some(WillansLine {
                slope_efficiency: SlopeEfficiency::new(0.42).unwrap(),
                friction: FrictionPressure::from_bar(1.6).unwrap(),
            }),
            ..engine(&car.points)
        };
        let fuel = FuelUse::of(&engine).unwrap();
        let powertrain = car.powertrain();
        let cruise = powertrain.cruise(&powertrain.gears[0], &car.on_road(), 100.0 * KMH);
        (rpm, cruise.l_per_100km(&fuel).unwrap(), expected)
    }));
}
