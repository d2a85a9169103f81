//! What every kind of job has alike.

use crate::support::bench::{filled, job, state, text_of};
use layshaft::units::{BenchUnits, TurningUnit};
use layshaft::workshop::{FieldKey, Job, JobKind, JobState, LineKind, RowAnswer};

#[test]
fn a_job_of_which_nothing_is_typed_is_open_and_says_what_it_needs() {
    for kind in JobKind::ALL {
        let begun = job(kind, &[]);
        let answer = begun.answer(BenchUnits::default());
        assert_eq!(answer.state, JobState::Open, "{kind:?}");
        let has_list_alone = kind == JobKind::Limits;
        let says = answer
            .lines
            .iter()
            .any(|line| line.text.starts_with("still missing: "));
        assert!(says || has_list_alone, "{kind:?}: {answer:?}");
        assert!(answer.lines.iter().all(|line| line.kind == LineKind::Said));
        assert_eq!(begun.title(), kind.words());
        assert!(kind.meaning().len() > kind.words().len());
    }
}

#[test]
fn what_is_chosen_alone_leaves_a_job_open() {
    let chosen: [(JobKind, &[(&str, &str)]); 6] = [
        (JobKind::Shim, &[("seat", "under")]),
        (JobKind::SideBearings, &[("rate_by", "the angles")]),
        (
            JobKind::TurningTorque,
            &[
                ("measuring", "a beam"),
                ("bearings", "used"),
                ("seat", "under"),
            ],
        ),
        (JobKind::Heat, &[("arrangement", "back"), ("case", "steel")]),
        (
            JobKind::Fit,
            &[("side", "a bore"), ("part", "a part"), ("case", "steel")],
        ),
        (
            JobKind::Journal,
            &[("splines", "yes"), ("seal", "yes"), ("finish", "turned")],
        ),
    ];
    for (kind, fields) in chosen {
        assert_eq!(state(&job(kind, fields)), JobState::Open, "{kind:?}");
    }
}

/// So many characters of a name are seen in the form.
const NAME: usize = 31;

#[test]
fn the_name_of_every_field_is_short_enough_for_the_form() {
    for kind in JobKind::ALL {
        let begun = job(kind, &[]);
        let mut jobs = vec![begun.with_item().unwrap_or_else(|| begun.clone())];
        for row in begun.rows(BenchUnits::default()) {
            let options = match &row.answer {
                RowAnswer::Typed(_) => 0,
                RowAnswer::Chosen { options, .. } => options.len(),
            };
            jobs.extend((0..options).map(|option| begun.choosing(row.key, option).unwrap()));
        }
        let units = BenchUnits {
            torque: TurningUnit::KilogramForceCentimetre,
            ..BenchUnits::default()
        };
        for row in jobs.iter().flat_map(|job| job.rows(units)) {
            assert!(row.name.chars().count() <= NAME, "{kind:?}: {}", row.name);
        }
    }
}

#[test]
fn an_item_has_a_name_of_its_own_beside_that_of_the_job() {
    let job = filled(
        job(JobKind::Limits, &[]),
        &[("name", "gaps"), ("name 1", "2nd")],
    );
    assert_eq!(job.title(), "gaps");
    let key = |item| FieldKey { name: "name", item };
    assert_eq!(text_of(&job, key(Some(0)), BenchUnits::default()), "2nd");
    assert_eq!(text_of(&job, key(None), BenchUnits::default()), "gaps");
}

#[test]
fn items_come_and_go_up_to_as_many_as_can_be() {
    let mut job = job(
        JobKind::Limits,
        &[("name 1", "first"), ("name 2", "second")],
    );
    let second = job.without_item(0).unwrap();
    let key = FieldKey {
        name: "name",
        item: Some(0),
    };
    assert_eq!(text_of(&second, key, BenchUnits::default()), "second");
    assert!(second.without_item(1).is_none());
    while let Some(more) = job.with_item() {
        job = more;
    }
    assert_eq!(job.data.item_count(), Job::MOST_ITEMS);
}
