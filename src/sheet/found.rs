//! A value that was found for a wish, as a sentence beside the present one.

use crate::finders::{FoundValue, Sought, SpeedWish};
use crate::gearing::{DrivenGear, GearId, GearSet, REVERSE_LABEL};
use crate::units::{SpeedUnit, mark_text, percent_difference_text, ratio_text, typed_rpm_text};

/// A value, and the wish that it fulfils.
#[derive(Debug, Clone, Copy)]
pub struct Found<'a> {
    /// What was sought.
    pub sought: Sought,
    /// In which set.
    pub set: &'a GearSet,
    /// In which of its gears.
    pub gear: &'a DrivenGear,
    /// What was wished.
    pub wish: SpeedWish,
    /// The unit in which road speeds are told.
    pub units: SpeedUnit,
    /// What was found.
    pub value: FoundValue,
}

/// The sentence, and beneath it which other gears the value changes.
pub fn text(found: &Found<'_>) -> String {
    let FoundValue { present, value } = found.value;
    let spelled = |number: f64| match found.sought {
        Sought::FinalDrive | Sought::GearRatio => ratio_text(number),
        Sought::RollingCircumference => format!("{number:.1} mm"),
    };
    let what = match found.sought {
        Sought::FinalDrive => "final drive",
        Sought::RollingCircumference => "rolling circumference",
        Sought::GearRatio => "ratio",
    };
    format!(
        "{}, gear {}: {what} {} instead of {} ({}) for {} rpm at {} {}\n{}",
        found.set.name.as_str(),
        found.gear.label,
        spelled(value),
        spelled(present),
        percent_difference_text(found.value.difference_share()),
        typed_rpm_text(found.wish.engine.rpm()),
        mark_text(found.wish.road.kmh(), found.units),
        found.units.sign(),
        changed_with_it(found),
    )
}

/// What a builder changes along with it.
fn changed_with_it(found: &Found<'_>) -> String {
    match found.sought {
        Sought::GearRatio => String::new(),
        Sought::RollingCircumference => {
            "every gear changes with it, and so does what the speedometer shows\n".to_owned()
        }
        Sought::FinalDrive => match &others_behind_it(found)[..] {
            [] => String::new(),
            [other] => format!("gear {other} changes with it\n"),
            others => format!("gears {} change with it\n", others.join(", ")),
        },
    }
}

/// The labels of the other gears that drive the same final drive, reverse last.
fn others_behind_it<'a>(found: &Found<'a>) -> Vec<&'a str> {
    let forward = found.set.gears.iter();
    let forward = forward.map(|gear| (gear.id, gear.label.as_str(), gear.final_drive));
    let reverse = found.set.reverse.iter();
    let reverse = reverse.map(|gear| (GearId::REVERSE, REVERSE_LABEL, gear.final_drive));
    let gears = || forward.clone().chain(reverse.clone());
    let own = gears().find(|(id, ..)| *id == found.gear.id);
    let drive = own.map(|(_, _, drive)| drive);
    gears()
        .filter(|(id, _, on)| *id != found.gear.id && Some(*on) == drive)
        .map(|(_, label, _)| label)
        .collect()
}
