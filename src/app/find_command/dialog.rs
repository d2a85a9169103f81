//! The dialog in which something is found: a field, a list, and what the chosen line does.

use super::matching::best_first;
use super::offers::Offer;
use crate::app::action::Action;
use crate::app::dialogs::modal::{Frame, begin_anew, begin_with, set_width};
use crate::app::heard::heading_ui;
use crate::app::input::{steps, taken};
use crate::draw::palette::Palette;
use egui::accesskit::Live;
use egui::{Button, Context, Id, Key, RichText, Role, ScrollArea, TextEdit, Ui, UiBuilder};

/// What is being looked for.
#[derive(Debug, Default)]
pub(in crate::app) struct FindCommand {
    typed: String,
    /// The chosen line among those that were found.
    chosen: usize,
}

/// What came of it.
pub(in crate::app) enum Found {
    /// This is done.
    Do(Action),
    /// Nothing.
    Nothing,
}

const HEADING: &str = "Find a command";
const NOTHING: &str = "Nothing has all of these words";

/// What stands around the list, in points, and how high the list is at most.
const ROOM_BESIDE_LIST: f32 = 190.0;
const MOST_ROOM_FOR_LIST: f32 = 330.0;
/// How many lines Page Up and Page Down go.
const PAGE: isize = 8;

/// Shows the dialog; what came of it once something has.
pub(in crate::app) fn find_command_ui(
    ctx: &Context,
    finding: &mut FindCommand,
    offers: &[Offer],
    palette: &Palette,
) -> Option<Found> {
    let frame = Frame {
        salt: "find a command",
        name: HEADING,
        description: "Type a part of a command, an example, a set or a recent file.",
        is_question: false,
    };
    let shown = frame.show(ctx, |ui| {
        set_width(ui, 480.0);
        heading_ui(ui, HEADING);
        let step = steps(ctx, Key::ArrowDown, Key::ArrowUp)
            + PAGE * steps(ctx, Key::PageDown, Key::PageUp);
        let is_run = taken(ctx, Key::Enter) > 0;
        field_ui(ui, finding);
        let found = best_first(&finding.typed, offers.iter().map(Offer::words));
        let found: Vec<&Offer> = found.into_iter().map(|at| &offers[at]).collect();
        finding.go(step, found.len());
        let clicked = list_ui(ui, finding, &found, step != 0, palette);
        let chosen = found.get(finding.chosen);
        told_ui(ui, chosen.copied(), palette);
        let wanted = clicked
            .and_then(|at| found.get(at))
            .or_else(|| chosen.filter(|_| is_run));
        let wanted = wanted.filter(|offer| offer.why_not.is_none());
        wanted.map(|offer| Found::Do(offer.action.clone()))
    });
    let is_left = shown.is_left || shown.is_clicked_beside;
    let found = shown.inner.or_else(|| is_left.then_some(Found::Nothing));
    if found.is_some() {
        begin_anew(ctx);
    }
    found
}

impl FindCommand {
    /// Goes down the lines that were found, or up, and keeps to them.
    fn go(&mut self, step: isize, count: usize) {
        let last = count.saturating_sub(1);
        self.chosen = self.chosen.saturating_add_signed(step).min(last);
    }
}

fn field_ui(ui: &mut Ui, finding: &mut FindCommand) {
    let field = TextEdit::singleline(&mut finding.typed)
        .id(Id::unique("command to find"))
        .desired_width(f32::INFINITY)
        .hint_text("a part of a command, an example, a set or a recent file");
    let field = ui.add(field).accessible_name("Words of the command");
    begin_with(ui, &field);
    if field.changed() {
        finding.chosen = 0;
    }
}

/// Shows what was found; the line that was clicked.
fn list_ui(
    ui: &mut Ui,
    finding: &mut FindCommand,
    found: &[&Offer],
    has_moved: bool,
    palette: &Palette,
) -> Option<usize> {
    let room = ui.ctx().content_rect().height() - ROOM_BESIDE_LIST;
    let mut clicked = None;
    ui.add_space(4.0);
    ScrollArea::vertical()
        .id_salt("found")
        .auto_shrink(false)
        .max_height(room.clamp(80.0, MOST_ROOM_FOR_LIST))
        .show(ui, |ui| {
            let list = UiBuilder::new()
                .accessibility_role(Role::ListBox)
                .accessibility_label("Found");
            ui.scope_builder(list, |ui| {
                for (at, offer) in found.iter().enumerate() {
                    let line = line_ui(ui, offer, at == finding.chosen, palette);
                    if line.has_focus() {
                        finding.chosen = at;
                    }
                    if line.gained_focus() || (has_moved && at == finding.chosen) {
                        line.scroll_to_me(None);
                    }
                    if line.clicked() {
                        clicked = Some(at);
                    }
                }
            });
        });
    clicked
}

fn line_ui(ui: &mut Ui, offer: &Offer, is_chosen: bool, palette: &Palette) -> egui::Response {
    let can = offer.why_not.is_none();
    let color = if can { palette.text } else { palette.dim_text };
    let name = RichText::new(&offer.name).color(color);
    let remark = RichText::new(offer.remark()).color(palette.dim_text);
    let button = Button::selectable(is_chosen, name)
        .right_text(remark)
        .truncate()
        .min_size(egui::vec2(ui.available_width(), 0.0));
    let line = ui.add(button);
    ui.ctx().accesskit_node_builder(line.id, |node| {
        node.set_role(Role::ListBoxOption);
        node.set_label(format!("{}, {}", offer.name, offer.remark()));
        // It is chosen, not switched.
        node.clear_toggled();
        node.set_selected(is_chosen);
        node.set_description(told(offer));
    });
    line
}

/// What an offer does, or why it does not.
fn told(offer: &Offer) -> String {
    match offer.why_not {
        Some(why) => format!("Not now: {why}"),
        None => offer.what.clone(),
    }
}

/// What the chosen line does, beneath the list and for those who hear it.
fn told_ui(ui: &mut Ui, chosen: Option<&Offer>, palette: &Palette) {
    ui.add_space(4.0);
    let shown = chosen.map_or_else(|| NOTHING.to_owned(), told);
    let heard = match chosen {
        Some(offer) => format!("{}: {shown}", offer.name),
        None => shown.clone(),
    };
    let label = egui::Label::new(RichText::new(shown).color(palette.dim_text)).truncate();
    let label = ui.add(label);
    ui.ctx().accesskit_node_builder(label.id, |node| {
        node.set_value(heard);
        node.set_live(Live::Polite);
    });
}
