//! The side bearings of a differential, from the split to the backlash that is wanted.

use crate::support::bench::{assert_says, filled, job, lines};
use layshaft::workshop::{Job, JobKind, JobState, LineKind};

fn split() -> Job {
    let fields = [
        ("whole", "1.80"),
        ("to_mesh", "1.05"),
        ("allowance", "0.10"),
    ];
    job(JobKind::SideBearings, &fields)
}

fn read(backlash: &str) -> Job {
    filled(
        split(),
        &[("backlash", backlash), ("wanted", "0.13 to 0.18")],
    )
}

#[test]
fn the_shims_are_split_moved_and_done() {
    let job = job(JobKind::SideBearings, &[("whole", "1.80")]);
    let missing = "still missing: the travel to full mesh, the allowance";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, missing);
    let sides = "ring gear's side 1.05 mm, other side 0.85 mm";
    assert_says(&split(), JobState::ToMeasure, LineKind::Result, sides);
    // 0.215 is 0.06 above the middle: at 0.6 that is 0.10 of shim.
    let wide = read("0.21 0.22 0.215");
    let moved = "move 0.10 mm from the other side to the ring gear's";
    assert_says(&wide, JobState::ToChange, LineKind::Result, moved);
    let then = "then ring gear's side 1.15 mm, other side 0.75 mm";
    assert_says(&wide, JobState::ToChange, LineKind::Said, then);
    assert_says(
        &wide,
        JobState::ToChange,
        LineKind::Said,
        "too wide, wanted is 0.13 to 0.18 mm",
    );
    assert_says(
        &wide,
        JobState::ToChange,
        LineKind::Said,
        "reckoned with 0.6 mm",
    );
    let narrow = read("0.10 0.09 0.095");
    let moved = "move 0.10 mm from the ring gear's side to the other";
    assert_says(&narrow, JobState::ToChange, LineKind::Result, moved);
    let done = read("0.15 0.16 0.14");
    assert_says(
        &done,
        JobState::Done,
        LineKind::Result,
        "backlash 0.15 mm: within 0.13 to 0.18 mm",
    );
    assert_says(
        &done,
        JobState::Done,
        LineKind::Said,
        "it varies by 0.02 mm round the ring gear",
    );
}

#[test]
fn what_is_fitted_counts_before_the_travel() {
    let job = filled(read("0.21 0.22 0.215"), &[("ring_gear_fitted", "1.20")]);
    let missing = "still missing: the shims on the other side";
    assert_says(&job, JobState::ToMeasure, LineKind::Said, missing);
    let job = filled(job, &[("other_fitted", "0.70")]);
    let then = "then ring gear's side 1.30 mm, other side 0.60 mm";
    assert_says(&job, JobState::ToChange, LineKind::Said, then);
}

#[test]
fn two_readings_round_the_ring_are_too_few() {
    let missing = "still missing: the backlash at three places round the ring gear at least";
    assert_says(
        &read("0.15 0.15"),
        JobState::ToMeasure,
        LineKind::Said,
        missing,
    );
}

#[test]
fn a_backlash_that_varies_is_no_matter_of_shims() {
    let job = filled(read("0.13 0.18 0.15"), &[("most_variation", "0.04")]);
    let varies = "the backlash varies by 0.05 mm round the ring gear, more than 0.04";
    assert_says(&job, JobState::ToChange, LineKind::Warning, varies);
    let job = filled(job, &[("most_variation", "0.05")]);
    assert_says(&job, JobState::Done, LineKind::Result, "within");
}

#[test]
fn preload_comes_off_either_side_and_backlash_goes_along() {
    let job = filled(read("0.15 0.16 0.14"), &[("preload_off", "0.08")]);
    assert_says(
        &job,
        JobState::ToChange,
        LineKind::Result,
        "take 0.04 mm off either side",
    );
    let then = "then ring gear's side 1.01 mm, other side 0.81 mm";
    assert_says(&job, JobState::ToChange, LineKind::Said, then);
    let job = filled(read("0.21 0.22 0.215"), &[("preload_off", "0.08")]);
    let both =
        "move 0.10 mm from the other side to the ring gear's, and take 0.04 mm off either side";
    assert_says(&job, JobState::ToChange, LineKind::Result, both);
    let then = "then ring gear's side 1.11 mm, other side 0.71 mm";
    assert_says(&job, JobState::ToChange, LineKind::Said, then);
    let job = filled(job, &[("preload_off", "0"), ("backlash", "0.15 0.15 0.15")]);
    assert_says(&job, JobState::Done, LineKind::Result, "within");
}

#[test]
fn the_rate_is_typed_or_follows_from_the_angles() {
    let wide = filled(read("0.21 0.22 0.215"), &[("rate", "0.8")]);
    assert_says(&wide, JobState::ToChange, LineKind::Result, "move 0.075 mm");
    assert!(
        lines(&wide, LineKind::Said)
            .iter()
            .all(|line| !line.contains("reckoned with"))
    );
    let angles = filled(wide, &[("rate_by", "the angles"), ("pressure_angle", "20")]);
    assert_says(
        &angles,
        JobState::ToChange,
        LineKind::Said,
        "type both angles",
    );
    // From memory: 2 tan 20° sin 75° → 0.703 (derived): 0.06 ÷ 0.703.
    let angles = filled(angles, &[("pitch_angle", "75")]);
    assert_says(
        &angles,
        JobState::ToChange,
        LineKind::Result,
        "move 0.085 mm",
    );
    let steep = filled(angles, &[("pressure_angle", "85")]);
    assert_says(
        &steep,
        JobState::ToChange,
        LineKind::Said,
        "no gear moves as gears do",
    );
}

#[test]
fn no_side_is_left_with_less_than_no_shim() {
    let job = filled(split(), &[("to_mesh", "1.95")]);
    assert_says(
        &job,
        JobState::ToMeasure,
        LineKind::Warning,
        "no shim is below 0 mm",
    );
    let job = filled(read("0.80 0.80 0.80"), &[]);
    assert_says(
        &job,
        JobState::ToChange,
        LineKind::Warning,
        "no shim is below 0 mm, and then",
    );
}
