//! What stops a shaft from being turned down, what is left of it, and what goes to the lathe.

use crate::support::bench::{answer, assert_says, filled, job, lines};
use layshaft::units::{BenchUnits, LengthUnit, TurningUnit};
use layshaft::workshop::JobState::{Done, Open, ToChange, ToMeasure};
use layshaft::workshop::LineKind::{Heading, Result, Said, Warning};
use layshaft::workshop::{Job, JobKind};

fn from_40_to_39(fields: &[(&str, &str)]) -> Job {
    let job = job(JobKind::Journal, &[("from", "40"), ("to", "39")]);
    filled(filled(job, &NOTHING_THERE), fields)
}

/// What somebody has looked for, and not found.
const NOTHING_THERE: [(&str, &str); 4] = [
    ("splines", "no"),
    ("needle_track", "no"),
    ("cone", "no"),
    ("seal", "no"),
];

#[test]
fn what_is_missing_is_named() {
    let asked = job(JobKind::Journal, &[("splines", "yes"), ("seal", "yes")]);
    let missing = "still missing: the diameter now, the diameter wanted";
    assert_says(&asked, Open, Said, missing);
    let half = filled(asked, &[("from", "40")]);
    assert_says(&half, ToMeasure, Said, "still missing: the diameter wanted");
    let job = from_40_to_39(&[]);
    assert_says(
        &job,
        ToMeasure,
        Said,
        "still missing: the class wanted there",
    );
    let job = filled(job, &[("class", "k6"), ("seal", "yes")]);
    let missing =
        "still missing: the depth of the hardened layer, for the seal, the measured diameters";
    assert_says(&job, ToMeasure, Said, missing);
}

#[test]
fn what_goes_to_the_lathe_is_told_line_by_line() {
    let fields = [
        ("class", "k6"),
        ("torque", "500"),
        ("case_depth", "0.8"),
        ("fillet", "2"),
        ("shoulder", "46.8"),
    ];
    let job = from_40_to_39(&fields);
    assert_says(
        &job,
        ToMeasure,
        Result,
        "turn it to 39.002 to 39.018 mm for k6",
    );
    let expected = [
        "still missing: the measured diameters",
        "from 40 to 39 mm: 92.7 % of the strength is left there, 90.4 % of the stiffness",
        "shear 42.9 MPa at 500 N·m, nominal at the new diameter",
        "of the hardened layer 0.3 of 0.8 mm are left",
        "fillet of 2 mm at a shoulder of 46.8 mm: stress factor 1.59 in torsion, from memory",
        "target: 39.010 mm",
        "tolerance: 39.002 to 39.018 mm (k6)",
        "fillet: radius 2.00 mm, polished",
        "run-out: at most 0.01 mm, between centres",
        "finish: ground, Ra 0.8 µm (32 µin) at most",
    ];
    assert_eq!(lines(&job, Said), expected);
    assert_eq!(lines(&job, Heading), ["cutting list for the lathe:"]);
    let turned = filled(
        job,
        &[("finish", "turned"), ("run_out", "0.02"), ("fillet", "")],
    );
    assert_says(
        &turned,
        ToMeasure,
        Said,
        "fillet: the largest that the bearing's chamfer allows",
    );
    assert_says(&turned, ToMeasure, Said, "run-out: at most 0.02 mm");
    assert_says(
        &turned,
        ToMeasure,
        Said,
        "finish: turned, Ra 1.6 µm (63 µin) at most",
    );
}

#[test]
fn a_journal_within_its_limits_is_done() {
    let job = from_40_to_39(&[
        ("class", "k6"),
        ("across 1", "39.010 39.012"),
        ("across 2", "39.006"),
    ]);
    assert_says(&job, Done, Result, "the journal lies within k6");
    assert_says(
        &job,
        Done,
        Said,
        "mean 39.009 mm, taper 0.005, out of round 0.002",
    );
    assert!(lines(&job, Warning).is_empty());
    let with_seal = filled(job, &[("seal", "yes")]);
    assert_says(
        &with_seal,
        ToMeasure,
        Said,
        "the depth of the hardened layer, for the seal",
    );
}

#[test]
fn a_journal_outside_its_limits_is_to_be_changed() {
    let thick = from_40_to_39(&[("class", "k6"), ("across 1", "39.030")]);
    assert_says(
        &thick,
        ToChange,
        Result,
        "does not lie within k6: largest above by 12 µm, smallest above by 12 µm",
    );
    assert!(lines(&thick, Warning).is_empty());
    assert_says(&thick, ToChange, Result, "turn it to 39.002 to 39.018 mm");
    assert!(!lines(&thick, Heading).is_empty());
    let thin = filled(thick, &[("across 1", "39.010 38.999")]);
    assert_says(
        &thin,
        ToChange,
        Result,
        "does not lie within k6: smallest below by 3 µm",
    );
    assert_says(&thin, ToChange, Warning, "turning does not put it back");
    assert!(
        lines(&thin, Heading).is_empty(),
        "nothing more goes to the lathe"
    );
    assert_eq!(lines(&thin, Result).len(), 1);
    let second = filled(
        thin,
        &[("across 1", "39.010"), ("across 2", "39.012 38.999")],
    );
    assert_says(
        &second,
        ToChange,
        Result,
        "smallest, at place 2, below by 3 µm",
    );
}

