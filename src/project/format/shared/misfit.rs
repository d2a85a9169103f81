//! Where does a part stand that is valid, but does not fit the others?

use super::super::outline::Step::{self, Item, Key};
use super::super::outline::place_of;
use super::super::{FormatError, Place};
use crate::gearing::{GearSetError, GearSetSpec, Label, REVERSE_LABEL};

/// A part that does not fit the others, by its path in the file.
#[derive(Debug)]
pub(crate) struct Misfit {
    /// The way to the part, from the whole file or from what reads it.
    pub(crate) path: Vec<Step>,
    /// One sentence without an end mark.
    pub(crate) reason: String,
}

impl Misfit {
    /// The part that `path` leads to does not fit, because of that.
    pub(crate) fn new(path: impl Into<Vec<Step>>, reason: &impl ToString) -> Self {
        Self {
            path: path.into(),
            reason: reason.to_string(),
        }
    }

    /// The same, told from further outside.
    pub(crate) fn within(mut self, outer: impl IntoIterator<Item = Step>) -> Self {
        self.path.splice(..0, outer);
        self
    }

    /// The same with the line and column that the path leads to in `text`.
    pub(crate) fn told_in(self, text: &str) -> FormatError {
        let (line, column) = place_of(text, &self.path);
        FormatError::Broken(Place {
            line,
            column,
            reason: self.reason,
        })
    }

    /// What does not fit among the parts of a set, the path beginning at the set.
    pub(crate) fn of_set(error: &GearSetError, parts: &GearSetSpec) -> Self {
        Self::new(path_of(error, parts), error)
    }
}

fn path_of(error: &GearSetError, parts: &GearSetSpec) -> Vec<Step> {
    match error {
        GearSetError::GearCount(_) | GearSetError::NoShiftedGear | GearSetError::SameIdentity => {
            vec![Key("gears")]
        }
        GearSetError::SameLabel(label) => same_label(label, parts),
        GearSetError::FinalDriveCount(_) => vec![Key("final_drives")],
        GearSetError::NoSuchFinalDrive { gear, .. } => {
            let place = parts.gears.iter().position(|g| g.label.as_str() == gear);
            match place {
                Some(place) => vec![Key("gears"), Item(place), Key("final_drive")],
                None => vec![Key("reverse"), Key("final_drive")],
            }
        }
        // Gears that a stage names and that are not there are told before, by their label.
        GearSetError::StageCount(_)
        | GearSetError::NoSuchGear(_)
        | GearSetError::Combinations(_) => vec![Key("stages")],
        GearSetError::Positions(_) => positions(parts),
    }
}

/// The later of two equal labels; of a gear that is labelled like reverse, its own.
fn same_label(label: &Label, parts: &GearSetSpec) -> Vec<Step> {
    let places = (0..).zip(&parts.gears);
    let mut same = places.filter(|(_, gear)| gear.label == *label);
    let (first, second) = (same.next(), same.next());
    let is_of_reverse = parts.reverse.is_some() && label.as_str() == REVERSE_LABEL;
    match if is_of_reverse { first } else { second } {
        Some((place, _)) => vec![Key("gears"), Item(place), Key("label")],
        None => vec![Key("gears")],
    }
}

/// The number of the position that is not there, or the positions where these are too few or many.
fn positions(parts: &GearSetSpec) -> Vec<Step> {
    for (place, stage) in parts.stages.iter().enumerate() {
        let count = stage.positions.len();
        let key = match count {
            1..=4 if stage.present < count => continue,
            1..=4 => "present",
            _ => "positions",
        };
        return vec![Key("stages"), Item(place), Key(key)];
    }
    vec![Key("stages")]
}
