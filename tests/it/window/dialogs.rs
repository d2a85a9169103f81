//! Is every dialog heard, answered and left by key, and does the focus come back after it?

use crate::support::memory_disk::MemoryDisk;
use crate::support::window::{KINDS, Opening, Window, camper_van, change, for_dialogs};
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::NodeT;

const ORDINARY: [f32; 2] = [1280.0, 800.0];

/// A window with findings in which the redline is being typed.
fn window() -> Window {
    let mut window = for_dialogs().open();
    window.enter_field("Redline, rpm");
    window
}

#[test]
fn every_dialog_has_a_name_a_role_and_its_words_and_begins_with_the_focus() {
    for kind in KINDS {
        let window = kind.window(ORDINARY);
        let node = window.get(kind.role, kind.name).accesskit_node();
        assert!(node.is_modal(), "{}", kind.name);
        let words = node.data().description().unwrap_or_default();
        assert_eq!(
            words.is_empty(),
            kind.name == "Keys and cautions",
            "{words}"
        );
        assert_eq!(window.focused(), kind.focus, "{}", kind.name);
    }
}

#[test]
fn esc_leaves_every_dialog_and_the_focus_comes_back_to_where_it_was() {
    for kind in KINDS {
        let mut window = kind.window(ORDINARY);
        window.key(Key::Escape);
        assert!(window.find(kind.role, kind.name).is_none(), "{}", kind.name);
        assert_eq!(window.focused(), kind.back, "{}", kind.file);
        if kind.back != "Redline, rpm" {
            continue;
        }
        // It is typed in as if nothing had been between.
        window.type_over("4321");
        window.key(Key::Enter);
        let redline = window.project().engine.redline.rpm();
        assert!((redline - 4321.0).abs() < 1e-9, "{}: {redline}", kind.name);
    }
}

#[test]
fn tab_stays_within_a_dialog() {
    for kind in KINDS {
        let mut window = kind.window(ORDINARY);
        let mut seen = Vec::new();
        for _ in 0..12 {
            window.key(Key::Tab);
            seen.push(window.focused());
        }
        let fields = ["Redline, rpm", "Title", "Undo", "File"];
        assert!(
            seen.iter().all(|name| !fields.contains(&name.as_str())),
            "{}: {seen:?}",
            kind.name
        );
    }
}

#[test]
fn enter_is_the_answer_that_has_the_focus_and_no_other() {
    let mut window = window();
    change(&mut window);
    let changed = window.project().clone();
    window.ctrl(Key::N);
    window.key(Key::ArrowRight);
    assert_eq!(window.focused(), "Do not save");
    window.key(Key::ArrowRight);
    window.key(Key::ArrowRight);
    assert_eq!(window.focused(), "Cancel");
    window.key(Key::Enter);
    assert!(
        window
            .find(Role::AlertDialog, "Save the changes?")
            .is_none()
    );
    assert!(*window.project() == changed);
    assert!(window.says("(not saved)"), "nothing was saved");

    window.ctrl(Key::N);
    assert_eq!(window.focused(), "Save", "the question begins anew");
    window.key(Key::ArrowRight);
    window.key(Key::ArrowLeft);
    window.key(Key::Enter);
    assert!(*window.project() != changed, "the new project is there");
    let saved = window.disk.text("van.ron").unwrap();
    assert!(saved.contains("units: Mph"), "and the old one saved");
}

#[test]
fn a_question_that_follows_a_question_begins_on_its_own_safe_answer() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    change(&mut window);
    let theirs = window.disk.text("van.ron").unwrap();
    let theirs = theirs.replace("redline_rpm: 4500", "redline_rpm: 4444");
    window.disk.put("van.ron", &theirs);
    window.ctrl(Key::N);
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Save yours under another name");
    assert!(
        window
            .find(Role::AlertDialog, "The file has changed")
            .is_some()
    );
    // Changed once more, while the question stands.
    let again = theirs.replace("4444", "4445");
    window.disk.put("van.ron", &again);
    window.key(Key::ArrowRight);
    window.key(Key::Enter);
    assert!(
        window
            .find(Role::AlertDialog, "The file has changed")
            .is_some()
    );
    assert_eq!(window.focused(), "Save yours under another name");
    assert_eq!(window.disk.text("van.ron").unwrap(), again);
}

