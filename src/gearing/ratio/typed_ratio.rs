//! A ratio as it was typed, and its reader.
//!
//! The order of a tooth pair stays open here: `order` decides it from the whole set.

use super::{Factor, Ratio, RatioError, ToothPair};
use crate::gearing::number::{parse_decimal, quoted};

/// A ratio as it was typed: what is a tooth pair is known, what drives what is not yet.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedRatio {
    driven_first: Ratio,
    driving_first: Option<Ratio>,
}

impl TypedRatio {
    /// A ratio whose tooth pairs may stand in either order.
    fn open(driven_first: Ratio) -> Self {
        let driving_first = driven_first
            .has_teeth()
            .then(|| driven_first.swapped().ok())
            .flatten();
        Self {
            driven_first,
            driving_first,
        }
    }

    /// The reading in which the first of two counts is driven, as most data sheets write it.
    pub fn driven_first(&self) -> &Ratio {
        &self.driven_first
    }

    /// The reading in which the first of two counts drives, where there is one and it is a ratio.
    pub fn driving_first(&self) -> Option<&Ratio> {
        self.driving_first.as_ref()
    }
}

impl From<Ratio> for TypedRatio {
    /// A ratio the order of whose tooth pairs is known.
    fn from(driven_first: Ratio) -> Self {
        Self {
            driven_first,
            driving_first: None,
        }
    }
}

/// The ratio that `text` spells.
///
/// A plain number (`3.78`, `3,78`), "to one" (`3.545:1`, `1:4.3` is 4.3), a tooth pair (`34:9`,
/// `34/9`, and `8x33`: two bare whole numbers around an x), or a product of those with `*` or `×`.
///
/// # Errors
/// A sentence that says which part is not a ratio, or which range it leaves.
///
/// # Example
/// ```
/// let ratio = layshaft::gearing::parse_ratio("44/29 * 49/12").unwrap();
/// assert!((ratio.driven_first().value() - 6.1954).abs() < 5e-5);
/// ```
pub fn parse_ratio(text: &str) -> Result<TypedRatio, RatioError> {
    if text.trim().is_empty() {
        return Err(RatioError::Empty);
    }
    let factors: Result<Vec<Factor>, RatioError> = text
        .split(['*', '×'])
        .map(|part| factor(part.trim()))
        .collect();
    Ok(TypedRatio::open(Ratio::from_factors(factors?)?))
}

fn factor(text: &str) -> Result<Factor, RatioError> {
    if text.is_empty() {
        return Err(RatioError::Empty);
    }
    if let Some((first, second)) = text.split_once([':', '/', '∶']) {
        return two_counts(text, first.trim(), second.trim());
    }
    if let Some((first, second)) = text.split_once(['x', 'X']) {
        let (first, second) = (first.trim(), second.trim());
        if is_whole(first) && is_whole(second) {
            return teeth(first, second);
        }
        return Err(RatioError::NotARatio(quoted(text)));
    }
    number(text)
}

fn two_counts(text: &str, first: &str, second: &str) -> Result<Factor, RatioError> {
    match (first, second) {
        (_, "1") => number(first),
        ("1", _) => number(second),
        _ if is_whole(first) && is_whole(second) => teeth(first, second),
        _ => match (parse_decimal(first), parse_decimal(second)) {
            (Ok(_), Ok(_)) => {
                let broken = if is_whole(first) { second } else { first };
                Err(RatioError::Teeth(quoted(broken)))
            }
            _ => Err(RatioError::NotARatio(quoted(text))),
        },
    }
}

fn number(text: &str) -> Result<Factor, RatioError> {
    let Ok(number) = parse_decimal(text) else {
        return Err(RatioError::NotARatio(quoted(text)));
    };
    if Ratio::RANGE.contains(&number) {
        Ok(Factor::Number(number))
    } else {
        Err(RatioError::OutOfRange(quoted(text)))
    }
}

fn teeth(driven: &str, driving: &str) -> Result<Factor, RatioError> {
    let count = |text: &str| {
        let teeth = text.parse::<u16>().unwrap_or(u16::MAX);
        match ToothPair::new(teeth, 1) {
            Ok(_) => Ok(teeth),
            Err(_) => Err(RatioError::Teeth(quoted(text))),
        }
    };
    Ok(Factor::Teeth(ToothPair::new(
        count(driven)?,
        count(driving)?,
    )?))
}

fn is_whole(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn value(text: &str) -> f64 {
        parse_ratio(text).unwrap().driven_first().value()
    }

    #[test]
    fn every_spelling_of_the_trade_is_read() {
        let spellings = [
            ("3.78", 3.78),
            ("3,78", 3.78),
            (" .756 ", 0.756),
            ("3.545:1", 3.545),
            ("1:4.3", 4.3),
            ("1 : 1", 1.0),
            ("4:1", 4.0),
            ("34:9", 34.0 / 9.0),
            ("34/9", 34.0 / 9.0),
            ("34 : 9", 34.0 / 9.0),
            ("8x33", 8.0 / 33.0),
            ("8 X 33", 8.0 / 33.0),
            ("8×33", 264.0),
            ("44/29 * 49/12", 44.0 / 29.0 * 49.0 / 12.0),
            ("44/29*49/12", 44.0 / 29.0 * 49.0 / 12.0),
            ("1.25 × 34:9", 1.25 * 34.0 / 9.0),
        ];
        for (text, expected) in spellings {
            assert!(
                (value(text) - expected).abs() < 1e-12,
                "{text}: {}",
                value(text)
            );
        }
    }

    #[test]
    fn what_is_no_ratio_is_answered_with_a_sentence() {
        for text in [
            "",
            " ",
            "abc",
            "1e3",
            "-3",
            "3.7.8",
            "3..8",
            "34:",
            ":9",
            "34:0",
            "0:9",
            "1000:9",
            "34.5:9",
            "3.5x1.2",
            "401",
            "0.0009",
            "nan",
            "inf",
            "3 78",
            "34:9:2",
            "*",
            "3 *",
            "٣",
            "1:0",
            "99999999999999999999:3",
        ] {
            let error = parse_ratio(text).expect_err(text).to_string();
            assert!(error.len() > 20 && error.len() < 200, "{text}: {error}");
        }
    }

    #[test]
    fn the_canonical_spelling_reads_back() {
        for text in ["3.78", "34:9", "44/29 * 49/12", "0.756", "8x33", "2 × 3,5"] {
            let ratio = parse_ratio(text).unwrap().driven_first().clone();
            let again = parse_ratio(&ratio.to_string()).unwrap();
            assert_eq!(again.driven_first(), &ratio, "{text}");
        }
    }
}
