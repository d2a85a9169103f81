//! Is the document out of reach while a question is open?

use super::SECOND;
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::NodeT;
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

/// Everything behind a dialog that a screen reader could click.
fn clickable(window: &Window) -> Vec<(Role, String)> {
    let nodes = window.nodes().map(|node| node.accesskit_node());
    let kinds = [Role::Button, Role::CheckBox, Role::RadioButton, Role::Row];
    let nodes = nodes.filter(|node| kinds.contains(&node.role()));
    let all: Vec<_> = nodes
        .filter_map(|node| Some((node.role(), node.label()?)))
        .collect();
    let is_single = |of: &&(Role, String)| all.iter().filter(|other| other == of).count() == 1;
    all.iter().filter(is_single).cloned().collect()
}

#[test]
fn no_click_of_a_screen_reader_works_behind_a_dialog() {
    for dialog in [Key::O, Key::K, Key::F1, Key::V, Key::N] {
        let mut window = Opening::on(camper_van()).in_file("van.ron").open();
        window.ctrl(Key::U);
        let behind = clickable(&window);
        assert!(behind.len() > 30, "{}", behind.len());
        match dialog {
            Key::F1 => window.key(Key::F1),
            Key::V => window.ctrl_shift(Key::V),
            key => window.ctrl(key),
        }
        let (before, message) = (window.project().clone(), window.app().message().to_owned());
        for (role, name) in behind {
            let found = window.all(role, &name);
            // In the dialog something may have the same name.
            let Some(node) = found.first().filter(|_| found.len() == 1) else {
                continue;
            };
            assert!(node.accesskit_node().is_disabled(), "{dialog:?}: {name}");
            node.click_accesskit();
            window.settle();
            assert!(*window.project() == before, "{dialog:?}: {name}");
            assert_eq!(window.app().message(), message, "{dialog:?}: {name}");
        }
        assert!(window.copied().is_empty());
        window.key(Key::Escape);
        assert!(*window.project() == before);
        assert!(window.commands().is_empty());
    }
}

#[test]
fn the_write_up_behind_a_dialog_is_out_of_reach_too() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::E);
    window.key(Key::F1);
    let before = window.project().clone();
    for (role, name) in [
        (Role::RadioButton, "Bench page, A4"),
        (Role::CheckBox, "with the note"),
        (Role::Button, "Save picture…"),
        (Role::Button, "Close window"),
    ] {
        window.get(role, name).click_accesskit();
        window.settle();
    }
    assert!(*window.project() == before);
    assert_eq!(window.picker.calls(), 0);
    window.key(Key::Escape);
    assert!(window.find(Role::Button, "Save picture…").is_some());
}

#[test]
fn a_half_typed_text_outlives_a_dialog() {
    for text in ["4x", "4100"] {
        let mut window = Window::on_camper_van();
        window.type_in("Redline, rpm", text);
        window.key(Key::F1);
        window.key(Key::Escape);
        assert_eq!(window.text("Redline, rpm"), text);
        assert_eq!(window.focused(), "Redline, rpm");
    }
}
