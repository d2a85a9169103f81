//! Which keys of a frame move the focus, and which does the focused stop keep for itself?

use super::stops::{Keeps, Stop};
use super::walking::Wish;
use crate::app::input::pressed;
use egui::{Context, Event, Key, Modifiers, TextEdit};

/// Takes the first key of this frame that moves the focus away from a stop.
pub(super) fn take(ctx: &Context, stop: Option<&Stop>) -> Option<Wish> {
    let edges = stop.map_or(Edges::BOTH, |stop| Edges::of(ctx, stop));
    ctx.input_mut(|input| {
        let wish_of = |event: &Event| wish(event, stop, edges);
        let at = input.events.iter().position(|e| wish_of(e).is_some())?;
        let event = input.events.remove(at);
        wish(&event, stop, edges)
    })
}

/// What a key asks for, unless the stop keeps it.
fn wish(event: &Event, stop: Option<&Stop>, edges: Edges) -> Option<Wish> {
    let (key, modifiers) = pressed(event)?;
    let back = modifiers.shift;
    let is_plain = modifiers.is_none();
    if !(is_plain || modifiers == Modifiers::SHIFT) {
        return None;
    }
    let keeps = stop.map(|stop| stop.keeps);
    let leaves = |kept: &[Keeps]| is_plain && keeps.is_some_and(|keeps| !kept.contains(&keeps));
    match key {
        Key::Tab => Some(Wish::Tab { back }),
        Key::F6 => Some(Wish::Pane { back }),
        Key::Enter if keeps == Some(Keeps::Line) => Some(Wish::Enter { back }),
        Key::ArrowUp if leaves(&[Keeps::Lines, Keeps::Upright, Keeps::Arrows]) => Some(Wish::Up),
        Key::ArrowDown if leaves(&[Keeps::Lines, Keeps::Upright, Keeps::Arrows]) => {
            Some(Wish::Down)
        }
        Key::ArrowLeft if edges.left && leaves(&[Keeps::Lines, Keeps::Level, Keeps::Arrows]) => {
            Some(Wish::Left)
        }
        Key::ArrowRight if edges.right && leaves(&[Keeps::Lines, Keeps::Level, Keeps::Arrows]) => {
            Some(Wish::Right)
        }
        _ => None,
    }
}

/// At which ends of its text the caret of a field stands: only there an arrow leaves it.
#[derive(Clone, Copy)]
struct Edges {
    left: bool,
    right: bool,
}

impl Edges {
    const BOTH: Self = Self {
        left: true,
        right: true,
    };

    fn of(ctx: &Context, stop: &Stop) -> Self {
        if !stop.is_field() {
            return Self::BOTH;
        }
        let state = TextEdit::load_state(ctx, stop.id);
        let Some(range) = state.and_then(|state| state.cursor.char_range()) else {
            return Self::BOTH;
        };
        let ends = [range.primary.index.0, range.secondary.index.0];
        let [from, to] = [ends[0].min(ends[1]), ends[0].max(ends[1])];
        let is_all = from == 0 && to >= stop.characters;
        Self {
            left: is_all || to == 0,
            right: is_all || from >= stop.characters,
        }
    }
}

/// Whether Esc was pressed, which takes the focus from whatever does not keep that key.
pub(super) fn is_given_up(ctx: &Context) -> bool {
    ctx.input(|i| i.key_pressed(Key::Escape))
}

/// Whether letters or figures come in this frame; a blank clicks a button.
pub(super) fn is_typing(ctx: &Context) -> bool {
    let is_letter = |event: &Event| matches!(event, Event::Text(text) if text.trim() != "");
    ctx.input(|i| i.events.iter().any(is_letter))
}
