//! Lengths, settings and torques of the bench that can exist.

use crate::gearing::{OutOfRange, quantity};

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

/// Newton millimetres in a newton metre.
pub const NMM_PER_NM: f64 = 1000.0;

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
    pub fn words(self) -> String {
        let [low, high] = [self.low.mm(), self.high.mm()];
        let text = |mm: f64| crate::units::plain_number(crate::units::round_to(mm.abs(), 0.001));
        if low >= 0.0 {
            format!("clearance {} to {} mm", text(low), text(high))
        } else if high <= 0.0 {
            format!("preload {} to {} mm", text(high), text(low))
        } else {
            format!("preload {} to clearance {} mm", text(low), text(high))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_says_the_word_of_its_sign() {
        let words = |low, high| {
            let [low, high] = [low, high].map(|mm| Setting::from_mm(mm).unwrap());
            SettingBand::new(low, high).unwrap().words()
        };
        assert_eq!(words(-0.2, -0.15), "preload 0.15 to 0.2 mm");
        assert_eq!(words(0.05, 0.1), "clearance 0.05 to 0.1 mm");
        assert_eq!(words(-0.02, 0.03), "preload 0.02 to clearance 0.03 mm");
        assert_eq!(words(0.0, 0.0), "clearance 0 to 0 mm");
    }
}
