//! Does the window do what hand, key and screen reader ask of it, and nothing else?
//!
//! The whole program runs here, logic and panels, over files in memory and a scripted file dialog;
//! only eframe and the graphics card are missing.

mod behind_dialogs;
mod closing;
mod dialogs;
mod finding_commands;
mod focus;
mod handles;
mod idle;
mod keys;
mod line;
mod menus;
mod names;
mod opening;
mod pasting;
mod read_out;
mod reading;
mod saving;
mod status_line;
mod undoing;
mod view;
mod whatever_happens;

use crate::support::gear_sets::rpm;
use crate::support::window::camper_van;
use layshaft::project::{Edit, Project, SetEdit};

/// The camper van with its second set, whose handles are shown at first, shifted at these speeds.
fn with_shifts(shifts_rpm: [i32; 4]) -> Project {
    let mut project = camper_van();
    let second = project.sets.iter().nth(1).unwrap();
    let (set, gears) = (second.id, second.set.gears.clone());
    for (gear, shift_rpm) in gears.iter().zip(shifts_rpm) {
        let edit = SetEdit::Shift(gear.id, rpm(shift_rpm.into()));
        project = Edit::Set(set, edit).applied_to(&project).unwrap();
    }
    project
}

/// The place of the set whose handles are shown at first.
const SECOND: usize = 1;
