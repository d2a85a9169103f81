//! What the checks find, and its words.

use crate::checks::speedometer::{NoReading, SpeedVerdict, SpeedometerRule};
use crate::checks::torque_rating::{Borne, LowestGear};
use crate::checks::two_axles::{Axle, Coupling, TwoAxles};
use crate::checks::tyre_rating::{KnownTopSpeed, LoadRating, SpeedRating, TyresOnAxle};
use crate::motion::Mass;
use crate::units::{SpeedUnit, TorqueUnit};
use std::fmt;

/// What is not as it should be, with the figures that show it.
#[derive(Debug, Clone, PartialEq)]
pub enum CheckFindingKind {
    /// The speed symbol of the tyre stands for less than the top speed.
    TyreTooSlow {
        /// What the symbol says.
        rating: SpeedRating,
        /// The top speed.
        top: KnownTopSpeed,
        /// The unit that speeds are told in.
        unit: SpeedUnit,
    },
    /// The tyres of an axle carry less than its load.
    TyreOverloaded {
        /// The axle.
        axle: Axle,
        /// What the load index says.
        rating: LoadRating,
        /// How many tyres there are.
        tyres: TyresOnAxle,
        /// The load of the axle.
        load: Mass,
    },
    /// The engine's peak torque is more than the gearbox is rated for.
    TorqueAboveRating {
        /// The torque and the rating.
        torque: Borne,
        /// The unit that they are told in.
        unit: TorqueUnit,
    },
    /// An axle shaft gets more than its limit in the lowest gear.
    AxleShaftAboveLimit {
        /// The gear.
        gear: LowestGear,
        /// The torque and the limit.
        torque: Borne,
        /// The unit that they are told in.
        unit: TorqueUnit,
    },
    /// The propeller shaft turns faster than it may at the top speed.
    PropellerShaftTooFast {
        /// Its speed and the limit.
        speed: Borne,
        /// The top speed.
        top: KnownTopSpeed,
        /// The unit that the top speed is told in.
        unit: SpeedUnit,
    },
    /// Front and rear want to roll clearly differently.
    AxlesDiffer {
        /// Both axles after the split.
        axles: TwoAxles,
        /// What couples them, where it is known.
        coupling: Option<Coupling>,
    },
    /// The set gives the speedometer no signal.
    NoSpeedSignal,
    /// The speedometer does not keep the rule.
    SpeedometerBreaksRule {
        /// The rule.
        rule: SpeedometerRule,
        /// How it is broken.
        verdict: SpeedVerdict,
        /// The unit that speeds are told in.
        unit: SpeedUnit,
    },
}

impl CheckFindingKind {
    /// The kind's name in machine-readable output.
    pub fn code(&self) -> &'static str {
        match self {
            Self::TyreTooSlow { .. } => "tyre_too_slow",
            Self::TyreOverloaded { .. } => "tyre_overloaded",
            Self::TorqueAboveRating { .. } => "torque_above_rating",
            Self::AxleShaftAboveLimit { .. } => "axle_shaft_above_limit",
            Self::PropellerShaftTooFast { .. } => "propeller_shaft_too_fast",
            Self::AxlesDiffer { .. } => "axles_differ",
            Self::NoSpeedSignal => "no_speed_signal",
            Self::SpeedometerBreaksRule { .. } => "speedometer_breaks_rule",
        }
    }
}

/// Who has the last word about a speedometer.
const DECIDES: &str = "and what the law of the place says decides";

impl fmt::Display for CheckFindingKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TyreTooSlow { rating, top, unit } => f.write_str(&rating.sentence(*top, *unit)),
            Self::TyreOverloaded {
                axle,
                rating,
                tyres,
                load,
            } => write!(
                f,
                "{} axle: {}",
                axle.word(),
                rating.sentence(*tyres, *load)
            ),
            Self::TorqueAboveRating { torque, unit } => f.write_str(&torque.sentence(*unit)),
            Self::AxleShaftAboveLimit { gear, torque, unit } => {
                write!(f, "in {gear} {}", torque.sentence(*unit))
            }
            Self::PropellerShaftTooFast { speed, top, unit } => write!(
                f,
                "at {} {}",
                top.words(*unit),
                // Its own figures are engine speeds, which have one unit.
                speed.sentence(TorqueUnit::default())
            ),
            Self::AxlesDiffer { axles, coupling } => match coupling {
                Some(coupling) => f.write_str(&coupling.sentence(axles)),
                None => f.write_str(&axles.sentence()),
            },
            Self::NoSpeedSignal => write!(f, "{}", NoReading::NoSignal),
            Self::SpeedometerBreaksRule {
                rule,
                verdict,
                unit,
            } => write!(
                f,
                "the speedometer {}; the view Speedometer says what puts it right, {DECIDES}",
                verdict.words(*rule, *unit)
            ),
        }
    }
}
