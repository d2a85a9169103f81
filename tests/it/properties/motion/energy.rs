//! Is all energy of a run found again, whatever the vehicle?

use super::any_vehicle::{Plain, any_vehicle};
use crate::support::vehicles::until;
use layshaft::motion::{DriveLimit, OnRoad, Phase, Powertrain, Run, RunPiece};
use proptest::prelude::*;
use std::f64::consts::PI;

/// What may be missing, as a share.
const MISSING: f64 = 1e-6;

fn run(plain: &Plain, powertrain: &Powertrain, on_road: &OnRoad) -> Run {
    let (driving, goal) = (plain.driving(), until(45.0, 500.0));
    powertrain.run(on_road, &driving, &plain.shift_rpms, goal)
}

/// ∫f dt over a piece by Simpson's rule, f of the time; shorter steps towards its end, where a speed that is
/// nearly held is come to.
fn over_time(piece: &RunPiece, f: impl Fn(f64) -> f64) -> f64 {
    let (from, to) = (piece.from.time_s, piece.to.time_s);
    let parts = 128;
    let place = |part: i32| from + (to - from) * (f64::from(part) / f64::from(parts)).powi(2);
    let spans = (0..parts).map(|part| [place(part), place(part + 1)]);
    let simpson =
        |[from, to]: [f64; 2]| (to - from) / 6.0 * (f(from) + 4.0 * f(0.5 * (from + to)) + f(to));
    spans.map(simpson).sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]
    #[test]
    fn what_the_crank_gives_is_found_again(plain in any_vehicle()) {
        let (powertrain, on_road) = (plain.powertrain(), plain.on_road());
        let run = run(&plain, &powertrain, &on_road);
        let all = run.energy(run.pieces());
        let found = all.clutch_j + all.driveline_j + all.engine_j + all.vehicle_j + all.load_j;
        // Rolling is in both: what the vehicle loses there, the load takes.
        let size = all.crank_j.abs() + all.load_j.abs() + 1.0;
        prop_assert!((all.crank_j - found).abs() <= MISSING * size, "{all:?}: {found}");
        let at_wheels = all.vehicle_j + all.load_j + plain.efficiency * all.engine_j;
        prop_assert!((all.wheel_j - at_wheels).abs() <= MISSING * size, "{all:?}: {at_wheels}");
        let end = run.end().speed_m_s;
        let radius_m = plain.radius_m();
        let moving = 0.5 * on_road.neutral_mass_kg(radius_m) * end * end;
        prop_assert!((all.vehicle_j - moving).abs() <= MISSING * size, "{all:?}: {moving}");
    }

    #[test]
    fn torque_and_load_over_time_give_the_same_energies(plain in any_vehicle()) {
        let (powertrain, on_road) = (plain.powertrain(), plain.on_road());
        let run = run(&plain, &powertrain, &on_road);
        for piece in run.pieces() {
            let energy = run.energy(&[*piece]);
            let speed = |time_s: f64| {
                let time_s = time_s.clamp(piece.from.time_s, piece.to.time_s);
                run.at_time(time_s).unwrap().speed_m_s
            };
            let load = over_time(piece, |t| on_road.road_load_n(speed(t)) * speed(t));
            let size = energy.crank_j.abs() + energy.load_j.abs() + 1.0;
            prop_assert!((energy.load_j - load).abs() <= MISSING * size, "{piece:?}: {load}");
            if !matches!(piece.phase, Phase::Slipping(DriveLimit::Engine) | Phase::Coupled(DriveLimit::Engine)) {
                continue;
            }
            let power_w = |t: f64| {
                let rpm = run.engine_rpm(piece, speed(t)).unwrap();
                let torque = powertrain.band.torque_nm(powertrain.band.nearest_rpm(rpm));
                torque.unwrap() * rpm * PI / 30.0
            };
            let crank = over_time(piece, power_w);
            prop_assert!((energy.crank_j - crank).abs() <= MISSING * size, "{piece:?}: {crank}, {energy:?}");
        }
    }
}
