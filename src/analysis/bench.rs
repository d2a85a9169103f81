//! What the jobs of the bench come to, each worked out once for each change of it.

use crate::project::Project;
use crate::workshop::Answer;

/// The answers to all jobs in their order; what `earlier` has of a job that is the same is taken over.
pub(super) fn answers(
    earlier: Option<&(impl AsRef<Project>, Vec<Answer>)>,
    project: &Project,
) -> Vec<Answer> {
    let workshop = &project.workshop;
    let known = |at: &crate::workshop::Job| {
        let (before, answers) = earlier?;
        let before = &before.as_ref().workshop;
        let place = before.jobs().iter().position(|job| job == at)?;
        (before.units == workshop.units).then(|| answers.get(place).cloned())?
    };
    let jobs = workshop.jobs().iter();
    jobs.map(|job| known(job).unwrap_or_else(|| job.answer(workshop.units)))
        .collect()
}
