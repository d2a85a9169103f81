//! Bands as they are typed: a setting with the word of its sign, a torque, the least and the most of a length.

use super::lengths::{length_in, unit_of};
use super::torques::{torque, torque_unit_of};
use super::words::{ending, ends};
use super::{BenchValue, told};
use crate::gearing::quoted;
use crate::units::BenchUnits;
use crate::workshop::quantity::{LengthBand, Reading, Setting, SettingBand, TurningTorque};
use crate::workshop::turning_torque::TorqueBand;

/// How a setting is typed.
const SETTING: &str =
    "type a setting as the manual gives it, as preload 0.15 to 0.20 or clearance 0.05 to 0.10";

/// The words of a setting, before or behind its figures: below 0 where it is preload.
const WORDS: &[(&str, f64)] = &[
    ("preload", -1.0),
    ("clearance", 1.0),
    ("end play", 1.0),
    ("end float", 1.0),
    ("endplay", 1.0),
    ("float", 1.0),
    ("play", 1.0),
];

/// A text without the word of its sign, and that sign.
fn word_of(text: &str) -> (String, Option<f64>) {
    if let Some((rest, sign)) = ending(text, WORDS) {
        return (rest, Some(sign));
    }
    let lower = text.trim_start().to_lowercase();
    let before = WORDS.iter().find(|(word, _)| lower.starts_with(word));
    match before {
        Some((word, sign)) => (lower[word.len()..].trim().to_owned(), Some(*sign)),
        None => (text.trim().to_owned(), None),
    }
}

/// One end of a setting, its figure apart from its word.
struct End {
    figure: String,
    sign: Option<f64>,
}

impl End {
    fn of(text: &str) -> Self {
        let (figure, sign) = word_of(text);
        Self { figure, sign }
    }

    /// The end in mm, signed; without a word it has that of the whole, if that has one.
    fn mm(&self, whole: Option<f64>, size_mm: f64) -> Result<f64, String> {
        let mm = length_in(&self.figure, size_mm)?;
        match self.sign.or(whole) {
            // A sign beside a word could be meant twice.
            Some(_) if mm < 0.0 => Err(format!(
                "{} has a sign beside the word; {SETTING}",
                quoted(&self.figure)
            )),
            Some(sign) => Ok(sign * mm),
            None => Ok(mm),
        }
    }
}

impl BenchValue for SettingBand {
    fn spelled(&self, units: BenchUnits) -> String {
        self.words(units.length)
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        let [first, last] = ends(text).map(End::of);
        // The unit behind the whole, and a word on either side of it, are those of both ends.
        let behind = unit_of(&last.figure).map(|(_, size_mm)| size_mm);
        let size_mm = behind.unwrap_or_else(|| units.length.to_mm(1.0));
        let whole = first.sign.or(last.sign);
        let [mut low, mut high] = [first.mm(whole, size_mm)?, last.mm(whole, size_mm)?];
        // A word tells the sign, whichever figure is first; bare numbers are in order, lest a sign is lost.
        if whole.is_some() && high < low {
            (low, high) = (high, low);
        }
        let [low, high] = [low, high].map(|mm| Setting::from_mm(mm).map_err(told));
        Self::new(low?, high?).ok_or_else(|| format!("the lower number comes first; {SETTING}"))
    }
}

impl BenchValue for LengthBand {
    fn spelled(&self, units: BenchUnits) -> String {
        self.figures(units.length)
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        let (text, size_mm) =
            unit_of(text).unwrap_or_else(|| (text.to_owned(), units.length.to_mm(1.0)));
        let [least, most] =
            ends(&text).map(|end| Reading::from_mm(length_in(end, size_mm)?).map_err(told));
        Self::new(least?, most?)
            .ok_or_else(|| "the least comes first, as in 0.10 to 0.15".to_owned())
    }
}

impl BenchValue for TorqueBand {
    fn spelled(&self, units: BenchUnits) -> String {
        let [low, high] = self.ends().map(|end| units.torque.figure(end.nmm()));
        if low == high {
            low
        } else {
            format!("{low} to {high}")
        }
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        let (text, unit) = torque_unit_of(text).unwrap_or_else(|| (text.to_owned(), units.torque));
        let [low, high] =
            ends(&text).map(|end| TurningTorque::from_nmm(torque(end, unit)?).map_err(told));
        Self::new(low?, high?)
            .ok_or_else(|| "the lower torque comes first, as in 1.5 to 2.5".to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::LengthUnit;

    fn mm(text: &str) -> Result<[f64; 2], String> {
        let band = SettingBand::read(text, BenchUnits::default())?;
        Ok([band.low().mm(), band.high().mm()])
    }

    #[test]
    fn a_setting_is_read_with_its_word_or_its_sign() {
        for text in [
            "preload 0.15 to 0.20",
            "preload 0,20 to 0,15",
            "0.15–0.20 mm preload",
            "-0.20 to -0.15",
            "Preload 0.15-0.20 mm",
        ] {
            assert_eq!(mm(text), Ok([-0.20, -0.15]), "{text}");
        }
        assert_eq!(mm("end float 0.05 to 0.10"), Ok([0.05, 0.10]));
        assert_eq!(mm("0.05 to 0.10"), Ok([0.05, 0.10]));
        assert_eq!(mm("preload 0.02 to clearance 0.03"), Ok([-0.02, 0.03]));
        assert_eq!(mm("preload 0.2"), Ok([-0.2, -0.2]));
        let [low, high] = mm("preload 4 to 6 thou").unwrap();
        assert!((low + 0.1524).abs() < 1e-12 && (high + 0.1016).abs() < 1e-12);
    }

    #[test]
    fn a_setting_that_could_be_meant_two_ways_is_refused() {
        for text in [
            "-0.15 to -0.20",
            "preload -0.15 to -0.20",
            "0.1 to",
            "tight",
        ] {
            assert!(mm(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_band_of_lengths_is_read_in_the_unit_behind_it() {
        let read = |text| LengthBand::read(text, BenchUnits::default());
        assert_eq!(
            read("0,10–0,15").unwrap().figures(LengthUnit::Millimetre),
            "0.10 to 0.15"
        );
        let band = read("4 to 6 thou").unwrap();
        assert_eq!(band.figures(LengthUnit::Inch), "0.004 to 0.006");
        assert!(read("0.2 to 0.1").is_err());
    }

    #[test]
    fn a_band_of_torques_is_read_in_the_unit_behind_it() {
        let band = TorqueBand::read("15-35 lb·in", BenchUnits::default()).unwrap();
        let [low, high] = band.ends().map(TurningTorque::nmm);
        assert!((low - 1694.77).abs() < 0.01 && (high - 3954.47).abs() < 0.01);
        let band = TorqueBand::read("1,5 to 2,5", BenchUnits::default()).unwrap();
        assert_eq!(band.spelled(BenchUnits::default()), "1.5 to 2.5");
        assert!(TorqueBand::read("2 to 1", BenchUnits::default()).is_err());
    }
}
