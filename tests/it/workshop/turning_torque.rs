//! The torque that keeps a shaft turning, try by try.

use crate::support::bench::{assert_says, filled, job, lines};
use layshaft::workshop::{Job, JobData, JobKind, JobState, LineKind, TurningTorqueData};

fn read(torque: &str, shim: &str) -> Job {
    let fields = [
        ("measuring", "a beam"),
        ("reading", torque),
        ("band", "1.5 to 2.5"),
        ("shim", shim),
    ];
    job(JobKind::TurningTorque, &fields)
}

fn data(job: &Job) -> &TurningTorqueData {
    match &job.data {
        JobData::TurningTorque(data) => data,
        data => panic!("{data:?}"),
    }
}

#[test]
fn a_torque_is_read_judged_and_done_after_two_tries() {
    let job = job(JobKind::TurningTorque, &[("pull", "30")]);
    let missing = "still missing: the radius of the drum";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, missing);
    let job = filled(job, &[("drum_radius", "40")]);
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Result,
        "the bearings turn at 1.2 N·m",
    );
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Said,
        "still missing: the maker's figure",
    );

    let loose = read("1.0", "1.10");
    assert_says(
        &loose,
        JobState::ToChange,
        LineKind::Result,
        "1 N·m: too loose for 1.5 to 2.5 N·m",
    );
    assert_says(
        &loose,
        JobState::ToChange,
        LineKind::Said,
        "keep two tries with different shims",
    );
    let kept = loose.keeping_try().unwrap();
    let tight = filled(kept, &[("reading", "3.0"), ("shim", "1.20")]);
    assert_says(
        &tight,
        JobState::ToChange,
        LineKind::Result,
        "3 N·m: too tight for",
    );
    let next = "next shim about 1.15 mm, by the line through the last two tries";
    assert_says(&tight, JobState::ToChange, LineKind::Result, next);
    assert_says(
        &tight,
        JobState::ToChange,
        LineKind::Said,
        "that is an estimate",
    );
    let within = filled(
        tight.keeping_try().unwrap(),
        &[("reading", "2.1"), ("shim", "1.15")],
    );
    assert_says(
        &within,
        JobState::Done,
        LineKind::Result,
        "2.1 N·m: within 1.5 to 2.5 N·m",
    );
    let reminds = "it counts while the shaft turns, not as it starts; US manuals call it preload";
    assert_says(&within, JobState::Done, LineKind::Said, reminds);
}

#[test]
fn a_try_is_kept_once_and_only_where_shim_and_torque_are_known() {
    let job = read("1.0", "1.10");
    assert!(filled(job.clone(), &[("shim", "")]).keeping_try().is_none());
    assert!(
        filled(job.clone(), &[("reading", "")])
            .keeping_try()
            .is_none()
    );
    let kept = job.keeping_try().unwrap();
    assert_eq!(kept.data.item_count(), 1);
    assert!(kept.keeping_try().is_none(), "twice the same");
    assert_eq!(data(&kept).known_tries().len(), 1);
    let again = filled(kept, &[("reading", "1.1")]);
    assert_eq!(data(&again).known_tries().len(), 2);
    assert_eq!(again.keeping_try().unwrap().data.item_count(), 2);
    for kind in JobKind::ALL {
        assert!(
            crate::support::bench::job(kind, &[])
                .keeping_try()
                .is_none()
        );
    }
}

#[test]
fn tries_on_paper_are_enough() {
    let fields = [
        ("band", "1.5 to 2.5"),
        ("shim 1", "1.10"),
        ("torque 1", "1.0"),
        ("date 1", "May 3"),
        ("note 1", "old bearing"),
        ("shim 2", "1.10"),
        ("torque 2", "1.1"),
        ("shim 3", "1.30"),
        ("torque 3", "3.1"),
    ];
    let job = job(JobKind::TurningTorque, &fields);
    let newest = "the bearings turn at 3.1 N·m by the newest try: too tight";
    assert_says(&job, JobState::ToChange, LineKind::Result, newest);
    // The line goes through the newest two with different shims.
    assert_says(
        &job,
        JobState::ToChange,
        LineKind::Result,
        "next shim about 1.19 mm",
    );
}

