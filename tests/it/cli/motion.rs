//! Are effort and steady speeds printed as the laws give them, and what they need asked for in words?

use super::{Answer, answer, answer_to_one_set, json_of};
use crate::support::close::assert_close;
use serde_json::Value;

/// The vehicle of the check values, of which two methods gave the same figures.
pub(super) const VEHICLE_A: &[&str] = &[
    "table",
    "--as",
    "json",
    "--gears",
    "3.32 2.02 1.41 1.07 0.86",
    "--final",
    "3.9",
    "--circumference",
    "1795",
    "--redline",
    "7100",
    "--shift",
    "6500",
    "--idle",
    "850",
    "--torque",
    "1000:96 1500:110 2200:124 3000:136 3800:146 4600:152 5400:150 6000:143 6600:128 7200:104",
    "--mass",
    "1020",
    "--drag-area",
    "0.64",
    "--rolling",
    "0.0125",
    "--air-density",
    "1.2041",
    "--efficiency",
    "0.9",
    "--engine-inertia",
    "0.15",
    "--wheel-inertia",
    "3.2",
    "--driven",
    "rear",
    "--adhesion",
    "0.75",
    "--wheelbase",
    "2.26",
    "--cg-height",
    "0.47",
    "--front-share",
    "0.52",
    "--pause",
    "0.4",
    "--launch-rpm",
    "2800",
    "--displacement",
    "1.6",
    "--fuel",
    "petrol",
    "--willans",
    "0.4 1.7",
];

pub(super) fn json(arguments: &[&str]) -> Value {
    json_of(&answer(arguments.iter().copied()))
}

pub(super) fn of_a(more: &[&str]) -> Value {
    json(&[VEHICLE_A, more].concat())
}

/// The figure at a speed in one of the lists of a gear.
pub(super) fn figure(json: &Value, gear: usize, list: &str, kmh: f64, key: &str) -> f64 {
    let entries = json["sets"][0]["gears"][gear - 1][list].as_array().unwrap();
    let is_asked = |entry: &&Value| (entry["speed_kmh"].as_f64().unwrap() - kmh).abs() < 1e-9;
    let entry = entries
        .iter()
        .find(is_asked)
        .unwrap_or_else(|| panic!("{list} at {kmh}"));
    entry[key]
        .as_f64()
        .unwrap_or_else(|| panic!("{key} in {entry}"))
}

#[test]
fn the_checked_vehicle_has_its_efforts_accelerations_and_gradients() {
    let effort = of_a(&["--show", "effort", "--speed", "30,90,110"]);
    for (gear, list, kmh, key, is) in [
        (1, "points", 30.0, "tractive_effort_n", 5_872.680_6),
        (1, "points", 30.0, "grip_limit_n", 4_243.349_7),
        (1, "acceleration", 30.0, "acceleration_m_s2", 4.011_330_5),
        (3, "points", 90.0, "tractive_effort_n", 2_633.202_0),
        (3, "acceleration", 90.0, "acceleration_m_s2", 2.044_078_3),
        (
            1,
            "gradient_percent",
            30.0,
            "gradient_percent",
            40.882_695_5,
        ),
        (
            3,
            "gradient_percent",
            90.0,
            "gradient_percent",
            23.308_251_7,
        ),
        (
            5,
            "gradient_percent",
            110.0,
            "gradient_percent",
            10.186_726_0,
        ),
    ] {
        let digits = if key.ends_with("_n") { 5.1e-5 } else { 5.1e-8 };
        let found = figure(&effort, gear, list, kmh, key);
        assert!(
            (found - is).abs() < digits,
            "{key} in {gear} at {kmh}: {found}, not {is}"
        );
    }
    let set = &effort["sets"][0];
    let top = set["top_speed_kmh"].as_f64().unwrap();
    assert!((top - 207.095_026_8).abs() < 5.1e-8, "{top}");
    assert_eq!(set["top_speed_limit"], "power");
    let start = set["start_gradient_percent"].as_f64().unwrap();
    assert!((start - 41.171_690_7).abs() < 5.1e-8, "{start}");
}

