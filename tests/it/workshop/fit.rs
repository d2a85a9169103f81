//! What a measured seat is beside its class, and what is said of pressing, warming and heat.

use crate::support::bench::{assert_says, filled, job, lines};
use layshaft::units::{BenchUnits, LengthUnit};
use layshaft::workshop::JobState::{Done, ToChange, ToMeasure};
use layshaft::workshop::LineKind::{Result, Said, Warning};
use layshaft::workshop::{Job, JobKind};

fn on_shaft(class: &str, across: &str) -> Job {
    let fields = [
        ("diameter", "40"),
        ("shaft_class", class),
        ("across 1", across),
    ];
    job(JobKind::Fit, &fields)
}

fn in_bore(class: &str) -> Job {
    let fields = [
        ("side", "a bore"),
        ("diameter", "72"),
        ("bore_class", class),
    ];
    job(JobKind::Fit, &fields)
}

#[test]
fn what_is_missing_is_named() {
    let job = job(JobKind::Fit, &[("diameter", "40"), ("part", "a part")]);
    let missing = "still missing: the class of the seat, the upper limit of the part, the lower limit of the part";
    assert_says(&job, ToMeasure, Said, missing);
    let open = on_shaft("k6", "");
    assert_says(
        &open,
        ToMeasure,
        Result,
        "interference 2 to 30 µm with a shaft of k6",
    );
    assert_says(
        &open,
        ToMeasure,
        Said,
        "still missing: the measured diameters",
    );
    assert_says(
        &open,
        ToMeasure,
        Said,
        "shaft k6: 40.002 to 40.018 mm (+2 to +18 µm)",
    );
    let part = "bore of a bearing of the Normal class, unless it has tapered rollers: 39.988 to 40.000 mm (−12 to 0 µm)";
    assert_says(&open, ToMeasure, Said, part);
}

#[test]
fn a_measured_seat_within_its_class_is_done() {
    let job = filled(
        on_shaft("k6", "40.010 40.012"),
        &[("across 2", "40.006 40.004")],
    );
    assert_says(&job, Done, Result, "the shaft lies within k6");
    assert_says(
        &job,
        Done,
        Result,
        "interference 4 to 24 µm with the shaft as measured",
    );
    assert_says(
        &job,
        Done,
        Said,
        "mean 40.008 mm, taper 0.006, out of round 0.002",
    );
    assert!(lines(&job, Warning).is_empty());
}

#[test]
fn a_seat_outside_its_class_is_to_be_changed() {
    let job = on_shaft("k6", "40.021 39.9995");
    let says = "the shaft does not lie within k6: largest above by 3 µm, smallest below by 2.5 µm";
    assert_says(&job, ToChange, Result, says);
}

#[test]
fn more_interference_than_a_ring_bears_is_stopped_and_less_is_warned_of() {
    let tight = on_shaft("m6", "40.022");
    assert_says(
        &tight,
        Done,
        Warning,
        "more than 28 µm, 0.0007 of the diameter",
    );
    let stopped = on_shaft("p6", "40.035");
    assert_says(&stopped, ToChange, Result, "the shaft lies within p6");
    assert_says(
        &stopped,
        ToChange,
        Warning,
        "more than 40 µm, 0.001 of the diameter: a ring may crack",
    );
}

#[test]
fn clearance_is_said_in_words() {
    let fields = [
        ("part", "a part"),
        ("part_upper", "+30"),
        ("part_lower", "+20"),
    ];
    let job = filled(on_shaft("h6", "39.995"), &fields);
    assert_says(
        &job,
        Done,
        Result,
        "clearance 25 to 35 µm with the shaft as measured",
    );
    assert_says(
        &job,
        Done,
        Said,
        "part as typed: 40.020 to 40.030 mm (+20 to +30 µm)",
    );
    let turned_round = filled(job, &[("part_upper", "10")]);
    assert_says(
        &turned_round,
        ToMeasure,
        Warning,
        "upper limit is below its lower one",
    );
}

#[test]
fn what_works_of_it_is_less_on_a_turned_seat_and_with_a_warm_ring() {
    let job = on_shaft("k6", "40.002");
    assert_says(
        &job,
        Done,
        Said,
        "pressed smooth: interference 1.9 to 13.3 µm",
    );
    let turned = filled(job, &[("finish", "turned"), ("bearing_warmer", "50")]);
    assert_says(
        &turned,
        Done,
        Said,
        "pressed smooth: interference 1.9 to 13 µm",
    );
    assert_says(
        &turned,
        Done,
        Said,
        "with the bearing 50 K warmer than what surrounds it: clearance 1.1 to interference 10 µm",
    );
    assert_says(&turned, Done, Warning, "the ring may come loose and creep");
}

#[test]
fn a_press_needs_both_sizes_of_the_ring_and_a_wall() {
    let job = filled(on_shaft("k6", ""), &[("width", "19")]);
    assert_says(
        &job,
        ToMeasure,
        Said,
        "for the press still missing: what the ring is solid up to",
    );
    let none = filled(job.clone(), &[("ring_outside", "40")]);
    assert_says(
        &none,
        ToMeasure,
        Warning,
        "a ring is solid up to more than its bore",
    );
    let ring = filled(job, &[("ring_outside", "50")]);
    assert_says(
        &ring,
        ToMeasure,
        Said,
        "up to 7.66 kN, to pull it off 11.49 kN, with 26.7 MPa",
    );
}

