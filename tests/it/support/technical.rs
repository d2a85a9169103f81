//! Which technical data can exist? A strategy over all of them, each part known or not.

use super::projects::{any_ratio, any_tyre, engine_speed, number, road_speed};
use layshaft::checks::{
    AngleRatio, Axle, BaselineReading, Coupling, InstrumentDrive, MeterConstant, PulsesPerTurn,
    RatedTorque, RatingFactor, ReadingRatio, RuleOffset, RulePercent, ShaftSpeed, SharingShafts,
    SignalSource, SpeedometerRule, TakenOff, TyresOnAxle,
};
use layshaft::gearing::{OutOfRange, ToothPair};
use layshaft::motion::{
    AddedMass, Adhesion, AirDensity, Brochure, CentreOfGravityHeight, ConstantLoad, Displacement,
    DragArea, DragCoefficient, DrivenAxle, Efficiency, FrictionPressure, FrontShare, FrontalArea,
    Fuel, FuelConsumption, Grade, Headwind, Inertia, LinearLoad, Mass, MassFactor, MeasuredAt,
    Power, QuadraticLoad, RollingCoefficient, ShiftPause, SlopeEfficiency, Strokes, Torque,
    TorqueCurve, TorquePoint, Trailer, VehicleKind, Wheelbase, WillansLine, YearlyDistance,
};
use layshaft::project::{
    Candidates, CoastDown, DrivingData, EngineData, KnownFuel, LimitsData, Marks, RoadData,
    SecondAxleData, SetAside, SetChecks, SetEfficiencies, SetTechnical, SignalData,
    SpeedometerData, TechnicalData, VehicleData,
};
use proptest::collection::{btree_map, vec};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use std::fmt::Debug;
use std::ops::RangeInclusive;

pub(crate) fn known<T: Debug + 'static>(
    range: RangeInclusive<f64>,
    new: fn(f64) -> Result<T, OutOfRange>,
) -> BoxedStrategy<Option<T>> {
    option::of(quantity(range, new)).boxed()
}

/// On the heap, as all here: whole projects hold many of them, and the stack of a test is small.
pub(crate) fn quantity<T: Debug + 'static>(
    range: RangeInclusive<f64>,
    new: fn(f64) -> Result<T, OutOfRange>,
) -> BoxedStrategy<T> {
    number(range).prop_map(move |n| new(n).unwrap()).boxed()
}

fn curve() -> impl Strategy<Value = TorqueCurve> {
    let points = btree_map(
        1_u32..=30_000,
        quantity(0.0..=20_000.0, Torque::from_nm),
        2..8,
    );
    let points = points.prop_map(|points| {
        let point = |(rpm, torque)| TorquePoint {
            speed: layshaft::gearing::EngineSpeed::from_rpm(f64::from(rpm)).unwrap(),
            torque,
        };
        TorqueCurve::new(points.into_iter().map(point).collect()).unwrap()
    });
    let figures = (
        50.0..400.0_f64,
        1000.0..3000.0_f64,
        0.0..1000.0_f64,
        1.05..1.8_f64,
    );
    let built = figures.prop_filter_map("no brochure", |(nm, from, width, higher)| {
        let rpm = |rpm: f64| layshaft::gearing::EngineSpeed::from_rpm(rpm).unwrap();
        let at = (from + width) * higher;
        let kw = nm * 0.9 * at * std::f64::consts::PI / 30_000.0;
        let plateau = [rpm(from), rpm(from + width)];
        let (torque, power) = (Torque::from_nm(nm).ok()?, Power::from_kw(kw).ok()?);
        Brochure::new(torque, plateau, power, rpm(at))
            .ok()?
            .curve()
            .ok()
    });
    prop_oneof![2 => points, 1 => built]
}

fn engine() -> impl Strategy<Value = EngineData> {
    let willans = (
        quantity(0.05..=1.0, SlopeEfficiency::new),
        quantity(0.0..=10.0, FrictionPressure::from_bar),
    );
    let willans = willans.prop_map(|(slope_efficiency, friction)| WillansLine {
        slope_efficiency,
        friction,
    });
    (
        option::of(curve()),
        any::<[bool; 3]>(),
        known(0.0..=1000.0, Inertia::from_kgm2),
        known(0.01..=100.0, Displacement::from_l),
        option::of(willans),
    )
        .prop_map(
            |(curve, choices, inertia, displacement, willans)| EngineData {
                curve,
                measured_at: [MeasuredAt::Crank, MeasuredAt::Wheels][usize::from(choices[0])],
                inertia,
                displacement,
                strokes: [Strokes::Two, Strokes::Four][usize::from(choices[1])],
                fuel: [Fuel::Petrol, Fuel::Diesel][usize::from(choices[2])],
                willans,
            },
        )
}

