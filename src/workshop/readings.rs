//! Several readings of one length: their mean, how far they scatter, and how well the mean is known.

use super::quantity::Reading;
use crate::gearing::quantity;

quantity! {
    /// What a dial or a gauge tells apart: 0 to 1 mm.
    Resolution, from_mm, mm, "a resolution", "between 0 and 1 mm",
    |mm| (0.0..=1.0).contains(&mm)
}

impl Resolution {
    /// Nothing is said of it: only the scatter of the readings counts.
    pub const NONE: Self = Self(0.0);
}

/// One reading or more.
#[derive(Debug, Clone, PartialEq)]
pub struct Readings(Vec<Reading>);

impl Readings {
    /// As many as anybody takes.
    pub const MOST: usize = 100;

    /// These readings; none where there is not one, or there are more than [`Self::MOST`].
    pub fn new(readings: Vec<Reading>) -> Option<Self> {
        (1..=Self::MOST)
            .contains(&readings.len())
            .then_some(Self(readings))
    }

    /// All of them, in the order in which they were read.
    pub fn as_slice(&self) -> &[Reading] {
        &self.0
    }

    /// Their mean in mm.
    pub fn mean_mm(&self) -> f64 {
        let sum: f64 = self.0.iter().map(|reading| reading.mm()).sum();
        sum / self.count()
    }

    /// Their standard deviation in mm: √(Σ(x − mean)² ÷ (n − 1)); 0 of a single one.
    ///
    /// # Source
    /// Definition.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::{Reading, Readings};
    /// let readings = [0.30, 0.31, 0.29, 0.30, 0.32].map(|mm| Reading::from_mm(mm).unwrap());
    /// let readings = Readings::new(readings.to_vec()).unwrap();
    /// assert!((readings.spread_mm() - 0.011402).abs() < 1e-6);
    /// ```
    pub fn spread_mm(&self) -> f64 {
        if self.0.len() < 2 {
            return 0.0;
        }
        let mean = self.mean_mm();
        let squares = self.0.iter().map(|reading| (reading.mm() - mean).powi(2));
        (squares.sum::<f64>() / (self.count() - 1.0)).sqrt()
    }

    /// From the least of them to the most, in mm: what a backlash varies by round a ring gear.
    pub fn variation_mm(&self) -> f64 {
        let all = self.0.iter().map(|reading| reading.mm());
        let most = all.clone().fold(f64::NEG_INFINITY, f64::max);
        most - all.fold(f64::INFINITY, f64::min)
    }

    /// How well the mean is known, in mm: √(spread² ÷ n + resolution² ÷ 12).
    ///
    /// # Source
    /// Guide to the expression of uncertainty in measurement, 4.2.3 and 4.3.7 (from memory).
    pub fn standard_error_mm(&self, resolution: Resolution) -> f64 {
        let of_mean = self.spread_mm() / self.count().sqrt();
        of_mean.hypot(resolution.mm() / 12.0_f64.sqrt())
    }

    fn count(&self) -> f64 {
        // Readings are taken by hand.
        f64::from(u32::try_from(self.0.len()).unwrap_or(u32::MAX))
    }
}
