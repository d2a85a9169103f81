//! Is what was guessed or left out said, and is a text without a curve answered?

use super::{Case, check};
use layshaft::import::torque::{CurveError, read_torque, read_torque_taking};
use layshaft::units::{OutputUnit, PowerUnit, TorqueUnit};

pub(super) const DOUBTFUL: &[Case] = &[
    (
        "Dyno sheet, 12.05.2019 14:30\nrpm\tNm\tAFR\n1000\t120\t13.1\n2000\t170\t12.8\nsigned: the operator",
        "N·m: 1000=120 2000=170",
        &[
            "Left out: \"AFR\" (a column",
            "\"Dyno sheet, 12.05.2019 14:30\", \"signed: the operator\"",
        ],
    ),
    (
        "rpm;Nm;kW\n1000;120;12.6\n2000;170;35.6\n3000;160;57.0",
        "N·m: 1000=120 2000=170 3000=160",
        &["At 3000 rpm 57.0 kW does not fit 160 N·m, which was taken."],
    ),
    (
        "rpm;Nm\n0;0\n1000;120\n2000;-4\n3000;165\n40000;90",
        "N·m: 1000=120 3000=165",
        &[
            "Left out: \"0\", \"40000\" (an engine",
            "Left out: \"-4 N·m\" (torque is",
        ],
    ),
    (
        "rpm Nm\n4500 155\n2000 170\n1000 120",
        "N·m: 1000=120 2000=170 4500=155",
        &["fall from row to row"],
    ),
    (
        "rpm Nm\n2000 170\n1000 120\n4500 155",
        "N·m: 1000=120 2000=170 4500=155",
        &["do not rise"],
    ),
    (
        "rpm Nm\n1000 120\n2000 170\n2000 174\n3000 165\n3000 165",
        "N·m: 1000=120 2000=172 3000=165",
        &["the mean was taken: 170 N·m, 174 N·m at 2000 rpm."],
    ),
    (
        "rpm Nm\n1000 120\n2000 170\nMax power 35.6 kW @ 2000 rpm",
        "N·m: 1000=120 2000=170",
        &[],
    ),
    (
        "rpm torque power\n1000 88 16.8\n2000 125 47.6",
        "lb·ft?: 1000=119.3 2000=169.5",
        &["88 and 16.8 were taken for 88 lb·ft and 16.8 hp"],
    ),
    (
        "rpm torque power\n1000 88 70\n2000 125 72",
        "N·m?: 1000=88 2000=125",
        &[
            "88 was taken for 88 N·m",
            "Left out: \"70\", \"72\" (not known",
        ],
    ),
    (
        "rpm Nm\n1000 980\n1200 1.050\n1400 1.100",
        "N·m: 1000=980 1200=1050 1400=1100",
        &["1.050 was read as 1050"],
    ),
    (
        "rpm whp wtq (lb-ft)\n2000 72.4 190\n4000 160 210",
        "wheels lb·ft: 2000=257.6 4000=284.7",
        &["speaks of the wheels"],
    ),
    (
        "The 2.0 makes 320 Nm at 1750 rpm and 263 Nm at 4000 rpm",
        "N·m: 1750=320 4000=263",
        &["Left out: \"2.0\" (not known"],
    ),
    (
        "rpm Nm\n1000 120\n2000 n/a\n3000 165",
        "N·m: 1000=120 3000=165",
        &["Left out: \"2000 n/a\" (does not read"],
    ),
    (
        "rpm,km/h,Nm\n1000,12,120\n2000,24,170",
        "N·m: 1000=120 2000=170",
        &["Left out: \"column 2\" (a column"],
    ),
    (
        "rpm\tNm\n1000\t120\t12.6\n2000\t170 35.6\n3000\t165",
        "N·m: 1000=120 2000=170 3000=165",
        &["Left out: \"12.6\", \"35.6\" (not known"],
    ),
    (
        "1000\t120\n2000\t170 35.6\n3000\t165",
        "N·m?: 1000=120 3000=165",
        &["120 was taken", "Left out: \"2000 170 35.6\" (does not"],
    ),
    (
        "rpm\tNm\tNm\n1000\t120\t130\n2000\t170\t190",
        "N·m: 1000=120 2000=170",
        &["At 1000 rpm 130 N·m does not fit 120 N·m, which was taken; so it is in 2 places."],
    ),
];

