//! One ring around whatever has the focus.

use super::stops::Stop;
use crate::draw::palette::{Palette, Theme};
use egui::{Context, Id, Stroke, StrokeKind};

/// How far the ring stands off, in points, and how wide it is.
const AWAY: f32 = 2.0;
const WIDTH: f32 = 2.0;

/// Paints the ring around a widget of this frame, as far as it is in view.
///
/// What stands alone, such as a handle, has a round one.
pub(super) fn paint(ctx: &Context, focused: Option<Id>, stop: Option<&Stop>) {
    let Some(response) = focused.and_then(|id| ctx.read_response(id)) else {
        return;
    };
    let rect = response.interact_rect;
    if !rect.is_positive() {
        return;
    }
    let is_round = stop.is_some_and(|stop| stop.is_alone) && is_square(rect);
    let corner = if is_round { rect.width() / 2.0 } else { 3.0 };
    let ring = Stroke::new(WIDTH, Palette::of(Theme::of(ctx)).focus);
    ctx.layer_painter(response.layer_id).rect_stroke(
        rect.expand(AWAY),
        corner,
        ring,
        StrokeKind::Middle,
    );
}

fn is_square(rect: egui::Rect) -> bool {
    (rect.width() - rect.height()).abs() < 1.0
}
