//! Lengths as they are typed: `0.30`, `0,012 in`, `12 thou`, `1/64"`, and several readings of one.

use super::words::ending;
use super::{BenchValue, number, told};
use crate::gearing::{OutOfRange, quoted};
use crate::units::{BenchUnits, LengthUnit, MM_PER_INCH};
use crate::workshop::fits::{Diameter, PlaceDiameters, RingWidth};
use crate::workshop::journal::{CaseDepth, FilletRadius, RunOut, SeatLength};
use crate::workshop::quantity::{Depth, Radius, Reading, Setting, ShimThickness, Tolerance};
use crate::workshop::readings::{Readings, Resolution};
use crate::workshop::shim::Filling;
use crate::workshop::sizes::{Sizes, parse_sizes, sizes_text};

/// What stands behind a length, in mm; of two that end alike the longer is first.
const UNITS: &[(&str, f64)] = &[
    ("mm", 1.0),
    ("µm", 1e-3),
    ("um", 1e-3),
    ("thou", MM_PER_INCH / 1000.0),
    ("mils", MM_PER_INCH / 1000.0),
    ("mil", MM_PER_INCH / 1000.0),
    ("inches", MM_PER_INCH),
    ("inch", MM_PER_INCH),
    ("in", MM_PER_INCH),
    ("\"", MM_PER_INCH),
    ("″", MM_PER_INCH),
];

/// A figure with the size of its unit in mm, where one stands behind it.
pub(in crate::workshop) fn unit_of(text: &str) -> Option<(String, f64)> {
    ending(text, UNITS)
}

/// A length in mm.
///
/// # Errors
/// A sentence, where it is none.
fn length(text: &str, unit: LengthUnit) -> Result<f64, String> {
    length_in(text, unit.to_mm(1.0))
}

/// The same where a figure without a unit is in one of that size, in mm.
pub(in crate::workshop) fn length_in(text: &str, size_mm: f64) -> Result<f64, String> {
    let (figure, size_mm) = unit_of(text).unwrap_or_else(|| (text.trim().to_owned(), size_mm));
    Ok(figure_of(&figure)? * size_mm)
}

/// A decimal number, a fraction as `1/64`, or both as `1 1/16`.
fn figure_of(text: &str) -> Result<f64, String> {
    let Some((over, under)) = text.split_once('/') else {
        return number(text, "a length", EXAMPLE);
    };
    let (whole, over) = match over.trim().rsplit_once(' ') {
        Some((whole, over)) => (number(whole, "a length", EXAMPLE)?, over),
        None => (0.0, over),
    };
    let [over, under] = [over, under].map(|part| number(part, "a length", EXAMPLE));
    let (over, under) = (over?, under?);
    if under <= 0.0 {
        let text = quoted(text);
        return Err(format!("\"{text}\" is not a length such as {EXAMPLE}"));
    }
    let part = over / under;
    Ok(if whole < 0.0 {
        whole - part
    } else {
        whole + part
    })
}

const EXAMPLE: &str = "0.30, 0.012 in, 12 thou or 1/64 in";

/// Lengths in mm, parted by blanks, semicolons, or commas with a blank behind; a unit behind several is that
/// of all before it that have none.
///
/// # Errors
/// A sentence, where one is none, or some have a unit and the last has not.
pub(super) fn lengths(text: &str, unit: LengthUnit) -> Result<Vec<f64>, String> {
    let mut found = Vec::new();
    let mut without_unit = Vec::new();
    let mut has_unit = false;
    let items = text.split(|c: char| c.is_whitespace() || matches!(c, ';' | '+'));
    for item in items.map(|item| item.trim_end_matches(',')) {
        if item.is_empty() || item == "and" {
            continue;
        }
        let Some((figure, size_mm)) = unit_of(item) else {
            without_unit.push(figure_of(item)?);
            continue;
        };
        has_unit = true;
        if !figure.is_empty() {
            without_unit.push(figure_of(&figure)?);
        }
        found.extend(without_unit.drain(..).map(|figure| figure * size_mm));
    }
    if has_unit && !without_unit.is_empty() {
        return Err("write the unit behind every length, or once behind the last".to_owned());
    }
    found.extend(without_unit.into_iter().map(|figure| unit.to_mm(figure)));
    Ok(found)
}

/// Why a length cannot be, with what was typed in its own unit.
fn told_in(error: OutOfRange, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Millimetre => told(error),
        LengthUnit::Inch => {
            let typed = unit.figure(error.value);
            let OutOfRange { what, bounds, .. } = error;
            format!("{what} must be {bounds}, and {typed} in is not")
        }
    }
}

