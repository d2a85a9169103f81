//! Does every way to undo and redo walk through whole steps?

use super::SECOND;
use crate::support::window::Window;
use egui::accesskit::Role;
use egui::{Key, vec2};
use egui_kittest::kittest::NodeT;

fn after_two_drags() -> Window {
    let mut window = Window::on_camper_van();
    for [from, to] in [["1", "2"], ["3", "4"]] {
        let at = window.handle_at(from, to);
        window.drag(at, at + vec2(0.0, 50.0));
    }
    window
}

#[test]
fn ctrl_z_goes_back_and_ctrl_shift_z_forth() {
    let start = Window::on_camper_van().shifts(SECOND);
    let mut window = after_two_drags();
    let end = window.shifts(SECOND);
    window.ctrl(Key::Z);
    let middle = window.shifts(SECOND);
    assert_eq!(middle, [end[0], start[1], start[2], start[3]]);
    window.ctrl(Key::Z);
    assert_eq!(window.shifts(SECOND), start);
    window.ctrl(Key::Z);
    assert_eq!(window.shifts(SECOND), start);
    window.ctrl_shift(Key::Z);
    assert_eq!(window.shifts(SECOND), middle);
    window.ctrl_shift(Key::Z);
    assert_eq!(window.shifts(SECOND), end);
    window.ctrl_shift(Key::Z);
    assert_eq!(window.shifts(SECOND), end);
}

#[test]
fn ctrl_y_goes_forth_too() {
    let mut window = after_two_drags();
    let end = window.shifts(SECOND);
    window.ctrl(Key::Z);
    window.ctrl(Key::Z);
    window.ctrl(Key::Y);
    window.ctrl(Key::Y);
    assert_eq!(window.shifts(SECOND), end);
}

#[test]
fn the_buttons_do_the_same_and_are_dead_where_there_is_nothing() {
    let mut window = after_two_drags();
    let end = window.shifts(SECOND);
    let is_dead = |window: &Window, name| {
        let button = window.get(Role::Button, name);
        button.accesskit_node().is_disabled()
    };
    assert!(is_dead(&window, "Redo"));
    window.invoke("Undo");
    window.invoke("Undo");
    assert!(is_dead(&window, "Undo"));
    window.invoke("Redo");
    window.invoke("Redo");
    assert_eq!(window.shifts(SECOND), end);
}

#[test]
fn undoing_takes_open_nudges_back_first() {
    let mut window = after_two_drags();
    let end = window.shifts(SECOND);
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    window.ctrl(Key::Z);
    assert_eq!(window.shifts(SECOND), end);
    window.ctrl_shift(Key::Z);
    assert_eq!(window.shifts(SECOND)[1], 3610);
}

#[test]
fn undoing_under_a_running_drag_ends_it_in_a_step_that_can_come_back() {
    let mut window = Window::on_camper_van();
    let start = window.shifts(SECOND);
    let from = window.handle_at("2", "3");
    let to = from + vec2(0.0, 50.0);
    window.hold(from, to);
    let held = window.shifts(SECOND);
    window.ctrl(Key::Z);
    window.release(to);
    window.settle();
    assert!(!window.is_in_gesture());
    // Either the hand won or the key did, but nothing else came about.
    assert!([&start, &held].contains(&&window.shifts(SECOND)));
    while window.undo_steps() > 0 {
        window.ctrl(Key::Z);
    }
    assert_eq!(window.shifts(SECOND), start);
}

#[test]
fn what_was_undone_is_said() {
    let mut window = after_two_drags();
    window.ctrl(Key::Z);
    let end = after_two_drags().shifts(SECOND)[2];
    let start = Window::on_camper_van().shifts(SECOND)[2];
    let figure = format!("shift point of 3, set 2: {end}");
    assert!(window.says(&format!("Undone: {figure}, now {start} again")));
    window.ctrl(Key::Y);
    assert!(window.says(&format!("Redone: {figure} instead of {start}")));
}

#[test]
fn a_step_can_be_taken_back_to_the_saved_state() {
    let mut window = Window::on_camper_van();
    assert!(!window.says("(not saved)"));
    let at = window.handle_at("1", "2");
    window.drag(at, at + vec2(0.0, 50.0));
    assert!(window.says("(not saved)"));
    window.ctrl(Key::Z);
    assert!(!window.says("(not saved)"));
}
