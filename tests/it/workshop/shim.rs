//! A shim for an end play or a preload, from the first reading to the last.

use crate::support::bench::{assert_says, filled, job, lines};
use layshaft::workshop::{Job, JobKind, JobState, LineKind};

fn measured(seat: &str, play: &str, setting: &str) -> Job {
    let fields = [
        ("seat", seat),
        ("trial", "0.65"),
        ("play", play),
        ("setting", setting),
    ];
    job(JobKind::Shim, &fields)
}

#[test]
fn a_shim_is_measured_chosen_built_in_and_done_again() {
    let job = job(JobKind::Shim, &[("trial", "0.65")]);
    let missing = "still missing: the play with it, the wanted setting";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, missing);
    let job = measured("behind", "0.30", "clearance 0.05 to 0.10");
    let takes = "the place takes 0.85 to 0.90 mm for clearance 0.05 to 0.10 mm";
    assert_says(&job, JobState::ToMeasure, LineKind::Result, takes);
    let job = filled(job, &[("sizes", "0.65 to 1.40 by 0.05")]);
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Result,
        "take 0.85 mm: clearance 0.10 mm",
    );
    let loose = filled(job.clone(), &[("fitted", "0.85"), ("final_play", "0.12")]);
    assert_says(
        &loose,
        JobState::ToChange,
        LineKind::Said,
        "take 0.90 mm: clearance 0.07 mm",
    );
    let done = filled(loose, &[("fitted", "0.90"), ("final_play", "0.07")]);
    assert_says(
        &done,
        JobState::Done,
        LineKind::Result,
        "within clearance 0.05 to 0.10 mm",
    );
}

#[test]
fn no_play_left_is_preload_only_as_far_as_the_readings_say_so() {
    let job = measured("behind", "0.30", "preload 0.15 to 0.20");
    let with = |fitted, play| filled(job.clone(), &[("fitted", fitted), ("final_play", play)]);
    // Trial 0.65 and play 0.30: 1.12 is a preload of 0.17, 1.40 one of 0.45.
    assert_says(
        &with("1.12", "0"),
        JobState::Done,
        LineKind::Result,
        "no play is left; by the readings it is preload 0.17 mm",
    );
    assert_says(
        &with("1.40", "0"),
        JobState::ToChange,
        LineKind::Result,
        "by the readings before it is preload 0.45 mm, not preload 0.15 to 0.20 mm",
    );
    assert_says(
        &with("1.12", "0.08"),
        JobState::ToChange,
        LineKind::Warning,
        "by the readings before, it should have preload 0.17 mm",
    );
}

#[test]
fn a_reading_below_nothing_or_far_from_the_others_is_told() {
    let job = measured("behind", "-0.30 0.31 0.29", "clearance 0.05 to 0.10");
    let below = "-0.30 mm is below 0, and no play is";
    let below = below.replace('-', "−");
    assert_says(&job, JobState::ToMeasure, LineKind::Warning, &below);
    let job = measured("behind", "0.30 1.52 0.31", "clearance 0.05 to 0.10");
    let far = "1.52 mm lies far from the other readings";
    assert_says(&job, JobState::ToMeasure, LineKind::Warning, far);
    let job = measured("behind", "0.30 0.36 0.24", "clearance 0.05 to 0.10");
    let job = filled(job, &[("sizes", "0.85 0.90")]);
    assert!(
        lines(&job, LineKind::Warning)
            .iter()
            .all(|line| !line.contains("far"))
    );
}

#[test]
fn a_shim_warns_of_what_is_no_measurement_scatters_or_may_lie_outside() {
    let job = measured("under", "1.30", "preload 0.10");
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Warning,
        "no shim is below 0 mm",
    );
    let job = measured("behind", "0.30 0.36 0.24", "clearance 0.05 to 0.10");
    let job = filled(job, &[("most_spread", "0.02"), ("sizes", "0.85")]);
    let scatters = "the readings differ by 0.12 mm, more than 0.02: seat the bearings";
    assert_says(&job, JobState::ToMeasure, LineKind::Warning, scatters);
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Warning,
        "may carry the setting outside",
    );
    let again = filled(job.clone(), &[("fitted", "0.85"), ("final_play", "0.07")]);
    assert!(
        lines(&again, LineKind::Warning).is_empty(),
        "measured again"
    );
    let job = filled(job, &[("sizes", "0.30")]);
    let none = "none fits; the nearest is 0.30 mm: clearance 0.65 mm";
    assert_says(&job, JobState::ToChange, LineKind::Result, none);
}
