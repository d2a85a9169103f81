//! Vehicles of every kind: what can be typed, at random and at the ends of every range.

use super::gear_sets::{rpm, set, tyre};
use super::vehicles::{Worked, coast_down, efficiency, engine, estimated, grip, inertia, vehicle};
use layshaft::gearing::{Drivetrain, EngineLimits};
use layshaft::motion::{
    AddedMass, AirDensity, Displacement, DragArea, DrivenAxle, Engine, Grip, Headwind, LoadCase,
    MeasuredAt, Resistance, RotatingMasses, Strokes, Trailer, Vehicle,
};
use proptest::prelude::*;
use proptest::sample::select;

/// A vehicle as people have them, with gears that fall from first to top.
pub(crate) fn any_vehicle() -> impl Strategy<Value = Worked> {
    let body = (300.0..=5000.0, any_resistance(), any_grip(), any_rotating());
    (body, any_engine(), any_gears(), 0.7..=1.0).prop_map(
        |((mass, resistance, grip, rotating), engine, (ratios, final_drive), share)| Worked {
            vehicle: Vehicle {
                grip,
                rotating,
                ..vehicle(mass, resistance)
            },
            engine,
            drivetrain: Drivetrain::resolve(&set(&ratios, final_drive), &tyre(1900.0)),
            limits: EngineLimits {
                idle: Some(rpm(800.0)),
                lowest_useful: None,
                redline: rpm(6500.0),
            },
            efficiencies: efficiency(share),
        },
    )
}

fn any_resistance() -> impl Strategy<Value = Resistance> {
    prop_oneof![
        (0.0..=0.04, 0.1..=6.0).prop_map(|(rolling, drag)| estimated(rolling, drag)),
        (0.0..=500.0, -2.0..=5.0, 0.05..=3.0).prop_map(|(a, b, c)| coast_down(a, b, c)),
    ]
}

/// A driven axle with its adhesion and weights.
pub(crate) fn any_grip() -> impl Strategy<Value = Option<Grip>> {
    let driven = select(vec![DrivenAxle::Front, DrivenAxle::Rear, DrivenAxle::All]);
    let transfer = proptest::option::of((1.2..=4.0, 0.2..=1.5));
    let any = (driven, 0.1..=1.5, 0.2..=0.8, transfer);
    proptest::option::of(
        any.prop_map(|(driven, adhesion, share, transfer)| grip(driven, adhesion, share, transfer)),
    )
}

fn any_rotating() -> impl Strategy<Value = RotatingMasses> {
    let inertias = (0.0..=10.0).prop_map(|kgm2| RotatingMasses::Inertias {
        wheels: inertia(kgm2),
    });
    prop_oneof![Just(RotatingMasses::Formula), inertias]
}

/// An engine of up to 400 N·m between 900 and 7000 rpm.
pub(crate) fn any_engine() -> impl Strategy<Value = Engine> {
    let torques = proptest::collection::vec(20.0..=400.0, 2..12);
    (torques, 0.0..=0.5).prop_map(|(torques, kgm2)| {
        let width = 6100.0 / (torques.len() - 1) as f64;
        let places = (0..).map(|at| 900.0 + width * f64::from(at));
        let points: Vec<(f64, f64)> = places.zip(torques).collect();
        Engine {
            inertia: inertia(kgm2),
            ..engine(&points)
        }
    })
}

fn any_gears() -> impl Strategy<Value = (Vec<f64>, f64)> {
    let steps = proptest::collection::vec(1.1..=2.0_f64, 0..6);
    (2.5..=5.0_f64, steps, 2.5..=5.0).prop_map(|(first, steps, final_drive)| {
        let ratios = steps.into_iter().scan(first, |ratio, step| {
            *ratio /= step;
            Some(*ratio)
        });
        (std::iter::once(first).chain(ratios).collect(), final_drive)
    })
}

/// Whatever it carries, pulls and meets.
pub(crate) fn any_load() -> impl Strategy<Value = LoadCase> {
    let trailer = proptest::option::of((0.0..=2000.0, 0.0..=5.0));
    (0.0..=1000.0, trailer, -80.0..=80.0)
        .prop_map(|(extra, pulled, wind)| load_case(extra, pulled, wind))
}

fn load_case(extra_kg: f64, trailer: Option<(f64, f64)>, headwind_kmh: f64) -> LoadCase {
    LoadCase {
        extra: AddedMass::from_kg(extra_kg).unwrap(),
        trailer: trailer.map(|(kg, m2)| Trailer {
            mass: AddedMass::from_kg(kg).unwrap(),
            drag_area: DragArea::from_m2(m2).unwrap(),
        }),
        headwind: Headwind::from_kmh(headwind_kmh).unwrap(),
    }
}

