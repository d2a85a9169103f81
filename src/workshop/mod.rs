//! The sums of the bench: what shim a place takes, how hard a shaft turns, what heat makes of a setting, how a
//! ring fits, what is left of a shaft that is turned down; and the plan of what must change.
//!
//! Nothing here knows a window, a file, a clock or chance. Lengths are in mm; a setting is one signed number,
//! clearance above 0 and preload below. What comes out is a proposal: the maker's figures decide.

mod cautions;
mod fits;
mod heat;
mod job;
mod journal;
mod next_shim;
mod plan;
mod quantity;
mod readings;
mod shim;
mod shim_answer;
mod side_bearings;
mod sizes;
mod stock;
mod turning_torque;
mod typed;

pub use cautions::{FIT_CAUTIONS, JOURNAL_CAUTIONS, MAKER_DECIDES, PLAN_CAUTIONS, SHEET_CAUTION};
pub use fits::{
    BEARING_MOST_C, BORE_STEPS, BoreClass, Deviation, Diameter, DiameterStep, Heating,
    Interference, MeasuredDiameters, MeasuredVerdict, NoClass, OutsideTable, PlaceDiameters,
    PressedRing, Pressing, RingWidth, RoomTemperature, SHAFT_STEPS, SeatClass, SeatFinish,
    SeatSide, ShaftClass, SizeLimits, SizeVerdict, SlipClearance, Tightness, bearing_bore,
    bearing_outside, case_outgrows_um, taken_by_warmth_um,
};
pub use heat::{Arrangement, HeatChange, Material};
pub use job::{
    Answer, AnswerLine, BearingsAre, BenchItem, FieldKey, FitData, FitPart, HeatData, IsThere, Job,
    JobData, JobId, JobKind, JobListError, JobState, JournalData, KnownFit, LimitItem, LimitMargin,
    LimitsData, LineKind, MakersFigure, MaterialName, PinionDepthData, RateBy, Row, RowAnswer,
    SeatPlace, ShimData, ShimMeasuring, SideBearingsData, TorqueMeasuring, TorqueTry,
    TurningTorqueData, Workshop,
};
pub use journal::{
    AnsweredJournal, CaseDepth, CutLine, CuttingList, FilletRadius, MeantShaft, OnShaft, RunOut,
    SHOULDER_SHARES, SeatLength, ShaftTorque, Stop, TurnedShaft, fillet_factor,
};
pub use next_shim::{ShimTry, next_shim};
pub use plan::{
    Amount, CandidateId, CurrencySign, Part, PartEntry, PartId, PartSource, PartState, Plan,
    PlanError, PlanTotals, Price, ToDo,
};
pub use quantity::{
    Angle, Celsius, Depth, Expansion, LengthBand, PullForce, Radius, Reading, Setting, SettingBand,
    ShimThickness, TemperatureRise, Tolerance, TurningTorque,
};
pub use readings::{Readings, Resolution};
pub use shim::{Band, Filling, Measurement, NoMeasurement, Seat, ShimJob};
pub use shim_answer::{AnsweredShim, ShimChoice};
pub use side_bearings::{BacklashMove, SideShims};
pub use sizes::{Sizes, SizesError, parse_sizes};
pub use stock::{Stack, StackedShims, Stock};
pub use turning_torque::{TorqueBand, TorqueReading, TorqueVerdict, TurningMeasurement};
