//! Which part of a torque curve is driven, and what do the gears leave of it?

use crate::support::close::assert_close;
use crate::support::gear_sets::{redline, rpm};
use crate::support::vehicles::{curve, drivetrain, efficiency, engine};
use layshaft::gearing::{EngineLimits, GearId};
use layshaft::motion::{
    Efficiencies, Efficiency, Engine, MeasuredAt, PowerBand, Powertrain, Torque, TorqueCurve,
    TorqueCurveError, TorquePoint,
};

const FLAT: [(f64, f64); 2] = [(1000.0, 200.0), (6000.0, 200.0)];

fn share(share: f64) -> Efficiency {
    Efficiency::new(share).unwrap()
}

fn limits(idle_rpm: f64, redline_rpm: f64) -> EngineLimits {
    EngineLimits {
        idle: Some(rpm(idle_rpm)),
        ..redline(redline_rpm)
    }
}

#[test]
fn the_band_ends_at_whatever_comes_first() {
    let ends = |idle, redline| {
        let band = PowerBand::of(&engine(&FLAT), &limits(idle, redline), share(1.0))?;
        Some((band.low_rpm(), band.high_rpm()))
    };
    assert_eq!(ends(800.0, 7000.0), Some((1000.0, 6000.0)));
    assert_eq!(ends(1200.0, 5500.0), Some((1200.0, 5500.0)));
    assert_eq!(ends(1200.0, 1200.0), None);
    assert_eq!(ends(7000.0, 7500.0), None);
}

#[test]
fn a_curve_ends_where_its_points_end_and_has_two_hundred_of_them_at_most() {
    let point = |speed: f64| TorquePoint {
        speed: rpm(speed),
        torque: Torque::from_nm(100.0).unwrap(),
    };
    let of = |speeds: &[f64]| TorqueCurve::new(speeds.iter().map(|s| point(*s)).collect());
    assert_eq!(of(&[1000.0]), Err(TorqueCurveError::PointCount(1)));
    let many: Vec<f64> = (1..=201).map(f64::from).collect();
    assert_eq!(of(&many), Err(TorqueCurveError::PointCount(201)));
    assert!(of(&many[1..]).is_ok());
    let error = of(&[1000.0, 2000.0, 2000.0]).unwrap_err().to_string();
    assert_eq!(
        error,
        "the engine speeds of a torque curve rise from point to point, but 2000 rpm follows 2000 rpm"
    );
    let curve = of(&[1000.0, 2000.0]).unwrap();
    assert_eq!(curve.torque_nm(999.0), None);
    assert_eq!(curve.torque_nm(2000.5), None);
    assert_eq!(curve.torque_nm(2000.0), Some(100.0));
}

/// Efforts in N of gears 1 to 3, of ratios 3, 1.1 and 0.8 on a final drive of 4, at 3000 rpm.
fn efforts(measured_at: MeasuredAt, of: &Efficiencies) -> Vec<f64> {
    let engine = Engine {
        measured_at,
        ..Engine::of_curve(curve(&FLAT))
    };
    let gears = drivetrain(&[3.0, 1.1, 0.8], 4.0, 0.5);
    let powertrain = Powertrain::new(&gears, &engine, &redline(6000.0), of).unwrap();
    let gears = powertrain.gears.iter();
    gears
        .map(|gear| gear.effort_n(gear.speed_m_s(3000.0)).unwrap())
        .collect()
}

#[test]
fn what_was_measured_at_the_wheels_has_its_losses_in_it() {
    let mut of = efficiency(0.9);
    of.of_gears.insert(GearId(1), share(0.8));
    let crank = efforts(MeasuredAt::Crank, &of);
    let wheels = efforts(MeasuredAt::Wheels, &of);
    // 200 N·m through 4.4 on a radius of 0.5 m: second is nearest to direct, and loses nothing more.
    assert_close(wheels[1], 1760.0, 1e-9, "second, at the wheels");
    assert_close(crank[1], 1584.0, 1e-9, "second, at the crank");
    assert_close(wheels[0], 4800.0 * 0.8 / 0.9, 1e-9, "first, at the wheels");
}

#[test]
fn a_direct_gear_has_its_own_efficiency_and_a_single_gear_the_last_word() {
    let gears = drivetrain(&[3.0, 1.0, 0.8], 4.0, 0.5);
    let mut of = Efficiencies {
        direct: Some(share(0.97)),
        ..efficiency(0.92)
    };
    let found = |of: &Efficiencies| {
        let gears = gears.gears.iter();
        gears.map(|gear| of.of(gear).share()).collect::<Vec<_>>()
    };
    assert_eq!(found(&of), [0.92, 0.97, 0.92]);
    of.of_gears.insert(GearId(2), share(0.95));
    assert_eq!(found(&of), [0.92, 0.95, 0.92]);
}
