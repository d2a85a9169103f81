//! The cards of the gear sets: everything about a set can be typed in the one that is open; the others
//! are folded to a line.

mod additions;
mod best_shifts;
mod final_drives;
mod folded;
mod footer;
mod gear_rows;
mod header;
mod ratio_field;
mod stages;

pub(super) use ratio_field::ratio_cell;

use super::action::Action;
use super::commands::Command;
use super::desk::Desk;
use super::dialogs::finders::{Finder, WishedAt};
use super::drafts::{CellId, SetCell};
use super::form::{Field, Form};
use super::heard::{add_usable, tell_why_not};
use super::menus::field_menu_ui;
use super::technical::{of_set_ui, own_checks_ui};
use super::typed::{RatioForm, Reading};
use super::typed_as::TypedGears;
use super::view_state::ViewState;
use crate::gearing::SetResults;
use crate::project::{Candidate, Edit, SetEdit, View};
use egui::{Button, Frame, Response, Stroke, Ui};

/// What a card shows.
pub(super) struct Card<'a> {
    desk: &'a Desk,
    candidate: &'a Candidate,
    results: &'a SetResults,
    place: usize,
    is_selected: bool,
    is_baseline: bool,
    ratio_form: RatioForm,
    typed: &'a TypedGears,
    /// The view that is looked at.
    shown: View,
    /// The field that is to be seen.
    sought: Option<CellId>,
}

/// One field of a card.
struct SetField<'a> {
    /// Which field of the set it is.
    cell: SetCell,
    /// What it is called by those who hear it, unlike the fields of other cards.
    name: &'a str,
    /// What the document says.
    text: &'a str,
    /// What stands in it while it is empty.
    hint: &'a str,
    /// Its width in points.
    width: f32,
}

impl Card<'_> {
    /// A field within a row; why its text does not read.
    fn field_ui(
        &self,
        ui: &mut Ui,
        field: &SetField<'_>,
        form: &mut Form<'_>,
        read: &dyn Fn(&str) -> Reading<SetEdit>,
    ) -> Option<String> {
        let id = self.candidate.id;
        let of_set = Field {
            id: CellId::Set(id, field.cell),
            name: field.name,
            text: field.text,
            hint: field.hint,
        };
        form.cell(ui, &of_set, field.width, &|text| {
            read(text).map(|edit| Edit::Set(id, edit))
        })
    }

    /// A field within a row, with a menu of what can be found for it; why its text does not read.
    fn sought_field_ui(
        &self,
        ui: &mut Ui,
        (field, finders): (&SetField<'_>, &[Finder]),
        form: &mut Form<'_>,
        read: &dyn Fn(&str) -> Reading<SetEdit>,
    ) -> Option<String> {
        let problem = self.field_ui(ui, field, form, read);
        let of = (self.cell_id(field.cell), field.name);
        field_menu_ui(ui, of, finders, form.actions);
        problem
    }

    /// What fulfils a wish of the set there.
    fn wish(&self, at: WishedAt) -> Finder {
        Finder::Wish(self.candidate.id, at)
    }

    /// The identity of a field's widget.
    fn cell_id(&self, cell: SetCell) -> egui::Id {
        CellId::Set(self.candidate.id, cell).widget()
    }

    /// A change of the set, as a step of its own.
    fn change(&self, edit: SetEdit, form: &mut Form<'_>) {
        form.edit(Edit::Set(self.candidate.id, edit));
    }

    /// What something on this card is called by those who hear it, to tell it from other cards'.
    fn named(&self, what: &str) -> String {
        format!("{what}, set {}", self.place + 1)
    }
}

/// Shows the cards of all sets.
pub(super) fn set_cards_ui(ui: &mut Ui, desk: &Desk, view: &ViewState, form: &mut Form<'_>) {
    let sets = desk.project().sets.iter().zip(&desk.results().sets);
    for (place, (candidate, results)) in sets.enumerate() {
        let card = Card {
            desk,
            candidate,
            results,
            place,
            is_selected: view.selected == candidate.id,
            is_baseline: desk.project().sets.baseline().id == candidate.id,
            ratio_form: view.ratio_form,
            typed: &view.typed,
            shown: view.shown,
            sought: view.sought,
        };
        let response = if view.open_card == candidate.id {
            card_ui(ui, &card, form)
        } else {
            folded::folded_ui(ui, &card, form)
        };
        if view.reveal == Some(candidate.id) {
            response.scroll_to_me(None);
        }
        ui.add_space(6.0);
    }
    further_sets_ui(ui, desk, form);
}

/// How a further set comes about: as a copy of the one that is forward, or from text.
fn further_sets_ui(ui: &mut Ui, desk: &Desk, form: &mut Form<'_>) {
    ui.horizontal(|ui| {
        for command in [Command::CopySet, Command::PasteSet] {
            let Some(entry) = command.entry() else {
                continue;
            };
            let why_not = command.why_not(desk);
            let button = add_usable(ui, why_not.is_none(), Button::new(entry.text));
            let button = match why_not {
                Some(why) => tell_why_not(button, why),
                None => button.on_hover_text(entry.tooltip),
            };
            let name = format!("{}, beneath the cards", entry.text);
            if button.accessible_name(name).clicked() {
                form.actions.push(Action::Run(command));
            }
        }
    });
}

fn card_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) -> Response {
    let color = form.palette.set(card.candidate.livery);
    let (outline, margin) = if card.is_selected {
        (Stroke::new(2.0, color), 5)
    } else {
        (Stroke::new(1.0, form.palette.grid), 6)
    };
    Frame::new()
        .stroke(outline)
        .corner_radius(4.0)
        .inner_margin(margin)
        .show(ui, |ui| {
            ui.push_id(("card", card.candidate.id), |ui| {
                ui.set_width(ui.available_width());
                header::header_ui(ui, card, form);
                gear_rows::gear_rows_ui(ui, card, form);
                final_drives::final_drives_ui(ui, card, form);
                footer::shifts_ui(ui, card, form);
                best_shifts::best_shifts_ui(ui, card, form);
                footer::tyre_ui(ui, card, form);
                stages::stages_ui(ui, card, form);
                let about = (card.desk.project(), card.candidate);
                of_set_ui(ui, about, card.sought, form);
                own_checks_ui(ui, about, (card.shown, card.sought), form);
                additions::additions_ui(ui, card, form);
                footer::findings_ui(ui, card, form);
            });
        })
        .response
}
