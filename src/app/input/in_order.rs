//! Which events of one slow frame must wait for the next?
//!
//! A key that leaves a field moves the focus before the frame is shown, and a command looks at what
//! was typed: what is pressed before and behind it within one frame would go to the wrong field, or be
//! saved without its end.
//! A press of the pointer is looked up where the pointer is when the frame ends, among what the frame
//! before has shown there: it must be alone with a pointer that was there already.

use super::keys_taken::pressed;
use egui::{Context, Event, Id, Key, Plugin, Pos2, RawInput, TouchPhase};
use std::collections::VecDeque;

/// Hands every frame of a context as many events as it can answer, in their order; the others wait
/// for the frames after it.
#[derive(Debug, Default)]
pub(in crate::app) struct InputInOrder {
    waiting: VecDeque<Event>,
    /// Where the pointer was when the frame before ended.
    pointer: Option<Pos2>,
}

/// How many frames pass until what has opened can be seen and has the focus: the first one measures it.
const FRAMES_TO_OPEN: u64 = 2;

/// Lets keys wait until what has opened or closed in this frame has taken the focus or given it back.
pub(in crate::app) fn hold_keys(ctx: &Context) {
    let until = ctx.cumulative_frame_nr() + FRAMES_TO_OPEN;
    ctx.data_mut(|d| d.insert_temp(held_id(), until));
    ctx.request_repaint();
}

/// Whether keys still wait in the frame that begins.
fn are_keys_held(ctx: &Context) -> bool {
    let until: Option<u64> = ctx.data(|d| d.get_temp(held_id()));
    until.is_some_and(|until| ctx.cumulative_frame_nr() <= until)
}

fn held_id() -> Id {
    Id::unique("keys are held")
}

impl Plugin for InputInOrder {
    fn debug_name(&self) -> &'static str {
        "input in order"
    }

    fn input_hook(&mut self, ctx: &Context, input: &mut RawInput) {
        self.waiting.extend(input.events.drain(..));
        input.events = self.next_frame(are_keys_held(ctx));
        if !self.waiting.is_empty() {
            ctx.request_repaint();
        }
    }
}

impl InputInOrder {
    /// Takes the events that the next frame can answer.
    fn next_frame(&mut self, are_keys_held: bool) -> Vec<Event> {
        let mut frame = Frame::begun_with(self.pointer);
        let mut events = Vec::new();
        while let Some(event) = self.waiting.front() {
            if let Some(place) = frame.unseen_place(event) {
                events.push(Event::PointerMoved(place));
                frame.pointer = Some(place);
                break;
            }
            if frame.is_too_full_for(event) || (are_keys_held && is_press(event)) {
                break;
            }
            frame.note(event);
            events.extend(self.waiting.pop_front());
        }
        self.pointer = frame.pointer;
        events
    }
}

/// What a frame has to answer so far.
#[derive(Debug, Default)]
#[expect(clippy::struct_excessive_bools, reason = "each is a fact of its own")]
struct Frame {
    /// Where the pointer was when it began.
    pointer_before: Option<Pos2>,
    /// Where the pointer is now.
    pointer: Option<Pos2>,
    has_moved: bool,
    /// Whether a button of the pointer went down.
    has_pressed: bool,
    /// Whether a button of the pointer went down or up.
    has_clicked: bool,
    has_typed: bool,
    /// Whether a key took the focus elsewhere, or may have.
    has_left: bool,
    /// Whether the last key was Alt with a letter, which sends that letter as a text too.
    awaits_letter: bool,
}

impl Frame {
    fn begun_with(pointer: Option<Pos2>) -> Self {
        Self {
            pointer_before: pointer,
            pointer,
            ..Self::default()
        }
    }

    /// The place of a button's press or release where the pointer has not been.
    fn unseen_place(&self, event: &Event) -> Option<Pos2> {
        match event {
            Event::PointerButton { pos, .. } if !self.has_pressed => {
                (self.pointer != Some(*pos)).then_some(*pos)
            }
            _ => None,
        }
    }

    /// Whether an event cannot be answered together with what the frame has already.
    fn is_too_full_for(&self, event: &Event) -> bool {
        match event {
            Event::PointerButton { pressed: false, .. }
            | Event::Touch {
                phase: TouchPhase::End | TouchPhase::Cancel,
                ..
            } => self.has_pressed || self.has_moved,
            Event::PointerMoved(_) | Event::PointerGone | Event::Touch { .. } => self.has_pressed,
            Event::PointerButton { pos, .. } => {
                let has_keys = self.has_typed || self.has_left;
                self.has_pressed || has_keys || self.pointer_before != Some(*pos)
            }
            Event::Text(_) if self.awaits_letter => false,
            // The focus moves before the frame is shown: what was typed would go along with it.
            _ if self.has_typed && leaves_a_field(event) => true,
            _ => (self.has_left || self.has_clicked) && is_press(event),
        }
    }

