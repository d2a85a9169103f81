//! What a job has a list of: each item in a frame of its own, to be added and taken away.

use super::changed;
use super::row::row_ui;
use crate::app::form::Form;
use crate::letters::capitalised;
use crate::units::BenchUnits;
use crate::workshop::{Job, Row};
use egui::{Frame, Stroke, Ui};

/// Shows the items of a job, if its kind has any.
pub(super) fn items_ui(
    ui: &mut Ui,
    job: &Job,
    rows: &[Row],
    units: BenchUnits,
    form: &mut Form<'_>,
) {
    let Some(item) = job.data.item_name() else {
        return;
    };
    ui.add_space(6.0);
    for at in 0..job.data.item_count() {
        let of_item = rows
            .iter()
            .filter(|row| row.key.item.map(usize::from) == Some(at));
        let edge = Stroke::new(1.0, form.palette.grid);
        Frame::new()
            .stroke(edge)
            .corner_radius(4.0)
            .inner_margin(6)
            .show(ui, |ui| {
                ui.set_width(ui.available_width());
                for row in of_item {
                    row_ui(ui, job, row, units, form);
                }
                let remove = ui.button(format!("Remove this {item}"));
                let remove = remove.accessible_name(format!("Remove {item} {}", at + 1));
                if remove.clicked()
                    && let Some(without) = job.without_item(at)
                {
                    form.edit(changed(without));
                }
            });
        ui.add_space(4.0);
    }
    add_ui(ui, job, item, form);
}

fn add_ui(ui: &mut Ui, job: &Job, item: &str, form: &mut Form<'_>) {
    let with = job.with_item();
    let text = format!("Add a {item}");
    let button = ui.add_enabled(with.is_some(), egui::Button::new(capitalised(&text)));
    let most = format!("a job has {} of them at most", Job::MOST_ITEMS);
    let button = crate::app::heard::tell_why_not(button, &most);
    if let Some(with) = with.filter(|_| button.clicked()) {
        form.edit(changed(with));
    }
}
