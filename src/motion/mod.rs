//! The pure computation of what an engine makes of a gear set: effort against road load.
//!
//! Nothing here knows a window, a file, a clock or chance; the same input gives the same figures. Inside
//! everything is SI, with speeds in m/s and forces in N; engine speeds alone are in rev/min. What was
//! typed keeps the unit that stands in its name. The way through: a [`Vehicle`] with its [`LoadCase`] is
//! set on the road ([`OnRoad`]), an [`Engine`] in front of a gear set ([`Powertrain`]), and every figure
//! is one of the latter on one of the former.

mod coast_down;
mod cruise;
mod cubic;
mod drive;
mod efficiency;
mod engine;
mod findings;
mod follow;
mod fuel;
mod gradient;
mod grip;
mod in_gear;
mod on_road;
mod powertrain;
mod quantity;
mod road_load;
mod run;
mod shift_points;
mod starting_values;
mod stretch;
mod top_speed;
mod vehicle;

pub use cruise::{Cruise, HeldSpeed};
pub use cubic::Cubic;
pub use drive::{DriveLimit, DrivePiece};
pub use efficiency::Efficiencies;
pub use engine::{
    Brochure, BrochureError, Engine, Fuel, MeasuredAt, Peak, PowerBand, Strokes, TorqueCurve,
    TorqueCurveError, TorquePoint, WillansLine, power_w, torque_of_power_nm,
};
pub use findings::{Asked, MotionFinding, MotionFindingKind};
pub use fuel::{CalibrationError, FuelDifference, FuelUse};
pub use gradient::{Start, StartLimit};
pub use on_road::{GRAVITY_M_S2, OnRoad};
pub use powertrain::{PoweredGear, Powertrain};
pub use quantity::{
    AddedMass, Adhesion, AirDensity, CentreOfGravityHeight, ConstantLoad, Displacement, DragArea,
    DragCoefficient, Efficiency, FrictionPressure, FrontShare, FrontalArea, FuelConsumption, Grade,
    Headwind, Inertia, LinearLoad, Mass, Power, QuadraticLoad, RollingCoefficient, ShiftPause,
    SlopeEfficiency, Torque, Wheelbase, YearlyDistance,
};
pub use road_load::RoadLoad;
pub use run::{
    Driving, LONGEST_RUN_S, Moment, Phase, ROLLOUT_M, Run, RunEnergy, RunGear, RunGoal, RunPiece,
};
pub use starting_values::{StartingValues, VehicleKind};
pub use stretch::Passage;
pub use top_speed::{GearedFor, TopGearing, TopSpeed, TopSpeedLimit};
pub use vehicle::{
    Drag, DrivenAxle, FormulaWithInertia, Grip, LoadCase, LoadTransfer, MassFactor, Resistance,
    RotatingMasses, Trailer, Vehicle,
};
