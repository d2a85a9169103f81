//! What a change of the workshop is called.

use super::{Named, named_part, optional};
use crate::gearing::quoted;
use crate::project::document::Project;
use crate::project::technical::Words;
use crate::project::workshop_edits::WorkshopEdit;
use crate::project::workshop_words::{bench_units_words, job_words};
use crate::workshop::Job;

/// A change of the workshop in words.
pub(super) fn named_at_bench(edit: &WorkshopEdit, both: [&Project; 2]) -> Named {
    let [before, after] = both;
    match edit {
        WorkshopEdit::Units(_) => Named::figure(
            "units of the bench",
            both.map(|p| bench_units_words(p.workshop.units)),
        ),
        WorkshopEdit::AddJob(_) => {
            let job = after.workshop.jobs().last();
            Named::thing("new job", optional(job.map(Job::title)))
        }
        WorkshopEdit::RemoveJob(id) => {
            let job = before.workshop.job(*id);
            Named::thing("removed job", optional(job.map(Job::title)))
        }
        WorkshopEdit::Job(job) => named_job(job, both),
    }
}

/// What of a job is another, with the name that the job has.
fn named_job(job: &Job, both: [&Project; 2]) -> Named {
    let units = both[1].workshop.units;
    let title = both[0].workshop.job(job.id).map_or("", Job::title);
    let mut named = named_part("job", both, |project| {
        let job = project.workshop.job(job.id);
        job.map_or_else(Words::new, |job| job_words(job, units))
    });
    named.what = format!("{}, {}", named.what, quoted(title));
    named
}
