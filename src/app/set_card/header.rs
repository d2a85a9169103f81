//! The head and the foot of a card: name, visible, baseline; shift points, own tyre, findings.

use super::{Card, SetField};
use crate::app::action::Action;
use crate::app::commands::Command;
use crate::app::drafts::SetCell;
use crate::app::form::{Form, remark};
use crate::app::typed::{self, RatioForm};
use crate::app::vehicle_panel::tyre_reading_ui;
use crate::draw::palette::dash;
use crate::draw::{sample, theme};
use crate::project::{Candidates, Edit, SetEdit};
use crate::units::{plain_number, step_text};
use egui::{Sense, Ui, Vec2};

/// From this width on, in points, the shift point and its choice stand in one row.
const WIDTH_FOR_SHIFTS: f32 = 300.0;

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
    let color = form.palette.set(card.place);
    sample(ui.painter(), rect, color, dash(card.place));
    if response.has_focus() {
        let ring = egui::Stroke::new(1.0, form.palette.text);
        ui.painter()
            .rect_stroke(rect, 2.0, ring, egui::StrokeKind::Outside);
    }
    let name = format!("Bring set {} forward", card.place + 1);
    response.widget_info(|| {
        egui::WidgetInfo::selected(egui::Role::Button, true, card.is_selected, &name)
    });
    if response.on_hover_text("Brings this set forward").clicked() {
        form.actions.push(Action::Select(card.candidate.id));
    }
}

fn menu_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let id = card.candidate.id;
    let sets = &card.desk.project().sets;
    let count = sets.len();
    let button = ui.menu_button("…", |ui| {
        let can_add = count < Candidates::MOST;
        if ui
            .add_enabled(can_add, egui::Button::new("Duplicate set"))
            .clicked()
        {
            form.actions.push(Action::Select(id));
            form.actions.push(Action::Run(Command::CopySet));
            ui.close();
        }
        let up = ui.add_enabled(card.place > 0, egui::Button::new("Move up"));
        if up.clicked() {
            form.edit(Edit::MoveSet(id, card.place - 1));
            ui.close();
        }
        let down = ui.add_enabled(card.place + 1 < count, egui::Button::new("Move down"));
        if down.clicked() {
            form.edit(Edit::MoveSet(id, card.place + 1));
            ui.close();
        }
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
        if ui
            .add_enabled(count > 1, egui::Button::new("Remove set"))
            .clicked()
        {
            form.edit(Edit::RemoveSet(id));
            ui.close();
        }
    });
    let name = format!("Set {} menu", card.place + 1);
    button.response.accessible_name(name);
}

/// Shift points, own tyre and findings.
pub(super) fn footer_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    shifts_ui(ui, card, form);
    tyre_ui(ui, card, form);
    for finding in &card.results.findings {
        remark(ui, &finding.to_string(), form.palette.finding);
    }
}

fn shifts_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let set = &card.candidate.set;
    let is_wide = ui.available_width() >= WIDTH_FOR_SHIFTS;
    let problem = ui
        .horizontal(|ui| {
            form.name(ui, "Shift at, rpm", 82.0);
            let field = SetField {
                cell: SetCell::ShiftAll,
                name: &format!("Shift point of all gears of set {}", card.place + 1),
                text: &plain_number(set.shift.rpm()),
                hint: "4500",
                width: 56.0,
            };
            let problem = card.field_ui(ui, &field, form, &|text| {
                typed::engine_speed(text).map(SetEdit::ShiftAll)
            });
            if is_wide {
                each_shift_ui(ui, card, form);
            }
            problem
        })
        .inner;
    form.problem(ui, problem.as_deref());
    if !is_wide {
        each_shift_ui(ui, card, form);
    }
}

/// Whether there is one shift point for all changes, or one for each.
fn each_shift_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let set = &card.candidate.set;
    let mut has_own = set.gears.iter().any(|g| g.shift.is_some());
    let text = "one for each change";
    let each = ui.checkbox(&mut has_own, text);
    if each.accessible_name(card.named(text)).changed() {
        let edit = if has_own {
            let own = set.gears.iter().map(|g| (g.id, set.shift_of(g)));
            SetEdit::Shifts(set.shift, own.collect())
        } else {
            SetEdit::ShiftAll(set.shift)
        };
        card.change(edit, form);
    }
}

fn tyre_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let set = &card.candidate.set;
    let mut has_own = set.tyre.is_some();
    let problem = ui
        .horizontal(|ui| {
            let check = ui.checkbox(&mut has_own, "own tyre");
            if check.accessible_name(card.named("own tyre")).changed() {
                let own = has_own.then_some(card.desk.project().tyre);
                card.change(SetEdit::Tyre(own), form);
            }
            let tyre = set.tyre.as_ref()?;
            let field = SetField {
                cell: SetCell::Tyre,
                name: &format!("Tyre of set {}", card.place + 1),
                text: &tyre.to_string(),
                hint: "195/65 R 15",
                width: (ui.available_width() - 10.0).max(60.0),
            };
            card.field_ui(ui, &field, form, &|text| {
                typed::tyre(text).map(|tyre| SetEdit::Tyre(Some(tyre)))
            })
        })
        .inner;
    form.problem(ui, problem.as_deref());
    if let Some(tyre) = &set.tyre {
        tyre_reading_ui(ui, tyre, form);
    }
}
