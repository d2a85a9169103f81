//! All that is strange about a document, in one list: from its gear sets, its engine and marks, its letters,
//! and from what engine and vehicle make of the sets where those are known.
//!
//! Whoever finds something keeps its figures; here is told where it is, its code and its sentence.

use super::motion::Motion;
use super::results::ProjectResults;
use crate::checks::CheckFinding;
use crate::gearing::{Finding, FindingKind, Name, engine_findings, mark_findings};
use crate::letters::first_lacking;
use crate::motion::{Asked, Grade, MotionFinding};
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

    fn of_checks(set: usize, finding: &CheckFinding) -> Self {
        Self {
            set: Some(set),
            gear: finding.gear.clone(),
            code: finding.kind.code(),
            sentence: finding.to_string(),
        }
    }

    fn of_motion(set: usize, finding: &MotionFinding) -> Self {
        Self {
            set: Some(set),
            gear: finding.gear.clone(),
            code: finding.kind.code(),
            sentence: finding.to_string(),
        }
    }
}

/// What is strange about each set once its engine runs.
pub(super) fn of_motion(project: &Project, motion: &Motion) -> Vec<Vec<MotionFinding>> {
    let sets = motion.sets.iter().map(|set| {
        let asked = Asked {
            vehicle: &set.vehicle,
            load: &motion.load,
            grade: project.technical.road.grade.unwrap_or(Grade::LEVEL),
            driving: &motion.driving,
            powertrain: &set.powertrain,
            beyond_redline: set.beyond_redline.as_ref(),
            limits: &project.engine,
            marked: project.marked_road_speeds.as_slice(),
            unit: project.units,
        };
        asked.findings()
    });
    sets.collect()
}

/// All findings, the vehicle's own first, then set by set; the others have those of each
/// set, or nothing.
pub(super) fn all(
    project: &Project,
    results: &ProjectResults,
    of_motion: &[Vec<MotionFinding>],
    of_checks: &[Vec<CheckFinding>],
) -> Vec<ProjectFinding> {
    let mut of_vehicle = engine_findings(&project.engine);
    of_vehicle.extend(mark_findings(project.marked_road_speeds.as_slice()));
    of_vehicle.extend(letter_findings(project));
    let of_vehicle = of_vehicle.iter().map(|f| ProjectFinding::new(None, f));
    let sets = results.sets.iter().enumerate();
    let of_sets = sets.flat_map(|(place, set)| {
        let of_gears = set.findings.iter();
        let of_gears = of_gears.map(move |f| ProjectFinding::new(Some(place), f));
        let of_motion = of_motion.get(place).into_iter().flatten();
        let of_checks = of_checks.get(place).into_iter().flatten();
        of_gears
            .chain(of_motion.map(move |f| ProjectFinding::of_motion(place, f)))
            .chain(of_checks.map(move |f| ProjectFinding::of_checks(place, f)))
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