#[test]
fn without_driven_and_adhesion_a_gradient_is_that_of_the_effort_alone() {
    let without: Vec<&str> = VEHICLE_A[1..]
        .chunks(2)
        .filter(|pair| pair[0] != "--driven")
        .flatten()
        .copied()
        .collect();
    let effort = json(
        &[
            &["table"],
            &without[..],
            &["--show", "effort", "--speed", "30"],
        ]
        .concat(),
    );
    let gradient = figure(&effort, 1, "gradient_percent", 30.0, "gradient_percent");
    assert!((gradient - 70.133_499_4).abs() < 5.1e-8, "{gradient}");
    let start = effort["sets"][0]["start_gradient_percent"].as_f64();
    let start = start.unwrap();
    assert!((start - 62.952_176_3).abs() < 5.1e-8, "{start}");
    assert!(effort["sets"][0]["gears"][0]["points"][0]["grip_limit_n"].is_null());
}

#[test]
fn each_gear_of_the_checked_vehicle_ends_at_the_redline_but_the_last() {
    for (gears, top, limit) in [
        ("3.32", 59.056_997_2, "redline"),
        ("3.32 2.02", 97.063_975_6, "redline"),
        ("3.32 2.02 1.41", 139.056_192_0, "redline"),
        ("3.32 2.02 1.41 1.07", 183.242_271_7, "redline"),
        ("3.32 2.02 1.41 1.07 0.86", 207.095_026_8, "power"),
    ] {
        let mut arguments = VEHICLE_A.to_vec();
        arguments[4] = gears;
        let effort = json(&[&arguments[..], &["--show", "effort"]].concat());
        let found = effort["sets"][0]["top_speed_kmh"].as_f64().unwrap();
        assert!((found - top).abs() < 5.1e-8, "{gears}: {found}");
        assert_eq!(effort["sets"][0]["top_speed_limit"], limit, "{gears}");
    }
}

#[test]
fn the_checked_vehicle_cruises_as_two_methods_said() {
    let cruise = of_a(&["--show", "cruise", "--speed", "90 120 240"]);
    for (gear, kmh, key, is) in [
        (5, 90.0, "engine_rpm", 2_802.785_5),
        (5, 90.0, "load_percent", 25.980_003_1),
        (5, 90.0, "power_kw", 10.162_633_0),
        (5, 90.0, "fuel_l_per_100km", 5.161_129_2),
        (5, 120.0, "engine_rpm", 3_737.047_4),
        (5, 120.0, "load_percent", 36.008_812_4),
        (5, 120.0, "power_kw", 20.487_379_0),
        (5, 120.0, "fuel_l_per_100km", 6.787_035_9),
        (4, 90.0, "engine_rpm", 3_487.186_6),
        (4, 90.0, "load_percent", 19.524_269_3),
        (4, 90.0, "fuel_l_per_100km", 5.645_913_3),
    ] {
        let digits = if key == "engine_rpm" { 5.1e-5 } else { 5.1e-8 };
        let found = figure(&cruise, gear, "cruise", kmh, key);
        assert!(
            (found - is).abs() < digits,
            "{key} in {gear} at {kmh}: {found}, not {is}"
        );
    }
    // Of a speed that the gear does not hold only the engine speed is told.
    let first = &cruise["sets"][0]["gears"][0]["cruise"][1];
    let turns = first["engine_rpm"].as_f64().unwrap();
    assert_close(
        turns,
        3.32 * 3.9 * 120.0 / 3.6 * 60.0 / 1.795,
        1e-9,
        "engine_rpm",
    );
    for key in ["load_percent", "power_kw", "fuel_l_per_100km"] {
        assert!(first[key].is_null(), "{key}");
        assert!(
            cruise["sets"][0]["gears"][4]["cruise"][2][key].is_null(),
            "{key}"
        );
    }
}

