//! Which unit and how many digits does a reader see?
//!
//! The only place where display units, conversions and number formatting live. Inside the program
//! road speeds are km/h, engine speeds rev/min and lengths mm, torques N·m and powers kW.

mod bench;
mod output;

pub use bench::{BenchUnits, LengthUnit, NMM_PER_NM, TurningUnit};
pub use output::{N_PER_KILOGRAM_FORCE, N_PER_POUND_FORCE, OutputUnit, PowerUnit, TorqueUnit};

/// Kilometres in a statute mile, exactly (international yard, 1959; definition).
pub const KM_PER_MILE: f64 = 1.609_344;

/// Millimetres in an inch, exactly (definition).
pub const MM_PER_INCH: f64 = 25.4;

/// Kilometres per hour in a metre per second, exactly (definition).
pub const KMH_PER_M_S: f64 = 3.6;

/// Litres in a US gallon, exactly (231 cubic inches; definition).
pub const L_PER_US_GALLON: f64 = 3.785_411_784;

/// Litres in an imperial gallon, exactly (UK Weights and Measures Act 1985; definition).
pub const L_PER_IMPERIAL_GALLON: f64 = 4.546_09;

/// Miles per gallon of that many litres, from L/100 km; none where nothing is burnt.
///
/// # Example
/// ```
/// use layshaft::units::{L_PER_US_GALLON, miles_per_gallon};
/// let mpg = miles_per_gallon(10.0, L_PER_US_GALLON);
/// assert!((mpg.unwrap() - 23.521_458).abs() < 1e-6);
/// ```
pub fn miles_per_gallon(l_per_100km: f64, l_per_gallon: f64) -> Option<f64> {
    let miles = 100.0 / KM_PER_MILE * l_per_gallon / l_per_100km;
    (l_per_100km > 0.0 && miles.is_finite()).then_some(miles)
}

/// The unit in which road speeds are shown and typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SpeedUnit {
    /// Kilometres per hour.
    #[default]
    Kmh,
    /// Statute miles per hour.
    Mph,
}

impl SpeedUnit {
    /// Both units, in the order of the switch.
    pub const ALL: [Self; 2] = [Self::Kmh, Self::Mph];

    /// The unit's sign, as it stands behind a number.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Kmh => "km/h",
            Self::Mph => "mph",
        }
    }

    /// A road speed in this unit, from km/h.
    pub fn from_kmh(self, speed_kmh: f64) -> f64 {
        match self {
            Self::Kmh => speed_kmh,
            Self::Mph => speed_kmh / KM_PER_MILE,
        }
    }

    /// A road speed in km/h, from this unit.
    pub fn to_kmh(self, speed: f64) -> f64 {
        match self {
            Self::Kmh => speed,
            Self::Mph => speed * KM_PER_MILE,
        }
    }
}

/// A ratio, step or spread with three decimals: `3.778`.
pub fn ratio_text(ratio: f64) -> String {
    format!("{ratio:.3}")
}

/// A step, progression or spread with two decimals: `1.38`.
pub fn step_text(step: f64) -> String {
    format!("{step:.2}")
}

/// An engine speed as it was typed, to the rev/min: `4200`.
pub fn typed_rpm_text(engine_rpm: f64) -> String {
    plain_number(round_to(engine_rpm, 1.0))
}

/// An engine speed that is a result, to 10 rev/min: a tyre's tolerance hides the rest.
pub fn rpm_text(engine_rpm: f64) -> String {
    with_minus(plain_number(round_to(engine_rpm, 10.0)))
}

/// A difference of engine speeds to 10 rev/min, with its sign: `+240`, `−110`, `0`.
pub fn rpm_difference_text(difference_rpm: f64) -> String {
    signed(round_to(difference_rpm, 10.0), 0)
}

/// A share as a signed percentage with one decimal: `+8.3 %`.
pub fn percent_difference_text(share: f64) -> String {
    format!("{} %", signed(share * 100.0, 1))
}

/// A share as a percentage with one decimal, without its sign: `27.5`.
pub fn percent_text(share: f64) -> String {
    with_minus(format!("{:.1}", share * 100.0))
}

