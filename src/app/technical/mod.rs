//! The sections of technical data, closed until somebody wants them: engine, load and road, speed signal,
//! and what of them is a set's own.

mod about;
mod cells;
mod checks;
mod curve;
mod efficiencies;
mod engine;
mod engine_rows;
mod further_rows;
mod of_set;
mod road;
mod road_rows;
mod row;
mod starting;

pub(super) use cells::TechnicalCell;
pub(super) use checks::{changed_check, own_checks_ui};
pub(super) use curve::is_in_hand as is_point_in_hand;
pub(super) use efficiencies::changed_efficiency;
pub(super) use of_set::of_set_ui;

use super::drafts::CellId;
use super::form::Form;
use crate::project::{Project, SetId, View};
pub(super) use about::Whose;

use about::About;
use egui::Ui;
use row::Row;

/// Shows the sections; the one that holds what is sought is unfolded.
pub(super) fn technical_ui(
    ui: &mut Ui,
    project: &Project,
    (shown, sought): (View, Option<CellId>),
    form: &mut Form<'_>,
) {
    let sought = match sought {
        Some(CellId::Technical(cell)) => Some(cell),
        _ => None,
    };
    engine::engine_ui(ui, About::vehicle_of(project), sought, form);
    road::load_and_road_ui(ui, project, sought, form);
    checks::checks_ui(ui, project, (shown, sought), form);
}

/// The first field in which the technical data of two documents differ, in reading order; none where
/// all are the same.
pub(super) fn changed_field(shown: &Project, other: &Project) -> Option<CellId> {
    let rows = engine::rows().chain(road::rows());
    let rows = rows.chain(checks::rows());
    changed_row(rows, Whose::Vehicles, [shown, other])
}

/// The first field in which the own engine of a set differs between two documents; none where it has
/// one in one of them only.
pub(super) fn changed_engine_field(set: SetId, both: [&Project; 2]) -> Option<CellId> {
    let has_own = |project: &Project| {
        let candidate = project.sets.get(set);
        candidate.is_some_and(|candidate| candidate.technical.engine.is_some())
    };
    if !both.into_iter().all(has_own) {
        return None;
    }
    changed_row(engine::rows(), Whose::Sets(set), both)
}

/// Whose torque curve a field holds, where it is the field of one.
pub(super) fn curve_in(field: CellId) -> Option<Whose> {
    let whose = match field {
        CellId::Set(set, _) => Whose::Sets(set),
        _ => Whose::Vehicles,
    };
    (whose.field(TechnicalCell::TorqueCurve) == field).then_some(whose)
}

/// The field of the one point in which a torque curve differs between two documents, where the fields of
/// its points were typed in last.
pub(super) fn changed_point_field(
    whose: Whose,
    typed_in_last: CellId,
    both: [&Project; 2],
) -> Option<CellId> {
    let both = both.map(|project| About { project, whose });
    curve::changed_point(both).filter(|_| curve::is_point(whose, typed_in_last))
}

fn changed_row(
    mut rows: impl Iterator<Item = &'static Row>,
    whose: Whose,
    both: [&Project; 2],
) -> Option<CellId> {
    let changed = rows.find(|row| {
        let [one, other] = both.map(|project| (row.text)(About { project, whose }));
        one != other
    });
    changed.map(|row| whose.field(row.cell))
}
