//! What can be done to a window, by pointer, key and name.

use super::Window;
use egui::accesskit::Role;
use egui::{
    Event, Key, Modifiers, OutputCommand, PointerButton, Pos2, Rect, Vec2, ViewportCommand,
    ViewportId,
};
use layshaft::project::{Project, View};
use std::path::Path;
use std::time::{Duration, Instant};

/// A key that goes down.
pub(crate) fn press(modifiers: Modifiers, key: Key) -> Event {
    Event::Key {
        key,
        physical_key: None,
        pressed: true,
        repeat: false,
        modifiers,
    }
}

impl Window {
    /// One frame with one event.
    pub(crate) fn event(&mut self, event: Event) {
        self.harness.event(event);
        self.harness.step();
        self.take_copies();
    }

    /// One frame with several events, as they come when frames are slow.
    pub(crate) fn frame(&mut self, events: Vec<Event>) {
        self.harness.input_mut().events.extend(events);
        self.harness.step();
    }

    fn take_copies(&mut self) {
        let commands = &self.harness.output().platform_output.commands;
        let texts = commands.iter().filter_map(|command| match command {
            OutputCommand::CopyText(text) => Some(text.clone()),
            _ => None,
        });
        self.clipboard.extend(texts);
    }

    /// Lets so many seconds of the window's clock pass in one frame.
    fn pass(&mut self, seconds: f64) {
        let now = self.harness.ctx.input(|i| i.time);
        self.harness.input_mut().time = Some(now + seconds);
        self.harness.step();
        // From here on it goes by the frame again.
        self.harness.input_mut().time = None;
    }

    // The pointer.

    pub(crate) fn move_to(&mut self, at: Pos2) {
        self.event(Event::PointerMoved(at));
    }

    /// Moves to a place and lets the window settle.
    pub(crate) fn rest_at(&mut self, at: Pos2) {
        self.move_to(at);
        self.settle();
    }

    /// Rests the pointer on something, until a submenu has opened.
    #[track_caller]
    pub(crate) fn move_onto(&mut self, role: Role, name: &str) {
        let at = self.get(role, name).rect().center();
        self.rest_at(at);
        self.pause();
    }

    pub(crate) fn press(&mut self, at: Pos2) {
        self.button(at, true);
    }

    pub(crate) fn release(&mut self, at: Pos2) {
        self.button(at, false);
    }

    fn button(&mut self, pos: Pos2, pressed: bool) {
        self.event(Event::PointerButton {
            pos,
            button: PointerButton::Primary,
            pressed,
            modifiers: Modifiers::NONE,
        });
    }

    /// Takes hold at one place and moves to another in a few steps, without letting go.
    pub(crate) fn hold(&mut self, from: Pos2, to: Pos2) {
        self.move_to(from);
        self.press(from);
        for share in [0.3, 0.7, 1.0] {
            self.move_to(from + (to - from) * share);
        }
    }

    /// A whole drag.
    pub(crate) fn drag(&mut self, from: Pos2, to: Pos2) {
        self.hold(from, to);
        self.release(to);
        self.settle();
    }

    /// Turns the wheel towards (positive) or away from the diagram.
    pub(crate) fn wheel(&mut self, at: Pos2, points: f32) {
        self.move_to(at);
        self.event(Event::MouseWheel {
            unit: egui::MouseWheelUnit::Point,
            delta: Vec2::new(0.0, points),
            phase: egui::TouchPhase::Move,
            modifiers: Modifiers::NONE,
            source: egui::MouseWheelSource::Wheel,
        });
        self.settle();
    }

    /// Clicks at a place, frame by frame.
    pub(crate) fn click_at(&mut self, pos: Pos2) {
        self.press_at(pos, PointerButton::Primary);
    }

    pub(crate) fn secondary_click_at(&mut self, pos: Pos2) {
        self.press_at(pos, PointerButton::Secondary);
    }

    /// Two clicks in one go.
    pub(crate) fn click_twice_at(&mut self, pos: Pos2) {
        self.click_at(pos);
        self.last_click = None;
        self.click_at(pos);
    }

