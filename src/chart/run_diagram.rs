//! The run diagram: road speed against time from rest, at full load, with the times to what is asked for.
//!
//! Over the run with the set's own shift points lies the same with the best ones: what lies between is what
//! better changes would gain.

use super::axis::{Along, Quantity, next_round};
use super::chosen::ChosenSet;
use super::of_motion;
use super::over_time::{OneRun, Runs, name_best};
use super::scene::{Label, Place, Role, Rule, Scene};
use crate::analysis::Analysis;
use crate::project::View;
use crate::units::{KMH_PER_M_S, SpeedUnit};

/// The run diagram of chosen sets.
pub(super) fn scene(analysis: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let units = analysis.project().units;
    let scene = Scene {
        without_reading: "past its end",
        ..Scene::empty(View::Run, Quantity::Time, Quantity::RoadSpeed(units))
    };
    match Runs::of(analysis, sets) {
        Ok(runs) => drawn(scene, &runs, units),
        Err(reason) => of_motion::without(scene, &reason),
    }
}

fn drawn(mut scene: Scene, runs: &Runs<'_>, units: SpeedUnit) -> Scene {
    targets(&mut scene, runs, units);
    for one in runs.each() {
        set(&mut scene, runs, &one, units);
    }
    name_best(&mut scene);
    let points = scene.lines.iter().flat_map(|line| &line.points);
    let fastest = points.map(|point| point[1]).fold(0.0, f64::max);
    scene.x.range = runs.range_s();
    scene.y.range = [0.0, next_round(fastest * 1.05)];
    scene.summary = runs.spoken("Road speed");
    scene
}

/// The road speeds that times are told to.
fn targets(scene: &mut Scene, runs: &Runs<'_>, units: SpeedUnit) {
    for to in &runs.targets {
        let at = units.from_kmh(to.kmh());
        scene.rules.push(Rule {
            role: Role::Marked,
            along: Along::X,
            at,
        });
        scene.say_once(Label {
            text: of_motion::speed_words(*to, units),
            role: Role::Marked,
            of: None,
            at: [0.0, at],
            place: Place::AtStart,
        });
    }
}

fn set(scene: &mut Scene, runs: &Runs<'_>, one: &OneRun<'_>, units: SpeedUnit) {
    one.lines(scene, runs, |moment| {
        units.from_kmh(moment.speed_m_s * KMH_PER_M_S)
    });
    for time in &one.runs.times {
        let mut times = one.baseline.iter().flat_map(|runs| &runs.times);
        let before = times.find(|before| before.to == time.to);
        let at = [time.passage.time_s, units.from_kmh(time.to.kmh())];
        one.told(scene, at, before.map(|before| before.passage.time_s));
    }
}
