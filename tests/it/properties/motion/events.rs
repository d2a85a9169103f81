//! What happens at each event of a run?

use crate::support::close::assert_close;
use crate::support::plain_vehicle::{Held, PER_THOUSAND_N, Plain};
use crate::support::vehicles::until;
use layshaft::motion::{Phase, Run, RunPiece};

/// 1000 kg that are pulled with 1000 N for each unit of ratio, by an engine from 1000 to 5000 rpm on a final
/// drive and tyres that make n ÷ 100 m/s of n rpm in the ratio 4; nothing holds it back.
fn plain(ratios: &[f64], shift_rpms: &[f64]) -> Plain {
    let points = [1000.0, 5000.0].map(|rpm| (rpm, PER_THOUSAND_N));
    Plain {
        idle_rpm: 800.0,
        pause_s: 0.5,
        shift_rpms: shift_rpms.to_vec(),
        ..Plain::bare(1000.0, ratios, &points)
    }
}

fn run(plain: &Plain, speed_m_s: f64, distance_m: f64) -> Run {
    let goal = until(speed_m_s, distance_m);
    let (powertrain, on_road) = (plain.powertrain(), plain.on_road());
    powertrain.run(&on_road, &plain.driving(), &plain.shift_rpms, goal)
}

fn last(run: &Run) -> &RunPiece {
    run.pieces().last().unwrap()
}

#[test]
fn what_cannot_move_has_no_times_and_no_pieces() {
    let held = Held::Measured(4000.0, 0.0, 0.0);
    let run = run(
        &Plain {
            held,
            ..plain(&[4.0], &[])
        },
        10.0,
        100.0,
    );
    assert!(run.pieces().is_empty() && run.shifts().is_empty());
    assert_eq!((run.at_speed(10.0), run.at_distance(0.3048)), (None, None));
    assert_eq!(run.end().time_s.to_bits(), 0.0_f64.to_bits());
}

#[test]
fn in_top_gear_the_limiter_holds_the_speed_and_the_distances_go_on() {
    let run = run(&plain(&[4.0], &[]), 50.0, 1000.0);
    // 4 m/s² to 50 m/s, 312.5 m, and on at that speed.
    assert_close(
        run.at_speed(50.0).unwrap().time_s,
        12.5,
        1e-9,
        "s to 50 m/s",
    );
    let end = run.at_distance(1000.0).unwrap();
    assert_close(end.time_s, 12.5 + 687.5 / 50.0, 1e-9, "s to 1000 m");
    assert_eq!(
        (last(&run).phase, run.at_speed(50.01)),
        (Phase::Limiter, None)
    );
    let tenth = run.at_time(20.0).unwrap();
    assert_close(tenth.distance_m, 312.5 + 7.5 * 50.0, 1e-9, "m after 20 s");
}

#[test]
fn a_gear_at_its_change_already_is_left_at_once_with_another_pause() {
    // First to 30 m/s; second is changed at 25 m/s.
    let run = run(&plain(&[4.0, 3.0, 2.0], &[3000.0, 1875.0]), 40.0, 0.0);
    let times: Vec<f64> = run.shifts().iter().map(|shift| shift.time_s).collect();
    assert_eq!(times.len(), 2);
    assert_close(times[0], 7.5, 1e-9, "first change");
    assert_close(times[1], 8.0, 1e-9, "second change");
    let forty = run.at_speed(40.0).unwrap();
    assert_close(forty.time_s, 8.5 + 10.0 / 2.0, 1e-9, "s to 40 m/s");
    assert_eq!(
        run.pieces()
            .iter()
            .filter(|piece| piece.phase == Phase::Pause)
            .count(),
        2
    );
}

#[test]
fn after_a_change_below_the_band_the_clutch_slips_with_the_engine_held() {
    // Second covers 40 m/s and more.
    let run = run(&plain(&[4.0, 1.0], &[2000.0]), 45.0, 0.0);
    let slips = |piece: &&RunPiece| matches!(piece.phase, Phase::Slipping(_)) && piece.gear == 1;
    let slipping = run.pieces().iter().find(slips).unwrap();
    assert_close(slipping.from.speed_m_s, 20.0, 1e-9, "slip from");
    assert_close(slipping.to.speed_m_s, 40.0, 1e-9, "slip to");
    assert_eq!(run.engine_rpm(slipping, 30.0), Some(1000.0));
    assert_close(slipping.to.time_s, 5.5 + 20.0, 1e-9, "closed");
}

