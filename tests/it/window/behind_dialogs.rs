//! Is the document out of reach while a question is open?

use super::SECOND;
use crate::support::window::{KINDS, Opening, Window, camper_van};
use egui::accesskit::{Action, ActionRequest, NodeId, Role, TreeId};
use egui::{Event, Key, Modifiers, Rect, Shape, vec2};
use egui_kittest::Node;
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

/// How opaque the words on a button of the menu bar are.
fn opacity(window: &Window, words: &str) -> f32 {
    let shapes = &window.harness.output().shapes;
    let texts = shapes.iter().filter_map(|clipped| match &clipped.shape {
        Shape::Text(text) if text.galley.text() == words => Some(text),
        _ => None,
    });
    let mut opaque =
        texts.map(|text| text.opacity_factor * f32::from(text.fallback_color.a()) / 255.0);
    opaque.next_back().unwrap()
}

#[test]
fn what_cannot_be_used_is_pale_under_a_dialog_too() {
    for dialog in [None, Some(Key::F1)] {
        // High enough for what stands beneath the cards.
        let mut window = Opening::on(camper_van()).sized(1280.0, 1300.0).open();
        if let Some(key) = dialog {
            window.key(key);
        }
        let [file, undo, copy] = ["File", "Undo", "Duplicate set"].map(|w| opacity(&window, w));
        assert!(
            undo < file - 0.2 && copy < file - 0.2,
            "{file} {undo} {copy}"
        );
    }
}

/// Everything outside a dialog that a screen reader could click, with its name.
fn clickable(window: &Window, dialog: Node<'_>) -> Vec<(NodeId, String)> {
    let id = |node: Node<'_>| node.accesskit_node().locate().0;
    let inside: Vec<NodeId> = dialog.children_recursive().map(id).collect();
    let outside = window.nodes().filter(|node| !inside.contains(&id(*node)));
    let kinds = [
        Role::Button,
        Role::CheckBox,
        Role::DisclosureTriangle,
        Role::RadioButton,
        Role::Row,
        Role::Slider,
        Role::Splitter,
        Role::TextInput,
    ];
    let outside = outside.filter(|node| kinds.contains(&node.accesskit_node().role()));
    let named = outside.map(|node| {
        let name = node.accesskit_node().label().unwrap_or_default();
        assert!(node.accesskit_node().is_disabled(), "{name}");
        (id(node), name)
    });
    named.collect()
}

#[test]
fn no_click_of_a_screen_reader_works_behind_a_dialog() {
    for kind in KINDS {
        let mut window = kind.window([1280.0, 800.0]);
        let behind = clickable(&window, kind.node(&window));
        assert!(behind.len() > 30, "{}: {}", kind.file, behind.len());
        let (project, calls) = (window.project().clone(), window.picker.calls());
        let told = window.app().message().to_owned();
        let names = window.names(Role::Button);
        for (id, name) in behind {
            let request = |action| {
                Event::AccessKitActionRequest(ActionRequest {
                    action,
                    target_tree: TreeId::ROOT,
                    target_node: id,
                    data: None,
                })
            };
            let actions = [Action::Click, Action::Focus, Action::Increment];
            window.frame(actions.map(request).to_vec());
            assert!(*window.project() == project, "{}: {name}", kind.file);
            assert_eq!(window.app().message(), told, "{}: {name}", kind.file);
            assert_eq!(window.focused(), kind.focus, "{}: {name}", kind.file);
        }
        window.settle();
        assert!(*window.project() == project, "{}", kind.file);
        // What was folded is folded, and no menu has opened.
        assert_eq!(window.names(Role::Button), names, "{}", kind.file);
        kind.node(&window);
        assert_eq!(window.picker.calls(), calls, "{}", kind.file);
        assert!(window.copied().is_empty());
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

#[test]
fn the_write_up_behind_a_dialog_is_not_seen_through() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::E);
    window.wait_for_picture();
    let at = window.get(Role::Window, "Write-up").rect();
    window.get(Role::Button, "Save picture…").focus();
    window.settle();
    window.key(Key::Enter);
    assert!(window.find(Role::Dialog, "Save the picture").is_some());
    let mut grounds = Vec::new();
    for clipped in &window.harness.output().shapes {
        add_grounds(&clipped.shape, at, &mut grounds);
    }
    assert!(grounds.contains(&255), "{grounds:?}");
}

/// Adds the opacity of every filled rectangle that is as large as a window.
fn add_grounds(shape: &Shape, window: Rect, grounds: &mut Vec<u8>) {
    match shape {
        Shape::Vec(shapes) => {
            for shape in shapes {
                add_grounds(shape, window, grounds);
            }
        }
        Shape::Rect(rect) => {
            let is_as_large = rect.rect.contains_rect(window.shrink(8.0))
                && window.expand(8.0).contains_rect(rect.rect);
            if is_as_large {
                grounds.push(rect.fill.a());
            }
        }
        _ => {}
    }
}
