//! Published and derived figures of the bench, put through its jobs as they are typed.

use crate::support::bench::{assert_says, filled, job};
use layshaft::workshop::JobState::{Done, ToChange, ToMeasure};
use layshaft::workshop::{Job, JobData, JobKind, LineKind, SideBearingsData};

fn result(job: &Job, state: layshaft::workshop::JobState, says: &str) {
    assert_says(job, state, LineKind::Result, says);
}

#[test]
fn a_trial_shim_behind_a_race_leads_to_the_shim_of_the_manual() {
    // Source: a service procedure for a manual gearbox: trial 0.65, dial 0.30, preload 0.20 → 1.15 out of
    // 0.65 to 1.40 by 0.05 (read in retrieved copy).
    let fields = [
        ("trial", "0.65"),
        ("play", "0.30"),
        ("setting", "preload 0.20"),
        ("sizes", "0.65 to 1.40 by 0.05"),
    ];
    result(
        &job(JobKind::Shim, &fields),
        ToMeasure,
        "take 1.15 mm: preload 0.20 mm",
    );
}

#[test]
fn a_cover_takes_what_the_clearance_lacks() {
    // Source: an axle service manual: wanted 0.003–0.007 in, measured 0.001 → add 0.002…0.006 in (read). The
    // trial shim here is one of 0.020 in.
    let fields = [
        ("seat", "under"),
        ("trial", "20 thou"),
        ("play", "0.001 in"),
        ("setting", "clearance 0.003 to 0.007 in"),
    ];
    let units = layshaft::units::BenchUnits {
        length: layshaft::units::LengthUnit::Inch,
        ..Default::default()
    };
    let answer = job(JobKind::Shim, &fields).answer(units);
    let says = "the place takes 0.022 to 0.026 in for clearance 0.003 to 0.007 in";
    assert_eq!(answer.lines[0].text, says);
}

#[test]
fn a_stack_is_made_as_the_manual_makes_it() {
    // Source: an outboard service manual: current 0.62, change −0.20 → 0.42 = 0.30 + 0.12 (read; split derived).
    let fields = [
        ("seat", "under"),
        ("trial", "0.62"),
        ("play", "0.20"),
        ("setting", "clearance 0"),
        ("sizes", "0.10 0.12 0.15 0.18 0.30 0.40 0.50"),
        ("most_shims", "2"),
    ];
    result(
        &job(JobKind::Shim, &fields),
        ToMeasure,
        "take 0.30 + 0.12 mm: clearance 0.00 mm",
    );
}

#[test]
fn depths_leave_what_the_manual_says() {
    // Source: a service manual: 75.01 − 4.48 − 15.0 − 55 = 0.53 → 0.55 (read); the band that makes 0.55 the
    // nearest of its steps is derived.
    let fields = [
        ("measuring", "depths"),
        ("case_depth", "75.01"),
        ("filling", "4.48 15.0 55"),
        ("gasket", "0"),
        ("setting", "-0.025 to 0.025"),
        ("sizes", "0.40 to 0.70 by 0.05"),
    ];
    let job = job(JobKind::Shim, &fields);
    result(&job, ToMeasure, "take 0.55 mm: preload 0.02 mm");
    assert_says(
        &job,
        ToMeasure,
        LineKind::Said,
        "the place takes 0.505 to 0.555 mm",
    );
}

#[test]
fn readings_have_their_mean_and_spread() {
    // Derived: 0.30 0.31 0.29 0.30 0.32 → 0.304, s 0.011402, s/√5 0.005099.
    let fields = [
        ("trial", "0"),
        ("play", "0.30 0.31 0.29 0.30 0.32"),
        ("setting", "clearance 0"),
    ];
    let says = "mean of 5 readings 0.304 mm; they differ by 0.03, spread (standard deviation) 0.011, standard \
                error of the mean 0.005 mm";
    assert_says(
        &job(JobKind::Shim, &fields),
        ToMeasure,
        LineKind::Said,
        says,
    );
}

#[test]
fn the_side_shims_are_split_and_moved() {
    // Axle service procedures (common practice, no source): ring-gear side B, other side A − B + a; a workshop
    // figure for the rate is 0.6. With α 20°, δ 75° it is 0.703 (from memory; derived).
    let fields = [
        ("whole", "1.80"),
        ("to_mesh", "1.05"),
        ("allowance", "0.10"),
        ("backlash", "0.25 0.25 0.25"),
        ("wanted", "0.13 to 0.17"),
    ];
    let split = job(JobKind::SideBearings, &fields);
    result(
        &split,
        ToChange,
        "move 0.167 mm from the other side to the ring gear's",
    );
    let fields = [
        ("rate_by", "the angles"),
        ("pressure_angle", "20"),
        ("pitch_angle", "75"),
    ];
    let by_angles = filled(split.clone(), &fields);
    result(
        &by_angles,
        ToChange,
        "move 0.142 mm from the other side to the ring gear's",
    );
    let total = |data: &SideBearingsData| {
        let [before, after] = [data.shims().unwrap(), data.next_shims().unwrap()];
        (before.total_mm() - after.total_mm()).abs()
    };
    for job in [&split, &by_angles] {
        let JobData::SideBearings(data) = &job.data else {
            panic!("{job:?}")
        };
        assert!(total(data) < 1e-12, "the total stays");
    }
}

