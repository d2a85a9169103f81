//! Does the car that was worked through by two other methods come out to its printed digits?

use super::WORKED;
use crate::published::row::Status::Derived;
use crate::published::row::{Published, assert_rows, published};
use crate::support::vehicles::Worked;
use layshaft::motion::{DriveLimit, LoadCase, OnRoad, PoweredGear};

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