/// All lengths of a text as quantities.
fn all_of<T>(
    text: &str,
    units: BenchUnits,
    new: fn(f64) -> Result<T, OutOfRange>,
) -> Result<Vec<T>, String> {
    let lengths = lengths(text, units.length)?;
    lengths
        .into_iter()
        .map(|mm| new(mm).map_err(|error| told_in(error, units.length)))
        .collect()
}

fn all_spelled(lengths_mm: impl Iterator<Item = f64>, units: BenchUnits) -> String {
    let figures: Vec<String> = lengths_mm.map(|mm| units.length.figure(mm)).collect();
    figures.join(" ")
}

macro_rules! length_value {
    ($($Name:ident),+) => {$(
        impl BenchValue for $Name {
            fn spelled(&self, units: BenchUnits) -> String {
                units.length.figure(self.mm())
            }

            fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
                let mm = length(text, units.length)?;
                Self::from_mm(mm).map_err(|error| told_in(error, units.length))
            }
        }
    )+};
}

length_value!(
    ShimThickness,
    Depth,
    Radius,
    Reading,
    Resolution,
    Tolerance,
    Diameter,
    RingWidth,
    CaseDepth,
    FilletRadius,
    SeatLength,
    RunOut
);

impl BenchValue for Setting {
    /// With its sign, `+0.05`: a marking may be either.
    fn spelled(&self, units: BenchUnits) -> String {
        let figure = units.length.figure(self.mm());
        let is_above = self.mm() > 0.0 && figure.contains(|c: char| matches!(c, '1'..='9'));
        if is_above {
            format!("+{figure}")
        } else {
            figure
        }
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        let mm = length(text, units.length)?;
        Self::from_mm(mm).map_err(|error| told_in(error, units.length))
    }
}

impl BenchValue for Readings {
    fn spelled(&self, units: BenchUnits) -> String {
        all_spelled(self.as_slice().iter().map(|reading| reading.mm()), units)
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        let readings = all_of(text, units, Reading::from_mm)?;
        let most = Self::MOST;
        Self::new(readings).ok_or_else(|| format!("type 1 to {most} readings, as 0.30 0.31 0.29"))
    }
}

impl BenchValue for PlaceDiameters {
    fn spelled(&self, units: BenchUnits) -> String {
        let read = self.as_slice().iter();
        let figures: Vec<String> = read
            .map(|reading| units.length.seat_reading(reading.mm()))
            .collect();
        figures.join(" ")
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        let readings = all_of(text, units, Diameter::from_mm)?;
        let most = Self::MOST;
        Self::new(readings).ok_or_else(|| format!("type 1 to {most} diameters, as 40.010 40.012"))
    }
}

impl BenchValue for Filling {
    fn spelled(&self, units: BenchUnits) -> String {
        all_spelled(self.as_slice().iter().map(|depth| depth.mm()), units)
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        let heights = all_of(text, units, Depth::from_mm)?;
        let most = Self::MOST;
        Self::new(heights).ok_or_else(|| format!("type 1 to {most} heights, as 4.48 15.0 55"))
    }
}

impl BenchValue for Sizes {
    fn spelled(&self, units: BenchUnits) -> String {
        sizes_text(self, units.length)
    }

    fn read(text: &str, units: BenchUnits) -> Result<Self, String> {
        parse_sizes(text, units.length).map_err(|error| error.to_string())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MM: LengthUnit = LengthUnit::Millimetre;

    #[test]
    fn a_length_is_read_with_the_unit_behind_it() {
        let cases = [
            ("0,30", 0.3),
            ("0.012 in", 0.3048),
            ("12 thou", 0.3048),
            ("12thou", 0.3048),
            ("1/64\"", 25.4 / 64.0),
            ("1 1/16 in", 25.4 * 1.0625),
            ("300 µm", 0.3),
            ("-0.05", -0.05),
            ("−0.05 mm", -0.05),
        ];
        for (text, mm) in cases {
            let read = length(text, MM).unwrap();
            assert!((read - mm).abs() < 1e-12, "{text} gave {read}");
        }
        for text in ["", "thin", "1/0 in", "0.3 km", "1//2", "0.3.1"] {
            assert!(length(text, MM).is_err(), "{text}");
        }
    }

    #[test]
    fn a_unit_behind_several_is_that_of_all_before_it() {
        let read = |text| lengths(text, MM);
        assert_eq!(read("0.30 0.31 0.29"), Ok(vec![0.30, 0.31, 0.29]));
        assert_eq!(read("0,30; 0,31, 0,29"), Ok(vec![0.30, 0.31, 0.29]));
        let thousandths = read("12 13 11 thou").unwrap();
        assert!((thousandths[0] - 0.3048).abs() < 1e-12 && thousandths.len() == 3);
        assert!(read("12 thou 13").is_err(), "13 of what?");
        let inches = lengths("0.012 0.013", LengthUnit::Inch).unwrap();
        assert!((inches[1] - 0.3302).abs() < 1e-12);
    }
}
