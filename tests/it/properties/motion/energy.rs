//! Is all energy of a run found again, whatever the vehicle?

use super::any_vehicle::any_vehicle;
use crate::support::plain_vehicle::Plain;
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

/// ∫f dt over a piece by Simpson's rule, f of the time, halved until both halves tell the same as the whole.
fn over_time(piece: &RunPiece, f: &impl Fn(f64) -> f64) -> f64 {
    let (from, to) = (piece.from.time_s, piece.to.time_s);
    let parts = 8;
    let place = |part: i32| from + (to - from) * f64::from(part) / f64::from(parts);
    let spans = (0..parts).map(|part| [place(part), place(part + 1)]);
    spans.map(|span| halved(span, span.map(f), 12, f)).sum()
}

fn halved([from, to]: [f64; 2], ends: [f64; 2], times: u32, f: &impl Fn(f64) -> f64) -> f64 {
    let quarter = 0.25 * (to - from);
    let [early, middle, late] = [1.0, 2.0, 3.0].map(|part| f(from + part * quarter));
    let simpson = |width: f64, [a, b, c]: [f64; 3]| width / 6.0 * (a + 4.0 * b + c);
    let whole = simpson(4.0 * quarter, [ends[0], middle, ends[1]]);
    let halves = simpson(2.0 * quarter, [ends[0], early, middle])
        + simpson(2.0 * quarter, [middle, late, ends[1]]);
    if times == 0 || (halves - whole).abs() <= 1e-8 * (1.0 + halves.abs()) {
        return halves;
    }
    let centre = from + 2.0 * quarter;
    halved([from, centre], [ends[0], middle], times - 1, f)
        + halved([centre, to], [middle, ends[1]], times - 1, f)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(96) })]
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
            let load = over_time(piece, &|t| on_road.road_load_n(speed(t)) * speed(t));
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
            let crank = over_time(piece, &power_w);
            prop_assert!((energy.crank_j - crank).abs() <= MISSING * size, "{piece:?}: {crank}, {energy:?}");
        }
    }
}
