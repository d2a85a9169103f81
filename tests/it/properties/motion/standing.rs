//! Do top speed, gradient, cruise and drive agree with the forces they come from, and with sense?

use crate::support::any_vehicle::{any_load, any_vehicle};
use crate::support::close::is_close;
use crate::support::vehicles::{Worked, curve};
use layshaft::motion::{Engine, Grade, Headwind, LoadCase, OnRoad, TopSpeedLimit, Vehicle};
use proptest::prelude::*;

/// The engine with all torques so many times as large.
fn stronger(engine: &Engine, factor: f64) -> Engine {
    let points = engine.curve.points().iter();
    let points: Vec<(f64, f64)> = points
        .map(|point| (point.speed.rpm(), point.torque.nm() * factor))
        .collect();
    Engine {
        curve: curve(&points),
        ..engine.clone()
    }
}

fn top_m_s(car: &Worked, load: &LoadCase) -> f64 {
    let powertrain = car.powertrain();
    let top = powertrain.top_speed(&car.vehicle, load);
    top.map_or(0.0, |(_, top)| top.speed_m_s)
}

proptest! {
    #[test]
    fn more_power_is_never_a_lower_top_speed(
        car in any_vehicle(), load in any_load(), factor in 1.0..=3.0
    ) {
        let engine = stronger(&car.engine, factor);
        let after = Worked { engine, ..car.clone() };
        let (before, after) = (top_m_s(&car, &load), top_m_s(&after, &load));
        prop_assert!(after >= before * (1.0 - 1e-12), "{before}, then {after}");
    }

    #[test]
    fn more_load_is_never_a_higher_top_speed(car in any_vehicle(), load in any_load()) {
        let (empty, loaded) = (top_m_s(&car, &LoadCase::empty()), top_m_s(&car, &load));
        prop_assert!(loaded <= empty * (1.0 + 1e-12), "{empty}, loaded {loaded}");
    }

    #[test]
    fn effort_and_road_load_balance_at_a_top_speed(car in any_vehicle(), load in any_load()) {
        let on_road = OnRoad::level_and_still(&car.vehicle, &load);
        for gear in &car.powertrain().gears {
            let surplus = |speed| gear.effort_n(speed).unwrap() - on_road.road_load_n(speed);
            let at_end = surplus(gear.high_m_s());
            let grain = 1e-9 * on_road.road_load_n(gear.high_m_s()).max(1.0);
            match gear.top_speed(&car.vehicle, &load) {
                Some(top) if top.limit == TopSpeedLimit::Power => {
                    prop_assert!(at_end < 0.0);
                    prop_assert!(surplus(top.speed_m_s).abs() < grain);
                }
                Some(top) => prop_assert!(top.speed_m_s <= gear.high_m_s() && at_end >= 0.0),
                None => {
                    let low = surplus(gear.low_m_s());
                    prop_assert!(low < 0.0 && at_end < 0.0, "{low}, {at_end}");
                }
            }
        }
    }

    #[test]
    fn a_gradient_is_where_the_forces_balance(
        car in any_vehicle(), load in any_load(), share in 0.0..=1.0
    ) {
        let flat = OnRoad::new(&car.vehicle, &load, Grade::LEVEL);
        for gear in &car.powertrain().gears {
            let speed = gear.low_m_s() + share * (gear.high_m_s() - gear.low_m_s());
            let percent = gear.gradient_percent(&flat, speed);
            let Some(Ok(grade)) = percent.map(Grade::from_percent) else {
                continue;
            };
            let steep = OnRoad::new(&car.vehicle, &load, grade);
            let effort = gear.effort_n(speed).unwrap();
            let force = steep.grip_limit_n(speed).map_or(effort, |grip| grip.min(effort));
            let found = steep.road_load_n(speed);
            prop_assert!(is_close(found, force, 1e-6 * steep.mass_kg()), "{found}, not {force}");
            // Whatever road the question is asked on.
            let asked_there = gear.gradient_percent(&steep, speed).unwrap();
            prop_assert!(is_close(asked_there, grade.percent(), 1e-9));
        }
    }

    #[test]
    fn a_gear_holds_a_speed_exactly_where_it_could_accelerate(
        car in any_vehicle(), load in any_load(), percent in -50.0..=50.0, share in 0.0..=1.0
    ) {
        let vehicle = Vehicle { grip: None, ..car.vehicle.clone() };
        let on_road = OnRoad::new(&vehicle, &load, Grade::from_percent(percent).unwrap());
        let powertrain = car.powertrain();
        for gear in &powertrain.gears {
            let speed = gear.low_m_s() + share * (gear.high_m_s() - gear.low_m_s());
            let acceleration = gear.acceleration_m_s2(&on_road, speed).unwrap();
            prop_assume!(acceleration.abs() > 1e-9);
            let held = powertrain.cruise(gear, &on_road, speed).held;
            prop_assert_eq!(held.is_some(), acceleration > 0.0);
            if let Some(held) = held {
                let left = held.reserve_w() + held.power_w - held.full_power_w;
                prop_assert!(left.abs() < 1e-6 && held.load_share() <= 1.0);
            }
        }
    }

    #[test]
    fn the_pieces_of_a_drive_have_the_acceleration_at_every_speed(
        car in any_vehicle(), load in any_load(), percent in -50.0..=50.0
    ) {
        let on_road = OnRoad::new(&car.vehicle, &load, Grade::from_percent(percent).unwrap());
        for gear in &car.powertrain().gears {
            let pieces = on_road.drive_in(gear);
            let joined = pieces.windows(2).all(|pair| {
                pair[0].to_m_s().to_bits() == pair[1].from_m_s().to_bits()
            });
            let ends = [pieces[0].from_m_s(), pieces[pieces.len() - 1].to_m_s()].map(f64::to_bits);
            prop_assert!(joined && ends == [gear.low_m_s(), gear.high_m_s()].map(f64::to_bits));
            for piece in &pieces {
                for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
                    let speed = piece.from_m_s() + share * (piece.to_m_s() - piece.from_m_s());
                    let found = piece.acceleration_m_s2(speed);
                    let expected = gear.acceleration_m_s2(&on_road, speed).unwrap();
                    prop_assert!(is_close(found, expected, 1e-8), "{found}, not {expected}");
                }
            }
        }
    }

    #[test]
    fn no_gear_pulls_above_the_ideal_curve(car in any_vehicle(), share in 0.0..=1.0) {
        let powertrain = car.powertrain();
        for gear in &powertrain.gears {
            let speed = gear.low_m_s() + share * (gear.high_m_s() - gear.low_m_s());
            let (effort, ideal) = (gear.effort_n(speed), powertrain.ideal_effort_n(speed));
            prop_assert!(effort.unwrap() <= ideal.unwrap() * (1.0 + 1e-9));
            // Where the power peaks, it touches the curve.
            let peak = gear.speed_m_s(powertrain.band.power_peak().engine_rpm);
            let (effort, ideal) = (gear.effort_n(peak), powertrain.ideal_effort_n(peak));
            let grain = 1e-9 * ideal.unwrap();
            prop_assert!(is_close(effort.unwrap(), ideal.unwrap(), grain));
        }
    }

    #[test]
    fn more_wind_from_ahead_is_never_less_road_load(
        car in any_vehicle(), load in any_load(), more_kmh in 0.0..=100.0, speed in 0.0..=70.0
    ) {
        let windier = LoadCase {
            headwind: Headwind::from_kmh(load.headwind.kmh() + more_kmh).unwrap(),
            ..load
        };
        let at = |load| OnRoad::new(&car.vehicle, load, Grade::LEVEL).road_load_n(speed);
        prop_assert!(at(&windier) >= at(&load));
    }
}
