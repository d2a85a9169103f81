//! The speedometer in format 2: its signal, of the vehicle or of a set, and how it reads.

use super::super::shared::values::{PlainNumber, WrittenNumber, WrittenOutOfRange, file_number};
use crate::checks::{
    BaselineReading, InstrumentDrive, MeterConstant, PulsesPerTurn, ReadingRatio, RuleOffset,
    RulePercent, SignalSource, SpeedometerRule,
};
use crate::gearing::{RatioError, ToothPair};
use crate::project::technical::{SignalData, SpeedometerData};
use serde::{Deserialize, Serialize};

file_number!(Pulses, PulsesPerTurn, new, pulses);
file_number!(PerKm, MeterConstant, from_per_km, per_km);
file_number!(Percent, RulePercent, from_percent, percent);
file_number!(OffsetKmh, RuleOffset, from_kmh, kmh);
file_number!(ReadingNumber, ReadingRatio, new, ratio);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Speedometer", deny_unknown_fields)]
pub(crate) struct SpeedometerV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    signal: Option<SignalV2>,
    /// Counted ÷ true in the baseline.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    signal_ratio: Option<ReadingNumber>,
    /// Shown by the needle ÷ counted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    needle_ratio: Option<ReadingNumber>,
    /// Turns or pulses at which it reads right.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    meter_per_km: Option<PerKm>,
    /// Absent where it is UN R39.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    rule: Option<RuleEntry>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Signal", deny_unknown_fields)]
pub(crate) struct SignalV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    source: Option<SourceEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    drive: Option<DriveEntry>,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Rule", deny_unknown_fields)]
enum RuleEntry {
    R39,
    Cfr393,
    Typed {
        percent: Percent,
        offset_kmh: OffsetKmh,
    },
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Source")]
enum SourceEntry {
    GearboxOutput,
    BehindTransferBox,
    Differential,
    Wheel,
    WheelSensors,
    Nowhere,
}

/// What lies between source and instrument.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "DriveParts", into = "DriveParts")]
struct DriveEntry(InstrumentDrive);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Drive", deny_unknown_fields)]
enum DriveParts {
    /// Speedometer gears.
    Gears { drive_teeth: u16, driven_teeth: u16 },
    /// A sender's pulses for one turn.
    Pulses(Pulses),
}

impl TryFrom<DriveParts> for DriveEntry {
    type Error = RatioError;

    fn try_from(parts: DriveParts) -> Result<Self, RatioError> {
        Ok(Self(match parts {
            DriveParts::Gears {
                drive_teeth,
                driven_teeth,
            } => InstrumentDrive::Gears(ToothPair::new(driven_teeth, drive_teeth)?),
            DriveParts::Pulses(pulses) => InstrumentDrive::Pulses(pulses.0),
        }))
    }
}

impl From<DriveEntry> for DriveParts {
    fn from(drive: DriveEntry) -> Self {
        match drive.0 {
            InstrumentDrive::Gears(pair) => Self::Gears {
                drive_teeth: pair.driving(),
                driven_teeth: pair.driven(),
            },
            InstrumentDrive::Pulses(pulses) => Self::Pulses(Pulses(pulses)),
        }
    }
}

impl SignalV2 {
    /// The signal as it stands in a file; none where nothing is known.
    pub(super) fn of(signal: SignalData) -> Option<Self> {
        (signal != SignalData::default()).then(|| Self {
            source: signal.source.map(Into::into),
            drive: signal.drive.map(DriveEntry),
        })
    }
}

impl SpeedometerV2 {
    /// The data as they stand in a file; none where nothing is known.
    pub(super) fn of(data: &SpeedometerData) -> Option<Self> {
        let reading = data.reading;
        (*data != SpeedometerData::default()).then(|| Self {
            signal: SignalV2::of(data.signal),
            signal_ratio: reading.signal_ratio.map(ReadingNumber),
            needle_ratio: reading.needle_ratio.map(ReadingNumber),
            meter_per_km: reading.meter.map(PerKm),
            rule: (data.rule != SpeedometerRule::default()).then(|| data.rule.into()),
        })
    }
}

impl From<SignalV2> for SignalData {
    fn from(signal: SignalV2) -> Self {
        Self {
            source: signal.source.map(Into::into),
            drive: signal.drive.map(|drive| drive.0),
        }
    }
}

impl From<SpeedometerV2> for SpeedometerData {
    fn from(file: SpeedometerV2) -> Self {
        Self {
            signal: file.signal.map(Into::into).unwrap_or_default(),
            reading: BaselineReading {
                signal_ratio: file.signal_ratio.map(|n| n.0),
                needle_ratio: file.needle_ratio.map(|n| n.0),
                meter: file.meter_per_km.map(|n| n.0),
            },
            rule: file.rule.map(Into::into).unwrap_or_default(),
        }
    }
}

impl From<RuleEntry> for SpeedometerRule {
    fn from(rule: RuleEntry) -> Self {
        match rule {
            RuleEntry::R39 => Self::R39,
            RuleEntry::Cfr393 => Self::Cfr393,
            RuleEntry::Typed {
                percent,
                offset_kmh,
            } => Self::Typed {
                percent: percent.0,
                offset: offset_kmh.0,
            },
        }
    }
}

impl From<SpeedometerRule> for RuleEntry {
    fn from(rule: SpeedometerRule) -> Self {
        match rule {
            SpeedometerRule::R39 => Self::R39,
            SpeedometerRule::Cfr393 => Self::Cfr393,
            SpeedometerRule::Typed { percent, offset } => Self::Typed {
                percent: Percent(percent),
                offset_kmh: OffsetKmh(offset),
            },
        }
    }
}

impl From<SourceEntry> for SignalSource {
    fn from(word: SourceEntry) -> Self {
        match word {
            SourceEntry::GearboxOutput => Self::GearboxOutput,
            SourceEntry::BehindTransferBox => Self::BehindTransferBox,
            SourceEntry::Differential => Self::Differential,
            SourceEntry::Wheel => Self::Wheel,
            SourceEntry::WheelSensors => Self::WheelSensors,
            SourceEntry::Nowhere => Self::None,
        }
    }
}

impl From<SignalSource> for SourceEntry {
    fn from(source: SignalSource) -> Self {
        match source {
            SignalSource::GearboxOutput => Self::GearboxOutput,
            SignalSource::BehindTransferBox => Self::BehindTransferBox,
            SignalSource::Differential => Self::Differential,
            SignalSource::Wheel => Self::Wheel,
            SignalSource::WheelSensors => Self::WheelSensors,
            SignalSource::None => Self::Nowhere,
        }
    }
}