fn vehicle() -> impl Strategy<Value = VehicleData> {
    let coast_down = (
        quantity(0.0..=100_000.0, ConstantLoad::from_n),
        quantity(-1000.0..=1000.0, LinearLoad::from_n_per_m_s),
        quantity(0.0..=100.0, QuadraticLoad::from_n_per_m2_s2),
    );
    let coast_down = coast_down.prop_map(|(constant, linear, quadratic)| CoastDown {
        constant,
        linear,
        quadratic,
    });
    let kind = option::of(select(VehicleKind::ALL.to_vec()));
    let driven = select(vec![DrivenAxle::Front, DrivenAxle::Rear, DrivenAxle::All]);
    let factor = select(vec![MassFactor::None, MassFactor::Formula]);
    let loads = (
        known(50.0..=100_000.0, Mass::from_kg),
        option::of(coast_down),
        known(0.0..=0.2, RollingCoefficient::new),
        known(0.0..=20.0, DragArea::from_m2),
        known(0.0..=2.0, DragCoefficient::new),
        known(0.0..=20.0, FrontalArea::from_m2),
        known(0.0..=2.0, AirDensity::from_kg_m3),
    );
    let axles = (
        option::of(driven),
        known(0.0..=5.0, Adhesion::new),
        known(0.3..=20.0, Wheelbase::from_m),
        known(0.0..=5.0, CentreOfGravityHeight::from_m),
        known(0.0..=1.0, FrontShare::new),
    );
    let turning = (option::of(factor), known(0.0..=1000.0, Inertia::from_kgm2));
    (kind, loads, axles, turning).prop_map(|(kind, loads, axles, turning)| VehicleData {
        kind,
        mass: loads.0,
        coast_down: loads.1,
        rolling: loads.2,
        drag_area: loads.3,
        drag_coefficient: loads.4,
        frontal_area: loads.5,
        air_density: loads.6,
        driven: axles.0,
        adhesion: axles.1,
        wheelbase: axles.2,
        height: axles.3,
        front_share: axles.4,
        mass_factor: turning.0,
        wheel_inertia: turning.1,
    })
}

fn road() -> impl Strategy<Value = RoadData> {
    let trailer = (
        quantity(0.0..=100_000.0, AddedMass::from_kg),
        quantity(0.0..=20.0, DragArea::from_m2),
    );
    let trailer = trailer.prop_map(|(mass, drag_area)| Trailer { mass, drag_area });
    (
        known(0.0..=100_000.0, AddedMass::from_kg),
        option::of(trailer),
        known(-200.0..=200.0, Headwind::from_kmh),
        known(-50.0..=50.0, Grade::from_percent),
        option::of(vec(
            quantity(-50.0..=50.0, Grade::from_percent),
            0..=Marks::<Grade>::MOST,
        )),
        any::<[bool; 3]>(),
    )
        .prop_map(|(load, trailer, headwind, grade, grades, aside)| RoadData {
            load,
            trailer,
            headwind,
            grade,
            grades: grades.map(|grades| Marks::new(grades).unwrap()),
            aside: SetAside {
                load: aside[0],
                trailer: aside[1],
                headwind: aside[2],
            },
        })
}

fn driving() -> impl Strategy<Value = DrivingData> {
    (
        known(0.0..=10.0, ShiftPause::from_s),
        option::of(engine_speed()),
        known(0.0..=1_000_000.0, YearlyDistance::from_km),
    )
        .prop_map(|(shift_pause, launch, yearly_distance)| DrivingData {
            shift_pause,
            launch,
            yearly_distance,
        })
}

fn signal() -> impl Strategy<Value = SignalData> {
    let gears = (1..=999_u16, 1..=999_u16);
    let gears = gears.prop_map(|(driven, driving)| {
        InstrumentDrive::Gears(ToothPair::new(driven, driving).unwrap())
    });
    let pulses = quantity(0.001..=1000.0, PulsesPerTurn::new).prop_map(InstrumentDrive::Pulses);
    (
        option::of(select(SignalSource::ALL.to_vec())),
        option::of(prop_oneof![gears, pulses]),
    )
        .prop_map(|(source, drive)| SignalData { source, drive })
}

fn speedometer() -> impl Strategy<Value = SpeedometerData> {
    let reading = (
        known(0.5..=2.0, ReadingRatio::new),
        known(0.5..=2.0, ReadingRatio::new),
        known(10.0..=1_000_000.0, MeterConstant::from_per_km),
    );
    let reading = reading.prop_map(|(signal_ratio, needle_ratio, meter)| BaselineReading {
        signal_ratio,
        needle_ratio,
        meter,
    });
    let typed = (
        quantity(0.0..=100.0, RulePercent::from_percent),
        quantity(0.0..=100.0, RuleOffset::from_kmh),
    );
    let typed = typed.prop_map(|(percent, offset)| SpeedometerRule::Typed { percent, offset });
    let fixed = select(vec![SpeedometerRule::R39, SpeedometerRule::Cfr393]);
    let rule = prop_oneof![fixed, typed];
    (signal(), reading, rule).prop_map(|(signal, reading, rule)| SpeedometerData {
        signal,
        reading,
        rule,
    })
}

