//! Do engine speed and road speed belong together as others print them?

use super::row::Status::{CommonPractice, Derived, Memory, Read};
use super::row::{Published, assert_rows, published};
use crate::support::gear_sets::{name, ratio, results, rpm, set, spec, tyre};
use layshaft::finders::{Sought, SpeedWish};
use layshaft::gearing::{
    ActsOn, Construction, Drivetrain, GearSet, GearSetSpec, OverallDiameter, Position, RoadSpeed,
    Stage, Tyre, TyreDiameter, parse_ratio, read_reduction, rpm_from_speed, speed_from_rpm,
};
use layshaft::units::{MM_PER_INCH, SpeedUnit};
use std::f64::consts::PI;

const ARRETE: &str = "French arrêté of 27 March 1979, article 2: V = 0.06 · D · n · R";
const TRUCK_GUIDE: &str = "a truck bodybuilder guide: v = 0.06 · n · U ÷ (iG · iV · iA)";
const HEISLER: &str = "Heisler, Advanced Vehicle Technology, 3.8.1: iF = 0.06 · π · d · N ÷ V";
const REPAIR_MANUAL: &str = "a repair manual, calculating transmission ratios";
const DEFINITION: &str = "definitions of inch and mile";
const TRADE: &str = "common practice, no source";

/// Engine speed in rev/min, overall ratio, rolling circumference in mm; the road speed in km/h.
///
/// The truck's formula was read, the inputs recalled, the speeds worked out from both.
const ROAD_SPEEDS: [(f64, f64, f64, f64, f64, &str); 4] = [
    (1000.0, 4.0, 1935.0, 29.025, 1e-9, ARRETE),
    (
        900.0,
        13.80 * 1.652 * 4.77,
        3185.0,
        1.58,
        0.005,
        TRUCK_GUIDE,
    ),
    (
        1900.0,
        0.84 * 1.007 * 4.77,
        3185.0,
        89.99,
        0.005,
        TRUCK_GUIDE,
    ),
    // The printed ratio of 4.07 leaves 0.2 km/h open.
    (6000.0, 4.07, PI * 540.0, 150.0, 0.2, HEISLER),
];

#[test]
fn road_speeds_follow_from_engine_speeds_as_published() {
    assert_rows(ROAD_SPEEDS.map(|(n, i, u, v, tolerance, source)| {
        let what = format!("{n} rpm, {i} overall, {u} mm");
        let row = published(v, tolerance, source, Derived);
        (what, speed_from_rpm(n, i, u), row)
    }));
}

#[test]
fn engine_speeds_follow_from_road_speeds_as_published() {
    assert_rows(ROAD_SPEEDS.map(|(n, i, u, v, tolerance, source)| {
        let what = format!("{v} km/h, {i} overall, {u} mm");
        let row = published(n, n * tolerance / v, source, Derived);
        (what, rpm_from_speed(v, i, u), row)
    }));
}

#[test]
fn the_final_drive_for_a_top_speed_is_the_published_one() {
    let wheel_rpm = rpm_from_speed(150.0, 1.0, PI * 540.0);
    let row = published(4.07, 0.005, HEISLER, Memory);
    assert_rows([("6000 rpm at 150 km/h", 6000.0 / wheel_rpm, row)]);
    let direct = Drivetrain::resolve(&set(&[1.0], 3.0), &tyre(PI * 540.0));
    let wish = SpeedWish {
        engine: rpm(6000.0),
        road: RoadSpeed::from_kmh(150.0).unwrap(),
    };
    let found = Sought::FinalDrive.found(&direct, &direct.gears[0], wish);
    assert_rows([("found by the wish", found.unwrap().value, row)]);
}

/// The truck's lowest and highest gear behind a transfer box in that position.
fn truck(present: usize) -> Drivetrain {
    let position = |(text, number)| Position {
        name: name(text),
        ratio: ratio(number),
    };
    let transfer_box = Stage {
        name: name("transfer box"),
        positions: [("high", 1.007), ("low", 1.652)].map(position).to_vec(),
        present,
        acts_on: ActsOn::EveryGear,
        shows_others: false,
    };
    let truck = GearSetSpec {
        stages: vec![transfer_box],
        ..spec(vec![ratio(13.80), ratio(0.84)], ratio(4.77))
    };
    Drivetrain::resolve(&GearSet::try_from(truck).unwrap(), &tyre(3185.0))
}

#[test]
fn a_truck_behind_its_transfer_box_goes_as_fast_as_its_guide_says() {
    let (high, low) = (truck(0), truck(1));
    let row = |kmh| published(kmh, 0.005, TRUCK_GUIDE, Derived);
    assert_rows([
        ("first, low", low.speed_kmh(&low.gears[0], 900.0), row(1.58)),
        (
            "top, high",
            high.speed_kmh(&high.gears[1], 1900.0),
            row(89.99),
        ),
    ]);
}