/// A road speed in `unit` without its sign: whole numbers, below 20 with one decimal.
pub fn speed_text(speed_kmh: f64, unit: SpeedUnit) -> String {
    let speed = unit.from_kmh(speed_kmh);
    if speed.abs() < 19.95 {
        format!("{speed:.1}")
    } else {
        plain_number(speed.round())
    }
}

/// A road speed per 1000 rev/min in `unit`, with one decimal: `38.6`.
pub fn speed_per_1000_rpm_text(speed_kmh: f64, unit: SpeedUnit) -> String {
    format!("{:.1}", unit.from_kmh(speed_kmh))
}

/// A marked road speed in `unit`, or a wind, which may be below 0: one decimal at most, below walking
/// pace three.
pub fn mark_text(speed_kmh: f64, unit: SpeedUnit) -> String {
    let speed = unit.from_kmh(speed_kmh);
    let grain = if speed.abs() < 1.0 { 0.001 } else { 0.1 };
    plain_number(round_to(speed, grain))
}

/// A length in whole mm: `1937`.
pub fn mm_text(length_mm: f64) -> String {
    plain_number(length_mm.round())
}

/// The shortest decimal spelling that reads back to `number`: `3.78`, `800`.
pub fn plain_number(number: f64) -> String {
    if number.fract() == 0.0 && number.abs() < LARGEST_WHOLE {
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a whole number of this size is one of i64"
        )]
        let whole = number as i64;
        // A table is full of whole numbers, and these are spelled much faster.
        return whole.to_string();
    }
    number.to_string()
}

/// A number that was reckoned, to fifteen digits: `14.3927`, without the dust of 14.392699999999998.
///
/// A binary number holds fifteen decimal digits whatever they are; what follows them is an error of the
/// reckoning as a rule.
pub fn reckoned_number(number: f64) -> String {
    plain_number(to_digits(number, 15))
}

/// The spelling with the fewest digits that `is_same` takes for the number; all digits where it takes
/// no other.
pub fn shortest_number(number: f64, is_same: impl Fn(f64) -> bool) -> String {
    let mut shorter = (1..=17).map(|digits| to_digits(number, digits));
    plain_number(shorter.find(|shorter| is_same(*shorter)).unwrap_or(number))
}

/// The number to so many digits, wherever its mark stands.
fn to_digits(number: f64, digits: usize) -> f64 {
    let spelled = format!("{number:.*e}", digits - 1);
    spelled.parse().unwrap_or(number)
}

/// Up to it every whole number is both an `f64` and an `i64`: 2^53.
const LARGEST_WHOLE: f64 = 9_007_199_254_740_992.0;

/// The digits with a typographic sign where they have one.
fn with_minus(digits: String) -> String {
    match digits.strip_prefix('-') {
        Some(digits) => format!("−{digits}"),
        None => digits,
    }
}

/// A consumption with one decimal, as it is told everywhere: `7.4`, `12.3`; `0.85`. It is surer beside that
/// of another set than by itself, and two that differ must not look the same.
pub fn consumption_text(estimate: f64) -> String {
    let (number, decimals) = match estimate.abs() {
        size if size >= 99.5 => (round_to(estimate, 10.0), 0),
        size if size >= 0.995 => (estimate, 1),
        _ => (estimate, 2),
    };
    with_minus(format!("{number:.decimals$}"))
}

/// `number` with a typographic sign in front and `decimals` behind; zero has no sign.
pub fn signed(number: f64, decimals: usize) -> String {
    let digits = format!("{:.decimals$}", number.abs());
    let is_zero = digits.chars().all(|c| c == '0' || c == '.');
    match (is_zero, number < 0.0) {
        (true, _) => digits,
        (false, true) => format!("−{digits}"),
        (false, false) => format!("+{digits}"),
    }
}

/// `number` with `decimals` behind and a typographic minus where it is below zero: `2633`, `−0.86`.
pub fn decimals_text(number: f64, decimals: usize) -> String {
    signed(number, decimals).trim_start_matches('+').to_owned()
}

