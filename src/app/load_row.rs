//! What is carried and met, on which road? One click each, above the diagrams that depend on it.

use super::action::Action;
use super::drafts::CellId;
use super::technical::TechnicalCell;
use crate::motion::Grade;
use crate::project::{Edit, Project, RoadData, SetAside};
use crate::units::{mark_text, plain_number};
use egui::Ui;

/// A part of the load case.
struct Part {
    /// What it is called where it is not known.
    name: &'static str,
    /// What it is called with its figure; none where it is not known.
    known: Option<String>,
    /// Whether it is left out for now.
    is_aside: bool,
    /// Leaves it out, or no longer.
    put: fn(&mut SetAside, bool),
    /// The field that it is typed in.
    field: TechnicalCell,
}

/// Shows the load case and the roads to choose from.
pub(super) fn load_row_ui(ui: &mut Ui, project: &Project, actions: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        let parts = parts(project);
        empty_ui(ui, &project.technical.road, &parts, actions);
        for part in &parts {
            part_ui(ui, &project.technical.road, part, actions);
        }
        ui.separator();
        grades_ui(ui, &project.technical.road, actions);
    });
}

fn parts(project: &Project) -> [Part; 3] {
    let road = &project.technical.road;
    let load = road.load.filter(|load| load.kg() > 0.0);
    let wind = road.headwind.filter(|wind| wind.kmh() != 0.0);
    [
        Part {
            name: "Laden",
            known: load.map(|load| format!("Laden {} kg", plain_number(load.kg()))),
            is_aside: road.aside.load,
            put: |aside, is_aside| aside.load = is_aside,
            field: TechnicalCell::Load,
        },
        Part {
            name: "Trailer",
            known: road.trailer.map(|trailer| {
                let kg = plain_number(trailer.mass.kg());
                format!("Trailer {kg} kg")
            }),
            is_aside: road.aside.trailer,
            put: |aside, is_aside| aside.trailer = is_aside,
            field: TechnicalCell::TrailerMass,
        },
        Part {
            name: "Headwind",
            known: wind.map(|wind| {
                let what = if wind.kmh() < 0.0 {
                    "Tailwind"
                } else {
                    "Headwind"
                };
                let speed = mark_text(wind.kmh().abs(), project.units);
                format!("{what} {speed} {}", project.units.sign())
            }),
            is_aside: road.aside.headwind,
            put: |aside, is_aside| aside.headwind = is_aside,
            field: TechnicalCell::Headwind,
        },
    ]
}

/// The vehicle as it weighs by itself, in still air.
fn empty_ui(ui: &mut Ui, road: &RoadData, parts: &[Part], actions: &mut Vec<Action>) {
    let counts = |part: &Part| part.known.is_some() && !part.is_aside;
    let is_empty = !parts.iter().any(counts);
    let button = ui.selectable_label(is_empty, "Empty");
    let button = button.on_hover_text("Nothing carried or pulled, still air");
    if button.clicked() && !is_empty {
        let all = |aside: &mut SetAside| {
            for part in parts {
                (part.put)(aside, part.known.is_some());
            }
        };
        actions.push(Action::Edit(with_aside(road, all)));
    }
}

fn part_ui(ui: &mut Ui, road: &RoadData, part: &Part, actions: &mut Vec<Action>) {
    let Some(known) = &part.known else {
        let button = ui.selectable_label(false, format!("{}…", part.name));
        let button = button.on_hover_text("Not typed yet: opens its field");
        if button.clicked() {
            actions.push(Action::Seek(CellId::Technical(part.field)));
        }
        return;
    };
    let button = ui.selectable_label(!part.is_aside, known);
    let button = button.on_hover_text("Counts in all figures; click to leave it out, or no longer");
    if button.clicked() {
        let edit = with_aside(road, |aside| (part.put)(aside, !part.is_aside));
        actions.push(Action::Edit(edit));
    }
}

fn with_aside(road: &RoadData, change: impl FnOnce(&mut SetAside)) -> Edit {
    let mut road = road.clone();
    change(&mut road.aside);
    Edit::RoadData(road)
}

/// The roads whose load is shown; all figures are for the chosen one.
fn grades_ui(ui: &mut Ui, road: &RoadData, actions: &mut Vec<Action>) {
    let present = road.grade.unwrap_or(Grade::LEVEL);
    for grade in road.shown_grades() {
        let is_chosen = grade == present;
        let button = ui.selectable_label(is_chosen, words(grade));
        let button = button.on_hover_text("All figures are for this road");
        if button.clicked() && !is_chosen {
            let road = RoadData {
                grade: Some(grade).filter(|grade| *grade != Grade::LEVEL),
                ..road.clone()
            };
            actions.push(Action::Edit(Edit::RoadData(road)));
        }
    }
    let button = ui.selectable_label(false, "Grades…");
    let button = button.on_hover_text("Other roads to choose from: opens their field");
    if button.clicked() {
        actions.push(Action::Seek(CellId::Technical(TechnicalCell::Grades)));
    }
}

/// `Level`, `4 %`.
fn words(grade: Grade) -> String {
    if grade == Grade::LEVEL {
        "Level".to_owned()
    } else {
        format!("{} %", plain_number(grade.percent()))
    }
}
