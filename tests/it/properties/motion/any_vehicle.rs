//! Which vehicles are there? Plain numbers, of which both methods make what they need.

use crate::support::gear_sets::{rpm, set, tyre};
use crate::support::vehicles::{
    coast_down, driving, efficiency, engine, estimated, grade, grip, inertia, vehicle, with_inertia,
};
use layshaft::gearing::{Drivetrain, EngineLimits};
use layshaft::motion::{
    DrivenAxle, Driving, Headwind, LoadCase, OnRoad, Powertrain, RotatingMasses, Vehicle,
};
use proptest::prelude::*;
use std::f64::consts::PI;

/// What holds a vehicle back.
#[derive(Debug, Clone, Copy)]
pub(super) enum Held {
    /// Rolling coefficient and drag area in m².
    Estimated(f64, f64),
    /// A, B and C in N, N/(m/s) and N/(m/s)².
    Measured(f64, f64, f64),
}

/// What a driven axle can pass on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tyres {
    pub(super) driven: DrivenAxle,
    pub(super) adhesion: f64,
    pub(super) front_share: f64,
    /// Wheelbase and height of the centre of gravity in m.
    pub(super) transfer: Option<(f64, f64)>,
}

/// A vehicle, its road and its driver as plain numbers.
#[derive(Debug, Clone)]
pub(super) struct Plain {
    pub(super) points: Vec<(f64, f64)>,
    pub(super) redline_rpm: f64,
    pub(super) idle_rpm: f64,
    pub(super) ratios: Vec<f64>,
    pub(super) final_drive: f64,
    pub(super) circumference_mm: f64,
    pub(super) mass_kg: f64,
    pub(super) held: Held,
    pub(super) efficiency: f64,
    /// Of engine and wheels in kg·m²; none for the mass factor by formula.
    pub(super) inertias: Option<(f64, f64)>,
    pub(super) tyres: Option<Tyres>,
    pub(super) grade_percent: f64,
    pub(super) headwind_kmh: f64,
    pub(super) launch_rpm: f64,
    pub(super) pause_s: f64,
    /// One for each change.
    pub(super) shift_rpms: Vec<f64>,
}

impl Plain {
    pub(super) fn vehicle(&self) -> Vehicle {
        let resistance = match self.held {
            Held::Estimated(rolling, area) => estimated(rolling, area),
            Held::Measured(a, b, c) => coast_down(a, b, c),
        };
        let tyres = self.tyres.map(|tyres| {
            grip(
                tyres.driven,
                tyres.adhesion,
                tyres.front_share,
                tyres.transfer,
            )
        });
        let wheels = self.inertias.map(|(_, wheels)| inertia(wheels));
        Vehicle {
            grip: tyres,
            rotating: wheels.map_or(RotatingMasses::Formula, |wheels| RotatingMasses::Inertias {
                wheels,
            }),
            ..vehicle(self.mass_kg, resistance)
        }
    }

    pub(super) fn on_road(&self) -> OnRoad {
        let load = LoadCase {
            headwind: Headwind::from_kmh(self.headwind_kmh).unwrap(),
            ..LoadCase::empty()
        };
        OnRoad::new(&self.vehicle(), &load, grade(self.grade_percent))
    }

    pub(super) fn powertrain(&self) -> Powertrain {
        let gears = set(&self.ratios, self.final_drive);
        let gears = Drivetrain::resolve(&gears, &tyre(self.circumference_mm));
        let engine = engine(&self.points);
        let turning = self.inertias.map_or(0.0, |(engine, _)| engine);
        let limits = EngineLimits {
            idle: Some(rpm(self.idle_rpm)),
            lowest_useful: None,
            redline: rpm(self.redline_rpm),
        };
        let (engine, of) = (with_inertia(engine, turning), efficiency(self.efficiency));
        Powertrain::new(&gears, &engine, &limits, &of).unwrap()
    }

    pub(super) fn driving(&self) -> Driving {
        driving(Some(self.launch_rpm), self.pause_s)
    }

    pub(super) fn radius_m(&self) -> f64 {
        self.circumference_mm / 1000.0 / (2.0 * PI)
    }

    /// The same on a level road in still air.
    pub(super) fn on_level(self) -> Self {
        Self {
            grade_percent: 0.0,
            headwind_kmh: 0.0,
            ..self
        }
    }

    /// The same with any grip.
    pub(super) fn without_grip_limit(self) -> Self {
        Self {
            tyres: None,
            ..self
        }
    }
}

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
