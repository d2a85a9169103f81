//! Which drawing belongs to a job: what is measured, and where the shim sits.

use super::BenchDrawing;
use crate::workshop::{JobData, Seat, ShimMeasuring};

impl BenchDrawing {
    /// The drawing of a job.
    pub fn of(data: &JobData) -> Self {
        match data {
            JobData::Shim(shim) => match (shim.measuring, shim.seat) {
                (ShimMeasuring::TrialShim, Seat::Behind) => Self::BehindRace,
                (ShimMeasuring::TrialShim, Seat::Under) => Self::UnderCover,
                (ShimMeasuring::FeelerGap, _) => Self::FeelerGap,
                (ShimMeasuring::Depths, _) => Self::DepthGauge,
            },
        }
    }
}
