//! One row of technical data: a name, and a field or a choice behind it.

use super::cells::TechnicalCell;
use super::choice::choice_ui;
use super::starting::hint_of;
use crate::app::drafts::CellId;
use crate::app::form::{Field, Form};
use crate::app::heard::tell_folded;
use crate::app::typed::Reading;
use crate::project::{DrivingData, Edit, EngineData, Project, RoadData, VehicleData};
use crate::units::plain_number;
use egui::{CollapsingHeader, Ui};

/// A row of a section.
pub(super) struct Row {
    /// Which field it is.
    pub cell: TechnicalCell,
    /// What stands before the field, but for the unit of road speeds.
    pub name: &'static str,
    /// What the document says; empty, or what is supposed, where nothing is known.
    pub text: fn(&Project) -> String,
    /// How it is answered.
    pub answer: Answer,
}

/// How a row is answered.
pub(super) enum Answer {
    /// By typing: the hint where nothing else stands in, and what a text means.
    Typed(&'static str, fn(&Project, &str) -> Reading<Edit>),
    /// The same in several lines, the name above.
    Lines(&'static str, fn(&Project, &str) -> Reading<Edit>),
    /// By choosing one of several.
    Chosen(fn(&Project) -> Vec<Offer>),
}

/// One of the things that can be chosen.
pub(super) struct Offer {
    /// What it says.
    pub text: &'static str,
    /// Whether it is the one that holds.
    pub is_chosen: bool,
    /// What choosing it does.
    pub edit: Edit,
}

impl Row {
    /// Shows the row.
    pub(super) fn show(&self, ui: &mut Ui, project: &Project, form: &mut Form<'_>) {
        let id = CellId::Technical(self.cell);
        let name = self.name_in(project);
        let text = (self.text)(project);
        match &self.answer {
            Answer::Typed(hint, read) | Answer::Lines(hint, read) => {
                let stands_in = text.is_empty().then(|| hint_of(self.cell, project));
                let hint = stands_in.flatten().unwrap_or_else(|| (*hint).to_owned());
                let field = Field {
                    id,
                    name: &name,
                    text: &text,
                    hint: &hint,
                };
                let read = |text: &str| read(project, text);
                if matches!(self.answer, Answer::Lines(..)) {
                    form.lines_field(ui, &field, LINES, &read);
                } else {
                    form.field(ui, &field, &read);
                }
            }
            Answer::Chosen(offers) => choice_ui(ui, (id, &name), &text, offers(project), form),
        }
    }

    /// Its name, with the project's unit of road speeds where it is one.
    fn name_in(&self, project: &Project) -> String {
        match self.cell {
            TechnicalCell::Headwind => format!("{}, {}", self.name, project.units.sign()),
            _ => self.name.to_owned(),
        }
    }
}

/// Shows rows that few people need beneath a heading of their own, folded until one is sought.
pub(super) fn folded_ui(
    ui: &mut Ui,
    (heading, rows): (&str, &[&[Row]]),
    project: &Project,
    sought: Option<TechnicalCell>,
    form: &mut Form<'_>,
) {
    let rows = || rows.iter().copied().flatten();
    let must_be_open = sought.is_some_and(|cell| rows().any(|row| row.cell == cell));
    let section = CollapsingHeader::new(heading)
        .default_open(false)
        .open(must_be_open.then_some(true))
        .show(ui, |ui| {
            for row in rows() {
                row.show(ui, project, form);
            }
        });
    tell_folded(&section);
}

/// How many lines a field of several shows before it grows.
const LINES: usize = 3;

/// A number as it stands in a field, or nothing.
pub(super) fn shown(number: Option<f64>) -> String {
    number.map_or_else(String::new, plain_number)
}

/// The edit that puts what was read into the data of the vehicle.
pub(super) fn of_vehicle<T>(
    project: &Project,
    read: Reading<T>,
    put: fn(&mut VehicleData, T),
) -> Reading<Edit> {
    let read = read?;
    Ok(vehicle_with(project, |vehicle| put(vehicle, read)))
}

/// The edit that changes the data of the vehicle.
pub(super) fn vehicle_with(project: &Project, change: impl FnOnce(&mut VehicleData)) -> Edit {
    let mut vehicle = project.technical.vehicle.clone();
    change(&mut vehicle);
    Edit::VehicleData(Box::new(vehicle))
}

/// The edit that puts what was read into the data of the engine.
pub(super) fn of_engine<T>(
    project: &Project,
    read: Reading<T>,
    put: fn(&mut EngineData, T),
) -> Reading<Edit> {
    let read = read?;
    Ok(engine_with(project, |engine| put(engine, read)))
}

/// The edit that changes the data of the engine.
pub(super) fn engine_with(project: &Project, change: impl FnOnce(&mut EngineData)) -> Edit {
    let mut engine = project.technical.engine.clone();
    change(&mut engine);
    Edit::EngineData(Box::new(engine))
}

/// The edit that puts what was read into load case and road.
pub(super) fn of_road<T>(
    project: &Project,
    read: Reading<T>,
    put: fn(&mut RoadData, T),
) -> Reading<Edit> {
    let mut road = project.technical.road.clone();
    put(&mut road, read?);
    Ok(Edit::RoadData(road))
}

/// The edit that puts what was read into the data of the driving.
pub(super) fn of_driving<T>(
    project: &Project,
    read: Reading<T>,
    put: fn(&mut DrivingData, T),
) -> Reading<Edit> {
    let mut driving = project.technical.driving.clone();
    put(&mut driving, read?);
    Ok(Edit::DrivingData(driving))
}
