//! What tyres, box and shafts must bear, and what they are rated for, as it was typed.

use crate::checks::{RatedTorque, RatingFactor, ShaftSpeed, SharingShafts, TyresOnAxle};
use crate::gearing::RoadSpeed;
use crate::motion::Mass;

/// What is asked of tyres and shafts, and their limits.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct LimitsData {
    /// The top speed of the registration paper.
    pub top_speed: Option<RoadSpeed>,
    /// The permitted load of the front axle.
    pub front_axle: Option<Mass>,
    /// The permitted load of the rear axle.
    pub rear_axle: Option<Mass>,
    /// The tyres that carry the rear axle.
    pub rear_tyres: TyresOnAxle,
    /// What ratings of gearboxes are multiplied by; absent 1.
    pub torque_factor: Option<RatingFactor>,
    /// What each axle shaft is rated for.
    pub axle_shaft: Option<RatedTorque>,
    /// How many axle shafts share the torque; absent those of the driven axle.
    pub shafts: Option<SharingShafts>,
    /// The highest speed of the propeller shaft.
    pub propeller_shaft: Option<ShaftSpeed>,
}
