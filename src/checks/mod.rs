//! The pure checks of a swap: may it be driven so, and what must change along with the gears.
//!
//! Nothing here knows a window, a file, a clock or chance; the same input gives the same answer. What is
//! checked is advice: a rule is named with its edition, and what the law of a place says decides.

mod counting;
mod findings;
mod over_revving;
mod speedometer;
mod torque_rating;
mod two_axles;
mod tyre_rating;

pub use counting::{
    Counted, EngineSpeedError, Match, Measured, MeasuredRatio, Nearest, RoadSpeedError, Turns,
    TurnsError,
};
pub use findings::{CheckFinding, CheckFindingKind, Checked, LoadedAxle, RuledSpeedometer};
pub use over_revving::{DownBy, Downshift, MissedShift, downshifts, worst_missed_shift};
pub use speedometer::{
    BaselineReading, CorrectionAim, DrivenGearFound, InstrumentDrive, MeterConstant, NoReading,
    PulsesPerTurn, ReadingRatio, RuleOffset, RulePercent, ShownSpeed, SignalSource, SignalledSet,
    SpeedSignal, SpeedVerdict, SpeedometerRule,
};
pub use torque_rating::{
    Borne, HeldByTyres, LowestGear, Part, RatedTorque, RatingFactor, ShaftSpeed, ShaftTorque,
    SharingShafts, input_torque, propeller_shaft_speed,
};
pub use two_axles::{
    AfterSplit, AngleRatio, Axle, Coupling, MOST_MISMATCH_PERCENT, SecondAxle, TakenOff, TwoAxles,
};
pub use tyre_rating::{KnownTopSpeed, LoadRating, SpeedRating, TopSpeedSource, TyresOnAxle};
