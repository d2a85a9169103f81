//! Does a window that nobody touches change nothing and ask for no work?

use super::with_shifts;
use crate::support::window::{Opening, Window, camper_van, three_ten_speeds};
use egui::{Key, Pos2, ViewportId, vec2};
use std::time::Duration;

/// The delay after which the window wants to be painted again.
fn wanted_repaint(window: &Window) -> Duration {
    let output = &window.harness.output().viewport_output;
    output[&ViewportId::ROOT].repaint_delay
}

fn assert_idle(window: &mut Window) {
    window.settle();
    let project = window.project().clone();
    let revision = window.app().desk().history.revision();
    let message = window.app().message().to_owned();
    for frame in 0..120 {
        window.harness.step();
        assert!(wanted_repaint(window) > Duration::ZERO, "frame {frame}");
    }
    assert_eq!(wanted_repaint(window), Duration::MAX);
    assert_eq!(*window.project(), project);
    assert_eq!(window.app().desk().history.revision(), revision);
    assert_eq!(window.app().message(), message);
    assert!(!window.is_in_gesture());
}

#[test]
fn an_untouched_window_rests() {
    for project in [camper_van(), three_ten_speeds()] {
        for opening in [Opening::on(project.clone()), Opening::on(project).small()] {
            assert_idle(&mut opening.open());
        }
    }
}

#[test]
fn a_window_with_the_pointer_resting_on_it_rests() {
    let mut window = Window::on_camper_van();
    let plot = window.plot();
    let handle = window.handle_at("2", "3");
    let places = [
        plot.center(),
        handle,
        plot.left_bottom() + vec2(40.0, -40.0),
        plot.left_top() + vec2(300.0, -10.0),
        Pos2::new(60.0, 12.0),
    ];
    for at in places {
        window.move_to(at);
        assert_idle(&mut window);
    }
}

#[test]
fn a_zoomed_view_rests() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    let at = window.handle_at("3", "4") + vec2(25.0, 40.0);
    window.wheel(at, 133.0);
    window.drag(at, at + vec2(-17.0, 9.0));
    assert_idle(&mut window);
    window.ctrl(Key::U);
    window.wheel(at, 77.0);
    assert_idle(&mut window);
}

#[test]
fn a_handle_with_the_focus_rests() {
    let mut window = Window::on_camper_van();
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    window.key(Key::Enter);
    assert_idle(&mut window);
}

#[test]
fn a_window_after_a_drag_rests() {
    let mut window = Window::on_camper_van();
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 44.0));
    assert_idle(&mut window);
    window.ctrl(Key::Z);
    assert_idle(&mut window);
}

#[test]
fn an_open_dialog_rests() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::O);
    assert_idle(&mut window);
    window.key(Key::Escape);
    window.key(Key::F1);
    assert_idle(&mut window);
    window.key(Key::Escape);
    window.key(Key::F10);
    assert_idle(&mut window);
    window.key(Key::Escape);
    assert_idle(&mut window);
    window.ctrl(Key::U);
    window.ctrl(Key::N);
    assert_idle(&mut window);
}

#[test]
fn a_drag_is_shown_in_the_next_frame() {
    let mut window = Window::on_camper_van();
    let from = window.handle_at("2", "3");
    window.move_to(from);
    window.press(from);
    window.move_to(from + vec2(0.0, 40.0));
    // The move's own frame has changed the document; the one after it shows that.
    assert_eq!(wanted_repaint(&window), Duration::ZERO);
    window.harness.step();
    let at = window.handle_at("2", "3");
    assert!((at.y - from.y - 40.0).abs() < 1.5, "{at}");
}
