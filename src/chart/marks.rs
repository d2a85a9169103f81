//! What diagrams over road speed have in common: the road speeds that are always wanted.

use super::axis::Along;
use super::scene::{Label, Place, Role, Rule, Scene};
use crate::project::Project;
use crate::units::mark_text;

/// Rules upright through the diagram at the marked road speeds, with their words at the foot.
pub(super) fn at_marked_road_speeds(scene: &mut Scene, project: &Project) {
    let units = project.units;
    for speed in project.marked_road_speeds.as_slice() {
        let at = units.from_kmh(speed.kmh());
        scene.rules.push(Rule {
            role: Role::Marked,
            along: Along::Y,
            at,
        });
        scene.labels.push(Label {
            text: format!("{} {}", mark_text(speed.kmh(), units), units.sign()),
            role: Role::Marked,
            of: None,
            at: [at, 0.0],
            place: Place::AtFoot,
        });
    }
}

/// What is said of every set, or that there is none to be seen.
pub(super) fn of_all_sets(spoken: impl Iterator<Item = String>) -> String {
    let spoken: Vec<String> = spoken.collect();
    if spoken.is_empty() {
        "no visible set".to_owned()
    } else {
        spoken.join("; ")
    }
}