/// A vehicle with every quantity at an end of its range, and its load.
pub(crate) fn extreme_vehicle() -> impl Strategy<Value = (Worked, LoadCase)> {
    (
        extreme_body(),
        extreme_engine(),
        extreme_gears(),
        extreme_load(),
    )
        .prop_map(|(vehicle, (engine, share), (drivetrain, limits), load)| {
            let worked = Worked {
                vehicle,
                engine,
                drivetrain,
                limits,
                efficiencies: efficiency(share),
            };
            (worked, load)
        })
}

fn ends(values: &[f64]) -> impl Strategy<Value = f64> + use<> {
    select(values.to_vec())
}

fn extreme_body() -> impl Strategy<Value = Vehicle> {
    let resistance = prop_oneof![
        (ends(&[0.0, 0.2]), ends(&[0.0, 1e-300, 20.0])).prop_map(|(f, drag)| estimated(f, drag)),
        (
            ends(&[0.0, 1e-300, 100_000.0]),
            ends(&[-1000.0, 0.0, 1000.0]),
            ends(&[0.0, 100.0])
        )
            .prop_map(|(a, b, c)| coast_down(a, b, c)),
    ];
    let driven = select(vec![DrivenAxle::Front, DrivenAxle::Rear, DrivenAxle::All]);
    let transfer = proptest::option::of((ends(&[0.3, 20.0]), ends(&[0.0, 1e-310, 5.0])));
    // 0.06 makes the product of adhesion and slope 1 with the shortest and highest of them.
    let adhesion = ends(&[0.0, 0.06, 5.0]);
    let gripping = (driven, adhesion, ends(&[0.0, 1.0]), transfer);
    let gripping =
        proptest::option::of(gripping.prop_map(|(driven, adhesion, share, transfer)| {
            grip(driven, adhesion, share, transfer)
        }));
    let wheels = ends(&[0.0, 1000.0]).prop_map(|kgm2| RotatingMasses::Inertias {
        wheels: inertia(kgm2),
    });
    let rotating = prop_oneof![Just(RotatingMasses::Formula), wheels];
    let whole = (ends(&[50.0, 100_000.0]), resistance, gripping, rotating);
    (whole, ends(&[0.0, 2.0])).prop_map(|((mass, resistance, grip, rotating), density)| Vehicle {
        grip,
        rotating,
        air_density: AirDensity::from_kg_m3(density).unwrap(),
        ..vehicle(mass, resistance)
    })
}

fn extreme_engine() -> impl Strategy<Value = (Engine, f64)> {
    let points = select(vec![
        vec![1.0, 30_000.0],
        vec![1.0, 1.0_f64.next_up(), 30_000.0],
        vec![1.0, 30_000.0_f64.next_down(), 30_000.0],
        vec![1.0, 1.5, 2.0, 29_999.0],
        vec![29_998.0, 29_999.0, 30_000.0],
    ]);
    let torques = proptest::collection::vec(ends(&[0.0, 1e-300, 20_000.0]), 4);
    let curve = (points, torques).prop_map(|(speeds, torques)| {
        let points: Vec<(f64, f64)> = speeds.into_iter().zip(torques).collect();
        engine(&points)
    });
    let measured = select(vec![MeasuredAt::Crank, MeasuredAt::Wheels]);
    let strokes = select(vec![Strokes::Two, Strokes::Four]);
    let others = (
        measured,
        strokes,
        ends(&[0.0, 1000.0]),
        ends(&[0.01, 100.0]),
    );
    (curve, others, ends(&[0.01, 1.0])).prop_map(
        |(curve, (measured_at, strokes, kgm2, litres), share)| {
            let engine = Engine {
                measured_at,
                strokes,
                inertia: inertia(kgm2),
                displacement: Some(Displacement::from_l(litres).unwrap()),
                ..curve
            };
            (engine, share)
        },
    )
}

fn extreme_gears() -> impl Strategy<Value = (Drivetrain, EngineLimits)> {
    let ratios = proptest::collection::vec(ends(&[0.001, 1.0, 400.0]), 1..4);
    let idle = proptest::option::of(ends(&[1.0, 29_998.5]));
    let others = (ends(&[0.001, 400.0]), ends(&[900.0, 13_000.0]), idle);
    (ratios, others, ends(&[1.2, 30_000.0])).prop_map(
        |(ratios, (final_drive, u, idle), redline)| {
            let limits = EngineLimits {
                idle: idle.map(rpm),
                lowest_useful: None,
                redline: rpm(redline),
            };
            let mut drivetrain = Drivetrain::resolve(&set(&ratios, final_drive), &tyre(u));
            // Four stages more, as far as they can take a gear.
            for gear in &mut drivetrain.gears {
                gear.overall_ratio *= final_drive.powi(4);
            }
            (drivetrain, limits)
        },
    )
}

fn extreme_load() -> impl Strategy<Value = LoadCase> {
    let trailer = proptest::option::of((ends(&[0.0, 100_000.0]), ends(&[0.0, 20.0])));
    let winds = ends(&[-200.0, 0.0, 200.0]);
    (ends(&[0.0, 100_000.0]), trailer, winds)
        .prop_map(|(extra, trailer, wind)| load_case(extra, trailer, wind))
}