/// 90 kW at any speed, by twenty points in geometric steps, on a road load of 200 N and 0.4 N/(m/s)².
#[test]
fn constant_power_is_as_fast_as_the_closed_form_says() {
    let torque = |rpm: f64| 90_000.0 / (rpm * std::f64::consts::PI / 30.0);
    let points = (0..20).map(|at| {
        let rpm = 1000.0 * 7.0_f64.powf(f64::from(at) / 19.0);
        format!("{rpm}:{}", torque(rpm))
    });
    let points = points.collect::<Vec<_>>().join(" ");
    // R v = 90 kW with R = 1800 N throughout: 50 m/s, where the engine turns 5000 rpm.
    let circumference = "1200";
    let ratio = "2";
    let arguments = |load: &'static str| {
        [
            "table",
            "--as",
            "json",
            "--show",
            "effort",
            "--gears",
            ratio,
            "--final",
            "1",
            "--circumference",
            circumference,
            "--redline",
            "7000",
            "--torque",
            &points,
            "--mass",
            "1000",
            "--efficiency",
            "1",
            "--road-load",
            load,
        ]
        .map(str::to_owned)
    };
    for load in ["1800 0 0", "0 36 0", "0 0 0.72"] {
        let effort = json_of(&answer(arguments(load)));
        let top = effort["sets"][0]["top_speed_kmh"].as_f64().unwrap();
        assert!((top - 180.0).abs() < 0.05, "{load}: {top}");
        assert_eq!(effort["sets"][0]["top_speed_limit"], "power");
    }
}

/// R = 176.58 + 0.4 v², 80 % efficiency: at 25 m/s 426.58 N, 13330.625 W.
#[test]
fn a_steady_speed_takes_what_the_closed_form_says() {
    let cruise = json(&[
        "table",
        "--as",
        "json",
        "--show",
        "cruise",
        "--gears",
        "1",
        "--final",
        "2",
        "--circumference",
        "2000",
        "--redline",
        "6000",
        "--torque",
        "500:100 6000:100",
        "--mass",
        "1200",
        "--efficiency",
        "0.8",
        "--road-load",
        "176.58 0 0.4",
        "--speed",
        "90",
        "--displacement",
        "2",
        "--willans",
        "0.4 1.6",
    ]);
    let figure = |key| figure(&cruise, 1, "cruise", 90.0, key);
    assert_close(figure("engine_rpm"), 1500.0, 1e-9, "engine_rpm");
    assert_close(figure("power_kw"), 13.330_625, 1e-9, "power_kw");
    let full_kw = 100.0 * 1500.0 * std::f64::consts::PI / 30.0 / 1000.0;
    assert_close(
        figure("load_percent"),
        1_333.062_5 / full_kw,
        1e-9,
        "load_percent",
    );
    // Friction: 1.6 bar, 2 L, 1500 rpm, four strokes: 4 kW.
    let litres = 17_330.625 / 0.4 / 32e6 / 25.0 * 1e5;
    assert_close(figure("fuel_l_per_100km"), litres, 1e-9, "fuel_l_per_100km");
}

#[test]
fn a_gear_has_fifty_points_and_more_from_its_lowest_speed_to_its_highest() {
    let effort = of_a(&["--show", "effort", "--speed", "40,140"]);
    for gear in effort["sets"][0]["gears"].as_array().unwrap() {
        let points = gear["points"].as_array().unwrap();
        let kmh: Vec<f64> = points
            .iter()
            .map(|p| p["speed_kmh"].as_f64().unwrap())
            .collect();
        assert!(kmh.len() >= 50, "{}", kmh.len());
        assert!(kmh.windows(2).all(|pair| pair[0] < pair[1]), "{kmh:?}");
        assert_close(
            kmh[kmh.len() - 1] / kmh[0],
            7.1,
            1e-9,
            "from 1000 to 7100 rpm",
        );
        for asked in [40.0, 140.0] {
            let is_covered = (kmh[0]..kmh[kmh.len() - 1]).contains(&asked);
            assert_eq!(kmh.contains(&asked), is_covered, "{asked} in {kmh:?}");
        }
        assert!(points.iter().all(|p| p["tractive_effort_n"].is_number()));
        assert_eq!(gear["acceleration"].as_array().unwrap().len(), kmh.len());
        assert_eq!(gear["gradient_percent"].as_array().unwrap().len(), 2);
    }
}

#[test]
fn each_set_may_have_its_efficiency() {
    let more = [
        "--efficiency",
        "0.9",
        "--efficiency",
        "0.45",
        "--gears",
        "3.32",
        "--show",
        "effort",
    ];
    let mut arguments: Vec<&str> = Vec::new();
    for pair in VEHICLE_A[1..].chunks(2) {
        if pair[0] != "--efficiency" {
            arguments.extend(pair);
        }
    }
    let effort = json(&[&["table"], &arguments[..], &more[..]].concat());
    let force = |set: usize| {
        let points = &effort["sets"][set]["gears"][0]["points"];
        points[0]["tractive_effort_n"].as_f64().unwrap()
    };
    assert_close(force(0), 2.0 * force(1), 1e-9, "twice the efficiency");
}

