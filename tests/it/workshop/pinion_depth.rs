//! The depth of a pinion, from its seat to the head that stands as marked.

use crate::support::bench::{assert_says, filled, job, lines};
use layshaft::workshop::{Job, JobKind, JobState, LineKind};

/// A seat 130.00 from the axis: 130.00 − (100.00 + 0.05) − 28.50 leaves 1.45.
fn measured() -> Job {
    let fields = [
        ("seat", "130.01 129.99 130.00"),
        ("mounting", "100"),
        ("marking", "+0.05"),
        ("bearing", "28.5"),
        ("tolerance", "0.02"),
    ];
    job(JobKind::PinionDepth, &fields)
}

#[test]
fn a_pinion_is_measured_set_and_done_again() {
    let job = job(
        JobKind::PinionDepth,
        &[("mounting", "100"), ("marking", "0")],
    );
    let missing = "still missing: the axis to the bearing's seat, the height of the bearing";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, missing);
    assert_says(
        &measured(),
        JobState::ToMeasure,
        LineKind::Result,
        "the place takes 1.43 to 1.47 mm",
    );
    let job = filled(measured(), &[("sizes", "1.20 to 1.80 by 0.03")]);
    let take = "take 1.44 mm: 0.01 mm farther from the axis than marked";
    assert_says(&job, JobState::ToMeasure, LineKind::Result, take);
    let near = "with 1.47 mm it would be 0.02 mm nearer to the axis than marked";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, near);
    // It stands 0.05 too far with 1.44: 1.49 would be right, and 1.50 is nearest to that.
    let far = filled(job, &[("fitted", "1.44"), ("final_depth", "100.10")]);
    let says = "the pinion stands 0.05 mm farther from the axis than marked, not ±0.02 mm";
    assert_says(&far, JobState::ToChange, LineKind::Result, says);
    assert_says(&far, JobState::ToChange, LineKind::Said, "take 1.50 mm");
    let done = filled(far, &[("fitted", "1.50"), ("final_depth", "100.04")]);
    assert_says(
        &done,
        JobState::Done,
        LineKind::Result,
        "0.01 mm nearer to the axis than marked: within ±0.02",
    );
}

#[test]
fn a_thicker_shim_goes_where_the_pinion_stands_too_far() {
    let job = filled(measured(), &[("fitted", "1.44")]);
    let far = filled(job.clone(), &[("final_depth", "100.15")]);
    assert_says(
        &far,
        JobState::ToChange,
        LineKind::Said,
        "the place takes 1.52 to 1.56 mm",
    );
    let near = filled(job, &[("final_depth", "99.95")]);
    assert_says(
        &near,
        JobState::ToChange,
        LineKind::Said,
        "the place takes 1.32 to 1.36 mm",
    );
}

#[test]
fn a_marking_below_nothing_takes_more_shim() {
    let job = filled(measured(), &[("marking", "−0.05")]);
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Result,
        "the place takes 1.53 to 1.57 mm",
    );
}

#[test]
fn a_pinion_warns_of_what_is_no_measurement_scatters_or_has_no_shim() {
    let job = filled(measured(), &[("bearing", "30.5")]);
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Warning,
        "no shim is below 0 mm",
    );
    let job = filled(measured(), &[("most_spread", "0.005")]);
    let scatters = "the readings differ by 0.02 mm, more than 0.005: look at the gauge";
    assert_says(&job, JobState::ToMeasure, LineKind::Warning, scatters);
    let job = filled(measured(), &[("sizes", "1.30")]);
    assert_says(
        &job,
        JobState::ToChange,
        LineKind::Result,
        "none fits; the nearest is 1.30 mm",
    );
    let job = filled(measured(), &[("final_depth", "100.15")]);
    assert_says(
        &job,
        JobState::ToChange,
        LineKind::Said,
        "type what was built in",
    );
    assert!(lines(&job, LineKind::Warning).is_empty());
}
