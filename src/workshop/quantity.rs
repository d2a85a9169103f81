//! Lengths, settings and torques of the bench that can exist.

use crate::gearing::{OutOfRange, quantity};
use crate::units::{LengthUnit, NMM_PER_NM};

quantity! {
    /// The thickness of a shim, or of several in one place: 0 to 50 mm.
    ShimThickness, from_mm, mm, "a shim", "between 0 and 50 mm",
    |mm| (0.0..=50.0).contains(&mm)
}

quantity! {
    /// What a dial, a gauge, a feeler or a micrometer reads: −5 to 500 mm.
    Reading, from_mm, mm, "a reading", "between -5 and 500 mm",
    |mm| (-5.0..=500.0).contains(&mm)
}

quantity! {
    /// A depth in a case, or the height of what stands in it: 0 to 2000 mm.
    Depth, from_mm, mm, "a depth", "between 0 and 2000 mm",
    |mm| (0.0..=2000.0).contains(&mm)
}

quantity! {
    /// A wanted setting: clearance above 0, preload below; −5 to 5 mm.
    Setting, from_mm, mm, "a setting", "between -5 and 5 mm",
    |mm| (-5.0..=5.0).contains(&mm)
}

quantity! {
    /// How far something may be off, vary or grow: 0 to 5 mm.
    Tolerance, from_mm, mm, "a tolerance", "between 0 and 5 mm",
    |mm| (0.0..=5.0).contains(&mm)
}

quantity! {
    /// The torque that keeps a shaft turning: 0 to 1000000 N·mm.
    TurningTorque, from_nmm, nmm, "a turning torque", "between 0 and 1000 N·m",
    |nmm| (0.0..=1_000_000.0).contains(&nmm)
}

impl TurningTorque {
    /// The torque from newton metres, as it is typed.
    ///
    /// # Errors
    /// When it is not between 0 and 1000 N·m.
    pub fn from_nm(nm: f64) -> Result<Self, OutOfRange> {
        Self::from_nmm(nm * NMM_PER_NM)
    }

    /// The torque that lies in the middle of both.
    pub(super) fn midpoint(self, other: Self) -> Self {
        Self(f64::midpoint(self.0, other.0))
    }

    /// A share of it, from 0 to 1.
    pub(super) fn share(self, share: f64) -> Self {
        Self(self.0 * share.clamp(0.0, 1.0))
    }
}

quantity! {
    /// The pull of a scale on a cord: 0 to 10000 N.
    PullForce, from_n, n, "a pull", "between 0 and 10000 N",
    |n| (0.0..=10_000.0).contains(&n)
}

quantity! {
    /// A lever: from 1 to 5000 mm.
    Radius, from_mm, mm, "a radius", "between 1 and 5000 mm",
    |mm| (1.0..=5000.0).contains(&mm)
}

quantity! {
    /// How much warmer something is than on the bench: −100 to 300 K.
    TemperatureRise, from_k, k, "a temperature rise", "between -100 and 300 K",
    |k| (-100.0..=300.0).contains(&k)
}

quantity! {
    /// Linear expansion of a material: 0 to 100 millionths per K.
    Expansion, from_per_mk, per_mk, "a linear expansion", "between 0 and 100 millionths per K",
    |per_mk| (0.0..=100.0).contains(&per_mk)
}

quantity! {
    /// A temperature at the bench or on the road: −60 to 300 °C.
    Celsius, from_c, c, "a temperature", "between -60 and 300 °C",
    |c| (-60.0..=300.0).contains(&c)
}

impl Celsius {
    /// How much warmer than `bench` it is.
    ///
    /// # Errors
    /// When that is more than anything in a gearbox is.
    pub fn rise_from(self, bench: Self) -> Result<TemperatureRise, OutOfRange> {
        TemperatureRise::from_k(self.0 - bench.0)
    }
}

quantity! {
    /// An angle of a bevel gear: 1 to 89 degrees.
    Angle, from_deg, deg, "an angle", "between 1 and 89 degrees",
    |deg| (1.0..=89.0).contains(&deg)
}

/// A length that the maker wants, from least to most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LengthBand {
    least: Reading,
    most: Reading,
}

