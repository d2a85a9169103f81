//! The section "Speed signal", and what a set's card has of it: where the speedometer gets its turns.

use super::about::{About, Whose};
use super::cells::TechnicalCell;
use super::row::Row;
use super::speedometer_rows::{OF_READING, OF_SIGNAL, in_short, signal};
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::{Form, remark};
use crate::app::section::{AtFirst, section_ui};
use crate::project::{Candidate, Project, SetId, SignalData, SpeedometerData, View};
use egui::Ui;

/// All rows, in reading order.
pub(super) fn rows() -> impl Iterator<Item = &'static Row> {
    const ROWS: [&[Row]; 2] = [&OF_SIGNAL, &OF_READING];
    ROWS.into_iter().flatten()
}

/// Shows the section; it is unfolded where one of its fields is sought.
pub(super) fn speed_signal_ui(
    ui: &mut Ui,
    project: &Project,
    sought: Option<TechnicalCell>,
    form: &mut Form<'_>,
) {
    let is_here = |cell: TechnicalCell| rows().any(|row| row.cell == cell);
    let needs = form.needs(
        sought.is_some_and(is_here),
        |cell| matches!(cell, CellId::Technical(cell) if is_here(cell)),
    );
    let about = About::vehicle_of(project);
    section_ui(
        ui,
        ("Speed signal", AtFirst::Closed),
        needs,
        || in_short(about),
        |ui| {
            for row in rows() {
                row.show(ui, about, form);
            }
            if let Some(unused) = unused(&project.technical.speedometer) {
                remark(ui, unused, form.palette.finding);
            }
        },
    );
}

/// What was typed and plays no part.
fn unused(data: &SpeedometerData) -> Option<&'static str> {
    let has_both = data.reading.meter.is_some() && data.reading.signal_ratio.is_some();
    has_both.then_some("The odometer's own error counts, not the meter constant.")
}

/// Shows what of the signal is a set's own, once anything is known of signals or somebody looks at the
/// speedometer.
pub(in crate::app) fn own_signal_ui(
    ui: &mut Ui,
    (project, candidate): (&Project, &Candidate),
    (shown, sought): (View, Option<CellId>),
    form: &mut Form<'_>,
) {
    let is_known = project.technical.speedometer != SpeedometerData::default()
        || candidate.technical.signal != SignalData::default();
    let is_here = |cell: CellId| is_own_signal(cell, candidate.id);
    let is_sought = sought.is_some_and(is_here);
    if !is_known && shown != View::Speedometer && !is_sought {
        return;
    }
    let whose = Whose::Sets(candidate.id);
    let about = About { project, whose };
    let needs = form.needs(is_sought, is_here);
    section_ui(
        ui,
        ("Speed signal of this set", AtFirst::Closed),
        needs,
        || in_short(about),
        |ui| {
            for row in &OF_SIGNAL {
                row.show(ui, about, form);
            }
        },
    );
}

fn is_own_signal(cell: CellId, set: SetId) -> bool {
    let CellId::Set(of, SetCell::Check(cell)) = cell else {
        return false;
    };
    of == set && OF_SIGNAL.iter().any(|row| row.cell == cell)
}

/// The first field in which the own signal of a set differs between two documents.
pub(in crate::app) fn changed_signal(set: SetId, both: [&Project; 2]) -> Option<CellId> {
    let whose = Whose::Sets(set);
    let [one, other] = both.map(|project| signal(About { project, whose }));
    let cell = if one.source != other.source {
        TechnicalCell::SignalSource
    } else if one.drive != other.drive {
        TechnicalCell::SignalDrive
    } else {
        return None;
    };
    Some(whose.field(cell))
}
