//! Are the units the ones that the world agreed on?
//!
//! Torque, power and force have no units here yet.

use super::row::Status::{Derived, Read};
use super::row::{assert_rows, published};
use layshaft::gearing::{RevsPerKm, RevsPerMile, Tyre, parse_tyre};
use layshaft::units::{KM_PER_MILE, MM_PER_INCH, SpeedUnit};

const UNIT_LIBRARIES: &str = "general-purpose unit libraries";

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
