//! What heat makes of an end play, and when that is too much or too little.

use crate::support::bench::{assert_says, filled, job, lines};
use layshaft::workshop::{Job, JobKind, JobState, LineKind};

fn warmed(setting: &str) -> Job {
    let fields = [
        ("seats", "150"),
        ("bench_temperature", "20"),
        ("case_temperature", "80"),
        ("shaft_temperature", "80"),
        ("bench", setting),
    ];
    job(JobKind::Heat, &fields)
}

#[test]
fn an_end_play_grows_within_what_it_may_be() {
    let job = job(JobKind::Heat, &[("seats", "150"), ("case", "another")]);
    let missing = "still missing: the expansion of the case, the temperature at the bench";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, missing);
    let change = "the end play (end float) grows by 0.099 mm";
    let open = warmed("");
    assert_says(&open, JobState::ToMeasure, LineKind::Result, change);
    let job = warmed("clearance 0.05 to 0.10");
    let running = "when it runs: clearance 0.149 to 0.199 mm";
    assert_says(&job, JobState::Done, LineKind::Result, running);
    assert_says(&job, JobState::Done, LineKind::Said, change);
    assert!(lines(&job, LineKind::Warning).is_empty());
    let job = filled(job, &[("most", "0.18")]);
    let beyond = "when it runs there is more end play than 0.18 mm";
    assert_says(&job, JobState::ToChange, LineKind::Warning, beyond);
}

#[test]
fn a_clearance_that_becomes_preload_is_warned_of() {
    let job = filled(warmed("clearance 0.05 to 0.10"), &[("arrangement", "back")]);
    let says = "when it runs: preload 0.049 to clearance 0.001 mm";
    assert_says(&job, JobState::ToChange, LineKind::Result, says);
    let becomes = "the clearance of the bench becomes preload when it runs";
    assert_says(&job, JobState::ToChange, LineKind::Warning, becomes);
    // A winter's start: the aluminium case shrinks on its shaft.
    let cold = [("case_temperature", "−20"), ("shaft_temperature", "−4 °F")];
    let cold = filled(warmed("clearance 0.05"), &cold);
    assert_says(
        &cold,
        JobState::ToChange,
        LineKind::Result,
        "when it runs: preload 0.016 mm",
    );
}

#[test]
fn a_preload_that_is_lost_is_told_and_left_to_the_maker() {
    let job = warmed("preload 0.05");
    assert_says(
        &job,
        JobState::Done,
        LineKind::Result,
        "when it runs: clearance 0.049 mm",
    );
    assert_says(
        &job,
        JobState::Done,
        LineKind::Warning,
        "preload of the bench is lost",
    );
}

#[test]
fn temperatures_and_lengths_that_no_gearbox_has_are_told() {
    let job = filled(
        warmed("preload 0.05"),
        &[("bench_temperature", "300"), ("case_temperature", "-60")],
    );
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Warning,
        "a temperature rise must be between",
    );
    let job = filled(
        warmed("preload 0.05"),
        &[
            ("seats", "2000"),
            ("case", "another"),
            ("case_expansion", "90"),
            ("bench_temperature", "-20"),
        ],
    );
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Warning,
        "more than any setting",
    );
}
