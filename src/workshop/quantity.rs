//! Lengths, settings and torques of the bench that can exist.

use crate::gearing::{OutOfRange, quantity};
use crate::units::{LengthUnit, NMM_PER_NM};

quantity! {
    /// The thickness of a shim, or of several in one place: 0 to 50 mm.
    ShimThickness, from_mm, mm, "a shim", "between 0 and 50 mm",
    |mm| (0.0..=50.0).contains(&mm)
}

quantity! {
    /// What a dial, a gauge or a feeler reads: −5 to 50 mm.
    Reading, from_mm, mm, "a reading", "between -5 and 50 mm",
    |mm| (-5.0..=50.0).contains(&mm)
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
        let [low, high] = [self.low.mm(), self.high.mm()];
        let text = |mm: f64| unit.figure(mm.abs());
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
