//! Do the jobs of a file mean what stands there, and are those that cannot be pointed at?

use super::broken;
use super::format_2::GOLDEN_V2;
use layshaft::project::format;
use layshaft::units::{BenchUnits, LengthUnit, TurningUnit};
use layshaft::workshop::{Job, JobKind, Price, RowAnswer};

/// What stands in all fields of a job in mm and N·m: those that are asked for, then those that are asked for where
/// something else is chosen.
fn texts(job: &Job) -> Vec<String> {
    let units = BenchUnits::default();
    let mut texts = Vec::new();
    let mut keys = Vec::new();
    let mut add = |job: &Job| {
        for row in job.rows(units) {
            if keys.contains(&row.key) {
                continue;
            }
            keys.push(row.key);
            let number = row.key.item.map(|at| format!(" {}", at + 1));
            let number = number.unwrap_or_default();
            texts.push(format!("{}{number}: {}", row.key.name, row.answer.text()));
        }
    };
    add(job);
    for row in job.rows(units) {
        if let RowAnswer::Chosen { options, .. } = row.answer {
            for option in 0..options.len() {
                add(&job.choosing(row.key, option).unwrap());
            }
        }
    }
    texts
}

fn golden_texts(kind: JobKind) -> Vec<String> {
    let project = format::read(GOLDEN_V2).unwrap();
    let jobs = project.workshop.jobs().iter();
    let mut jobs = jobs.filter(|job| job.data.kind() == kind);
    texts(jobs.next().unwrap())
}

#[test]
fn the_golden_file_has_a_job_of_every_kind_and_units_of_its_bench() {
    let workshop = format::read(GOLDEN_V2).unwrap().workshop;
    let kinds: Vec<JobKind> = workshop.jobs().iter().map(|job| job.data.kind()).collect();
    assert_eq!(kinds, JobKind::ALL);
    assert_eq!(workshop.units.length, LengthUnit::Inch);
    assert_eq!(workshop.units.torque, TurningUnit::PoundInch);
}

#[test]
fn a_shim_of_the_golden_file_means_what_stands_there() {
    let expected = [
        "name: input shaft",
        "remark: manual of 1996",
        "measuring: depths, by depth gauge",
        "case_depth: 75.01",
        "filling: 4.48 15.00 55.00",
        "gasket: 0.00",
        "setting: preload 0.15 to 0.20 mm",
        "sizes: 0.10 0.65",
        "most_shims: 2",
        "resolution: 0.01",
        "most_spread: 0.02",
        "fitted: 1.15",
        "final_play: 0.00",
        "seat: under a cover or case half: thicker, more play",
        "trial: 0.65",
        "play: 0.30 0.31",
        "gap: 0.40",
    ];
    assert_eq!(golden_texts(JobKind::Shim), expected);
}

#[test]
fn a_pinion_of_the_golden_file_means_what_stands_there() {
    let expected = [
        "name: ",
        "remark: ",
        "seat: 130.01 130.00",
        "mounting: 100.00",
        "marking: −0.05",
        "bearing: 28.50",
        "tolerance: 0.02",
        "sizes: 1.44 1.47",
        "most_shims: 1",
        "resolution: 0.01",
        "most_spread: 0.02",
        "fitted: 1.44",
        "final_depth: 99.97",
    ];
    assert_eq!(golden_texts(JobKind::PinionDepth), expected);
}

#[test]
fn the_side_bearings_of_the_golden_file_mean_what_stands_there() {
    let expected = [
        "name: ",
        "remark: ",
        "whole: 1.80",
        "to_mesh: 1.05",
        "allowance: 0.10",
        "ring_gear_fitted: 1.15",
        "other_fitted: 0.75",
        "backlash: 0.15 0.16 0.14",
        "wanted: 0.13 to 0.18",
        "most_variation: 0.05",
        "rate_by: the angles of the gears",
        "pressure_angle: 20",
        "pitch_angle: 75",
        "preload_off: 0.04",
        "rate: 0.7",
    ];
    assert_eq!(golden_texts(JobKind::SideBearings), expected);
}

