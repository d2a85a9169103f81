//! The pure computation: what a gear set does at the wheels.
//!
//! Nothing here knows a window, a file, a clock or chance; the same input gives the same figures.
//! Engine speeds are in rev/min, road speeds in km/h, lengths in mm: the units stand in the names.

mod drivetrain;
mod final_drive;
mod findings;
mod gear_set;
mod list;
mod number;
mod other_positions;
mod quantity;
mod ratio;
mod results;
mod shifting;
mod speed;
mod stage_text;
mod text;
mod tyre;

pub use drivetrain::{DrivenGear, Drivetrain, ratio_behind};
pub use final_drive::{
    FinalDrive, FinalDriveError, Sprocket, Sprockets, parse_chain, parse_final_drive,
    sprocket_teeth,
};
pub use findings::{Finding, FindingKind, LOWEST_REDLINE_RPM, engine_findings, mark_findings};
pub use gear_set::{
    ActsOn, Gear, GearId, GearRole, GearSet, GearSetError, GearSetSpec, Position, REVERSE_LABEL,
    Reverse, Stage,
};
pub use list::{engine_speed_items, list_items};
pub(crate) use number::quoted;
pub use number::{NumberError, parse_decimal, parse_rpm};
pub use other_positions::{Combination, OtherPosition, other_combinations};
pub(crate) use quantity::quantity;
pub use quantity::{EngineSpeed, OutOfRange, OverallDiameter, RoadSpeed, RollingCircumference};
pub use ratio::{
    Factor, InChain, PairOrder, Ratio, RatioError, ToothPair, TypedRatio, parse_ratio, read_chain,
    read_in_chain, read_reduction,
};
pub use results::{EngineLimits, GearResult, SetResults};
pub use shifting::{Upshift, spread, steps, upshifts};
pub use speed::{
    overall_ratio_from_speed, rolling_circumference_mm_from_speed, rpm_from_speed, speed_from_rpm,
};
pub use stage_text::{parse_stages, stages_text};
pub use text::{Label, Name, TextError};
pub(crate) use text::{one_line, one_line_text};
pub use tyre::{
    Construction, LoadIndex, RevsPerKm, RevsPerMile, Rim, ServiceDescription, ServiceError,
    SizePart, SpeedSymbol, Tolerance, Tyre, TyreDiameter, TyreError, TyreNotice, TyreSize,
    TyreSizeError, parse_tyre,
};
