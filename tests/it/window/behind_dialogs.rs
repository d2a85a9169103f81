//! Is the document out of reach while a question is open?

use super::SECOND;
use crate::support::window::Window;
use egui::{Key, Modifiers, vec2};
use layshaft::app::Menu;

/// Opens a dialog while a handle has the focus.
fn with_dialog(key: Key) -> Window {
    let mut window = Window::on_camper_van();
    window.focus_handle("2", "3");
    match key {
        Key::F1 => window.key(Key::F1),
        _ => window.ctrl(key),
    }
    window
}

#[test]
fn no_key_reaches_a_handle() {
    for dialog in [Key::O, Key::S, Key::F1] {
        let mut window = with_dialog(dialog);
        let before = window.project().clone();
        window.key(Key::ArrowUp);
        window.key_with(Modifiers::SHIFT, Key::ArrowDown);
        window.ctrl(Key::D);
        window.ctrl(Key::U);
        assert_eq!(*window.project(), before, "{dialog:?}");
        window.key(Key::Escape);
        assert_eq!(*window.project(), before, "{dialog:?}");
    }
}

#[test]
fn no_pointer_reaches_a_handle_or_the_plot() {
    for dialog in [Key::O, Key::S, Key::F1] {
        let mut window = with_dialog(dialog);
        let before = window.project().clone();
        // The first handle stands beside the dialog, not beneath it.
        let at = window.handle_at("4", "5");
        window.drag(at, at + vec2(0.0, 40.0));
        assert_eq!(*window.project(), before, "{dialog:?}");
    }
}

#[test]
fn no_shortcut_opens_a_second_dialog() {
    let mut window = with_dialog(Key::O);
    window.ctrl(Key::S);
    assert!(window.says("Open a project"));
    assert!(!window.says("Save the project"));
    assert_eq!(window.picker.calls(), 1);
}

#[test]
fn a_handle_works_again_after_the_dialog() {
    let mut window = with_dialog(Key::O);
    window.key(Key::Escape);
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    assert_eq!(window.shifts(SECOND)[1], 3610);
}

#[test]
fn an_open_menu_closes_by_esc_and_keeps_the_document() {
    for menu in Menu::ALL {
        let mut window = Window::on_camper_van();
        let before = window.project().clone();
        window.invoke(menu.text());
        window.key(Key::Escape);
        assert_eq!(*window.project(), before);
        assert_eq!(window.undo_steps(), 0);
    }
}
