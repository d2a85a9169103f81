//! Does the car that was worked through by two other methods come out to its printed digits?

use super::WORKED;
use crate::published::row::Status::Derived;
use crate::published::row::{Published, assert_rows, published};
use crate::support::vehicles::Worked;
use layshaft::motion::{
    DriveLimit, FuelUse, LoadCase, OnRoad, PoweredGear, TopSpeed, TopSpeedLimit,
};

/// A figure of the car, printed to so many decimals.
fn row(expected: f64, decimals: i32) -> Published {
    let tolerance = 0.5 * 10.0_f64.powi(-decimals) * (1.0 + 1e-6);
    published(expected, tolerance, WORKED, Derived)
}

#[test]
fn effort_grip_and_acceleration_at_a_speed_are_the_printed_ones() {
    let car = Worked::car();
    let on_road = car.on_road();
    let (slow, fast) = (30.0 / 3.6, 90.0 / 3.6);
    let [first, third] = [1, 3].map(|number| car.gear(number));
    let grip = on_road.grip_limit_n(slow).unwrap();
    let acceleration = |gear: &PoweredGear, speed| gear.acceleration_m_s2(&on_road, speed).unwrap();
    assert_rows([
        (
            "1st at 30, N",
            first.effort_n(slow).unwrap(),
            row(5872.6806, 4),
        ),
        ("grip at 30, N", grip, row(4243.3497, 4)),
        (
            "1st at 30, m/s²",
            acceleration(&first, slow),
            row(4.011_330_5, 7),
        ),
        (
            "3rd at 90, N",
            third.effort_n(fast).unwrap(),
            row(2633.2020, 4),
        ),
        (
            "3rd at 90, m/s²",
            acceleration(&third, fast),
            row(2.044_078_3, 7),
        ),
    ]);
}

#[test]
fn the_pieces_of_a_drive_cover_the_gear_and_hold_the_same_acceleration() {
    let car = Worked::car();
    let on_road = OnRoad::level_and_still(&car.vehicle, &LoadCase::empty());
    for gear in &car.powertrain().gears {
        let pieces = on_road.drive_in(gear);
        let ends = [pieces[0].from_m_s(), pieces[pieces.len() - 1].to_m_s()];
        assert_eq!(
            ends.map(f64::to_bits),
            [gear.low_m_s(), gear.high_m_s()].map(f64::to_bits)
        );
        for pair in pieces.windows(2) {
            assert_eq!(pair[0].to_m_s().to_bits(), pair[1].from_m_s().to_bits());
        }
        for piece in &pieces {
            for share in [0.0, 0.3, 0.7, 1.0] {
                let speed = piece.from_m_s() + share * (piece.to_m_s() - piece.from_m_s());
                let (found, expected) = (
                    piece.acceleration_m_s2(speed),
                    gear.acceleration_m_s2(&on_road, speed).unwrap(),
                );
                assert!(
                    (found - expected).abs() < 1e-9,
                    "{speed}: {found}, {expected}"
                );
            }
        }
    }
    let limits = |number| {
        let pieces = on_road.drive_in(&car.gear(number));
        pieces.iter().any(|piece| piece.limit == DriveLimit::Grip)
    };
    assert_eq!([1, 2, 3].map(limits), [true, false, false]);
}

#[test]
fn top_speeds_are_the_printed_ones() {
    let car = Worked::car();
    let (powertrain, load) = (car.powertrain(), LoadCase::empty());
    let kmh = |top: TopSpeed| top.speed_m_s * 3.6;
    let (fastest, top) = powertrain.top_speed(&car.vehicle, &load).unwrap();
    assert_eq!(
        (fastest.gear.label.as_str(), top.limit),
        ("5", TopSpeedLimit::Power)
    );
    assert_rows([("top speed", kmh(top), row(207.095_026_8, 7))]);
    let printed = [59.056_997_2, 97.063_975_6, 139.056_192_0, 183.242_271_7];
    let lower = powertrain.gears.iter().zip(printed);
    assert_rows(lower.map(|(gear, expected)| {
        let top = gear.top_speed(&car.vehicle, &load).unwrap();
        assert_eq!(top.limit, TopSpeedLimit::Redline);
        (gear.gear.label.clone(), kmh(top), row(expected, 7))
    }));
}

#[test]
fn gradients_are_the_printed_ones() {
    let car = Worked::car();
    let on_road = car.on_road();
    let free = on_road.without_grip_limit();
    let powertrain = car.powertrain();
    let at = |road, number: usize, kmh: f64| car.gear(number).gradient_percent(road, kmh / 3.6);
    let start = |road| powertrain.start_gradient_percent(road, 2800.0).unwrap();
    assert_rows([
        (
            "1st at 30",
            at(&on_road, 1, 30.0).unwrap(),
            row(40.882_695_5, 7),
        ),
        (
            "1st at 30, effort",
            at(&free, 1, 30.0).unwrap(),
            row(70.133_499_4, 7),
        ),
        (
            "3rd at 90",
            at(&on_road, 3, 90.0).unwrap(),
            row(23.308_251_7, 7),
        ),
        (
            "5th at 110",
            at(&on_road, 5, 110.0).unwrap(),
            row(10.186_726_0, 7),
        ),
        ("start", start(&on_road), row(41.171_690_7, 7)),
        ("start, effort", start(&free), row(62.952_176_3, 7)),
    ]);
    assert_eq!(at(&on_road, 1, 60.0), None);
}

#[test]
fn cruise_is_the_printed_one() {
    let car = Worked::car();
    let (powertrain, on_road) = (car.powertrain(), car.on_road());
    let fuel = FuelUse::of(&car.engine).unwrap();
    let at = |number: usize, kmh: f64| {
        powertrain.cruise(&powertrain.gears[number - 1], &on_road, kmh / 3.6)
    };
    let mut rows = Vec::new();
    for (number, kmh, rpm, percent, kw) in [
        (5, 90.0, 2802.7855, 25.980_003_1, 10.162_633_0),
        (5, 120.0, 3737.0474, 36.008_812_4, 20.487_379_0),
    ] {
        let cruise = at(number, kmh);
        let held = cruise.held.unwrap();
        let what = |figure| format!("{number} at {kmh}, {figure}");
        rows.push((what("rpm"), cruise.engine_rpm, row(rpm, 4)));
        rows.push((what("%"), held.load_share() * 100.0, row(percent, 7)));
        rows.push((what("kW"), held.power_w / 1000.0, row(kw, 7)));
    }
    for (number, kmh, litres) in [
        (5, 90.0, 5.161_129_2),
        (5, 120.0, 6.787_035_9),
        (4, 90.0, 5.645_913_3),
    ] {
        let found = at(number, kmh).l_per_100km(&fuel).unwrap();
        rows.push((format!("{number} at {kmh}, L"), found, row(litres, 7)));
    }
    let fourth = at(4, 90.0);
    rows.push((
        "4 at 90, rpm".to_owned(),
        fourth.engine_rpm,
        row(3487.1866, 4),
    ));
    let share = fourth.held.unwrap().load_share();
    rows.push(("4 at 90, %".to_owned(), share * 100.0, row(19.524_269_3, 7)));
    assert_rows(rows);
}
