//! Any command, example, set or recent file by a part of its words.
//!
//! The offers come from the tables that the menus are made of; `matching` says which of them fit
//! what was typed, the best first.

mod dialog;
mod matching;
mod offers;

pub(super) use dialog::{FindCommand, Found, find_command_ui};
pub(super) use offers::offers;
