//! The page of the workshop: the jobs of the bench, and the one that is open as a form with its answer.

mod answer_ui;
mod bench;
mod drawing;
mod items;
mod jobs;
mod row;

pub(super) use bench::bench_ui;
pub(super) use jobs::jobs_ui;

use super::action::Action;
use super::form::Form;
use crate::project::Edit;
use crate::workshop::{Job, JobKind};
use egui::{Button, Ui};

/// Shows the kinds of jobs that can be added; whether one was chosen.
fn kinds_ui(ui: &mut Ui, form: &mut Form<'_>) -> bool {
    let mut is_chosen = false;
    for kind in JobKind::ALL {
        let button = ui
            .add(Button::new(kind.words()))
            .on_hover_text(kind.meaning());
        super::heard::describe(&button, kind.meaning());
        if button.clicked() {
            form.actions
                .push(Action::Edit(Edit::AddJob(Box::new(kind.begun()))));
            is_chosen = true;
        }
    }
    is_chosen
}

/// The edit that puts a job in its place.
fn changed(job: Job) -> Edit {
    Edit::Job(Box::new(job))
}
