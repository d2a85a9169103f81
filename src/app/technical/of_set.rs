//! What a set's card has of technical data, once any is known: an engine of its own, and what its gears
//! leave of the power.

use super::about::{About, Whose};
use super::cells::TechnicalCell;
use super::efficiencies::efficiencies_ui;
use super::engine::engine_ui;
use crate::app::drafts::{CellId, SetCell};
use crate::app::form::{Form, remark};
use crate::project::{Candidate, Edit, Project, SetId};
use egui::{Id, Ui};

/// Shows it; somebody who only compares ratios meets nothing of it.
pub(in crate::app) fn of_set_ui(
    ui: &mut Ui,
    (project, candidate): (&Project, &Candidate),
    sought: Option<CellId>,
    form: &mut Form<'_>,
) {
    if !project.technical.knows_of_motion() && !candidate.technical.knows_of_motion() {
        return;
    }
    let whose = Whose::Sets(candidate.id);
    let about = About { project, whose };
    match candidate.technical.engine {
        None => vehicles_engine_ui(ui, about, candidate.id, form),
        Some(_) => own_engine_ui(ui, about, candidate.id, sought, form),
    }
    efficiencies_ui(ui, about, candidate, sought, form);
}

fn given_id(set: SetId) -> Id {
    Id::unique(("own engine was given", set))
}

/// That the engine is the vehicle's, and how to give the set its own.
fn vehicles_engine_ui(ui: &mut Ui, about: About<'_>, set: SetId, form: &mut Form<'_>) {
    ui.horizontal(|ui| {
        remark(ui, "Engine: the vehicle's", form.palette.dim_text);
        let text = "Give it its own";
        let button = ui
            .small_button(text)
            .on_hover_text("Begins with a copy of the vehicle's engine");
        let name = about.named("Give it its own engine");
        if button.accessible_name(name).clicked() {
            let engine = Box::new(about.engine().clone());
            form.edit(Edit::OwnEngine(set, Some(engine)));
            // It is unfolded at once, to be typed in.
            ui.data_mut(|d| d.insert_temp(given_id(set), true));
            let curve = about.whose.field(TechnicalCell::TorqueCurve);
            form.focus.want(curve.widget());
        }
    });
}

/// The same rows as of the vehicle's engine, and how to do without.
fn own_engine_ui(
    ui: &mut Ui,
    about: About<'_>,
    set: SetId,
    sought: Option<CellId>,
    form: &mut Form<'_>,
) {
    let sought = match sought {
        Some(CellId::Set(of, SetCell::Engine(cell))) if of == set => Some(cell),
        _ => None,
    };
    let is_given = ui.data_mut(|d| d.remove_temp::<bool>(given_id(set)).is_some());
    let sought = if is_given {
        Some(TechnicalCell::TorqueCurve)
    } else {
        sought
    };
    engine_ui(ui, about, sought, form);
    let button = ui.small_button("Use the vehicle's engine");
    let name = about.named("Use the vehicle's engine");
    if button.accessible_name(name).clicked() {
        form.edit(Edit::OwnEngine(set, None));
    }
}
