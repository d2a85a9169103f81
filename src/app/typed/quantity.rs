//! Typed quantities: a number, below 0 or not, and a unit behind it that is forgiven.

use super::speeds::{OF_ROAD, without};
use super::{Reading, told};
use crate::gearing::{NumberError, OutOfRange, parse_decimal, parse_rpm};
use crate::project::CoastDown;
use crate::units::{SpeedUnit, mark_text};

/// A quantity as it is typed: what makes it of a number, a figure that it can be, its unit.
pub(in crate::app) struct Quantity<T> {
    /// The quantity from its number.
    pub new: fn(f64) -> Result<T, OutOfRange>,
    /// A figure that it can be, for the sentence that says why it does not read.
    pub example: &'static str,
    /// The unit that is forgiven behind the figure.
    pub unit: &'static str,
}

impl<T> Quantity<T> {
    /// The quantity that `text` spells, or none where nothing is typed.
    ///
    /// # Errors
    /// When it is no number, or outside its range.
    pub(in crate::app) fn read(&self, text: &str) -> Reading<Option<T>> {
        self.read_by(parse_decimal, text)
    }

    /// The same of a quantity that comes in thousands and hardly in parts: `1,450` is 1450.
    ///
    /// # Errors
    /// As [`Self::read`].
    pub(in crate::app) fn read_large(&self, text: &str) -> Reading<Option<T>> {
        self.read_by(parse_rpm, text)
    }

    /// The same of a share, which may be typed in per cent.
    ///
    /// # Errors
    /// As [`Self::read`].
    pub(in crate::app) fn read_share(&self, text: &str) -> Reading<Option<T>> {
        match text.trim().strip_suffix('%') {
            None => self.read(text),
            Some(percent) => {
                let share = self.number(parse_decimal, percent)? / 100.0;
                (self.new)(share).map(Some).map_err(told)
            }
        }
    }

    fn read_by(
        &self,
        parse: fn(&str) -> Result<f64, NumberError>,
        text: &str,
    ) -> Reading<Option<T>> {
        if text.trim().is_empty() {
            return Ok(None);
        }
        let number = self.number(parse, without(text, &[self.unit]))?;
        (self.new)(number).map(Some).map_err(told)
    }

    /// The number, below 0 or not.
    fn number(&self, parse: fn(&str) -> Result<f64, NumberError>, text: &str) -> Reading<f64> {
        let text = text.trim();
        let number = match text.strip_prefix(['-', '−']) {
            Some(size) => parse(size).map(|size| -size),
            None => parse(text),
        };
        number.map_err(|error| error.about(self.what(), self.example))
    }

    /// What it is called, with its article: the name stands in the sentence that refuses it.
    fn what(&self) -> &'static str {
        let refused = (self.new)(f64::NAN).err();
        refused.map_or("a number", |refused| refused.what)
    }
}

/// A speed of the wind in `unit`, in km/h; what is spelled as the wind that is there is that wind.
///
/// # Errors
/// When it is no number, or no wind that can be.
pub(in crate::app) fn wind<T>(
    of: &Quantity<T>,
    (unit, present_kmh): (SpeedUnit, Option<f64>),
    text: &str,
) -> Reading<Option<T>> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let own = OF_ROAD.iter().find(|(sign, _)| text.ends_with(sign));
    let (figure, unit) = own.map_or((text, unit), |(sign, own)| (without(text, &[sign]), *own));
    let same = present_kmh.filter(|kmh| mark_text(*kmh, unit) == figure);
    let kmh = match same {
        Some(kmh) => kmh,
        None => unit.to_kmh(of.number(parse_decimal, figure)?),
    };
    (of.new)(kmh).map(Some).map_err(told)
}

