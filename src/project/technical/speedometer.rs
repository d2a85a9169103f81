//! The speedometer as it was typed: where its signal is taken, through what, and how it reads.

use crate::checks::{BaselineReading, InstrumentDrive, SignalSource, SpeedSignal, SpeedometerRule};

/// What is known of the speedometer and of the signal that every set gives that has none of its own.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SpeedometerData {
    /// Where its signal is taken, and through what.
    pub signal: SignalData,
    /// How it reads in the baseline.
    pub reading: BaselineReading,
    /// The rule that it is judged by.
    pub rule: SpeedometerRule,
}

/// A signal as far as it is known.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SignalData {
    /// Where it is taken; absent at the gearbox output, for the vehicle, and where the vehicle has it, for a
    /// set.
    pub source: Option<SignalSource>,
    /// What lies between there and the instrument.
    pub drive: Option<InstrumentDrive>,
}

impl SignalData {
    /// The signal of the vehicle.
    fn of_vehicle(self) -> SpeedSignal {
        SpeedSignal {
            source: self.source.unwrap_or_default(),
            drive: self.drive,
        }
    }
}

impl SpeedometerData {
    /// The signal of a set of which that much is its own: what lies between source and instrument is that of
    /// the vehicle only where the source is.
    pub fn signal_of(&self, own: SignalData) -> SpeedSignal {
        let vehicle = self.signal.of_vehicle();
        let source = own.source.unwrap_or(vehicle.source);
        let shared = vehicle.drive.filter(|_| source == vehicle.source);
        SpeedSignal {
            source,
            drive: own.drive.or(shared),
        }
    }
}
