//! What all diagrams and tables of engine and vehicle have in common.

use super::scene::Scene;
use super::table::{SetGear, other_label};
use crate::analysis::{Motion, NoMotion, ProjectResults, SetMotion};
use crate::gearing::RoadSpeed;
use crate::motion::PoweredGear;
use crate::project::Project;
use crate::units::{SpeedUnit, mark_text, typed_rpm_text};

/// A diagram that nothing can be told in, with the reason.
pub(super) fn without(scene: Scene, reason: &NoMotion) -> Scene {
    Scene {
        summary: format!("Nothing to show: {reason}"),
        lacks: Some(reason.clone()),
        ..scene
    }
}

/// The gear that another is compared with.
#[derive(Clone)]
pub(super) struct Like<'a> {
    pub(super) set: &'a SetMotion,
    pub(super) gear: &'a PoweredGear,
    /// ` against 5th`, where its label is another; else empty.
    pub(super) other_label: String,
}

/// The gear of the baseline that a gear of the set at that place is compared with, as everywhere; none in
/// the baseline itself.
pub(super) fn like<'a>(
    (project, results): (&Project, &ProjectResults),
    motion: &'a Motion,
    place: usize,
    gear: &PoweredGear,
) -> Option<Like<'a>> {
    let baseline = project.sets.baseline_place();
    if place == baseline {
        return None;
    }
    let (set, before) = (&results.sets[place], &results.sets[baseline]);
    let mut of_set = SetGear::all(set);
    let figures = of_set.find(|figures| figures.gear.gear.id == gear.gear.id)?;
    let counterpart = figures.counterpart_in(before)?;
    let set = &motion.sets[baseline];
    let mut gears = set.powertrain.gears.iter();
    Some(Like {
        set,
        gear: gears.find(|powered| powered.gear.id == counterpart.gear.gear.id)?,
        other_label: other_label(figures, counterpart),
    })
}

/// Road speeds in m/s from the lowest to the highest that a gear covers, in so many even steps.
pub(super) fn speeds_m_s(gear: &PoweredGear, steps: u32) -> impl Iterator<Item = f64> {
    let (low_m_s, high_m_s) = (gear.low_m_s(), gear.high_m_s());
    let shares = (0..=steps).map(move |step| f64::from(step) / f64::from(steps));
    shares.map(move |share| low_m_s * (1.0 - share) + high_m_s * share)
}

/// A best shift point in rev/min, rounded down to 10: above it the next gear would be ahead.
pub(super) fn best_rpm_text(rpm: f64) -> String {
    typed_rpm_text((rpm / 10.0).floor() * 10.0)
}

/// A road speed in the unit in which it is whole: what is timed to 60 mph is called so in km/h too. Where
/// both are, or neither is, the unit of the project.
pub(super) fn speed_words(speed: RoadSpeed, units: SpeedUnit) -> String {
    let unit = roundest(&[speed], units);
    format!("{} {}", mark_text(speed.kmh(), unit), unit.sign())
}

/// The unit in which road speeds are whole, see [`speed_words`].
pub(super) fn roundest(speeds: &[RoadSpeed], units: SpeedUnit) -> SpeedUnit {
    let is_whole = |unit: SpeedUnit| {
        let mut numbers = speeds.iter().map(|speed| unit.from_kmh(speed.kmh()));
        numbers.all(|number| (number - number.round()).abs() < 1e-9)
    };
    let mut others = SpeedUnit::ALL.into_iter().filter(|unit| is_whole(*unit));
    match others.next() {
        Some(unit) if !is_whole(units) => unit,
        Some(_) | None => units,
    }
}