    fn press_at(&mut self, pos: Pos2, button: PointerButton) {
        if self.last_click.replace(pos) == Some(pos) {
            // Else it would be a double click.
            self.pass(0.4);
        }
        self.event(Event::PointerMoved(pos));
        for pressed in [true, false] {
            self.event(Event::PointerButton {
                pos,
                button,
                pressed,
                modifiers: Modifiers::NONE,
            });
        }
        self.settle();
    }

    /// Clicks something by its name, scrolling to it first.
    #[track_caller]
    pub(crate) fn click_on(&mut self, role: Role, name: &str) {
        let at = self.shown(role, name).center();
        self.click_at(at);
    }

    /// Clicks a button by its name.
    #[track_caller]
    pub(crate) fn click(&mut self, name: &str) {
        self.click_on(Role::Button, name);
    }

    /// Looks at a view by its name in the row above the diagram; whether the window has it.
    pub(crate) fn look_at(&mut self, view: View) -> bool {
        for view in [view.with_table(), view] {
            if self.find(Role::Button, view.name()).is_some() {
                self.click(view.name());
            }
        }
        self.app().diagram().view == view
    }

    /// Clicks the lowest of several buttons of that name.
    pub(crate) fn click_lowest(&mut self, name: &str) {
        let buttons = self.all(Role::Button, name).into_iter();
        let places = buttons.map(|button| button.rect().center());
        let lowest = places.max_by(|a, b| a.y.total_cmp(&b.y)).unwrap();
        self.click_at(lowest);
    }

    /// Opens a menu and clicks something in it.
    #[track_caller]
    pub(crate) fn choose(&mut self, menu: &str, role: Role, name: &str) {
        self.click(menu);
        self.click_on(role, name);
    }

    /// Opens the card of a set, counted from 1, where it is folded.
    pub(crate) fn open_card(&mut self, set: usize) {
        let start = format!("Open set {set}, ");
        let folded = self.names(Role::Button).into_iter();
        if let Some(line) = folded.into_iter().find(|name| name.starts_with(&start)) {
            self.get(Role::Button, &line).click_accesskit();
            self.settle();
        }
    }

    /// Opens the card that something is on, where it is folded: its name ends with the set's number.
    fn unfold(&mut self, role: Role, name: &str) {
        let numbered = name.to_lowercase();
        let number = numbered.rsplit_once("set ").map(|(_, number)| number);
        let digit = number.and_then(|number| number.chars().next()?.to_digit(10));
        if let Some(digit) = digit
            && self.all(role, name).is_empty()
        {
            self.open_card(digit as usize);
        }
    }

    /// The place of something, scrolled into view where it is not.
    #[track_caller]
    pub(crate) fn shown(&mut self, role: Role, name: &str) -> Rect {
        self.unfold(role, name);
        let screen = self
            .harness
            .ctx
            .content_rect()
            .shrink2(Vec2::new(0.0, 40.0));
        let node = self.get(role, name);
        if role == Role::Row || !screen.contains_rect(node.rect()) {
            node.scroll_to_me();
            self.settle();
        }
        self.get(role, name).rect()
    }

    /// Presses a button by its name, wherever it is, as a screen reader does.
    #[track_caller]
    pub(crate) fn invoke(&mut self, name: &str) {
        self.get(Role::Button, name).click();
        self.settle();
    }

    // Keys.

    pub(crate) fn key(&mut self, key: Key) {
        self.key_with(Modifiers::NONE, key);
    }

    pub(crate) fn key_with(&mut self, modifiers: Modifiers, key: Key) {
        if modifiers != Modifiers::NONE {
            self.event(Event::ModifiersChanged(modifiers));
        }
        for pressed in [true, false] {
            self.event(Event::Key {
                key,
                pressed,
                modifiers,
                repeat: false,
                physical_key: None,
            });
        }
        if modifiers != Modifiers::NONE {
            self.event(Event::ModifiersChanged(Modifiers::NONE));
        }
        self.settle();
    }

