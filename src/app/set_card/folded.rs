//! A card folded to a line: swatch, name, spread and widest drop.

use super::Card;
use crate::app::action::Action;
use crate::app::form::Form;
use crate::app::section::UNREAD;
use crate::draw::palette::dash;
use crate::draw::sample;
use crate::units::{percent_text, step_text};
use egui::{
    Align2, CursorIcon, FontId, Rect, Response, Role, Sense, Stroke, StrokeKind, TextStyle, Ui,
    Vec2, WidgetInfo,
};

const HEIGHT: f32 = 26.0;
const MARGIN: f32 = 6.0;
const SWATCH: f32 = 30.0;

/// Shows the line; a click or Enter opens the card.
pub(super) fn folded_ui(ui: &mut Ui, card: &Card<'_>, form: &mut Form<'_>) -> Response {
    let size = Vec2::new(ui.available_width(), HEIGHT);
    let id = ui.make_persistent_id(("folded card", card.candidate.id));
    let (_, rect) = ui.allocate_space(size);
    let response = ui.interact(rect, id, Sense::click());
    paint(ui, card, form, &response);
    let name = card.candidate.set.name.as_str();
    let facts = facts(card, "widest drop ");
    let mut spoken = format!("Open set {}, {name}, {facts}", card.place + 1);
    if form.drafts.has_unread(card.candidate.id) {
        spoken = format!("{spoken}, {UNREAD}");
    }
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &spoken));
    ui.accesskit_node_builder(id, |node| node.set_description("folded"));
    let hint = format!("{name}: opens this card");
    let response = response.on_hover_cursor(CursorIcon::PointingHand);
    if response.clicked() {
        form.actions.push(Action::OpenCard(card.candidate.id));
    }
    response.on_hover_text(hint)
}

fn paint(ui: &Ui, card: &Card<'_>, form: &Form<'_>, response: &Response) {
    let rect = response.rect;
    let painter = ui.painter();
    let palette = form.palette;
    if response.hovered() {
        painter.rect_filled(rect, 4.0, ui.visuals().widgets.hovered.weak_bg_fill);
    }
    let outline = Stroke::new(1.0, palette.grid);
    painter.rect_stroke(rect, 4.0, outline, StrokeKind::Inside);
    let inner = rect.shrink2(Vec2::new(MARGIN, 0.0));
    let swatch = Rect::from_min_size(inner.min, Vec2::new(SWATCH, rect.height()));
    let livery = card.candidate.livery;
    sample(painter, swatch, palette.set(livery), dash(livery));

    let small = TextStyle::Small.resolve(ui.style());
    let (facts, color) = if form.drafts.has_unread(card.candidate.id) {
        (UNREAD.to_owned(), palette.error)
    } else {
        (facts(card, ""), palette.dim_text)
    };
    let at = inner.right_center();
    let facts = painter.text(at, Align2::RIGHT_CENTER, facts, small, color);
    let left = swatch.right() + MARGIN;
    let room = (facts.left() - MARGIN - left).max(0.0);
    let font: FontId = TextStyle::Body.resolve(ui.style());
    let name = card.candidate.set.name.to_string();
    let mut job = egui::text::LayoutJob::simple_singleline(name, font, palette.text);
    job.wrap = egui::text::TextWrapping::truncate_at_width(room);
    let galley = painter.layout_job(job);
    let top = rect.center().y - galley.size().y / 2.0;
    painter.galley(egui::pos2(left, top), galley, palette.text);
}

/// What tells sets apart at a glance; the widest drop comes behind `before_drop`.
fn facts(card: &Card<'_>, before_drop: &str) -> String {
    let mut facts = Vec::new();
    if !card.candidate.visible {
        facts.push("hidden".to_owned());
    }
    if card.is_baseline {
        facts.push("baseline".to_owned());
    }
    facts.push(format!("spread {}", step_text(card.results.spread)));
    if let Some((from, to, share)) = card.results.widest_drop() {
        let [from, to] = [&from.gear.label, &to.gear.label];
        facts.push(format!(
            "{before_drop}{from}→{to} {} %",
            percent_text(share)
        ));
    }
    facts.join(", ")
}
