//! The tries of a job: what was measured now is kept with one press, and all of them are drawn.

use super::changed;
use crate::app::drafts::CellId;
use crate::app::form::Form;
use crate::app::heard::{describe, tell_why_not};
use crate::chart::TryDiagram;
use crate::draw::try_diagram;
use crate::units::BenchUnits;
use crate::workshop::{Answer, Job, JobData};
use egui::{Button, Id, Role, Sense, TextStyle, Ui, Vec2, WidgetInfo};

/// The widest diagram, in points, and its height.
const SIZE: Vec2 = Vec2::new(400.0, 200.0);

/// Shows the button that keeps what was measured, where the job keeps tries.
pub(super) fn keep_ui(ui: &mut Ui, job: &Job, form: &mut Form<'_>) {
    if !matches!(job.data, JobData::TurningTorque(_)) {
        return;
    }
    ui.add_space(4.0);
    let kept = job.keeping_try();
    let button = ui.add_enabled(kept.is_some(), Button::new("Keep this try"));
    let why = "shim or torque is not known, or it is kept already";
    let button = tell_why_not(button, why);
    let button = button.on_hover_text("Puts the shim in place and its torque among the tries");
    if let Some(kept) = kept.filter(|_| button.clicked()) {
        form.edit(changed(kept));
        // The next shim is what is typed next.
        form.focus
            .want(CellId::Job(job.id, Job::SHIM_IN_PLACE).widget());
    }
}

/// Shows the diagram of the tries, where there are any.
pub(super) fn tries_ui(
    ui: &mut Ui,
    (job, answer): (&Job, &Answer),
    units: BenchUnits,
    form: &Form<'_>,
) {
    let Some(diagram) = TryDiagram::of_job(&job.data, answer.state, units) else {
        return;
    };
    ui.add_space(6.0);
    let size = Vec2::new(ui.available_width().min(SIZE.x), SIZE.y);
    let (room, _) = ui.allocate_exact_size(size, Sense::hover());
    let text_size = TextStyle::Small.resolve(ui.style()).size;
    try_diagram::paint(ui.painter(), room, &diagram, form.palette, text_size);
    let image = ui.interact(room, Id::unique("tries of the job"), Sense::hover());
    image.widget_info(|| WidgetInfo::labeled(Role::Image, true, "Torque against shim"));
    describe(&image, &diagram.summary);
}
