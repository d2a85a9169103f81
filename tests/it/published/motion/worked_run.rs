//! Do the runs of the worked car come out to their printed digits?

use super::WORKED;
use crate::published::row::Status::Derived;
use crate::published::row::{Published, assert_rows, published};
use crate::support::vehicles::{Worked, driving, until};
use layshaft::motion::{DriveLimit, Phase, ROLLOUT_M, Run, RunPiece};

const KMH: f64 = 1.0 / 3.6;
const MPH: f64 = 0.44704;

/// A figure of the car, printed to so many decimals.
fn row(expected: f64, decimals: i32) -> Published {
    let tolerance = 0.5 * 10.0_f64.powi(-decimals) * (1.0 + 1e-6);
    published(expected, tolerance, WORKED, Derived)
}

/// Shifted at 6500 rpm, to 100 km/h and a quarter of a mile.
fn run() -> Run {
    let car = Worked::car();
    let driving = driving(Some(2800.0), 0.4);
    car.powertrain().run(
        &car.on_road(),
        &driving,
        &[6500.0; 4],
        until(100.0 * KMH, 402.336),
    )
}

#[test]
fn times_and_distances_of_the_run_are_the_printed_ones() {
    let run = run();
    let mut rows = Vec::new();
    for (target, time_s, distance_m) in [
        (50.0 * KMH, 3.461_467_6, 24.110_648_8),
        (60.0 * MPH, 9.029_448_1, 139.894_704_5),
        (100.0 * KMH, 9.508_962_6, 152.985_985_9),
    ] {
        let moment = run.at_speed(target).unwrap();
        rows.push((format!("s to {target}"), moment.time_s, row(time_s, 7)));
        rows.push((
            format!("m to {target}"),
            moment.distance_m,
            row(distance_m, 7),
        ));
    }
    for (distance_m, time_s, speed_kmh) in [
        (400.0, 16.823_113_9, 138.268_295_5),
        (402.336, 16.883_878_3, 138.525_555_1),
    ] {
        let moment = run.at_distance(distance_m).unwrap();
        rows.push((format!("s for {distance_m}"), moment.time_s, row(time_s, 7)));
        let kmh = moment.speed_m_s / KMH;
        rows.push((format!("km/h at {distance_m}"), kmh, row(speed_kmh, 7)));
    }
    let rollout = run.at_distance(ROLLOUT_M).unwrap();
    rows.push(("rollout".to_owned(), rollout.time_s, row(0.388_571_7, 7)));
    assert_rows(rows);
}

#[test]
fn its_phases_begin_and_end_when_printed() {
    let run = run();
    let pieces = run.pieces();
    let gripping = |piece: &&RunPiece| {
        matches!(
            piece.phase,
            Phase::Slipping(DriveLimit::Grip) | Phase::Coupled(DriveLimit::Grip)
        )
    };
    let mut spans: Vec<[f64; 2]> = Vec::new();
    for piece in pieces.iter().filter(gripping) {
        match spans.last_mut() {
            Some(span) if span[1].to_bits() == piece.from.time_s.to_bits() => {
                span[1] = piece.to.time_s;
            }
            _ => spans.push([piece.from.time_s, piece.to.time_s]),
        }
    }
    assert_eq!(spans.len(), 2);
    let slips = |piece: &&RunPiece| matches!(piece.phase, Phase::Slipping(_));
    let closed = pieces.iter().rfind(slips).unwrap().to;
    let mut rows = vec![
        ("grip from".to_owned(), spans[0][0], row(0.0, 6)),
        ("grip until".to_owned(), spans[0][1], row(1.604_416, 6)),
        ("grip again".to_owned(), spans[1][0], row(1.687_288, 6)),
        ("grip at last".to_owned(), spans[1][1], row(3.671_398, 6)),
        (
            "closed".to_owned(),
            closed.speed_m_s / KMH,
            row(23.290_08, 5),
        ),
        ("closed at".to_owned(), closed.time_s, row(1.604_416, 6)),
    ];
    let changes = run.shifts().iter();
    for (change, time_s) in changes.zip([3.747_874, 7.509_191, 13.761_164]) {
        rows.push((format!("change at {time_s}"), change.time_s, row(time_s, 6)));
    }
    let after = |piece: &&RunPiece| piece.phase == Phase::Pause;
    let pauses = pieces.iter().filter(after);
    for (pause, kmh) in pauses.zip([53.778_76, 88.373_99, 126.484_14]) {
        rows.push((
            format!("{kmh} after"),
            pause.to.speed_m_s / KMH,
            row(kmh, 5),
        ));
    }
    assert_rows(rows);
}