#[test]
fn which_way_the_shim_goes_hangs_on_its_seat() {
    for (seat, torque, way) in [
        ("behind", "1.0", "take a thicker shim: behind a race"),
        ("behind", "3.0", "take a thinner shim: behind a race"),
        ("under", "1.0", "take a thinner shim: under a cover"),
        ("under", "3.0", "take a thicker shim: under a cover"),
    ] {
        let job = filled(read(torque, "1.10"), &[("seat", seat)]);
        assert_says(&job, JobState::ToChange, LineKind::Said, way);
    }
}

#[test]
fn tries_against_the_seat_lead_to_no_shim() {
    let kept = read("1.0", "1.10").keeping_try().unwrap();
    let tight = filled(
        kept,
        &[("reading", "3.0"), ("shim", "1.20"), ("seat", "under")],
    );
    let against = "with the tighter one of the last two shims it turned no harder";
    assert_says(&tight, JobState::ToChange, LineKind::Warning, against);
    assert!(data(&tight).line().is_some() && data(&tight).next().is_none());
    let same = filled(tight.clone(), &[("reading", "0.9"), ("seat", "behind")]);
    assert_says(&same, JobState::ToChange, LineKind::Warning, against);
    // The shim was changed, and the shaft not turned yet.
    let waits = filled(tight, &[("reading", "1.0"), ("seat", "behind")]);
    let turn = "turn the shaft with the shim that is in now";
    assert_says(&waits, JobState::ToMeasure, LineKind::Result, turn);
    assert!(waits.keeping_try().is_none());
    let kept = read("3.0", "0.10").keeping_try().unwrap();
    let flat = filled(kept, &[("reading", "3.1"), ("shim", "0.20")]);
    let leads = "the line through the last two tries leads to no shim";
    assert_says(&flat, JobState::ToChange, LineKind::Warning, leads);
}

#[test]
fn seals_are_taken_off_only_where_the_figure_is_without_them() {
    let job = filled(read("3.0", "1.10"), &[("seals", "1")]);
    assert_says(
        &job,
        JobState::Done,
        LineKind::Result,
        "turn at 2 N·m: within",
    );
    let with_seals = filled(job, &[("figure", "with seals")]);
    assert_says(
        &with_seals,
        JobState::ToChange,
        LineKind::Result,
        "turn at 3 N·m: too tight",
    );
}

#[test]
fn used_bearings_are_compared_with_less_and_it_is_said() {
    let job = filled(
        read("1.0", "1.10"),
        &[("bearings", "used, and the figure is for new")],
    );
    assert_says(
        &job,
        JobState::Done,
        LineKind::Result,
        "turn at 1 N·m: within 0.6 to 1.5 N·m",
    );
    let says = "used bearings turn at 0.4 to 0.6 of what new ones do: 0.6 to 1.5 N·m is that much";
    assert_says(&job, JobState::Done, LineKind::Said, says);
    let used = filled(job, &[("bearings", "used, and the figure is for used")]);
    assert_says(
        &used,
        JobState::ToChange,
        LineKind::Result,
        "too loose for 1.5 to 2.5 N·m",
    );
    assert!(
        lines(&used, LineKind::Said)
            .iter()
            .all(|line| !line.contains("used bearings"))
    );
}

#[test]
fn more_taken_off_than_measured_is_no_measurement() {
    let job = filled(read("1.0", "1.10"), &[("before", "1.2")]);
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Warning,
        "cannot turn at −0.2 N·m",
    );
    assert!(job.keeping_try().is_none());
}

#[test]
fn an_adapter_needs_the_length_of_the_wrench() {
    let job = filled(read("2.0", "1.10"), &[("adapter", "50")]);
    let missing = "still missing: the length of the wrench";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, missing);
    let job = filled(job, &[("wrench", "250")]);
    assert_says(
        &job,
        JobState::Done,
        LineKind::Result,
        "turn at 2.4 N·m: within",
    );
}
