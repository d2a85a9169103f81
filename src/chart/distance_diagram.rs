//! The distance diagram: the way from rest against time, at full load, with the times to the usual distances.

use super::axis::{Along, Quantity, next_round};
use super::chosen::ChosenSet;
use super::of_motion;
use super::over_time::{OneRun, Runs, name_best};
use super::scene::{Label, Place, Role, Rule, Scene};
use crate::analysis::{Analysis, DISTANCES_M, QUARTER_MILE_M};
use crate::project::View;
use crate::units::{SpeedUnit, plain_number};

/// The distance diagram of chosen sets.
pub(super) fn scene(analysis: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let scene = Scene {
        without_reading: "past its end",
        ..Scene::empty(View::Distance, Quantity::Time, Quantity::Distance)
    };
    match Runs::of(analysis, sets) {
        Ok(runs) => drawn(scene, &runs, analysis.project().units),
        Err(reason) => of_motion::without(scene, &reason),
    }
}

fn drawn(mut scene: Scene, runs: &Runs<'_>, units: SpeedUnit) -> Scene {
    let told_m = told_m(units);
    for one in runs.each() {
        set(&mut scene, runs, &one, told_m);
    }
    name_best(&mut scene);
    scene.rules.push(Rule {
        role: Role::Marked,
        along: Along::X,
        at: told_m,
    });
    scene.say_once(Label {
        text: distance_words(told_m),
        role: Role::Marked,
        of: None,
        at: [0.0, told_m],
        place: Place::AtStart,
    });
    let points = scene.lines.iter().flat_map(|line| &line.points);
    let farthest = points.map(|point| point[1]).fold(told_m, f64::max);
    scene.x.range = runs.range_s();
    scene.y.range = [0.0, next_round(farthest * 1.05)];
    scene.summary = runs.spoken("Distance in m");
    scene
}

fn set(scene: &mut Scene, runs: &Runs<'_>, one: &OneRun<'_>, told_m: f64) {
    one.lines(scene, runs, |moment| moment.distance_m);
    if let Some(moment) = one.runs.run.at_distance(told_m) {
        let before = one.baseline.and_then(|runs| runs.run.at_distance(told_m));
        let at = [moment.time_s, told_m];
        one.told(scene, at, before.map(|before| before.time_s));
    }
}

/// The distance in m that times are told to: the two usual ones lie too close for the words of both.
fn told_m(units: SpeedUnit) -> f64 {
    match units {
        SpeedUnit::Kmh => DISTANCES_M[0],
        SpeedUnit::Mph => QUARTER_MILE_M,
    }
}

/// `400 m`, `¼ mile`.
fn distance_words(distance_m: f64) -> String {
    if (distance_m - QUARTER_MILE_M).abs() < 0.5 {
        "¼ mile".to_owned()
    } else {
        format!("{} m", plain_number(distance_m))
    }
}
