//! What follows from a document: every figure computed when it is asked for, from what it depends
//! on.
//!
//! An [`Analysis`] follows a document from state to state. Nothing is computed while nobody looks,
//! nothing twice, and what an edit does not touch is carried over.

mod bench;
mod best_shifts;
mod checks;
mod depends;
mod findings;
mod motion;
mod results;
mod run;
mod speedometer;

pub use best_shifts::{BestShifts, Gain};
pub use checks::RoadChecks;
pub use findings::ProjectFinding;
pub use motion::{Motion, Needed, NoMotion, SetMotion};
pub use results::ProjectResults;
pub use run::{DISTANCES_M, QUARTER_MILE_M, RunQuestions, RunTime, SetRuns};
pub use speedometer::{SPEEDOMETER_SPEEDS_KMH, speed_verdict, speedometer_speeds};

use crate::checks::{CheckFinding, NoReading, ShownSpeed};
use crate::motion::MotionFinding;
use crate::project::{Candidates, Project};
use crate::workshop::Answer;
use std::cell::OnceCell;
use std::sync::Arc;

/// A document with all that follows from it. A clone shares what is computed already.
#[derive(Debug, Clone)]
pub struct Analysis {
    project: Arc<Project>,
    results: OnceCell<ProjectResults>,
    /// What was computed last, and of what: parts of it may hold for the present document.
    earlier: Option<(Arc<Project>, ProjectResults)>,
    motion: OnceCell<Result<Motion, NoMotion>>,
    /// What is strange about each set once its engine runs; nothing where it does not.
    motion_findings: OnceCell<Vec<Vec<MotionFinding>>>,
    findings: OnceCell<Vec<ProjectFinding>>,
    /// What the speedometer of each set shows.
    speedometers: OnceCell<Vec<Result<ShownSpeed, NoReading>>>,
    road_checks: OnceCell<Vec<RoadChecks>>,
    /// What each set should not be driven with.
    check_findings: OnceCell<Vec<Vec<CheckFinding>>>,
    /// What each job of the bench comes to.
    answers: OnceCell<Vec<Answer>>,
    /// What the jobs came to last, and of which document.
    earlier_answers: Option<(Arc<Project>, Vec<Answer>)>,
    /// Of each set, by its place.
    best_shifts: [OnceCell<Option<BestShifts>>; Candidates::MOST],
}

impl Analysis {
    /// What follows from a document.
    pub fn of(project: impl Into<Arc<Project>>) -> Self {
        Self {
            project: project.into(),
            results: OnceCell::new(),
            earlier: None,
            motion: OnceCell::new(),
            motion_findings: OnceCell::new(),
            findings: OnceCell::new(),
            speedometers: OnceCell::new(),
            road_checks: OnceCell::new(),
            check_findings: OnceCell::new(),
            answers: OnceCell::new(),
            earlier_answers: None,
            best_shifts: Default::default(),
        }
    }

    /// Goes on to the next state of the document, or to another one.
    ///
    /// The answer is whether diagrams and tables of the one before are those of this one.
    pub fn follow(&mut self, next: &Arc<Project>) -> bool {
        if Arc::ptr_eq(&self.project, next) {
            return true;
        }
        let before = std::mem::replace(&mut self.project, Arc::clone(next));
        let charts_hold = depends::charts_hold(&before, next);
        if before.workshop != next.workshop
            && let Some(answers) = self.answers.take()
        {
            self.earlier_answers = Some((Arc::clone(&before), answers));
        }
        // Title and note are no part of a chart, but have letters.
        self.findings = OnceCell::new();
        if !charts_hold {
            self.motion = OnceCell::new();
            self.speedometers = OnceCell::new();
            self.road_checks = OnceCell::new();
            if !depends::check_findings_hold(&before, next) {
                self.check_findings = OnceCell::new();
            }
            if !depends::motion_findings_hold(&before, next) {
                self.motion_findings = OnceCell::new();
            }
            self.best_shifts = Default::default();
            if let Some(results) = self.results.take() {
                self.earlier = Some((before, results));
            }
        }
        charts_hold
    }

    /// The document.
    pub fn project(&self) -> &Project {
        &self.project
    }

    /// The figures of every set.
    pub fn results(&self) -> &ProjectResults {
        self.results.get_or_init(|| {
            let earlier = self.earlier.as_ref();
            ProjectResults::after(earlier.map(|(of, results)| (&**of, results)), &self.project)
        })
    }
}

impl Analysis {
    /// All that is strange, the vehicle's own first, then set by set.
    pub fn findings(&self) -> &[ProjectFinding] {
        self.findings.get_or_init(|| {
            let of_motion = self.motion_findings.get_or_init(|| {
                let motion = self.motion();
                motion.map_or_else(|_| Vec::new(), |m| findings::of_motion(&self.project, m))
            });
            let of_checks = self.check_findings.get_or_init(|| {
                checks::findings(&self.project, self.motion().ok(), self.speedometers())
            });
            findings::all(&self.project, self.results(), of_motion, of_checks)
        })
    }

    /// What is strange about the set at that place, counted from 0.
    pub fn findings_of(&self, place: usize) -> impl Iterator<Item = &ProjectFinding> {
        let findings = self.findings().iter();
        findings.filter(move |finding| finding.set == Some(place))
    }

    /// Every set with its engine in its vehicle.
    ///
    /// # Errors
    /// When something is not known that it needs, or two figures contradict each other.
    pub fn motion(&self) -> Result<&Motion, &NoMotion> {
        let motion = self.motion.get_or_init(|| Motion::of(&self.project));
        motion.as_ref()
    }

    /// What the speedometer shows behind each set, in their order, or why that is not known.
    pub fn speedometers(&self) -> &[Result<ShownSpeed, NoReading>] {
        self.speedometers
            .get_or_init(|| speedometer::of_sets(&self.project))
    }

    /// What each job of the bench comes to, in their order.
    pub fn answers(&self) -> &[Answer] {
        let earlier = self.earlier_answers.as_ref();
        self.answers
            .get_or_init(|| bench::answers(earlier, &self.project))
    }

    /// What is checked of each set, in their order.
    pub fn road_checks(&self) -> &[RoadChecks] {
        self.road_checks.get_or_init(|| {
            RoadChecks::of_sets(&self.project, self.motion().ok(), self.speedometers())
        })
    }

    /// The best shift points of the set at that place, counted from 0, as one edit with what it gains; none
    /// where the set has them, where nothing can be timed, or something is not known.
    pub fn best_shifts(&self, place: usize) -> Option<&BestShifts> {
        let best = self.best_shifts.get(place)?.get_or_init(|| {
            let candidate = self.project.sets.iter().nth(place)?;
            BestShifts::of(&self.project, candidate, self.motion().ok()?, place)
        });
        best.as_ref()
    }
}

impl From<&Project> for Analysis {
    fn from(project: &Project) -> Self {
        Self::of(project.clone())
    }
}
