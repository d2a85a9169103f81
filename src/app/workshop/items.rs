//! What a job has a list of: each item in a frame of its own, to be added and taken away.

use super::changed;
use super::row::row_ui;
use crate::app::drafts::CellId;
use crate::app::form::Form;
use crate::letters::capitalised;
use crate::units::BenchUnits;
use crate::workshop::{FieldKey, Job, Row, RowAnswer};
use egui::{Frame, RichText, Sides, Stroke, Ui};

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
                head_ui(ui, job, (item, at), form);
                for row in of_item {
                    row_ui(ui, job, row, units, form);
                }
            });
        ui.add_space(4.0);
    }
    add_ui(ui, job, (item, units), form);
}

/// The number of an item, and the button that takes it away: above its fields, so that Enter in the last
/// of them goes on to the next item and never to what removes this one.
fn head_ui(ui: &mut Ui, job: &Job, (item, at): (&str, usize), form: &mut Form<'_>) {
    let number = format!("{item} {}", at + 1);
    Sides::new().show(
        ui,
        |ui| ui.label(RichText::new(capitalised(&number)).strong()),
        |ui| {
            let remove = ui.button(format!("Remove this {item}"));
            let remove = remove.accessible_name(format!("Remove {number}"));
            if remove.clicked()
                && let Some(without) = job.without_item(at)
            {
                form.edit(changed(without));
            }
        },
    );
}

fn add_ui(ui: &mut Ui, job: &Job, (item, units): (&str, BenchUnits), form: &mut Form<'_>) {
    let with = job.with_item();
    let text = format!("Add a {item}");
    let button = ui.add_enabled(with.is_some(), egui::Button::new(capitalised(&text)));
    let most = format!("a job has {} of them at most", Job::MOST_ITEMS);
    let button = crate::app::heard::tell_why_not(button, &most);
    if let Some(with) = with.filter(|_| button.clicked()) {
        if let Some(first) = first_of_last(&with, units) {
            form.focus.want(CellId::Job(job.id, first).widget());
        }
        form.edit(changed(with));
    }
}

/// The first field of the last item, which is typed in once the item has come.
fn first_of_last(job: &Job, units: BenchUnits) -> Option<FieldKey> {
    let last = job.data.item_count().checked_sub(1)?;
    let rows = job.rows(units);
    let is_typed = |row: &&Row| matches!(row.answer, RowAnswer::Typed(_));
    let of_last = |row: &&Row| row.key.item.map(usize::from) == Some(last);
    rows.iter()
        .filter(of_last)
        .find(is_typed)
        .map(|row| row.key)
}
