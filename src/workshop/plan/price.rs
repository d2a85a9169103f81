//! Prices that can be typed, sums of them, and the sign of their currency: nothing is converted.

use crate::gearing::{OutOfRange, one_line_text, parse_decimal};
use std::fmt;
use std::iter::Sum;

/// A price in hundredths, so that sums are exact: 0 to 1000000000.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Price(u64);

/// A sum of prices.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Amount(u64);

one_line_text! {
    /// The sign of a currency: one line of 1 to 8 characters.
    CurrencySign, "a currency's sign", 8
}

impl CurrencySign {
    /// Whether it stands before an amount, as one character that is a sign of currency does in English; codes and
    /// words stand behind.
    ///
    /// # Source
    /// The currency symbols of the Unicode Standard, its block 20A0 to 20CF and those of Latin-1; that they stand
    /// before: common practice, no source.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::CurrencySign;
    /// assert!(CurrencySign::new("€")?.stands_before());
    /// assert!(!CurrencySign::new("SEK")?.stands_before());
    /// # Ok::<(), layshaft::gearing::TextError>(())
    /// ```
    pub fn stands_before(&self) -> bool {
        let mut letters = self.as_str().chars();
        let first = letters.next();
        letters.next().is_none() && matches!(first, Some('$' | '¢'..='¥' | '\u{20A0}'..='\u{20CF}'))
    }
}

impl Price {
    /// The greatest that can be typed.
    const MOST: f64 = 1e9;

    /// The price from its number, to the nearest hundredth.
    ///
    /// # Errors
    /// When it is not finite, below 0 or above a thousand millions.
    pub fn from_amount(value: f64) -> Result<Self, OutOfRange> {
        if !(0.0..=Self::MOST).contains(&value) {
            return Err(OutOfRange {
                what: "a price",
                bounds: "between 0 and 1000000000",
                value,
            });
        }
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "whole, not negative, at most 1e11"
        )]
        let hundredths = (value * 100.0).round() as u64;
        Ok(Self(hundredths))
    }

    /// The number.
    pub fn amount(self) -> f64 {
        Amount(self.0).number()
    }

    /// The price that somebody typed; none where the field is empty.
    ///
    /// # Errors
    /// When it is no number, or none that a price can be.
    pub fn parse(text: &str) -> Result<Option<Self>, String> {
        if text.trim().is_empty() {
            return Ok(None);
        }
        let number = parse_decimal(text).map_err(|error| error.about("a price", "120"))?;
        let price = Self::from_amount(number).map_err(|error| error.to_string())?;
        Ok(Some(price))
    }
}

impl fmt::Display for Price {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Amount(self.0).fmt(f)
    }
}

impl Amount {
    /// The number, for those who compute on.
    pub fn number(self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "far below 2^53")]
        let hundredths = self.0 as f64;
        hundredths / 100.0
    }
}

impl From<Price> for Amount {
    fn from(price: Price) -> Self {
        Self(price.0)
    }
}

impl Sum<Price> for Amount {
    fn sum<I: Iterator<Item = Price>>(prices: I) -> Self {
        Self(prices.map(|price| price.0).sum())
    }
}

impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.0 / 100, self.0 % 100) {
            (whole, 0) => write!(f, "{whole}"),
            (whole, hundredths) => write!(f, "{whole}.{hundredths:02}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_price_reads_with_point_or_comma_and_is_spelled_as_it_reads() {
        for (typed, spelled) in [("120", "120"), ("12,5", "12.50"), ("0.05", "0.05")] {
            let price = Price::parse(typed).unwrap().unwrap();
            assert_eq!(price.to_string(), spelled);
            assert_eq!(Price::parse(spelled), Ok(Some(price)));
        }
        assert_eq!(Price::parse(" "), Ok(None));
    }

    #[test]
    fn what_is_no_price_gets_a_sentence() {
        let error = Price::parse("cheap").unwrap_err();
        assert_eq!(error, "\"cheap\" is not a price such as 120");
        let error = Price::parse("1000000001").unwrap_err();
        assert_eq!(
            error,
            "a price must be between 0 and 1000000000, not 1000000001"
        );
        assert!(Price::from_amount(f64::NAN).is_err());
        assert!(Price::from_amount(-0.01).is_err());
    }
}
