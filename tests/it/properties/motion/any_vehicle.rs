//! Which vehicles are there?

use crate::support::plain_vehicle::{Held, Plain, Tyres};
use layshaft::motion::DrivenAxle;
use proptest::prelude::*;

fn points() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let steps = prop::collection::vec((300.0..1500.0, 60.0..300.0), 3..9);
    (600.0..1200.0, 60.0..200.0, steps).prop_map(|(first, torque, steps)| {
        let mut points = vec![(first, torque)];
        let mut speed = first;
        for (step, torque) in steps {
            speed += step;
            points.push((speed, torque));
        }
        points
    })
}

fn held() -> impl Strategy<Value = Held> {
    prop_oneof![
        (0.0..0.02, 0.2..1.5).prop_map(|(rolling, area)| Held::Estimated(rolling, area)),
        (0.0..300.0, -1.0..6.0, 0.0..0.8).prop_map(|(a, b, c)| Held::Measured(a, b, c)),
    ]
}

fn tyres() -> impl Strategy<Value = Option<Tyres>> {
    let driven = prop_oneof![
        Just(DrivenAxle::Front),
        Just(DrivenAxle::Rear),
        Just(DrivenAxle::All)
    ];
    let transfer = prop::option::of((1.4..4.0, 0.3..0.9));
    let tyres = (driven, 0.2..1.1, 0.35..0.65, transfer);
    prop::option::of(
        tyres.prop_map(|(driven, adhesion, front_share, transfer)| Tyres {
            driven,
            adhesion,
            front_share,
            transfer,
        }),
    )
}

/// Vehicles as they are driven, and some that are not: short of power, of grip, in the wrong gear.
pub(super) fn any_vehicle() -> impl Strategy<Value = Plain> {
    let engine = (points(), 0.7_f64..1.05, 500.0_f64..1300.0);
    let gears = (
        2.6..5.0,
        prop::collection::vec(1.15_f64..1.8, 1..6),
        3.0..5.0,
        1600.0..2400.0,
    );
    let car = (
        500.0..3000.0,
        held(),
        0.8..=1.0,
        prop::option::of((0.0..0.4, 0.0..6.0)),
        tyres(),
    );
    let road = (
        prop_oneof![Just(0.0), -3.0..12.0],
        prop_oneof![Just(0.0), -40.0..60.0],
    );
    let driver = (
        0.0_f64..0.6,
        prop_oneof![Just(0.0), 0.1..1.2],
        prop::collection::vec(0.3_f64..1.1, 6),
    );
    (engine, gears, car, road, driver).prop_map(
        |(
            (points, redline, idle_rpm),
            (first, steps, final_drive, circumference_mm),
            car,
            road,
            driver,
        )| {
            let end_rpm: f64 = points[points.len() - 1].0;
            let mut ratios = vec![first];
            for step in &steps {
                ratios.push(ratios[ratios.len() - 1] / step);
            }
            let (mass_kg, held, efficiency, inertias, tyres) = car;
            let (launch, pause_s, shifts) = driver;
            Plain {
                redline_rpm: (end_rpm * redline).max(idle_rpm + 100.0),
                idle_rpm,
                final_drive,
                circumference_mm,
                mass_kg,
                held,
                efficiency,
                inertias,
                tyres,
                grade_percent: road.0,
                headwind_kmh: road.1,
                launch_rpm: points[0].0 + launch * (end_rpm - points[0].0),
                pause_s,
                shift_rpms: shifts
                    .iter()
                    .take(steps.len())
                    .map(|s| s * end_rpm)
                    .collect(),
                points,
                ratios,
            }
        },
    )
}