impl LengthBand {
    /// The band from `least` to `most`; none where they are the other way round. Both may be the same.
    pub fn new(least: Reading, most: Reading) -> Option<Self> {
        (least <= most).then_some(Self { least, most })
    }

    /// Its least and its most.
    pub fn ends(self) -> [Reading; 2] {
        [self.least, self.most]
    }

    /// Its middle in mm.
    pub fn middle_mm(self) -> f64 {
        f64::midpoint(self.least.mm(), self.most.mm())
    }

    /// `0.10 to 0.15`, without the unit.
    pub fn figures(self, unit: LengthUnit) -> String {
        let [least, most] = self.ends().map(|end| unit.figure(end.mm()));
        if least == most {
            least
        } else {
            format!("{least} to {most}")
        }
    }
}

/// A wanted setting as the maker's manual gives it: from the tighter to the looser end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SettingBand {
    low: Setting,
    high: Setting,
}

impl SettingBand {
    /// The band from `low` to `high`; none where they are the other way round. Both may be the same.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::{Setting, SettingBand};
    /// let [low, high] = [Setting::from_mm(-0.20)?, Setting::from_mm(-0.15)?];
    /// assert!(SettingBand::new(low, high).is_some());
    /// assert!(SettingBand::new(high, low).is_none());
    /// # Ok::<(), layshaft::gearing::OutOfRange>(())
    /// ```
    pub fn new(low: Setting, high: Setting) -> Option<Self> {
        (low <= high).then_some(Self { low, high })
    }

    /// As much preload as clearance, at most.
    pub fn either_way(tolerance: Tolerance) -> Self {
        Self {
            low: Setting(-tolerance.mm()),
            high: Setting(tolerance.mm()),
        }
    }

    /// The tighter end.
    pub fn low(self) -> Setting {
        self.low
    }

    /// The looser end.
    pub fn high(self) -> Setting {
        self.high
    }

    /// `preload 0.15 to 0.20 mm`, `clearance 0.05 to 0.10 mm`: the word, so that a wrong sign is seen.
    pub fn words(self, unit: LengthUnit) -> String {
        self.words_by(unit, LengthUnit::figure)
    }

    /// The same of a setting that was reckoned: with no more digits than that has.
    pub fn reckoned_words(self, unit: LengthUnit) -> String {
        self.words_by(unit, LengthUnit::reckoned)
    }

    fn words_by(self, unit: LengthUnit, figure: fn(LengthUnit, f64) -> String) -> String {
        let [low, high] = [self.low.mm(), self.high.mm()];
        let text = |mm: f64| figure(unit, mm.abs());
        let sign = unit.sign();
        if self.low == self.high {
            setting_words(low, &text(low), unit)
        } else if low >= 0.0 {
            format!("clearance {} to {} {sign}", text(low), text(high))
        } else if high <= 0.0 {
            format!("preload {} to {} {sign}", text(high), text(low))
        } else {
            format!("preload {} to clearance {} {sign}", text(low), text(high))
        }
    }
}

/// `clearance 0.05 mm`, `preload 0.15 mm`: a setting with the word of its sign, by its size in figures.
pub(super) fn setting_words(setting_mm: f64, size: &str, unit: LengthUnit) -> String {
    let is_something = size.contains(|c: char| matches!(c, '1'..='9'));
    let word = if setting_mm < 0.0 && is_something {
        "preload"
    } else {
        "clearance"
    };
    format!("{word} {size} {}", unit.sign())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_says_the_word_of_its_sign() {
        let words = |low, high| {
            let [low, high] = [low, high].map(|mm| Setting::from_mm(mm).unwrap());
            SettingBand::new(low, high)
                .unwrap()
                .words(LengthUnit::Millimetre)
        };
        assert_eq!(words(-0.2, -0.15), "preload 0.15 to 0.20 mm");
        assert_eq!(words(0.05, 0.1), "clearance 0.05 to 0.10 mm");
        assert_eq!(words(-0.02, 0.03), "preload 0.02 to clearance 0.03 mm");
        assert_eq!(words(0.0, 0.0), "clearance 0.00 mm");
    }
}
