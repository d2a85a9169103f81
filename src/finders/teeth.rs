//! Which teeth a search may look at: the limits of each gear, and the sum of both.

use crate::gearing::{ToothPair, quoted};
use std::ops::RangeInclusive;

/// Why a text is no limit of teeth.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TeethError {
    /// Not two whole numbers that a gear can have.
    #[error("limits of teeth are two whole numbers from 1 to 999, as 9-60, not \"{0}\"")]
    Limits(String),
    /// The most before the least.
    #[error("limits of teeth are the fewest first, as {most}-{least}, not {least}-{most}")]
    Falling {
        /// The number in first place.
        least: u16,
        /// The number in second place.
        most: u16,
    },
    /// Not a whole number that two gears can have together.
    #[error("a sum of teeth is a whole number from 2 to 1998, not \"{0}\"")]
    Sum(String),
}

/// The fewest and the most teeth of a gear: 1 to 999.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TeethLimits {
    least: u16,
    most: u16,
}

impl TeethLimits {
    /// The limits, both included.
    ///
    /// # Errors
    /// When a number is not between 1 and 999, or the most are fewer than the least.
    pub fn new(least: u16, most: u16) -> Result<Self, TeethError> {
        if ToothPair::new(least, most).is_err() {
            return Err(TeethError::Limits(format!("{least}-{most}")));
        }
        if most < least {
            return Err(TeethError::Falling { least, most });
        }
        Ok(Self { least, most })
    }

    /// The fewest teeth.
    pub fn least(self) -> u16 {
        self.least
    }

    /// The most teeth.
    pub fn most(self) -> u16 {
        self.most
    }

    /// Every count within the limits.
    pub fn counts(self) -> RangeInclusive<u16> {
        self.least..=self.most
    }
}

/// The teeth of both gears of a pair together: 2 to 1998.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ToothSum(u16);

impl ToothSum {
    /// So many teeth together.
    ///
    /// # Errors
    /// When it is not between 2 and 1998.
    pub fn new(teeth: u16) -> Result<Self, TeethError> {
        if (2..=1998).contains(&teeth) {
            Ok(Self(teeth))
        } else {
            Err(TeethError::Sum(teeth.to_string()))
        }
    }

    /// How many they are.
    pub fn teeth(self) -> u16 {
        self.0
    }
}

/// The limits that `text` spells, the fewest teeth first: `9-60`.
///
/// # Errors
/// When there are not two whole numbers from 1 to 999 around a dash, or they fall.
///
/// # Example
/// ```
/// use layshaft::finders::{TeethLimits, parse_teeth_limits};
/// assert_eq!(parse_teeth_limits("9-60"), TeethLimits::new(9, 60));
/// ```
pub fn parse_teeth_limits(text: &str) -> Result<TeethLimits, TeethError> {
    let counts = text.split_once(['-', '–']).and_then(|(least, most)| {
        let [least, most] = [least, most].map(whole_number);
        Some((least?, most?))
    });
    let wrong = || TeethError::Limits(quoted(text.trim()));
    let (least, most) = counts.ok_or_else(wrong)?;
    TeethLimits::new(least, most)
}

/// The sum of teeth that `text` spells.
///
/// # Errors
/// When it is no whole number from 2 to 1998.
pub fn parse_tooth_sum(text: &str) -> Result<ToothSum, TeethError> {
    let wrong = || TeethError::Sum(quoted(text.trim()));
    ToothSum::new(whole_number(text).ok_or_else(wrong)?)
}

fn whole_number(text: &str) -> Option<u16> {
    let text = text.trim();
    let is_whole = text.bytes().all(|byte| byte.is_ascii_digit());
    text.parse().ok().filter(|_| is_whole)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_two_numbers_around_a_dash() {
        for text in ["9-60", " 9 - 60 ", "9–60"] {
            let limits = parse_teeth_limits(text).unwrap();
            assert_eq!((limits.least(), limits.most()), (9, 60), "{text}");
        }
        assert_eq!(parse_teeth_limits("20-20").unwrap().counts().count(), 1);
    }

    #[test]
    fn what_are_no_limits_is_quoted() {
        for text in [
            "", "-", "9", "9-", "-60", "0-60", "9-1000", "9-60-70", "9.5-60", "+9-60",
        ] {
            let error = parse_teeth_limits(text).unwrap_err().to_string();
            assert!(error.ends_with(&format!("not \"{text}\"")), "{error}");
        }
        assert_eq!(
            parse_teeth_limits("60-9").unwrap_err().to_string(),
            "limits of teeth are the fewest first, as 9-60, not 60-9"
        );
    }

    #[test]
    fn a_sum_is_one_that_two_gears_can_have() {
        assert_eq!(parse_tooth_sum(" 64 ").map(ToothSum::teeth), Ok(64));
        for text in ["", "1", "1999", "64.0", "-64", "99999"] {
            assert!(parse_tooth_sum(text).is_err(), "{text}");
        }
    }
}
