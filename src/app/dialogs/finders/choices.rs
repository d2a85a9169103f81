//! A choice among a few, all of which are to be seen: a row of buttons, one of which holds.

use crate::app::dialogs::field::reveal;
use egui::Ui;

/// Shows the choices of a row, each with what it says and what is heard of it; the one that was taken.
pub(super) fn choices_ui<T: Copy + PartialEq>(
    ui: &mut Ui,
    name: &str,
    holds: T,
    choices: &[(T, String)],
) -> Option<T> {
    let mut taken = None;
    ui.horizontal_wrapped(|ui| {
        ui.label(name);
        for (choice, text) in choices {
            let button = ui.selectable_label(*choice == holds, text);
            reveal(&button);
            let button = button.accessible_name(format!("{name}: {text}"));
            if button.clicked() && *choice != holds {
                taken = Some(*choice);
            }
        }
    });
    taken
}