fn limits() -> impl Strategy<Value = LimitsData> {
    let shafts = select(vec![
        SharingShafts::One,
        SharingShafts::Two,
        SharingShafts::Four,
    ]);
    let axles = (
        option::of(road_speed()),
        known(50.0..=100_000.0, Mass::from_kg),
        known(50.0..=100_000.0, Mass::from_kg),
        select(vec![TyresOnAxle::Two, TyresOnAxle::Four]),
    );
    let shafts = (
        known(0.1..=10.0, RatingFactor::new),
        known(1.0..=1_000_000.0, RatedTorque::from_nm),
        option::of(shafts),
        known(1.0..=30_000.0, ShaftSpeed::from_rpm),
    );
    (axles, shafts).prop_map(|(axles, shafts)| LimitsData {
        top_speed: axles.0,
        front_axle: axles.1,
        rear_axle: axles.2,
        rear_tyres: axles.3,
        torque_factor: shafts.0,
        axle_shaft: shafts.1,
        shafts: shafts.2,
        propeller_shaft: shafts.3,
    })
}

fn second_axle() -> impl Strategy<Value = SecondAxleData> {
    (
        option::of(any_ratio()),
        option::of(select(vec![Axle::Front, Axle::Rear])),
        known(0.1..=10.0, AngleRatio::new),
        select(vec![TakenOff::BeforeFinalDrive, TakenOff::BehindFinalDrive]),
        option::of(any_tyre()),
        option::of(select(Coupling::ALL.to_vec())),
    )
        .prop_map(
            |(final_drive, axle, angle_drive, taken_off, tyre, coupling)| SecondAxleData {
                final_drive,
                axle,
                angle_drive,
                taken_off,
                tyre,
                coupling,
            },
        )
}

fn set_checks() -> impl Strategy<Value = SetChecks> {
    (
        signal(),
        known(1.0..=1_000_000.0, RatedTorque::from_nm),
        option::of(any_ratio()),
    )
        .prop_map(|(signal, rated_torque, second_final_drive)| SetChecks {
            signal,
            rated_torque,
            second_final_drive,
        })
}

/// What is known of sets that are not there yet: gears are still places.
#[derive(Debug, Clone)]
pub(crate) struct Loose {
    data: TechnicalData,
    fuel: Option<(Index, Index, layshaft::gearing::RoadSpeed, FuelConsumption)>,
    of_sets: Vec<(SetTechnical, Vec<(Index, Efficiency)>)>,
}

/// Technical data of three sets; of a good part of the vehicles nothing is known.
pub(crate) fn technical() -> impl Strategy<Value = Loose> {
    let efficiency = || quantity(0.01..=1.0, Efficiency::new);
    let of_set = (
        option::weighted(0.3, engine()).boxed(),
        option::of(efficiency()),
        option::of(efficiency()),
        vec((any::<Index>(), efficiency()), 0..3),
        set_checks().boxed(),
    );
    let of_set = of_set.prop_map(|(engine, of_set, direct, own, checks)| {
        let efficiencies = SetEfficiencies {
            of_set,
            direct,
            ..SetEfficiencies::default()
        };
        let technical = SetTechnical {
            engine,
            efficiencies,
            checks,
        };
        (technical, own)
    });
    let fuel = (
        any::<Index>(),
        any::<Index>(),
        road_speed(),
        quantity(0.1..=1000.0, FuelConsumption::from_l_per_100km),
    );
    let checks = (
        speedometer().boxed(),
        limits().boxed(),
        second_axle().boxed(),
    );
    let vehicle = (vehicle().boxed(), road(), driving(), checks.boxed());
    let parts = (engine().boxed(), vehicle.boxed(), option::of(fuel).boxed());
    let known = (parts, vec(of_set, 3)).prop_map(|((engine, vehicle, fuel), of_sets)| {
        let (vehicle, road, driving, checks) = vehicle;
        let (speedometer, limits, second_axle) = checks;
        Loose {
            data: TechnicalData {
                engine,
                vehicle,
                road,
                driving,
                speedometer,
                limits,
                second_axle,
                known_fuel: None,
            },
            fuel,
            of_sets,
        }
    });
    let unknown = Loose {
        data: TechnicalData::default(),
        fuel: None,
        of_sets: Vec::new(),
    };
    prop_oneof![Just(unknown), known.boxed()].boxed()
}

/// The data of a vehicle with these sets, and the sets with theirs.
pub(crate) fn with_technical(loose: Loose, sets: Candidates) -> (TechnicalData, Candidates) {
    let known_fuel = loose.fuel.map(|(set, gear, speed, consumption)| {
        let candidate = sets.iter().nth(set.index(sets.len())).unwrap();
        KnownFuel {
            set: candidate.id,
            gear: gear.get(&candidate.set.gears).id,
            speed,
            consumption,
        }
    });
    let of_sets = sets.iter().zip(loose.of_sets);
    let of_sets = of_sets.map(|(candidate, (mut technical, own))| {
        let gears = &candidate.set.gears;
        let own = own.into_iter().map(|(gear, e)| (gear.get(gears).id, e));
        technical.efficiencies.of_gears = own.collect();
        technical
    });
    let of_sets = of_sets.collect();
    let data = TechnicalData {
        known_fuel,
        ..loose.data
    };
    (data, sets.with_technical(of_sets))
}
