//! What can be had: the list that is typed, and beneath it each part by how near it comes, one of which is
//! chosen.

use super::wished::{Proposal, WishKind};
use super::{About, WishDialog};
use crate::app::dialogs::field::{problem_ui, reveal};
use crate::app::typed::Reading;
use crate::draw::palette::Palette;
use crate::finders::{Part, Sought};
use crate::gearing::GearId;
use crate::units::percent_difference_text;
use egui::{Button, Id, RichText, TextEdit, Ui, vec2};

/// More than a list of parts needs.
const MOST_CHARACTERS: usize = 2000;

/// How many parts that do not read are told at once.
const MOST_TOLD: usize = 3;

/// Shows the list and what comes of it.
pub(super) fn had_ui(
    ui: &mut Ui,
    dialog: &mut WishDialog,
    about: &About<'_>,
    gear: GearId,
    proposal: &Reading<Proposal>,
    palette: &Palette,
) {
    list_ui(ui, dialog, about, gear, palette);
    let Ok(proposal) = proposal else { return };
    if proposal.ranked.is_empty() {
        dialog.chosen = None;
        return;
    }
    let is_there = |chosen: &Part| proposal.ranked.iter().any(|ranked| ranked.part == *chosen);
    if !dialog.chosen.as_ref().is_some_and(is_there) {
        dialog.chosen = None;
    }
    let kind = dialog.texts.kind;
    let exact = proposal.outcome(about, kind, proposal.wished.wish.engine.rpm());
    if line_ui(
        ui,
        dialog.chosen.is_none(),
        "exactly as found",
        &exact,
        palette,
    ) {
        dialog.chosen = None;
    }
    for ranked in &proposal.ranked {
        let off = percent_difference_text(ranked.difference_share);
        let outcome = match kind {
            // At which speed that would be, nobody has asked.
            WishKind::AsFitted => off,
            WishKind::Speed | WishKind::Redline | WishKind::Drop => {
                let outcome = proposal.outcome(about, kind, ranked.engine_rpm);
                format!("{outcome}, {off}")
            }
        };
        let is_chosen = dialog.chosen.as_ref() == Some(&ranked.part);
        if line_ui(ui, is_chosen, &ranked.part.to_string(), &outcome, palette) {
            dialog.chosen = Some(ranked.part.clone());
        }
    }
}

fn list_ui(
    ui: &mut Ui,
    dialog: &mut WishDialog,
    about: &About<'_>,
    gear: GearId,
    palette: &Palette,
) {
    let (what, example) = match dialog.texts.sought() {
        Sought::FinalDrive => ("Final drives that can be had", "3.73  4.06  37:9"),
        Sought::GearRatio => ("Ratios that can be had", "0.76  0.79  34:43"),
        Sought::RollingCircumference => ("Tyres that can be had", "205/65 R 15, 215/65 R 15"),
    };
    ui.add_space(2.0);
    ui.label(what);
    let unread = dialog.texts.unread(about, gear);
    let field = TextEdit::multiline(dialog.texts.had_mut())
        .id(Id::unique("what can be had"))
        .desired_rows(2)
        .desired_width(f32::INFINITY)
        .char_limit(MOST_CHARACTERS)
        .hint_text(example);
    let field = ui.add(field).accessible_name(what);
    reveal(&field);
    if !unread.is_empty() {
        let more = unread.len().saturating_sub(MOST_TOLD);
        let told = unread.into_iter().take(MOST_TOLD).collect::<Vec<_>>();
        let more = if more > 0 {
            format!("; and {more} more")
        } else {
            String::new()
        };
        problem_ui(ui, &field, &format!("{}{more}", told.join("; ")), palette);
    }
}

/// A line that can be chosen: a part, and what comes of it.
fn line_ui(ui: &mut Ui, is_chosen: bool, part: &str, outcome: &str, palette: &Palette) -> bool {
    let button = Button::selectable(is_chosen, part)
        .right_text(RichText::new(outcome).color(palette.dim_text))
        .truncate()
        .min_size(vec2(ui.available_width(), 0.0));
    let line = ui.add(button);
    reveal(&line);
    let spoken = format!("{part}, {outcome}");
    ui.ctx()
        .accesskit_node_builder(line.id, |node| node.set_label(spoken));
    line.clicked()
}
