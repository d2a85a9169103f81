//! Which vehicle does a test drive? Plain ones, to be changed part by part, and one worked through.

use super::gear_sets::{rpm, set, tyre};
use layshaft::gearing::{Drivetrain, EngineLimits};
use layshaft::motion::{
    Adhesion, AirDensity, CentreOfGravityHeight, ConstantLoad, Displacement, Drag, DragArea,
    DrivenAxle, Driving, Efficiencies, Efficiency, Engine, FrictionPressure, FrontShare, Fuel,
    Grade, Grip, Inertia, LinearLoad, LoadCase, LoadTransfer, Mass, OnRoad, PoweredGear,
    Powertrain, QuadraticLoad, Resistance, RollingCoefficient, RotatingMasses, RunGoal, ShiftPause,
    SlopeEfficiency, Torque, TorqueCurve, TorquePoint, Vehicle, Wheelbase, WillansLine,
};
use std::f64::consts::PI;

/// A torque curve of points in rev/min and N·m.
pub(crate) fn curve(points: &[(f64, f64)]) -> TorqueCurve {
    let points = points.iter().map(|(speed, nm)| TorquePoint {
        speed: rpm(*speed),
        torque: Torque::from_nm(*nm).unwrap(),
    });
    TorqueCurve::new(points.collect()).unwrap()
}

/// An engine of that curve without inertia.
pub(crate) fn engine(points: &[(f64, f64)]) -> Engine {
    Engine::of_curve(curve(points))
}

/// The same with an inertia in kg·m².
pub(crate) fn with_inertia(engine: Engine, kgm2: f64) -> Engine {
    Engine {
        inertia: inertia(kgm2),
        ..engine
    }
}

/// An inertia in kg·m².
pub(crate) fn inertia(kgm2: f64) -> Inertia {
    Inertia::from_kgm2(kgm2).unwrap()
}

/// Measured coefficients A, B and C in N, N/(m/s) and N/(m/s)².
pub(crate) fn coast_down(a: f64, b: f64, c: f64) -> Resistance {
    Resistance::CoastDown {
        constant: ConstantLoad::from_n(a).unwrap(),
        linear: LinearLoad::from_n_per_m_s(b).unwrap(),
        quadratic: QuadraticLoad::from_n_per_m2_s2(c).unwrap(),
    }
}

/// A rolling coefficient and a drag area in m².
pub(crate) fn estimated(rolling: f64, drag_area_m2: f64) -> Resistance {
    Resistance::Estimated {
        rolling: RollingCoefficient::new(rolling).unwrap(),
        drag: Drag::Area(DragArea::from_m2(drag_area_m2).unwrap()),
    }
}

/// A vehicle without grip limit, in which nothing turns.
pub(crate) fn vehicle(mass_kg: f64, resistance: Resistance) -> Vehicle {
    Vehicle {
        mass: Mass::from_kg(mass_kg).unwrap(),
        resistance,
        air_density: AirDensity::AT_20_C,
        grip: None,
        rotating: RotatingMasses::Inertias {
            wheels: Inertia::NONE,
        },
    }
}

/// The grip of a driven axle; `transfer` is wheelbase and height of the centre of gravity in m.
pub(crate) fn grip(
    driven: DrivenAxle,
    adhesion: f64,
    front_share: f64,
    transfer: Option<(f64, f64)>,
) -> Grip {
    Grip {
        driven,
        adhesion: Adhesion::new(adhesion).unwrap(),
        front_share: FrontShare::new(front_share).unwrap(),
        transfer: transfer.map(|(wheelbase, height)| LoadTransfer {
            wheelbase: Wheelbase::from_m(wheelbase).unwrap(),
            height: CentreOfGravityHeight::from_m(height).unwrap(),
        }),
    }
}

/// One efficiency for all gears.
pub(crate) fn efficiency(share: f64) -> Efficiencies {
    Efficiencies::all(Efficiency::new(share).unwrap())
}

