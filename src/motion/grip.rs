//! The grip limit: the largest force that the driven tyres pass on to the road.

use super::vehicle::{DrivenAxle, Grip, LoadTransfer};

/// One limit, a sum of shares: of the weight on the road, and of the rolling resistance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct GripShares {
    /// Of N = m·g·cos α, the force that presses the vehicle to the road.
    pub(super) of_weight: f64,
    /// Of Rᵣ, its rolling resistance.
    pub(super) of_rolling: f64,
}

impl GripShares {
    /// The limits of a vehicle, of which the lowest holds, and none is below 0; there may be none.
    ///
    /// Acceleration moves q · (F − Rᵣ) from the front to the rear axle, q = height of the centre of
    /// gravity ÷ wheelbase: air acts at that height, and what spins the wheels up is neglected. With the
    /// front share s that gives, at adhesion μ,
    ///
    /// * front: μ(s·N + q·Rᵣ) ÷ (1 + μq)
    /// * rear: μ((1 − s)·N − q·Rᵣ) ÷ (1 − μq), none from μq = 1 on
    /// * all: μN, each axle taking what it can
    /// * rear and all: s·N ÷ q + Rᵣ, where the front wheels lift
    ///
    /// # Source
    /// Wong, Theory of Ground Vehicles; Hibbeler, Dynamics, 17.3 (both from memory).
    pub(super) fn of(grip: &Grip) -> Vec<Self> {
        let (s, mu) = (grip.front_share.share(), grip.adhesion.value());
        let q = grip.transfer.map_or(0.0, LoadTransfer::slope);
        let slipping = match grip.driven {
            DrivenAxle::Front => Some(Self {
                of_weight: mu * s / (1.0 + mu * q),
                of_rolling: mu * q / (1.0 + mu * q),
            }),
            DrivenAxle::Rear => (mu * q < 1.0).then(|| Self {
                of_weight: mu * (1.0 - s) / (1.0 - mu * q),
                of_rolling: -mu * q / (1.0 - mu * q),
            }),
            DrivenAxle::All => Some(Self {
                of_weight: mu,
                of_rolling: 0.0,
            }),
        };
        let lifting = match grip.driven {
            DrivenAxle::Front => None,
            DrivenAxle::Rear | DrivenAxle::All => Some(Self {
                of_weight: s / q,
                of_rolling: 1.0,
            }),
        };
        // Without height nothing lifts.
        let lifting = lifting.filter(|limit| q > 0.0 && limit.of_weight.is_finite());
        slipping.into_iter().chain(lifting).collect()
    }
}
