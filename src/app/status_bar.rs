//! The line at the foot: the last message, what cannot be kept, and how many findings there are.

use super::action::Action;
use super::commands::Command;
use super::dialogs::finding_lines;
use super::heard::{announce, describe};
use super::lifecycle::Lifecycle;
use crate::draw::palette::Palette;
use egui::{Label, RichText, Sides, Ui};

/// Shows the status bar.
pub(super) fn status_bar_ui(
    ui: &mut Ui,
    lifecycle: &Lifecycle,
    palette: &Palette,
    actions: &mut Vec<Action>,
) {
    Sides::new().shrink_left().show(
        ui,
        |ui| message_ui(ui, &lifecycle.message, palette),
        |ui| {
            findings_ui(ui, lifecycle, palette, actions);
            if let Some((words, why)) = lifecycle.lasting_note() {
                ui.separator();
                let label = ui.label(RichText::new(words).color(palette.error).strong());
                describe(&label, &why);
                announce(&label);
                label.on_hover_text(why);
            }
        },
    );
}

/// The last message, which is announced when it changes.
fn message_ui(ui: &mut Ui, message: &str, palette: &Palette) {
    let text = RichText::new(message).color(palette.text);
    announce(&ui.add(Label::new(text).truncate()));
}

/// How many findings there are, and the way to them.
fn findings_ui(ui: &mut Ui, lifecycle: &Lifecycle, palette: &Palette, actions: &mut Vec<Action>) {
    let lines = finding_lines(&lifecycle.desk);
    let words = match lines.len() {
        0 => {
            ui.label(RichText::new("No findings").color(palette.dim_text));
            return;
        }
        1 => "1 finding".to_owned(),
        count => format!("{count} findings"),
    };
    let words = RichText::new(words).color(palette.finding);
    let button = ui.add(egui::Button::new(words).frame_when_inactive(false));
    let text = lines.join("\n");
    describe(&button, &text);
    if button.on_hover_text(text).clicked() {
        actions.push(Action::Run(Command::Findings));
    }
}
