//! What a card says of the whole set: shift points, own tyre, findings.

use super::{Card, SetField};
use crate::app::dialogs::finders::WishedAt;
use crate::app::drafts::SetCell;
use crate::app::form::{Form, remark, width_to_end};
use crate::app::typed;
use crate::app::vehicle_panel::tyre_reading_ui;
use crate::project::SetEdit;
use crate::units::plain_number;
use egui::Ui;

/// From this width on, in points, the shift point and its choice stand in one row.
const WIDTH_FOR_SHIFTS: f32 = 300.0;

/// What is valid but strange about the set.
pub(super) fn findings_ui(ui: &mut Ui, card: &Card<'_>, form: &Form<'_>) {
    for finding in card.desk.findings_of(card.place) {
        remark(ui, &finding.sentence, form.palette.finding);
    }
}

/// One shift point for all changes, or the choice of one for each.
pub(super) fn shifts_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let set = &card.candidate.set;
    let is_wide = ui.available_width() >= WIDTH_FOR_SHIFTS;
    let problem = ui
        .horizontal(|ui| {
            form.name(ui, "Shift at, rpm", 82.0);
            let field = SetField {
                cell: SetCell::ShiftAll,
                name: &format!("Shift point of all gears of set {}", card.place + 1),
                text: &plain_number(set.shift.rpm()),
                hint: "4500",
                width: 56.0,
            };
            let finders = [card.wish(WishedAt::Shift(None))];
            let problem = card.sought_field_ui(ui, (&field, &finders), form, &|text| {
                typed::engine_speed(typed::Engine::SHIFT, text).map(SetEdit::ShiftAll)
            });
            if is_wide {
                each_shift_ui(ui, card, form);
            }
            problem
        })
        .inner;
    form.problem(ui, problem.as_deref());
    if !is_wide {
        each_shift_ui(ui, card, form);
    }
}

/// Whether there is one shift point for all changes, or one for each.
fn each_shift_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let set = &card.candidate.set;
    let mut has_own = set.gears.iter().any(|g| g.shift.is_some());
    let text = "one for each change";
    let each = ui.checkbox(&mut has_own, text);
    if each.accessible_name(card.named(text)).changed() {
        let edit = if has_own {
            let own = set.gears.iter().map(|g| (g.id, set.shift_of(g)));
            SetEdit::Shifts(set.shift, own.collect())
        } else {
            SetEdit::ShiftAll(set.shift)
        };
        card.change(edit, form);
    }
}

/// A tyre of the set's own.
pub(super) fn tyre_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let set = &card.candidate.set;
    let mut has_own = set.tyre.is_some();
    let problem = ui
        .horizontal(|ui| {
            let check = ui.checkbox(&mut has_own, "own tyre");
            if check.accessible_name(card.named("own tyre")).changed() {
                let own = has_own.then_some(card.desk.project().tyre);
                card.change(SetEdit::Tyre(own), form);
            }
            let tyre = set.tyre.as_ref()?;
            let field = SetField {
                cell: SetCell::Tyre,
                name: &format!("Tyre of set {}", card.place + 1),
                text: &tyre.to_string(),
                hint: "195/65 R 15",
                width: width_to_end(ui),
            };
            let finders = [card.wish(WishedAt::Tyre)];
            card.sought_field_ui(ui, (&field, &finders), form, &|text| {
                typed::tyre(text).map(|tyre| SetEdit::Tyre(Some(tyre)))
            })
        })
        .inner;
    form.problem(ui, problem.as_deref());
    if let Some(tyre) = &set.tyre {
        tyre_reading_ui(ui, tyre, form);
    }
}
