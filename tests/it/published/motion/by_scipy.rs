//! Do runs, in-gear times, coast-downs and shift points agree with what scipy makes of three vehicles?
//!
//! `tests/reference/runs.py` made the values and says how.

use crate::published::row::Status::Derived;
use crate::published::row::{Published, assert_rows, published};
use crate::support::plain_vehicle::{Held, Plain, Tyres};
use crate::support::vehicles::until;
use layshaft::motion::{DrivenAxle, Run};
use serde_json::Value;

const SCIPY: &str = "scipy 1.17.1, DOP853 and quad";

const KMH: f64 = 1.0 / 3.6;

/// What is promised, in s.
fn time(expected_s: f64) -> Published {
    published(expected_s, 1e-6, SCIPY, Derived)
}

/// Of distances in m, of speeds in m/s and of engine speeds in rev/min.
fn beside(expected: f64) -> Published {
    published(expected, 1e-5, SCIPY, Derived)
}

fn vehicles() -> Vec<Value> {
    serde_json::from_str(include_str!("../../../reference/runs.json")).unwrap()
}

fn number(of: &Value, key: &str) -> f64 {
    of[key].as_f64().unwrap()
}

fn numbers(list: &Value) -> Vec<f64> {
    let items = list.as_array().into_iter().flatten();
    items.map(|item| item.as_f64().unwrap()).collect()
}

fn rows(list: &Value) -> Vec<Vec<f64>> {
    list.as_array().unwrap().iter().map(numbers).collect()
}

fn plain(of: &Value) -> Plain {
    let held = match numbers(&of["measured"]).as_slice() {
        [a, b, c] => Held::Measured(*a, *b, *c),
        _ => Held::Estimated(number(of, "rolling"), number(of, "drag_area_m2")),
    };
    let driven = match of["driven"].as_str().unwrap() {
        "front" => DrivenAxle::Front,
        "rear" => DrivenAxle::Rear,
        _ => DrivenAxle::All,
    };
    let inertias = match numbers(&of["inertias"]).as_slice() {
        [engine, wheels] => Some((*engine, *wheels)),
        _ => None,
    };
    Plain {
        points: rows(&of["points"])
            .iter()
            .map(|point| (point[0], point[1]))
            .collect(),
        redline_rpm: number(of, "redline_rpm"),
        idle_rpm: number(of, "idle_rpm"),
        ratios: numbers(&of["ratios"]),
        final_drive: number(of, "final_drive"),
        circumference_mm: number(of, "circumference_mm"),
        mass_kg: number(of, "mass_kg"),
        held,
        efficiency: number(of, "efficiency"),
        inertias,
        tyres: Some(Tyres {
            driven,
            adhesion: number(of, "adhesion"),
            front_share: number(of, "front_share"),
            transfer: Some((number(of, "wheelbase_m"), number(of, "height_m"))),
        }),
        grade_percent: number(of, "grade_percent"),
        headwind_kmh: number(of, "headwind_kmh"),
        launch_rpm: number(of, "launch_rpm"),
        pause_s: number(of, "pause_s"),
        shift_rpms: numbers(&of["shift_rpms"]),
    }
}

fn run(plain: &Plain, shift_rpms: &[f64]) -> Run {
    let (powertrain, on_road) = (plain.powertrain(), plain.on_road());
    powertrain.run(
        &on_road,
        &plain.driving(),
        shift_rpms,
        until(120.0 * KMH, 402.336),
    )
}

fn speeds(name: &str, run: &Run, expected: &Value) -> Vec<(String, f64, Published)> {
    let expected = rows(expected);
    assert!(!expected.is_empty());
    let found = expected.iter().flat_map(|row| {
        let moment = run.at_speed(row[0] * KMH).unwrap();
        let what = |figure| format!("{name}, {figure} to {} km/h", row[0]);
        [
            (what("s"), moment.time_s, time(row[1])),
            (what("m"), moment.distance_m, beside(row[2])),
        ]
    });
    found.collect()
}

#[test]
fn runs_with_any_shift_points_and_with_the_best_agree() {
    for of in &vehicles() {
        let (plain, name, expected) = (plain(of), of["name"].as_str().unwrap(), &of["expected"]);
        let shifted = run(&plain, &plain.shift_rpms);
        let mut found = speeds(name, &shifted, &expected["speeds_kmh_s_m"]);
        for row in rows(&expected["distances_m_s_m_s"]) {
            let moment = shifted.at_distance(row[0]).unwrap();
            let what = |figure| format!("{name}, {figure} at {} m", row[0]);
            found.push((what("s"), moment.time_s, time(row[1])));
            found.push((what("m/s"), moment.speed_m_s, beside(row[2])));
        }
        let best = plain
            .powertrain()
            .best_shift_rpms(&plain.on_road(), &plain.driving());
        let expected_best = numbers(&expected["best_shift_rpms"]);
        assert_eq!(best.len(), expected_best.len());
        for (found_rpm, expected_rpm) in best.iter().zip(expected_best) {
            found.push((
                format!("{name}, best shift"),
                *found_rpm,
                beside(expected_rpm),
            ));
        }
        let with_best = run(&plain, &best);
        found.extend(speeds(name, &with_best, &expected["best_speeds_kmh_s_m"]));
        assert_rows(found);
    }
}

#[test]
fn in_gear_times_and_coast_downs_agree() {
    for of in &vehicles() {
        let (plain, name, expected) = (plain(of), of["name"].as_str().unwrap(), &of["expected"]);
        let (powertrain, on_road) = (plain.powertrain(), plain.on_road());
        let mut found = Vec::new();
        for pair in [[60.0, 100.0], [80.0, 120.0]] {
            let all = rows(&expected["in_gear_number_kmh_kmh_s_m"]);
            let mut expected = all.iter().filter(|row| row[1..3] == pair);
            for (at, gear) in (1..).zip(&powertrain.gears) {
                let Some(passage) = gear.in_gear(&on_road, pair[0] * KMH, pair[1] * KMH) else {
                    continue;
                };
                let row = expected.next().unwrap();
                let what = |figure| format!("{name}, {figure} {pair:?} in {at}");
                found.push((what("gear"), f64::from(at), beside(row[0])));
                found.push((what("s"), passage.time_s, time(row[3])));
                found.push((what("m"), passage.distance_m, beside(row[4])));
            }
            assert!(expected.next().is_none(), "{name}");
        }
        let coast = numbers(&expected["coast_kmh_kmh_s_m"]);
        let passage = on_road
            .coast_down(plain.radius_m(), coast[0] * KMH, coast[1] * KMH)
            .unwrap();
        found.push((format!("{name}, coast, s"), passage.time_s, time(coast[2])));
        found.push((
            format!("{name}, coast, m"),
            passage.distance_m,
            beside(coast[3]),
        ));
        assert_rows(found);
    }
}
