//! A torque curve as it was read: points that may be taken over, and what is said about them.

use crate::gearing::EngineSpeed;
use crate::motion::{Torque, TorqueCurve, TorqueCurveError, TorquePoint};
use crate::units::OutputUnit;

/// A point of a torque curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PastedPoint {
    /// Where the engine turns.
    pub engine_speed: EngineSpeed,
    /// What it gives there: 0 to 20000 N·m.
    pub torque_nm: f64,
}

/// A torque curve that was found in a text.
#[derive(Debug, Clone, PartialEq)]
pub struct PastedCurve {
    /// 2 to 200 points at rising engine speeds, no two the same.
    pub points: Vec<PastedPoint>,
    /// The unit of the figure that the first point was made of: a power where torque is not given.
    pub taken: OutputUnit,
    /// Whether that unit is not written in the text, so that another may be meant.
    pub is_guessed: bool,
    /// Whether the text speaks of the wheels, where losses are taken already.
    pub is_at_wheels: bool,
    /// What was guessed and what was left out, a sentence each.
    pub remarks: Vec<String>,
}

impl PastedCurve {
    /// The curve through its points.
    ///
    /// # Errors
    /// None for points that were read; points that made no curve would be told.
    pub fn curve(&self) -> Result<TorqueCurve, TorqueCurveError> {
        let points = self.points.iter().map(|point| {
            Ok(TorquePoint {
                speed: point.engine_speed,
                torque: Torque::from_nm(point.torque_nm)?,
            })
        });
        TorqueCurve::new(points.collect::<Result<_, TorqueCurveError>>()?)
    }
}
