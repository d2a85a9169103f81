//! The best shift points, offered with what they gain where a set is changed up elsewhere.

use super::Card;
use crate::app::action::Action;
use crate::app::commands::Command;
use crate::app::drafts::SetCell;
use crate::app::form::{Form, remark};
use crate::app::heard::{add_usable, describe, tell_why_not};
use egui::{Button, Ui};

/// Offers them; nothing where engine and vehicle are not known.
///
/// The button stays where the set has them: what would move up into its place is not to be hit by the second
/// press of somebody who presses twice.
pub(super) fn best_shifts_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    if card.desk.lacks_for_motion().is_some() {
        return;
    }
    let Some(entry) = Command::BestShifts.entry() else {
        return;
    };
    let best = card.desk.best_shifts(card.candidate.id);
    let button = add_usable(ui, best.is_some(), Button::new(entry.text).small());
    let button = button.accessible_name(card.named(entry.text));
    let Some(best) = best else {
        let why = Command::BestShifts.why_not(card.desk);
        tell_why_not(button, why.unwrap_or_default());
        return;
    };
    let unit = card.desk.project().units;
    let gains = best.gains_text(unit);
    describe(&button, &gains);
    if button.on_hover_text(gains).clicked() {
        form.actions.push(Action::Run(Command::BestShifts));
        // It cannot be pressed any more; where they are seen undo looks for them too.
        form.focus.want(card.cell_id(SetCell::ShiftAll));
    }
    let words = format!("Best: {}; {}", best.changes_text(), best.gain_text(unit));
    remark(ui, &words, form.palette.dim_text);
}
