//! Where does the focus go when what lay over the window is gone?
//!
//! Back to where it was when a menu or a dialog opened, unless what was invoked there has moved it
//! elsewhere. The write-up stands beside the window: it takes the focus when it opens, and gives it
//! back when it closes.

use crate::app::focus::layers::layer_of;
use egui::{Context, Id, LayerId, Order, Popup};

/// What lies over the window.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
enum Over {
    /// Nothing.
    #[default]
    Nothing,
    /// A menu.
    Popup,
    /// A dialog.
    Dialog,
}

/// What is remembered of the focus.
#[derive(Debug, Default)]
pub(in crate::app) struct FocusBack {
    /// What had the focus while nothing lay over the window.
    place: Option<Id>,
    over: Over,
    /// In how many frames the focus is given back: the layer of a dialog counts one frame longer
    /// than the dialog.
    frames_left: Option<u8>,
    /// Whether the pointer was pressed: a press on a menu takes the focus before the menu opens.
    was_pressing: bool,
    /// Whether the write-up was open in the last frame, and what had the focus before it opened.
    has_write_up: bool,
    before_write_up: Option<Id>,
}

/// Ends what Tab has begun in a dialog that is gone: where it found nothing to go to, the toolkit
/// would give the focus to whatever is shown next.
fn end_tabbing(ctx: &Context) {
    let nobody = Id::unique("nobody");
    ctx.memory_mut(|m| {
        m.interested_in_focus(nobody, LayerId::background());
        m.surrender_focus(nobody);
    });
}

impl FocusBack {
    /// Follows the focus, before anything else is done in a frame.
    pub(in crate::app) fn follow(&mut self, ctx: &Context, has_dialog: bool, has_write_up: bool) {
        let over = if has_dialog {
            Over::Dialog
        } else if Popup::is_any_open(ctx) {
            Over::Popup
        } else {
            Over::Nothing
        };
        if over == Over::Nothing {
            match self.over {
                Over::Nothing => self.note(ctx),
                Over::Popup => self.frames_left = Some(0),
                Over::Dialog => self.frames_left = Some(1),
            }
            self.give_back(ctx);
        } else {
            self.frames_left = None;
        }
        if over == Over::Dialog && self.over != Over::Dialog {
            // A menu would lie open over a question that nobody called from it.
            Popup::close_all(ctx);
        }
        self.over = over;
        self.follow_write_up(ctx, has_write_up);
    }

    /// Whether what lay over the window is still going: until then, nothing below can have the focus.
    pub(in crate::app) fn is_waiting(&self) -> bool {
        self.frames_left.is_some()
    }

    fn note(&mut self, ctx: &Context) {
        if self.frames_left.is_some() {
            return;
        }
        let focused = ctx.memory(egui::Memory::focused);
        let is_pressing = ctx.input(|i| {
            let pointer = &i.pointer;
            pointer.any_down() || pointer.any_pressed() || pointer.any_released()
        });
        if focused.is_some() || !(is_pressing || self.was_pressing) {
            self.place = focused;
        }
        self.was_pressing = is_pressing;
    }

    fn give_back(&mut self, ctx: &Context) {
        match self.frames_left {
            None => {}
            Some(0) => {
                self.frames_left = None;
                end_tabbing(ctx);
                let focused = ctx.memory(egui::Memory::focused);
                let has_moved = focused.and_then(|id| layer_of(ctx, id));
                let has_moved = has_moved.is_some_and(|layer| layer.order < Order::Foreground);
                if let Some(place) = self.place.filter(|_| !has_moved) {
                    ctx.memory_mut(|m| m.request_focus(place));
                }
            }
            Some(frames) => {
                self.frames_left = Some(frames - 1);
                ctx.request_repaint();
            }
        }
    }

    fn follow_write_up(&mut self, ctx: &Context, is_open: bool) {
        let had_write_up = std::mem::replace(&mut self.has_write_up, is_open);
        if is_open && !had_write_up {
            self.before_write_up = self.place;
        }
        if is_open || !had_write_up {
            return;
        }
        let focused = ctx.memory(egui::Memory::focused);
        let layer = focused.and_then(|id| layer_of(ctx, id));
        if layer.is_none_or(|layer| layer.order == Order::Middle) {
            self.place = self.before_write_up;
            if let Some(before) = self.place.filter(|_| self.over == Over::Nothing) {
                ctx.memory_mut(|m| m.request_focus(before));
            }
        }
    }
}
