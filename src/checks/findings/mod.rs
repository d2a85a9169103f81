//! Findings of the checks: what a swap should not be driven with as it is typed.
//!
//! As everywhere a finding is shown, never an error. What is not known makes none, nor does what most vehicles
//! have: that a wrong downshift would over-rev the engine, and that top gear at the redline outruns the tyre.

mod kind;

pub use kind::CheckFindingKind;

use super::speedometer::{ShownSpeed, SpeedVerdict, SpeedometerRule};
use super::torque_rating::{Borne, LowestGear};
use super::two_axles::{Axle, Coupling, MOST_MISMATCH_PERCENT, TwoAxles};
use super::tyre_rating::{KnownTopSpeed, LoadRating, SpeedRating, TopSpeedSource, TyresOnAxle};
use crate::gearing::{RoadSpeed, ServiceDescription, SpeedSymbol};
use crate::motion::Mass;
use crate::units::{SpeedUnit, TorqueUnit};
use std::fmt;

/// Something that a swap should not be driven with; as text one sentence.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckFinding {
    /// The label of the gear it is about; none where it is about the whole set.
    pub gear: Option<String>,
    /// What it is.
    pub kind: CheckFindingKind,
}

impl fmt::Display for CheckFinding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.kind.fmt(f)
    }
}

/// An axle with its load and its tyres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadedAxle {
    /// Which one it is.
    pub axle: Axle,
    /// What it carries, as it stands in the papers.
    pub load: Mass,
    /// How many tyres carry it.
    pub tyres: TyresOnAxle,
    /// What stands behind their size.
    pub service: Option<ServiceDescription>,
}

/// A speedometer with the rule that it is to keep.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RuledSpeedometer {
    /// The rule.
    pub rule: SpeedometerRule,
    /// What is shown.
    pub shown: ShownSpeed,
    /// The top speed, where it is known.
    pub top_speed: Option<RoadSpeed>,
}

/// A set as far as its checks are known; what is not known is left out.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Checked {
    /// The speed symbol of the tyre of the driven axle.
    pub speed_symbol: Option<SpeedSymbol>,
    /// The top speed that tyres and propeller shaft must stand.
    pub top: Option<KnownTopSpeed>,
    /// The axles with a load.
    pub axles: Vec<LoadedAxle>,
    /// The peak torque against the rating of the gearbox.
    pub input_torque: Option<Borne>,
    /// The lowest gear, and the torque at an axle shaft in it against its limit.
    pub axle_shaft: Option<(LowestGear, Borne)>,
    /// The propeller shaft at the top speed against its limit.
    pub propeller_shaft: Option<Borne>,
    /// Both axles of a four-wheel drive, and what couples them.
    pub two_axles: Option<(TwoAxles, Option<Coupling>)>,
    /// The speedometer.
    pub speedometer: Option<RuledSpeedometer>,
    /// Whether somebody has said that the set gives it no signal.
    pub is_without_signal: bool,
    /// The unit that speeds are told in.
    pub speed_unit: SpeedUnit,
    /// The unit that torques are told in.
    pub torque_unit: TorqueUnit,
}

impl Checked {
    /// What is not as it should be, from the tyres to the speedometer.
    pub fn findings(&self) -> Vec<CheckFinding> {
        let axles = self.axles.iter().filter_map(overloaded);
        let of_set = [
            self.input_torque_finding(),
            self.axle_shaft_finding(),
            self.propeller_shaft_finding(),
            self.axles_finding(),
            self.is_without_signal
                .then(|| of_set(CheckFindingKind::NoSpeedSignal)),
            self.speedometer_finding(),
        ];
        let tyre = self.tyre_finding().into_iter();
        tyre.chain(axles)
            .chain(of_set.into_iter().flatten())
            .collect()
    }

    /// The tyre is slower than the vehicle. Where only the redline tells how fast that is, nothing is said.
    fn tyre_finding(&self) -> Option<CheckFinding> {
        let top = self
            .top
            .filter(|top| top.source != TopSpeedSource::Redline)?;
        let rating = SpeedRating::of(self.speed_symbol, top);
        matches!(rating, SpeedRating::TooSlow { .. }).then(|| {
            of_set(CheckFindingKind::TyreTooSlow {
                rating,
                top,
                unit: self.speed_unit,
            })
        })
    }

    fn input_torque_finding(&self) -> Option<CheckFinding> {
        let torque = self.input_torque.filter(Borne::is_too_much)?;
        let unit = self.torque_unit;
        Some(of_set(CheckFindingKind::TorqueAboveRating { torque, unit }))
    }

    fn axle_shaft_finding(&self) -> Option<CheckFinding> {
        let (gear, torque) = self.axle_shaft.as_ref()?;
        torque.is_too_much().then(|| CheckFinding {
            gear: Some(gear.label.clone()),
            kind: CheckFindingKind::AxleShaftAboveLimit {
                gear: gear.clone(),
                torque: *torque,
                unit: self.torque_unit,
            },
        })
    }

    fn propeller_shaft_finding(&self) -> Option<CheckFinding> {
        let speed = self.propeller_shaft.filter(Borne::is_too_much)?;
        Some(of_set(CheckFindingKind::PropellerShaftTooFast {
            speed,
            top: self.top?,
            unit: self.speed_unit,
        }))
    }

    fn axles_finding(&self) -> Option<CheckFinding> {
        let (axles, coupling) = self.two_axles?;
        let (_, percent) = axles.mismatch();
        (percent > MOST_MISMATCH_PERCENT)
            .then(|| of_set(CheckFindingKind::AxlesDiffer { axles, coupling }))
    }

    fn speedometer_finding(&self) -> Option<CheckFinding> {
        let RuledSpeedometer {
            rule,
            shown,
            top_speed,
        } = self.speedometer?;
        let verdict = rule.verdict(&shown, top_speed);
        let breaks = |unit| CheckFindingKind::SpeedometerBreaksRule {
            rule,
            verdict,
            unit,
        };
        match verdict {
            SpeedVerdict::Keeps { .. } => None,
            SpeedVerdict::ReadsLow { .. } | SpeedVerdict::ReadsHigh { .. } => {
                Some(of_set(breaks(self.speed_unit)))
            }
        }
    }
}

/// The tyres of an axle carry less than its load.
fn overloaded(axle: &LoadedAxle) -> Option<CheckFinding> {
    let rating = LoadRating::of(axle.service, axle.tyres, axle.load);
    matches!(rating, LoadRating::TooLittle { .. }).then(|| {
        of_set(CheckFindingKind::TyreOverloaded {
            axle: axle.axle,
            rating,
            tyres: axle.tyres,
            load: axle.load,
        })
    })
}

/// Something about the set as a whole.
fn of_set(kind: CheckFindingKind) -> CheckFinding {
    CheckFinding { gear: None, kind }
}
