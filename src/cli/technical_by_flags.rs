//! Which engine, vehicle and road do flags describe?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::sets_by_flags::one_each;
use super::source::Sourced;
use super::torque_by_flags::curve;
use super::values::{choice, decimal, engine_speed, ranged, signed_decimal};
use crate::checks::{BaselineReading, ReadingRatio, SignalSource};
use crate::gearing::{EngineSpeed, OutOfRange, quoted};
use crate::motion::{
    Adhesion, AirDensity, CentreOfGravityHeight, ConstantLoad, Displacement, DragArea, DrivenAxle,
    Efficiency, FrictionPressure, FrontShare, Fuel, Grade, Inertia, LinearLoad, Mass, MassFactor,
    MeasuredAt, QuadraticLoad, RollingCoefficient, RotatingMasses, ShiftPause, SlopeEfficiency,
    TorqueCurve, Wheelbase, WillansLine,
};
use crate::project::{
    CoastDown, DrivingData, EngineData, Project, RoadData, SetEfficiencies, SetTechnical,
    SignalData, SpeedometerData, TechnicalData, VehicleData,
};

/// The project with the technical data that the flags describe.
pub(super) fn with_technical(arguments: &Arguments, sourced: Sourced) -> Result<Sourced, CliError> {
    let Sourced { project, notes } = sourced;
    let curve = curve(arguments)?;
    let technical = TechnicalData {
        engine: engine(arguments, curve.curve)?,
        vehicle: vehicle(arguments)?,
        road: RoadData {
            grade: quantity(arguments, Flag::Grade, Grade::from_percent)?,
            ..RoadData::default()
        },
        driving: DrivingData {
            shift_pause: quantity(arguments, Flag::Pause, ShiftPause::from_s)?,
            launch: launch(arguments)?,
            yearly_distance: None,
        },
        speedometer: speedometer(arguments)?,
        ..TechnicalData::default()
    };
    let (engine, vehicle) = (&technical.engine, &technical.vehicle);
    RotatingMasses::from_typed(vehicle.mass_factor, engine.inertia, vehicle.wheel_inertia)
        .map_err(|error| CliError::value(Flag::MassFactor.name(), &error))?;
    let of_sets = efficiencies(arguments, project.sets.len())?;
    Ok(Sourced {
        project: Project {
            technical,
            sets: project.sets.with_technical(of_sets),
            ..project
        },
        notes: notes + &curve.notes,
    })
}

fn engine(arguments: &Arguments, curve: Option<TorqueCurve>) -> Result<EngineData, CliError> {
    let fuels = [("petrol", Fuel::Petrol), ("diesel", Fuel::Diesel)];
    let places = [("crank", MeasuredAt::Crank), ("wheels", MeasuredAt::Wheels)];
    Ok(EngineData {
        curve,
        measured_at: chosen(arguments, Flag::MeasuredAt, &places)?.unwrap_or_default(),
        inertia: quantity(arguments, Flag::EngineInertia, Inertia::from_kgm2)?,
        displacement: quantity(arguments, Flag::Displacement, Displacement::from_l)?,
        fuel: chosen(arguments, Flag::Fuel, &fuels)?.unwrap_or_default(),
        willans: willans(arguments)?,
        ..EngineData::default()
    })
}

fn vehicle(arguments: &Arguments) -> Result<VehicleData, CliError> {
    let axles = [
        ("front", DrivenAxle::Front),
        ("rear", DrivenAxle::Rear),
        ("all", DrivenAxle::All),
    ];
    let factors = [("none", MassFactor::None), ("formula", MassFactor::Formula)];
    let vehicle = VehicleData {
        kind: None,
        mass: quantity(arguments, Flag::Mass, Mass::from_kg)?,
        coast_down: road_load(arguments)?,
        rolling: quantity(arguments, Flag::Rolling, RollingCoefficient::new)?,
        drag_area: quantity(arguments, Flag::DragArea, DragArea::from_m2)?,
        drag_coefficient: None,
        frontal_area: None,
        air_density: quantity(arguments, Flag::AirDensity, AirDensity::from_kg_m3)?,
        driven: chosen(arguments, Flag::Driven, &axles)?,
        adhesion: quantity(arguments, Flag::Adhesion, Adhesion::new)?,
        wheelbase: quantity(arguments, Flag::Wheelbase, Wheelbase::from_m)?,
        height: quantity(arguments, Flag::CgHeight, CentreOfGravityHeight::from_m)?,
        front_share: quantity(arguments, Flag::FrontShare, FrontShare::new)?,
        mass_factor: chosen(arguments, Flag::MassFactor, &factors)?,
        wheel_inertia: quantity(arguments, Flag::WheelInertia, Inertia::from_kgm2)?,
    };
    if vehicle.coast_down.is_some() && (vehicle.rolling.is_some() || vehicle.drag_area.is_some()) {
        return Err(CliError::TwoRoadLoads);
    }
    Ok(vehicle)
}