#[test]
fn what_is_not_known_is_asked_for_in_one_sentence() {
    let known = [
        "--torque",
        "1000:100 6000:120",
        "--mass",
        "1000",
        "--rolling",
        "0.01",
    ];
    for (given, says) in [
        (
            0,
            "the torque curve of the engine is not known; without a file, --torque, \
             --pasted-torque or --brochure gives it",
        ),
        (
            2,
            "the mass of the vehicle is not known; without a file, --mass gives it",
        ),
        (4, "the rolling coefficient of the tyres is not known"),
        (6, "the drag area of the vehicle is not known"),
    ] {
        for show in ["effort", "cruise"] {
            let more = [&known[..given], &["--as", "json", "--show", show]].concat();
            let answer = answer_to_one_set("table", &more);
            let sentence = answer.sentence();
            assert!(sentence.contains(says), "{sentence}");
            assert!(sentence.contains(&format!("--show {show}: ")), "{sentence}");
        }
    }
    let one_axle = [
        "--drag-area",
        "0.6",
        "--driven",
        "front",
        "--adhesion",
        "0.8",
    ];
    let more = [&known[..], &one_axle, &["--as", "json", "--show", "effort"]].concat();
    let answer = answer_to_one_set("table", &more);
    assert!(
        answer.sentence().contains("--front-share gives it"),
        "{answer:?}"
    );
}

#[test]
fn what_cannot_be_is_refused_with_its_flag() {
    for (more, says) in [
        (
            &["--torque", "1000 100"][..],
            "--torque has points such as 2500:130",
        ),
        (
            &["--torque", "1000:100"],
            "--torque: a torque curve has 2 to 200 points, not 1",
        ),
        (
            &["--torque", "2000:100 1000:90"],
            "--torque: the engine speeds of a torque curve rise",
        ),
        (
            &["--torque", "2000:100 3000:90000"],
            "a torque must be between 0 and 20000 N·m, not \"90000\"",
        ),
        (
            &["--mass", "20"],
            "--mass: a mass must be between 50 and 100000 kg, not \"20\"",
        ),
        (
            &["--grade", "90"],
            "--grade: a grade must be between -50 and 50 %",
        ),
        (
            &["--driven", "left"],
            "--driven is front, rear or all, not \"left\"",
        ),
        (
            &["--mass-factor", "formula", "--wheel-inertia", "3"],
            "--mass-factor: the mass factor by formula covers",
        ),
        (
            &["--mass-factor", "some"],
            "--mass-factor is none or formula",
        ),
        (
            &["--road-load", "100 0"],
            "--road-load is three numbers, A B C",
        ),
        (
            &["--road-load", "100 0 0.4", "--drag-area", "0.6"],
            "give --road-load, or --drag-area",
        ),
        (
            &["--road-load", "100 0 0.4", "--rolling", "0.01"],
            "give --road-load, or --drag-area",
        ),
        (&["--willans", "0.4"], "--willans is two numbers"),
        (&["--fuel", "coal"], "--fuel is petrol or diesel"),
        (
            &["--efficiency", "90"],
            "--efficiency: an efficiency must be between 0.01 and 1",
        ),
        (
            &["--efficiency", "0.9", "--efficiency", "0.8"],
            "--efficiency is given 2 times for one gear set",
        ),
        (
            &["--show", "pull"],
            "--show is speed, effort, run, cruise or speedometer, not \"pull\"",
        ),
    ] {
        let answer = answer_to_one_set("table", more);
        assert!(answer.sentence().contains(says), "{more:?}: {answer:?}");
    }
    let with_file = answer(["table", "saves/camper-van.ron", "--mass", "1000"]);
    assert!(
        with_file.sentence().contains("--mass describes"),
        "{with_file:?}"
    );
}

#[test]
fn a_grade_below_0_is_a_fall() {
    let fall = of_a(&["--show", "effort", "--speed", "90", "--grade", "-5"]);
    let level = of_a(&["--show", "effort", "--speed", "90"]);
    let load = |json: &Value| figure(json, 5, "points", 90.0, "road_load_n");
    assert!(load(&fall) < 0.0 && load(&level) > 0.0);
    let gradient = |json: &Value| figure(json, 5, "gradient_percent", 90.0, "gradient_percent");
    assert_close(
        gradient(&fall),
        gradient(&level),
        1e-12,
        "whatever the grade",
    );
}

