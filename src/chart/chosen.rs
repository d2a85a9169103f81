//! The sets that a diagram shows, each with its figures and what it is compared with.

use super::scene::{Owner, ShownSet};
use crate::analysis::ProjectResults;
use crate::gearing::{GearResult, OtherPosition, SetResults};
use crate::project::{Candidate, Project};
use std::sync::Arc;

/// A set that a diagram shows.
pub(super) struct ChosenSet<'a> {
    pub(super) candidate: &'a Candidate,
    pub(super) set: &'a SetResults,
    /// The set that it is compared with, shown or not.
    pub(super) baseline: Option<&'a SetResults>,
    /// The owner of all that is its own, and of no gear's.
    pub(super) of: Owner,
    project: &'a Project,
    results: &'a ProjectResults,
}

/// The visible sets of a project, in their order.
pub(super) fn visible_sets<'a>(
    project: &'a Project,
    results: &'a ProjectResults,
) -> Vec<ChosenSet<'a>> {
    let baseline_place = project.sets.baseline_place();
    let sets = project.sets.iter().zip(&results.sets).enumerate();
    let visible = sets.filter(|(_, (candidate, _))| candidate.visible);
    visible
        .map(|(place, (candidate, set))| ChosenSet {
            candidate,
            set,
            baseline: results
                .sets
                .get(baseline_place)
                .filter(|_| place != baseline_place)
                .map(Arc::as_ref),
            of: Owner {
                set: candidate.id,
                place,
                livery: candidate.livery,
                gear: None,
                other: None,
            },
            project,
            results,
        })
        .collect()
}

impl<'a> ChosenSet<'a> {
    /// Its figures in the other positions that it shows.
    pub(super) fn others(&self) -> &'a [OtherPosition] {
        self.results.other_positions(self.project, self.of.place)
    }

    /// The figures of its baseline in the position that is called so.
    pub(super) fn baseline_in(&self, position: &str) -> Option<&'a SetResults> {
        self.baseline?;
        let place = self.project.sets.baseline_place();
        let others = self.results.other_positions(self.project, place);
        let other = others.iter().find(|other| other.name == position);
        other.map(|other| &other.results)
    }

    /// How it stands in the scene.
    pub(super) fn shown(&self) -> ShownSet {
        ShownSet {
            id: self.of.set,
            livery: self.of.livery,
            name: self.candidate.set.name.to_string(),
        }
    }

    /// The owner of what is one gear's.
    pub(super) fn of_gear(&self, result: &GearResult) -> Owner {
        Owner {
            gear: Some(result.gear.id),
            ..self.of
        }
    }
}
