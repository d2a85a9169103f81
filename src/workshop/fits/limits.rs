//! The limits of a size about its nominal one, and what a measured size is beside them.

use super::quantity::{Deviation, Diameter};
use crate::units::{LengthUnit, MM_PER_INCH, plain_number, round_to, signed};

/// Micrometres in a millimetre.
pub(super) const UM_PER_MM: f64 = 1000.0;

/// What rounding may leave of a size, in µm.
pub(super) const ROUNDING_UM: f64 = 1e-6;

/// The unit of what is smaller than a thousandth of a bench's unit: µm where that is mm.
pub(super) fn fine_sign(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Millimetre => "µm",
        LengthUnit::Inch => unit.sign(),
    }
}

/// A deviation in µm with its sign, in figures without the unit: `+18`, `−5.5`.
pub(in crate::workshop) fn deviation_text(um: f64) -> String {
    match signed(round_to(um, 0.1), 1) {
        text if text.ends_with(".0") => text.trim_end_matches(".0").to_owned(),
        text => text,
    }
}

/// The finest step that sizes are told in, in µm: the micrometre, and a hundred-thousandth of an inch.
fn grain_um(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Millimetre => 1.0,
        LengthUnit::Inch => MM_PER_INCH * UM_PER_MM / 100_000.0,
    }
}

/// How far a size may lie above its nominal one, below 0 where it lies below, in µm; both belong to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeLimits {
    lower_um: f64,
    upper_um: f64,
}

/// What a measured size is beside its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SizeVerdict {
    /// Within them.
    Within,
    /// Above the upper one.
    Above {
        /// By so much, in µm.
        by_um: f64,
    },
    /// Below the lower one.
    Below {
        /// By so much, in µm.
        by_um: f64,
    },
}

impl SizeLimits {
    /// The limits from `lower` to `upper`; none where they are the other way round. Both may be the same.
    pub fn new(lower: Deviation, upper: Deviation) -> Option<Self> {
        (lower <= upper).then_some(Self::of_row([upper.um(), lower.um()]))
    }

    /// The limits as tables print them, the upper one first.
    pub(super) const fn of_row([upper_um, lower_um]: [f64; 2]) -> Self {
        Self { lower_um, upper_um }
    }

    /// From the smallest to the largest of what was measured.
    pub(super) fn measured([smallest_mm, largest_mm]: [f64; 2], nominal: Diameter) -> Self {
        let um = |mm: f64| (mm - nominal.mm()) * UM_PER_MM;
        Self::of_row([um(largest_mm), um(smallest_mm)])
    }

    /// The lower one in µm.
    pub fn lower_um(self) -> f64 {
        self.lower_um
    }

    /// The upper one in µm.
    pub fn upper_um(self) -> f64 {
        self.upper_um
    }

    /// How wide the tolerance is, in µm.
    pub fn width_um(self) -> f64 {
        self.upper_um - self.lower_um
    }

    /// The smallest and the largest size in mm to the micrometre; half a micrometre goes inwards, so that what is
    /// made to them lies within.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::{Diameter, ShaftClass};
    /// let journal = Diameter::from_mm(39.0)?;
    /// let k6 = ShaftClass::K6.limits(journal).unwrap();
    /// assert_eq!(k6.sizes_mm(journal), [39.002, 39.018]);
    /// # Ok::<(), layshaft::gearing::OutOfRange>(())
    /// ```
    pub fn sizes_mm(self, nominal: Diameter) -> [f64; 2] {
        self.sizes_to(nominal, grain_um(LengthUnit::Millimetre))
    }

    /// The same to another grain in µm.
    fn sizes_to(self, nominal: Diameter, grain_um: f64) -> [f64; 2] {
        let nominal_um = nominal.mm() * UM_PER_MM;
        let smallest = ((nominal_um + self.lower_um - ROUNDING_UM) / grain_um).ceil();
        let largest = ((nominal_um + self.upper_um + ROUNDING_UM) / grain_um).floor();
        [smallest, largest].map(|grains| grains * grain_um / UM_PER_MM)
    }

