//! What a change of the workshop is called.

use super::{Named, named_part, optional, place_of};
use crate::gearing::quoted;
use crate::project::document::Project;
use crate::project::plan_words::{currency_words, entry_words, plan_size_words, struck_words};
use crate::project::technical::Words;
use crate::project::workshop_edits::WorkshopEdit;
use crate::project::workshop_words::{bench_units_words, job_words};
use crate::workshop::{Job, Part, PartId, Plan};

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
        WorkshopEdit::Plan(_) => {
            let sizes = plans(both).map(plan_size_words);
            Named::figure("plan of what changes", sizes)
        }
        WorkshopEdit::Currency(_) => {
            let signs = plans(both).map(currency_words);
            Named::figure("currency of the plan", signs)
        }
        WorkshopEdit::AddPart(name) => Named::thing("new part", name),
        WorkshopEdit::RemovePart(id) => {
            let part = part_of(before, *id);
            Named::thing("removed part", optional(part.map(|part| &part.name)))
        }
        WorkshopEdit::Part(part) => named_plan_part(part.id, both),
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

fn plans(both: [&Project; 2]) -> [Option<&Plan>; 2] {
    both.map(|project| project.workshop.plan.as_ref())
}

fn part_of(project: &Project, id: PartId) -> Option<&Part> {
    project.workshop.plan.as_ref()?.part(id)
}

/// What of a part of the plan is another: its name, whether it is struck, or what becomes of it for a set.
fn named_plan_part(id: PartId, both: [&Project; 2]) -> Named {
    let [Some(before), Some(after)] = both.map(|project| part_of(project, id)) else {
        return Named::plain("part of the plan");
    };
    let parts = [before, after];
    if before.name != after.name {
        return Named::figure("part", parts.map(|part| &part.name));
    }
    let name = quoted(after.name.as_str());
    if before.is_struck != after.is_struck {
        return Named::figure(name, parts.map(struck_words));
    }
    let sets = &both[1].sets;
    let changed = sets
        .iter()
        .find(|set| before.of(set.id.into()) != after.of(set.id.into()));
    let Some(set) = changed else {
        return Named::thing("part", name);
    };
    let named = named_part(&name, both, |project| {
        let part = part_of(project, id);
        part.map_or_else(Words::new, |part| {
            entry_words(part.of(set.id.into()), &name)
        })
    });
    named.of_set(place_of(sets, set.id))
}
