//! What was measured against limits, the worst first.

use crate::support::bench::{answer, assert_says, filled, job};
use layshaft::workshop::{JobKind, JobState, LineKind};

#[test]
fn the_worst_stands_first_and_gives_the_state() {
    let fields = [
        ("name 1", "float of 3rd gear"),
        ("readings 1", "0.20"),
        ("least 1", "0.10"),
        ("most 1", "0.35"),
        ("name 2", "synchroniser gap 2nd"),
        ("readings 2", "0.95 0.85 1.00"),
        ("least 2", "0.80"),
    ];
    let job = job(JobKind::Limits, &fields);
    let texts: Vec<String> = answer(&job)
        .lines
        .into_iter()
        .map(|line| line.text)
        .collect();
    assert_eq!(
        texts,
        [
            "2 of 2 measured within limits",
            "synchroniser gap 2nd: 0.85 mm, 0.05 left to the least, 0.80",
            "float of 3rd gear: 0.20 mm, 0.10 left to the least, 0.10",
        ]
    );
    assert_says(&job, JobState::Done, LineKind::Said, "synchroniser gap 2nd");
    let job = filled(job, &[("readings 3", "0.06"), ("most 3", "0.05")]);
    let beyond = "measurement 3: 0.06 mm, 0.01 above the most, 0.05";
    assert_says(&job, JobState::ToChange, LineKind::Warning, beyond);
    assert_says(
        &job,
        JobState::ToChange,
        LineKind::Result,
        "1 of 3 measured beyond its limit",
    );
    assert_eq!(answer(&job).lines[1].text, beyond);
    let job = filled(job, &[("readings 1", "0.05")]);
    let below = "float of 3rd gear: 0.05 mm, 0.05 below the least, 0.10";
    assert_says(&job, JobState::ToChange, LineKind::Warning, below);
}

#[test]
fn a_reading_on_its_limit_is_within() {
    let job = job(
        JobKind::Limits,
        &[("readings 1", "0.05"), ("most 1", "0.05")],
    );
    assert_says(
        &job,
        JobState::Done,
        LineKind::Said,
        "0.00 left to the most",
    );
}

#[test]
fn what_is_missing_is_still_to_be_measured() {
    let job = job(JobKind::Limits, &[("name 1", "fork"), ("least 1", "4.8")]);
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Said,
        "fork: still missing: what was read",
    );
    let job = filled(job, &[("readings 2", "1")]);
    let missing = "measurement 2: still missing: the least or the most";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, missing);
    let job = filled(
        job,
        &[("readings 1", "5"), ("least 2", "2"), ("most 2", "1")],
    );
    let turned = "measurement 2: its least is above its most";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, turned);
}
