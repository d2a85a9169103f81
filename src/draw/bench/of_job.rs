//! Which drawing belongs to a job: what is measured, and where the shim sits.

use super::BenchDrawing;
use crate::workshop::{Arrangement, JobData, Seat, SeatSide, ShimMeasuring, TorqueMeasuring};

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
            JobData::PinionDepth(_) => Self::PinionDepth,
            JobData::SideBearings(_) => Self::SideBearings,
            JobData::TurningTorque(turning) => match turning.measuring {
                TorqueMeasuring::Cord => Self::CordAndScale,
                TorqueMeasuring::BeamWrench => Self::BeamWrench,
            },
            JobData::Limits(_) => Self::LimitsGauge,
            JobData::Heat(heat) => match heat.arrangement {
                Arrangement::FaceToFace => Self::HeatFaceToFace,
                Arrangement::BackToBack => Self::HeatBackToBack,
            },
            JobData::Fit(fit) => match fit.side {
                SeatSide::Shaft => Self::FitOnShaft,
                SeatSide::Bore => Self::FitInBore,
            },
            JobData::Journal(_) => Self::TurnedDown,
        }
    }
}
