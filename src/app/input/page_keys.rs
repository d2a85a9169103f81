//! Which keys scroll a long text, and how far?

use crate::app::input::steps;
use egui::style::ScrollAnimation;
use egui::{Context, Key, Ui, vec2};

/// Farther than anything is long, in points.
const TO_THE_END: f32 = 1e6;

/// What an arrow scrolls by, in points.
const LINE: f32 = 40.0;

/// What an arrow to the side scrolls by, in points: about a column.
const ASIDE: f32 = 80.0;

/// How far the keys of a frame scroll.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(in crate::app) struct Scroll {
    pages: isize,
    lines: isize,
    ends: isize,
    sideways: isize,
}

impl Scroll {
    /// Takes Page Up, Page Down, Home and End, and the arrows too.
    pub(in crate::app) fn taken_with_arrows(ctx: &Context) -> Self {
        Self {
            lines: steps(ctx, Key::ArrowDown, Key::ArrowUp),
            ..Self::taken(ctx)
        }
    }

    /// Takes Page Up, Page Down, Home and End, and the arrows to the sides too.
    pub(in crate::app) fn taken_with_sides(ctx: &Context) -> Self {
        Self {
            sideways: steps(ctx, Key::ArrowRight, Key::ArrowLeft),
            ..Self::taken(ctx)
        }
    }

    /// Takes Page Up, Page Down, Home and End.
    pub(in crate::app) fn taken(ctx: &Context) -> Self {
        Self {
            ends: steps(ctx, Key::End, Key::Home),
            ..Self::taken_by_page(ctx)
        }
    }

    /// Takes Page Up and Page Down: Home and End belong to a text field.
    pub(in crate::app) fn taken_by_page(ctx: &Context) -> Self {
        Self {
            pages: steps(ctx, Key::PageDown, Key::PageUp),
            ..Self::default()
        }
    }

    /// Scrolls the area whose contents `ui` is laying out.
    pub(in crate::app) fn apply(self, ui: &Ui) {
        if self == Self::default() {
            return;
        }
        let page = (ui.clip_rect().height() - LINE).max(LINE);
        let down =
            self.pages as f32 * page + self.lines as f32 * LINE + self.ends as f32 * TO_THE_END;
        let aside = self.sideways as f32 * ASIDE;
        ui.scroll_with_delta_animation(vec2(-aside, -down), ScrollAnimation::none());
    }
}
