//! The list of the jobs with their states, the units of the bench, and how a job comes about.

use super::plan::listed_ui;
use super::{is_of, kinds_ui};
use crate::app::action::Action;
use crate::app::choice::{Offer, choice_ui};
use crate::app::desk::Desk;
use crate::app::drafts::CellId;
use crate::app::focus::{FocusMap, Walk};
use crate::app::form::{Form, remark};
use crate::app::heard::{describe, heading_ui, name_menu};
use crate::app::section::UNREAD;
use crate::project::{Edit, SetId, WorkshopEdit};
use crate::units::{BenchUnits, LengthUnit, TurningUnit};
use crate::workshop::{BenchItem, Job, JobState, Workshop};
use egui::{Button, RichText, Ui};

/// Shows the list; `open` is what is worked on.
pub(in crate::app) fn jobs_ui(
    ui: &mut Ui,
    desk: &Desk,
    (open, planned_for): (Option<BenchItem>, SetId),
    form: &mut Form<'_>,
) {
    let workshop = &desk.project().workshop;
    ui.add_space(4.0);
    listed_ui(ui, desk.project(), (open, planned_for), form);
    ui.add_space(4.0);
    heading_ui(ui, "Jobs of the bench");
    let mark = FocusMap::mark(ui);
    for (job, answer) in workshop.jobs().iter().zip(desk.answers()) {
        job_ui(ui, job, answer.state, open, form);
    }
    form.focus.block(Walk::One, mark, ui);
    add_ui(ui, workshop, form);
    ui.add_space(8.0);
    units_ui(ui, workshop.units, form);
    ui.add_space(8.0);
    remark(ui, CAUTION, form.palette.dim_text);
}

/// What is true of every job.
const CAUTION: &str = "The maker's figures decide. A gearbox is heavy, presses and bearings splinter: mind hands \
                       and eyes. Check every setting on the assembled box; it does not run itself in.";

fn job_ui(ui: &mut Ui, job: &Job, state: JobState, open: Option<BenchItem>, form: &mut Form<'_>) {
    let item = BenchItem::Job(job.id);
    let is_open = open == Some(item);
    let has_unread = form.drafts.has_unread_in(|cell| is_of(cell, job.id));
    let words = state.words();
    item_ui(
        ui,
        (item, is_open, has_unread),
        [job.title(), words, words],
        form,
    );
}

/// One thing that can be opened: its name, its state in few words, and what is heard of that.
pub(super) fn item_ui(
    ui: &mut Ui,
    (item, is_open, has_unread): (BenchItem, bool, bool),
    [name, state, heard]: [&str; 3],
    form: &mut Form<'_>,
) {
    // On the ground of the chosen one a dim word would be too faint.
    let (words, heard, color) = if has_unread {
        (UNREAD, UNREAD, form.palette.error)
    } else {
        (state, heard, form.palette.text)
    };
    let word = RichText::new(words).color(color);
    let button = Button::selectable(is_open, name)
        .shortcut_text(word)
        .truncate()
        .min_size(egui::vec2(ui.available_width() - 10.0, 0.0));
    let button = ui.add(button);
    describe(&button, heard);
    let button = button.accessible_name(name);
    if button.clicked() && !is_open {
        form.actions.push(Action::OpenAtBench(item));
    }
}

fn add_ui(ui: &mut Ui, workshop: &Workshop, form: &mut Form<'_>) {
    ui.add_space(4.0);
    let has_room = workshop.jobs().len() < Workshop::MOST;
    ui.add_enabled_ui(has_room, |ui| {
        ui.menu_button("Add a job…", |ui| {
            name_menu(ui, "Add a job");
            if kinds_ui(ui, false, form) {
                ui.close();
            }
        });
    });
}

/// The edit that changes to other units.
fn in_units(units: BenchUnits) -> Edit {
    Edit::Workshop(WorkshopEdit::Units(units))
}

fn units_ui(ui: &mut Ui, units: BenchUnits, form: &mut Form<'_>) {
    let lengths = LengthUnit::ALL.map(|length| Offer {
        text: length.sign(),
        is_chosen: units.length == length,
        edit: in_units(BenchUnits { length, ..units }),
    });
    let torques = TurningUnit::ALL.map(|torque| Offer {
        text: torque.sign(),
        is_chosen: units.torque == torque,
        edit: in_units(BenchUnits { torque, ..units }),
    });
    let choices = [
        (
            CellId::BenchLengths,
            "Lengths in",
            units.length.sign(),
            Vec::from(lengths),
        ),
        (
            CellId::BenchTorques,
            "Torques in",
            units.torque.sign(),
            Vec::from(torques),
        ),
    ];
    for (id, name, holds, offers) in choices {
        choice_ui(ui, (id, [name, name]), holds, offers, form);
    }
    remark(
        ui,
        "Other units can be typed behind a figure: 12 thou, 1/64 in, 15 lbf·in.",
        form.palette.dim_text,
    );
}
