//! Keys that somebody takes for himself, so that nobody else answers them.

use egui::{Context, Event, FocusDirection, Key, Modifiers};

/// How often a key without modifiers was pressed in this frame; the presses are used up, and an
/// arrow moves no focus any more.
pub(in crate::app) fn taken(ctx: &Context, wanted: Key) -> usize {
    let mut count = 0;
    ctx.input_mut(|input| {
        input.events.retain(|event| {
            let is_it = is_press(event, wanted);
            count += usize::from(is_it);
            !is_it
        });
    });
    if count > 0 {
        ctx.memory_mut(|m| m.move_focus(FocusDirection::None));
    }
    count
}

/// How far a pair of keys leads: the presses of the one less those of the other.
pub(in crate::app) fn steps(ctx: &Context, on: Key, back: Key) -> isize {
    taken(ctx, on).cast_signed() - taken(ctx, back).cast_signed()
}

fn is_press(event: &Event, wanted: Key) -> bool {
    pressed(event) == Some((wanted, Modifiers::NONE))
}

/// The key that was pressed, with its modifiers; none where the event is something else.
pub(in crate::app) fn pressed(event: &Event) -> Option<(Key, Modifiers)> {
    match event {
        Event::Key {
            key,
            pressed: true,
            modifiers,
            ..
        } => Some((*key, *modifiers)),
        _ => None,
    }
}

/// A key that goes down, for the tests.
#[cfg(test)]
pub(in crate::app) fn press(key: Key, modifiers: Modifiers) -> Event {
    Event::Key {
        key,
        physical_key: None,
        pressed: true,
        repeat: false,
        modifiers,
    }
}
