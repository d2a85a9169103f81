//! Which keys of one slow frame must wait for the next?
//!
//! A key that leaves a field moves the focus, and a command looks at what was typed: what is pressed
//! before and behind it within one frame would go to the wrong field, or be saved without its end.

use egui::{Event, Key, Modifiers};

/// Takes off the events that belong to later frames, so that each key meets what the ones before it
/// have done.
pub(super) fn held_back(events: &mut Vec<Event>) -> Vec<Event> {
    let mut has_typed = false;
    for at in 0..events.len() {
        let event = &events[at];
        if has_typed && is_command(event) {
            return events.split_off(at);
        }
        has_typed |= is_typing(event);
        let next = at + 1 + usize::from(is_letter_of(event, events.get(at + 1)));
        if leaves_a_field(event) && events[next..].iter().any(is_press) {
            return events.split_off(next);
        }
    }
    Vec::new()
}

fn is_typing(event: &Event) -> bool {
    let is_text = matches!(event, Event::Text(_) | Event::Paste(_) | Event::Cut);
    is_text || matches!(pressed(event), Some((Key::Backspace | Key::Delete, _)))
}

fn is_press(event: &Event) -> bool {
    is_typing(event) || pressed(event).is_some()
}

fn leaves_a_field(event: &Event) -> bool {
    use Key::{ArrowDown, ArrowUp, Enter, Escape, F6, F10, Menu, Tab};
    opens_a_menu(event)
        || matches!(
            pressed(event),
            Some((
                Enter | Tab | Escape | ArrowUp | ArrowDown | F6 | F10 | Menu,
                _
            ))
        )
}

/// Whether a key was pressed together with Alt alone.
fn opens_a_menu(event: &Event) -> bool {
    pressed(event).is_some_and(|(_, modifiers)| modifiers == Modifiers::ALT)
}

/// Whether `next` is the letter that comes with a key that opens a menu.
fn is_letter_of(event: &Event, next: Option<&Event>) -> bool {
    opens_a_menu(event) && matches!(next, Some(Event::Text(_)))
}

fn is_command(event: &Event) -> bool {
    pressed(event).is_some_and(|(key, modifiers)| modifiers.command || key == Key::F1)
}

fn pressed(event: &Event) -> Option<(Key, Modifiers)> {
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

#[cfg(test)]
mod tests {
    use super::*;

    fn key(key: Key, modifiers: Modifiers) -> Event {
        Event::Key {
            key,
            physical_key: None,
            pressed: true,
            repeat: false,
            modifiers,
        }
    }

    fn text(text: &str) -> Event {
        Event::Text(text.to_owned())
    }

    #[test]
    fn what_follows_a_key_that_leaves_the_field_waits() {
        let mut events = vec![text("3"), key(Key::Enter, Modifiers::NONE), text("1")];
        assert_eq!(held_back(&mut events), [text("1")]);
        assert_eq!(events.len(), 2);
    }

    #[test]
    fn what_follows_a_key_that_opens_a_menu_waits_but_not_its_letter() {
        let alt_f = key(Key::F, Modifiers::ALT);
        let down = key(Key::ArrowDown, Modifiers::NONE);
        let mut events = vec![alt_f.clone(), text("f"), down.clone()];
        assert_eq!(held_back(&mut events), std::slice::from_ref(&down));
        assert_eq!(events, [alt_f, text("f")]);
        let mut events = vec![key(Key::F10, Modifiers::NONE), down.clone()];
        assert_eq!(held_back(&mut events), [down]);
    }

    #[test]
    fn a_command_waits_for_what_was_typed_before_it() {
        let save = key(Key::S, Modifiers::COMMAND);
        let mut events = vec![text("5"), save.clone()];
        assert_eq!(held_back(&mut events).len(), 1);
        assert_eq!(events, [text("5")]);
        let mut events = vec![save, text("5")];
        assert!(held_back(&mut events).is_empty());
    }

    #[test]
    fn typing_alone_and_moving_alone_do_not_wait() {
        let release = Event::Key {
            key: Key::Enter,
            physical_key: None,
            pressed: false,
            repeat: false,
            modifiers: Modifiers::NONE,
        };
        let mut typing = vec![text("3"), text("."), text("5")];
        assert!(held_back(&mut typing).is_empty());
        let mut enter = vec![text("3"), key(Key::Enter, Modifiers::NONE), release];
        assert!(held_back(&mut enter).is_empty());
    }
}
