//! What is valid but strange, set by set.

use super::help::close_ui;
use super::modal::{Frame, begin_anew, set_width};
use crate::app::desk::Desk;
use crate::app::heard::{heading_ui, item_ui};
use crate::app::input::Scroll;
use egui::{Role, ScrollArea, UiBuilder};

/// What stands around the list, in points.
const ROOM_BESIDE_LIST: f32 = 140.0;

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
    let shown = frame.show(ctx, |ui| {
        set_width(ui, 520.0);
        heading_ui(ui, "Findings");
        ui.add_space(4.0);
        let keys = Scroll::taken_with_arrows(ui);
        let room = ctx.content_rect().height() - ROOM_BESIDE_LIST;
        ScrollArea::vertical()
            .max_height(room)
            .min_scrolled_height(room)
            .show(ui, |ui| {
                keys.apply(ui);
                let list = UiBuilder::new()
                    .accessibility_role(Role::List)
                    .accessibility_label("Findings");
                ui.scope_builder(list, |ui| {
                    for line in &lines {
                        item_ui(ui, line);
                        ui.add_space(2.0);
                    }
                });
            });
        ui.add_space(6.0);
        close_ui(ui)
    });
    let is_closed = shown.inner || shown.is_left || shown.is_clicked_beside;
    if is_closed {
        begin_anew(ctx);
    }
    is_closed
}

/// Each finding with the name of its set.
pub(crate) fn finding_lines(desk: &Desk) -> Vec<String> {
    let sets = desk.project().sets.iter();
    let names: Vec<String> = sets.map(|c| c.set.name.to_string()).collect();
    let lines = desk.results().findings().map(|(set, finding)| match set {
        Some(at) => format!("{}: {finding}", names[at]),
        None => finding.to_string(),
    });
    lines.collect()
}
