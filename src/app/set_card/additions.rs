//! What can be added to a card: a gear, reverse, a stage, and with what figures each begins.

use super::Card;
use super::ratio_field::ratio_cell;
use super::stages::add_stage_ui;
use crate::app::form::Form;
use crate::app::heard::add_usable;
use crate::gearing::{Gear, GearId, GearRole, GearSet, Ratio, Reverse};
use crate::project::SetEdit;
use crate::units::round_to;
use egui::{Button, Ui};

/// How much shorter a gear is that is inserted before first.
const FIRST_STEP: f64 = 1.5;

/// What can be added to a set.
pub(super) fn additions_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) {
    let set = &card.candidate.set;
    ui.horizontal(|ui| {
        let has_room = set.gears.len() < GearSet::MOST_GEARS;
        let add = add_usable(ui, has_room, Button::new("Add gear").small());
        let add = add.accessible_name(card.named("Add gear"));
        if add.on_hover_text("Adds a gear above top").clicked()
            && let Some((place, gear)) = added_gear(card)
        {
            type_ratio_of(card, gear.id, form);
            card.change(SetEdit::AddGear(place, gear), form);
        }
        let (text, reverse) = match &set.reverse {
            None => ("Add reverse", first_as_reverse(card)),
            Some(_) => ("Remove reverse", None),
        };
        let button = ui.small_button(text);
        if button.accessible_name(card.named(text)).clicked() {
            if reverse.is_some() {
                type_ratio_of(card, GearId::REVERSE, form);
            }
            card.change(SetEdit::Reverse(reverse), form);
        }
        add_stage_ui(ui, card, form);
    });
}

/// The ratio of a gear that has just come is typed in next.
pub(super) fn type_ratio_of(card: &Card<'_>, gear: GearId, form: &mut Form<'_>) {
    form.focus
        .want(card.cell_id(ratio_cell(card.ratio_form, gear)));
}

/// A gear between one and the one before it; before first, a step below it.
pub(super) fn gear_before(card: &Card<'_>, gear: &Gear) -> Option<Gear> {
    let set = &card.candidate.set;
    let ratio = gear.ratio.value();
    let chain: Vec<&Gear> = set.chain().collect();
    let at = chain.iter().position(|other| other.id == gear.id);
    let before = at.and_then(|at| chain.get(at.checked_sub(1)?));
    let wanted = before.map_or(ratio * FIRST_STEP, |before| {
        (before.ratio.value() * ratio).sqrt()
    });
    Some(Gear {
        id: set.unused_id(),
        label: set.unused_label()?,
        ratio: Ratio::from_number(round_to(wanted, 0.001)).ok()?,
        final_drive: gear.final_drive,
        role: GearRole::Shifted,
        shift: None,
    })
}

/// A gear one step above top, its label counted on, and its place.
fn added_gear(card: &Card<'_>) -> Option<(usize, Gear)> {
    let set = &card.candidate.set;
    let top = set.chain().last()?;
    let before = set.chain().nth(set.chain().count().saturating_sub(2))?;
    let step = (before.ratio.value() / top.ratio.value()).clamp(1.1, 1.5);
    let ratio = Ratio::from_number(round_to(top.ratio.value() / step, 0.001)).ok()?;
    let gear = Gear {
        id: set.unused_id(),
        label: set.unused_label()?,
        ratio,
        final_drive: top.final_drive,
        role: GearRole::Shifted,
        shift: None,
    };
    let place = set.gears.iter().position(|g| g.id == top.id)? + 1;
    Some((place, gear))
}

/// A reverse gear to begin with: as short as first.
fn first_as_reverse(card: &Card<'_>) -> Option<Reverse> {
    let first = card.candidate.set.chain().next()?;
    let ratio = Ratio::from_number(round_to(first.ratio.value(), 0.001)).ok()?;
    Some(Reverse {
        ratio,
        final_drive: first.final_drive,
    })
}