#[test]
fn a_reader_sees_a_minus_where_a_figure_is_below_0() {
    // Downhill the load is, and on a hill too steep for a gear its acceleration.
    for grade in ["-5", "45"] {
        for show in ["effort", "cruise"] {
            let mut arguments = VEHICLE_A.to_vec();
            arguments[2] = "text";
            arguments.extend(["--show", show, "--speed", "90", "--grade", grade]);
            let said = answer(arguments).printed().to_owned();
            assert!(!said.contains(" -"), "no hyphen for a minus: {said}");
        }
    }
}

/// The checked vehicle as a project file, with one gear that has an efficiency of its own.
const FILE_OF_A: &str = r#"(
    format: 2,
    units: Kmh,
    tyre: RollingCircumferenceMm(1795),
    engine: (idle_rpm: 850, redline_rpm: 7100),
    marked_road_speeds_kmh: [90, 120],
    baseline: 1,
    technical: (
        engine: (
            torque: Points([
                (rpm: 1000, torque_nm: 96), (rpm: 1500, torque_nm: 110), (rpm: 2200, torque_nm: 124),
                (rpm: 3000, torque_nm: 136), (rpm: 3800, torque_nm: 146), (rpm: 4600, torque_nm: 152),
                (rpm: 5400, torque_nm: 150), (rpm: 6000, torque_nm: 143), (rpm: 6600, torque_nm: 128),
                (rpm: 7200, torque_nm: 104),
            ]),
            inertia_kgm2: 0.15,
            displacement_l: 1.6,
            willans: (slope_efficiency: 0.4, friction_bar: 1.7),
        ),
        vehicle: (
            mass_kg: 1020, rolling_coefficient: 0.012_5, drag_area_m2: 0.64, driven: Rear,
            adhesion: 0.75, wheelbase_m: 2.26, cg_height_m: 0.47, front_share: 0.52,
            wheel_inertia_kgm2: 3.2,
        ),
        driving: (shift_pause_s: 0.4, launch_rpm: 2800),
    ),
    sets: [(
        name: "Set 1", visible: true, shift_rpm: 6500, final_drives: [Number(3.9)],
        gears: [
            (label: "1", ratio: Number(3.32)), (label: "2", ratio: Number(2.02)),
            (label: "3", ratio: Number(1.41)), (label: "4", ratio: Number(1.07)),
            (label: "5", ratio: Number(0.86)),
        ],
        efficiency: 0.9,
    )],
)
"#;

/// The answer of `table` about a project text.
pub(super) fn answer_about(text: &str, more: &[&str]) -> Answer {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::write(&file, text).unwrap();
    answer([&["table", file.to_str().unwrap()], more].concat())
}

/// What `table` prints of a project text at the speeds that it marks.
fn of_file(text: &str, show: &str) -> Result<Value, String> {
    let answer = answer_about(text, &["--as", "json", "--show", show]);
    if answer.stdout.is_empty() {
        return Err(answer.sentence().to_owned());
    }
    Ok(json_of(&answer))
}

#[test]
fn a_file_gives_the_figures_that_flags_give_at_the_speeds_that_it_marks() {
    for show in ["effort", "run", "cruise"] {
        let by_flags = of_a(&["--show", show, "--speed", "90,120"]);
        let by_file = of_file(FILE_OF_A, show).unwrap();
        assert_eq!(by_file["sets"], by_flags["sets"], "{show}");
    }
}

#[test]
fn a_known_consumption_comes_out_where_it_is_known_and_scales_all_others() {
    let fuel = |cruise: &Value, gear, kmh| figure(cruise, gear, "cruise", kmh, "fuel_l_per_100km");
    let known = "known_fuel: (set: 1, gear: \"5\", speed_kmh: 90, l_per_100km: 6), ";
    let text = FILE_OF_A.replacen("vehicle: (", &format!("{known}vehicle: ("), 1);
    let scaled = of_file(&text, "cruise").unwrap();
    let estimate = of_file(FILE_OF_A, "cruise").unwrap();
    assert_close(fuel(&scaled, 5, 90.0), 6.0, 1e-12, "where it is known");
    let factor = 6.0 / fuel(&estimate, 5, 90.0);
    let elsewhere = factor * fuel(&estimate, 4, 120.0);
    assert_close(fuel(&scaled, 4, 120.0), elsewhere, 1e-12, "elsewhere");
    let far = text.replacen("l_per_100km: 6)", "l_per_100km: 60)", 1);
    let sentence = of_file(&far, "cruise").unwrap_err();
    assert!(sentence.contains("more than 5 times off"), "{sentence}");
}

