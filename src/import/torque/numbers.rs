//! The numbers of a torque curve: engine speeds, and torques and powers.

use super::words::Scale;
use crate::gearing::{parse_decimal, parse_rpm};
use crate::units::round_to;

/// The fastest engine speed, which tells parted thousands from decimals: `950.000` is 950.
const FASTEST_RPM: f64 = 30_000.0;

/// The number that `text` spells with or without a sign, read by `read`.
fn with_sign(text: &str, read: impl Fn(&str) -> Option<f64>) -> Option<f64> {
    match text.strip_prefix('-') {
        Some(rest) => read(rest).map(|number| -number),
        None => read(text.strip_prefix('+').unwrap_or(text)),
    }
}

/// The engine speed in rev/min that `text` spells.
pub(super) fn engine_rpm(text: &str, scale: Scale) -> Option<f64> {
    match scale {
        Scale::PerMinute => with_sign(text, |text| {
            let grouped = parse_rpm(text).ok().filter(|rpm| *rpm <= FASTEST_RPM);
            grouped.or_else(|| output(text))
        }),
        Scale::DecimalPerMinute => output(text),
        // Without the dust that 4.35 × 1000 leaves.
        Scale::ThousandsPerMinute => output(text).map(|number| round_to(number * 1000.0, 0.001)),
        Scale::PerSecond => output(text).map(|number| round_to(number * 60.0, 0.001)),
    }
}

/// The torque or power that `text` spells, in its unit.
///
/// One mark is decimal; of two kinds the last is, and the others part thousands; so do apostrophes.
pub(super) fn output(text: &str) -> Option<f64> {
    with_sign(text, |text| {
        let text = text.replace(['\'', '’'], "");
        let (point, comma) = (text.rfind('.'), text.rfind(','));
        match (point, comma) {
            (Some(point), Some(comma)) => {
                let (thousands, decimals) = text.split_at(point.max(comma));
                let mark = if point < comma { '.' } else { ',' };
                let mut parts = thousands.split(mark);
                let is_first = |part: &str| (1..=3).contains(&part.len());
                let is_grouped = parts.next().is_some_and(is_first) && parts.all(|p| p.len() == 3);
                let whole = thousands.replace(mark, "");
                is_grouped
                    .then(|| parse_decimal(&format!("{whole}{decimals}")).ok())
                    .flatten()
            }
            _ => parse_decimal(&text).ok(),
        }
    })
}

/// Half of the last decimal place of `text`: what its spelling leaves open.
pub(super) fn half_a_digit(text: &str) -> f64 {
    let decimals = text
        .rfind(['.', ','])
        .map_or(0, |mark| text.len() - mark - 1);
    0.5 * 10_f64.powi(-i32::try_from(decimals).unwrap_or(i32::MAX))
}

/// Whether `text` is one to three digits, a mark and exactly three digits: `1.050`.
pub(super) fn could_be_thousands(text: &str) -> bool {
    text.split_once(['.', ',']).is_some_and(|(whole, rest)| {
        let are_digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
        (1..=3).contains(&whole.len()) && rest.len() == 3 && are_digits(whole) && are_digits(rest)
    })
}

/// Whether the marks of engine speeds part thousands in all of `texts` that have one, or else none.
pub(super) fn minute_scale<'a>(mut texts: impl Iterator<Item = &'a str>) -> Scale {
    let is_grouped = |text: &str| {
        let rpm = || parse_rpm(text).ok();
        could_be_thousands(text) && rpm().is_some_and(|rpm| rpm <= FASTEST_RPM)
    };
    if texts.all(|text| text.matches(['.', ',']).count() != 1 || is_grouped(text)) {
        Scale::PerMinute
    } else {
        Scale::DecimalPerMinute
    }
}

/// Two numbers that are one engine speed with a blank between its thousands: `4` and `500`.
pub(super) fn joined_thousands(thousands: &str, rest: &str) -> Option<String> {
    let are_digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
    let are_both = (1..=2).contains(&thousands.len())
        && rest.len() == 3
        && are_digits(thousands)
        && are_digits(rest);
    are_both.then(|| format!("{thousands}{rest}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn engine_speeds_may_have_their_thousands_parted() {
        for (text, rpm) in [
            ("6,500", 6500.0),
            ("4.500", 4500.0),
            ("4'500", 4500.0),
            ("950.000", 950.0),
            ("1000.000", 1000.0),
            ("2500,5", 2500.5),
            ("-1", -1.0),
            ("0", 0.0),
        ] {
            assert_eq!(engine_rpm(text, Scale::PerMinute), Some(rpm), "{text}");
        }
        for (text, rpm) in [("3.5", 3500.0), ("4,35", 4350.0), ("1.500", 1500.0)] {
            assert_eq!(
                engine_rpm(text, Scale::ThousandsPerMinute),
                Some(rpm),
                "{text}"
            );
        }
        for (texts, scale) in [
            (["950", "6,500"], Scale::PerMinute),
            (["950.000", "1000.000"], Scale::DecimalPerMinute),
            (["9.948", "35.656"], Scale::DecimalPerMinute),
        ] {
            assert_eq!(minute_scale(texts.into_iter()), scale, "{texts:?}");
        }
        assert_eq!(engine_rpm("25", Scale::PerSecond), Some(1500.0));
        assert_eq!(engine_rpm("1.2.3", Scale::PerMinute), None);
    }

    #[test]
    fn outputs_have_decimals() {
        for (text, number) in [
            ("120", 120.0),
            ("120,5", 120.5),
            ("1.250", 1.25),
            ("1,250.5", 1250.5),
            ("1.250,5", 1250.5),
            ("1'250", 1250.0),
            ("-3.5", -3.5),
            (".5", 0.5),
        ] {
            assert_eq!(output(text), Some(number), "{text}");
        }
        for text in ["12.05.2019", "1000.0,120.5", "", "-", "1,20,3"] {
            assert_eq!(output(text), None, "{text}");
        }
        assert!((half_a_digit("12,50") - 0.005).abs() < 1e-12);
    }
}
