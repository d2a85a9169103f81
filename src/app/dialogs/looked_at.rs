//! A dialog that is only looked at: a text that scrolls, by its keys too, and a button to close it.

use super::modal::{Frame, begin_anew, begin_with, set_width};
use crate::app::input::Scroll;
use egui::{Context, ScrollArea, Ui};

/// Its width where the window has room for it, in points.
const WIDTH: f32 = 520.0;

/// What stands around the text, in points.
const ROOM_BESIDE_TEXT: f32 = 140.0;

/// Shows it, with what stands `above` the text; whether it is to be closed.
pub(super) fn looked_at_ui(
    ctx: &Context,
    frame: Frame<'_>,
    above: impl FnOnce(&mut Ui),
    text: impl FnOnce(&mut Ui),
) -> bool {
    let shown = frame.show(ctx, |ui| {
        set_width(ui, WIDTH);
        above(ui);
        let keys = Scroll::taken_with_arrows(ui);
        let room = ctx.content_rect().height() - ROOM_BESIDE_TEXT;
        ScrollArea::vertical()
            .max_height(room)
            .min_scrolled_height(room)
            .show(ui, |ui| {
                keys.apply(ui);
                text(ui);
            });
        ui.add_space(6.0);
        close_ui(ui)
    });
    let is_closed = shown.inner || shown.is_left || shown.is_clicked_beside;
    if is_closed {
        begin_anew(ctx);
    }
    is_closed
}

/// The button that closes it, which has the focus at first.
fn close_ui(ui: &mut Ui) -> bool {
    let close = ui.button("Close");
    begin_with(ui, &close);
    close.clicked()
}