#[test]
fn what_was_guessed_or_left_out_is_said() {
    check(DOUBTFUL);
}

#[test]
fn a_text_without_a_curve_is_answered_with_what_to_do() {
    for (text, part) in [
        ("", "no torque curve was found"),
        ("hello world", "no torque curve was found"),
        ("12.05.2019 14:30", "no torque curve was found"),
        ("rpm\tNm", "no torque curve was found"),
        ("1000", "no torque curve was found"),
        ("120 Nm", "no torque curve was found"),
        ("1000 rpm 120 Nm", "only the point at 1000 rpm was found"),
        ("1000:120 1000:120", "only the point at 1000 rpm was found"),
        ("0:120 -5:170", "\"0\" is none"),
        ("1000 rpm 30000 Nm", "\"30000 N·m\" is none"),
        (
            "rpm power\n1000 60\n2000 90",
            "write kW, hp or PS behind 60",
        ),
    ] {
        let error = read_torque(text).expect_err(text).to_string();
        assert!(error.contains(part), "{text:?}: {error}");
    }
}

#[test]
fn too_long_a_text_is_refused_by_its_length() {
    let text = "1000:120\n".repeat(30_000);
    let error = read_torque(&text).unwrap_err();
    assert_eq!(
        error,
        CurveError::TooLong {
            characters: 270_000,
            most: 200_000
        }
    );
}

#[test]
fn another_unit_than_the_guess_can_be_taken() {
    let text = "1000 88\n2000 125";
    for (unit, torque_nm) in [
        (OutputUnit::Torque(TorqueUnit::NewtonMetre), 88.0),
        (OutputUnit::Torque(TorqueUnit::PoundFoot), 119.312),
        (OutputUnit::Torque(TorqueUnit::KilogramForceMetre), 862.985),
        (OutputUnit::Power(PowerUnit::Kilowatt), 840.338),
    ] {
        let curve = read_torque_taking(text, unit).unwrap();
        assert_eq!((curve.taken, curve.is_guessed), (unit, true));
        assert!(
            (curve.points[0].torque_nm - torque_nm).abs() < 0.001,
            "{curve:?}"
        );
        assert!(curve.remarks.is_empty(), "{:?}", curve.remarks);
    }
    // Powers that had no unit have one now.
    let text = "rpm power\n1000 20\n2000 45";
    let unit = OutputUnit::Power(PowerUnit::Horsepower);
    assert_eq!(read_torque_taking(text, unit).unwrap().taken, unit);
    // What is written stays.
    let text = "1000:120 Nm 2000:170 Nm";
    let curve = read_torque_taking(text, unit).unwrap();
    assert_eq!(curve.taken, OutputUnit::Torque(TorqueUnit::NewtonMetre));
    assert!(!curve.is_guessed);
}

#[test]
fn a_log_of_many_rows_keeps_its_ends_and_peaks() {
    let rows = (0..1500_u32).map(|at| {
        let (rpm, x) = (1000.0 + 4.0 * f64::from(at), f64::from(at) / 1500.0);
        let torque_nm = 100.0 + 80.0 * (x * std::f64::consts::PI).sin();
        format!("{rpm}\t{torque_nm:.2}")
    });
    let text = format!("rpm\tNm\n{}", rows.collect::<Vec<_>>().join("\n"));
    let curve = read_torque(&text).unwrap();
    let speeds = [0, 199].map(|at| curve.points[at].engine_speed.rpm());
    assert_eq!(curve.points.len(), 200);
    assert!(speeds[0].total_cmp(&1000.0).is_eq() && speeds[1].total_cmp(&6996.0).is_eq());
    let highest = curve
        .points
        .iter()
        .map(|point| point.torque_nm)
        .fold(0.0, f64::max);
    assert!((highest - 180.0).abs() < 1e-9);
    assert!(curve.remarks[0].starts_with("Of 1500 points 200 were kept"));
}
