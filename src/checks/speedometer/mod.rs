//! The speedometer: what turns it, what it shows, which rule that keeps, and what puts it right.

mod correction;
mod instrument;
mod rule;
mod shown_speed;
mod signal;

pub use correction::{CorrectionAim, DrivenGearFound};
pub use instrument::{InstrumentDrive, MeterConstant, PulsesPerTurn, ReadingRatio};
pub use rule::{RuleOffset, RulePercent, SpeedVerdict, SpeedometerRule};
pub use shown_speed::{BaselineReading, NoReading, ShownSpeed};
pub use signal::{SignalSource, SignalledSet, SpeedSignal};
