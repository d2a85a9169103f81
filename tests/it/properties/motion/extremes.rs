//! Is every figure finite, whatever can be typed?

use crate::support::any_vehicle::extreme_vehicle;
use crate::support::vehicles::Worked;
use layshaft::motion::{FuelUse, Grade, LoadCase, OnRoad, PoweredGear, Powertrain};
use proptest::prelude::*;
use proptest::sample::select;

/// Every figure of a gear on a road.
fn of_gear(
    powertrain: &Powertrain,
    gear: &PoweredGear,
    on_road: &OnRoad,
    fuel: &FuelUse,
) -> Vec<(&'static str, f64)> {
    let mut figures = vec![
        ("coupled mass", on_road.coupled_mass_kg(gear)),
        (
            "neutral mass",
            on_road.neutral_mass_kg(gear.rolling_radius_m),
        ),
        ("start", gear.speed_m_s(1.0)),
    ];
    let (low, high) = (gear.low_m_s(), gear.high_m_s());
    for speed in [
        low,
        low + 0.37 * (high - low),
        high,
        0.001 / 3.6,
        1000.0 / 3.6,
    ] {
        let cruise = powertrain.cruise(gear, on_road, speed);
        let held = cruise.held;
        figures.extend([
            ("engine speed", cruise.engine_rpm),
            ("road load", on_road.road_load_n(speed)),
        ]);
        let some = [
            ("effort", gear.effort_n(speed)),
            ("acceleration", gear.acceleration_m_s2(on_road, speed)),
            ("gradient", gear.gradient_percent(on_road, speed)),
            ("grip", on_road.grip_limit_n(speed)),
            ("ideal effort", powertrain.ideal_effort_n(speed)),
            ("power", held.map(|held| held.power_w)),
            ("load", held.map(|held| held.load_share())),
            ("reserve", held.map(|held| held.reserve_w())),
            ("fuel", cruise.l_per_100km(fuel)),
        ];
        figures.extend(
            some.into_iter()
                .filter_map(|(what, figure)| Some((what, figure?))),
        );
    }
    for piece in on_road.drive_in(gear) {
        figures.push(("drive begins", piece.acceleration_m_s2(piece.from_m_s())));
        figures.push(("drive ends", piece.acceleration_m_s2(piece.to_m_s())));
        figures.push(("push", piece.push.at(piece.to_m_s())));
    }
    figures
}

fn figures(car: &Worked, load: &LoadCase, on_road: &OnRoad) -> Vec<(&'static str, f64)> {
    let limits = &car.limits;
    let gears = &car.drivetrain;
    let Some(powertrain) = Powertrain::new(gears, &car.engine, limits, &car.efficiencies) else {
        return Vec::new();
    };
    let fuel = FuelUse::of(&car.engine).unwrap();
    let peaks = [powertrain.band.torque_peak(), powertrain.band.power_peak()];
    let mut figures: Vec<(&'static str, f64)> = Vec::new();
    for peak in peaks {
        figures.extend([
            ("peak torque", peak.torque_nm),
            ("peak power", peak.power_w),
        ]);
    }
    figures.push(("idle", fuel.idle_l_per_h(30_000.0)));
    for gear in &powertrain.gears {
        figures.extend(of_gear(&powertrain, gear, on_road, &fuel));
        let top = gear.top_speed(&car.vehicle, load);
        figures.extend(top.map(|top| ("top speed", top.speed_m_s)));
    }
    let start = powertrain.start_gradient_percent(on_road, 3000.0);
    figures.extend(start.map(|percent| ("start gradient", percent)));
    if let Some(gearing) = powertrain.top_gearing(&car.vehicle, load) {
        figures.extend(gearing.engine_rpm.map(|rpm| ("geared for", rpm)));
        let sentence = gearing.to_string();
        assert!((20..300).contains(&sentence.chars().count()), "{sentence}");
    }
    figures
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]
    #[test]
    fn every_figure_is_finite_at_the_ends_of_all_ranges(
        (car, load) in extreme_vehicle(), percent in select(vec![-50.0, 0.0, 50.0])
    ) {
        let on_road = OnRoad::new(&car.vehicle, &load, Grade::from_percent(percent).unwrap());
        for (what, figure) in figures(&car, &load, &on_road) {
            prop_assert!(figure.is_finite(), "{what}: {figure}");
        }
    }
}