#[test]
fn a_turning_torque_of_the_golden_file_means_what_stands_there() {
    let expected = [
        "name: ",
        "remark: ",
        "measuring: a beam wrench",
        "reading: 1.5",
        "adapter: 50.00",
        "wrench: 250.00",
        "before: 0.2",
        "ratio: 41:10",
        "figure: with seals: they are not taken off",
        "bearings: used, and the figure is for new ones",
        "band: 1.5 to 2.5",
        "seat: behind a race or washer: thicker, less play",
        "shim: 1.15",
        "shim 1: 1.10",
        "torque 1: 1",
        "date 1: May 3",
        "note 1: old bearing",
        "shim 2: ",
        "torque 2: ",
        "date 2: ",
        "note 2: ",
        "pull: 30 N",
        "drum_radius: 40.00",
        "seals: 0.3",
    ];
    assert_eq!(golden_texts(JobKind::TurningTorque), expected);
}

#[test]
fn the_measurements_of_the_golden_file_mean_what_stands_there() {
    let expected = [
        "name: ",
        "remark: ",
        "name 1: synchroniser gap 2nd",
        "readings 1: 0.95 0.85",
        "least 1: 0.80",
        "most 1: 1.50",
        "name 2: fork",
        "readings 2: ",
        "least 2: ",
        "most 2: ",
    ];
    assert_eq!(golden_texts(JobKind::Limits), expected);
}

#[test]
fn an_end_play_that_heat_changes_of_the_golden_file_means_what_stands_there() {
    let expected = [
        "name: ",
        "remark: ",
        "arrangement: back to back, cones adjusted",
        "case: another, as cast iron",
        "case_expansion: 26",
        "shaft: bearing steel: 12.5 millionths per K",
        "seats: 150.00",
        "bench_temperature: 20",
        "case_temperature: 80",
        "shaft_temperature: 95.5",
        "bench: preload 0.02 to clearance 0.03 mm",
        "most: 0.20",
        "shaft_expansion: 11.5",
    ];
    assert_eq!(golden_texts(JobKind::Heat), expected);
}

#[test]
fn a_fit_of_the_golden_file_means_what_stands_there() {
    let expected = [
        "name: ",
        "remark: ",
        "side: a shaft: the part sits on it",
        "diameter: 40.00",
        "shaft_class: k6",
        "part: a part whose limits are typed",
        "part_upper: +0.5",
        "part_lower: −12",
        "finish: turned",
        "bearing_warmer: 10",
        "width: 19.00",
        "ring_outside: 50.00",
        "slip: 20",
        "room: 18.5",
        "across 1: 40.010 40.012",
        "across 2: ",
        "bore_class: N7",
        "case: another, as cast iron",
        "case_expansion: 21.6",
        "case_warmer: 60",
        "held: yes",
    ];
    assert_eq!(golden_texts(JobKind::Fit), expected);
}

#[test]
fn a_shaft_that_is_turned_down_of_the_golden_file_means_what_stands_there() {
    let expected = [
        "name: ",
        "remark: ",
        "from: 40.00",
        "to: 39.00",
        "bore: 12.00",
        "class: k6",
        "torque: 500.5",
        "case_depth: 0.80",
        "length: 24.50",
        "fillet: 1.50",
        "shoulder: 46.80",
        "splines: no",
        "needle_track: yes",
        "cone: no",
        "seal: yes",
        "finish: turned",
        "run_out: 0.02",
        "across 1: 39.010",
    ];
    assert_eq!(golden_texts(JobKind::Journal), expected);
}

