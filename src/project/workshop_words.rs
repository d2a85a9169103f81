//! What stands in the jobs of the bench, in a few words and a value each: for histories and comparisons.

use super::document::Project;
use super::plan_words::plan_words;
use super::technical::Words;
use crate::units::BenchUnits;
use crate::workshop::{Job, Workshop};

/// The units of a bench in words.
pub(super) fn bench_units_words(units: BenchUnits) -> String {
    format!("{} and {}", units.length.sign(), units.torque.sign())
}

/// All that is typed and chosen of a job, in these units.
pub(super) fn job_words(job: &Job, units: BenchUnits) -> Words {
    let name = job.data.item_name().unwrap_or_default();
    let rows = job.rows(units).into_iter();
    let words = rows.map(|row| {
        let what = match row.key.item {
            Some(at) => format!("{}, {name} {}", row.name, at + 1),
            None => row.name,
        };
        (what, row.answer.text().to_owned())
    });
    words.filter(|(_, value)| !value.is_empty()).collect()
}

/// The whole workshop: its units, the plan, and every job by its place.
pub(super) fn workshop_words(project: &Project, units: BenchUnits) -> Words {
    let workshop = &project.workshop;
    let mut words = Words::new();
    if *workshop != Workshop::default() {
        let own = bench_units_words(workshop.units);
        words.push(("units of the bench".to_owned(), own));
    }
    words.extend(plan_words(project));
    for (number, job) in (1..).zip(workshop.jobs()) {
        let kind = job.data.kind().words().to_owned();
        words.push((format!("job {number}"), kind));
        let own = job_words(job, units).into_iter();
        words.extend(own.map(|(what, value)| (format!("job {number}, {what}"), value)));
    }
    words
}
