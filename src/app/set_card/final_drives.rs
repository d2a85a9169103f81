//! The final drives of a card: one for each output shaft.

use super::Card;
use super::gear_rows::teeth_ui;
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::{Field, Form};
use crate::app::typed;
use crate::gearing::{GearSet, Ratio};
use crate::project::SetEdit;
use egui::{Align, Button, Layout, Ui};

/// All final drives.
pub(super) fn final_drives_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let finals = &card.candidate.set.final_drives;
    for (at, ratio) in finals.iter().enumerate() {
        final_drive_ui(ui, card, at, ratio, form);
    }
}

fn final_drive_ui(ui: &mut Ui, card: &Card<'_>, at: usize, ratio: &Ratio, form: &mut Form<'_>) {
    let id = card.candidate.id;
    let count = card.candidate.set.final_drives.len();
    let name = if count == 1 {
        "Final drive".to_owned()
    } else {
        format!("Final drive {}", at + 1)
    };
    let problem = ui
        .horizontal(|ui| {
            form.name(ui, &name, 82.0);
            let text = ratio.to_string();
            let field = Field {
                id: CellId::Set(id, SetCell::FinalDrive(at)),
                name: &name,
                text: &text,
                hint: "4.06 or 37:9",
            };
            let spoken = format!("{name}, set {}", card.place + 1);
            let problem = form.cell(ui, &field, &spoken, 66.0, &|text| {
                typed::reduction(text).map(|r| typed::of_set(id, SetEdit::FinalDrive(at, r)))
            });
            if ratio.has_teeth() {
                teeth_ui(ui, card, ratio, |r| SetEdit::FinalDrive(at, r), form);
            }
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                menu_ui(ui, card, at, ratio, form);
            });
            problem
        })
        .inner;
    form.problem(ui, problem.as_deref());
}

fn menu_ui(ui: &mut Ui, card: &Card<'_>, at: usize, ratio: &Ratio, form: &mut Form<'_>) {
    let id = card.candidate.id;
    let count = card.candidate.set.final_drives.len();
    let button = ui.menu_button("…", |ui| {
        let can_add = count < GearSet::MOST_FINAL_DRIVES;
        let add = ui.add_enabled(can_add, Button::new("Add final drive"));
        if add.on_hover_text("For a further output shaft").clicked() {
            form.edit(typed::of_set(id, SetEdit::AddFinalDrive(ratio.clone())));
            ui.close();
        }
        let remove = ui.add_enabled(count > 1, Button::new("Remove final drive"));
        if remove.clicked() {
            form.edit(typed::of_set(id, SetEdit::RemoveFinalDrive(at)));
            ui.close();
        }
    });
    let name = format!("Final drive {} menu, set {}", at + 1, card.place + 1);
    button.response.accessible_name(name);
}
