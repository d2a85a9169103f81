//! The page of the workshop: the jobs of the bench and the plan of what changes, and what is open of them.

mod answer_ui;
mod bench;
mod drawing;
mod items;
mod jobs;
mod plan;
mod row;
mod strip;
mod tries;

pub(super) use bench::bench_ui;
pub(super) use jobs::jobs_ui;
pub(super) use plan::begun_plan;
pub(super) use strip::strip_ui;

use super::action::Action;
use super::drafts::CellId;
use super::form::{Form, remark};
use crate::project::{Edit, WorkshopEdit};
use crate::workshop::{Job, JobId, JobKind};
use egui::{Button, Ui};

/// Shows the kinds of jobs that can be added, each with what it is for where there is room; whether one was chosen.
fn kinds_ui(ui: &mut Ui, has_room: bool, form: &mut Form<'_>) -> bool {
    let mut is_chosen = false;
    for kind in JobKind::ALL {
        if has_room {
            ui.add_space(4.0);
        }
        let button = ui
            .add(Button::new(kind.words()))
            .on_hover_text(kind.meaning());
        super::heard::describe(&button, kind.meaning());
        if button.clicked() {
            form.actions
                .push(Action::Edit(Edit::Workshop(WorkshopEdit::AddJob(
                    Box::new(kind.begun()),
                ))));
            is_chosen = true;
        }
        if has_room {
            remark(ui, kind.meaning(), form.palette.dim_text);
        }
    }
    is_chosen
}

/// Whether a field is one of that job.
fn is_of(cell: CellId, job: JobId) -> bool {
    matches!(cell, CellId::Job(of, _) if of == job)
}

/// The edit that puts a job in its place.
fn changed(job: Job) -> Edit {
    Edit::Workshop(WorkshopEdit::Job(Box::new(job)))
}
