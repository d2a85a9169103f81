//! Does the window do what hand, key and screen reader ask of it, and nothing else?
//!
//! The whole program runs here, logic and panels, over files in memory and a scripted file dialog;
//! only eframe and the graphics card are missing.

mod beginning;
mod behind_dialogs;
mod choices;
mod closing;
mod dialogs;
mod enter;
mod finders;
mod finding_commands;
mod focus;
mod focus_anew;
mod half_typed;
mod handles;
mod idle;
mod keys;
mod line;
mod load_row;
mod menus;
mod names;
mod note_undo;
mod opening;
mod pasting;
mod pasting_into;
mod pictures;
mod plan;
mod read_out;
mod reading;
mod saving;
mod seats;
mod sizes;
mod speedometer;
mod status_line;
mod staying_put;
mod tabbing;
mod table;
mod typed_paths;
mod undo_places;
mod undoing;
mod unread;
mod view;
mod views;
mod whatever_happens;
mod workshop;

use crate::support::window::with_shifts;

/// The place of the set whose handles are shown at first.
const SECOND: usize = 1;
