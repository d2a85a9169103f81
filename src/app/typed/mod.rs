//! The readers of typed text: the value that a text means, or why it does not read.
//!
//! The readers themselves live in `gearing`; here they meet the field that was typed in, and their
//! sentences speak of its quantity.

mod curve_points;
mod date;
mod engine;
mod final_drive;
mod grades;
pub(super) mod known_fuel;
mod quantity;
pub(super) mod speedometer;
mod speeds;

pub(super) use curve_points::{curve_with_speeds, curve_with_torques};
pub(super) use date::date;
pub(super) use engine::{brochure, torque_curve, torque_remarks, willans};
pub(super) use final_drive::{final_drive, sprocket};
pub(super) use grades::{GRADE, grades};
pub(super) use quantity::{Quantity, road_load, wind};
pub(super) use speeds::{
    Engine, engine_speed, engine_speeds, known_road_speed, one_road_speed, read_as, redline,
    road_speeds,
};

use super::typed_as::TypedAs;
use crate::gearing::{
    Factor, Gear, GearId, GearSet, InChain, Label, Name, PairOrder, Ratio, Tyre, parse_decimal,
    parse_ratio, parse_tyre, ratio_behind, read_in_chain, read_reduction,
};
use crate::letters::first_lacking;
use crate::project::{Figure, Note, Project};
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

/// What a text means for a gear: the ratio that it must have, and what is to be remembered of the
/// typing.
pub(super) type GearReading = Reading<(Ratio, Option<TypedAs>)>;

/// The ratio that a text means for a gear of a set.
///
/// Sense decides the order of its teeth, then the order that other gears were typed in, as far as
/// `order_of` knows it. A text that only corrects one count of what stood in the field `before` keeps
/// the order of that, and tells none.
pub(super) fn gear_ratio<'a>(
    set: &'a GearSet,
    gear: &Gear,
    order_of: &dyn Fn(GearId) -> Option<PairOrder>,
    before: &str,
    text: &str,
) -> GearReading {
    let typed = parse_ratio(text).map_err(told)?;
    let Some(at) = set.chain().position(|g| g.id == gear.id) else {
        return Ok((read_reduction(&typed), None));
    };
    let is_correction = corrects(typed.driven_first(), before);
    let in_chain = |standing: &'a Gear| InChain {
        ratio: &standing.ratio,
        behind: ratio_behind(set, standing.id).unwrap_or(1.0),
        order: if standing.id == gear.id {
            is_correction.then_some(PairOrder::DrivenFirst)
        } else {
            order_of(standing.id)
        },
    };
    let chain: Vec<InChain<'_>> = set.chain().map(in_chain).collect();
    let (ratio, order) = read_in_chain(&typed, at, &chain);
    let order = order.filter(|_| !is_correction);
    let typed_as = order.map(|order| TypedAs::Pair(order, ratio.clone()));
    Ok((ratio, typed_as))
}

/// Whether a pair has one count where the pair that stood in its field, driven first, has it too.
fn corrects(typed: &Ratio, before: &str) -> bool {
    let Ok(before) = parse_ratio(before) else {
        return false;
    };
    match (typed.factors(), before.driven_first().factors()) {
        ([Factor::Teeth(typed)], [Factor::Teeth(before)]) => {
            typed.driven() == before.driven() || typed.driving() == before.driving()
        }
        _ => false,
    }
}

/// The ratio that a gear, forward or reverse, must have for the overall ratio that was typed.
pub(super) fn ratio_from_overall(
    project: &Project,
    set: &GearSet,
    gear: GearId,
    text: &str,
) -> GearReading {
    let overall = parse_decimal(text).map_err(|error| error.about("an overall ratio", "15.2"))?;
    ratio_from(Figure::Overall(overall), project, set, gear)
}

/// The ratio that a gear, forward or reverse, must have for the road speed per 1000 rpm that was typed
/// in the project's unit.
pub(super) fn ratio_from_speed(
    project: &Project,
    set: &GearSet,
    gear: GearId,
    text: &str,
) -> GearReading {
    let what = "a road speed at 1000 rpm";
    let speed = parse_decimal(text).map_err(|error| error.about(what, "27.5"))?;
    if speed <= 0.0 {
        return Err("a road speed must be above 0".to_owned());
    }
    ratio_from(
        Figure::SpeedPer1000(speed, project.units),
        project,
        set,
        gear,
    )
}

fn ratio_from(figure: Figure, project: &Project, set: &GearSet, gear: GearId) -> GearReading {
    let ratio = figure.ratio_in(set, gear, &project.tyre);
    let ratio = ratio.ok_or("that gear is not there any more")?;
    Ok((ratio.map_err(told)?, Some(TypedAs::Figure(figure))))
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