    fn note(&mut self, event: &Event) {
        match event {
            Event::PointerMoved(place) => {
                self.has_moved |= self.pointer != Some(*place);
                self.pointer = Some(*place);
            }
            Event::PointerGone => self.pointer = None,
            Event::PointerButton { pressed, .. } => {
                self.has_pressed |= pressed;
                self.has_clicked = true;
            }
            _ => {
                self.has_typed |= is_typing(event);
                self.has_left |= leaves_a_field(event);
                self.awaits_letter = is_alt_letter(event);
            }
        }
    }
}

fn is_typing(event: &Event) -> bool {
    let is_text = matches!(event, Event::Text(_) | Event::Paste(_) | Event::Cut);
    is_text || matches!(pressed(event), Some((Key::Backspace | Key::Delete, _)))
}

fn is_press(event: &Event) -> bool {
    is_typing(event) || pressed(event).is_some()
}

fn leaves_a_field(event: &Event) -> bool {
    use Key::{ArrowDown, ArrowLeft, ArrowRight, ArrowUp, Enter, Escape, F6, F10, Menu, Tab};
    let leaves = matches!(
        pressed(event),
        Some((
            Enter | Tab | Escape | ArrowUp | ArrowDown | ArrowLeft | ArrowRight | F6 | F10 | Menu,
            _
        ))
    );
    leaves || is_alt_letter(event) || is_command(event)
}

fn is_alt_letter(event: &Event) -> bool {
    pressed(event).is_some_and(|(key, modifiers)| {
        modifiers.alt && !modifiers.command && (Key::A..=Key::Z).contains(&key)
    })
}

