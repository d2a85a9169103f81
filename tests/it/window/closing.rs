//! Is the window closed at once when nothing is lost, and only after a question otherwise?

use crate::support::window::{Opening, Window, camper_van};
use egui::{Event, Key, Modifiers, ViewportCommand, vec2};
use layshaft::project::format;

fn with_unsaved_work() -> Window {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
    window
}

fn is_asking(window: &Window) -> bool {
    window.says("Save the changes?")
}

/// Clicks an answer; whether the program then closes the window.
fn closes_after(window: &mut Window, answer: &str) -> bool {
    window.get(egui::accesskit::Role::Button, answer).click();
    window.harness.step();
    let closes = window.commands().contains(&ViewportCommand::Close);
    window.settle();
    closes
}

#[test]
fn a_saved_project_is_closed_without_a_question() {
    let mut window = Window::on_camper_van();
    let commands = window.ask_to_close();
    assert!(!commands.contains(&ViewportCommand::CancelClose));
    assert!(!is_asking(&window));
}

#[test]
fn unsaved_work_stops_the_closing_and_asks() {
    let mut window = with_unsaved_work();
    let commands = window.ask_to_close();
    assert!(commands.contains(&ViewportCommand::CancelClose));
    assert!(commands.contains(&ViewportCommand::Minimized(false)));
    assert!(commands.contains(&ViewportCommand::Focus));
    assert!(is_asking(&window));
    assert!(window.says("van.ron"));
}

#[test]
fn open_nudges_are_unsaved_work() {
    let mut window = Window::on_camper_van();
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    let commands = window.ask_to_close();
    assert!(commands.contains(&ViewportCommand::CancelClose));
    assert!(is_asking(&window));
}

#[test]
fn a_running_drag_is_unsaved_work() {
    let mut window = Window::on_camper_van();
    let from = window.handle_at("2", "3");
    window.hold(from, from + vec2(0.0, 40.0));
    let commands = window.ask_to_close();
    assert!(commands.contains(&ViewportCommand::CancelClose));
}

#[test]
fn esc_keeps_the_window_and_the_work() {
    let mut window = with_unsaved_work();
    let project = window.project().clone();
    window.ask_to_close();
    window.key(Key::Escape);
    assert!(!is_asking(&window));
    assert_eq!(*window.project(), project);
    let commands = window.ask_to_close();
    assert!(
        commands.contains(&ViewportCommand::CancelClose),
        "it asks again"
    );
}

#[test]
fn do_not_save_closes_and_writes_nothing() {
    let mut window = with_unsaved_work();
    let before = window.disk.text("van.ron").unwrap();
    window.ask_to_close();
    assert!(closes_after(&mut window, "Do not save"));
    assert_eq!(window.disk.text("van.ron").unwrap(), before);
    let commands = window.ask_to_close();
    assert!(!commands.contains(&ViewportCommand::CancelClose));
}

#[test]
fn save_saves_and_closes() {
    let mut window = with_unsaved_work();
    window.ask_to_close();
    assert!(closes_after(&mut window, "Save"));
    let saved = format::read(&window.disk.text("van.ron").unwrap()).unwrap();
    assert_eq!(saved, *window.project());
}

#[test]
fn enter_saves_and_a_second_close_request_changes_nothing() {
    let mut window = with_unsaved_work();
    window.ask_to_close();
    window.ask_to_close();
    assert!(is_asking(&window));
    window.key(Key::Enter);
    let saved = format::read(&window.disk.text("van.ron").unwrap()).unwrap();
    assert_eq!(saved, *window.project());
}

#[test]
fn where_saving_fails_the_window_stays() {
    let mut window = with_unsaved_work();
    window.disk.make_read_only();
    window.ask_to_close();
    assert!(!closes_after(&mut window, "Save"));
    assert!(window.says("cannot be written"));
    let commands = window.ask_to_close();
    assert!(commands.contains(&ViewportCommand::CancelClose));
}

#[test]
fn a_save_somewhere_else_closes_after_all() {
    let mut window = Window::on_camper_van();
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
    window.ask_to_close();
    assert!(!closes_after(&mut window, "Save"), "a path is wanted first");
    let path = crate::support::memory_disk::MemoryDisk::path("van.ron");
    window.picker.answer(Some(path));
    window.harness.step();
    assert!(window.commands().contains(&ViewportCommand::Close));
    assert_eq!(window.disk.file_names(), ["van.ron"]);
}

#[test]
fn cancelling_the_path_keeps_the_window() {
    let mut window = Window::on_camper_van();
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
    window.ask_to_close();
    closes_after(&mut window, "Save");
    window.key(Key::Escape);
    let commands = window.ask_to_close();
    assert!(commands.contains(&ViewportCommand::CancelClose));
}

#[test]
fn ctrl_q_asks_like_the_close_button() {
    let mut window = with_unsaved_work();
    window.event(Event::Key {
        key: Key::Q,
        physical_key: None,
        pressed: true,
        repeat: false,
        modifiers: Modifiers::COMMAND,
    });
    // The window is asked to close, and then closes as if its button had been clicked.
    assert!(window.commands().contains(&ViewportCommand::Close));
    let commands = window.ask_to_close();
    assert!(commands.contains(&ViewportCommand::CancelClose));
    assert!(is_asking(&window));
}
