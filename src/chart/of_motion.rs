//! What all diagrams of engine and vehicle have in common.

use super::chosen::ChosenSet;
use super::scene::Scene;
use crate::analysis::{Motion, NoMotion, SetMotion};
use crate::gearing::RoadSpeed;
use crate::motion::PoweredGear;
use crate::project::Project;
use crate::units::{SpeedUnit, mark_text};

/// A diagram that nothing can be told in, with the reason.
pub(super) fn without(scene: Scene, reason: &NoMotion) -> Scene {
    Scene {
        summary: format!("Nothing to show: {reason}"),
        lacks: Some(reason.clone()),
        ..scene
    }
}

/// The gear that one is compared with, in the set that its set is compared with.
pub(super) fn like<'m>(
    project: &Project,
    motion: &'m Motion,
    chosen: &ChosenSet<'_>,
    gear: &PoweredGear,
) -> Option<(&'m SetMotion, &'m PoweredGear)> {
    let baseline = chosen.baseline?;
    let mut results = chosen.set.gears.iter();
    let result = results.find(|result| result.gear.id == gear.gear.id)?;
    let like = baseline.counterpart(chosen.set, result)?;
    let set = motion.sets.get(project.sets.baseline_place())?;
    let mut gears = set.powertrain.gears.iter();
    let gear = gears.find(|powered| powered.gear.id == like.gear.id)?;
    Some((set, gear))
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