#[test]
fn staying_in_second_is_sooner_at_sixty_miles_an_hour_alone() {
    let (car, run) = (Worked::car(), run());
    let (powertrain, driving) = (car.powertrain(), driving(Some(2800.0), 0.4));
    let staying = |target| {
        let (on_road, shifts) = (car.on_road(), [6500.0; 4]);
        let stays = powertrain.run_in_gear_to_target(&run, &on_road, &driving, &shifts, target)?;
        Some(stays.at_speed(target)?.time_s)
    };
    let sixty = staying(60.0 * MPH).unwrap();
    assert_rows([("0-60 in second", sixty, row(8.456_490_3, 7))]);
    // Second ends at 97 km/h, and 50 km/h is reached in first.
    assert_eq!([50.0, 100.0].map(|kmh| staying(kmh * KMH)), [None, None]);
}

#[test]
fn in_gear_times_are_the_printed_ones() {
    let car = Worked::car();
    let on_road = car.on_road();
    let time = |number| {
        let passage = car.gear(number).in_gear(&on_road, 80.0 * KMH, 120.0 * KMH);
        passage.map(|passage| passage.time_s)
    };
    assert_eq!([1, 2].map(time), [None, None]);
    let printed = [(3, 5.719_671_5), (4, 8.081_433_0), (5, 11.676_057_1)];
    assert_rows(printed.map(|(number, time_s)| {
        let what = format!("80-120 in {number}");
        (what, time(number).unwrap(), row(time_s, 7))
    }));
}

#[test]
fn coasting_down_takes_what_is_printed() {
    let car = Worked::car();
    let radius_m = car.gear(1).rolling_radius_m;
    let passage = car.on_road().coast_down(radius_m, 120.0 * KMH, 60.0 * KMH);
    let passage = passage.unwrap();
    assert_rows([
        ("s", passage.time_s, row(50.170_872_0, 7)),
        ("m", passage.distance_m, row(1_193.908_476_5, 7)),
    ]);
}

#[test]
fn the_energy_to_the_end_of_third_is_the_printed_one() {
    let car = Worked::car();
    let driving = driving(Some(2800.0), 0.4);
    let goal = until(150.0 * KMH, 0.0);
    let run = car
        .powertrain()
        .run(&car.on_road(), &driving, &[6500.0; 4], goal);
    let end = run.shifts()[2].time_s;
    let before = |piece: &&RunPiece| piece.from.time_s < end;
    let pieces: Vec<RunPiece> = run.pieces().iter().take_while(before).copied().collect();
    let energy = run.energy(&pieces);
    assert_rows([
        ("crank", energy.crank_j, row(957_544.11, 2)),
        ("clutch", energy.clutch_j, row(25_365.01, 2)),
        ("driveline", energy.driveline_j, row(86_385.27, 2)),
        ("engine", energy.engine_j, row(68_326.43, 2)),
        ("vehicle", energy.vehicle_j, row(662_273.17, 2)),
        ("load", energy.load_j, row(115_194.24, 2)),
        ("wheel", energy.wheel_j, row(838_961.20, 2)),
    ]);
}

#[test]
fn best_shift_points_and_the_run_with_them_are_the_printed_ones() {
    let car = Worked::car();
    let (powertrain, on_road) = (car.powertrain(), car.on_road());
    let mut rows = Vec::new();
    for (pause_s, printed) in [
        (0.4, [7100.0, 7_047.556_3, 6_901.878_7, 6_757.380_6]),
        (0.0, [7100.0, 7_068.599_5, 6_937.588_3, 6_814.644_7]),
    ] {
        let best = powertrain.best_shift_rpms(&on_road, &driving(Some(2800.0), pause_s));
        assert_eq!(best.len(), 4);
        for (number, (found, expected)) in (1..).zip(best.into_iter().zip(printed)) {
            rows.push((
                format!("out of {number}, pause {pause_s}"),
                found,
                row(expected, 4),
            ));
        }
    }
    let driving = driving(Some(2800.0), 0.4);
    let best = powertrain.best_shift_rpms(&on_road, &driving);
    let run = powertrain.run(&on_road, &driving, &best, until(100.0 * KMH, 0.0));
    for (target, time_s) in [(60.0 * MPH, 8.866_470_8), (100.0 * KMH, 9.345_985_3)] {
        let found = run.at_speed(target).unwrap().time_s;
        rows.push((format!("best to {target}"), found, row(time_s, 7)));
    }
    assert_rows(rows);
}
