//! Do flags and project files give every published figure and every closed form of motion?
//!
//! Each vehicle is described twice, and what is printed of it has to be the same. The figures, each with its
//! source, stand in `tests/it/published/motion/checked.rs`.

use super::described::{Beside, file_of, list, said, told, told_beside, told_of_file};
use super::motion::figure;
use super::runs::{entry, number};
use crate::published::motion::checked::{
    AFTER_THE_CHANGE, AIR_KG_M3, AIR_KW, AS_FAST, BEST_CHANGES, BEST_ON_A_SLOPE, BETWEEN,
    COAST_DOWN, CONSTANT_FORCE, CONSTANT_FORCE_IN_GEAR, CONSTANT_FORCE_QUARTER, CONSTANT_POWER,
    CRUISE, CURVE, DIRECT_SHARE, FINAL_SHARE, FIVE_SHARES, FOUR_ACCELERATIONS, FRONTAL_M2,
    GRIP_THEN_POWER, GRIP_THEN_POWER_QUARTER, HARDEST, HARDEST_RPM, KMH, MOTORCYCLES,
    QUARTER_MILE_M, ROLLOUT, SAME_POWER, SLIPPING, TOP_SPEED, TWO_GEARS, cruising, falling_torque,
    five_gears, four_gears, four_m_s2, four_thousand_n, grip_then_power, hundred_kw, motorcycle,
    ninety_kw, on_a_slope, power_points, power_points_around, rolling_down, slipping, two_gears,
};
use crate::published::row::{Published, assert_rows};
use crate::support::close::assert_close;
use crate::support::plain_vehicle::{Held, PER_THOUSAND_N, Plain};
use layshaft::motion::{GRAVITY_M_S2, torque_of_power_nm};
use serde_json::Value;

