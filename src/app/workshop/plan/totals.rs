//! What the plan comes to, the candidates side by side where there is room.

use super::{Layout, Shown};
use crate::app::form::{Form, width_to_end};
use crate::app::heard::heading_ui;
use crate::project::Candidate;
use crate::workshop::PlanTotals;
use egui::{Label, RichText, Ui};

/// Shows the totals of every candidate.
pub(super) fn totals_ui(ui: &mut Ui, shown: Shown<'_>, form: &Form<'_>) {
    heading_ui(ui, "What it comes to");
    if shown.layout == Layout::Stacked {
        for set in shown.planned {
            set_ui(ui, shown, set, form);
            ui.add_space(4.0);
        }
        return;
    }
    let gaps = ui.spacing().item_spacing.x * shown.planned.len() as f32;
    let width = (width_to_end(ui) - gaps) / shown.planned.len().max(1) as f32;
    ui.horizontal_top(|ui| {
        for set in shown.planned {
            ui.vertical(|ui| {
                ui.set_width(width);
                set_ui(ui, shown, set, form);
            });
        }
    });
}

fn set_ui(ui: &mut Ui, shown: Shown<'_>, set: &Candidate, form: &Form<'_>) {
    let totals = PlanTotals::of(shown.plan, set.id.into());
    let name = RichText::new(set.set.name.as_str()).strong();
    ui.add(Label::new(name).wrap());
    let amount = |amount| shown.plan.amount_text(amount);
    for line in [
        format!("{} in all", amount(totals.price)),
        format!("{} still open", amount(totals.open_price)),
        totals.count_text(),
    ] {
        let text = RichText::new(line).color(form.palette.text);
        ui.add(Label::new(text).wrap());
    }
}
