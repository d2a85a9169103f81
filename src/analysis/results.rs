//! What follows from the gear sets of a project: the figures of every set.

use super::depends::set_holds;
use crate::gearing::{OtherPosition, SetResults};
use crate::project::{Candidate, Project};
use std::sync::{Arc, OnceLock};

/// The figures of every candidate, in their order.
#[derive(Debug, Clone)]
pub struct ProjectResults {
    /// One for each candidate; shared with earlier results where it is the same.
    pub sets: Vec<Arc<SetResults>>,
    /// The figures of each in its other positions, once somebody has asked for them; shared with these.
    others: Vec<Others>,
}

type Others = Arc<OnceLock<Vec<OtherPosition>>>;

impl PartialEq for ProjectResults {
    /// What has not been asked for yet follows from the same.
    fn eq(&self, other: &Self) -> bool {
        self.sets == other.sets
    }
}

impl ProjectResults {
    /// The figures of a project.
    pub fn of(project: &Project) -> Self {
        Self::after(None, project)
    }

    /// The figures of a project, with those of an earlier one that still hold.
    pub(super) fn after(earlier: Option<(&Project, &Self)>, project: &Project) -> Self {
        let of_set = |candidate: &Candidate| {
            let held = earlier.and_then(|(of, results)| results.held(of, project, candidate));
            held.unwrap_or_else(|| {
                let (tyre, limits) = (&project.tyre, &project.engine);
                let results = SetResults::of(&candidate.set, tyre, limits);
                (Arc::new(results), Others::default())
            })
        };
        let (sets, others) = project.sets.iter().map(of_set).unzip();
        Self { sets, others }
    }

    /// Those of these figures, of a project, that are the figures of a set in `after` as well.
    fn held(
        &self,
        of: &Project,
        after: &Project,
        set: &Candidate,
    ) -> Option<(Arc<SetResults>, Others)> {
        let mut known = of.sets.iter().zip(self.sets.iter().zip(&self.others));
        let held = known.find(|(before, _)| set_holds((of, before), (after, set)));
        held.map(|(_, (results, others))| (Arc::clone(results), Arc::clone(others)))
    }

    /// The figures of a set of the project that these are of, in the other positions that it shows; the
    /// set by its place, counted from 0.
    pub fn other_positions(&self, project: &Project, place: usize) -> &[OtherPosition] {
        let set = project
            .sets
            .iter()
            .nth(place)
            .map(|candidate| &candidate.set);
        let Some((set, others)) = set.zip(self.others.get(place)) else {
            return &[];
        };
        others.get_or_init(|| OtherPosition::all(set, &project.tyre, &project.engine))
    }
}
