//! All that is strange about a document, in one list: from its gear sets, its engine and marks, its letters.
//!
//! Whoever finds something keeps its figures; here is told where it is, its code and its sentence.

use super::results::ProjectResults;
use crate::gearing::{Finding, FindingKind, Name, engine_findings, mark_findings};
use crate::letters::first_lacking;
use crate::project::Project;
use std::fmt;

/// Something valid but strange, as it is told; as text its sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProjectFinding {
    /// The place of its set, counted from 0; none where it is about the vehicle, whatever the set.
    pub set: Option<usize>,
    /// The label of the gear it is about; none where it is about the whole set or vehicle.
    pub gear: Option<String>,
    /// Its kind's name in machine-readable output.
    pub code: &'static str,
    /// Its sentence, without a full stop.
    pub sentence: String,
}

impl fmt::Display for ProjectFinding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.sentence)
    }
}

impl ProjectFinding {
    fn new(set: Option<usize>, finding: &Finding) -> Self {
        Self {
            set,
            gear: finding.gear.clone(),
            code: finding.kind.code(),
            sentence: finding.to_string(),
        }
    }
}

/// All findings, the vehicle's own first, then set by set.
pub(super) fn all(project: &Project, results: &ProjectResults) -> Vec<ProjectFinding> {
    let mut of_vehicle = engine_findings(&project.engine);
    of_vehicle.extend(mark_findings(project.marked_road_speeds.as_slice()));
    of_vehicle.extend(letter_findings(project));
    let of_vehicle = of_vehicle.iter().map(|f| ProjectFinding::new(None, f));
    let sets = results.sets.iter().enumerate();
    let of_sets = sets.flat_map(|(place, set)| {
        let findings = set.findings.iter();
        findings.map(move |f| ProjectFinding::new(Some(place), f))
    });
    of_vehicle.chain(of_sets).collect()
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