/// Time in s and way in m of an entry, beside what they should be.
fn passage<'a>(
    what: &'a str,
    entry: &Value,
    [time_s, distance_m]: [Published; 2],
) -> [(&'a str, f64, Published); 2] {
    [
        (what, number(entry, "time_s"), time_s),
        (what, number(entry, "distance_m"), distance_m),
    ]
}

/// Time in s and speed in m/s at a quarter of a mile, beside what they should be.
fn quarter(run: &Value, [time_s, speed_m_s]: [Published; 2]) -> [(&str, f64, Published); 2] {
    let quarter = &run["sets"][0]["distances"][1];
    assert_close(number(quarter, "distance_m"), QUARTER_MILE_M, 1e-9, "m");
    let found_m_s = number(quarter, "speed_kmh") * KMH;
    [
        ("s for a quarter", number(quarter, "time_s"), time_s),
        ("m/s at a quarter", found_m_s, speed_m_s),
    ]
}

fn first_acceleration(effort: &Value, gear: usize) -> f64 {
    let of_gear = &effort["sets"][0]["gears"][gear]["acceleration"][0];
    number(of_gear, "acceleration_m_s2")
}

/// The torque of a constant power runs along a hyperbola, which the monotone cubic between its points only comes
/// near; that alone is what is left here. Twenty points in geometric steps are good to the promised millionth of
/// a second where the outer two lie a step beyond the stretch that is driven. Where it begins and ends with the
/// curve, they are good to 1.3e-5 s: at its ends a slope is guessed from one side, and six times as badly as
/// between two neighbours. From 5 to 60 m/s, most of which is not driven, it is 2.1e-5 s.
#[test]
fn constant_power_is_as_exact_as_its_points() {
    let (from_m_s, to_m_s) = (10.0_f64, 100.0 * KMH);
    let exact = |power: i32| {
        let gain = to_m_s.powi(power) - from_m_s.powi(power);
        1500.0 / 90_000.0 * gain / f64::from(power)
    };
    let driven = [100.0 * from_m_s, 100.0 * to_m_s];
    for (points, within_s, within_m) in [
        (power_points_around(90_000.0, driven, 20), 1e-6, 1e-5),
        (power_points(90_000.0, driven, 20), 1.3e-5, 4e-4),
        (power_points(90_000.0, [500.0, 6000.0], 20), 2.1e-5, 3.2e-4),
        (power_points_around(90_000.0, driven, 40), 4e-8, 4e-7),
    ] {
        let run = told(&ninety_kw(&points), "--show run --from 36 --to 100");
        let hundred = entry(&run, "times", [36.0, 100.0], Some("1"));
        assert_close(number(hundred, "time_s"), exact(2), within_s, "s");
        assert_close(number(hundred, "distance_m"), exact(3), within_m, "m");
        if points.len() == 40 {
            assert_rows(passage("to 100 km/h", hundred, CONSTANT_POWER));
        }
    }
}

/// Of twenty points around what is driven from 15 m/s, those to 100 km/h are good to 3e-7 s there, and those to
/// the 41 m/s at a quarter of a mile to 1.3e-6 s; from 5 to 45 m/s it is 1.1e-5 s.
#[test]
fn grip_at_first_and_constant_power_from_there() {
    let run = |points: &[(f64, f64)]| told(&grip_then_power(points), "--show run --to 100");
    let time_s = |run: &Value| number(entry(run, "times", [0.0, 100.0], None), "time_s");
    let quarter_s = |run: &Value| number(&run["sets"][0]["distances"][1], "time_s");
    let (exact_s, exact_quarter_s) = (8.305_041_152, 16.127_795_620);
    let [to_hundred, to_quarter] = [100.0 * KMH, 41.356_202].map(|m_s| [1500.0, 100.0 * m_s]);
    let hundred = run(&power_points_around(90_000.0, to_hundred, 20));
    assert_close(time_s(&hundred), exact_s, 3e-7, "s to 100 km/h");
    for (points, within_s) in [
        (power_points_around(90_000.0, to_quarter, 20), 1.3e-6),
        (power_points(90_000.0, [500.0, 4500.0], 20), 1.1e-5),
    ] {
        assert_close(quarter_s(&run(&points)), exact_quarter_s, within_s, "s");
    }
    let exact = run(&power_points_around(90_000.0, to_quarter, 40));
    assert_rows([("s to 100 km/h", time_s(&exact), GRIP_THEN_POWER)]);
    assert_rows(quarter(&exact, GRIP_THEN_POWER_QUARTER));
}

#[test]
fn a_constant_force_against_the_air() {
    let run = told(&four_thousand_n(), "--show run --to 100");
    let hundred = entry(&run, "times", [0.0, 100.0], None);
    let in_gear = entry(&run, "times", [80.0, 120.0], Some("1"));
    let in_gear_s = number(in_gear, "time_s");
    assert_rows(passage("to 100 km/h", hundred, CONSTANT_FORCE));
    assert_rows(quarter(&run, CONSTANT_FORCE_QUARTER));
    assert_rows([("80-120 km/h", in_gear_s, CONSTANT_FORCE_IN_GEAR)]);
    let asked = told(&four_thousand_n(), "--show run --from 80 --to 120");
    assert_eq!(entry(&asked, "times", [80.0, 120.0], Some("1")), in_gear);
}

#[test]
fn a_foot_of_rollout_under_a_constant_acceleration() {
    let run = told(&four_m_s2(), "--show run --to 50");
    let rollout_s = number(&run["sets"][0], "rollout_s");
    assert_rows([("4 m/s²", rollout_s, ROLLOUT)]);
}

#[test]
fn coasting_down_against_air_and_tyres() {
    let run = told(&rolling_down(), "--show run --coast 120:60");
    assert_rows(passage("coast", &run["sets"][0]["coast"], COAST_DOWN));
}

#[test]
fn from_seventy_to_sixty_a_motorcycle_rolls_as_long_as_the_regulation_says() {
    assert_rows(MOTORCYCLES.map(|(of, expected)| {
        let run = told(&motorcycle(of), "--show run --coast 70:60");
        let found_s = number(&run["sets"][0]["coast"], "time_s");
        (format!("{} kg", of[0]), found_s, expected)
    }));
}

#[test]
fn a_change_with_a_pause_between_two_forces() {
    for (load, expected) in TWO_GEARS {
        let run = told(&two_gears(load), "--show run --to 100");
        let hundred = entry(&run, "times", [0.0, 100.0], None);
        assert_rows(passage("to 100 km/h", hundred, expected));
    }
}

#[test]
fn equal_effort_and_equal_acceleration_are_where_algebra_puts_them() {
    for (ratios, turns, expected) in BEST_CHANGES {
        let run = told(&falling_torque(ratios, turns), "--show run");
        let best_rpm = run["sets"][0]["best_shift_rpm"][0].as_f64().unwrap();
        assert_rows([(format!("{ratios:?}, {turns}"), best_rpm, expected)]);
    }
    let car = Plain {
        shift_rpms: vec![5714.2857],
        ..falling_torque([2.0, 1.5], false)
    };
    let shifts = told(&car, "--show speed");
    let after_rpm = number(&shifts["sets"][0]["gears"][0], "rpm_after_shift");
    assert_rows([("after it", after_rpm, AFTER_THE_CHANGE)]);
}

#[test]
fn the_top_speed_of_a_constant_power_is_the_root_of_its_cubic() {
    let effort = told(&hundred_kw(), "--show effort");
    let set = &effort["sets"][0];
    let top_m_s = number(set, "top_speed_kmh") * KMH;
    assert_rows([("200 N, 0.4, 100 kW", top_m_s, TOP_SPEED)]);
    assert_eq!(set["top_speed_limit"], "power");
}

#[test]
fn consumption_at_three_engine_speeds_is_the_worked_one() {
    let beside = Beside {
        flags: &["--displacement", "2", "--willans", "0.42 1.6"],
        engine: "displacement_l: 2, willans: (slope_efficiency: 0.42, friction_bar: 1.6), ",
        ..Beside::default()
    };
    assert_rows(CRUISE.map(|(rpm, expected)| {
        let cruise = told_beside(&cruising(rpm), &beside, "--show cruise --speed 100");
        let litres = figure(&cruise, 1, "cruise", 100.0, "fuel_l_per_100km");
        (rpm, litres, expected)
    }));
}

#[test]
fn torque_between_the_points_is_that_of_the_monotone_cubic() {
    let car = Plain::bare(1500.0, &[4.0], &CURVE);
    let kmh = |rpm: f64| rpm / 100.0 / KMH;
    let speeds = list(&BETWEEN, |(rpm, _)| kmh(*rpm).to_string(), ",");
    let effort = told(&car, &format!("--show effort --speed {speeds}"));
    assert_rows(BETWEEN.map(|(rpm, expected)| {
        let force_n = figure(&effort, 1, "points", kmh(rpm), "tractive_effort_n");
        (rpm, force_n * PER_THOUSAND_N / 4000.0, expected)
    }));
}

#[test]
fn the_best_ratio_on_a_slope_is_the_printed_one() {
    let ratios = [16.0, 14.0, 13.0, 12.98, 12.97, 12.96, 12.9, 12.0, 10.0];
    let effort = told(&on_a_slope(&ratios), "--show effort");
    let accelerations = (0..ratios.len()).map(|gear| first_acceleration(&effort, gear));
    let of_ratios = ratios.into_iter().zip(accelerations);
    let (ratio, highest) = of_ratios.max_by(|a, b| a.1.total_cmp(&b.1)).unwrap();
    let [best, acceleration] = BEST_ON_A_SLOPE;
    assert_rows([
        ("ratio", ratio, best),
        ("acceleration", highest, acceleration),
    ]);
}

#[test]
fn four_gears_accelerate_as_printed() {
    let car = four_gears();
    let direct = Plain {
        efficiency: DIRECT_SHARE,
        ..car.clone()
    };
    let [lossy, direct] = [&car, &direct].map(|car| told(car, "--show effort"));
    let set = format!("gear_efficiencies: [(gear: \"4\", efficiency: {DIRECT_SHARE})], ");
    let of_gears = Beside {
        set: &set,
        ..Beside::default()
    };
    let by_file = told_of_file(&file_of(&car, &of_gears), "--show effort");
    for (gear, expected) in FOUR_ACCELERATIONS.into_iter().enumerate() {
        let by_set = if gear == 3 { &direct } else { &lossy };
        assert_rows([
            ("by sets", first_acceleration(by_set, gear), expected),
            ("by gears", first_acceleration(&by_file, gear), expected),
        ]);
    }
}

#[test]
fn a_rear_driven_car_that_slips_accelerates_as_printed() {
    let car = slipping();
    let effort = told(&car, "--show effort");
    let grip_n = number(&effort["sets"][0]["gears"][0]["points"][0], "grip_limit_n");
    let rear_n = grip_n / 0.25;
    let weight_n = car.mass_kg * GRAVITY_M_S2;
    let [acceleration, rear, front] = SLIPPING;
    assert_rows([
        ("acceleration", first_acceleration(&effort, 0), acceleration),
        ("rear axle", rear_n, rear),
        ("front axle", weight_n - rear_n, front),
    ]);
}

#[test]
fn the_air_takes_the_printed_power() {
    let density = AIR_KG_M3.to_string();
    for ((coefficient, kmh), expected) in SAME_POWER.into_iter().zip(AIR_KW) {
        let car = Plain {
            held: Held::Estimated(0.0, coefficient * FRONTAL_M2),
            ..four_thousand_n()
        };
        let beside = Beside {
            flags: &["--air-density", &density],
            vehicle: &format!("air_density_kg_m3: {density}, "),
            ..Beside::default()
        };
        let question = format!("--show cruise --speed {kmh}");
        let by_area = told_beside(&car, &beside, &question);
        // A file may have the shape in place of the area.
        let (area, shape) = (
            format!("drag_area_m2: {}", coefficient * FRONTAL_M2),
            format!("drag_coefficient: {coefficient}, frontal_area_m2: {FRONTAL_M2}"),
        );
        let file = file_of(&car, &beside).replacen(&area, &shape, 1);
        let by_shape = told_of_file(&file, &question);
        assert_rows([by_area, by_shape].map(|told| {
            let kw = figure(&told, 1, "cruise", kmh, "power_kw");
            (format!("c_d {coefficient}"), kw, expected)
        }));
    }
}

/// The other way round: the speed that the power of the first drag coefficient gives the second.
#[test]
fn with_less_drag_the_same_power_is_as_fast_as_printed() {
    let [(more, slower_kmh), (less, kmh)] = SAME_POWER;
    let c = |coefficient: f64| 0.5 * AIR_KG_M3 * coefficient * FRONTAL_M2;
    let power_w = c(more) * (slower_kmh * KMH).powi(3);
    let speeds = [500.0, 1000.0, 100.0 * kmh * KMH, 3000.0];
    let points = speeds.map(|rpm| (rpm, torque_of_power_nm(power_w, rpm)));
    let car = Plain {
        held: Held::Measured(0.0, 0.0, c(less)),
        ..ninety_kw(&points)
    };
    let effort = told(&car, "--show effort");
    let top_kmh = number(&effort["sets"][0], "top_speed_kmh");
    assert_rows([("top speed", top_kmh, AS_FAST)]);
}

#[test]
fn first_and_fifth_of_the_example_pull_as_recalled() {
    let car = five_gears();
    let share = |gear: usize| FIVE_SHARES[gear] * FINAL_SHARE;
    let gears: Vec<usize> = (0..4).collect();
    let of_gear = |gear: &usize| format!("(gear: \"{}\", efficiency: {})", gear + 1, share(*gear));
    // Fifth is direct.
    let set = format!(
        "direct_efficiency: {}, gear_efficiencies: [{}], ",
        share(4),
        list(&gears, of_gear, ", ")
    );
    let of_gears = Beside {
        set: &set,
        ..Beside::default()
    };
    for (gear, [force, speed]) in HARDEST {
        let overall = car.ratios[gear] * car.final_drive;
        let kmh = HARDEST_RPM / overall * car.circumference_mm * 60.0 / 1e6;
        let question = format!("--show effort --speed {kmh}");
        let alone = Plain {
            efficiency: share(gear),
            ..car.clone()
        };
        let by_set = told(&alone, &question);
        let by_gears = told_of_file(&file_of(&car, &of_gears), &question);
        for told in [by_set, by_gears] {
            let points = told["sets"][0]["gears"][gear]["points"].as_array().unwrap();
            let force_n = |point: &&Value| number(point, "tractive_effort_n");
            let hardest = points
                .iter()
                .max_by(|a, b| force_n(a).total_cmp(&force_n(b)));
            let hardest = hardest.unwrap();
            assert_rows([
                ("N", number(hardest, "tractive_effort_n"), force),
                ("km/h", number(hardest, "speed_kmh"), speed),
            ]);
        }
    }
}

/// The texts for readers.
const FORMATS: [&str; 3] = ["text", "markdown", "bbcode"];

fn assert_says(car: &Plain, questions: &str, words: &[&str]) {
    for format in FORMATS {
        let said = said(car, format, questions);
        for words in words {
            assert!(said.contains(words), "{format}: {words} in {said}");
        }
    }
}

/// 4000 N on 1500 kg hold 28.3 % at most.
#[test]
fn a_vehicle_that_cannot_move_has_no_times_and_what_is_asked_beside_them() {
    let car = Plain {
        grade_percent: 50.0,
        ..rolling_down()
    };
    let run = told(&car, "--show run --to 50,100 --coast 120:60");
    let set = &run["sets"][0];
    assert!(
        set["times"]
            .as_array()
            .unwrap()
            .iter()
            .all(|time| time["gear"] == "1")
    );
    for none in ["times_best", "distances"] {
        assert_eq!(set[none], serde_json::json!([]), "{none}");
    }
    assert!(set["rollout_s"].is_null());
    assert!(number(&set["coast"], "time_s") > 0.0);
    let says = ["on a grade of 50 %", "Does not start at 500 rpm"];
    assert_says(&car, "--show run --to 50,100 --coast 120:60", &says);
    let row = said(&car, "csv", "--show run --to 50");
    assert!(row.contains("From rest,to 50 km/h,,,,,"), "{row}");
}

/// 4000 N = 200 N + 0.4 · v² at 97.468 m/s, 350.9 km/h: it comes ever nearer.
#[test]
fn a_target_that_is_never_reached_is_left_out_and_said() {
    let car = rolling_down();
    let run = told(&car, "--show run --to 100,300,360");
    let times = run["sets"][0]["times"].as_array().unwrap().iter();
    let from_rest = times.filter(|time| time["gear"].is_null());
    let reached: Vec<f64> = from_rest.map(|time| number(time, "to_kmh")).collect();
    assert_eq!(reached, [100.0, 300.0]);
    let says = ["Does not reach 360 km/h in 10 minutes"];
    assert_says(&car, "--show run --to 100,300,360", &says);
    let says = ["No gear goes from 100 to 360 km/h"];
    assert_says(&car, "--show run --from 100 --to 300,360", &says);
    let told = said(&car, "text", "--show run --to 100,300");
    assert!(!told.contains("Does not"), "{told}");
}

/// Without resistance a = F ÷ m + g · sin α; against 200 N + 0.4 · v² it takes no power down there at 90 km/h.
#[test]
fn downhill_the_weight_pulls_along_and_says_so() {
    let [free, held] = [four_thousand_n(), rolling_down()].map(|car| Plain {
        grade_percent: -15.0,
        ..car
    });
    let free = Plain {
        held: Held::Measured(0.0, 0.0, 0.0),
        ..free
    };
    let pull_m_s2 = 4000.0 / 1500.0 + GRAVITY_M_S2 * 0.15_f64.atan().sin();
    let run = told(&free, "--show run --to 100 --coast 120:60");
    let hundred = entry(&run, "times", [0.0, 100.0], None);
    assert_close(
        number(hundred, "time_s"),
        100.0 * KMH / pull_m_s2,
        1e-9,
        "s",
    );
    assert!(run["sets"][0]["coast"].is_null());
    let cruise = told(&held, "--show cruise --speed 90");
    for key in ["power_kw", "load_percent"] {
        let found = figure(&cruise, 1, "cruise", 90.0, key);
        assert!(found < 0.0, "{key}: {found}");
    }
    let coast = [
        "on a fall of 15 %",
        "Does not slow down to 60 km/h in neutral",
    ];
    assert_says(&free, "--show run --to 100 --coast 120:60", &coast);
    let top = ["on a fall of 15 %", "Top speed on the level in still air"];
    assert_says(&held, "--show effort --speed 90", &top);
    assert_says(&held, "--show cruise --speed 90", &["on a fall of 15 %"]);
    for show in ["run", "effort", "cruise"] {
        said(&held, "csv", &format!("--show {show} --speed 90"));
    }
}
