//! What follows from a project: the figures of every set, and all that is strange about them.

use crate::gearing::{Finding, SetResults, engine_findings, mark_findings};
use crate::project::Project;

/// The figures of every candidate, in their order.
#[derive(Debug, Clone, PartialEq)]
pub struct ProjectResults {
    /// One for each candidate.
    pub sets: Vec<SetResults>,
    /// What is strange whatever the set: about the engine's limits and the marked road speeds.
    pub vehicle_findings: Vec<Finding>,
}

impl ProjectResults {
    /// The figures of a project.
    pub fn of(project: &Project) -> Self {
        let candidates = project.sets.iter();
        let sets = candidates
            .map(|c| SetResults::of(&c.set, &project.tyre, &project.engine))
            .collect();
        let mut vehicle_findings = engine_findings(&project.engine);
        vehicle_findings.extend(mark_findings(project.marked_road_speeds.as_slice()));
        Self {
            sets,
            vehicle_findings,
        }
    }

    /// All findings, each with its set counted from 0, the vehicle's own first.
    pub fn findings(&self) -> impl Iterator<Item = (Option<usize>, &Finding)> {
        let of_vehicle = self.vehicle_findings.iter().map(|f| (None, f));
        let of_sets = self
            .sets
            .iter()
            .enumerate()
            .flat_map(|(at, set)| set.findings.iter().map(move |f| (Some(at), f)));
        of_vehicle.chain(of_sets)
    }
}
