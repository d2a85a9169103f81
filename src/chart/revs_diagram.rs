//! The diagram of engine speed against time from rest, at full load: every change of gear with its fall.

use super::at_pointer::Readable;
use super::axis::{Along, Quantity};
use super::chosen::ChosenSet;
use super::of_motion;
use super::over_time::{OneRun, Runs};
use super::scene::{Area, Label, Line, Owner, Place, Role, Rule, Scene};
use crate::analysis::Analysis;
use crate::project::View;
use crate::units::typed_rpm_text;

/// How far above the redline the diagram goes.
const ROOM: f64 = 1.08;

/// The diagram of chosen sets.
pub(super) fn scene(analysis: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let scene = Scene {
        without_reading: "no gear drives",
        ..Scene::empty(View::Revs, Quantity::Time, Quantity::EngineSpeed)
    };
    match Runs::of(analysis, sets) {
        Ok(runs) => drawn(scene, &runs, analysis.project().engine.redline.rpm()),
        Err(reason) => of_motion::without(scene, &reason),
    }
}

fn drawn(mut scene: Scene, runs: &Runs<'_>, redline_rpm: f64) -> Scene {
    scene.areas.push(Area {
        role: Role::Redline,
        y: [Some(redline_rpm), None],
    });
    scene.rules.push(Rule {
        role: Role::Redline,
        along: Along::X,
        at: redline_rpm,
    });
    scene.say_once(Label {
        text: format!("redline {}", typed_rpm_text(redline_rpm)),
        role: Role::Redline,
        of: None,
        at: [0.0, redline_rpm],
        place: Place::AtEnd,
    });
    for one in runs.each() {
        scene.sets.push(one.set.shown());
        set(&mut scene, runs, &one);
    }
    let times = scene.lines.iter().flat_map(|line| &line.points);
    let end_s = times.map(|point| point[0]).fold(1.0, f64::max);
    scene.x.range = [0.0, end_s];
    scene.y.range = [0.0, redline_rpm * ROOM];
    scene.summary = runs.spoken("Engine speed");
    scene
}

/// Every gear of a set as long as it drives, with its label where it is left.
fn set(scene: &mut Scene, runs: &Runs<'_>, one: &OneRun<'_>) {
    let baseline = one
        .baseline
        .map(|runs_of| runs.revs_in_gears(&runs_of.run).concat());
    let chain: Vec<_> = one.powertrain.chain().collect();
    for (at, points) in runs.revs_in_gears(&one.runs.run).into_iter().enumerate() {
        let (Some(gear), Some(end)) = (chain.get(at), points.last()) else {
            continue;
        };
        let of = Owner {
            gear: Some(gear.gear.id),
            ..one.set.of
        };
        let label = gear.gear.label.clone();
        scene.say_once(Label {
            text: label.clone(),
            role: Role::FullLoad,
            of: Some(of),
            at: *end,
            place: Place::Beside,
        });
        scene.readables.push(Readable {
            also: Vec::new(),
            of,
            name: label,
            baseline: baseline.clone(),
            points: points.clone(),
        });
        let role = Role::FullLoad;
        scene.lines.push(Line { role, of, points });
    }
}
