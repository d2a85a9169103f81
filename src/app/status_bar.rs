//! The line at the foot: the last message, what cannot be kept, and how many findings there are.

use super::desk::Desk;
use super::lifecycle::Lifecycle;
use crate::draw::palette::Palette;
use egui::{Label, RichText, Sides, Ui};

/// Shows the status bar.
pub(super) fn status_bar_ui(ui: &mut Ui, lifecycle: &Lifecycle, palette: &Palette) {
    let (desk, message) = (&lifecycle.desk, &lifecycle.message);
    Sides::new().shrink_left().show(
        ui,
        |ui| {
            let text = RichText::new(message).color(palette.text);
            ui.add(Label::new(text).truncate());
        },
        |ui| {
            let count = desk.results().findings().count();
            let (words, color) = match count {
                0 => ("No findings".to_owned(), palette.dim_text),
                1 => ("1 finding".to_owned(), palette.finding),
                _ => (format!("{count} findings"), palette.finding),
            };
            let label = ui.label(RichText::new(words).color(color));
            if count > 0 {
                label.on_hover_text(findings_text(desk));
            }
            if let Some((words, why)) = lifecycle.lasting_note() {
                ui.separator();
                let label = ui.label(RichText::new(words).color(palette.error).strong());
                label.on_hover_text(why);
            }
        },
    );
}

fn findings_text(desk: &Desk) -> String {
    let names: Vec<String> = desk
        .project()
        .sets
        .iter()
        .map(|c| c.set.name.to_string())
        .collect();
    let lines = desk.results().findings().map(|(set, finding)| match set {
        Some(at) => format!("{}: {finding}", names[at]),
        None => finding.to_string(),
    });
    lines.collect::<Vec<_>>().join("\n")
}
