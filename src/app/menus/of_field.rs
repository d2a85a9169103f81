//! What a field offers to find for it: in the menu that a right click or the menu key opens on it, and in the
//! menu of its row.

use super::{context_menu_ui, is_asked_for_by_key};
use crate::app::action::Action;
use crate::app::dialogs::finders::Finder;
use crate::app::heard::name_menu;
use egui::{Id, Ui};

/// The menu of a field that has just been shown.
pub(in crate::app) fn field_menu_ui(
    ui: &Ui,
    (field, name): (Id, &str),
    finders: &[Finder],
    actions: &mut Vec<Action>,
) {
    // It was shown in this frame, so there is one.
    let Some(response) = ui.ctx().read_response(field) else {
        return;
    };
    let is_by_key = is_asked_for_by_key(&response);
    context_menu_ui(&response, is_by_key, |ui| {
        name_menu(ui, &format!("Menu of {name}"));
        find_entries_ui(ui, finders, actions);
    });
}

/// What can be found, as entries of a menu.
pub(in crate::app) fn find_entries_ui(ui: &mut Ui, finders: &[Finder], actions: &mut Vec<Action>) {
    for finder in finders {
        let Some(entry) = finder.command().entry() else {
            continue;
        };
        if ui.button(entry.text).on_hover_text(entry.tooltip).clicked() {
            actions.push(Action::Find(*finder));
            ui.close();
        }
    }
}
