//! The final drives of a card: one for each output shaft.

use super::gear_rows::teeth_ui;
use super::{Card, SetField};
use crate::app::drafts::SetCell;
use crate::app::form::Form;
use crate::app::heard::{name_menu, tell_why_not};
use crate::app::typed;
use crate::gearing::{FinalDrive, GearSet};
use crate::project::SetEdit;
use egui::{Align, Button, Layout, Ui};

/// All final drives.
pub(super) fn final_drives_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let finals = &card.candidate.set.final_drives;
    for (at, drive) in finals.iter().enumerate() {
        final_drive_ui(ui, card, at, drive, form);
    }
}

fn final_drive_ui(
    ui: &mut Ui,
    card: &Card<'_>,
    at: usize,
    drive: &FinalDrive,
    form: &mut Form<'_>,
) {
    let FinalDrive::Gears(ratio) = drive;
    let count = card.candidate.set.final_drives.len();
    let name = if count == 1 {
        "Final drive".to_owned()
    } else {
        format!("Final drive {}", at + 1)
    };
    let problem = ui
        .horizontal(|ui| {
            form.name(ui, &name, 82.0);
            let field = SetField {
                cell: SetCell::FinalDrive(at),
                name: &card.named(&name),
                text: &ratio.to_string(),
                hint: "4.06 or 37:9",
                width: 66.0,
            };
            let problem = card.field_ui(ui, &field, form, &|text| {
                typed::final_drive(text).map(|drive| SetEdit::FinalDrive(at, drive))
            });
            if ratio.has_teeth() {
                let whose = name.to_lowercase();
                teeth_ui(
                    ui,
                    card,
                    (&whose, ratio),
                    |swapped| SetEdit::FinalDrive(at, swapped.into()),
                    form,
                );
            }
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                menu_ui(ui, card, at, drive, form);
            });
            problem
        })
        .inner;
    form.problem(ui, problem.as_deref());
}

fn menu_ui(ui: &mut Ui, card: &Card<'_>, at: usize, drive: &FinalDrive, form: &mut Form<'_>) {
    let count = card.candidate.set.final_drives.len();
    let name = card.named(&format!("Final drive {} menu", at + 1));
    let button = ui.menu_button("…", |ui| {
        name_menu(ui, &name);
        let can_add = count < GearSet::MOST_FINAL_DRIVES;
        let add = ui.add_enabled(can_add, Button::new("Add final drive"));
        if add.on_hover_text("For a further output shaft").clicked() {
            card.change(SetEdit::AddFinalDrive(drive.clone()), form);
            ui.close();
        }
        let remove = ui.add_enabled(count > 1, Button::new("Remove final drive"));
        if tell_why_not(remove, "this is the only final drive").clicked() {
            card.change(SetEdit::RemoveFinalDrive(at), form);
            ui.close();
        }
    });
    button.response.accessible_name(name);
}
