//! The diagram of the tries of a job, in the units of its bench.

use super::{Tries, TryDiagram};
use crate::units::BenchUnits;
use crate::workshop::{JobData, JobState, TurningTorque};

impl TryDiagram {
    /// The diagram of a job in that state; none where it keeps no tries, or none is known.
    pub fn of_job(data: &JobData, state: JobState, units: BenchUnits) -> Option<Self> {
        let JobData::TurningTorque(turning) = data else {
            return None;
        };
        let torque = |torque: TurningTorque| units.torque.from_nmm(torque.nmm());
        let tries = turning.known_tries().into_iter();
        let tries: Vec<[f64; 2]> = tries
            .map(|known| [units.length.from_mm(known.shim.mm()), torque(known.torque)])
            .collect();
        // Once it turns as it must, no shim is sought.
        let is_sought = state != JobState::Done;
        let next = turning
            .next()
            .filter(|_| is_sought)
            .map(|shim| units.length.from_mm(shim.mm()));
        Self::of(&Tries {
            tries: &tries,
            wanted: turning.compared_band().map(|band| band.ends().map(torque)),
            next_shim: next,
            signs: [units.length.sign(), units.torque.sign()],
        })
    }
}
