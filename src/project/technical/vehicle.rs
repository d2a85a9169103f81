//! The vehicle as it was typed.

use crate::motion::{
    Adhesion, AirDensity, CentreOfGravityHeight, ConstantLoad, DragArea, DragCoefficient,
    DrivenAxle, FrontShare, FrontalArea, Inertia, LinearLoad, Mass, MassFactor, QuadraticLoad,
    RollingCoefficient, VehicleKind, Wheelbase,
};

/// Road load as a coast-down measured it: A + B·v + C·v².
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoastDown {
    /// A.
    pub constant: ConstantLoad,
    /// B.
    pub linear: LinearLoad,
    /// C.
    pub quadratic: QuadraticLoad,
}

/// The vehicle without its engine, as far as it is known.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct VehicleData {
    /// Its kind, whose starting values stand in for what is absent.
    pub kind: Option<VehicleKind>,
    /// Its mass as it is driven empty, with the driver.
    pub mass: Option<Mass>,
    /// Its measured road load, which is used instead of drag and rolling.
    pub coast_down: Option<CoastDown>,
    /// What its tyres take.
    pub rolling: Option<RollingCoefficient>,
    /// Its drag area, which is used instead of coefficient and frontal area.
    pub drag_area: Option<DragArea>,
    /// Its drag coefficient.
    pub drag_coefficient: Option<DragCoefficient>,
    /// Its frontal area.
    pub frontal_area: Option<FrontalArea>,
    /// The air; absent that of 20 °C at sea level.
    pub air_density: Option<AirDensity>,
    /// The axle that is driven.
    pub driven: Option<DrivenAxle>,
    /// How well tyres and road hold.
    pub adhesion: Option<Adhesion>,
    /// The distance between the axles.
    pub wheelbase: Option<Wheelbase>,
    /// The height of the centre of gravity.
    pub height: Option<CentreOfGravityHeight>,
    /// The share of the weight on the front axle.
    pub front_share: Option<FrontShare>,
    /// Whether the formula stands in for inertias.
    pub mass_factor: Option<MassFactor>,
    /// The inertia of all wheels together.
    pub wheel_inertia: Option<Inertia>,
}