#[test]
fn what_is_absent_is_a_starting_value_where_the_kind_of_vehicle_is_known() {
    let start = FILE_OF_A.find("        vehicle: (").unwrap();
    let end = FILE_OF_A.find("    sets: [").unwrap();
    let of_kind = |vehicle: &str| {
        let vehicle = format!("        vehicle: ({vehicle}),\n    ),\n");
        [&FILE_OF_A[..start], &vehicle, &FILE_OF_A[end..]].concat()
    };
    let typed = "mass_kg: 1100, drag_coefficient: 0.36, frontal_area_m2: 1.75, rolling_coefficient: \
                 0.012, driven: Rear, adhesion: 0.85, wheelbase_m: 2.3, cg_height_m: 0.47, \
                 front_share: 0.52";
    let [by_kind, by_hand] = ["kind: SportsCar", typed].map(|v| of_file(&of_kind(v), "effort"));
    assert_eq!(by_kind.unwrap(), by_hand.unwrap());
    let sentence = of_file(&of_kind(""), "effort").unwrap_err();
    assert!(
        sentence.contains("the mass of the vehicle is not known"),
        "{sentence}"
    );
}

#[test]
fn a_set_with_an_engine_of_its_own_has_the_force_of_that() {
    let own = "efficiency: 0.9, engine: (torque: Points([(rpm: 1000, torque_nm: 200), \
               (rpm: 7000, torque_nm: 200)]), inertia_kgm2: 0.15)";
    let effort = of_file(&FILE_OF_A.replacen("efficiency: 0.9", own, 1), "effort").unwrap();
    let found = figure(&effort, 5, "points", 90.0, "tractive_effort_n");
    let radius_m = 1.795 / 2.0 / std::f64::consts::PI;
    assert_close(found, 0.9 * 200.0 * 0.86 * 3.9 / radius_m, 1e-9, "in fifth");
}

#[test]
fn a_reader_gets_the_figures_rounded_and_a_spreadsheet_gets_them_whole() {
    let printed = |show: &str, format: &str| {
        let mut arguments = VEHICLE_A.to_vec();
        arguments[2] = format;
        arguments.extend(["--show", show, "--speed", "90"]);
        answer(arguments).printed().to_owned()
    };
    let cells = |text: &str, gear: &str| -> Vec<String> {
        let row = text.lines().map(|line| line.replace('|', " "));
        let row = row.map(|line| {
            line.split_whitespace()
                .map(str::to_owned)
                .collect::<Vec<_>>()
        });
        let mut rows = row.filter(|cells| cells.first().is_some_and(|first| first == gear));
        rows.next()
            .unwrap_or_else(|| panic!("gear {gear} in {text}"))
    };
    for format in ["text", "markdown", "bbcode"] {
        let effort = printed("effort", format);
        assert!(
            effort.contains("Top speed 207 km/h in 5, limited by power."),
            "{effort}"
        );
        assert_eq!(cells(&effort, "3"), ["3", "2633", "366", "2.04", "23.3"]);
        assert_eq!(cells(&effort, "1"), ["1"], "it does not reach 90 km/h");
        let cruise = printed("cruise", format);
        assert_eq!(
            cells(&cruise, "5"),
            ["5", "2800", "26.0", "10.2", "29.0", "5.2"]
        );
        assert!(
            cruise.contains("Fuel is an estimate, 20 % either way."),
            "{cruise}"
        );
    }
    let csv = printed("cruise", "csv");
    let head =
        "set,name,part,row,fuel (L/100 km),engine speed (rpm),engine speed at 90 km/h (rpm),";
    assert!(csv.starts_with(head), "{csv}");
    let fifth = csv
        .lines()
        .find(|line| line.starts_with("1,Set 1,Every gear,5,"))
        .unwrap();
    assert!(fifth.contains(",25.980003"), "{fifth}");
}
