//! How long do runs and best shift points take? Budget: three runs under 100 µs.

use divan::{Bencher, black_box};
use layshaft::gearing::{
    Drivetrain, EngineLimits, EngineSpeed, Gear, GearId, GearRole, GearSet, GearSetSpec, Label,
    Name, Ratio, RollingCircumference, Tyre,
};
use layshaft::motion::{
    Adhesion, AirDensity, CentreOfGravityHeight, Drag, DragArea, DrivenAxle, Driving, Efficiencies,
    Efficiency, Engine, FrontShare, Grip, Inertia, LoadCase, LoadTransfer, Mass, OnRoad,
    Powertrain, Resistance, RollingCoefficient, RotatingMasses, RunGoal, ShiftPause, Torque,
    TorqueCurve, TorquePoint, Vehicle, Wheelbase,
};

const POINTS: [(f64, f64); 10] = [
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
];

fn rpm(rpm: f64) -> EngineSpeed {
    EngineSpeed::from_rpm(rpm).unwrap()
}

fn engine() -> Engine {
    let points = POINTS.map(|(speed, nm)| TorquePoint {
        speed: rpm(speed),
        torque: Torque::from_nm(nm).unwrap(),
    });
    Engine {
        inertia: Inertia::from_kgm2(0.15).unwrap(),
        ..Engine::of_curve(TorqueCurve::new(points.to_vec()).unwrap())
    }
}

/// Six gears behind the engine, on that final drive.
fn six_speed(final_drive: f64) -> Powertrain {
    let ratios = [3.32, 2.02, 1.41, 1.07, 0.86, 0.73];
    let gears = (1..).zip(ratios).map(|(number, ratio)| Gear {
        id: GearId(number),
        label: Label::new(&number.to_string()).unwrap(),
        ratio: Ratio::from_number(ratio).unwrap(),
        final_drive: 0,
        role: GearRole::Shifted,
        shift: None,
    });
    let set = GearSet::try_from(GearSetSpec {
        name: Name::new("a set").unwrap(),
        gears: gears.collect(),
        reverse: None,
        final_drives: vec![Ratio::from_number(final_drive).unwrap().into()],
        stages: Vec::new(),
        tyre: None,
        shift: rpm(6500.0),
    });
    let tyre = Tyre::RollingCircumference(RollingCircumference::from_mm(1795.0).unwrap());
    let limits = EngineLimits {
        idle: Some(rpm(850.0)),
        lowest_useful: None,
        redline: rpm(7100.0),
    };
    let of = Efficiencies::all(Efficiency::new(0.9).unwrap());
    let drivetrain = Drivetrain::resolve(&set.unwrap(), &tyre);
    Powertrain::new(&drivetrain, &engine(), &limits, &of).unwrap()
}

fn three_six_speeds() -> [Powertrain; 3] {
    [3.7, 3.9, 4.3].map(six_speed)
}

fn on_road() -> OnRoad {
    let vehicle = Vehicle {
        mass: Mass::from_kg(1020.0).unwrap(),
        resistance: Resistance::Estimated {
            rolling: RollingCoefficient::new(0.0125).unwrap(),
            drag: Drag::Area(DragArea::from_m2(0.64).unwrap()),
        },
        air_density: AirDensity::AT_20_C,
        grip: Some(Grip {
            driven: DrivenAxle::Rear,
            adhesion: Adhesion::new(0.75).unwrap(),
            front_share: FrontShare::new(0.52).unwrap(),
            transfer: Some(LoadTransfer {
                wheelbase: Wheelbase::from_m(2.26).unwrap(),
                height: CentreOfGravityHeight::from_m(0.47).unwrap(),
            }),
        }),
        rotating: RotatingMasses::Inertias {
            wheels: Inertia::from_kgm2(3.2).unwrap(),
        },
    };
    OnRoad::level_and_still(&vehicle, &LoadCase::empty())
}

fn driving() -> Driving {
    Driving {
        launch: Some(rpm(2800.0)),
        pause: ShiftPause::from_s(0.4).unwrap(),
    }
}

/// To 100 km/h and a quarter of a mile, with the figures that are read off it.
#[divan::bench]
fn three_runs(bencher: Bencher<'_, '_>) {
    let (sets, on_road, driving) = (three_six_speeds(), on_road(), driving());
    let goal = RunGoal {
        speed_m_s: 100.0 / 3.6,
        distance_m: 402.336,
    };
    bencher.bench_local(|| {
        for set in &sets {
            let run = set.run(black_box(&on_road), &driving, &set.shift_rpms(), goal);
            let times = [50.0, 96.56064, 100.0].map(|kmh| run.at_speed(kmh / 3.6));
            black_box((times, run.at_distance(400.0), run.at_distance(402.336)));
        }
    });
}

#[divan::bench]
fn best_shift_points_of_three_six_speed_sets(bencher: Bencher<'_, '_>) {
    let (sets, on_road, driving) = (three_six_speeds(), on_road(), driving());
    bencher.bench_local(|| {
        for set in &sets {
            black_box(set.best_shift_rpms(black_box(&on_road), &driving));
        }
    });
}

#[divan::bench]
fn in_gear_times_of_three_six_speed_sets(bencher: Bencher<'_, '_>) {
    let (sets, on_road) = (three_six_speeds(), on_road());
    bencher.bench_local(|| {
        for set in &sets {
            for gear in &set.gears {
                black_box(gear.in_gear(black_box(&on_road), 80.0 / 3.6, 120.0 / 3.6));
            }
        }
    });
}
