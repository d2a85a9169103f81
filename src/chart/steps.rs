//! The step of each gear over the next, gear by gear: where a set is close, and where it has holes.

use super::at_pointer::Readable;
use super::axis::Quantity;
use super::chosen::ChosenSet;
use super::marks::of_all_sets;
use super::scene::{Label, Line, Place, Point, Role, Scene};
use crate::analysis::Analysis;
use crate::gearing::GearResult;
use crate::project::View;
use crate::units::step_text;

/// The steps of chosen sets: x counts the changes from first gear on, y is the step.
pub(super) fn scene(_: &Analysis, sets: &[ChosenSet<'_>]) -> Scene {
    let mut scene = Scene {
        without_reading: "no step",
        ..Scene::empty(View::Steps, Quantity::Gear, Quantity::Step)
    };
    scene.x.marks = changes(sets);
    // Room for the last change beside the end of the axis.
    scene.x.range = [0.5, scene.x.marks.len() as f64 + 1.0];
    for set in sets {
        add(&mut scene, set);
    }
    let steps = || scene.points.iter().map(|point| point.at[1]);
    let least = steps().fold(1.0, f64::min);
    let most = steps().fold(1.1, f64::max);
    scene.y.range = [least, most + 0.08 * (most - least)];
    scene.summary = summary(sets);
    scene
}

/// Longer labels of gears leave no room beside each other.
const LONGEST_LABEL: usize = 2;

/// The diagram in one spoken sentence.
fn summary(sets: &[ChosenSet<'_>]) -> String {
    let sets = of_all_sets(sets.iter().map(spoken));
    format!("Step of each gear over the next: {sets}")
}

/// The changes of the longest set, by the labels of its gears where these are short, else counted.
fn changes(sets: &[ChosenSet<'_>]) -> Vec<(f64, String)> {
    // The first of the longest.
    let longest = sets.iter().rev().max_by_key(|set| set.set.chain().count());
    let gears = longest.into_iter().flat_map(|set| set.set.chain());
    let mut labels: Vec<String> = gears.map(|g| g.gear.label.clone()).collect();
    if labels
        .iter()
        .any(|label| label.chars().count() > LONGEST_LABEL)
    {
        labels = (1..=labels.len()).map(|n| n.to_string()).collect();
    }
    if labels.len() < 2 {
        return vec![(1.0, "no change".to_owned())];
    }
    let pairs = labels.windows(2).map(|pair| pair.join("→"));
    (1..).map(f64::from).zip(pairs).collect()
}

/// The changes of a set from first gear on, each with its step.
fn steps<'s>(set: &'s ChosenSet<'_>) -> impl Iterator<Item = (&'s GearResult, [f64; 2])> {
    let changes = (1..).map(f64::from).zip(set.set.chain());
    changes.filter_map(|(x, result)| Some((result, [x, result.step?])))
}

fn spoken(set: &ChosenSet<'_>) -> String {
    let steps: Vec<String> = steps(set).map(|(_, [_, step])| step_text(step)).collect();
    if steps.is_empty() {
        return format!("{} without a step", set.candidate.set.name);
    }
    format!("{} {}", set.candidate.set.name, steps.join(", "))
}

fn add(scene: &mut Scene, set: &ChosenSet<'_>) {
    scene.sets.push(set.shown());
    let role = Role::ByGear;
    for (result, at) in steps(set) {
        let of = set.of_gear(result);
        let text = step_text(at[1]);
        // Where sets share a step, it is written once.
        let is_new = |l: &Label| l.text != text || (l.at[0] - at[0]).abs() > 0.5;
        if scene.labels.iter().all(is_new) {
            scene.labels.push(Label {
                text,
                role,
                of: Some(of),
                at,
                place: Place::Beside,
            });
        }
        scene.points.push(Point { role, of, at });
    }
    let points: Vec<[f64; 2]> = steps(set).map(|(_, at)| at).collect();
    let like = steps(set).map(|(result, [x, _])| {
        let like = set.baseline?.counterpart(set.set, result)?;
        Some([x, like.step?])
    });
    scene.readables.push(Readable {
        also: Vec::new(),
        of: set.of,
        name: String::new(),
        points: points.clone(),
        baseline: like.collect(),
    });
    scene.lines.push(Line {
        role,
        of: set.of,
        points,
    });
}