/// Where its signal is taken, and how it reads in the baseline.
fn speedometer(arguments: &Arguments) -> Result<SpeedometerData, CliError> {
    let sources = [
        ("output", SignalSource::GearboxOutput),
        ("wheel", SignalSource::Wheel),
    ];
    Ok(SpeedometerData {
        signal: SignalData {
            source: chosen(arguments, Flag::Signal, &sources)?,
            drive: None,
        },
        reading: BaselineReading {
            signal_ratio: quantity(arguments, Flag::SignalRatio, ReadingRatio::new)?,
            ..BaselineReading::default()
        },
        ..SpeedometerData::default()
    })
}

/// The efficiency of each set.
fn efficiencies(arguments: &Arguments, sets: usize) -> Result<Vec<SetTechnical>, CliError> {
    let flag = Flag::Efficiency;
    let read = |text: &&str| ranged(flag.name(), text, Efficiency::new(decimal(flag, text)?));
    let typed = arguments.all(flag)?;
    let typed: Vec<Efficiency> = typed.iter().map(read).collect::<Result<_, _>>()?;
    let of_sets = one_each(flag, &typed, sets)?.into_iter();
    let technical = of_sets.map(|of_set| SetTechnical {
        efficiencies: SetEfficiencies {
            of_set,
            ..SetEfficiencies::default()
        },
        ..SetTechnical::default()
    });
    Ok(technical.collect())
}

/// The number behind a flag as a quantity.
fn quantity<T>(
    arguments: &Arguments,
    flag: Flag,
    new: fn(f64) -> Result<T, OutOfRange>,
) -> Result<Option<T>, CliError> {
    let text = arguments.once(flag)?;
    text.map(|text| ranged(flag.name(), text, new(signed_decimal(flag, text)?)))
        .transpose()
}

fn chosen<T: Copy>(
    arguments: &Arguments,
    flag: Flag,
    choices: &[(&'static str, T)],
) -> Result<Option<T>, CliError> {
    let text = arguments.once(flag)?;
    text.map(|text| choice(flag, text, choices)).transpose()
}

fn launch(arguments: &Arguments) -> Result<Option<EngineSpeed>, CliError> {
    let text = arguments.once(Flag::LaunchRpm)?;
    text.map(|text| engine_speed(Flag::LaunchRpm, text))
        .transpose()
}

/// A, B and C of a measured road load.
fn road_load(arguments: &Arguments) -> Result<Option<CoastDown>, CliError> {
    let flag = Flag::RoadLoad;
    let Some(texts) = numbers::<3>(arguments, flag, "three numbers, A B C")? else {
        return Ok(None);
    };
    let [a, b, c] = texts;
    let name = || flag.name();
    Ok(Some(CoastDown {
        constant: ranged(name(), a, ConstantLoad::from_n(signed_decimal(flag, a)?))?,
        linear: ranged(
            name(),
            b,
            LinearLoad::from_n_per_m_s(signed_decimal(flag, b)?),
        )?,
        quadratic: ranged(
            name(),
            c,
            QuadraticLoad::from_n_per_m2_s2(signed_decimal(flag, c)?),
        )?,
    }))
}

/// e and `p_me0` in bar of a Willans line.
fn willans(arguments: &Arguments) -> Result<Option<WillansLine>, CliError> {
    let flag = Flag::Willans;
    let Some(texts) = numbers::<2>(arguments, flag, "two numbers, efficiency and bar")? else {
        return Ok(None);
    };
    let [slope, bar] = texts;
    Ok(Some(WillansLine {
        slope_efficiency: ranged(
            flag.name(),
            slope,
            SlopeEfficiency::new(decimal(flag, slope)?),
        )?,
        friction: ranged(
            flag.name(),
            bar,
            FrictionPressure::from_bar(decimal(flag, bar)?),
        )?,
    }))
}

/// The items of a value that has so many of them, parted by blanks.
fn numbers<'a, const COUNT: usize>(
    arguments: &'a Arguments,
    flag: Flag,
    wanted: &'static str,
) -> Result<Option<[&'a str; COUNT]>, CliError> {
    let Some(text) = arguments.once(flag)? else {
        return Ok(None);
    };
    let items: Vec<&str> = text.split_whitespace().collect();
    let wrong = || CliError::ItemCount {
        flag: flag.name(),
        wanted,
        value: quoted(text),
    };
    let items = <[&str; COUNT]>::try_from(items).ok();
    items.map(Some).ok_or_else(wrong)
}
