//! The section "Load and road": the vehicle without its engine, what it carries, the road.

use super::about::About;
use super::cells::TechnicalCell;
use super::further_rows::{OF_ROAD, OF_VEHICLE};
use super::road_rows::FRONT;
use super::row::{Row, folded_ui};
use super::starting::count;
use crate::app::drafts::CellId;
use crate::app::form::{Form, remark};
use crate::app::section::{AtFirst, section_ui};
use crate::motion::{RotatingMasses, VehicleKind};
use crate::project::{DrivingData, Project, RoadData, VehicleData};
use crate::units::plain_number;
use egui::Ui;

/// All rows, in reading order.
pub(super) fn rows() -> impl Iterator<Item = &'static Row> {
    const ROWS: [&[Row]; 3] = [&FRONT, &OF_VEHICLE, &OF_ROAD];
    ROWS.into_iter().flatten()
}

/// Shows the section; it is unfolded where one of its fields is sought.
pub(super) fn load_and_road_ui(
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
    section_ui(
        ui,
        ("Load and road", AtFirst::Closed),
        needs,
        || in_short(project),
        |ui| fields_ui(ui, project, sought, form),
    );
}

/// What is known, in a few words.
fn in_short(project: &Project) -> String {
    let technical = &project.technical;
    let is_nothing = technical.vehicle == VehicleData::default()
        && technical.road == RoadData::default()
        && technical.driving == DrivingData::default();
    if is_nothing {
        return "not known".to_owned();
    }
    let vehicle = &technical.vehicle;
    let mut parts = Vec::new();
    let mass = vehicle.mass;
    let mass = mass.map(|mass| format!("{} kg", plain_number(mass.kg())));
    let kind = vehicle.kind.map(VehicleKind::name).map(str::to_owned);
    // A heading has room for one of them before it is cut.
    parts.extend(mass.or(kind));
    parts.extend(counted(vehicle));
    let load = technical.road.load_case();
    if load.extra.kg() > 0.0 {
        parts.push("laden".to_owned());
    }
    if load.trailer.is_some() {
        parts.push("trailer".to_owned());
    }
    if parts.is_empty() {
        return "in part".to_owned();
    }
    parts.join(", ")
}

/// How many starting values there are; none where there are none.
fn counted(vehicle: &VehicleData) -> Option<String> {
    match count(vehicle) {
        0 => None,
        1 => Some("1 starting value".to_owned()),
        count => Some(format!("{count} starting values")),
    }
}

fn fields_ui(ui: &mut Ui, project: &Project, sought: Option<TechnicalCell>, form: &mut Form<'_>) {
    let about = About::vehicle_of(project);
    for row in &FRONT {
        row.show(ui, about, form);
    }
    remarks_ui(ui, project, form);
    let further = [&OF_VEHICLE[..], &OF_ROAD];
    folded_ui(ui, ("Further figures", &further), about, sought, form);
}

/// What is supposed, what plays no part, what contradicts itself.
fn remarks_ui(ui: &mut Ui, project: &Project, form: &Form<'_>) {
    let technical = &project.technical;
    let vehicle = &technical.vehicle;
    if let Some(counted) = counted(vehicle) {
        let told = format!("{counted} for what is not typed");
        remark(ui, &told, form.palette.dim_text);
    }
    if let Some(unused) = unused(vehicle) {
        remark(ui, unused, form.palette.finding);
    }
    for told in supposed(project) {
        remark(ui, told, form.palette.finding);
    }
    let engine = technical.engine.inertia;
    let rotating = RotatingMasses::from_typed(vehicle.mass_factor, engine, vehicle.wheel_inertia);
    if let Err(contradiction) = rotating {
        remark(ui, &contradiction.to_string(), form.palette.finding);
    }
}

/// What is supposed that hardly holds of what was typed.
fn supposed(project: &Project) -> Vec<&'static str> {
    let vehicle = &project.technical.vehicle;
    let trailer = project.technical.road.trailer;
    let without_drag = trailer.is_some_and(|trailer| trailer.drag_area.m2() <= 0.0);
    let usual = vehicle.kind.map(|kind| kind.starting_values().driven);
    let drives_otherwise = vehicle
        .driven
        .zip(usual)
        .is_some_and(|(typed, usual)| typed != usual);
    let told = [
        (
            without_drag,
            "The drag of the trailer is not typed and counts as none.",
        ),
        (
            drives_otherwise && vehicle.front_share.is_none(),
            "The starting front share is that of another driven axle: type it where grip matters.",
        ),
    ];
    let told = told.into_iter().filter(|(is_so, _)| *is_so);
    told.map(|(_, words)| words).collect()
}

/// What was typed and plays no part.
fn unused(vehicle: &VehicleData) -> Option<&'static str> {
    let has_shape = vehicle.drag_coefficient.is_some() || vehicle.frontal_area.is_some();
    let has_parts = vehicle.drag_area.is_some() || vehicle.rolling.is_some() || has_shape;
    if vehicle.coast_down.is_some() && has_parts {
        Some("The measured road load counts, not what is typed of drag and rolling.")
    } else if vehicle.drag_area.is_some() && has_shape {
        Some("The drag area counts, not drag coefficient and frontal area.")
    } else {
        None
    }
}