#[test]
fn enter_in_a_path_goes_on_and_on_cancel_it_cancels() {
    let mut window = window();
    window.ctrl_shift(Key::S);
    window.type_over(&MemoryDisk::path("new.ron").display().to_string());
    window.key(Key::Tab);
    window.key(Key::Tab);
    assert_eq!(window.focused(), "Cancel");
    window.key(Key::Enter);
    assert_eq!(window.disk.file_names(), ["van.ron"]);
    assert!(window.find(Role::Dialog, "Save the project").is_none());
}

#[test]
fn why_a_path_does_not_do_is_in_its_description_and_the_focus_stays_in_it() {
    let mut window = window();
    window.ctrl(Key::O);
    window.type_over("/nowhere/van.ron");
    window.key(Key::Enter);
    let field = window.field("Path").accesskit_node();
    let why = field.data().description().unwrap();
    assert!(why.contains("/nowhere/van.ron"), "{why}");
    assert_eq!(window.focused(), "Path");
}

#[test]
fn the_help_is_scrolled_by_key() {
    let mut window = Opening::on(camper_van()).small().open();
    window.key(Key::F1);
    let place = |window: &Window| {
        let mut labels = window.nodes();
        let first =
            labels.find(|node| node.accesskit_node().label().as_deref() == Some("Cautions"));
        first.unwrap().rect().top()
    };
    let at_first = place(&window);
    window.key(Key::ArrowDown);
    let by_line = place(&window);
    assert!(by_line < at_first - 10.0);
    window.key(Key::PageDown);
    let by_page = place(&window);
    assert!(by_page < by_line - 100.0);
    window.key(Key::PageUp);
    assert!((place(&window) - by_line).abs() < 1.0);
    window.key(Key::End);
    let at_end = place(&window);
    assert!(at_end < at_first - 100.0);
    window.key(Key::Home);
    let at_home = place(&window);
    assert!((at_home - at_first).abs() < 1.0, "{at_home} {at_first}");
    assert_eq!(window.focused(), "Close");
    window.key(Key::Enter);
    assert!(window.find(Role::Dialog, "Keys and cautions").is_none());
}

#[test]
fn the_focus_comes_back_though_a_dialog_was_opened_from_another() {
    let mut window = window();
    window.ctrl(Key::K);
    window.type_text("keys and");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Close");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Redline, rpm");
}

#[test]
fn without_a_focus_before_there_is_none_after() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::O);
    window.key(Key::Escape);
    assert_eq!(window.focused(), "");
}

#[test]
fn every_dialog_fits_a_small_window() {
    for kind in KINDS {
        let window = kind.window([667.0, 427.0]);
        let dialog = window.get(kind.role, kind.name).rect();
        let screen = window.harness.ctx.content_rect();
        assert!(screen.contains_rect(dialog), "{}: {dialog}", kind.name);
        assert_eq!(window.focused(), kind.focus);
        let focused = window.nodes().find(egui_kittest::Node::is_focused).unwrap();
        assert!(screen.contains_rect(focused.rect()), "{}", kind.name);
    }
}

#[test]
fn a_key_that_a_dialog_does_not_know_does_nothing() {
    for kind in KINDS {
        let mut window = kind.window(ORDINARY);
        let before = window.project().clone();
        window.event(Event::Key {
            key: Key::F10,
            physical_key: None,
            pressed: true,
            repeat: false,
            modifiers: Modifiers::NONE,
        });
        window.key_with(Modifiers::ALT, Key::E);
        assert!(
            window.find(Role::Button, "Duplicate set").is_none(),
            "{}",
            kind.name
        );
        assert!(*window.project() == before);
    }
}

#[test]
fn a_question_that_comes_while_a_menu_is_open_closes_the_menu() {
    let mut window = window();
    change(&mut window);
    window.click("Edit");
    assert!(window.find(Role::Button, "Remove set").is_some());
    window.ask_to_close();
    assert!(window.find(Role::Button, "Remove set").is_none());
    assert_eq!(window.focused(), "Save");
    window.key(Key::Escape);
    assert_eq!(window.focused(), "Redline, rpm");
}
