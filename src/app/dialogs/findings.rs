//! What is valid but strange, set by set.

use super::looked_at::looked_at_ui;
use super::modal::Frame;
use crate::app::desk::Desk;
use crate::app::heard::{heading_ui, item_ui};
use egui::{Role, Ui, UiBuilder};

/// Shows the findings; whether they are to be closed.
pub(crate) fn findings_ui(ctx: &egui::Context, desk: &Desk) -> bool {
    let lines = finding_lines(desk);
    let description = lines.join(". ");
    let frame = Frame {
        salt: "findings",
        name: "Findings",
        description: &description,
        is_question: false,
    };
    let heading = |ui: &mut Ui| {
        heading_ui(ui, "Findings");
        ui.add_space(4.0);
    };
    looked_at_ui(ctx, frame, heading, |ui| {
        let list = UiBuilder::new()
            .accessibility_role(Role::List)
            .accessibility_label("Findings");
        ui.scope_builder(list, |ui| {
            for line in &lines {
                item_ui(ui, line);
                ui.add_space(2.0);
            }
        });
    })
}

/// Each finding with the name of its set.
pub(crate) fn finding_lines(desk: &Desk) -> Vec<String> {
    let sets = desk.project().sets.iter();
    let names: Vec<String> = sets.map(|c| c.set.name.to_string()).collect();
    let lines = desk.findings().iter().map(|finding| match finding.set {
        Some(at) => format!("{}: {finding}", names[at]),
        None => finding.to_string(),
    });
    lines.collect()
}