/// A measured road load: A, B and C, parted by blanks or semicolons.
///
/// # Errors
/// When there are not three numbers, or one is outside its range.
pub(in crate::app) fn road_load(text: &str) -> Reading<Option<CoastDown>> {
    use crate::motion::{ConstantLoad, LinearLoad, QuadraticLoad};
    let parts = text.split(|c: char| c.is_whitespace() || c == ';');
    let parts: Vec<&str> = parts.filter(|part| !part.is_empty()).collect();
    let numbers = match parts[..] {
        [] => return Ok(None),
        [a, b, c] => [a, b, c],
        _ => {
            return Err("type A, B and C of the coast-down, as 120 1.5 0.42".to_owned());
        }
    };
    let constant = Quantity {
        new: ConstantLoad::from_n,
        example: "120",
        unit: "N",
    };
    let linear = Quantity {
        new: LinearLoad::from_n_per_m_s,
        example: "1.5",
        unit: "",
    };
    let quadratic = Quantity {
        new: QuadraticLoad::from_n_per_m2_s2,
        example: "0.42",
        unit: "",
    };
    let [a, b, c] = numbers;
    let (a, b, c) = (constant.read(a)?, linear.read(b)?, quadratic.read(c)?);
    Ok(a.zip(b)
        .zip(c)
        .map(|((constant, linear), quadratic)| CoastDown {
            constant,
            linear,
            quadratic,
        }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::motion::{FrontShare, Grade, Headwind, Mass};

    const MASS: Quantity<Mass> = Quantity {
        new: Mass::from_kg,
        example: "1450",
        unit: "kg",
    };

    #[test]
    fn a_quantity_is_read_with_its_unit_its_thousands_and_its_sign() {
        for text in ["1450", " 1450 kg", "1,450", "1.450", "1 450kg", "1450,0"] {
            assert_eq!(
                MASS.read_large(text),
                Ok(Mass::from_kg(1450.0).ok()),
                "{text}"
            );
        }
        assert_eq!(MASS.read_large("  "), Ok(None));
        let grade = Quantity {
            new: Grade::from_percent,
            example: "4",
            unit: "%",
        };
        for text in ["-4", "−4 %", "-4,0%"] {
            assert_eq!(
                grade.read(text),
                Ok(Grade::from_percent(-4.0).ok()),
                "{text}"
            );
        }
        let share = Quantity {
            new: FrontShare::new,
            example: "0.6",
            unit: "",
        };
        for text in ["0.6", "60 %", "60%"] {
            assert_eq!(
                share.read_share(text),
                Ok(FrontShare::new(0.6).ok()),
                "{text}"
            );
        }
    }

    #[test]
    fn what_does_not_read_is_refused_by_its_name() {
        for (text, says) in [
            ("heavy", "\"heavy\" is not a mass such as 1450"),
            ("kg", "there is no number yet: type a mass such as 1450"),
            ("12", "a mass must be between 50 and 100000 kg, not 12"),
            (
                "-1450",
                "a mass must be between 50 and 100000 kg, not -1450",
            ),
        ] {
            assert_eq!(MASS.read_large(text).unwrap_err(), says);
        }
        for text in ["120", "120 1.5", "1 2 3 4"] {
            assert!(
                road_load(text).unwrap_err().contains("A, B and C"),
                "{text}"
            );
        }
        let beyond = road_load("120 1.5 200").unwrap_err();
        assert!(beyond.contains("square of the speed"), "{beyond}");
    }

    #[test]
    fn wind_is_read_in_the_project_s_unit_or_its_own_and_keeps_what_is_there() {
        let of = Quantity {
            new: Headwind::from_kmh,
            example: "30",
            unit: "",
        };
        let read = |unit, present, text| wind(&of, (unit, present), text).unwrap().unwrap().kmh();
        let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
        assert!(near(read(SpeedUnit::Kmh, None, "-30"), -30.0));
        assert!(near(read(SpeedUnit::Mph, None, "10"), 16.09344));
        assert!(near(read(SpeedUnit::Mph, None, "30 km/h"), 30.0));
        assert!(near(read(SpeedUnit::Mph, Some(30.0), "18.6"), 30.0));
    }
}
