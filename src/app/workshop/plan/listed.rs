//! The plan in the list on the left: how far it is, or how it is begun.

use super::super::jobs::item_ui;
use crate::app::drafts::CellId;
use crate::app::form::Form;
use crate::app::heard::describe;
use crate::project::{Edit, Project, SetId, WorkshopEdit};
use crate::workshop::{Amount, BenchItem, Plan, PlanTotals};
use egui::Ui;

/// What the plan is good for, before there is one.
const MEANING: &str =
    "A list of the parts that may have to change for each gear set, with what they cost";

/// The edit that begins a plan.
pub(in crate::app) fn begun_plan() -> Edit {
    Edit::Workshop(WorkshopEdit::Plan(Some(Box::new(Plan::begun()))))
}

/// Shows the plan as something that can be opened, its state that of the set for which it is filled in.
pub(in crate::app::workshop) fn listed_ui(
    ui: &mut Ui,
    project: &Project,
    (open, planned_for): (Option<BenchItem>, SetId),
    form: &mut Form<'_>,
) {
    let Some(plan) = &project.workshop.plan else {
        let button = ui.button("Plan what changes").on_hover_text(MEANING);
        describe(&button, MEANING);
        if button.clicked() {
            form.edit(begun_plan());
        }
        return;
    };
    let set = project.planned_set(planned_for);
    let totals = PlanTotals::of(plan, set.map_or(planned_for, |set| set.id).into());
    let set = set.map_or("", |set| set.set.name.as_str());
    let heard = format!("{set}: {}", totals_words(plan, &totals));
    let state = short_state(plan, &totals);
    let has_unread = form
        .drafts
        .has_unread_in(|cell| matches!(cell, CellId::Plan(_)));
    let item = BenchItem::Plan;
    let is_open = open == Some(item);
    item_ui(
        ui,
        (item, is_open, has_unread),
        ["What changes", &state, &heard],
        form,
    );
}

/// `3 to do, €1240`: what is not done yet, and what all costs once something does.
fn short_state(plan: &Plan, totals: &PlanTotals) -> String {
    let count = match totals.open + totals.undecided {
        0 => "done".to_owned(),
        count => format!("{count} to do"),
    };
    if totals.price == Amount::default() {
        return count;
    }
    format!("{count}, {}", plan.amount_text(totals.price))
}

/// `3 open, 6 done; €1240 in all, €800 still open`.
fn totals_words(plan: &Plan, totals: &PlanTotals) -> String {
    let [all, open] = [totals.price, totals.open_price].map(|amount| plan.amount_text(amount));
    format!("{}; {all} in all, {open} still open", totals.count_text())
}
