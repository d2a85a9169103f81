//! How is an estimate of fuel scaled, compared and cut off?

use crate::support::close::assert_close;
use crate::support::vehicles::Worked;
use layshaft::motion::{
    CalibrationError, Engine, Fuel, FuelConsumption, FuelDifference, FuelUse, Strokes,
    YearlyDistance,
};

fn known(litres: f64) -> FuelConsumption {
    FuelConsumption::from_l_per_100km(litres).unwrap()
}

#[test]
fn a_known_figure_comes_out_and_scales_all_others() {
    let car = Worked::car();
    let (powertrain, on_road) = (car.powertrain(), car.on_road());
    let fuel = FuelUse::of(&car.engine).unwrap();
    let at = |kmh: f64, fuel: &FuelUse| {
        let cruise = powertrain.cruise(&powertrain.gears[4], &on_road, kmh / 3.6);
        cruise.l_per_100km(fuel).unwrap()
    };
    let estimated = at(100.0, &fuel);
    let scaled = fuel.scaled_to(known(6.2), estimated).unwrap();
    assert_close(at(100.0, &scaled), 6.2, 1e-12, "at the known speed");
    let factor = 6.2 / estimated;
    assert_close(
        at(130.0, &scaled),
        at(130.0, &fuel) * factor,
        1e-12,
        "elsewhere",
    );
    assert_close(fuel.uncertainty_share(), 0.20, 0.0, "an estimate");
    assert_close(scaled.uncertainty_share(), 0.10, 0.0, "a scaled one");
    assert_eq!(
        fuel.scaled_to(known(6.2), 0.0),
        Err(CalibrationError::NothingBurnt)
    );
    // Miles per gallon, typed as litres.
    assert_eq!(
        fuel.scaled_to(known(42.0), estimated),
        Err(CalibrationError::FarOff)
    );
}

#[test]
fn an_engine_burns_at_idle_and_nothing_where_it_is_driven_hard_enough() {
    let engine = Worked::car().engine;
    let fuel = FuelUse::of(&engine).unwrap();
    // 1.7 bar · 1.6 L · 850 ÷ 120 ÷ 0.4 for an hour, of 32 MJ/L.
    let watts = 1.7e5 * 1.6e-3 * 850.0 / 120.0 / 0.4;
    assert_close(
        fuel.idle_l_per_h(850.0),
        watts * 3600.0 / 32e6,
        1e-12,
        "idle",
    );
    let two = Engine {
        strokes: Strokes::Two,
        ..engine.clone()
    };
    let two = FuelUse::of(&two).unwrap();
    assert_close(
        two.idle_l_per_h(850.0),
        2.0 * fuel.idle_l_per_h(850.0),
        1e-12,
        "two strokes",
    );
    assert_eq!(fuel.l_per_100km(-5000.0, 2000.0, 20.0), Some(0.0));
    assert_eq!(fuel.l_per_100km(5000.0, 2000.0, 0.0), None);
    let unknown = Engine {
        displacement: None,
        ..engine
    };
    assert_eq!(FuelUse::of(&unknown), None);
}

#[test]
fn without_figures_of_its_own_an_engine_burns_as_its_kind_does() {
    let of = |fuel| {
        let engine = Engine {
            fuel,
            willans: None,
            ..Worked::car().engine
        };
        FuelUse::of(&engine)
            .unwrap()
            .l_per_100km(10_000.0, 2500.0, 25.0)
            .unwrap()
    };
    let litres = |e: f64, mj_per_l: f64| {
        (10_000.0 + 1.6e5 * 1.6e-3 * 2500.0 / 120.0) / e / (mj_per_l * 1e6) / 25.0 * 1e5
    };
    assert_close(of(Fuel::Petrol), litres(0.426, 32.0), 1e-12, "petrol");
    assert_close(of(Fuel::Diesel), litres(0.455, 36.0), 1e-12, "diesel");
}

#[test]
fn a_difference_is_told_in_litres_in_shares_and_for_a_year() {
    let taller = FuelDifference::between(6.3, 7.0);
    assert_close(taller.l_per_100km, -0.7, 1e-12, "per 100 km");
    assert_close(taller.share.unwrap(), -0.1, 1e-12, "share");
    let year = YearlyDistance::from_km(15_000.0).unwrap();
    assert_close(taller.l_per_year(year), -105.0, 1e-9, "in a year");
    assert_close(
        taller.uncertainty_l_per_100km(),
        0.175,
        1e-12,
        "uncertainty",
    );
    assert_eq!(FuelDifference::between(1.0, 0.0).share, None);
}
