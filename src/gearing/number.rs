//! The reader of a typed number, and the quoting of what does not read.
//!
//! Point or comma as decimal mark, no exponent, no sign, no grouping: the range checks are made
//! by whoever knows the quantity.

use crate::units::plain_number;
use crate::unseen::printable;

/// Why a text is not a plain number.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NumberError {
    /// Nothing but blanks.
    #[error("there is no number yet")]
    Empty,
    /// Something other than digits and one decimal mark.
    #[error("\"{0}\" is not a number such as 3.78")]
    NotANumber(String),
    /// More than one decimal mark.
    #[error("\"{0}\" has more than one decimal mark")]
    TwoMarks(String),
}

impl NumberError {
    /// The same as a sentence about one quantity: its name with the article, and a figure that it can
    /// be.
    pub fn about(&self, what: &str, example: &str) -> String {
        match self {
            Self::Empty => format!("there is no number yet: type {what} such as {example}"),
            Self::NotANumber(text) => format!("\"{text}\" is not {what} such as {example}"),
            Self::TwoMarks(_) => self.to_string(),
        }
    }
}

/// The number that `text` spells, finite and not negative.
///
/// Blanks around it are ignored; the decimal mark is a point or a comma.
///
/// # Errors
/// When the text is empty, has two decimal marks, or holds anything but digits and a mark.
///
/// # Example
/// ```
/// assert_eq!(layshaft::gearing::parse_decimal("3,78"), Ok(3.78));
/// ```
pub fn parse_decimal(text: &str) -> Result<f64, NumberError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NumberError::Empty);
    }
    let is_mark = |c: char| c == '.' || c == ',';
    let plain = text.chars().all(|c| c.is_ascii_digit() || is_mark(c));
    if !plain || !text.contains(|c: char| c.is_ascii_digit()) {
        return Err(NumberError::NotANumber(quoted(text)));
    }
    if text.chars().filter(|&c| is_mark(c)).count() > 1 {
        return Err(NumberError::TwoMarks(quoted(text)));
    }
    match text.replace(',', ".").parse::<f64>() {
        Ok(number) if number.is_finite() => Ok(number),
        _ => Err(NumberError::NotANumber(quoted(text))),
    }
}

/// The engine speed that `text` spells, in rev/min, finite and not negative.
///
/// A mark or a blank between one to three digits and exactly three more parts thousands: `6,500`,
/// `4.500` and `4 500` are 6500 and 4500. Everything else is read as by [`parse_decimal`].
///
/// # Errors
/// As [`parse_decimal`].
///
/// # Example
/// ```
/// assert_eq!(layshaft::gearing::parse_rpm("6,500"), Ok(6500.0));
/// assert_eq!(layshaft::gearing::parse_rpm("6500,5"), Ok(6500.5));
/// ```
pub fn parse_rpm(text: &str) -> Result<f64, NumberError> {
    match thousands(text.trim()) {
        Some([thousands, rest]) => parse_decimal(&format!("{thousands}{rest}")),
        None => parse_decimal(text),
    }
}

/// The two halves of a number whose thousands are parted by one mark or blank.
fn thousands(text: &str) -> Option<[&str; 2]> {
    const PARTING: [char; 7] = ['.', ',', ' ', '\u{a0}', '\u{202f}', '\'', '’'];
    let (thousands, rest) = text.split_once(PARTING)?;
    let are_digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
    let is_grouped = (1..=3).contains(&thousands.len())
        && rest.len() == 3
        && are_digits(thousands)
        && are_digits(rest);
    is_grouped.then_some([thousands, rest])
}

/// At most 40 characters of `text`, fit to stand in a sentence: all on one line, and all to be seen.
pub(crate) fn quoted(text: &str) -> String {
    if text.chars().count() <= 40 {
        return text.chars().map(printable).collect();
    }
    text.chars().take(39).map(printable).chain(['…']).collect()
}

/// At most 40 characters of a number that was typed, fit to stand in a sentence.
pub(crate) fn quoted_number(number: f64) -> String {
    quoted(&plain_number(number))
}
