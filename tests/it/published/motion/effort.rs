//! Do tractive effort, masses and grip give the accelerations and forces of textbooks?

use crate::published::row::Status::{Memory, Read};
use crate::published::row::{assert_rows, published};
use crate::support::gear_sets::redline;
use crate::support::vehicles::{
    coast_down, curve, drivetrain, efficiency, engine, grade, grip, inertia, vehicle, with_inertia,
};
use layshaft::gearing::{Drivetrain, GearId};
use layshaft::motion::{
    AirDensity, Drag, DragCoefficient, DrivenAxle, Efficiencies, Efficiency, Engine, FrontalArea,
    GRAVITY_M_S2, LoadCase, OnRoad, PoweredGear, Powertrain, Resistance, RollingCoefficient,
    RotatingMasses, Vehicle,
};
use std::f64::consts::PI;

const SLOPE: &str = "a problem in the mechanics of machines, printed answers 13 and 1.74 m/s²";
const BEVAN: &str = "Bevan, Theory of Machines, ch. 2, ex. 11";
const HIBBELER: &str = "Hibbeler, Dynamics, ex. 17.5";
const SUBRAMANYA: &str = "Subramanya, 1000 Solved Problems in Fluid Mechanics, ex. 9.6";
const GILLESPIE: &str = "Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, ex. 1";

const N_PER_LBF: f64 = 4.448_221_615_260_5;
const NM_PER_LBF_FT: f64 = 1.355_817_948_331_400_4;
const M_PER_MILE: f64 = 1609.344;
const M_PER_FOOT: f64 = 0.3048;

/// The gears of a set behind an engine that turns up to 7000 rpm.
fn powered(drivetrain: &Drivetrain, engine: &Engine, of: &Efficiencies) -> Powertrain {
    Powertrain::new(drivetrain, engine, &redline(7000.0), of).unwrap()
}

/// The acceleration in m/s² of the vehicle on the slope, in a gear of that overall ratio.
fn on_the_slope(overall_ratio: f64) -> f64 {
    let grade = grade(100.0 * (1.0_f64 / 20.0).asin().tan());
    let car = Vehicle {
        rotating: RotatingMasses::Inertias {
            wheels: inertia(10.0),
        },
        ..vehicle(1000.0, coast_down(500.0, 0.0, 0.0))
    };
    let engine = with_inertia(engine(&[(1000.0, 150.0), (6000.0, 150.0)]), 1.0);
    let gears = drivetrain(&[overall_ratio], 1.0, 0.30);
    let gear = powered(&gears, &engine, &efficiency(0.90)).gears[0].clone();
    let on_road = OnRoad::new(&car, &LoadCase::empty(), grade);
    gear.acceleration_m_s2(&on_road, gear.low_m_s()).unwrap()
}

#[test]
fn the_best_ratio_on_a_slope_is_the_printed_one() {
    let ratios = (10_000..16_000).map(|step| f64::from(step) / 1000.0);
    let best = ratios.max_by(|a, b| on_the_slope(*a).total_cmp(&on_the_slope(*b)));
    let best = best.unwrap();
    assert_rows([
        ("ratio", best, published(12.97, 0.005, SLOPE, Read)),
        (
            "acceleration",
            on_the_slope(best),
            published(1.735, 0.0005, SLOPE, Read),
        ),
    ]);
}

#[test]
fn four_gears_accelerate_as_printed() {
    let car = vehicle(747.5202, coast_down(0.0, 0.0, 0.0));
    let torque = 43.3297;
    let engine = with_inertia(engine(&[(1000.0, torque), (6000.0, torque)]), 0.224_530_7);
    let gears = drivetrain(&[22.5, 12.5, 7.3, 5.4], 1.0, 0.3302);
    let mut of = efficiency(0.82);
    of.of_gears
        .insert(GearId(4), Efficiency::new(0.90).unwrap());
    let powertrain = powered(&gears, &engine, &of);
    let on_road = OnRoad::level_and_still(&car, &LoadCase::empty());
    let printed = [(4.96, 0.005), (4.37, 0.01), (3.08, 0.005), (2.61, 0.005)];
    let rows = powertrain.gears.iter().zip(printed);
    assert_rows(rows.map(|(gear, (ft_s2, tolerance))| {
        let found = gear.acceleration_m_s2(&on_road, gear.low_m_s()).unwrap();
        let what = format!("gear {}", gear.gear.label);
        let row = published(ft_s2, tolerance, BEVAN, Read);
        (what, found / M_PER_FOOT, row)
    }));
}