#[test]
fn jobs_that_cannot_be_are_pointed_at() {
    let tries = "(), ".repeat(Job::MOST_ITEMS + 1);
    let tries = format!("tries: [{tries}(shim_mm");
    for (from, to, says) in [
        (
            "least: 1500",
            "least: 3500",
            "the least of a band is not above its most",
        ),
        (
            "least: 0.13",
            "least: 0.3",
            "the least of a band is not above its most",
        ),
        (
            "pull_n: 30",
            "pull_n: -1",
            "a pull must be between 0 and 10000 N, not -1",
        ),
        (
            "case_c: 80",
            "case_c: 800",
            "a temperature must be between -60 and 300 °C, not 800",
        ),
        (
            "backlash_per_mm: 0.7",
            "backlash_per_mm: 7",
            "must be between 0.1 and 2 mm, not 7",
        ),
        (
            "shaft_class: \"k6\"",
            "shaft_class: \"K6\"",
            "\"K6\" is no class of a shaft",
        ),
        (
            "across_mm: [40.01, 40.012]",
            "across_mm: []",
            "1 to 100 diameters stand here",
        ),
        ("tries: [(shim_mm", &tries, "at most 40 stand here, not 43"),
    ] {
        let text = GOLDEN_V2.replacen(from, to, 1);
        assert_ne!(text, GOLDEN_V2, "{from}");
        let sentence = format::read(&text).expect_err(to).to_string();
        broken::assert_is_a_sentence(&sentence);
        assert!(sentence.contains(says), "{sentence}");
        let (before, _) = GOLDEN_V2.split_once(from).unwrap();
        let line = format!("line {}, ", 1 + before.matches('\n').count());
        assert!(sentence.starts_with(&line), "{line}: {sentence}");
    }
}

#[test]
fn the_plan_of_the_golden_file_means_what_stands_there() {
    let project = format::read(GOLDEN_V2).unwrap();
    let plan = project.workshop.plan.unwrap();
    let said: Vec<String> = plan
        .parts()
        .iter()
        .map(|part| {
            let of_sets = project.sets.iter().map(|set| {
                let entry = part.of(set.id.into());
                let to_do = entry.to_do.as_ref().map_or("", |text| text.as_str());
                let price = entry.price.map_or(0.0, Price::amount);
                format!(
                    "{:?} {} {to_do} {price} {}",
                    entry.source, entry.is_altered, entry.is_done
                )
            });
            let of_sets: Vec<String> = of_sets.collect();
            format!("{} {}: {}", part.name, part.is_struck, of_sets.join("; "))
        })
        .collect();
    let expected = [
        "mounts false: Donor true weld the bracket 120.5 false; New false  90 false; Undecided false  0 false",
        "starter true: Fitted false  0 true; Undecided false  0 false; Undecided false  0 false",
        "breather false: Undecided false  0 false; Undecided false  0 false; Undecided false  0 false",
    ];
    assert_eq!(said, expected);
    let sign = plan.currency.as_ref().map(ToString::to_string);
    assert_eq!(sign.as_deref(), Some("€"));
}

#[test]
fn a_plan_that_cannot_be_is_pointed_at() {
    for (from, to, says) in [
        (
            "price: 120.5",
            "price: -1",
            "a price must be between 0 and 1000000000, not -1",
        ),
        (
            "set: 2, source",
            "set: 7, source",
            "the plan names set 7, which is not there",
        ),
        (
            "set: 2, source",
            "set: 1, source",
            "set 1 stands here twice",
        ),
        (
            "\"€\"",
            "\"much too long\"",
            "a currency's sign has at most 8 characters",
        ),
    ] {
        let text = GOLDEN_V2.replacen(from, to, 1);
        assert_ne!(text, GOLDEN_V2, "{from}");
        let sentence = format::read(&text).expect_err(to).to_string();
        broken::assert_is_a_sentence(&sentence);
        assert!(sentence.contains(says), "{sentence}");
        let (before, _) = GOLDEN_V2.split_once(from).unwrap();
        let line = format!("line {}, ", 1 + before.matches('\n').count());
        assert!(sentence.starts_with(&line), "{line}: {sentence}");
    }
}
