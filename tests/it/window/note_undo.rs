//! Does the note undo and redo like a text while it is typed in, and like a field once it is left?

use crate::support::window::{Window, press};
use egui::accesskit::Role;
use egui::{Key, Modifiers};

/// A window in whose note somebody types after all that stands there.
fn in_note() -> Window {
    let mut window = Window::on_camper_van();
    window.click_on(Role::DisclosureTriangle, "Date and note");
    window.click_on(Role::MultilineTextInput, "Note");
    window.key_with(Modifiers::COMMAND, Key::End);
    window
}

/// Types two lines.
fn type_lines(window: &mut Window) {
    window.key(Key::Enter);
    window.type_text("Two up.");
    window.key(Key::Enter);
    window.type_text("Cold start.");
}

/// What stands in the note beyond what stood there.
fn added(window: &Window) -> String {
    let before = Window::on_camper_van().project().note.as_str().to_owned();
    let note = window
        .get(Role::MultilineTextInput, "Note")
        .value()
        .unwrap();
    note.strip_prefix(&before).unwrap().to_owned()
}

#[test]
fn ctrl_z_takes_words_back_and_ctrl_y_brings_them_back() {
    let mut window = in_note();
    type_lines(&mut window);
    assert_eq!(added(&window), "\nTwo up.\nCold start.");
    window.ctrl(Key::Z);
    assert_eq!(added(&window), "\nTwo up.\nCold ");
    window.ctrl(Key::Z);
    assert_eq!(added(&window), "\nTwo up.\n");
    window.ctrl(Key::Y);
    window.ctrl_shift(Key::Z);
    assert_eq!(added(&window), "\nTwo up.\nCold start.");
    let shown = window.project().note.as_str();
    assert!(shown.ends_with("\nTwo up.\nCold start."));
    // What is typed goes on where the caret is: behind what came back.
    window.type_text(" Slow.");
    assert_eq!(added(&window), "\nTwo up.\nCold start. Slow.");
}

#[test]
fn a_pause_parts_what_is_taken_back() {
    let mut window = in_note();
    window.type_text(" gear");
    window.pause();
    window.pause();
    window.type_text("box");
    window.ctrl(Key::Z);
    assert_eq!(added(&window), " gear");
}

#[test]
fn presses_of_one_slow_frame_are_all_answered() {
    let mut window = in_note();
    type_lines(&mut window);
    let undo = press(Modifiers::COMMAND, Key::Z);
    window.frame(vec![undo.clone(), undo]);
    window.settle();
    assert_eq!(added(&window), "\nTwo up.\n");
}

#[test]
fn once_left_the_whole_typing_is_one_step() {
    let mut window = in_note();
    let before = window.project().clone();
    type_lines(&mut window);
    window.ctrl(Key::Z);
    window.ctrl(Key::Y);
    let after = window.project().clone();
    window.enter_field("Title");
    assert_eq!(window.undo_steps(), 1);
    window.ctrl(Key::Z);
    assert!(window.says("Undone: note"));
    assert!(*window.project() == before);
    assert_eq!(window.focused(), "Note");
    // Nothing is typed in it: the keys are the document's.
    window.ctrl(Key::Y);
    assert!(*window.project() == after);
}

#[test]
fn with_all_words_taken_back_undo_goes_on_to_the_document() {
    let mut window = Window::on_camper_van();
    window.fill("Redline, rpm", "4300");
    window.click_on(Role::DisclosureTriangle, "Date and note");
    window.click_on(Role::MultilineTextInput, "Note");
    window.type_text("x");
    window.ctrl(Key::Z);
    assert_eq!(window.undo_steps(), 1);
    // Redo is still the text's.
    window.ctrl(Key::Y);
    window.ctrl(Key::Z);
    window.ctrl(Key::Z);
    assert!(window.says("Undone: redline: 4300"));
    assert_eq!(window.focused(), "Redline, rpm");
}
