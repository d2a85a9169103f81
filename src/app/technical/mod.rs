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
pub(super) use engine::engine_ui;
pub(super) use road::load_and_road_ui;

use super::drafts::CellId;
use crate::project::Project;

/// The first field in which two documents differ, in reading order; none where all are the same.
pub(super) fn changed_field(shown: &Project, other: &Project) -> Option<CellId> {
    let mut rows = engine::rows().chain(road::rows());
    let changed = rows.find(|row| (row.text)(shown) != (row.text)(other));
    changed.map(|row| CellId::Technical(row.cell))
}