#[test]
fn a_part_is_warmed_no_further_than_a_bearing_bears() {
    let half = filled(on_shaft("k6", ""), &[("slip", "20")]);
    assert_says(
        &half,
        ToMeasure,
        Said,
        "for warming still missing: how warm the room is",
    );
    let job = filled(half, &[("slip", "0"), ("room", "20")]);
    let says =
        "the part must be 60 K warmer, and 20 to 30 K more for the way: warm it to 100 to 110 °C";
    assert_says(&job, ToMeasure, Said, says);
    assert!(lines(&job, Warning).iter().all(|line| !line.contains("°C")));
    let warm = filled(job.clone(), &[("slip", "5")]);
    assert_says(&warm, ToMeasure, Said, "must be 70 K warmer");
    assert_says(&warm, ToMeasure, Said, "warm it to 110 to 120 °C");
    let warmer = filled(warm, &[("room", "27")]);
    assert_says(&warmer, ToMeasure, Said, "warm it to 117 to 120 °C");
    let hot = filled(job.clone(), &[("slip", "20")]);
    let says = lines(&hot, Said);
    assert!(
        says.iter().all(|line| !line.contains("warm it to")),
        "{says:?}"
    );
    assert_says(
        &hot,
        ToMeasure,
        Warning,
        "no bearing is warmed above 120 °C",
    );
    let hottest = filled(job, &[("slip", "1000")]);
    assert_says(
        &hottest,
        ToMeasure,
        Warning,
        "warming the part alone does not fit it",
    );
}

#[test]
fn a_light_alloy_case_loses_its_ring_hot() {
    let job = filled(in_bore("P7"), &[("case_warmer", "60")]);
    let says =
        "60 K warmer the case outgrows the ring by 45.4 µm: clearance 37.4 to interference 5.6 µm";
    assert_says(&job, ToMeasure, Said, says);
    assert_says(&job, ToMeasure, Warning, "hot, the case may lose the ring");
    // Measured within, it is still not as it must be, unless something else holds it.
    let measured = filled(job.clone(), &[("across 1", "71.960 71.962")]);
    assert_says(
        &measured,
        ToChange,
        Warning,
        "hot, the case may lose the ring",
    );
    let held = filled(measured, &[("held", "yes")]);
    assert_says(&held, Done, Said, "the stop holds it");
    assert!(lines(&held, Warning).is_empty());
    // Of a ring that is loose cold it is told, too, but it was meant so.
    let loose = filled(
        in_bore("H7"),
        &[("case_warmer", "60"), ("across 1", "72.010")],
    );
    assert_says(&loose, Done, Warning, "hot, the case may lose the ring");
    let steel = filled(job.clone(), &[("case", "steel")]);
    assert_says(
        &steel,
        ToMeasure,
        Said,
        "the ring outgrows the case by 2.2 µm: interference 10.2 to 53.2 µm",
    );
    let other = filled(job, &[("case", "another"), ("slip", "10"), ("room", "20")]);
    assert_says(
        &other,
        ToMeasure,
        Said,
        "for the heat still missing: the expansion of the case",
    );
    assert_says(
        &other,
        ToMeasure,
        Said,
        "for warming still missing: the expansion of the case",
    );
}

#[test]
fn a_diameter_that_the_tables_do_not_have_is_told() {
    let job = filled(on_shaft("k6", ""), &[("diameter", "9")]);
    assert_says(
        &job,
        ToMeasure,
        Warning,
        "the table of shafts has diameters over 10 mm",
    );
    let case = filled(in_bore("H7"), &[("diameter", "130")]);
    assert_says(
        &case,
        ToMeasure,
        Warning,
        "the table of bores has diameters over 18 mm",
    );
}

#[test]
fn what_is_gone_of_a_seat_and_what_is_none_of_it_is_told() {
    let gone = "metal is gone there, and nothing that cuts puts it back";
    assert_says(&on_shaft("k6", "39.990"), ToChange, Warning, gone);
    let wide = filled(in_bore("N7"), &[("across 1", "72.045")]);
    assert_says(&wide, ToChange, Warning, gone);
    let tight = filled(in_bore("N7"), &[("across 1", "71.945")]);
    assert!(lines(&tight, Warning).iter().all(|line| line != gone));
    let strange = "3.999 mm is far from the size of the seat";
    assert_says(&on_shaft("k6", "3.999"), ToChange, Warning, strange);
}

#[test]
fn what_is_loose_as_it_is_wants_no_warming() {
    let loose = filled(
        in_bore("H7"),
        &[("slip", "20"), ("room", "20"), ("across 1", "72.020")],
    );
    assert_says(
        &loose,
        Done,
        Said,
        "slips into place as it is: nothing needs warming",
    );
}

#[test]
fn a_bench_in_inches_is_told_in_inches() {
    let units = BenchUnits {
        length: LengthUnit::Inch,
        ..BenchUnits::default()
    };
    let answer = on_shaft("k6", "40.010").answer(units);
    let said: Vec<&str> = answer.lines.iter().map(|line| line.text.as_str()).collect();
    assert_eq!(
        said[1],
        "interference 0.00039 to 0.00087 in with the shaft as measured"
    );
    assert_eq!(
        said[2],
        "mean 1.5752 in; measure a second place for the taper and a second reading across for the roundness"
    );
    assert_eq!(said[3], "shaft k6: 1.57489 to 1.57551 in (+2 to +18 µm)");
}
