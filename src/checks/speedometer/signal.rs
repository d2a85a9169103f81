//! The signal of a speedometer: where it is taken, and how often that turns on a kilometre.

use super::instrument::InstrumentDrive;
use crate::gearing::{FinalDrive, GearSet};

/// Millimetres in a kilometre.
const MM_PER_KM: f64 = 1e6;

/// Where the speedometer's signal is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum SignalSource {
    /// At the gearbox's output, before a transfer box or an overdrive that stands behind it.
    #[default]
    GearboxOutput,
    /// At the propeller shaft, behind all of these and before the final drive. Where an overdrive or a
    /// range is built into the box and the signal is taken behind it, this is meant, too.
    BehindTransferBox,
    /// At the ring gear, the carrier or an axle shaft.
    Differential,
    /// At a wheel.
    Wheel,
    /// From the sensors that the brakes have at each wheel.
    WheelSensors,
    /// Nowhere: this box gives none.
    None,
}

impl SignalSource {
    /// All of them, from the engine to the wheels.
    pub const ALL: [Self; 6] = [
        Self::GearboxOutput,
        Self::BehindTransferBox,
        Self::Differential,
        Self::Wheel,
        Self::WheelSensors,
        Self::None,
    ];

    /// The place, as it stands in a sentence behind "taken".
    pub fn words(self) -> &'static str {
        match self {
            Self::GearboxOutput => "at the gearbox output",
            Self::BehindTransferBox => "behind the transfer box",
            Self::Differential => "at the differential",
            Self::Wheel => "at a wheel",
            Self::WheelSensors => "from the wheel sensors",
            Self::None => "nowhere",
        }
    }

    /// How often the source turns while a wheel turns once; none where there is no source.
    ///
    /// Of several final drives the first counts, that of output shaft 1. Stages of more than one position,
    /// a transfer box or an overdrive, stand behind the gearbox and count in the position that they stand
    /// in; a fixed stage, as a primary drive, stands before it.
    pub fn turns_per_wheel_turn(self, set: &GearSet) -> Option<f64> {
        let final_drive = || set.final_drives.first().map(FinalDrive::value);
        match self {
            Self::GearboxOutput => Some(final_drive()? * stages_behind(set)),
            Self::BehindTransferBox => final_drive(),
            Self::Differential | Self::Wheel | Self::WheelSensors => Some(1.0),
            Self::None => None,
        }
    }
}

/// What the stages behind the gearbox multiply its output by.
fn stages_behind(set: &GearSet) -> f64 {
    let behind = set.stages.iter().filter(|stage| stage.positions.len() > 1);
    behind
        .filter_map(|stage| stage.positions.get(stage.present))
        .map(|position| position.ratio.value())
        .product()
}

/// Where a set takes the speedometer's signal, and through what.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SpeedSignal {
    /// Where it is taken.
    pub source: SignalSource,
    /// What lies between the source and the instrument, where it is known.
    pub drive: Option<InstrumentDrive>,
}

/// A set on its tyre, with the signal that it gives.
#[derive(Debug, Clone, Copy)]
pub struct SignalledSet<'a> {
    /// The set.
    pub set: &'a GearSet,
    /// Distance per wheel turn under load, in mm.
    pub rolling_circumference_mm: f64,
    /// Its signal.
    pub signal: SpeedSignal,
}

impl SignalledSet<'_> {
    /// How often the source of the signal turns on a kilometre; none where there is no source.
    pub fn source_turns_per_km(&self) -> Option<f64> {
        let per_wheel_turn = self.signal.source.turns_per_wheel_turn(self.set)?;
        Some(per_wheel_turn * MM_PER_KM / self.rolling_circumference_mm)
    }

    /// The turns or pulses that the instrument gets on a kilometre: source turns × its drive. None where
    /// there is no source or the drive is not known.
    pub fn count_per_km(&self) -> Option<f64> {
        Some(self.source_turns_per_km()? * self.signal.drive?.count_per_turn())
    }

    /// What drives its instrument: what is known of it, else what is known of the other set where both take
    /// the signal at one place.
    pub fn drive_beside(&self, other: &SignalledSet) -> Option<InstrumentDrive> {
        let is_same = self.signal.source == other.signal.source;
        let shared = || other.signal.drive.filter(|_| is_same);
        self.signal.drive.or_else(shared)
    }
}
