//! Are the units the ones that the world agreed on?

use super::row::Status::{Derived, Memory, Read};
use super::row::{assert_rows, published};
use layshaft::gearing::{RevsPerKm, RevsPerMile, Tyre, parse_tyre};
use layshaft::units::{KM_PER_MILE, MM_PER_INCH, PowerUnit, SpeedUnit, TorqueUnit};

const UNIT_LIBRARIES: &str = "general-purpose unit libraries";
const SP_811: &str = "NIST Special Publication 811, appendix B.8";
const DEFINITION: &str = "P = T · ω, P[kW] = T[N·m] · n ÷ 9549.2966";

#[test]
fn miles_and_inches_have_their_metric_lengths() {
    assert_rows([
        (
            "a mile in m",
            KM_PER_MILE * 1000.0,
            published(1609.344, 1e-9, UNIT_LIBRARIES, Read),
        ),
        (
            "an inch in mm",
            MM_PER_INCH,
            published(25.4, 0.0, UNIT_LIBRARIES, Read),
        ),
    ]);
}

#[test]
fn road_speeds_convert_by_the_mile() {
    let mph = SpeedUnit::Mph;
    let row = |expected| published(expected, 1e-9, UNIT_LIBRARIES, Derived);
    assert_rows([
        ("60 mph in km/h", mph.to_kmh(60.0), row(96.560_64)),
        ("160.9344 km/h in mph", mph.from_kmh(160.934_4), row(100.0)),
        ("90 km/h in km/h", SpeedUnit::Kmh.from_kmh(90.0), row(90.0)),
    ]);
}

#[test]
fn turns_per_mile_and_per_km_are_of_one_tyre() {
    let per_mile = Tyre::RevsPerMile(RevsPerMile::new(804.672).unwrap());
    let per_km = Tyre::RevsPerKm(RevsPerKm::new(500.0).unwrap());
    let row = |expected| published(expected, 1e-9, UNIT_LIBRARIES, Derived);
    assert_rows([
        (
            "804.672 per mile, per km",
            per_mile.revs_per_km(),
            row(500.0),
        ),
        ("500 per km, per mile", per_km.revs_per_mile(), row(804.672)),
        (
            "804.672 per mile, in mm",
            per_mile.rolling_circumference_mm(),
            row(2000.0),
        ),
    ]);
}

#[test]
fn a_diameter_typed_in_inches_is_that_many_times_25_4_mm() {
    let tyre = parse_tyre("diameter 31.7 in").unwrap();
    let row = published(805.18, 1e-9, UNIT_LIBRARIES, Derived);
    assert_rows([("31.7 in", tyre.overall_diameter_mm().unwrap(), row)]);
}

#[test]
fn torques_and_powers_have_their_metric_sizes() {
    let foot_pound = TorqueUnit::PoundFoot.to_nm(1.0);
    let horsepower_w = 1000.0 * PowerUnit::Horsepower.to_kw(1.0);
    let metric_w = 1000.0 * PowerUnit::MetricHorsepower.to_kw(1.0);
    let kilogram_metre = TorqueUnit::KilogramForceMetre.to_nm(1.0);
    let read = |expected, tolerance| published(expected, tolerance, UNIT_LIBRARIES, Read);
    let printed = |expected, tolerance| published(expected, tolerance, SP_811, Memory);
    assert_rows([
        (
            "1 lb·ft in N·m",
            foot_pound,
            read(1.355_817_948_331_4, 1e-15),
        ),
        (
            "1 hp in W",
            horsepower_w,
            read(745.699_871_582_270_2, 1e-12),
        ),
        ("1 PS in W", metric_w, read(735.498_75, 1e-12)),
        ("1 lbf·ft in N·m", foot_pound, printed(1.355_818, 5e-7)),
        ("1 kgf·m in N·m", kilogram_metre, printed(9.806_65, 1e-15)),
        (
            "1 hp of 550 ft·lbf/s in W",
            horsepower_w,
            printed(745.699_9, 5e-5),
        ),
        (
            "1 metric hp in W",
            metric_w,
            printed(735.498_8, 5e-5 + 1e-12),
        ),
    ]);
}

#[test]
fn torque_and_power_meet_at_the_engine_speeds_of_the_rules_of_thumb() {
    let kw = |torque_nm: f64, rpm| layshaft::motion::power_w(torque_nm, rpm) / 1000.0;
    let hp = PowerUnit::Horsepower.from_kw(kw(TorqueUnit::PoundFoot.to_nm(1.0), 5252.0));
    let ps =
        PowerUnit::MetricHorsepower.from_kw(kw(TorqueUnit::KilogramForceMetre.to_nm(1.0), 716.2));
    let row = |tolerance| published(1.0, tolerance, DEFINITION, Derived);
    assert_rows([
        (
            "1 N·m at 9549.2966 rpm in kW",
            kw(1.0, 9_549.296_6),
            row(1e-8),
        ),
        ("1 lb·ft at 5252 rpm in hp", hp, row(1e-4)),
        ("1 kgf·m at 716.2 rpm in PS", ps, row(1e-4)),
    ]);
}