fn is_command(event: &Event) -> bool {
    pressed(event).is_some_and(|(key, modifiers)| modifiers.command || key == Key::F1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::input::press as key;
    use egui::{Modifiers, PointerButton, TouchDeviceId, TouchId, pos2};
    use proptest::prelude::*;
    use proptest::sample::select;

    const HERE: Pos2 = pos2(10.0, 20.0);
    const THERE: Pos2 = pos2(10.0, 90.0);

    fn text(text: &str) -> Event {
        Event::Text(text.to_owned())
    }

    fn button(pos: Pos2, pressed: bool) -> Event {
        Event::PointerButton {
            pos,
            button: PointerButton::Primary,
            pressed,
            modifiers: Modifiers::NONE,
        }
    }

    fn touch(pos: Pos2, phase: TouchPhase) -> Event {
        Event::Touch {
            device_id: TouchDeviceId(1),
            id: TouchId(1),
            phase,
            pos,
            force: None,
        }
    }

    /// What each frame gets, of which the first brings all events.
    fn frames(events: &[Event]) -> Vec<Vec<Event>> {
        frames_of(vec![events.to_vec()])
    }

    /// What each frame gets when these come in frame after frame, until nothing waits.
    fn frames_of(coming: Vec<Vec<Event>>) -> Vec<Vec<Event>> {
        let ctx = Context::default();
        let mut input_in_order = InputInOrder::default();
        let mut coming = coming.into_iter();
        let mut frames = Vec::new();
        loop {
            let next = coming.next();
            if next.is_none() && input_in_order.waiting.is_empty() {
                return frames;
            }
            let mut input = RawInput {
                events: next.unwrap_or_default(),
                ..RawInput::default()
            };
            let waiting = input_in_order.waiting.len() + input.events.len();
            input_in_order.input_hook(&ctx, &mut input);
            assert!(waiting == 0 || !input.events.is_empty(), "a frame stands");
            frames.push(input.events);
        }
    }

    #[test]
    fn a_key_that_leaves_the_field_waits_for_what_was_typed_and_what_follows_for_it() {
        let leaving = [
            key(Key::Enter, Modifiers::NONE),
            key(Key::F6, Modifiers::SHIFT),
            key(Key::F10, Modifiers::NONE),
            key(Key::Menu, Modifiers::NONE),
            key(Key::K, Modifiers::COMMAND),
            key(Key::V, Modifiers::ALT),
        ];
        for leaves in leaving {
            let next = key(Key::Num1, Modifiers::NONE);
            let events = [text("3"), leaves.clone(), next.clone(), text("1")];
            let got = frames(&events);
            let wanted = [vec![text("3")], vec![leaves], vec![next, text("1")]];
            assert_eq!(got, wanted);
        }
    }

    #[test]
    fn a_command_waits_for_what_was_typed_before_it() {
        let save = key(Key::S, Modifiers::COMMAND);
        let got = frames(&[text("5"), save.clone()]);
        assert_eq!(got, [vec![text("5")], vec![save]]);
    }

    #[test]
    fn the_text_that_comes_with_alt_and_a_letter_comes_with_them() {
        let menu = key(Key::F, Modifiers::ALT);
        let got = frames(&[menu.clone(), text("f"), text("o")]);
        assert_eq!(got, [vec![menu, text("f")], vec![text("o")]]);
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
        for events in [
            vec![text("3"), text("."), text("5")],
            vec![key(Key::Enter, Modifiers::NONE), release],
            vec![Event::PointerMoved(HERE), Event::PointerMoved(THERE)],
        ] {
            assert_eq!(frames(&events), [events]);
        }
    }

    #[test]
    fn a_press_is_alone_with_a_pointer_that_was_there() {
        let moved = Event::PointerMoved;
        let (press, release) = (button(HERE, true), button(THERE, false));
        let events = [
            moved(HERE),
            press.clone(),
            moved(THERE),
            release.clone(),
            Event::PointerGone,
        ];
        let wanted = [
            vec![moved(HERE)],
            vec![press],
            vec![moved(THERE)],
            vec![release, Event::PointerGone],
        ];
        assert_eq!(frames(&events), wanted);
    }

    #[test]
    fn a_press_where_the_pointer_was_not_moves_it_there_first() {
        let press = button(HERE, true);
        let moved = Event::PointerMoved(HERE);
        let got = frames(std::slice::from_ref(&press));
        assert_eq!(got, [vec![moved], vec![press]]);
    }

    #[test]
    fn a_touch_and_the_pointer_that_stands_for_it_stay_together() {
        let moved = Event::PointerMoved;
        let events = [
            touch(HERE, TouchPhase::Start),
            moved(HERE),
            button(HERE, true),
            touch(THERE, TouchPhase::Move),
            moved(THERE),
            touch(THERE, TouchPhase::End),
            button(THERE, false),
            Event::PointerGone,
        ];
        let got = frames(&events);
        let wanted = [&events[..2], &events[2..3], &events[3..5], &events[5..]];
        assert_eq!(got, wanted);
    }

    #[test]
    fn keys_and_presses_of_the_pointer_wait_for_each_other() {
        let (press, release) = (button(HERE, true), button(HERE, false));
        let moved = Event::PointerMoved(HERE);
        let escape = key(Key::Escape, Modifiers::NONE);
        let events = [moved, press, release, escape, button(HERE, true)];
        let got = frames(&events);
        assert_eq!(got.len(), 5);
        assert_eq!(got.concat(), events);
    }

    fn any_event() -> impl Strategy<Value = Event> {
        let places = vec![HERE, THERE, pos2(5.0, 5.0)];
        let at = move || select(places.clone());
        let keys = vec![
            (Key::Enter, Modifiers::NONE),
            (Key::ArrowUp, Modifiers::SHIFT),
            (Key::Backspace, Modifiers::NONE),
            (Key::A, Modifiers::NONE),
            (Key::F, Modifiers::ALT),
            (Key::S, Modifiers::COMMAND),
            (Key::F6, Modifiers::NONE),
        ];
        let phases = vec![
            TouchPhase::Start,
            TouchPhase::Move,
            TouchPhase::End,
            TouchPhase::Cancel,
        ];
        prop_oneof![
            4 => at().prop_map(Event::PointerMoved),
            4 => (at(), any::<bool>()).prop_map(|(at, pressed)| button(at, pressed)),
            1 => Just(Event::PointerGone),
            2 => (at(), select(phases)).prop_map(|(at, phase)| touch(at, phase)),
            3 => select(keys).prop_map(|(k, modifiers)| key(k, modifiers)),
            2 => "[a-z0-9]".prop_map(Event::Text),
            1 => Just(Event::Cut),
            1 => Just(Event::Zoom(1.5)),
            1 => Just(Event::ModifiersChanged(Modifiers::SHIFT)),
            1 => any::<bool>().prop_map(Event::WindowFocused),
        ]
    }

    /// Takes away the moves that were put before a press or a release.
    fn without_added(given: &[Event], got: &[Event]) -> Vec<Event> {
        let mut given = given.iter().peekable();
        let is_given = |event: &&Event| {
            given.next_if_eq(event).is_some() || !matches!(event, Event::PointerMoved(_))
        };
        got.iter().filter(is_given).cloned().collect()
    }

    proptest! {
        #[test]
        fn any_events_come_out_complete_and_in_order(
            coming in proptest::collection::vec(proptest::collection::vec(any_event(), 0..6), 0..8)
        ) {
            let given = coming.concat();
            let frames = frames_of(coming);
            prop_assert_eq!(without_added(&given, &frames.concat()), given);
        }

        #[test]
        fn nothing_of_the_pointer_follows_a_press_within_its_frame(
            coming in proptest::collection::vec(proptest::collection::vec(any_event(), 0..6), 0..8)
        ) {
            let is_press = |event: &Event| matches!(event, Event::PointerButton { pressed: true, .. });
            let is_of_pointer = |event: &Event| matches!(
                event,
                Event::PointerButton { .. } | Event::PointerMoved(_) | Event::PointerGone
            );
            for frame in frames_of(coming) {
                let from_press = frame.iter().skip_while(|event| !is_press(event));
                prop_assert!(from_press.filter(|event| is_of_pointer(event)).count() <= 1);
            }
        }
    }
}
