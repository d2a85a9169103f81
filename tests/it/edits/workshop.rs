//! The edits of the workshop: jobs that come, go and are worked on.

use super::{Case, start};
use layshaft::project::{Edit, Project, WorkshopEdit};
use layshaft::units::{BenchUnits, LengthUnit, TurningUnit};
use layshaft::workshop::{FieldKey, Job, JobId, JobKind, RowAnswer};

const JOB: JobId = JobId(1);

/// What stands in a field of the job, as it is spelled in the units of the bench.
fn text(project: &Project, name: &str) -> String {
    let job = project.workshop.job(JOB).unwrap();
    let rows = job.rows(project.workshop.units).into_iter();
    let row = rows.into_iter().find(|row| row.key.name == name);
    match row.map(|row| row.answer) {
        Some(RowAnswer::Typed(text)) => text,
        other => format!("{other:?}"),
    }
}

fn typed(name: &'static str, text: &str) -> Edit {
    let project = start();
    let job = project.workshop.job(JOB).unwrap();
    let key = FieldKey { name, item: None };
    at_bench(WorkshopEdit::Job(Box::new(
        job.with(key, text, project.workshop.units).unwrap(),
    )))
}

fn at_bench(edit: WorkshopEdit) -> Edit {
    Edit::Workshop(edit)
}

pub(super) fn workshop() -> Vec<Case> {
    let mut cases = vec![
        Case {
            edit: at_bench(WorkshopEdit::Units(BenchUnits {
                length: LengthUnit::Inch,
                torque: TurningUnit::PoundInch,
            })),
            shows: |p| {
                text(p, "trial") == "0.020" && p.workshop.units.torque == TurningUnit::PoundInch
            },
        },
        Case {
            edit: at_bench(WorkshopEdit::RemoveJob(JOB)),
            shows: |p| p.workshop.jobs().is_empty(),
        },
        Case {
            edit: typed("name", "output shaft"),
            shows: |p| text(p, "name") == "output shaft",
        },
        Case {
            edit: typed("play", "12 13 thou"),
            shows: |p| text(p, "play") == "0.3048 0.3302",
        },
    ];
    cases.extend(JobKind::ALL.map(|kind| Case {
        edit: at_bench(WorkshopEdit::AddJob(Box::new(kind.begun()))),
        shows: |p| p.workshop.jobs().len() == 2 && p.workshop.job(JobId(2)).is_some(),
    }));
    cases
}

#[test]
fn a_job_that_is_gone_is_not_changed() {
    let gone = at_bench(WorkshopEdit::RemoveJob(JOB))
        .applied_to(&start())
        .unwrap();
    let error = typed("trial", "0.7").applied_to(&gone).unwrap_err();
    assert_eq!(error.to_string(), "that job is not there any more");
    assert!(
        at_bench(WorkshopEdit::RemoveJob(JobId(7)))
            .applied_to(&start())
            .is_err()
    );
}

#[test]
fn what_of_a_job_was_changed_is_called_by_its_figure() {
    let mut history = layshaft::project::History::new(start());
    history.edit(&typed("trial", "0.7")).unwrap();
    let words = super::undo_words(&history);
    assert_eq!(words, "Trial shim, mm, input shaft: 0.70");
}

#[test]
fn a_field_is_typed_in_its_own_job_alone() {
    let job: Job = start().workshop.job(JOB).unwrap().clone();
    let key = |name, item| FieldKey { name, item };
    let units = BenchUnits::default();
    assert!(job.with(key("no_such", None), "1", units).is_err());
    assert!(job.with(key("play", Some(0)), "1", units).is_err());
    assert!(job.choosing(key("trial", None), 0).is_none());
    assert!(job.with_item().is_none() && job.without_item(0).is_none());
}