#[test]
fn a_rear_driven_car_that_slips_accelerates_as_printed() {
    let car = Vehicle {
        grip: Some(grip(DrivenAxle::Rear, 0.25, 0.75 / 2.0, Some((2.0, 0.30)))),
        ..vehicle(2000.0, coast_down(0.0, 0.0, 0.0))
    };
    let on_road = OnRoad::level_and_still(&car, &LoadCase::empty());
    let grip_n = on_road.grip_limit_n(0.0).unwrap();
    let rear_kn = grip_n / 0.25 / 1000.0;
    let weight_kn = 2000.0 * GRAVITY_M_S2 / 1000.0;
    assert_rows([
        (
            "acceleration",
            grip_n / 2000.0,
            published(1.59, 0.005, HIBBELER, Read),
        ),
        (
            "rear axle",
            rear_kn,
            published(12.74, 0.005, HIBBELER, Read),
        ),
        (
            "front axle",
            weight_kn - rear_kn,
            published(6.88, 0.005, HIBBELER, Read),
        ),
    ]);
}

/// The power in kW that the air takes at a road speed.
fn air_kw(drag_coefficient: f64, speed_kmh: f64) -> f64 {
    let car = Vehicle {
        air_density: AirDensity::from_kg_m3(1.2).unwrap(),
        ..vehicle(
            1000.0,
            Resistance::Estimated {
                rolling: RollingCoefficient::new(0.0).unwrap(),
                drag: Drag::Shape(
                    DragCoefficient::new(drag_coefficient).unwrap(),
                    FrontalArea::from_m2(1.6).unwrap(),
                ),
            },
        )
    };
    let on_road = OnRoad::level_and_still(&car, &LoadCase::empty());
    let speed_m_s = speed_kmh / 3.6;
    on_road.road_load_n(speed_m_s) * speed_m_s / 1000.0
}

#[test]
fn the_air_takes_the_printed_power() {
    let row = published(1.556, 0.0005, SUBRAMANYA, Read);
    // A hundredth of a km/h at the second speed is 0.0007 kW.
    let same = published(1.556, 0.001, SUBRAMANYA, Read);
    assert_rows([
        ("c_d 0.35 at 60 km/h", air_kw(0.35, 60.0), row),
        ("c_d 0.30 at 63.16 km/h", air_kw(0.30, 63.16), same),
    ]);
}

#[test]
fn first_and_fifth_of_the_example_pull_as_recalled() {
    let in_lbf_ft = [
        (800.0, 120.0),
        (1200.0, 132.0),
        (1600.0, 145.0),
        (2000.0, 160.0),
        (2400.0, 175.0),
        (2800.0, 181.0),
        (3200.0, 190.0),
        (3600.0, 198.0),
        (4000.0, 200.0),
        (4400.0, 201.0),
        (4800.0, 198.0),
        (5200.0, 180.0),
    ];
    let points = in_lbf_ft.map(|(rpm, torque)| (rpm, torque * NM_PER_LBF_FT));
    let engine = Engine::of_curve(curve(&points));
    let radius_m = M_PER_MILE / 801.0 / (2.0 * PI);
    let gears = drivetrain(&[4.28, 2.79, 1.83, 1.36, 1.00], 2.92, radius_m);
    let mut of = efficiency(1.0);
    let shares = [0.966, 0.967, 0.972, 0.973, 0.970].map(|gear| gear * 0.99);
    for (number, share) in (1..).zip(shares) {
        let share = Efficiency::new(share).unwrap();
        of.of_gears.insert(GearId(number), share);
    }
    let powertrain = powered(&gears, &engine, &of);
    // Torque is highest at 4400 rpm, and so is the effort in every gear.
    let torque_nm = powertrain.band.torque_nm(4400.0).unwrap();
    let pounds = |gear: &PoweredGear| gear.effort_of_torque_n(torque_nm) / N_PER_LBF;
    let mph = |gear: &PoweredGear| gear.speed_m_s(4400.0) * 3600.0 / M_PER_MILE;
    let [first, fifth] = [0, 4].map(|at| &powertrain.gears[at]);
    let row = |expected, tolerance| published(expected, tolerance, GILLESPIE, Memory);
    assert_rows([
        ("first, lb", pounds(first), row(2290.0, 0.5)),
        ("first, mph", mph(first), row(26.4, 0.05)),
        ("fifth, lb", pounds(fifth), row(537.0, 0.5)),
        ("fifth, mph", mph(fifth), row(112.9, 0.05)),
    ]);
}
