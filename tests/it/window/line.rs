//! Does the line between the handles move all shift points together?

use super::{SECOND, with_shifts};
use crate::support::window::{Opening, Window};
use egui::{Event, Key, Modifiers, PointerButton, Pos2, TouchDeviceId, TouchId, TouchPhase};
use egui::{pos2, vec2};

/// The middle of the line between the handles of the second and the third shift.
fn grip(window: &Window) -> Pos2 {
    let [a, b] = [["2", "3"], ["3", "4"]].map(|[from, to]| window.handle_at(from, to));
    a + (b - a) * 0.5
}

fn differences(shifts: &[i32]) -> Vec<i32> {
    shifts.windows(2).map(|pair| pair[1] - pair[0]).collect()
}

#[test]
fn all_shift_points_move_by_the_same_amount() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    let before = window.all_shifts();
    let from = grip(&window);
    window.drag(from, from + vec2(13.0, 70.0));
    let after = window.all_shifts();
    let moved = before[SECOND][0] - after[SECOND][0];
    assert!(moved > 300 && moved % 10 == 0, "{moved}");
    for (place, (before, after)) in before.iter().zip(&after).enumerate() {
        let wanted = if place == SECOND { moved } else { 0 };
        for (a, b) in before.iter().zip(after) {
            assert_eq!(a - b, wanted);
        }
    }
}

#[test]
fn shift_points_between_two_steps_keep_their_odd_figures() {
    let mut window = Opening::on(with_shifts([3005, 3200, 3401, 3600])).open();
    let from = grip(&window);
    window.drag(from, from + vec2(0.0, -40.0));
    let odd: Vec<i32> = window.shifts(SECOND).iter().map(|rpm| rpm % 10).collect();
    assert_eq!(odd, [5, 0, 1, 0]);
    assert!(window.shifts(SECOND)[0] > 3005);
}

#[test]
fn at_the_redline_they_stop_together() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    let before = window.shifts(SECOND);
    let from = grip(&window);
    window.drag(from, pos2(from.x, 0.0));
    assert_eq!(window.shifts(SECOND), [3900, 4100, 4300, 4500]);
    assert_eq!(differences(&window.shifts(SECOND)), differences(&before));

    let from = grip(&window);
    window.drag(from, pos2(from.x, 3000.0));
    assert_eq!(window.shifts(SECOND), [800, 1000, 1200, 1400]);
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn a_figure_that_no_handle_shows_does_not_stop_the_line() {
    // The set's common shift point, 3600, is of no use here: every change has its own.
    let mut window = Opening::on(with_shifts([3000, 3000, 3000, 3000])).open();
    let from = grip(&window);
    window.drag(from, pos2(from.x, 0.0));
    assert_eq!(window.shifts(SECOND), [4500; 4]);
}

#[test]
fn one_drag_of_the_line_is_one_step_wherever_it_ends() {
    for to in [vec2(0.0, 60.0), vec2(150.0, -60.0), vec2(0.0, -500.0)] {
        let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
        let before = window.project().clone();
        let from = grip(&window);
        window.drag(from, from + to);
        assert!(!window.is_in_gesture(), "{to}");
        assert_eq!(window.undo_steps(), 1, "{to}");
        window.ctrl(Key::Z);
        assert_eq!(*window.project(), before);
    }
}

#[test]
fn esc_puts_all_of_them_back_wherever_the_hand_is() {
    for to in [vec2(0.0, 60.0), vec2(150.0, -60.0), vec2(0.0, -500.0)] {
        let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
        let before = window.project().clone();
        let from = grip(&window);
        window.hold(from, from + to);
        assert_ne!(*window.project(), before);
        window.key(Key::Escape);
        assert_eq!(*window.project(), before, "{to}");
        window.release(from + to);
        window.settle();
        assert_eq!(*window.project(), before, "{to}");
        assert!(!window.is_in_gesture());
        assert_eq!(window.undo_steps(), 0);
    }
}

#[test]
fn a_mere_press_on_the_line_moves_nothing() {
    let project = with_shifts([3005, 3200, 3401, 4700]);
    let mut window = Opening::on(project.clone()).open();
    for off in [0.0, 4.0, -4.0] {
        let at = grip(&window) + vec2(0.0, off);
        window.click_at(at);
    }
    assert_eq!(*window.project(), project);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn a_handle_lies_over_the_line() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    let [a, b] = [["2", "3"], ["3", "4"]].map(|[from, to]| window.handle_at(from, to));
    // On the line, but within the handle's square.
    let from = a + (b - a).normalized() * 8.0;
    window.drag(from, from + vec2(0.0, 40.0));
    let after = window.shifts(SECOND);
    assert!(after[1] < 3200);
    assert_eq!([after[0], after[2], after[3]], [3000, 3400, 3600]);
}

#[test]
fn a_finger_on_the_line_takes_the_line_and_not_the_plot() {
    let touch = |at: Pos2, phase: TouchPhase| Event::Touch {
        device_id: TouchDeviceId(1),
        id: TouchId(1),
        phase,
        pos: at,
        force: None,
    };
    let button = |pos: Pos2, pressed: bool| Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    };
    // A finger is felt farther from the line than the mouse.
    for off in [0.0, 5.0, -12.0, 12.0] {
        let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
        window.wheel(window.plot().center(), 60.0);
        let view = window.view();
        let before = window.shifts(SECOND)[0];
        let from = grip(&window) + vec2(0.0, off);
        let to = from + vec2(0.0, 40.0);
        // As the system gives it: the pointer is there with the finger, and goes with it.
        window.event(Event::PointerGone);
        window.frame(vec![
            touch(from, TouchPhase::Start),
            Event::PointerMoved(from),
            button(from, true),
            touch(to, TouchPhase::Move),
            Event::PointerMoved(to),
            touch(to, TouchPhase::End),
            button(to, false),
            Event::PointerGone,
        ]);
        window.settle();
        let shifts = window.shifts(SECOND);
        assert!(shifts[0] < before, "{off} missed the line");
        assert_eq!(differences(&shifts), [200; 3], "{off}");
        assert_eq!(window.undo_steps(), 1);
        window.ctrl(Key::Z);
        let now = window.view();
        assert!((now.x[0] - view.x[0]).abs() < 0.05, "{off} panned");
        assert!((now.y[0] - view.y[0]).abs() < 2.0, "{off} panned");
    }
}

#[test]
fn a_press_and_a_move_in_one_frame_take_the_line() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    let from = grip(&window);
    let to = from + vec2(0.0, 40.0);
    window.frame(vec![
        Event::PointerButton {
            pos: from,
            button: PointerButton::Primary,
            pressed: true,
            modifiers: Modifiers::NONE,
        },
        Event::PointerMoved(to),
    ]);
    window.settle();
    window.release(to);
    window.settle();
    assert!(window.shifts(SECOND)[0] < 3000);
    assert_eq!(differences(&window.shifts(SECOND)), [200; 3]);
}