    /// What a size in mm is beside them.
    pub fn verdict(self, nominal: Diameter, size_mm: f64) -> SizeVerdict {
        let um = (size_mm - nominal.mm()) * UM_PER_MM;
        if um > self.upper_um + ROUNDING_UM {
            SizeVerdict::Above {
                by_um: um - self.upper_um,
            }
        } else if um < self.lower_um - ROUNDING_UM {
            SizeVerdict::Below {
                by_um: self.lower_um - um,
            }
        } else {
            SizeVerdict::Within
        }
    }

    /// `+2 to +18 µm`.
    pub fn words(self) -> String {
        let [lower, upper] = [self.lower_um, self.upper_um].map(deviation_text);
        format!("{lower} to {upper} µm")
    }

    /// `39.002 to 39.018 mm`.
    pub fn size_words(self, nominal: Diameter) -> String {
        self.size_words_in(nominal, LengthUnit::Millimetre)
    }

    /// The same at a bench of that unit; what is made to them lies within in either.
    pub fn size_words_in(self, nominal: Diameter, unit: LengthUnit) -> String {
        let sizes = self.sizes_to(nominal, grain_um(unit));
        let [smallest, largest] = sizes.map(|mm| unit.seat_size(mm));
        format!("{smallest} to {largest} {}", unit.sign())
    }
}

impl SizeVerdict {
    /// `within`, `above by 3 µm`, `below by 2.5 µm`.
    pub fn words(self) -> String {
        self.words_in(LengthUnit::Millimetre)
    }

    /// The same at a bench of that unit.
    pub fn words_in(self, unit: LengthUnit) -> String {
        let text = |um: f64| match unit {
            LengthUnit::Millimetre => plain_number(round_to(um, 0.1)),
            LengthUnit::Inch => unit.figure(um / UM_PER_MM),
        };
        let sign = fine_sign(unit);
        match self {
            Self::Within => "within".to_owned(),
            Self::Above { by_um } => format!("above by {} {sign}", text(by_um)),
            Self::Below { by_um } => format!("below by {} {sign}", text(by_um)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn limits(lower: f64, upper: f64) -> SizeLimits {
        let [lower, upper] = [lower, upper].map(|um| Deviation::from_um(um).unwrap());
        SizeLimits::new(lower, upper).unwrap()
    }

    #[test]
    fn sizes_stay_within_their_limits_to_the_micrometre() {
        let at = |mm| Diameter::from_mm(mm).unwrap();
        let words = |lower, upper, mm| limits(lower, upper).size_words(at(mm));
        assert_eq!(words(-5.5, 5.5, 16.0), "15.995 to 16.005 mm");
        assert_eq!(words(2.0, 18.0, 39.1), "39.102 to 39.118 mm");
        assert_eq!(words(2.0, 18.0, 39.0), "39.002 to 39.018 mm");
        let inches = limits(2.0, 18.0).size_words_in(at(39.0), LengthUnit::Inch);
        assert_eq!(inches, "1.53552 to 1.53614 in");
    }

    #[test]
    fn the_ends_belong_to_the_limits() {
        let at = Diameter::from_mm(40.0).unwrap();
        let k6 = limits(2.0, 18.0);
        let words = |mm| k6.verdict(at, mm).words();
        assert_eq!([40.002, 40.018].map(words), ["within", "within"]);
        assert_eq!(words(40.021), "above by 3 µm");
        assert_eq!(words(39.9995), "below by 2.5 µm");
    }

    #[test]
    fn limits_are_told_with_their_signs() {
        assert_eq!(limits(-12.0, 0.0).words(), "−12 to 0 µm");
        assert_eq!(limits(-5.5, 5.5).words(), "−5.5 to +5.5 µm");
        let turned_round = [1.0, 0.0].map(|um| Deviation::from_um(um).unwrap());
        assert_eq!(SizeLimits::new(turned_round[0], turned_round[1]), None);
    }
}
