//! A choice among a few: a button that says what holds, and opens what can be chosen.

use crate::app::drafts::CellId;
use crate::app::form::Form;
use crate::app::heard::{describe, name_menu};
use crate::draw::theme;
use crate::project::Edit;
use egui::class::Classes;
use egui::widget_style::ButtonStyle;
use egui::{Popup, Response, Role, Sense, Ui, WidgetAtom, WidgetInfo};

/// One of the things that can be chosen.
pub(super) struct Offer {
    /// What it says.
    pub text: &'static str,
    /// Whether it is the one that holds.
    pub is_chosen: bool,
    /// What choosing it does.
    pub edit: Edit,
}

/// Shows a choice in a row of its own; of its two names the first is shown before it, the other heard.
pub(super) fn choice_ui(
    ui: &mut Ui,
    (id, [shown, heard]): (CellId, [&str; 2]),
    holds: &str,
    offers: Vec<Offer>,
    form: &mut Form<'_>,
) {
    ui.horizontal(|ui| {
        form.row_name(ui, shown, "");
        choice_button_ui(ui, (id, heard), [holds, holds], offers, form);
    });
}

/// The button of a choice alone, within a row; what holds in few words, and as it is heard.
pub(super) fn choice_button_ui(
    ui: &mut Ui,
    (id, heard): (CellId, &str),
    [shown, holds]: [&str; 2],
    offers: Vec<Offer>,
    form: &mut Form<'_>,
) {
    let button = button_ui(ui, id.widget(), shown, heard);
    describe(&button, holds);
    Popup::menu(&button).show(|ui| {
        name_menu(ui, heard);
        theme::with_edges(ui);
        for offer in offers {
            let radio = ui.radio(offer.is_chosen, offer.text);
            if offer.is_chosen && button.has_focus() && !ui.is_sizing_pass() {
                // Opened by key: Up and Down go on from what holds.
                radio.request_focus();
            }
            if radio.clicked() {
                if !offer.is_chosen {
                    form.edit(offer.edit);
                }
                ui.close();
            }
        }
    });
}

/// A button with an identity that is known before it is shown, so that undo finds it.
fn button_ui(ui: &mut Ui, id: egui::Id, text: &str, name: &str) -> Response {
    let style: ButtonStyle = ui.widget_style(id, &Classes::default());
    let atom = WidgetAtom::new(text).id(id).sense(Sense::click());
    let button = style.atom_layout.apply(atom).allocate(ui).paint(ui);
    let is_enabled = ui.is_enabled();
    let info = || WidgetInfo::labeled(Role::Button, is_enabled, name);
    button.response.widget_info(info);
    button.response
}
