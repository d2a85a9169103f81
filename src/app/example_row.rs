//! What is open where nobody has opened anything: an example, and the way to a project of one's own.

use super::action::Action;
use super::commands::Command;
use super::desk::Desk;
use super::form::{Form, remark};
use super::heard::describe;
use egui::Ui;

/// Says that an example is open, as long as nothing of it is changed.
pub(super) fn example_row_ui(ui: &mut Ui, desk: &Desk, form: &mut Form<'_>) {
    if !desk.is_untouched_example() {
        return;
    }
    ui.horizontal_wrapped(|ui| {
        remark(ui, "An example to look around in.", form.palette.dim_text);
        let own = ui.button("Start with my own");
        let meaning = "Puts a five-speed with its final drive in its place, to be typed over";
        describe(&own, meaning);
        if own.on_hover_text(meaning).clicked() {
            form.actions.push(Action::Run(Command::New));
        }
    });
    ui.add_space(4.0);
}
