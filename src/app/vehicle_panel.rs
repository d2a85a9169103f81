//! The vehicle: title, tyre, engine speeds, marks, note.

use super::desk::Desk;
use super::dialogs::finders::{Finder, WishedAt};
use super::drafts::CellId;
use super::form::{Field, Form, remark};
use super::menus::field_menu_ui;
use super::note_field::note_field_ui;
use super::section::{AtFirst, part_ui, section_ui};
use super::typed;
use crate::gearing::{EngineSpeed, Tyre};
use crate::project::{Edit, Project, SetId};
use crate::units::{mark_text, mm_text, plain_number};
use egui::Ui;

/// Shows the fields of the vehicle; the one that is sought is unfolded.
pub(super) fn vehicle_panel_ui(
    ui: &mut Ui,
    desk: &Desk,
    sought: Option<CellId>,
    form: &mut Form<'_>,
) {
    let project = desk.project();
    // What is found for the tyre is found for a set.
    let about = desk.open_card.unwrap_or_else(|| project.sets.baseline().id);
    section_ui(
        ui,
        ("Vehicle", AtFirst::Open),
        form.needs(
            sought.is_some_and(CellId::is_of_vehicle),
            CellId::is_of_vehicle,
        ),
        || in_short(project),
        |ui| fields_ui(ui, (project, about), sought, form),
    );
}

/// The vehicle in a few words.
fn in_short(project: &Project) -> String {
    let redline = plain_number(project.engine.redline.rpm());
    format!("{}, redline {redline} rpm", project.tyre)
}

fn fields_ui(
    ui: &mut Ui,
    (project, about): (&Project, SetId),
    sought: Option<CellId>,
    form: &mut Form<'_>,
) {
    let title = project.title.as_ref().map(ToString::to_string);
    let field = Field {
        id: CellId::Title,
        name: "Title",
        text: &title.unwrap_or_default(),
        hint: "what it is about",
    };
    form.field(ui, &field, &|text| {
        typed::optional(text, typed::name).map(Edit::Title)
    });
    tyre_ui(ui, project, about, form);
    engine_ui(ui, project, form);
    marks_ui(ui, project, form);
    let is_here = |cell: CellId| matches!(cell, CellId::Date | CellId::Note);
    let needs = form.needs(sought.is_some_and(is_here), is_here);
    part_ui(ui, ("date and note", ["Date and note"; 2]), needs, |ui| {
        note_ui(ui, project, form);
    });
}

fn tyre_ui(ui: &mut Ui, project: &Project, about: SetId, form: &mut Form<'_>) {
    let text = project.tyre.to_string();
    let field = Field {
        id: CellId::Tyre,
        name: "Tyre",
        text: &text,
        hint: "195/65 R 15, or circumference 1935 mm",
    };
    form.field(ui, &field, &|text| typed::tyre(text).map(Edit::Tyre));
    let finders = [Finder::Wish(about, WishedAt::TyreOfVehicle)];
    let of = (CellId::Tyre.widget(), field.name);
    field_menu_ui(ui, of, &finders, form.actions);
    tyre_reading_ui(ui, &project.tyre, form);
}

/// What a tyre was read as, how well it is known, and what must be said beside it.
pub(super) fn tyre_reading_ui(ui: &mut Ui, tyre: &Tyre, form: &Form<'_>) {
    let mut parts = Vec::new();
    if let Some(diameter_mm) = tyre.overall_diameter_mm() {
        parts.push(format!("{} mm high", mm_text(diameter_mm)));
    }
    let tolerance = if tyre.tolerance().is_some() {
        " (−2.5 to +1.5 %)"
    } else {
        ""
    };
    let circumference = mm_text(tyre.rolling_circumference_mm());
    parts.push(format!("rolls {circumference} mm a turn{tolerance}"));
    let per_km = plain_number(tyre.revs_per_km().round());
    let per_mile = plain_number(tyre.revs_per_mile().round());
    parts.push(format!("{per_km} revs per km, {per_mile} per mile"));
    remark(ui, &parts.join(", "), form.palette.dim_text);
    if tyre.tolerance().is_some() {
        let loaded = "A loaded tyre rolls about 3 % less than π × its diameter.";
        remark(ui, loaded, form.palette.dim_text);
    }
    for notice in tyre.notices() {
        remark(ui, &notice.to_string(), form.palette.finding);
    }
}

