//! The sections of technical data, closed until somebody wants them: engine, load and road.

mod cells;
mod choice;
mod engine;
mod engine_rows;
mod further_rows;
mod road;
mod road_rows;
mod row;
mod starting;

pub(super) use cells::TechnicalCell;

use super::drafts::CellId;
use super::form::Form;
use crate::project::Project;
use egui::Ui;

/// Shows both sections; the one that holds what is sought is unfolded.
pub(super) fn technical_ui(
    ui: &mut Ui,
    project: &Project,
    sought: Option<CellId>,
    form: &mut Form<'_>,
) {
    let sought = match sought {
        Some(CellId::Technical(cell)) => Some(cell),
        _ => None,
    };
    engine::engine_ui(ui, project, sought, form);
    road::load_and_road_ui(ui, project, sought, form);
}

/// The first field in which two documents differ, in reading order; none where all are the same.
pub(super) fn changed_field(shown: &Project, other: &Project) -> Option<CellId> {
    let mut rows = engine::rows().chain(road::rows());
    let changed = rows.find(|row| (row.text)(shown) != (row.text)(other));
    changed.map(|row| CellId::Technical(row.cell))
}
