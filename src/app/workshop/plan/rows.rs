//! The parts of the plan, one a row: its name, and beside or beneath it what becomes of it.

use super::entry::{entry_ui, heads_ui, stacked_entry_ui};
use super::layout::{BAR, GAP, Layout, MENU, Widths};
use super::{Shown, changed};
use crate::app::drafts::{CellId, PlanCell};
use crate::app::focus::{FocusMap, Walk};
use crate::app::form::{Field, Form};
use crate::app::heard::name_menu;
use crate::gearing::Name;
use crate::project::{Edit, WorkshopEdit};
use crate::workshop::Part;
use egui::{Label, RichText, Ui};

/// All parts in their order.
pub(super) fn rows_ui(ui: &mut Ui, shown: Shown<'_>, form: &mut Form<'_>) {
    ui.spacing_mut().item_spacing.x = GAP;
    let widths = Widths::of(ui.available_width(), shown.in_full.len());
    if shown.layout != Layout::Stacked {
        ui.horizontal(|ui| {
            ui.add_space(widths.name + MENU + GAP);
            for set in shown.in_full {
                heads_ui(ui, set, widths, form);
            }
        });
    }
    let mark = FocusMap::mark(ui);
    for (number, part) in (1..).zip(shown.plan.parts()) {
        match shown.layout {
            Layout::All | Layout::One => row_ui(ui, shown, (number, part), widths, form),
            Layout::Stacked => stacked_ui(ui, shown, (number, part), form),
        }
    }
    if shown.layout != Layout::Stacked {
        form.focus.block(Walk::Columns, mark, ui);
    }
}

fn row_ui(
    ui: &mut Ui,
    shown: Shown<'_>,
    (number, part): (usize, &Part),
    widths: Widths,
    form: &mut Form<'_>,
) {
    let problems = ui.horizontal(|ui| {
        let mut problems = vec![name_ui(ui, (number, part), widths.name, form)];
        menu_ui(ui, part, form);
        if part.is_struck {
            struck_ui(ui, form);
        } else {
            for set in shown.in_full {
                problems.extend(entry_ui(ui, part, set, widths, form));
            }
        }
        problems
    });
    for problem in problems.inner.iter().flatten() {
        form.problem(ui, Some(problem));
    }
}

fn stacked_ui(ui: &mut Ui, shown: Shown<'_>, (number, part): (usize, &Part), form: &mut Form<'_>) {
    let width = (ui.available_width() - MENU - 2.0 * GAP - BAR).max(60.0);
    let name = ui.horizontal(|ui| {
        let problem = name_ui(ui, (number, part), width, form);
        menu_ui(ui, part, form);
        problem
    });
    form.problem(ui, name.inner.as_deref());
    if part.is_struck {
        struck_ui(ui, form);
    } else {
        for set in shown.in_full {
            stacked_entry_ui(ui, part, set, form);
        }
    }
    ui.add_space(6.0);
}

fn struck_ui(ui: &mut Ui, form: &Form<'_>) {
    let text = RichText::new("struck out: counts for nothing").color(form.palette.dim_text);
    ui.add(Label::new(text).truncate());
}

/// The field in which a part is named; why it does not read.
fn name_ui(
    ui: &mut Ui,
    (number, part): (usize, &Part),
    width: f32,
    form: &mut Form<'_>,
) -> Option<String> {
    let field = Field {
        id: CellId::Plan(PlanCell::Name(part.id)),
        name: &format!("Part {number}"),
        text: part.name.as_str(),
        hint: "",
    };
    form.cell(ui, &field, width, &|text| {
        let name = Name::new(text).map_err(|error| error.to_string())?;
        let mut part = part.clone();
        part.name = name;
        Ok(changed(part))
    })
}

fn menu_ui(ui: &mut Ui, part: &Part, form: &mut Form<'_>) {
    let name = format!("Menu of {}", part.name);
    let button = ui.menu_button("…", |ui| {
        name_menu(ui, &name);
        let strike = if part.is_struck {
            "Take in again"
        } else {
            "Strike out"
        };
        if ui.button(strike).clicked() {
            let mut part = part.clone();
            part.is_struck = !part.is_struck;
            form.edit(changed(part));
            ui.close();
        }
        if ui.button("Remove this part").clicked() {
            form.edit(Edit::Workshop(WorkshopEdit::RemovePart(part.id)));
            ui.close();
        }
    });
    button.response.accessible_name(name);
}
