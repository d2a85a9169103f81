//! Values of the bench that have one unit of their own: temperatures, angles, expansions, rates,
//! deviations in µm, tolerance classes.

use super::lengths::unit_of;
use super::words::ending;
use super::{BenchValue, number, told};
use crate::units::{BenchUnits, plain_number, round_to};
use crate::workshop::fits::{
    BoreClass, Deviation, NoClass, RoomTemperature, ShaftClass, SlipClearance, deviation_text,
};
use crate::workshop::quantity::{Angle, Celsius, Expansion, TemperatureRise};
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
        Self::from_c(celsius(text)?).map_err(told)
    }
}

impl BenchValue for RoomTemperature {
    fn spelled(&self, _: BenchUnits) -> String {
        figure(self.c(), 0.1)
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        Self::from_c(celsius(text)?).map_err(told)
    }
}

/// A temperature in °C, on either scale.
fn celsius(text: &str) -> Result<f64, String> {
    let (text, scale) = ending(text, SCALES).unwrap_or_else(|| (text.to_owned(), Scale::Celsius));
    let figure = number(&text, "a temperature", "20, 80 °C or 176 °F")?;
    Ok(match scale {
        Scale::Celsius => figure,
        Scale::Fahrenheit => (figure - 32.0) / 1.8,
    })
}

/// What stands behind a rise of temperature, in K.
const RISES: &[(&str, f64)] = &[("K", 1.0), ("°C", 1.0), ("C", 1.0)];

impl BenchValue for TemperatureRise {
    fn spelled(&self, _: BenchUnits) -> String {
        figure(self.k(), 0.1)
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        let (text, size_k) = ending(text, RISES).unwrap_or_else(|| (text.to_owned(), 1.0));
        let figure = number(&text, "a temperature rise", "10 or 60 K")?;
        Self::from_k(figure * size_k).map_err(told)
    }
}

/// Something small in µm, unless another unit stands behind it.
fn micrometres(text: &str, what: &str) -> Result<f64, String> {
    match unit_of(text) {
        Some((figure, size_mm)) => {
            // The size first: a micrometre is then exactly 1.
            let size_um = size_mm * 1000.0;
            Ok(number(&figure, what, "12 or 0.0005 in")? * size_um)
        }
        None => number(text, what, "12 or 0.0005 in"),
    }
}

impl BenchValue for Deviation {
    fn spelled(&self, _: BenchUnits) -> String {
        deviation_text(self.um())
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        Self::from_um(micrometres(text, "a deviation")?).map_err(told)
    }
}

impl BenchValue for SlipClearance {
    fn spelled(&self, _: BenchUnits) -> String {
        figure(self.um(), 0.1)
    }

    fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
        Self::from_um(micrometres(text, "a clearance")?).map_err(told)
    }
}

macro_rules! class_value {
    ($($Class:ident),+) => {$(
        impl BenchValue for $Class {
            fn spelled(&self, _: BenchUnits) -> String {
                self.to_string()
            }

            fn read(text: &str, _: BenchUnits) -> Result<Self, String> {
                text.parse().map_err(|error: NoClass| error.to_string())
            }
        }
    )+};
}

class_value!(ShaftClass, BoreClass);

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
        let room = RoomTemperature::read("68 °F", BenchUnits::default()).unwrap();
        assert!((room.c() - 20.0).abs() < 1e-12);
        let rise =
            |text| TemperatureRise::read(text, BenchUnits::default()).map(TemperatureRise::k);
        assert_eq!([rise("60"), rise("60 K")], [Ok(60.0), Ok(60.0)]);
        assert!(c("warm").is_err() && c("900").is_err() && c("350 K").is_err());
    }

    #[test]
    fn what_is_small_is_in_micrometres_unless_a_unit_says_otherwise() {
        let um = |text| Deviation::read(text, BenchUnits::default()).map(Deviation::um);
        assert_eq!(um("−12"), Ok(-12.0));
        assert_eq!(um("+18 µm"), Ok(18.0));
        assert!((um("0.0005 in").unwrap() - 12.7).abs() < 1e-9);
        assert!(um("2 mm").is_err() && um("tight").is_err());
        let class = |text| ShaftClass::read(text, BenchUnits::default());
        assert_eq!(class("k6"), Ok(ShaftClass::K6));
        assert!(class("K6").is_err());
    }
}
