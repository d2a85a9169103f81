//! The vehicle on its road: what engine, gears and load make of every set of a document.
//!
//! Technical data may be absent part by part; what a figure cannot do without is told by name.

use crate::gearing::{Drivetrain, EngineLimits, OutOfRange};
use crate::motion::{
    AirDensity, CalibrationError, Drag, DrivenAxle, Driving, Efficiencies, Efficiency, Engine,
    FormulaWithInertia, FrontShare, FuelUse, Grade, Grip, LoadCase, LoadTransfer, Mass, OnRoad,
    Powertrain, Resistance, RotatingMasses, Vehicle,
};
use crate::project::{Candidate, EngineData, Project, VehicleData};
use crate::units::KMH_PER_M_S;
use std::cell::OnceCell;

/// Something without which nothing can be told of the motion of a vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Needed {
    /// Full-load torque over engine speed.
    TorqueCurve,
    /// The mass of the vehicle.
    Mass,
    /// What its tyres take.
    Rolling,
    /// What the air takes.
    Drag,
    /// Its weight on the front axle, where the grip of one axle counts.
    FrontShare,
}

impl Needed {
    /// What it is, with its article.
    pub fn name(self) -> &'static str {
        match self {
            Self::TorqueCurve => "the torque curve of the engine",
            Self::Mass => "the mass of the vehicle",
            Self::Rolling => "the rolling coefficient of the tyres",
            Self::Drag => "the drag area of the vehicle",
            Self::FrontShare => "the share of the weight on the front axle",
        }
    }
}

