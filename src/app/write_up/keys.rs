//! Which keys belong to the write-up window as a whole: Esc, and those that move and size the preview.

use super::WriteUpWindow;
use super::zoom::Zoom;
use crate::app::action::Action;
use crate::app::commands::Command;
use crate::app::drafts::{CellId, Drafts};
use crate::app::focus::layers::{had_focus, layer_of};
use crate::app::input::Scroll;
use egui::{Context, Key, Modifiers, Popup};

impl WriteUpWindow {
    /// Takes the window's keys before anybody else does; what they ask for.
    pub(in crate::app) fn begin_frame(
        &mut self,
        ctx: &Context,
        is_open: bool,
        is_in_reach: bool,
        drafts: &Drafts,
    ) -> Option<Action> {
        self.scroll = Scroll::default();
        (self.zoom_keys, self.sideways) = (0, 0);
        if !is_open {
            self.layer = None;
        }
        let layer = self.layer?;
        if !is_in_reach || Popup::is_any_open(ctx) || ctx.dragged_id().is_some() {
            return None;
        }
        let focused = ctx.memory(egui::Memory::focused);
        if focused.is_none_or(|id| layer_of(ctx, id) == Some(layer)) {
            self.scroll = if ctx.text_edit_focused() {
                Scroll::taken_by_page(ctx)
            } else {
                self.zoom_keys = Zoom::keys(ctx);
                self.sideways = sideways(ctx);
                Scroll::taken(ctx)
            };
        }
        if !ctx.input(|i| i.key_pressed(Key::Escape)) {
            return None;
        }
        let had = had_focus(ctx);
        let is_ours = had.is_none_or(|id| layer_of(ctx, id) == Some(layer));
        // The first Esc belongs to a field in which something was typed.
        let width = CellId::PictureWidth;
        let is_typing = had == Some(width.widget()) && drafts.get(width).is_some();
        let closes = is_ours && !is_typing;
        (closes && ctx.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape)))
            .then_some(Action::Run(Command::WriteUp))
    }
}

/// How many pages to the right Page Down and Page Up go under Shift.
fn sideways(ctx: &Context) -> isize {
    ctx.input_mut(|input| {
        let mut taken = |key| {
            input
                .count_and_consume_key(Modifiers::SHIFT, key)
                .cast_signed()
        };
        taken(Key::PageDown) - taken(Key::PageUp)
    })
}