fn engine_ui(ui: &mut Ui, project: &Project, form: &mut Form<'_>) {
    let engine = &project.engine;
    let text =
        |speed: Option<EngineSpeed>| speed.map_or_else(String::new, |n| plain_number(n.rpm()));
    let redline = text(Some(engine.redline));
    let field = Field {
        id: CellId::Redline,
        name: "Redline, rpm",
        text: &redline,
        hint: "the governed speed of a diesel",
    };
    form.field(ui, &field, &|text| typed::redline(text).map(Edit::Redline));
    let lowest = text(engine.lowest_useful);
    let field = Field {
        id: CellId::LowestUseful,
        name: "Lowest useful",
        text: &lowest,
        hint: "below it the engine labours",
    };
    form.field(ui, &field, &|text| {
        typed::optional(text, |text| typed::engine_speed(typed::Engine::ANY, text))
            .map(Edit::LowestUseful)
    });
    let idle = text(engine.idle);
    let field = Field {
        id: CellId::Idle,
        name: "Idle",
        text: &idle,
        hint: "not known",
    };
    form.field(ui, &field, &|text| {
        typed::optional(text, |text| typed::engine_speed(typed::Engine::IDLE, text)).map(Edit::Idle)
    });
}

fn marks_ui(ui: &mut Ui, project: &Project, form: &mut Form<'_>) {
    let unit = project.units;
    let marked = &project.marked_road_speeds;
    let figures: Vec<String> = marked
        .as_slice()
        .iter()
        .map(|v| mark_text(v.kmh(), unit))
        .collect();
    let speeds = figures.join(", ");
    let field = Field {
        id: CellId::MarkedRoadSpeeds,
        name: &format!("Mark, {}", unit.sign()),
        text: &speeds,
        hint: "as 90, 110: lines in the diagram",
    };
    form.field(ui, &field, &|text| {
        typed::road_speeds(text, unit, marked).map(Edit::MarkedRoadSpeeds)
    });
    list_reading_ui(ui, CellId::MarkedRoadSpeeds, &figures, form);
    let engine_speeds = project.marked_engine_speeds.as_slice().iter();
    let figures: Vec<String> = engine_speeds.map(|n| plain_number(n.rpm())).collect();
    let engine_speeds = figures.join(", ");
    let field = Field {
        id: CellId::MarkedEngineSpeeds,
        name: "Mark, rpm",
        text: &engine_speeds,
        hint: "as 2000: lines in the diagram",
    };
    form.field(ui, &field, &|text| {
        typed::engine_speeds(text).map(Edit::MarkedEngineSpeeds)
    });
    list_reading_ui(ui, CellId::MarkedEngineSpeeds, &figures, form);
}

/// How a list that is being typed was read, where a comma might mean two things.
fn list_reading_ui(ui: &mut Ui, field: CellId, figures: &[String], form: &Form<'_>) {
    let typed = form
        .drafts
        .get(field)
        .filter(|draft| draft.problem.is_none());
    if let Some(reading) = typed.and_then(|draft| typed::read_as(&draft.text, figures)) {
        remark(ui, &reading, form.palette.dim_text);
    }
}

fn note_ui(ui: &mut Ui, project: &Project, form: &mut Form<'_>) {
    let date = project.date.as_ref().map(ToString::to_string);
    let field = Field {
        id: CellId::Date,
        name: "Date",
        text: &date.unwrap_or_default(),
        hint: "printed in the write-up",
    };
    form.field(ui, &field, &|text| {
        typed::optional(text, typed::date).map(Edit::Date)
    });
    note_field_ui(ui, project, form);
}