#[test]
fn a_cord_on_a_drum_turns_with_what_the_manual_says() {
    // Source: axle service procedures: 9 in × 7 lb = 63 lb·in = 7.118 N·m (read); 8 5/16 in × 24 lb →
    // 16.6 lb·ft (inputs read, result derived).
    let pulled = |radius, pull| {
        let fields = [("drum_radius", radius), ("pull", pull), ("band", "5 to 25")];
        job(JobKind::TurningTorque, &fields)
    };
    let job = pulled("9 in", "7 lb");
    result(
        &job,
        Done,
        "the bearings turn at 7.118 N·m: within 5 to 25 N·m",
    );
    let units = |torque| layshaft::units::BenchUnits {
        torque,
        ..Default::default()
    };
    let first = |job: &Job, unit| job.answer(units(unit)).lines[0].text.clone();
    let lbf_in = first(&job, layshaft::units::TurningUnit::PoundInch);
    assert!(
        lbf_in.starts_with("the bearings turn at 63 lbf·in: "),
        "{lbf_in}"
    );
    let job = pulled("8 5/16 in", "24 lb");
    let lbf_ft = first(&job, layshaft::units::TurningUnit::PoundFoot);
    assert!(
        lbf_ft.starts_with("the bearings turn at 16.625 lbf·ft: "),
        "{lbf_ft}"
    );
}

#[test]
fn a_band_of_a_manual_in_pound_inches_is_that_in_newton_metres() {
    // Source: an axle service manual: 15–35 lb·in = 1.69–3.95 N·m (read, conversion derived).
    let fields = [
        ("measuring", "a beam"),
        ("reading", "1.69"),
        ("band", "15-35 lb·in"),
    ];
    let job = job(JobKind::TurningTorque, &fields);
    result(&job, ToChange, "1.69 N·m: too loose for 1.695 to 3.954 N·m");
    result(&filled(job, &[("reading", "3.95")]), Done, "within");
}

#[test]
fn gears_and_seals_stand_between_the_wrench_and_the_bearings() {
    // Common practice, no source: (2.0 − 0.5) N·m × 4 − 1 N·m = 5 N·m; an adapter of 50 on a wrench of 250
    // reads a fifth too little (from memory).
    let fields = [
        ("measuring", "a beam"),
        ("reading", "2"),
        ("before", "0.5"),
        ("ratio", "4"),
        ("seals", "1"),
        ("band", "4 to 7"),
    ];
    let job = job(JobKind::TurningTorque, &fields);
    result(&job, Done, "turn at 5 N·m: within");
    let longer = filled(job, &[("wrench", "250"), ("adapter", "50")]);
    result(&longer, Done, "turn at 6.6 N·m: within");
}

#[test]
fn used_bearings_turn_at_half_of_new_ones() {
    // Source: service procedures: used bearings turn at 0.4–0.6 of the new figure (read).
    let fields = [
        ("measuring", "a beam"),
        ("reading", "1"),
        ("band", "2"),
        ("bearings", "used, and the figure is for new"),
    ];
    result(
        &job(JobKind::TurningTorque, &fields),
        Done,
        "within 0.8 to 1.2 N·m",
    );
}

#[test]
fn heat_makes_of_an_end_play_what_was_derived() {
    // Derived: L 150, 60 K both → +0.099; L 200, 80 K → +0.176; L 200, case 60 K, shaft 75 K → +0.096 mm.
    // Source of the sign: SAE 910799 (abstract, read).
    for (seats, case, shaft, running) in [
        ("150", "80", "80", "clearance 0.099 mm"),
        ("200", "100", "100", "clearance 0.176 mm"),
        ("200", "80", "95", "clearance 0.096 mm"),
    ] {
        let fields = [
            ("seats", seats),
            ("bench_temperature", "20"),
            ("case_temperature", case),
            ("shaft_temperature", shaft),
            ("bench", "clearance 0"),
        ];
        let job = job(JobKind::Heat, &fields);
        result(&job, Done, &format!("when it runs: {running}"));
        let back = filled(job, &[("arrangement", "back")]);
        let turned = running.replace("clearance", "preload");
        result(&back, ToChange, &format!("when it runs: {turned}"));
    }
}