#[test]
fn a_gear_that_does_not_hold_its_speed_loses_it_and_nobody_changes_down() {
    // R = 2 · v²: first holds 44.7 m/s, second 31.6 m/s.
    let car = Plain {
        held: Held::Measured(0.0, 0.0, 2.0),
        pause_s: 0.0,
        ..plain(&[4.0, 2.0], &[4000.0])
    };
    let run = run(&car, 45.0, 5000.0);
    assert_eq!(run.shifts().len(), 1);
    let held = 1000.0_f64.sqrt();
    let end = last(&run);
    assert_close(end.from.speed_m_s, held, 1e-6, "what second holds");
    assert!(matches!(end.phase, Phase::Coupled(_)) && run.at_distance(5000.0).is_some());
    // First passes it on the way up, but what is only come nearer to is never reached.
    assert!(run.at_speed(held).is_some() && run.at_speed(40.01).is_none());
}

#[test]
fn a_speed_that_is_only_come_nearer_to_is_never_reached() {
    let car = Plain {
        held: Held::Measured(0.0, 0.0, 2.5),
        ..plain(&[4.0], &[])
    };
    let run = run(&car, 40.0, 1000.0);
    assert!(run.at_speed(39.999).is_some() && run.at_speed(40.0).is_none());
    assert!(run.at_distance(1000.0).is_some());
    assert_close(run.end().time_s, 600.0, 1e-9, "given up after");
}

#[test]
fn a_pause_uphill_may_bring_it_to_a_stand_and_it_starts_again() {
    // 5 m/s after the first change, and 3000 N against it: it stands after 5 ÷ 3 s.
    let car = Plain {
        held: Held::Measured(3000.0, 0.0, 0.0),
        pause_s: 2.0,
        launch_rpm: 1000.0,
        ..plain(&[8.0, 4.0], &[1000.0])
    };
    let run = run(&car, 8.0, 0.0);
    let closed_s = 5.0 / 5.0;
    let standing = |piece: &&RunPiece| piece.phase == Phase::Pause && piece.from.speed_m_s <= 0.0;
    let stands = run.pieces().iter().find(standing).unwrap();
    assert_close(
        stands.from.time_s,
        closed_s + 5.0 / 3.0,
        1e-9,
        "stands from",
    );
    assert_close(stands.to.time_s, closed_s + 2.0, 1e-9, "stands to");
    let eight = run.at_speed(8.0).unwrap();
    assert_close(eight.time_s, closed_s + 2.0 + 8.0, 1e-9, "s to 8 m/s");
}

#[test]
fn top_gear_drives_once_the_vehicle_is_slow_enough_for_it() {
    // The next gear is the shorter one, and ends at 25 m/s; the air slows it down from 40.
    let car = Plain {
        held: Held::Measured(0.0, 0.0, 1.0),
        pause_s: 0.0,
        ..plain(&[4.0, 8.0], &[4000.0])
    };
    let run = run(&car, 0.0, 2000.0);
    let fast = |piece: &&RunPiece| piece.phase == Phase::TooFast;
    let rolling = run.pieces().iter().find(fast).unwrap();
    assert_close(rolling.from.speed_m_s, 40.0, 1e-9, "rolls from");
    assert_close(rolling.to.speed_m_s, 25.0, 1e-9, "rolls to");
    // dv/dt = −v²/1000.
    let time_s = rolling.to.time_s - rolling.from.time_s;
    assert_close(time_s, 1000.0 / 25.0 - 1000.0 / 40.0, 1e-9, "rolls for");
    assert_eq!(
        (run.engine_rpm(rolling, 30.0), last(&run).phase),
        (None, Phase::Limiter)
    );
}

#[test]
fn staying_in_gear_is_sooner_than_never() {
    // Second does not hold 32 m/s, first does.
    let car = Plain {
        held: Held::Measured(0.0, 0.0, 2.0),
        ..plain(&[4.0, 2.0], &[3000.0])
    };
    let changed = run(&car, 40.0, 0.0);
    assert_eq!(changed.at_speed(40.0), None);
    let stays = car.powertrain().run_in_gear_to_target(
        &changed,
        &car.on_road(),
        &car.driving(),
        &car.shift_rpms,
        40.0,
    );
    let stays = stays.unwrap();
    assert!(stays.at_speed(40.0).is_some() && stays.shifts().is_empty());
}
