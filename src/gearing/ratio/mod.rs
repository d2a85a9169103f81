//! A ratio, as it was given: as a number, by counting teeth, or as a product.

mod order;
mod typed_ratio;

pub use order::{InChain, PairOrder, read_chain, read_in_chain, read_reduction};
pub use typed_ratio::{TypedRatio, parse_ratio};

use super::number::quoted_number;
use crate::units;
use std::fmt;

/// Tooth counts of one mesh, told apart by what turns what.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ToothPair {
    driven: u16,
    driving: u16,
}

impl ToothPair {
    /// A pair of tooth counts.
    ///
    /// # Errors
    /// When a count is not between 1 and 999.
    pub fn new(driven: u16, driving: u16) -> Result<Self, RatioError> {
        for teeth in [driven, driving] {
            if !(1..=999).contains(&teeth) {
                return Err(RatioError::Teeth(teeth.to_string()));
            }
        }
        Ok(Self { driven, driving })
    }

    /// Teeth of the gear that is turned.
    pub fn driven(self) -> u16 {
        self.driven
    }

    /// Teeth of the gear that turns it.
    pub fn driving(self) -> u16 {
        self.driving
    }

    /// Turns of the driving gear for one of the driven: driven ÷ driving teeth.
    pub fn ratio(self) -> f64 {
        f64::from(self.driven) / f64::from(self.driving)
    }

    /// The same two gears with their parts exchanged.
    #[must_use]
    pub fn swapped(self) -> Self {
        Self {
            driven: self.driving,
            driving: self.driven,
        }
    }
}

/// One mesh or one plain number in a ratio.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Factor {
    /// A ratio from a data sheet.
    Number(f64),
    /// A ratio from counted teeth.
    Teeth(ToothPair),
}

impl Factor {
    fn ratio(self) -> f64 {
        match self {
            Self::Number(number) => number,
            Self::Teeth(pair) => pair.ratio(),
        }
    }

    fn swapped(self) -> Self {
        match self {
            Self::Number(_) => self,
            Self::Teeth(pair) => Self::Teeth(pair.swapped()),
        }
    }
}

/// Input turns for one output turn, 0.001 to 400, as it was given.
///
/// A layshaft box drives a gear through two meshes, its head-gear pair and the gear's own: such a
/// ratio is a product of factors.
#[derive(Debug, Clone, PartialEq)]
pub struct Ratio {
    factors: Vec<Factor>,
}

/// Why something is not a ratio.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RatioError {
    /// Nothing but blanks, or nothing beside a `*`.
    #[error("type a ratio such as 3.78, 34:9 or 44:29 * 49:12")]
    Empty,
    /// A factor that is no spelling of a ratio.
    #[error("\"{0}\" is not a ratio; type a number such as 3.78 or teeth such as 34:9")]
    NotARatio(String),
    /// A tooth count that is not a whole number between 1 and 999.
    #[error("teeth are whole numbers from 1 to 999, not {0}")]
    Teeth(String),
    /// A ratio outside 0.001 to 400.
    #[error("a ratio lies between 0.001 and 400, not {0}")]
    OutOfRange(String),
    /// More than eight factors.
    #[error("a ratio has at most eight factors")]
    TooManyFactors,
}

impl Ratio {
    /// The smallest and the largest ratio that can exist.
    pub const RANGE: std::ops::RangeInclusive<f64> = 0.001..=400.0;

    /// A ratio as a plain number.
    ///
    /// # Errors
    /// When it is not finite or outside 0.001 to 400.
    pub fn from_number(number: f64) -> Result<Self, RatioError> {
        Self::from_factors(vec![Factor::Number(number)])
    }

    /// A ratio as a product of factors.
    ///
    /// # Errors
    /// When there is no factor or more than eight, or a factor or the product leaves 0.001 to 400.
    pub fn from_factors(factors: Vec<Factor>) -> Result<Self, RatioError> {
        match factors.len() {
            0 => return Err(RatioError::Empty),
            1..=8 => {}
            _ => return Err(RatioError::TooManyFactors),
        }
        let ratio = Self { factors };
        let typed_numbers = ratio.factors.iter().filter_map(|f| match f {
            Factor::Number(number) => Some(*number),
            Factor::Teeth(_) => None,
        });
        let mut numbers = typed_numbers.chain([ratio.value()]);
        match numbers.find(|number| !Self::RANGE.contains(number)) {
            Some(number) => Err(RatioError::OutOfRange(quoted_number(number))),
            None => Ok(ratio),
        }
    }

