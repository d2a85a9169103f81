//! The engine as it was typed.

use crate::motion::{
    Displacement, Engine, Fuel, Inertia, MeasuredAt, Strokes, TorqueCurve, WillansLine,
};

/// The engine, as far as it is known.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct EngineData {
    /// Torque at full load; a curve that a brochure's figures made is marked as such.
    pub curve: Option<TorqueCurve>,
    /// Where the curve was measured.
    pub measured_at: MeasuredAt,
    /// What turns with the crank.
    pub inertia: Option<Inertia>,
    /// The volume that the pistons sweep.
    pub displacement: Option<Displacement>,
    /// Two or four strokes.
    pub strokes: Strokes,
    /// What it burns.
    pub fuel: Fuel,
    /// Its Willans line, where it is known better than from the fuel.
    pub willans: Option<WillansLine>,
}

impl EngineData {
    /// The engine to compute with; none without a torque curve.
    pub fn engine(&self) -> Option<Engine> {
        Some(Engine {
            curve: self.curve.clone()?,
            measured_at: self.measured_at,
            inertia: self.inertia.unwrap_or(Inertia::NONE),
            displacement: self.displacement,
            strokes: self.strokes,
            fuel: self.fuel,
            willans: self.willans,
        })
    }

    /// Whether its curve was built from the figures of a brochure.
    pub fn is_built(&self) -> bool {
        let brochure = self.curve.as_ref().and_then(TorqueCurve::brochure);
        brochure.is_some()
    }
}
