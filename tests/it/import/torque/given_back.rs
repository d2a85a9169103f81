//! Does a curve come back to its printed digits, whatever the form it was printed in?

use layshaft::import::torque::read_torque;
use layshaft::motion::power_w;
use layshaft::units::{PowerUnit, TorqueUnit, plain_number};
use proptest::collection::btree_map;
use proptest::prelude::*;
use std::collections::BTreeMap;

/// Engine speeds in rev/min with torques in hundredths of their unit.
type Printed = BTreeMap<u32, u32>;

/// Something that rises, as it may be typed: 100 to 30000 rpm.
fn any_curve() -> impl Strategy<Value = Printed> {
    btree_map(100_u32..=30_000, 0_u32..=190_000, 2..40)
}

fn decimal(hundredths: u32) -> String {
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}

fn with_comma(hundredths: u32) -> String {
    decimal(hundredths).replace('.', ",")
}

/// An engine speed with its thousands parted.
fn grouped(rpm: u32, mark: char) -> String {
    if rpm < 1000 {
        rpm.to_string()
    } else {
        format!("{}{mark}{:03}", rpm / 1000, rpm % 1000)
    }
}

/// A form: what stands above, what a point is printed as, what joins points.
type Form = (&'static str, fn(u32, u32) -> String, &'static str);

const FORMS: &[Form] = &[
    ("rpm\tNm\n", |n, t| format!("{n}\t{}", decimal(t)), "\n"),
    (
        "Drehzahl [U/min];Moment [Nm]\n",
        |n, t| format!("{};{}", grouped(n, '.'), with_comma(t)),
        "\n",
    ),
    ("rpm,Nm\n", |n, t| format!("{n},{}", decimal(t)), "\n"),
    (
        "RPM, Torque (Nm)\n",
        |n, t| format!("\"{}\", {}", grouped(n, ','), decimal(t)),
        "\n",
    ),
    (
        "rpm Nm\n",
        |n, t| format!("{}  {}", grouped(n, ' '), with_comma(t)),
        "\n",
    ),
    (
        "rpm  Nm\n",
        |n, t| format!("{n:>6}  {:>8}", decimal(t)),
        "\n",
    ),
    (
        "| rpm | N·m |\n| ---: | ---: |\n",
        |n, t| format!("| {n} | {} |", decimal(t)),
        "\n",
    ),
    (
        "[table][tr][td]rpm[/td][td]Nm[/td][/tr]\n",
        |n, t| format!("[tr][td]{n}[/td][td]{}[/td][/tr]", with_comma(t)),
        "\n",
    ),
    ("", |n, t| format!("{n}\t{}", decimal(t)), "\n"),
    ("", |n, t| format!("{n} {}", with_comma(t)), "\n"),
    ("", |n, t| format!("{n}:{}", decimal(t)), " "),
    ("", |n, t| format!("{n}:{}", with_comma(t)), "; "),
    ("", |n, t| format!("{n} rpm {} Nm", decimal(t)), "\n"),
    ("", |n, t| format!("{} Nm @ {n}", with_comma(t)), "\n"),
    (
        "",
        |n, t| format!("{} N·m at {} rpm", decimal(t), grouped(n, ',')),
        ", ",
    ),
    (
        "",
        |n, t| format!("bei {} U/min {} Nm", grouped(n, ' '), with_comma(t)),
        "; ",
    ),
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn a_curve_printed_in_any_form_gives_its_points_back(printed in any_curve()) {
        for (above, point, joint) in FORMS {
            let points: Vec<String> = printed.iter().map(|(n, t)| point(*n, *t)).collect();
            let text = format!("{above}{}", points.join(joint));
            let curve = match read_torque(&text) {
                Ok(curve) => curve,
                Err(error) => return Err(TestCaseError::fail(format!("{error}\n{text}"))),
            };
            let read: Vec<(f64, f64)> =
                curve.points.iter().map(|p| (p.engine_speed.rpm(), p.torque_nm)).collect();
            let wanted: Vec<(f64, f64)> =
                printed.iter().map(|(n, t)| (f64::from(*n), f64::from(*t) / 100.0)).collect();
            prop_assert_eq!(read, wanted, "{}", text);
            prop_assert_eq!(curve.remarks.len(), usize::from(curve.is_guessed), "{:?}", curve.remarks);
        }
    }

    #[test]
    fn a_curve_in_any_unit_comes_back_in_newton_metres(printed in any_curve()) {
        let text = |sign: &str| {
            let points = printed.iter().map(|(n, t)| format!("{n}\t{}", decimal(*t)));
            format!("rpm\t{sign}\n{}", points.collect::<Vec<_>>().join("\n"))
        };
        let signs = [
            (TorqueUnit::NewtonMetre, "N·m"), (TorqueUnit::PoundFoot, "lbf-ft"),
            (TorqueUnit::PoundFoot, "ft·lb"), (TorqueUnit::KilogramForceMetre, "kgf·m"),
        ];
        for (unit, sign) in signs {
            let torque = |t: u32| unit.to_nm(f64::from(t) / 100.0);
            if printed.values().any(|t| torque(*t) > 20_000.0) {
                continue;
            }
            let curve = read_torque(&text(sign)).unwrap();
            for (point, t) in curve.points.iter().zip(printed.values()) {
                prop_assert!((point.torque_nm - torque(*t)).abs() < 1e-9, "{sign}");
            }
        }
    }

    #[test]
    fn powers_come_back_as_the_torques_they_follow_from(printed in any_curve()) {
        for (unit, sign) in [
            (PowerUnit::Kilowatt, "kW"), (PowerUnit::Horsepower, "bhp"), (PowerUnit::MetricHorsepower, "PS"),
        ] {
            let power = |n: u32, t: u32| unit.from_kw(power_w(f64::from(t) / 100.0, f64::from(n)) / 1000.0);
            let able: Printed = printed.iter()
                .filter(|(n, t)| unit.to_kw(power(**n, **t)) < 5000.0)
                .map(|(n, t)| (*n, *t))
                .collect();
            if able.len() < 2 {
                continue;
            }
            let points = able.iter().map(|(n, t)| format!("{n};{}", plain_number(power(*n, *t))));
            let text = format!("rpm;{sign}\n{}", points.collect::<Vec<_>>().join("\n"));
            let curve = read_torque(&text).unwrap();
            prop_assert_eq!(curve.points.len(), able.len());
            for (point, t) in curve.points.iter().zip(able.values()) {
                let wanted = f64::from(*t) / 100.0;
                prop_assert!((point.torque_nm - wanted).abs() < 1e-9 * (1.0 + wanted), "{text}");
            }
        }
    }
}