    /// Input turns for one output turn.
    pub fn value(&self) -> f64 {
        self.factors.iter().map(|f| f.ratio()).product()
    }

    /// What the ratio was given as, head-gear pair first.
    pub fn factors(&self) -> &[Factor] {
        &self.factors
    }

    /// Whether any factor is a pair of tooth counts.
    pub fn has_teeth(&self) -> bool {
        self.factors.iter().any(|f| matches!(f, Factor::Teeth(_)))
    }

    /// The same gears with driven and driving exchanged in every tooth pair, where that is a ratio.
    ///
    /// # Errors
    /// When the other order leaves 0.001 to 400.
    pub fn swapped(&self) -> Result<Self, RatioError> {
        Self::from_factors(self.factors.iter().map(|f| f.swapped()).collect())
    }

    /// How the ratio was understood: `34 driven by 9 = 3.778`; just the number for a plain one.
    pub fn reading(&self) -> String {
        let value = units::ratio_text(self.value());
        if let [Factor::Number(_)] = self.factors[..] {
            return value;
        }
        let parts: Vec<String> = self.factors.iter().map(factor_reading).collect();
        format!("{} = {value}", parts.join(" × "))
    }
}

fn factor_reading(factor: &Factor) -> String {
    match factor {
        Factor::Number(number) => units::plain_number(*number),
        Factor::Teeth(pair) => format!("{} driven by {}", pair.driven, pair.driving),
    }
}

impl fmt::Display for Ratio {
    /// The spelling that reads back: `3.78`, `34:9` (driven : driving), `40x1` for a worm,
    /// `44:29 × 49:12`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, factor) in self.factors.iter().enumerate() {
            if i > 0 {
                f.write_str(" × ")?;
            }
            match factor {
                Factor::Number(number) => f.write_str(&units::plain_number(*number))?,
                Factor::Teeth(pair) => {
                    // A 1 beside a colon reads as "to one"; counts around an x are always teeth.
                    let is_to_one = pair.driven == 1 || pair.driving == 1;
                    let between = if is_to_one { 'x' } else { ':' };
                    write!(f, "{}{between}{}", pair.driven, pair.driving)?;
                }
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tooth_pair_says_what_drives_what() {
        let ratio = Ratio::from_factors(vec![Factor::Teeth(ToothPair::new(34, 9).unwrap())]);
        assert_eq!(ratio.unwrap().reading(), "34 driven by 9 = 3.778");
    }

    #[test]
    fn a_pair_with_a_single_tooth_is_spelled_so_that_it_reads_back() {
        for (driven, driving, spelling) in [(40, 1, "40x1"), (1, 9, "1x9"), (34, 9, "34:9")] {
            let pair = Factor::Teeth(ToothPair::new(driven, driving).unwrap());
            let ratio = Ratio::from_factors(vec![pair]).unwrap();
            assert_eq!(ratio.to_string(), spelling);
            let again = parse_ratio(spelling).unwrap();
            assert_eq!(again.driven_first(), &ratio, "{spelling}");
        }
    }

    #[test]
    fn a_product_may_not_leave_the_range_of_a_ratio() {
        let factors = vec![Factor::Number(399.0), Factor::Number(2.0)];
        assert!(matches!(
            Ratio::from_factors(factors),
            Err(RatioError::OutOfRange(_))
        ));
    }

    #[test]
    fn the_factor_that_leaves_the_range_is_named_and_not_the_product() {
        let factors = vec![Factor::Number(500.0), Factor::Number(0.01)];
        assert_eq!(
            Ratio::from_factors(factors),
            Err(RatioError::OutOfRange("500".to_owned()))
        );
    }

    #[test]
    fn a_number_of_hundreds_of_digits_is_quoted_in_part() {
        for number in [1e300, 5e-324] {
            let error = Ratio::from_number(number).unwrap_err().to_string();
            assert!(error.chars().count() < 100, "{error}");
        }
    }

    #[test]
    fn numbers_that_are_not_finite_are_no_ratios() {
        for number in [f64::NAN, f64::INFINITY, -1.0, 0.0] {
            assert!(Ratio::from_number(number).is_err(), "{number}");
        }
    }
}