/// `number` rounded to the nearest whole multiple of `grain`, spelled without binary dust.
pub fn round_to(number: f64, grain: f64) -> f64 {
    if grain >= 1.0 {
        (number / grain).round() * grain
    } else {
        // Dividing by the whole inverse gives 112.654, multiplying by 0.001 would give 112.65400000000001.
        let per_one = (1.0 / grain).round();
        (number * per_one).round() / per_one
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_consumption_has_one_decimal_until_it_is_large_or_small() {
        let texts = [134.0, 99.4, 12.34, 9.94, 7.0, 0.853].map(consumption_text);
        assert_eq!(texts, ["130", "99.4", "12.3", "9.9", "7.0", "0.85"]);
    }

    #[test]
    fn differences_carry_a_sign_unless_they_are_nothing() {
        assert_eq!(rpm_difference_text(244.0), "+240");
        assert_eq!(rpm_difference_text(-106.0), "−110");
        assert_eq!(rpm_difference_text(-3.0), "0");
        assert_eq!(percent_difference_text(-0.0004), "0.0 %");
    }

    #[test]
    fn a_marked_speed_typed_in_miles_comes_back_as_typed() {
        for mph in [20.0, 30.0, 55.0, 70.0, 0.3] {
            let kmh = SpeedUnit::Mph.to_kmh(mph);
            assert_eq!(mark_text(kmh, SpeedUnit::Mph), format!("{mph}"));
        }
    }

    #[test]
    fn engine_speeds_that_are_results_are_shown_to_ten() {
        assert_eq!(rpm_text(2723.9), "2720");
        assert_eq!(typed_rpm_text(4215.0), "4215");
        assert_eq!(decimals_text(2633.2, 0), "2633");
        assert_eq!(decimals_text(-0.8554, 2), "−0.86");
        assert_eq!(decimals_text(-0.0049, 2), "0.00");
    }

    #[test]
    fn a_drop_that_is_a_rise_has_a_typographic_sign() {
        assert_eq!(rpm_text(-2018.0), "−2020");
        assert_eq!(percent_text(-0.4485), "−44.9");
    }

    #[test]
    fn whole_numbers_are_spelled_like_all_others() {
        assert_eq!(plain_number(-0.0), "0");
        for number in [
            800.0,
            -12.0,
            3.78,
            1e-7,
            9_007_199_254_740_992.0,
            1e20,
            1e300,
        ] {
            assert_eq!(plain_number(number), format!("{number}"));
            assert_eq!(plain_number(number).parse(), Ok(number));
        }
    }

    #[test]
    fn slow_speeds_keep_a_decimal() {
        assert_eq!(speed_text(7.25, SpeedUnit::Kmh), "7.2");
        assert_eq!(speed_text(19.97, SpeedUnit::Kmh), "20");
        assert_eq!(speed_text(160.934_4, SpeedUnit::Mph), "100");
    }

    #[test]
    fn a_reckoned_number_is_spelled_without_dust() {
        for (number, spelling) in [
            (14.392_699_999_999_998, "14.3927"),
            (7.830_999_999_999_999, "7.831"),
            (37.0 / 9.0, "4.11111111111111"),
            (5800.0, "5800"),
            (-1540.25, "-1540.25"),
            (0.0, "0"),
        ] {
            assert_eq!(reckoned_number(number), spelling);
        }
    }

    #[test]
    fn the_shortest_number_is_the_first_that_means_the_same() {
        let kmh = SpeedUnit::Mph.to_kmh(70.0);
        let mph = SpeedUnit::Mph.from_kmh(kmh);
        let is_same = |n| SpeedUnit::Mph.to_kmh(n).to_bits() == kmh.to_bits();
        assert_eq!(shortest_number(mph, is_same), "70");
        assert_eq!(
            shortest_number(0.1 + 0.2, |_| false),
            (0.1 + 0.2).to_string()
        );
    }

    proptest! {
        #[test]
        fn a_reckoned_number_has_fifteen_digits_of_what_it_was(
            mantissa in -9.999_f64..9.999, exponent in -9_i32..12,
        ) {
            let number = mantissa * 10_f64.powi(exponent);
            let spelled = reckoned_number(number);
            prop_assert!(!spelled.contains(['e', 'E']), "{spelled}");
            let digits = spelled.chars().filter(char::is_ascii_digit).collect::<String>();
            prop_assert!(digits.trim_matches('0').len() <= 15, "{spelled}");
            let read: f64 = spelled.parse().unwrap();
            prop_assert!((read - number).abs() <= 5.1e-15 * number.abs(), "{number} as {spelled}");
        }
    }
}
