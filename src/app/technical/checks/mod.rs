//! The sections of what the road checks ask for: speed signal, limits and a second driven axle; and what of
//! them is a set's own.

mod axle_rows;
mod limits_rows;
mod own;
mod speedometer_rows;

use super::about::{About, Whose};
use super::cells::TechnicalCell;
use super::row::Row;
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::{Form, remark};
use crate::app::section::{AtFirst, section_ui};
use crate::project::{
    Candidate, LimitsData, Project, SecondAxleData, SetChecks, SetId, SpeedometerData, View,
};
use axle_rows::OF_SECOND_AXLE;
use egui::Ui;
use limits_rows::{OF_BOX_AND_SHAFTS, OF_TYRES};
use own::{OF_SET, own};
use speedometer_rows::{OF_READING, OF_SIGNAL};

/// A section of the left column.
struct Section {
    name: &'static str,
    /// Its rows, in reading order.
    rows: &'static [&'static [Row]],
    /// What is known, in a few words.
    in_short: fn(About<'_>) -> String,
    /// Whether it is there for everybody, or for those only who look at the checks or know of it.
    is_for_all: bool,
    /// Whether anything of it is known.
    is_known: fn(&Project) -> bool,
    /// What was typed and plays no part.
    unused: fn(&Project) -> Option<&'static str>,
}

/// Those of the vehicle, from the top.
const SECTIONS: [Section; 3] = [
    Section {
        name: "Speed signal",
        rows: &[&OF_SIGNAL, &OF_READING],
        in_short: speedometer_rows::in_short,
        is_for_all: true,
        is_known: |project| project.technical.speedometer != SpeedometerData::default(),
        unused: |project| {
            let reading = &project.technical.speedometer.reading;
            let has_both = reading.meter.is_some() && reading.signal_ratio.is_some();
            has_both.then_some("The odometer's own error counts, not the meter constant.")
        },
    },
    Section {
        name: "Limits",
        rows: &[&OF_TYRES, &OF_BOX_AND_SHAFTS],
        in_short: limits_rows::in_short,
        is_for_all: false,
        is_known: |project| project.technical.limits != LimitsData::default(),
        unused: |_| None,
    },
    Section {
        name: "Second driven axle",
        rows: &[&OF_SECOND_AXLE],
        in_short: axle_rows::in_short,
        is_for_all: false,
        is_known: |project| project.technical.second_axle != SecondAxleData::default(),
        unused: |project| {
            let data = &project.technical.second_axle;
            let is_typed = *data != SecondAxleData::default();
            let has_one = data.final_drive.is_some()
                || project
                    .sets
                    .iter()
                    .any(|set| own(set).second_final_drive.is_some());
            (is_typed && !has_one).then_some("Nothing is checked without its final drive.")
        },
    },
];

/// All rows of the vehicle, in reading order.
pub(super) fn rows() -> impl Iterator<Item = &'static Row> {
    let rows = SECTIONS.iter().flat_map(|section| section.rows);
    rows.copied().flatten()
}

/// Shows the sections; one is unfolded where one of its fields is sought.
pub(super) fn checks_ui(
    ui: &mut Ui,
    project: &Project,
    (shown, sought): (View, Option<TechnicalCell>),
    form: &mut Form<'_>,
) {
    let about = About::vehicle_of(project);
    for section in &SECTIONS {
        let rows = || section.rows.iter().copied().flatten();
        let is_here = |cell: TechnicalCell| rows().any(|row| row.cell == cell);
        let needs = form.needs(
            sought.is_some_and(is_here),
            |cell| matches!(cell, CellId::Technical(cell) if is_here(cell)),
        );
        let is_wanted = section.is_for_all || shown == View::Speedometer;
        let is_needed = needs.must_be_open || needs.error.is_some();
        if !is_wanted && !is_needed && !(section.is_known)(project) {
            continue;
        }
        section_ui(
            ui,
            (section.name, AtFirst::Closed),
            needs,
            || (section.in_short)(about),
            |ui| {
                for row in rows() {
                    row.show(ui, about, form);
                }
                if let Some(unused) = (section.unused)(project) {
                    remark(ui, unused, form.palette.finding);
                }
            },
        );
    }
}

/// Shows what is a set's own, once anything is known of what is checked or somebody looks at it.
pub(in crate::app) fn own_checks_ui(
    ui: &mut Ui,
    (project, candidate): (&Project, &Candidate),
    (shown, sought): (View, Option<CellId>),
    form: &mut Form<'_>,
) {
    let technical = &project.technical;
    let is_known = technical.speedometer != SpeedometerData::default()
        || technical.limits != LimitsData::default()
        || technical.second_axle != SecondAxleData::default()
        || *own(candidate) != SetChecks::default();
    let is_here = |cell: CellId| is_own(cell, candidate.id);
    let is_sought = sought.is_some_and(is_here);
    if !is_known && shown != View::Speedometer && !is_sought {
        return;
    }
    let whose = Whose::Sets(candidate.id);
    let about = About { project, whose };
    let needs = form.needs(is_sought, is_here);
    section_ui(
        ui,
        ("Checks of this set", AtFirst::Closed),
        needs,
        || own::in_short(about, candidate),
        |ui| {
            for row in OF_SET.iter().copied().flatten() {
                row.show(ui, about, form);
            }
        },
    );
}

fn is_own(cell: CellId, set: SetId) -> bool {
    matches!(cell, CellId::Set(of, SetCell::Check(_)) if of == set)
}

/// The first field in which what is a set's own of the checks differs between two documents.
pub(in crate::app) fn changed_check(set: SetId, both: [&Project; 2]) -> Option<CellId> {
    let rows = OF_SET.iter().copied().flatten();
    super::changed_row(rows, Whose::Sets(set), both)
}
