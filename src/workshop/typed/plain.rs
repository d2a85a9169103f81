//! Values of the bench that have one unit of their own: temperatures, angles, expansions, rates.

use super::words::ending;
use super::{BenchValue, number, told};
use crate::units::{BenchUnits, plain_number, round_to};
use crate::workshop::quantity::{Angle, Celsius, Expansion};
use crate::workshop::side_bearings::BacklashMove;

/// A number to a grain, as it is typed.
fn figure(number: f64, grain: f64) -> String {
    plain_number(round_to(number, grain))
}

/// Which scale of temperatures a figure is on.
#[derive(Clone, Copy)]
enum Scale {
    Celsius,
    Fahrenheit,
}

/// What stands behind a temperature.
const SCALES: &[(&str, Scale)] = &[
    ("°C", Scale::Celsius),
    ("C", Scale::Celsius),
    ("°F", Scale::Fahrenheit),
    ("F", Scale::Fahrenheit),
];

impl BenchValue for Celsius {
    fn spelled(&self, _: BenchUnits) -> String {
        figure(self.c(), 0.1)
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        let (text, scale) =
            ending(text, SCALES).unwrap_or_else(|| (text.to_owned(), Scale::Celsius));
        let figure = number(&text, "a temperature", "20, 80 °C or 176 °F")?;
        Self::from_c(match scale {
            Scale::Celsius => figure,
            Scale::Fahrenheit => (figure - 32.0) / 1.8,
        })
        .map_err(told)
    }
}

impl BenchValue for Angle {
    fn spelled(&self, _: BenchUnits) -> String {
        figure(self.deg(), 0.01)
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        let text = text.trim_end().trim_end_matches('°');
        Self::from_deg(number(text, "an angle", "20 or 75.5")?).map_err(told)
    }
}

impl BenchValue for Expansion {
    fn spelled(&self, _: BenchUnits) -> String {
        figure(self.per_mk(), 0.01)
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        Self::from_per_mk(number(text, "an expansion", "12 or 23")?).map_err(told)
    }
}

impl BenchValue for BacklashMove {
    fn spelled(&self, _: BenchUnits) -> String {
        figure(self.per_mm(), 1e-3)
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        Self::from_per_mm(number(text, "a rate", "0.6 or 0.7")?).map_err(told)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_are_read_on_both_scales() {
        let c = |text| Celsius::read(text, BenchUnits::default()).map(Celsius::c);
        assert_eq!(c("80"), Ok(80.0));
        assert_eq!(c("−20 °C"), Ok(-20.0));
        assert!((c("176 °F").unwrap() - 80.0).abs() < 1e-12);
        assert!(c("warm").is_err() && c("900").is_err() && c("350 K").is_err());
    }
}
