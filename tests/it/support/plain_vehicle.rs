//! What is a vehicle in plain numbers, of which every method makes what it needs?

use super::gear_sets::{rpm, set, tyre};
use super::vehicles::{
    coast_down, driving, efficiency, engine, estimated, grade, grip, inertia, vehicle, with_inertia,
};
use layshaft::gearing::{Drivetrain, EngineLimits};
use layshaft::motion::{
    DrivenAxle, Driving, Efficiencies, Headwind, LoadCase, OnRoad, Powertrain, RotatingMasses,
    Vehicle,
};
use std::f64::consts::PI;

/// A rolling circumference in mm on which n rpm behind a ratio of 4 are n ÷ 100 m/s.
const HUNDREDTHS_MM: f64 = 2400.0;

/// The torque in N·m that is 1000 N for each unit of ratio there.
pub(crate) const PER_THOUSAND_N: f64 = HUNDREDTHS_MM / (2.0 * PI);

/// What holds a vehicle back.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Held {
    /// Rolling coefficient and drag area in m².
    Estimated(f64, f64),
    /// A, B and C in N, N/(m/s) and N/(m/s)².
    Measured(f64, f64, f64),
}

/// What a driven axle can pass on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tyres {
    pub(crate) driven: DrivenAxle,
    pub(crate) adhesion: f64,
    pub(crate) front_share: f64,
    /// Wheelbase and height of the centre of gravity in m.
    pub(crate) transfer: Option<(f64, f64)>,
}

/// A vehicle, its road and its driver as plain numbers.
#[derive(Debug, Clone)]
pub(crate) struct Plain {
    pub(crate) points: Vec<(f64, f64)>,
    pub(crate) redline_rpm: f64,
    pub(crate) idle_rpm: f64,
    pub(crate) ratios: Vec<f64>,
    pub(crate) final_drive: f64,
    pub(crate) circumference_mm: f64,
    pub(crate) mass_kg: f64,
    pub(crate) held: Held,
    pub(crate) efficiency: f64,
    /// Of engine and wheels in kg·m²; none for the mass factor by formula.
    pub(crate) inertias: Option<(f64, f64)>,
    pub(crate) tyres: Option<Tyres>,
    pub(crate) grade_percent: f64,
    pub(crate) headwind_kmh: f64,
    pub(crate) launch_rpm: f64,
    pub(crate) pause_s: f64,
    /// One for each change.
    pub(crate) shift_rpms: Vec<f64>,
}

impl Plain {
    /// So many kg that nothing holds back and in which nothing turns, with an engine of these points that
    /// starts at the first; n rpm behind a ratio of 4 are n ÷ 100 m/s.
    pub(crate) fn bare(mass_kg: f64, ratios: &[f64], points: &[(f64, f64)]) -> Self {
        let ends_rpm = [points[0].0, points[points.len() - 1].0];
        Self {
            points: points.to_vec(),
            redline_rpm: ends_rpm[1],
            idle_rpm: ends_rpm[0],
            ratios: ratios.to_vec(),
            final_drive: 1.0,
            circumference_mm: HUNDREDTHS_MM,
            mass_kg,
            held: Held::Measured(0.0, 0.0, 0.0),
            efficiency: 1.0,
            inertias: Some((0.0, 0.0)),
            tyres: None,
            grade_percent: 0.0,
            headwind_kmh: 0.0,
            launch_rpm: ends_rpm[0],
            pause_s: 0.0,
            shift_rpms: Vec::new(),
        }
    }

    pub(crate) fn vehicle(&self) -> Vehicle {
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

    pub(crate) fn on_road(&self) -> OnRoad {
        let load = LoadCase {
            headwind: Headwind::from_kmh(self.headwind_kmh).unwrap(),
            ..LoadCase::empty()
        };
        OnRoad::new(&self.vehicle(), &load, grade(self.grade_percent))
    }

    pub(crate) fn powertrain(&self) -> Powertrain {
        self.powertrain_if_any().unwrap()
    }

    /// None where the limits leave nothing of the curve.
    pub(crate) fn powertrain_if_any(&self) -> Option<Powertrain> {
        self.powertrain_with(&efficiency(self.efficiency))
    }

    /// The same with other efficiencies.
    pub(crate) fn powertrain_with(&self, efficiencies: &Efficiencies) -> Option<Powertrain> {
        let gears = set(&self.ratios, self.final_drive);
        let gears = Drivetrain::resolve(&gears, &tyre(self.circumference_mm));
        let turning = self.inertias.map_or(0.0, |(engine, _)| engine);
        let engine = with_inertia(engine(&self.points), turning);
        let limits = EngineLimits {
            idle: Some(rpm(self.idle_rpm)),
            lowest_useful: None,
            redline: rpm(self.redline_rpm),
        };
        Powertrain::new(&gears, &engine, &limits, efficiencies)
    }

    pub(crate) fn driving(&self) -> Driving {
        driving(Some(self.launch_rpm), self.pause_s)
    }

    pub(crate) fn radius_m(&self) -> f64 {
        self.circumference_mm / 1000.0 / (2.0 * PI)
    }

    /// The same on a level road in still air.
    pub(crate) fn on_level(self) -> Self {
        Self {
            grade_percent: 0.0,
            headwind_kmh: 0.0,
            ..self
        }
    }

    /// The same with any grip.
    pub(crate) fn without_grip_limit(self) -> Self {
        Self {
            tyres: None,
            ..self
        }
    }
}