#[test]
fn a_bearing_on_a_shaft_has_the_interference_that_its_maker_prints() {
    // Source: a bearing maker's catalogue, bearings of the Normal class on 30 to 50 mm (read).
    for (class, least_most) in [
        ("k5", "2 to 25"),
        ("k6", "2 to 30"),
        ("m5", "9 to 32"),
        ("m6", "9 to 37"),
    ] {
        for diameter in ["30.5", "40", "50"] {
            let fields = [("diameter", diameter), ("shaft_class", class)];
            let says = format!("interference {least_most} µm with a shaft of {class}");
            result(&job(JobKind::Fit, &fields), ToMeasure, &says);
        }
    }
}

#[test]
fn a_ring_is_pressed_and_warmed_onto_its_shaft_as_was_derived() {
    // Source: bearing makers' catalogues: the interference that works, pressure, force, temperature (formulas
    // read, numbers derived): d 40, D_i 50, B 19, 30 µm of which 28.571 work → 26.743 MPa, 7.66 and 11.49 kN;
    // 30 µm of bearing steel → 60.0 K.
    let fields = [
        ("diameter", "40"),
        ("shaft_class", "k6"),
        ("width", "19"),
        ("ring_outside", "50"),
        ("slip", "0"),
        ("room", "20"),
    ];
    let job = job(JobKind::Fit, &fields);
    for says in [
        "interference 1.9 to 28.6 µm",
        "takes up to 7.66 kN, to pull it off 11.49 kN, with 26.7 MPa in the seat",
        "must be 60 K warmer",
    ] {
        assert_says(&job, ToMeasure, LineKind::Said, says);
    }
}

#[test]
fn a_hub_of_inches_is_warmed_as_its_source_says() {
    // Source: a shrink fit worked through in inches (read): bore 1.375 in, 12 millionths per °F, interference
    // 0.0015 in, slip 0.002 in → 210 °F above the room, 212.1 unrounded, which is 117.8 K.
    let fields = [
        ("side", "a bore"),
        ("diameter", "1.375 in"),
        ("bore_class", "H7"),
        ("part", "a part"),
        ("part_upper", "0.0015 in"),
        ("part_lower", "0.0015 in"),
        ("case", "another"),
        ("case_expansion", "21.6"),
        ("slip", "0.002 in"),
        ("room", "20"),
    ];
    let job = job(JobKind::Fit, &fields);
    assert_says(&job, ToMeasure, LineKind::Said, "must be 117.8 K warmer");
}

#[test]
fn an_aluminium_case_outgrows_its_bearing_as_was_derived() {
    // Derived: bore 72 mm, 60 K, aluminium 23, bearing steel 12.5 millionths per K → 0.0454 mm.
    let fields = [
        ("side", "a bore"),
        ("diameter", "72"),
        ("bore_class", "N7"),
        ("case_warmer", "60"),
    ];
    let job = job(JobKind::Fit, &fields);
    assert_says(
        &job,
        ToMeasure,
        LineKind::Said,
        "the case outgrows the ring by 45.4 µm",
    );
}

#[test]
fn a_shaft_that_is_turned_down_keeps_what_was_derived() {
    // Derived: (d1/d0)³ and (d1/d0)⁴: 40→39 0.9269, 35→34 0.9167, 30→29 0.9033 and 0.8732.
    for (from, to, says) in [
        ("40", "39", "92.7 % of the strength"),
        ("35", "34", "91.7 % of the strength"),
        (
            "30",
            "29",
            "90.3 % of the strength is left there, 87.3 % of the stiffness",
        ),
    ] {
        let job = job(JobKind::Journal, &[("from", from), ("to", to)]);
        assert_says(&job, ToMeasure, LineKind::Said, says);
    }
}

#[test]
fn a_fillet_has_the_stress_factor_of_its_table() {
    // From memory: D/d 1.2, r/d 0.05 → 1.596; outside the rows nothing.
    let fields = [("from", "48"), ("to", "40"), ("fillet", "2")];
    let job = job(JobKind::Journal, &fields);
    let says = "stress factor 1.60 in torsion, from memory";
    assert_says(&job, ToMeasure, LineKind::Said, says);
}

#[test]
fn a_millimetre_off_the_diameter_takes_half_a_millimetre_of_the_case() {
    // Source: a case-hardened layer is 0.5 to 1.0 mm deep (steel maker, read).
    let turned = |depth| {
        let fields = [("from", "40"), ("to", "39"), ("case_depth", depth)];
        job(JobKind::Journal, &fields)
    };
    let says = "of the hardened layer 0.5 of 1 mm are left";
    assert_says(&turned("1.0"), ToMeasure, LineKind::Said, says);
    let says = "nothing is left of the hardened layer";
    assert_says(&turned("0.5"), ToChange, LineKind::Warning, says);
}