/// A grade in per cent.
pub(crate) fn grade(percent: f64) -> Grade {
    Grade::from_percent(percent).unwrap()
}

/// Gears on a final drive and on tyres of that rolling radius in m.
pub(crate) fn drivetrain(ratios: &[f64], final_drive: f64, radius_m: f64) -> Drivetrain {
    let tyre = tyre(2.0 * PI * radius_m * 1000.0);
    Drivetrain::resolve(&set(ratios, final_drive), &tyre)
}

/// A vehicle that was worked through by two methods, neither of them this program's.
#[derive(Debug, Clone)]
pub(crate) struct Worked {
    /// The vehicle.
    pub(crate) vehicle: Vehicle,
    /// Its engine.
    pub(crate) engine: Engine,
    /// Its gears.
    pub(crate) drivetrain: Drivetrain,
    /// Within which it is driven.
    pub(crate) limits: EngineLimits,
    /// What the gears leave of the power.
    pub(crate) efficiencies: Efficiencies,
}

impl Worked {
    /// The light sports car with five gears: 1020 kg, 1.6 L, driven at the rear.
    pub(crate) fn car() -> Self {
        let engine = engine(&[
            (1000.0, 96.0),
            (1500.0, 110.0),
            (2200.0, 124.0),
            (3000.0, 136.0),
            (3800.0, 146.0),
            (4600.0, 152.0),
            (5400.0, 150.0),
            (6000.0, 143.0),
            (6600.0, 128.0),
            (7200.0, 104.0),
        ]);
        let engine = Engine {
            displacement: Some(Displacement::from_l(1.6).unwrap()),
            fuel: Fuel::Petrol,
            willans: Some(WillansLine {
                slope_efficiency: SlopeEfficiency::new(0.4).unwrap(),
                friction: FrictionPressure::from_bar(1.7).unwrap(),
            }),
            ..with_inertia(engine, 0.15)
        };
        let vehicle = Vehicle {
            grip: Some(grip(DrivenAxle::Rear, 0.75, 0.52, Some((2.26, 0.47)))),
            rotating: RotatingMasses::Inertias {
                wheels: inertia(3.2),
            },
            ..vehicle(1020.0, estimated(0.0125, 0.64))
        };
        let gears = set(&[3.32, 2.02, 1.41, 1.07, 0.86], 3.9);
        Self {
            vehicle,
            engine,
            drivetrain: Drivetrain::resolve(&gears, &tyre(1795.0)),
            limits: EngineLimits {
                idle: Some(rpm(850.0)),
                lowest_useful: None,
                redline: rpm(7100.0),
            },
            efficiencies: efficiency(0.9),
        }
    }

    /// Its gears behind its engine.
    pub(crate) fn powertrain(&self) -> Powertrain {
        let (gears, limits) = (&self.drivetrain, &self.limits);
        Powertrain::new(gears, &self.engine, limits, &self.efficiencies).unwrap()
    }

    /// The vehicle empty on a level road without wind.
    pub(crate) fn on_road(&self) -> OnRoad {
        OnRoad::level_and_still(&self.vehicle, &LoadCase::empty())
    }

    /// One gear, counted from 1.
    pub(crate) fn gear(&self, number: usize) -> PoweredGear {
        self.powertrain().gears[number - 1].clone()
    }
}

/// Launched at an engine speed in rev/min, shifted with a pause in s.
pub(crate) fn driving(launch_rpm: Option<f64>, pause_s: f64) -> Driving {
    Driving {
        launch: launch_rpm.map(rpm),
        pause: ShiftPause::from_s(pause_s).unwrap(),
    }
}

/// A run until a speed in m/s and a distance in m are reached.
pub(crate) fn until(speed_m_s: f64, distance_m: f64) -> RunGoal {
    RunGoal {
        speed_m_s,
        distance_m,
    }
}
