//! The speedometer behind every set: what it shows, and how that is judged.

use crate::checks::{NoReading, ShownSpeed, SignalledSet, SpeedVerdict};
use crate::gearing::RoadSpeed;
use crate::project::{
    Candidate, Project, SetTechnical, SignalData, SpeedometerData, TechnicalData,
};

/// The true road speeds in km/h at which every speedometer is looked at: those at which UN R39 is tested.
pub const SPEEDOMETER_SPEEDS_KMH: [f64; 3] = [40.0, 80.0, 120.0];

/// What the speedometer shows behind each set, in their order.
pub(super) fn of_sets(project: &Project) -> Vec<Result<ShownSpeed, NoReading>> {
    let baseline = signalled(project, project.sets.baseline());
    let known = &project.technical.speedometer.reading;
    let sets = project.sets.iter();
    sets.map(|candidate| ShownSpeed::of(&signalled(project, candidate), &baseline, known))
        .collect()
}

/// Whether anything is known of the speedometer behind a set.
pub(super) fn knows_signal(technical: &TechnicalData, of_set: &SetTechnical) -> bool {
    technical.speedometer != SpeedometerData::default()
        || of_set.checks.signal != SignalData::default()
}

fn signalled<'a>(project: &'a Project, candidate: &'a Candidate) -> SignalledSet<'a> {
    let set = &candidate.set;
    let tyre = project.tyre_of(set);
    let speedometer = &project.technical.speedometer;
    SignalledSet {
        set,
        rolling_circumference_mm: tyre.rolling_circumference_mm(),
        signal: speedometer.signal_of(candidate.technical.checks.signal),
    }
}

/// How the project's rule judges what a speedometer shows.
pub fn speed_verdict(project: &Project, shown: &ShownSpeed) -> SpeedVerdict {
    let technical = &project.technical;
    technical
        .speedometer
        .rule
        .verdict(shown, technical.limits.top_speed)
}

/// The speeds at which a speedometer is looked at, with these beside, in rising order.
pub fn speedometer_speeds(marked: &[RoadSpeed]) -> Vec<RoadSpeed> {
    let tested = SPEEDOMETER_SPEEDS_KMH.into_iter();
    let tested = tested.filter_map(|kmh| RoadSpeed::from_kmh(kmh).ok());
    let mut speeds: Vec<RoadSpeed> = tested.chain(marked.iter().copied()).collect();
    speeds.sort_by(|a, b| a.kmh().total_cmp(&b.kmh()));
    speeds.dedup();
    speeds
}
