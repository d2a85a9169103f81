//! What follows from a project: the figures of every set, and all that is strange about them.

use super::depends::set_holds;
use crate::gearing::{
    Finding, FindingKind, Name, OtherPosition, SetResults, engine_findings, mark_findings,
};
use crate::letters::first_lacking;
use crate::project::{Candidate, Project};
use std::sync::{Arc, OnceLock};

/// The figures of every candidate, in their order.
#[derive(Debug, Clone)]
pub struct ProjectResults {
    /// One for each candidate; shared with earlier results where it is the same.
    pub sets: Vec<Arc<SetResults>>,
    /// The figures of each in its other positions, once somebody has asked for them; shared with these.
    others: Vec<Others>,
    /// What is strange whatever the set: about the engine's limits and the marked road speeds.
    pub vehicle_findings: Vec<Finding>,
}

type Others = Arc<OnceLock<Vec<OtherPosition>>>;

impl PartialEq for ProjectResults {
    /// What has not been asked for yet follows from the same.
    fn eq(&self, other: &Self) -> bool {
        self.sets == other.sets && self.vehicle_findings == other.vehicle_findings
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
        let mut vehicle_findings = engine_findings(&project.engine);
        vehicle_findings.extend(mark_findings(project.marked_road_speeds.as_slice()));
        vehicle_findings.extend(letter_findings(project));
        Self {
            sets,
            others,
            vehicle_findings,
        }
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

/// What is typed with letters that the program cannot write.
fn letter_findings(project: &Project) -> Vec<Finding> {
    let mut texts: Vec<&str> = vec![project.note.as_str()];
    texts.extend(project.title.iter().chain(&project.date).map(Name::as_str));
    for set in project.sets.iter().map(|candidate| &candidate.set) {
        texts.push(set.name.as_str());
        texts.extend(set.gears.iter().map(|gear| gear.label.as_str()));
        for stage in &set.stages {
            texts.push(stage.name.as_str());
            texts.extend(stage.positions.iter().map(|p| p.name.as_str()));
        }
    }
    let lacking = texts.into_iter().filter_map(|text| {
        let letter = first_lacking(text)?;
        let text = text.to_owned();
        let kind = FindingKind::LetterLacking { letter, text };
        Some(Finding { gear: None, kind })
    });
    lacking.collect()
}
