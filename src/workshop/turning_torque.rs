//! The torque that keeps a shaft turning, which US manuals call preload: from a cord and a scale, or a beam
//! wrench, through gears and without seals.

use super::quantity::{PullForce, Radius, TurningTorque};
use crate::gearing::Ratio;

/// How a torque was read, while the shaft turned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TorqueReading {
    /// A cord round a drum, pulled by a scale: pull × radius, that of the drum with half the cord.
    Pull {
        /// What the scale reads.
        pull: PullForce,
        /// The drum's radius and half the cord.
        radius: Radius,
    },
    /// A beam wrench.
    Wrench {
        /// What it reads.
        reading: TurningTorque,
        /// The wrench's length and that of an adapter in line with it, where there is one.
        adapter: Option<[Radius; 2]>,
    },
}

impl TorqueReading {
    /// The torque where the shaft was turned, in N·mm: pull × radius, or reading × (L + E) ÷ L.
    ///
    /// # Source
    /// Service procedures: 9 inch × 7 lb = 63 lb·in; of the adapter from memory.
    pub fn nmm(&self) -> f64 {
        match self {
            Self::Pull { pull, radius } => pull.n() * radius.mm(),
            Self::Wrench { reading, adapter } => {
                let lever = adapter.map_or(1.0, |[wrench, adapter]| {
                    (wrench.mm() + adapter.mm()) / wrench.mm()
                });
                reading.nmm() * lever
            }
        }
    }
}

/// What was measured, and what of it is not the bearings'.
#[derive(Debug, Clone, PartialEq)]
pub struct TurningMeasurement {
    /// The reading.
    pub reading: TorqueReading,
    /// What the same place took before the gears were coupled.
    pub before: Option<TurningTorque>,
    /// Turns of the place that was turned for one of the bearings' shaft.
    pub ratio: Option<Ratio>,
    /// What the seals take at the bearings' shaft.
    pub seals: Option<TurningTorque>,
}

impl TurningMeasurement {
    /// The torque of the bearings in N·mm, below 0 where seals and what was there before take more:
    /// (reading − before) × ratio − seals.
    ///
    /// # Source
    /// Service procedures for axles (common practice, no source).
    pub fn torque_nmm(&self) -> f64 {
        let nmm = |torque: Option<TurningTorque>| torque.map_or(0.0, TurningTorque::nmm);
        let ratio = self.ratio.as_ref().map_or(1.0, Ratio::value);
        (self.reading.nmm() - nmm(self.before)) * ratio - nmm(self.seals)
    }
}

/// What used bearings turn at, as a share of what new ones do.
const USED: [f64; 2] = [0.4, 0.6];

/// The torque that the maker wants, from least to most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TorqueBand {
    low: TurningTorque,
    high: TurningTorque,
}

/// What a torque is beside the maker's band.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TorqueVerdict {
    /// In it.
    Within,
    /// Below it.
    TooLoose,
    /// Above it.
    TooTight,
}

impl TorqueBand {
    /// The band from `low` to `high`; none where they are the other way round.
    pub fn new(low: TurningTorque, high: TurningTorque) -> Option<Self> {
        (low <= high).then_some(Self { low, high })
    }

    /// Its least and its most.
    pub fn ends(self) -> [TurningTorque; 2] {
        [self.low, self.high]
    }

    /// Its middle.
    pub fn middle(self) -> TurningTorque {
        self.low.midpoint(self.high)
    }

    /// What used bearings turn at where the band is for new ones: from 0.4 of its least to 0.6 of its most.
    ///
    /// # Source
    /// Service procedures: used bearings turn at 0.4–0.6 of the figure for new ones (read).
    #[must_use]
    pub fn of_used_bearings(self) -> Self {
        let [least, most] = USED;
        Self {
            low: self.low.share(least),
            high: self.high.share(most),
        }
    }

    /// What a torque in N·mm is beside it; the ends belong to it.
    pub fn verdict(self, torque_nmm: f64) -> TorqueVerdict {
        // A thousandth of a newton millimetre turns nothing.
        if torque_nmm < self.low.nmm() - 1e-3 {
            TorqueVerdict::TooLoose
        } else if torque_nmm > self.high.nmm() + 1e-3 {
            TorqueVerdict::TooTight
        } else {
            TorqueVerdict::Within
        }
    }
}