/// Why nothing can be told of the motion of a vehicle.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NoMotion {
    /// Something is not known.
    #[error("{} is not known", .0.name())]
    Unknown(Needed),
    /// The formula and an inertia.
    #[error(transparent)]
    Formula(#[from] FormulaWithInertia),
    /// Idle and redline leave nothing of the curve.
    #[error("idle and redline leave nothing of the torque curve")]
    NoBand,
    /// A known consumption that is none of this vehicle.
    #[error(transparent)]
    Calibration(#[from] CalibrationError),
    /// A starting value that cannot be, which there is none of.
    #[error(transparent)]
    StartingValue(#[from] OutOfRange),
}

impl NoMotion {
    /// All that stands in the way of telling the motion of a project's vehicle, what matters first in
    /// front; empty where nothing does.
    pub fn all(project: &Project) -> Vec<Self> {
        let technical = &project.technical;
        let typed = &technical.vehicle;
        let mut engines = project.sets.iter().map(|set| {
            let typed = technical.engine_of(&set.technical);
            engine(typed).err()
        });
        let of_engine = engines.find_map(|lacks| lacks);
        let of_vehicle = match usual_vehicle(typed) {
            Ok(usual) => {
                let usual = usual.as_ref();
                let lacks = [
                    mass(typed, usual).err(),
                    resistance(typed, usual).err(),
                    grip(typed, usual.and_then(|vehicle| vehicle.grip)).err(),
                ];
                lacks.into_iter().flatten().collect()
            }
            Err(reason) => vec![reason],
        };
        let all: Vec<Self> = of_engine.into_iter().chain(of_vehicle).collect();
        if all.is_empty() {
            return Motion::of(project).err().into_iter().collect();
        }
        all
    }
}

/// One set with its engine, in its vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct SetMotion {
    /// The vehicle, with what turns in it.
    pub vehicle: Vehicle,
    /// The same with its load on its road.
    pub on_road: OnRoad,
    /// The gears behind their engine.
    pub powertrain: Powertrain,
    /// The same behind an engine that no redline holds back; none where its torque is not measured beyond.
    pub beyond_redline: Option<Powertrain>,
    /// What the engine burns; none where its displacement is not known.
    pub fuel: Option<FuelUse>,
}

/// A document with its engine running.
#[derive(Debug, Clone)]
pub struct Motion {
    /// What the vehicle carries, pulls and meets.
    pub load: LoadCase,
    /// How it is started and shifted.
    pub driving: Driving,
    /// One for each candidate.
    pub sets: Vec<SetMotion>,
    /// The best shift points of each set, once somebody has asked for them.
    best_shift_rpms: Vec<OnceCell<Vec<f64>>>,
}

impl Motion {
    /// The motion of a project's vehicle with each of its sets.
    ///
    /// # Errors
    /// When something is not known that it needs, or two figures contradict each other.
    pub fn of(project: &Project) -> Result<Self, NoMotion> {
        let sets = project.sets.iter().map(|set| SetMotion::of(project, set));
        let mut motion = Self {
            load: project.technical.road.load_case(),
            driving: project.technical.driving.driving(),
            sets: sets.collect::<Result<_, _>>()?,
            best_shift_rpms: vec![OnceCell::new(); project.sets.len()],
        };
        motion.calibrate(project)?;
        Ok(motion)
    }

    /// The engine speeds in rev/min at which changing up is best for the set at that place, counted from 0,
    /// one for each change of its chain.
    pub fn best_shift_rpms(&self, place: usize) -> &[f64] {
        let Some((set, best)) = self.sets.get(place).zip(self.best_shift_rpms.get(place)) else {
            return &[];
        };
        best.get_or_init(|| {
            let powertrain = &set.powertrain;
            powertrain.best_shift_rpms(&set.on_road, &self.driving)
        })
    }

    /// Scales all estimates by the one factor that a known consumption gives.
    fn calibrate(&mut self, project: &Project) -> Result<(), NoMotion> {
        let Some(known) = project.technical.known_fuel else {
            return Ok(());
        };
        let place = project.sets.place(known.set);
        let Some(set) = place.and_then(|place| self.sets.get(place)) else {
            return Ok(());
        };
        let mut gears = set.powertrain.gears.iter();
        let gear = gears.find(|powered| powered.gear.id == known.gear);
        let Some((gear, fuel)) = gear.zip(set.fuel) else {
            return Ok(());
        };
        // It was measured as one drives every day: with nothing carried or pulled.
        let on_road = OnRoad::level_and_still(&set.vehicle, &LoadCase::empty());
        let speed_m_s = known.speed.kmh() / KMH_PER_M_S;
        let cruise = set.powertrain.cruise(gear, &on_road, speed_m_s);
        let estimate = cruise.l_per_100km(&fuel);
        let estimate = estimate.ok_or(CalibrationError::NothingBurnt)?;
        for set in &mut self.sets {
            let scaled = set
                .fuel
                .map(|fuel| fuel.scaled_to(known.consumption, estimate));
            set.fuel = scaled.transpose()?;
        }
        Ok(())
    }
}

impl SetMotion {
    fn of(project: &Project, candidate: &Candidate) -> Result<Self, NoMotion> {
        let technical = &project.technical;
        let typed = technical.engine_of(&candidate.technical);
        let engine = engine(typed)?;
        let vehicle = vehicle(&technical.vehicle, typed)?;
        let grade = technical.road.grade.unwrap_or(Grade::LEVEL);
        let drivetrain = Drivetrain::resolve(&candidate.set, &project.tyre);
        let efficiencies = efficiencies(&technical.vehicle, candidate)?;
        let within =
            |limits: &EngineLimits| Powertrain::new(&drivetrain, &engine, limits, &efficiencies);
        let powertrain = within(&project.engine);
        // Of a curve that was built nobody knows what lies there.
        let measured_to = engine.curve.points().last().filter(|_| !typed.is_built());
        let beyond = measured_to.filter(|point| point.speed > project.engine.redline);
        Ok(Self {
            on_road: OnRoad::new(&vehicle, &technical.road.load_case(), grade),
            vehicle,
            powertrain: powertrain.ok_or(NoMotion::NoBand)?,
            beyond_redline: beyond.and_then(|point| {
                within(&EngineLimits {
                    redline: point.speed,
                    ..project.engine
                })
            }),
            fuel: FuelUse::of(&engine),
        })
    }

    /// The steepest gradient in per cent on which it starts; none where nothing limits it.
    pub fn start_gradient_percent(&self, driving: &Driving) -> Option<f64> {
        let launch_rpm = driving.launch_rpm(&self.powertrain);
        self.powertrain
            .start_gradient_percent(&self.on_road, launch_rpm)
    }
}

fn needed<T>(value: Option<T>, needed: Needed) -> Result<T, NoMotion> {
    value.ok_or(NoMotion::Unknown(needed))
}

fn engine(typed: &EngineData) -> Result<Engine, NoMotion> {
    needed(typed.engine(), Needed::TorqueCurve)
}

/// The vehicle as typed; what is absent is a starting value, where its kind is known.
fn vehicle(typed: &VehicleData, engine: &EngineData) -> Result<Vehicle, NoMotion> {
    let usual = usual_vehicle(typed)?;
    let factor = typed.mass_factor;
    Ok(Vehicle {
        mass: mass(typed, usual.as_ref())?,
        resistance: resistance(typed, usual.as_ref())?,
        air_density: typed.air_density.unwrap_or(AirDensity::AT_20_C),
        grip: grip(typed, usual.as_ref().and_then(|vehicle| vehicle.grip))?,
        rotating: RotatingMasses::from_typed(factor, engine.inertia, typed.wheel_inertia)?,
    })
}

/// The vehicle of starting values; none where the kind is not known.
fn usual_vehicle(typed: &VehicleData) -> Result<Option<Vehicle>, NoMotion> {
    let kind = typed.kind.map(|kind| kind.starting_values().vehicle());
    Ok(kind.transpose()?)
}

fn mass(typed: &VehicleData, usual: Option<&Vehicle>) -> Result<Mass, NoMotion> {
    let usual = usual.map(|vehicle| vehicle.mass);
    needed(typed.mass.or(usual), Needed::Mass)
}

fn resistance(typed: &VehicleData, usual: Option<&Vehicle>) -> Result<Resistance, NoMotion> {
    if let Some(measured) = typed.coast_down {
        return Ok(Resistance::CoastDown {
            constant: measured.constant,
            linear: measured.linear,
            quadratic: measured.quadratic,
        });
    }
    let (usual_rolling, usual_shape) = match usual.map(|vehicle| vehicle.resistance) {
        Some(Resistance::Estimated {
            rolling,
            drag: Drag::Shape(coefficient, area),
        }) => (Some(rolling), Some((coefficient, area))),
        Some(Resistance::Estimated { rolling, .. }) => (Some(rolling), None),
        Some(Resistance::CoastDown { .. }) | None => (None, None),
    };
    let (usual_coefficient, usual_area) = usual_shape.unzip();
    let coefficient = typed.drag_coefficient.or(usual_coefficient);
    let shape = coefficient.zip(typed.frontal_area.or(usual_area));
    let shape = shape.map(|(coefficient, area)| Drag::Shape(coefficient, area));
    let drag = typed.drag_area.map(Drag::Area).or(shape);
    Ok(Resistance::Estimated {
        rolling: needed(typed.rolling.or(usual_rolling), Needed::Rolling)?,
        drag: needed(drag, Needed::Drag)?,
    })
}

/// The grip limit; none where driven axle or adhesion are not known.
fn grip(typed: &VehicleData, usual: Option<Grip>) -> Result<Option<Grip>, NoMotion> {
    let driven = typed.driven.or_else(|| usual.map(|grip| grip.driven));
    let adhesion = typed.adhesion.or_else(|| usual.map(|grip| grip.adhesion));
    let Some((driven, adhesion)) = driven.zip(adhesion) else {
        return Ok(None);
    };
    let (usual_wheelbase, usual_height) = usual
        .and_then(|grip| grip.transfer)
        .map(|transfer| (transfer.wheelbase, transfer.height))
        .unzip();
    let wheelbase = typed.wheelbase.or(usual_wheelbase);
    let height = typed.height.or(usual_height);
    let transfer = wheelbase
        .zip(height)
        .map(|(wheelbase, height)| LoadTransfer { wheelbase, height });
    let front_share = typed
        .front_share
        .or_else(|| usual.map(|grip| grip.front_share));
    let front_share = match front_share {
        // All axles together pass on the same, however the weight is spread over them.
        None if driven == DrivenAxle::All && transfer.is_none() => FrontShare::new(0.5)?,
        share => needed(share, Needed::FrontShare)?,
    };
    Ok(Some(Grip {
        driven,
        adhesion,
        front_share,
        transfer,
    }))
}

/// What the gears leave of the power; without losses where neither they nor the kind are known.
fn efficiencies(typed: &VehicleData, candidate: &Candidate) -> Result<Efficiencies, NoMotion> {
    let own = &candidate.technical.efficiencies;
    let kind = typed.kind.map(|kind| kind.starting_values().efficiency());
    let usual = kind.unwrap_or_else(|| Efficiency::new(1.0))?;
    Ok(Efficiencies {
        of_set: own.of_set.unwrap_or(usual),
        direct: own.direct,
        of_gears: own.of_gears.clone(),
    })
}
