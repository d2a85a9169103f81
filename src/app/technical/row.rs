//! One row of technical data: a name, and a field or a choice behind it.

use super::about::About;
use super::cells::TechnicalCell;
use super::starting::{NOT_KNOWN, beside_typed, hint_of};
use crate::app::choice::{Offer, choice_ui};
use crate::app::form::{Field, Form};
use crate::app::section::part_ui;
use crate::app::typed::Reading;
use crate::project::{DrivingData, Edit, EngineData, RoadData, VehicleData};
use crate::units::plain_number;
use egui::Ui;

/// A row of a section.
pub(super) struct Row {
    /// Which field it is.
    pub cell: TechnicalCell,
    /// What stands before the field, but for the unit of road speeds.
    pub name: &'static str,
    /// What the document says; empty, or what is supposed, where nothing is known.
    pub text: fn(About<'_>) -> String,
    /// How it is answered.
    pub answer: Answer,
}

/// How a row is answered.
pub(super) enum Answer {
    /// By typing: the hint where nothing else stands in, and what a text means.
    Typed(&'static str, fn(About<'_>, &str) -> Reading<Edit>),
    /// The same in several lines, the name above.
    Lines(&'static str, fn(About<'_>, &str) -> Reading<Edit>),
    /// By choosing one of several.
    Chosen(fn(About<'_>) -> Vec<Offer>),
}

impl Row {
    /// Shows the row.
    pub(super) fn show(&self, ui: &mut Ui, about: About<'_>, form: &mut Form<'_>) {
        let id = about.whose.field(self.cell);
        let shown = self.name_in(about);
        let heard = about.named(&shown);
        let text = (self.text)(about);
        match &self.answer {
            Answer::Typed(hint, read) | Answer::Lines(hint, read) => {
                let said = if text.is_empty() {
                    hint_of(self.cell, about.project)
                } else {
                    beside_typed(self.cell, about.project).map(|told| match *hint {
                        NOT_KNOWN => told,
                        hint => format!("{hint}; {told}"),
                    })
                };
                let hint = said.unwrap_or_else(|| (*hint).to_owned());
                let field = Field {
                    id,
                    name: &heard,
                    text: &text,
                    hint: &hint,
                };
                let read = |text: &str| read(about, text);
                if matches!(self.answer, Answer::Lines(..)) {
                    form.lines_field(ui, (&shown, &field), LINES, &read);
                } else {
                    form.named_field(ui, (&shown, &field), &read);
                }
            }
            Answer::Chosen(offers) => {
                choice_ui(ui, (id, [&shown, &heard]), &text, offers(about), form);
            }
        }
    }

    /// Its name, with the project's unit of road speeds where it is one.
    fn name_in(&self, about: About<'_>) -> String {
        match self.cell {
            TechnicalCell::Headwind | TechnicalCell::TopSpeed => {
                format!("{}, {}", self.name, about.project.units.sign())
            }
            _ => self.name.to_owned(),
        }
    }
}

/// Shows rows that few people need beneath a heading of their own, folded until one is sought.
pub(super) fn folded_ui(
    ui: &mut Ui,
    (heading, rows): (&str, &[&[Row]]),
    about: About<'_>,
    sought: Option<TechnicalCell>,
    form: &mut Form<'_>,
) {
    let rows = || rows.iter().copied().flatten();
    let is_sought = sought.is_some_and(|cell| rows().any(|row| row.cell == cell));
    let needs = form.needs(is_sought, |cell| {
        rows().any(|row| about.whose.field(row.cell) == cell)
    });
    let heard = about.named(heading);
    part_ui(ui, (heading, [heading, &heard]), needs, |ui| {
        for row in rows() {
            row.show(ui, about, form);
        }
    });
}

/// How many lines a field of several shows before it grows.
const LINES: usize = 3;

/// A number as it stands in a field, or nothing.
pub(super) fn shown(number: Option<f64>) -> String {
    number.map_or_else(String::new, plain_number)
}

/// The edit that puts what was read into the data of the vehicle.
pub(super) fn of_vehicle<T>(
    about: About<'_>,
    read: Reading<T>,
    put: fn(&mut VehicleData, T),
) -> Reading<Edit> {
    let read = read?;
    Ok(vehicle_with(about, |vehicle| put(vehicle, read)))
}

/// The edit that changes the data of the vehicle.
pub(super) fn vehicle_with(about: About<'_>, change: impl FnOnce(&mut VehicleData)) -> Edit {
    let mut vehicle = about.project.technical.vehicle.clone();
    change(&mut vehicle);
    Edit::VehicleData(Box::new(vehicle))
}

/// The edit that puts what was read into the data of the engine.
pub(super) fn of_engine<T>(
    about: About<'_>,
    read: Reading<T>,
    put: fn(&mut EngineData, T),
) -> Reading<Edit> {
    let read = read?;
    Ok(about.engine_with(|engine| put(engine, read)))
}

/// The edit that puts what was read into load case and road.
pub(super) fn of_road<T>(
    about: About<'_>,
    read: Reading<T>,
    put: fn(&mut RoadData, T),
) -> Reading<Edit> {
    let mut road = about.project.technical.road.clone();
    put(&mut road, read?);
    Ok(Edit::RoadData(road))
}

/// The edit that puts what was read into the data of the driving.
pub(super) fn of_driving<T>(
    about: About<'_>,
    read: Reading<T>,
    put: fn(&mut DrivingData, T),
) -> Reading<Edit> {
    let mut driving = about.project.technical.driving.clone();
    put(&mut driving, read?);
    Ok(Edit::DrivingData(driving))
}