    pub(crate) fn ctrl(&mut self, key: Key) {
        self.key_with(Modifiers::COMMAND, key);
    }

    pub(crate) fn ctrl_shift(&mut self, key: Key) {
        self.key_with(Modifiers::COMMAND | Modifiers::SHIFT, key);
    }

    pub(crate) fn focus_handle(&mut self, from: &str, to: &str) {
        self.handle(from, to).focus();
        self.settle();
    }

    /// A second in which nothing is typed.
    pub(crate) fn pause(&mut self) {
        self.pass(1.0);
        self.settle();
    }

    /// Waits until the write-up shows its picture, which is made in the background, and its size.
    pub(crate) fn wait_for_picture(&mut self) {
        let end = Instant::now() + Duration::from_mins(1);
        while !self.says(" kB") {
            assert!(Instant::now() < end, "the picture never came");
            std::thread::sleep(Duration::from_millis(2));
            self.harness.step();
        }
        self.settle();
    }

    // Fields and files.

    /// What stands in a field.
    #[track_caller]
    pub(crate) fn text(&mut self, field: &str) -> String {
        self.unfold(Role::TextInput, field);
        self.field(field).value().unwrap_or_default()
    }

    /// Clicks into a field, where all is selected then.
    #[track_caller]
    pub(crate) fn enter_field(&mut self, name: &str) {
        self.unfold(Role::TextInput, name);
        if self.focused() == name {
            self.ctrl(Key::A);
            return;
        }
        self.click_on(Role::TextInput, name);
        assert_eq!(self.focused(), name);
    }

    /// Types in whatever field has the focus, character by character.
    pub(crate) fn type_text(&mut self, text: &str) {
        for character in text.chars() {
            self.event(Event::Text(character.to_string()));
        }
        self.settle();
    }

    /// Goes into a field, where all is selected then, and types; does not leave it.
    #[track_caller]
    pub(crate) fn type_in(&mut self, field: &str, text: &str) {
        self.enter_field(field);
        if text.is_empty() {
            self.key(Key::Delete);
        }
        self.type_text(text);
    }

    /// Types in a field and takes it with Enter.
    #[track_caller]
    pub(crate) fn fill(&mut self, field: &str, text: &str) {
        self.type_in(field, text);
        self.key(Key::Enter);
    }

    /// Replaces what stands in the field that has the focus.
    pub(crate) fn type_over(&mut self, text: &str) {
        self.ctrl(Key::A);
        self.event(Event::Text(text.to_owned()));
        self.settle();
    }

    /// Asks for a file to be opened by typing its path.
    pub(crate) fn ask_to_open(&mut self, path: &Path) {
        self.ctrl(Key::O);
        self.give_path(path);
    }

    /// Gives the path that is asked for.
    #[track_caller]
    pub(crate) fn give_path(&mut self, path: &Path) {
        self.enter_field("Path");
        self.type_over(&path.display().to_string());
        self.key(Key::Enter);
    }

    /// Opens a file by typing its path.
    #[track_caller]
    pub(crate) fn open_by_path(&mut self, path: &Path) {
        self.ask_to_open(path);
        assert!(
            self.app().message().starts_with("Opened"),
            "{}",
            self.app().message()
        );
    }

    /// Undo, then redo: the documents before and after the last step come back equal.
    #[track_caller]
    pub(crate) fn check_step(&mut self, before: &Project) {
        let after = self.project().clone();
        assert!(after != *before, "nothing was changed");
        assert!(!self.is_in_gesture());
        self.click("Undo");
        assert!(self.project() == before, "it is not taken back whole");
        self.click("Redo");
        assert!(*self.project() == after, "it does not come back the same");
    }

    /// The window's close button; the commands that the program gave back.
    pub(crate) fn ask_to_close(&mut self) -> Vec<ViewportCommand> {
        let viewports = &mut self.harness.input_mut().viewports;
        let root = viewports.get_mut(&ViewportId::ROOT).unwrap();
        root.events.push(egui::ViewportEvent::Close);
        self.harness.step();
        let commands = self.commands();
        self.settle();
        commands
    }
}
