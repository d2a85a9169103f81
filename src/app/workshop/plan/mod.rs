//! The plan of what changes: rows by part, columns by candidate, and what it comes to beneath.

mod entry;
mod layout;
mod listed;
mod rows;
mod totals;

pub(in crate::app) use listed::begun_plan;
pub(super) use listed::listed_ui;

use super::super::action::Action;
use super::super::drafts::{CellId, PlanCell};
use super::super::form::{Field, Form, remark};
use super::super::heard::{describe, heading_ui, tell_why_not};
use crate::gearing::Name;
use crate::project::{Candidate, Edit, Project, SetId, WorkshopEdit};
use crate::workshop::{BenchItem, CurrencySign, Part, Plan};
use egui::{Button, Ui};
use layout::Layout;
use rows::rows_ui;
use totals::totals_ui;

/// What the plan is for.
const WHAT_FOR: &str = "Half of the parts of a swap carry over, the other half must be found. What comes from \
                        where, what is to be done and what it costs is yours to say: the program knows no parts.";

/// What a part is called that has just come.
const NEW_PART: &str = "new part";

/// The width of the field of the currency, in points.
const CURRENCY: f32 = 70.0;

/// A plan as it is shown: for which candidates, and in which project.
#[derive(Clone, Copy)]
struct Shown<'a> {
    plan: &'a Plan,
    /// The candidates for which it is filled in.
    planned: &'a [&'a Candidate],
    /// Those whose columns stand in full.
    in_full: &'a [&'a Candidate],
    layout: Layout,
}

/// Shows the plan; `planned_for` is the set whose columns stand alone where there is no room for all.
pub(super) fn plan_ui(
    ui: &mut Ui,
    (project, plan): (&Project, &Plan),
    planned_for: SetId,
    form: &mut Form<'_>,
) {
    let planned = project.planned_sets();
    let layout = Layout::of(ui.available_width(), planned.len());
    let chosen: Vec<&Candidate> = project.planned_set(planned_for).into_iter().collect();
    let has_room_for_all = layout == Layout::All || planned.len() < 2;
    let shown = Shown {
        plan,
        planned: &planned,
        in_full: if has_room_for_all { &planned } else { &chosen },
        layout,
    };
    ui.vertical(|ui| {
        heading_ui(ui, "What changes");
        ui.label(WHAT_FOR);
        ui.add_space(6.0);
        currency_ui(ui, plan, form);
        fitted_ui(ui, project, &planned, form);
        if !has_room_for_all {
            sets_ui(ui, shown, form);
        }
        ui.add_space(6.0);
        rows_ui(ui, shown, form);
        add_ui(ui, plan, form);
        ui.add_space(10.0);
        totals_ui(ui, shown, form);
        ui.add_space(8.0);
        ui.horizontal_wrapped(|ui| {
            let sheet = ui.button("Print a sheet…");
            let sheet = sheet.on_hover_text("Opens the write-up with the plan as a list to tick");
            if sheet.clicked() {
                form.actions.push(Action::PrintSheet(BenchItem::Plan));
            }
            if ui.button("Remove this plan").clicked() {
                form.edit(Edit::Workshop(WorkshopEdit::Plan(None)));
            }
        });
    });
}

/// The edit that puts a part in its place.
fn changed(part: Part) -> Edit {
    Edit::Workshop(WorkshopEdit::Part(Box::new(part)))
}

/// In what prices are.
fn currency_ui(ui: &mut Ui, plan: &Plan, form: &mut Form<'_>) {
    let text = plan.currency.as_ref().map(CurrencySign::to_string);
    let field = Field {
        id: CellId::Plan(PlanCell::Currency),
        name: "Currency",
        text: &text.unwrap_or_default(),
        hint: "none",
    };
    let problem = ui.horizontal(|ui| {
        form.row_name(ui, field.name, "");
        let problem = form.cell(ui, &field, CURRENCY, &|text| {
            let sign = (!text.trim().is_empty()).then(|| CurrencySign::new(text));
            let sign = sign.transpose().map_err(|error| error.to_string())?;
            Ok(Edit::Workshop(WorkshopEdit::Currency(sign)))
        });
        remark(
            ui,
            "the sign of all prices: nothing is converted",
            form.palette.dim_text,
        );
        problem
    });
    form.problem(ui, problem.inner.as_deref());
}

/// Why what is fitted now has no columns.
fn fitted_ui(ui: &mut Ui, project: &Project, planned: &[&Candidate], form: &Form<'_>) {
    let fitted = project.sets.baseline();
    if fitted.visible && !planned.iter().any(|set| set.id == fitted.id) {
        let name = &fitted.set.name;
        let text = format!("{name} is what the others are compared with: nothing changes for it");
        remark(ui, &text, form.palette.dim_text);
    }
}

/// Which candidate has its columns in full.
fn sets_ui(ui: &mut Ui, shown: Shown<'_>, form: &mut Form<'_>) {
    ui.horizontal_wrapped(|ui| {
        ui.label("Filled in for");
        for set in shown.planned {
            let is_chosen = shown.in_full.iter().any(|chosen| chosen.id == set.id);
            let choice = ui.radio(is_chosen, set.set.name.as_str());
            describe(
                &choice,
                "What changes for this gear set; the others have their totals",
            );
            if choice.clicked() && !is_chosen {
                form.actions.push(Action::PlanFor(set.id));
            }
        }
    });
}

/// One part more.
fn add_ui(ui: &mut Ui, plan: &Plan, form: &mut Form<'_>) {
    ui.add_space(4.0);
    let has_room = plan.parts().len() < Plan::MOST;
    let button = ui.add_enabled(has_room, Button::new("Add a part"));
    let button = tell_why_not(button, &format!("a plan has {} parts at most", Plan::MOST));
    if button.clicked()
        && let Ok(name) = Name::new(NEW_PART)
    {
        form.edit(Edit::Workshop(WorkshopEdit::AddPart(name)));
    }
}
