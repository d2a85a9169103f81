//! The engine: its torque at full load, what turns in it, and what it burns.

mod band;
mod brochure;
mod curve;
mod power;
mod slopes;

pub use band::{Peak, PowerBand};
pub use brochure::{Brochure, BrochureError};
pub use curve::{TorqueCurve, TorqueCurveError, TorquePoint};
pub(super) use power::{RAD_S_PER_RPM, WATTS_PER_KW};
pub use power::{power_w, torque_of_power_nm};

use super::quantity::{Displacement, FrictionPressure, Inertia, SlopeEfficiency};

/// Where a torque curve was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum MeasuredAt {
    /// At the crank: the losses of gearbox and axle are still to come.
    #[default]
    Crank,
    /// At the wheels, on a rolling road, and divided by the overall ratio: the losses are in it.
    Wheels,
}

/// Revolutions from one power stroke of a cylinder to its next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Strokes {
    /// One revolution.
    Two,
    /// Two revolutions.
    #[default]
    Four,
}

/// What an engine burns.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Fuel {
    /// Petrol.
    #[default]
    Petrol,
    /// Diesel.
    Diesel,
}

impl Fuel {
    /// The energy in a litre, in MJ: 32 for petrol, 36 for diesel.
    ///
    /// # Source
    /// Lower heating values; Commission Implementing Decision (EU) 2020/728 fits them.
    pub fn energy_mj_per_l(self) -> f64 {
        match self {
            Self::Petrol => 32.0,
            Self::Diesel => 36.0,
        }
    }
}

/// What an engine takes for itself and makes of its fuel: the Willans line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WillansLine {
    /// e: work over fuel, without what the engine takes for itself.
    pub slope_efficiency: SlopeEfficiency,
    /// `p_me0`: the mean effective pressure that it takes for itself.
    pub friction: FrictionPressure,
}

/// An engine with its gearing left out.
#[derive(Debug, Clone, PartialEq)]
pub struct Engine {
    /// Its torque at full load.
    pub curve: TorqueCurve,
    /// Where that was measured.
    pub measured_at: MeasuredAt,
    /// What turns with the crank: flywheel, clutch and input shaft too.
    pub inertia: Inertia,
    /// The volume that its pistons sweep, where fuel is to be estimated.
    pub displacement: Option<Displacement>,
    /// Two or four strokes.
    pub strokes: Strokes,
    /// What it burns.
    pub fuel: Fuel,
    /// Its Willans line, where it is known better than from the kind of fuel.
    pub willans: Option<WillansLine>,
}

impl Engine {
    /// An engine of which the curve at the crank is known, and no more.
    pub fn of_curve(curve: TorqueCurve) -> Self {
        Self {
            curve,
            measured_at: MeasuredAt::default(),
            inertia: Inertia::NONE,
            displacement: None,
            strokes: Strokes::default(),
            fuel: Fuel::default(),
            willans: None,
        }
    }
}