#[test]
fn nothing_goes_to_the_lathe_before_somebody_has_looked() {
    let blind = job(
        JobKind::Journal,
        &[
            ("from", "40"),
            ("to", "39"),
            ("class", "k6"),
            ("across 1", "39.010"),
        ],
    );
    let missing = "still missing: whether there are splines, whether needles run there, whether there is a \
                   synchroniser cone";
    assert_says(&blind, ToMeasure, Said, missing);
    assert!(lines(&blind, Heading).is_empty());
    assert_eq!(lines(&blind, Result), ["the journal lies within k6"]);
    let seen = filled(blind, &NOTHING_THERE);
    assert_says(&seen, Done, Result, "the journal lies within k6");
}

#[test]
fn what_cannot_be_is_asked_about_again() {
    let high = from_40_to_39(&[("fillet", "1.5"), ("class", "k6")]);
    let says = "the fillet is higher than the step to the shoulder";
    assert_says(&high, ToMeasure, Warning, says);
    assert_says(
        &high,
        ToMeasure,
        Said,
        "it finds no room, the step is 0.5 mm high",
    );
    let slip = from_40_to_39(&[("class", "k6"), ("across 1", "39.010 3.901")]);
    let says = "3.901 mm is far from the size of the seat";
    assert_says(&slip, ToChange, Warning, says);
    let before = from_40_to_39(&[("class", "k6"), ("across 1", "40.010")]);
    assert!(lines(&before, Warning).is_empty(), "it is not turned yet");
    let weak = filled(from_40_to_39(&[]), &[("to", "34")]);
    assert_says(
        &weak,
        ToMeasure,
        Warning,
        "only 61.4 % of the strength is left",
    );
}

#[test]
fn a_seal_wants_a_ground_surface() {
    let seal = [
        ("class", "k6"),
        ("seal", "yes"),
        ("case_depth", "0.8"),
        ("finish", "turned"),
    ];
    let turned = from_40_to_39(&seal);
    assert_says(&turned, ToMeasure, Warning, "a seal wants a ground surface");
    let ground = filled(
        turned,
        &[
            ("finish", "ground"),
            ("across 1", "39.010 39.011"),
            ("across 2", "39.012"),
        ],
    );
    assert_says(&ground, Done, Result, "the journal lies within k6");
}

#[test]
fn what_stops_the_job_is_told_first_and_nothing_goes_to_the_lathe() {
    let everything = from_40_to_39(&[
        ("splines", "yes"),
        ("needle_track", "yes"),
        ("cone", "yes"),
        ("case_depth", "0.5"),
        ("class", "k6"),
        ("across 1", "39.010"),
    ]);
    for says in [
        "there are splines here",
        "needles run on the shaft here",
        "there is a synchroniser cone here",
        "nothing is left of the hardened layer: the soft core wears under a seal",
    ] {
        assert_says(&everything, ToChange, Warning, says);
    }
    let first = &answer(&everything).lines[0];
    assert!(
        first.kind == Result && first.text == "do not turn it down",
        "{first:?}"
    );
    assert_says(
        &everything,
        ToChange,
        Said,
        "92.7 % of the strength is left",
    );
    let said = lines(&everything, Said);
    assert!(said.iter().all(|line| !line.contains("lathe")), "{said:?}");
    let thicker = filled(from_40_to_39(&[]), &[("to", "40.5")]);
    assert_says(&thicker, ToChange, Result, "nothing is turned down");
    let hollow = from_40_to_39(&[("bore", "39")]);
    assert_says(&hollow, ToChange, Result, "leaves no wall");
}

#[test]
fn what_the_tables_do_not_have_is_told() {
    let small = job(
        JobKind::Journal,
        &[("from", "10"), ("to", "9"), ("class", "k6")],
    );
    let small = filled(small, &NOTHING_THERE);
    assert_says(
        &small,
        ToMeasure,
        Warning,
        "the table of shafts has diameters over 10 mm",
    );
    assert_says(
        &small,
        ToMeasure,
        Said,
        "tolerance: k6, outside the table: ask the bearing's maker",
    );
    let shoulder = from_40_to_39(&[("fillet", "2"), ("shoulder", "80"), ("class", "k6")]);
    assert_says(
        &shoulder,
        ToMeasure,
        Said,
        "no stress factor, the table has shoulders of 1.09 to 2 times",
    );
    let low = filled(shoulder, &[("shoulder", "39"), ("across 1", "39.010")]);
    assert_says(
        &low,
        ToMeasure,
        Warning,
        "a shoulder stands above the new diameter",
    );
}

#[test]
fn a_bench_in_inches_has_all_in_inches_also_for_the_lathe() {
    let units = BenchUnits {
        length: LengthUnit::Inch,
        torque: TurningUnit::PoundFoot,
    };
    let answer = from_40_to_39(&[("class", "k6"), ("torque", "300")]).answer(units);
    let said: Vec<&str> = answer.lines.iter().map(|line| line.text.as_str()).collect();
    assert_eq!(said[0], "turn it to 1.53552 to 1.53614 in for k6");
    assert!(
        said[2].starts_with("from 1.5748 to 1.53543 in: 92.7 %"),
        "{said:?}"
    );
    assert!(
        said.contains(&"tolerance: 1.53552 to 1.53614 in (k6)"),
        "{said:?}"
    );
    assert!(
        said[3].ends_with("at 221.269 lbf·ft, nominal at the new diameter"),
        "{said:?}"
    );
}
