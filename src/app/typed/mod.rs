//! The readers of typed text: the value that a text means, or why it does not read.
//!
//! The readers themselves live in `gearing`; here they meet the field that was typed in, and their
//! sentences speak of its quantity.

mod date;
mod final_drive;
mod speeds;

pub(super) use date::date;
pub(super) use final_drive::{final_drive, sprocket};
pub(super) use speeds::{Engine, engine_speed, engine_speeds, read_as, redline, road_speeds};

use crate::gearing::{
    Gear, GearId, GearRole, GearSet, Label, Name, Ratio, SetResults, TypedRatio, Tyre,
    parse_decimal, parse_ratio, parse_tyre, read_chain, read_reduction, stages_ratio,
};
use crate::letters::first_lacking;
use crate::project::Note;
use crate::units::SpeedUnit;

/// A reading, or a sentence that says why there is none.
pub(super) type Reading<T> = Result<T, String>;

fn told(error: impl std::error::Error) -> String {
    error.to_string()
}

/// What `read` reads, or none where nothing is typed.
pub(super) fn optional<T>(text: &str, read: fn(&str) -> Reading<T>) -> Reading<Option<T>> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    read(text).map(Some)
}

/// A name that must be there.
pub(super) fn name(text: &str) -> Reading<Name> {
    writable(text)?;
    Name::new(text).map_err(told)
}

/// A gear's label.
pub(super) fn label(text: &str) -> Reading<Label> {
    writable(text)?;
    Label::new(text).map_err(told)
}

/// A note of any number of lines.
pub(super) fn note(text: &str) -> Reading<Note> {
    writable(text)?;
    Note::new(text).map_err(told)
}

/// Refuses letters that would stand as empty boxes in every picture.
fn writable(text: &str) -> Reading<()> {
    match first_lacking(text) {
        None => Ok(()),
        Some(letter) => Err(format!(
            "pictures have no letter \"{letter}\" to show it: write it with others"
        )),
    }
}

/// A tyre that must be there.
pub(super) fn tyre(text: &str) -> Reading<Tyre> {
    parse_tyre(text).map_err(told)
}

/// What stands in a gear's ratio field.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RatioForm {
    /// The ratio of the gear itself.
    #[default]
    Gear,
    /// Its overall ratio, as old road tests print it.
    Overall,
    /// Its road speed per 1000 rpm.
    SpeedPer1000,
}

impl RatioForm {
    /// All forms, in the order of the choice.
    pub const ALL: [Self; 3] = [Self::Gear, Self::Overall, Self::SpeedPer1000];

    /// What the choice says.
    pub fn text(self, unit: SpeedUnit) -> String {
        match self {
            Self::Gear => "gear ratios".to_owned(),
            Self::Overall => "overall ratios".to_owned(),
            Self::SpeedPer1000 => format!("{} per 1000 rpm", unit.sign()),
        }
    }
}

/// The ratio that a text means for a gear of a set, whose order of teeth the other gears decide.
pub(super) fn gear_ratio(set: &GearSet, gear: &Gear, text: &str) -> Reading<Ratio> {
    let typed = parse_ratio(text).map_err(told)?;
    if gear.role == GearRole::Crawler {
        return Ok(read_reduction(&typed));
    }
    let behind: Vec<f64> = set
        .chain()
        .map(|g| behind(set, g.id, g.final_drive))
        .collect();
    let mut chain: Vec<TypedRatio> = set
        .chain()
        .map(|g| TypedRatio::settled(g.ratio.clone()))
        .collect();
    let Some(at) = set.chain().position(|g| g.id == gear.id) else {
        return Ok(typed.driven_first().clone());
    };
    chain[at] = typed;
    Ok(read_chain(&chain, &behind).swap_remove(at))
}

/// The ratio between a gear, forward or reverse, and the wheels.
fn behind(set: &GearSet, gear: GearId, final_drive: usize) -> f64 {
    set.final_drives[final_drive].value() * stages_ratio(set, gear)
}

/// The ratio that a gear, forward or reverse, must have for the overall ratio that was typed.
pub(super) fn ratio_from_overall(
    set: &GearSet,
    (gear, final_drive): (GearId, usize),
    text: &str,
) -> Reading<Ratio> {
    let overall = parse_decimal(text).map_err(|error| error.about("an overall ratio", "15.2"))?;
    Ratio::from_number(overall / behind(set, gear, final_drive)).map_err(told)
}

/// The ratio that a gear, forward or reverse, must have for the road speed per 1000 rpm that was
/// typed in `unit`.
pub(super) fn ratio_from_speed(
    set: &GearSet,
    (gear, final_drive): (GearId, usize),
    results: &SetResults,
    unit: SpeedUnit,
    text: &str,
) -> Reading<Ratio> {
    let what = "a road speed at 1000 rpm";
    let speed = parse_decimal(text).map_err(|error| error.about(what, "27.5"))?;
    let speed_kmh = unit.to_kmh(speed);
    if speed_kmh <= 0.0 {
        return Err("a road speed must be above 0".to_owned());
    }
    let circumference_mm = results.drivetrain.rolling_circumference_mm;
    // The overall ratio at which 1000 rpm make that road speed.
    let overall = crate::gearing::speed_from_rpm(1000.0, 1.0, circumference_mm) / speed_kmh;
    Ratio::from_number(overall / behind(set, gear, final_drive)).map_err(told)
}

/// A ratio that reduces: a reverse gear.
pub(super) fn reduction(text: &str) -> Reading<Ratio> {
    Ok(read_reduction(&parse_ratio(text).map_err(told)?))
}

/// A ratio that may be above or below 1: a stage's position.
pub(super) fn any_ratio(text: &str) -> Reading<Ratio> {
    Ok(parse_ratio(text).map_err(told)?.driven_first().clone())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_that_the_fonts_lack_are_refused_with_the_letter() {
        let says = "pictures have no letter \"五\" to show it: write it with others";
        assert_eq!(name("五速").unwrap_err(), says);
        assert_eq!(label("五").unwrap_err(), says);
        assert_eq!(note("one\n五").unwrap_err(), says);
        assert!(name("Größe → Пять").is_ok() && note("one\n\ttwo").is_ok());
    }
}
