//! How is a vehicle in plain numbers described, by flags and by a project file?

use super::motion::answer_about;
use super::{Answer, answer, json_of};
use crate::support::plain_vehicle::{Held, Plain};
use layshaft::motion::DrivenAxle;
use serde_json::Value;
use std::fmt::Display;

/// What is known of a vehicle beside its plain numbers, as flags and as keys of a file.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Beside<'a> {
    pub(super) flags: &'a [&'a str],
    pub(super) engine: &'a str,
    pub(super) vehicle: &'a str,
    pub(super) set: &'a str,
}

pub(super) fn list<T>(items: &[T], spelled: impl Fn(&T) -> String, between: &str) -> String {
    items.iter().map(spelled).collect::<Vec<_>>().join(between)
}

fn axle(driven: DrivenAxle) -> &'static str {
    match driven {
        DrivenAxle::Front => "Front",
        DrivenAxle::Rear => "Rear",
        DrivenAxle::All => "All",
    }
}

/// The engine speed at which every gear is changed up.
fn shift_rpm(car: &Plain) -> f64 {
    car.shift_rpms.first().copied().unwrap_or(car.redline_rpm)
}

/// The vehicle as flags.
fn flags_of(car: &Plain, beside: &Beside<'_>) -> Vec<String> {
    let mut flags = Vec::new();
    let mut add = |flag: &str, value: &dyn Display| {
        flags.extend([format!("--{flag}"), value.to_string()]);
    };
    add("gears", &list(&car.ratios, f64::to_string, " "));
    add("final", &car.final_drive);
    add("circumference", &car.circumference_mm);
    add("redline", &car.redline_rpm);
    add("idle", &car.idle_rpm);
    add("shift", &shift_rpm(car));
    let point = |(rpm, nm): &(f64, f64)| format!("{rpm}:{nm}");
    add("torque", &list(&car.points, point, " "));
    add("mass", &car.mass_kg);
    match car.held {
        Held::Measured(a, b, c) => add("road-load", &format!("{a} {b} {c}")),
        Held::Estimated(rolling, area_m2) => {
            add("rolling", &rolling);
            add("drag-area", &area_m2);
        }
    }
    add("efficiency", &car.efficiency);
    match car.inertias {
        Some((engine, wheels)) => {
            add("engine-inertia", &engine);
            add("wheel-inertia", &wheels);
        }
        None => add("mass-factor", &"formula"),
    }
    if let Some(tyres) = car.tyres {
        add("driven", &axle(tyres.driven).to_lowercase());
        add("adhesion", &tyres.adhesion);
        add("front-share", &tyres.front_share);
        if let Some((wheelbase_m, height_m)) = tyres.transfer {
            add("wheelbase", &wheelbase_m);
            add("cg-height", &height_m);
        }
    }
    add("grade", &car.grade_percent);
    add("pause", &car.pause_s);
    add("launch-rpm", &car.launch_rpm);
    flags.extend(beside.flags.iter().map(|word| (*word).to_owned()));
    flags
}

/// The vehicle as a project file.
pub(super) fn file_of(car: &Plain, beside: &Beside<'_>) -> String {
    let point = |(rpm, nm): &(f64, f64)| format!("(rpm: {rpm}, torque_nm: {nm})");
    let points = list(&car.points, point, ", ");
    let held = match car.held {
        Held::Measured(a, b, c) => format!(
            "coast_down: (constant_n: {a}, linear_n_per_m_s: {b}, quadratic_n_per_m2_s2: {c})"
        ),
        Held::Estimated(rolling, area_m2) => {
            format!("rolling_coefficient: {rolling}, drag_area_m2: {area_m2}")
        }
    };
    let (of_engine, of_vehicle) = match car.inertias {
        Some((engine, wheels)) => (
            format!("inertia_kgm2: {engine}"),
            format!("wheel_inertia_kgm2: {wheels}"),
        ),
        None => (String::new(), "mass_factor: Formula".to_owned()),
    };
    let tyres = car.tyres.map_or_else(String::new, |tyres| {
        let (driven, adhesion, share) = (axle(tyres.driven), tyres.adhesion, tyres.front_share);
        let transfer = tyres.transfer.map_or_else(String::new, |(base, height)| {
            format!("wheelbase_m: {base}, cg_height_m: {height}, ")
        });
        format!("driven: {driven}, adhesion: {adhesion}, front_share: {share}, {transfer}")
    });
    let gears = (1..).zip(&car.ratios).collect::<Vec<_>>();
    let gear =
        |(number, ratio): &(i32, &f64)| format!("(label: \"{number}\", ratio: Number({ratio}))");
    let gears = list(&gears, gear, ", ");
    let Plain {
        redline_rpm,
        idle_rpm,
        final_drive,
        circumference_mm,
        mass_kg,
        efficiency,
        grade_percent,
        headwind_kmh,
        launch_rpm,
        pause_s,
        ..
    } = car;
    let shift_rpm = shift_rpm(car);
    let Beside {
        engine,
        vehicle,
        set,
        ..
    } = beside;
    format!(
        r#"(
    format: 2, units: Kmh, tyre: RollingCircumferenceMm({circumference_mm}),
    engine: (idle_rpm: {idle_rpm}, redline_rpm: {redline_rpm}), baseline: 1,
    technical: (
        engine: (torque: Points([{points}]), {engine}{of_engine}),
        vehicle: (mass_kg: {mass_kg}, {held}, {tyres}{vehicle}{of_vehicle}),
        road: (headwind_kmh: {headwind_kmh}, grade_percent: {grade_percent}),
        driving: (shift_pause_s: {pause_s}, launch_rpm: {launch_rpm}),
    ),
    sets: [(
        name: "Set 1", visible: true, shift_rpm: {shift_rpm}, final_drives: [Number({final_drive})],
        gears: [{gears}], {set}efficiency: {efficiency},
    )],
)
"#
    )
}

/// The answers about a vehicle, by flags and by a file.
fn answers(car: &Plain, beside: &Beside<'_>, questions: &[&str]) -> [Answer; 2] {
    let flags = flags_of(car, beside);
    let flags: Vec<&str> = flags.iter().map(String::as_str).collect();
    [
        answer([&["table"], &flags[..], questions].concat()),
        answer_about(&file_of(car, beside), questions),
    ]
}

/// What JSON tells of a project text.
pub(super) fn told_of_file(text: &str, questions: &str) -> Value {
    json_of(&answer_about(text, &as_format("json", questions)))
}

/// What JSON tells of a vehicle, the same by either way.
pub(super) fn told_beside(car: &Plain, beside: &Beside<'_>, questions: &str) -> Value {
    let [by_flags, by_file] =
        answers(car, beside, &as_format("json", questions)).map(|a| json_of(&a));
    assert_eq!(by_flags["sets"], by_file["sets"], "{questions}");
    by_file
}

/// The same of a vehicle of which there is nothing but plain numbers.
pub(super) fn told(car: &Plain, questions: &str) -> Value {
    told_beside(car, &Beside::default(), questions)
}

fn as_format<'a>(format: &'a str, questions: &'a str) -> Vec<&'a str> {
    let format = ["--as", format].into_iter();
    format.chain(questions.split(' ')).collect()
}

/// What a format for readers says of a vehicle, the same by either way.
pub(super) fn said(car: &Plain, format: &str, questions: &str) -> String {
    let [by_flags, by_file] = answers(car, &Beside::default(), &as_format(format, questions));
    assert_eq!(by_flags.printed(), by_file.printed(), "{questions}");
    by_file.stdout
}
