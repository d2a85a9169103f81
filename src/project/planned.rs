//! For which sets the plan of what changes is filled in.

use super::document::{Candidate, Project, SetId};

impl Project {
    /// The visible sets for which something may change, in their order. What is fitted now is none of them, unless
    /// something is said for it or nothing else is visible.
    pub fn planned_sets(&self) -> Vec<&Candidate> {
        let visible: Vec<&Candidate> = self.sets.iter().filter(|set| set.visible).collect();
        if visible.len() < 2 {
            return visible;
        }
        let fitted = self.sets.baseline().id;
        let plan = self.workshop.plan.as_ref();
        let is_said = |set: SetId| plan.is_some_and(|plan| plan.says_of(set.into()));
        let may_change = |set: &&Candidate| set.id != fitted || is_said(set.id);
        visible.into_iter().filter(may_change).collect()
    }

    /// That set where the plan is filled in for it, else the first one of those.
    pub fn planned_set(&self, wanted: SetId) -> Option<&Candidate> {
        let sets = self.planned_sets();
        let chosen = sets.iter().find(|set| set.id == wanted);
        chosen.or_else(|| sets.first()).copied()
    }
}
