//! What is said of a column that gives back what was typed, rather than what follows from it?
//!
//! A table that carries these gives its sets back. CSV has all of them; a text for readers has those
//! without which its own words and figures would not give the set back, and mostly that is none.

use crate::gearing::{FinalDrive, Gear, GearId, GearSet, Ratio};
use crate::project::Project;
use crate::units::typed_rpm_text;
use std::borrow::Cow;

/// A column with something that was typed.
#[derive(Debug)]
pub struct TypedColumn {
    /// Its heading, without its unit.
    pub title: &'static str,
    /// The sign of its unit; empty for a pure number or text.
    pub unit: &'static str,
    /// Whether a text for readers needs it to give this set back.
    pub texts_need_it: fn(&GearSet) -> bool,
    /// What stands in it.
    pub cell: for<'a> fn(&TypedGear<'a>) -> Typed<'a>,
}

/// One gear of a set with all that was typed about it.
#[derive(Debug, Clone, Copy)]
pub struct TypedGear<'a> {
    /// The project that it belongs to.
    pub project: &'a Project,
    /// The set that it belongs to.
    pub set: &'a GearSet,
    /// Whether that is the baseline.
    pub is_baseline: bool,
    /// The gear; none for reverse.
    pub gear: Option<&'a Gear>,
    /// The position in which it is shown, where that is not the present one.
    pub position: Option<&'a str>,
}

/// Something that was typed.
#[derive(Debug, Clone, PartialEq)]
pub enum Typed<'a> {
    /// Nothing.
    Nothing,
    /// A text.
    Text(Cow<'a, str>),
    /// A number in the unit of the column.
    Number(f64),
    /// A ratio in the spelling that reads back.
    Ratio(&'a Ratio),
    /// Final drives in the spelling that reads back.
    FinalDrives(&'a [FinalDrive]),
}

impl<'a> TypedGear<'a> {
    /// All gears of a set in typed order, then reverse.
    pub fn all(
        project: &'a Project,
        set: &'a GearSet,
        is_baseline: bool,
    ) -> impl Iterator<Item = Self> {
        let reverse = set.reverse.iter().map(|_| None);
        let gears = set.gears.iter().map(Some).chain(reverse);
        gears.map(move |gear| Self {
            project,
            set,
            is_baseline,
            gear,
            position: None,
        })
    }

    /// The identity of the gear within its set.
    pub fn id(&self) -> GearId {
        self.gear.map_or(GearId::REVERSE, |gear| gear.id)
    }

    /// The ratio of the gear itself.
    pub fn ratio(&self) -> Option<&'a Ratio> {
        let of_reverse = || self.set.reverse.as_ref().map(|reverse| &reverse.ratio);
        self.gear.map(|gear| &gear.ratio).or_else(of_reverse)
    }

    /// Which final drive it drives, counted from 1.
    pub fn final_drive_number(&self) -> Option<usize> {
        let of_reverse = || self.set.reverse.as_ref().map(|reverse| reverse.final_drive);
        let place = self.gear.map(|gear| gear.final_drive).or_else(of_reverse);
        place.map(|place| place + 1)
    }

    /// The numbers of the stages that act on it, counted from 1: `1 and 3`, or `none` of them.
    pub fn stage_numbers(&self) -> String {
        let id = self.id();
        let stages = (1..).zip(&self.set.stages);
        let acting = stages.filter(|(_, stage)| stage.acts_on.includes(id));
        let numbers: Vec<String> = acting.map(|(number, _)| format!("{number}")).collect();
        match numbers.as_slice() {
            [] if !self.set.stages.is_empty() => "none".to_owned(),
            numbers => numbers.join(" and "),
        }
    }
}

impl Typed<'_> {
    /// As a reader sees it, engine speeds to the rev/min.
    pub fn shown(&self) -> String {
        match self {
            Self::Nothing => String::new(),
            Self::Text(text) => text.clone().into_owned(),
            Self::Number(number) => typed_rpm_text(*number),
            Self::Ratio(ratio) => ratio.to_string(),
            Self::FinalDrives(drives) => spelled(drives),
        }
    }
}

/// Final drives in the spelling that reads back.
pub fn spelled(drives: &[FinalDrive]) -> String {
    let spelled: Vec<String> = drives.iter().map(FinalDrive::to_string).collect();
    spelled.join(" and ")
}
