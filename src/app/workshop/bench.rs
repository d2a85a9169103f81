//! The open job: its form on the left, and on the right its drawing and what it comes to.

use super::answer_ui::answer_ui;
use super::drawing::drawing_ui;
use super::is_of;
use super::items::items_ui;
use super::kinds_ui;
use super::plan::plan_ui;
use super::row::row_ui;
use super::tries::{keep_ui, tries_ui};
use crate::app::action::Action;
use crate::app::desk::Desk;
use crate::app::form::Form;
use crate::app::heard::heading_ui;
use crate::project::{Edit, SetId, WorkshopEdit};
use crate::workshop::{Answer, BenchItem, Job, MAKER_DECIDES, Workshop};
use egui::{Label, RichText, Ui};

/// From this width on, in points, the form and the answer stand side by side.
const SIDE_BY_SIDE: f32 = 760.0;

/// The width of the form beside the answer, as a share of all.
const FORM: f32 = 0.58;

/// The widest form, in points: longer fields are no easier to read.
const WIDEST_FORM: f32 = 600.0;

/// The width of names before fields, in points.
const NAMES: f32 = 215.0;

/// Shows the job or the plan that is open, or how a job begins.
pub(in crate::app) fn bench_ui(
    ui: &mut Ui,
    desk: &Desk,
    (open, planned_for): (Option<BenchItem>, SetId),
    form: &mut Form<'_>,
) {
    let workshop = &desk.project().workshop;
    let plan = workshop.plan.as_ref();
    if let Some(plan) = plan.filter(|_| open == Some(BenchItem::Plan)) {
        return plan_ui(ui, (desk.project(), plan), planned_for, form);
    }
    match open_job(desk, open) {
        Some(about) => job_ui(ui, about, workshop, form),
        None => beginning_ui(ui, form),
    }
}

/// The job that is open, with its answer.
pub(super) fn open_job(desk: &Desk, open: Option<BenchItem>) -> Option<(&Job, &Answer)> {
    let jobs = desk.project().workshop.jobs();
    let is_open = |job: &Job| open == Some(BenchItem::Job(job.id));
    let place = jobs.iter().position(is_open)?;
    jobs.get(place).zip(desk.answers().get(place))
}

/// Whether the answer finds no room beside a form in that width, in points.
pub(super) fn is_narrow(width: f32) -> bool {
    width < SIDE_BY_SIDE
}

/// What the page is for, and the first job.
fn beginning_ui(ui: &mut Ui, form: &mut Form<'_>) {
    ui.vertical(|ui| {
        heading_ui(ui, "Measuring and setting up the box");
        ui.label(WHAT_FOR);
        ui.add_space(8.0);
        kinds_ui(ui, true, form);
    });
}

/// What the page is for.
const WHAT_FOR: &str = "A box that is put together from two generations is set up by measuring. Choose what is to \
                        be done; what is measured is typed here, or written on a printed sheet first.";

fn job_ui(ui: &mut Ui, about: (&Job, &Answer), workshop: &Workshop, form: &mut Form<'_>) {
    let width = ui.available_width();
    let names = std::mem::replace(&mut form.name_width, NAMES);
    if is_narrow(width) {
        // How far it is stands above, in sight.
        form_ui(ui, about.0, workshop, form);
        ui.add_space(8.0);
        told_ui(ui, about, form);
        ui.add_space(8.0);
        drawing_ui(ui, &about.0.data, form);
        tries_ui(ui, about, workshop.units, form);
    } else {
        let form_width = (width * FORM).min(WIDEST_FORM);
        ui.horizontal_top(|ui| {
            ui.vertical(|ui| {
                ui.set_width(form_width);
                form_ui(ui, about.0, workshop, form);
            });
            ui.add_space(16.0);
            ui.vertical(|ui| {
                ui.set_width(ui.available_width() - 12.0);
                drawing_ui(ui, &about.0.data, form);
                ui.add_space(6.0);
                told_ui(ui, about, form);
                tries_ui(ui, about, workshop.units, form);
            });
        });
    }
    form.name_width = names;
}

/// Everything that is typed and chosen of the job.
fn form_ui(ui: &mut Ui, job: &Job, workshop: &Workshop, form: &mut Form<'_>) {
    heading_ui(ui, job.title());
    ui.label(job.data.kind().meaning());
    ui.add_space(6.0);
    let rows = job.rows(workshop.units);
    for row in rows.iter().filter(|row| row.key.item.is_none()) {
        row_ui(ui, job, row, workshop.units, form);
    }
    keep_ui(ui, job, form);
    items_ui(ui, job, &rows, workshop.units, form);
    ui.add_space(8.0);
    ui.horizontal(|ui| {
        let sheet = ui.button("Print a sheet…");
        let sheet = sheet.on_hover_text("Opens the write-up with this job on a page for the bench");
        if sheet.clicked() {
            form.actions
                .push(Action::PrintSheet(BenchItem::Job(job.id)));
        }
        if ui.button("Remove this job").clicked() {
            form.edit(Edit::Workshop(WorkshopEdit::RemoveJob(job.id)));
        }
    });
}

/// What it comes to, whether something stands in a field that does not read, and what every job of its kind says.
fn told_ui(ui: &mut Ui, (job, answer): (&Job, &Answer), form: &mut Form<'_>) {
    let has_unread = form.drafts.has_unread_in(|cell| is_of(cell, job.id));
    answer_ui(ui, answer, has_unread, form.palette);
    let cautions = job.data.kind().cautions();
    let decides = (!cautions.is_empty()).then_some(&MAKER_DECIDES);
    for caution in cautions.iter().chain(decides) {
        ui.add(Label::new(RichText::new(*caution).small().color(form.palette.dim_text)).wrap());
    }
}