#[test]
fn counted_teeth_give_the_printed_ratios() {
    let rows = [
        ("37:50", published(0.740, 0.0005, REPAIR_MANUAL, Read)),
        ("69:14", published(4.929, 0.0005, REPAIR_MANUAL, Read)),
        (
            "37:50 * 69:14",
            published(3.647, 0.0005, REPAIR_MANUAL, Read),
        ),
        ("49/12", published(4.0833, 5e-5, "arithmetic", Derived)),
        ("38/17", published(2.2353, 5e-5, "arithmetic", Derived)),
        (
            "44/29 * 49/12",
            published(6.1954, 5e-5, "arithmetic", Derived),
        ),
    ];
    assert_rows(rows.map(|(text, row)| {
        let typed = parse_ratio(text).unwrap();
        (text, typed.driven_first().value(), row)
    }));
}

#[test]
fn a_gear_and_its_final_drive_multiply_to_the_printed_overall_ratio() {
    let typed = |text| parse_ratio(text).unwrap();
    let gear = typed("37:50").driven_first().clone();
    // The final drive may be written in either order.
    for final_drive in ["69:14", "14:69"] {
        let final_drive = read_reduction(&typed(final_drive));
        let set = GearSet::try_from(spec(vec![gear.clone()], final_drive)).unwrap();
        let found = results(&set, 2000.0).gears[0].gear.overall_ratio;
        let row = published(3.647, 0.0005, REPAIR_MANUAL, Read);
        assert_rows([("fifth gear on its final drive", found, row)]);
    }
}

/// Road speed in mph of a tyre whose rolling diameter is given in inches.
fn mph(engine_rpm: f64, overall_ratio: f64, rolling_diameter_in: f64) -> f64 {
    let rolling_circumference_mm = PI * rolling_diameter_in * MM_PER_INCH;
    let kmh = speed_from_rpm(engine_rpm, overall_ratio, rolling_circumference_mm);
    SpeedUnit::Mph.from_kmh(kmh)
}

#[test]
fn miles_per_hour_follow_from_inches_by_the_exact_constant() {
    let inputs = [
        (3000.0, 3.73, 26.0),
        (900.0, 108.7, 39.9),
        (6500.0, 2.9, 24.2),
    ];
    assert_rows(inputs.map(|(n, i, d)| {
        let expected = n * d / (336.1352 * i);
        // The constant is printed to four decimals.
        let tolerance = expected * 0.00005 / 336.1352;
        let row = published(expected, tolerance, DEFINITION, Derived);
        (format!("{n} rpm, {i} overall, {d} in"), mph(n, i, d), row)
    }));
}

#[test]
fn the_usual_constant_of_336_is_a_little_off() {
    let usual = 3000.0 * 26.0 / (336.0 * 3.73);
    let percent = (usual / mph(3000.0, 3.73, 26.0) - 1.0) * 100.0;
    let row = published(0.04, 0.005, DEFINITION, Derived);
    assert_rows([("336 instead of 336.1352", percent, row)]);
}

#[test]
fn the_sidewall_diameter_would_read_three_per_cent_fast() {
    let diameter = OverallDiameter::from_mm(26.0 * MM_PER_INCH).unwrap();
    let radial = TyreDiameter::new(diameter, Construction::Radial).unwrap();
    let rolling_circumference_mm = Tyre::OverallDiameter(radial).rolling_circumference_mm();
    let true_kmh = speed_from_rpm(3000.0, 3.73, rolling_circumference_mm);
    let percent = (mph(3000.0, 3.73, 26.0) / SpeedUnit::Mph.from_kmh(true_kmh) - 1.0) * 100.0;
    let row = published(3.0, 0.05, "ETRTO factor 3.05 against π", Derived);
    assert_rows([("a 26 in tyre", percent, row)]);
}

/// How much slower, in per cent, the engine turns in `gear` than in the fifth of 0.756.
fn percent_slower_than_fifth(gear: f64) -> f64 {
    let set = set(&[0.756, gear], 3.94);
    let drivetrain = results(&set, 1935.0).drivetrain;
    let [fifth, other] = [0, 1].map(|at| drivetrain.engine_rpm(&drivetrain.gears[at], 120.0));
    (1.0 - other / fifth) * 100.0
}

#[test]
fn top_gears_on_one_final_drive_compare_as_the_trade_knows() {
    let row =
        |percent, tolerance| -> Published { published(percent, tolerance, TRADE, CommonPractice) };
    assert_rows([
        (
            "a sixth of 0.625",
            percent_slower_than_fifth(0.625),
            row(17.3, 0.05),
        ),
        (
            "a fifth of 0.77",
            percent_slower_than_fifth(0.77),
            row(-1.85, 0.005),
        ),
    ]);
}
