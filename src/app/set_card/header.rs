//! The head of a card: name, menu, visible, baseline.

use super::{Card, SetField};
use crate::app::action::Action;
use crate::app::commands::Command;
use crate::app::drafts::SetCell;
use crate::app::form::{Form, remark};
use crate::app::heard::{describe, name_menu, tell_why_not};
use crate::app::typed::{self, RatioForm};
use crate::draw::palette::dash;
use crate::draw::{sample, theme};
use crate::project::{Candidates, Edit, SetEdit};
use crate::units::step_text;
use egui::{Sense, Ui, Vec2};

/// Swatch, name and what can be done with the whole set; beneath it visible and baseline.
pub(super) fn header_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let id = card.candidate.id;
    let problem = ui
        .horizontal(|ui| {
            swatch_ui(ui, card, form);
            let field = SetField {
                cell: SetCell::Name,
                name: &format!("Name of set {}", card.place + 1),
                text: card.candidate.set.name.as_str(),
                hint: "name of the set",
                width: (ui.available_width() - 30.0).max(80.0),
            };
            let problem = card.field_ui(ui, &field, form, &|text| {
                typed::name(text).map(SetEdit::Name)
            });
            menu_ui(ui, card, form);
            problem
        })
        .inner;
    form.problem(ui, problem.as_deref());
    ui.horizontal(|ui| {
        let mut visible = card.candidate.visible;
        let check = ui.checkbox(&mut visible, "visible");
        if check.accessible_name(card.named("visible")).changed() {
            form.edit(Edit::Visible(id, visible));
        }
        let baseline = ui.radio(card.is_baseline, "baseline");
        let baseline = baseline
            .accessible_name(card.named("baseline"))
            .on_hover_text("The other sets are compared with it");
        if baseline.clicked() && !card.is_baseline {
            form.edit(Edit::Baseline(id));
        }
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            let spread = format!("spread {}", step_text(card.results.spread));
            remark(ui, &spread, form.palette.dim_text);
        });
    });
}

/// The set's dash; a click selects the set.
fn swatch_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let size = Vec2::new(30.0, ui.spacing().interact_size.y);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let color = form.palette.set(card.candidate.livery);
    sample(ui.painter(), rect, color, dash(card.candidate.livery));
    let name = format!("Bring set {} forward", card.place + 1);
    response.widget_info(|| {
        egui::WidgetInfo::selected(egui::Role::Button, true, card.is_selected, &name)
    });
    describe(&response, card.candidate.set.name.as_str());
    if response.on_hover_text("Brings this set forward").clicked() {
        form.actions.push(Action::Select(card.candidate.id));
    }
}

fn menu_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let id = card.candidate.id;
    let sets = &card.desk.project().sets;
    let count = sets.len();
    let name = format!("Set {} menu", card.place + 1);
    let button = ui.menu_button("…", |ui| {
        name_menu(ui, &name);
        let can_add = count < Candidates::MOST;
        let copy = ui.add_enabled(can_add, egui::Button::new("Duplicate set"));
        if tell_why_not(copy, "a project has three sets at most").clicked() {
            form.actions.push(Action::Select(id));
            form.actions.push(Action::Run(Command::CopySet));
            ui.close();
        }
        let up = ui.add_enabled(card.place > 0, egui::Button::new("Move up"));
        if tell_why_not(up, "it is the first set").clicked() {
            form.edit(Edit::MoveSet(id, card.place - 1));
            ui.close();
        }
        let down = ui.add_enabled(card.place + 1 < count, egui::Button::new("Move down"));
        if tell_why_not(down, "it is the last set").clicked() {
            form.edit(Edit::MoveSet(id, card.place + 1));
            ui.close();
        }
        best_shifts_entry_ui(ui, card, form);
        ui.separator();
        ui.label("Type gears as");
        let unit = card.desk.project().units;
        ui.scope(|ui| {
            theme::with_edges(ui);
            for ratio_form in RatioForm::ALL {
                let is_chosen = card.ratio_form == ratio_form;
                if ui.radio(is_chosen, ratio_form.text(unit)).clicked() {
                    form.actions.push(Action::RatioForm(ratio_form));
                    ui.close();
                }
            }
        });
        ui.separator();
        let remove = ui.add_enabled(count > 1, egui::Button::new("Remove set"));
        if tell_why_not(remove, "this is the only set").clicked() {
            form.edit(Edit::RemoveSet(id));
            ui.close();
        }
    });
    button.response.accessible_name(name);
}

fn best_shifts_entry_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let Some(entry) = Command::BestShifts.entry() else {
        return;
    };
    let why_not = Command::BestShifts.why_not(card.desk);
    let best = ui.add_enabled(why_not.is_none(), egui::Button::new(entry.text));
    if tell_why_not(best, why_not.unwrap_or_default()).clicked() {
        form.actions.push(Action::Run(Command::BestShifts));
        ui.close();
    }
}
