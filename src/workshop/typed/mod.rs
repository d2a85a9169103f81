//! What is typed at the bench: values with the units that stand behind them, spelled and read.
//!
//! A figure without a unit is in the unit of the bench, see [`BenchUnits`]; what stands behind it decides.

mod bands;
mod lengths;
mod plain;
mod torques;
mod words;

use super::stock::StackedShims;
use crate::gearing::{Name, OutOfRange, Ratio, parse_decimal, parse_ratio, quoted};
use crate::units::BenchUnits;

pub(super) use lengths::{length_in, unit_of};

/// Something that stands in a field of a job: its spelling reads back to what it shows.
pub(super) trait BenchValue: Sized {
    /// As it is spelled in these units.
    fn spelled(&self, units: BenchUnits) -> String;

    /// What a text means in these units.
    ///
    /// # Errors
    /// A sentence, where it does not read or cannot be.
    fn read(text: &str, units: BenchUnits) -> Result<Self, String>;
}

/// What may be absent: nothing is typed then.
pub(super) fn spelled(value: Option<&impl BenchValue>, units: BenchUnits) -> String {
    value.map_or_else(String::new, |value| value.spelled(units))
}

/// What a text means; none where nothing is typed.
pub(super) fn read<T: BenchValue>(text: &str, units: BenchUnits) -> Result<Option<T>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    T::read(text, units).map(Some)
}

/// A number, below 0 or not, or what it should have been.
fn number(text: &str, what: &str, example: &str) -> Result<f64, String> {
    let text = text.trim();
    let size = text.strip_prefix(['-', '−', '+']);
    let Ok(number) = parse_decimal(size.unwrap_or(text)) else {
        let text = quoted(text);
        return Err(format!("\"{text}\" is not {what} such as {example}"));
    };
    let is_below = size.is_some() && !text.starts_with('+');
    Ok(if is_below { -number } else { number })
}

fn told(error: OutOfRange) -> String {
    error.to_string()
}

impl BenchValue for Name {
    fn spelled(&self, _: BenchUnits) -> String {
        self.as_str().to_owned()
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        Self::new(text).map_err(|error| error.to_string())
    }
}

impl BenchValue for StackedShims {
    fn spelled(&self, _: BenchUnits) -> String {
        self.count().to_string()
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        let count = text.trim().parse().ok().and_then(Self::new);
        let most = Self::MOST;
        count.ok_or_else(|| format!("1 to {most} shims are in a place, not \"{}\"", quoted(text)))
    }
}

impl BenchValue for Ratio {
    fn spelled(&self, _: BenchUnits) -> String {
        self.to_string()
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        let typed = parse_ratio(text).map_err(|error| error.to_string())?;
        Ok(typed.driven_first().clone())
    }
}
