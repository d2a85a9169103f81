//! The menus: those of the bar, by pointer and by key, and those of a right click.

mod bar;
mod context;
mod keys;
mod of_field;

pub(super) use bar::{command_text, menu_bar_ui};
pub(super) use context::{context_menu_ui, is_asked_for_by_key};
pub(super) use keys::MenuKeys;
pub(super) use of_field::{field_menu_ui, find_entries_ui};
