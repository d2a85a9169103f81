//! Is a shift point dragged as the hand expects?

use super::{SECOND, with_shifts};
use crate::support::gear_sets::rpm;
use crate::support::window::{Opening, Window, camper_van};
use egui::{Event, Key, Modifiers, PointerButton, Pos2, Vec2, pos2, vec2};
use egui_kittest::kittest::NodeT;
use layshaft::app::handle_rect;
use layshaft::project::Edit;

fn button(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    }
}

fn names(window: &Window) -> Vec<String> {
    let handles = window.handles().into_iter();
    handles
        .map(|node| node.accesskit_node().label().unwrap())
        .collect()
}

#[test]
fn each_shift_of_the_selected_set_has_a_handle_with_a_name() {
    for opening in [Opening::on(camper_van()), Opening::on(camper_van()).small()] {
        let window = opening.open();
        let set = "Same box, taller final drive";
        let shifts = ["1 to 2", "2 to 3", "3 to 4", "4 to 5"];
        let wanted = shifts.map(|shift| format!("Shift point {shift}, {set}"));
        assert_eq!(names(&window), wanted);
        for node in window.handles() {
            assert!(window.plot().expand(4.0).contains_rect(node.rect()));
        }
    }
}

#[test]
fn a_handle_can_be_taken_hold_of_within_its_square() {
    let window = Window::on_camper_van();
    let rect = window.handle("2", "3").rect();
    assert_eq!(handle_rect(rect.center()), rect);
    assert!(rect.width() >= 24.0 && rect.height() >= 24.0);
}

#[test]
fn dragging_a_handle_changes_its_shift_alone_and_follows_the_hand() {
    for opening in [Opening::on(camper_van()), Opening::on(camper_van()).small()] {
        let mut window = opening.open();
        let before = window.all_shifts();
        let from = window.handle_at("2", "3");
        let to = from + vec2(0.0, 80.0);
        window.drag(from, to);

        let mut wanted = before;
        wanted[SECOND][1] = window.shifts(SECOND)[1];
        assert_eq!(window.all_shifts(), wanted);
        assert!(window.shifts(SECOND)[1] < 3400);
        let at = window.handle_at("2", "3");
        assert!((at.y - to.y).abs() < 1.5, "{at} is not at {to}");
    }
}

#[test]
fn a_slow_frame_loses_nothing_of_a_drag() {
    let mut window = Window::on_camper_van();
    let from = window.handle_at("2", "3");
    let to = from + vec2(0.0, 80.0);
    window.drag(from, to);
    let slowly = window.all_shifts();

    let moved = Event::PointerMoved;
    let (press, release) = (button(from, true), button(to, false));
    let on_the_way = moved(from + vec2(0.0, 8.0));
    for frames in [
        // The press with the first move, the last move with the release.
        vec![
            vec![moved(from)],
            vec![press.clone(), on_the_way.clone()],
            vec![moved(to), release.clone()],
        ],
        // The whole drag in one, with and without the way to the handle.
        vec![
            vec![moved(from)],
            vec![press.clone(), moved(to), release.clone()],
        ],
        vec![vec![moved(from), press.clone(), moved(to), release.clone()]],
        vec![vec![press.clone(), release.clone()]],
    ] {
        let mut window = Window::on_camper_van();
        for frame in frames {
            window.frame(frame);
        }
        window.settle();
        assert_eq!(window.all_shifts(), slowly);
        assert_eq!(window.undo_steps(), 1);
    }
}

#[test]
fn of_fast_drags_in_a_row_each_hits_what_was_pressed() {
    let project = with_shifts([3000, 3200, 3400, 3600]);
    let mut window = Opening::on(project).open();
    for round in 1..=4 {
        for (shift, [from, to]) in [["1", "2"], ["2", "3"], ["3", "4"], ["4", "5"]]
            .into_iter()
            .enumerate()
        {
            let before = window.shifts(SECOND);
            let start = window.handle_at(from, to);
            let end = start + vec2(3.0, 25.0);
            window.frame(vec![
                Event::PointerMoved(start),
                button(start, true),
                Event::PointerMoved(end),
                button(end, false),
            ]);
            window.settle();
            let mut wanted = before.clone();
            wanted[shift] = window.shifts(SECOND)[shift];
            assert_eq!(window.shifts(SECOND), wanted, "round {round}");
            assert!(wanted[shift] < before[shift], "round {round} missed {from}");
        }
    }
    assert_eq!(window.undo_steps(), 16);
}

#[test]
fn the_road_speed_of_a_shift_follows_from_its_engine_speed_alone() {
    let mut window = Window::on_camper_van();
    let from = window.handle_at("3", "4");
    window.drag(from, from + vec2(0.0, -40.0));
    let upright = window.shifts(SECOND);

    let mut window = Window::on_camper_van();
    window.drag(from, from + vec2(170.0, -40.0));
    assert_eq!(window.shifts(SECOND), upright);
    let mut window = Window::on_camper_van();
    window.drag(from, from + vec2(-250.0, -40.0));
    assert_eq!(window.shifts(SECOND), upright);
}

#[test]
fn sideways_nothing_moves() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    let from = window.handle_at("3", "4");
    window.drag(from, from + vec2(120.0, 0.0));
    assert_eq!(*window.project(), before);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn a_drag_goes_in_steps_of_ten() {
    let mut window = Window::on_camper_van();
    let from = window.handle_at("2", "3");
    window.move_to(from);
    window.press(from);
    let mut seen = Vec::new();
    for i in 1..=60_u8 {
        window.move_to(from + vec2(0.0, f32::from(i) * 0.5));
        seen.push(window.shifts(SECOND)[1]);
    }
    assert!(seen.iter().all(|rpm| rpm % 10 == 0), "{seen:?}");
    assert!(seen.windows(2).all(|pair| pair[1] <= pair[0]), "{seen:?}");
    seen.dedup();
    assert!(seen.len() > 10, "{seen:?}");
}

#[test]
fn no_drag_passes_the_redline_or_idle() {
    let mut window = Window::on_camper_van();
    let from = window.handle_at("2", "3");
    window.drag(from, pos2(from.x, 0.0));
    assert_eq!(window.shifts(SECOND)[1], 4500);

    let from = window.handle_at("2", "3");
    window.drag(from, pos2(from.x, 2000.0));
    assert_eq!(window.shifts(SECOND)[1], 800);
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn a_redline_between_two_steps_is_reached_exactly() {
    let project = Edit::Redline(rpm(4505.0))
        .applied_to(&camper_van())
        .unwrap();
    let mut window = Opening::on(project).open();
    let from = window.handle_at("2", "3");
    window.drag(from, pos2(from.x, 0.0));
    assert_eq!(window.shifts(SECOND)[1], 4505);
}

#[test]
fn one_drag_is_one_undo_step() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    let from = window.handle_at("2", "3");
    window.hold(from, from + vec2(0.0, 60.0));
    assert!(window.is_in_gesture());
    window.release(from + vec2(0.0, 60.0));
    window.settle();
    assert!(!window.is_in_gesture());
    assert_eq!(window.undo_steps(), 1);

    window.ctrl(Key::Z);
    assert_eq!(*window.project(), before);
}

#[test]
fn esc_during_a_drag_puts_the_value_back_and_leaves_no_step() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    let from = window.handle_at("2", "3");
    let to = from + vec2(0.0, 60.0);
    window.hold(from, to);
    assert_ne!(*window.project(), before);
    window.key(Key::Escape);
    assert_eq!(*window.project(), before);
    // The hand is still down and moves on: nothing is dragged any more.
    window.move_to(to + vec2(10.0, 40.0));
    window.release(to + vec2(10.0, 40.0));
    window.settle();
    assert_eq!(*window.project(), before);
    assert_eq!(window.undo_steps(), 0);
    assert!(!window.is_in_gesture());
}

#[test]
fn a_mere_press_moves_nothing() {
    // Figures between two steps, and one beyond the redline, were typed: a touch must not tidy them.
    let project = with_shifts([3605, 3333, 4700, 3600]);
    for offset in [Vec2::ZERO, vec2(7.0, 6.0), vec2(-8.0, -8.0)] {
        let mut window = Opening::on(project.clone()).open();
        for [from, to] in [["1", "2"], ["2", "3"], ["3", "4"], ["4", "5"]] {
            let at = window.handle_at(from, to) + offset;
            window.click_at(at);
            assert_eq!(*window.project(), project, "{from} to {to}");
        }
        assert_eq!(window.undo_steps(), 0);
    }
}

#[test]
fn a_drag_that_comes_back_to_where_it_began_leaves_no_step() {
    let project = with_shifts([3605, 3600, 3600, 3600]);
    let mut window = Opening::on(project.clone()).open();
    let from = window.handle_at("1", "2");
    window.hold(from, from + vec2(0.0, 50.0));
    assert_ne!(*window.project(), project);
    window.move_to(from);
    window.release(from);
    window.settle();
    assert_eq!(*window.project(), project);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn a_handle_released_outside_the_view_keeps_its_value_in_one_step() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    let from = window.handle_at("3", "4");
    window.wheel(from, 400.0);
    let from = window.handle_at("3", "4");
    window.drag(from, pos2(from.x, window.plot().bottom() + 20.0));
    assert!(!window.is_in_gesture());
    assert_eq!(window.undo_steps(), 1);
    assert!(window.shifts(SECOND)[2] < 3400);
}

#[test]
fn the_drop_is_written_while_dragging() {
    let mut window = Window::on_camper_van();
    let from = window.handle_at("2", "3");
    assert_eq!(
        window.handle("2", "3").value().unwrap(),
        "2→3 at 3600 rpm, falls 1270 to 2330"
    );
    window.hold(from, from + vec2(0.0, 33.0));
    window.settle();
    let value = window.handle("2", "3").value().unwrap();
    let shift_rpm = window.shifts(SECOND)[1];
    assert!(shift_rpm < 3600);
    assert!(
        value.starts_with(&format!("2→3 at {shift_rpm} rpm, falls ")),
        "{value}"
    );
}

/// Places on the rim of what is painted, and up to 5 points beyond it.
fn near_misses(at: Pos2) -> Vec<Pos2> {
    let sides = [
        vec2(1.0, 0.0),
        vec2(-1.0, 0.0),
        vec2(0.0, 1.0),
        vec2(0.0, -1.0),
    ];
    let reaches = [5.0, 9.0, 11.0];
    let beside = sides
        .iter()
        .flat_map(|side| reaches.map(|reach| at + *side * reach));
    beside.chain([at + vec2(8.0, 8.0)]).collect()
}

#[test]
fn a_press_close_to_a_handle_takes_the_handle_and_not_the_plot() {
    let project = with_shifts([3000, 3200, 3400, 3600]);
    let mut window = Opening::on(project).open();
    let middle = window.plot().center();
    window.wheel(middle, 60.0);
    let view = window.view();
    for start in near_misses(window.handle_at("2", "3")) {
        let before = window.shifts(SECOND)[1];
        window.drag(start, start + vec2(0.0, 30.0));
        assert!(
            window.shifts(SECOND)[1] < before,
            "{start} missed the handle"
        );
        window.ctrl(Key::Z);
        let now = window.view();
        assert!((now.x[0] - view.x[0]).abs() < 0.05, "{start} panned");
        assert!((now.y[0] - view.y[0]).abs() < 2.0, "{start} panned");
    }
}

#[test]
fn where_handles_lie_close_together_the_nearest_is_taken() {
    // First and second close in ratio: their handles' squares overlap.
    let mut window = Opening::on(with_shifts([2000, 3700, 2450, 2400])).open();
    let [left, right] = [["3", "4"], ["4", "5"]].map(|[from, to]| window.handle_at(from, to));
    let place = |at: Pos2, other: Pos2| at + (at - other).normalized() * 2.0;
    for (shift, at, other) in [(2, left, right), (3, right, left)] {
        let before = window.shifts(SECOND);
        let start = place(at, other);
        window.drag(start, start + vec2(0.0, 20.0));
        let after = window.shifts(SECOND);
        for i in 0..4 {
            assert_eq!(after[i] != before[i], i == shift, "{before:?} {after:?}");
        }
        window.ctrl(Key::Z);
    }
}

#[test]
fn zooming_under_a_running_drag_moves_neither_view_nor_value() {
    let project = with_shifts([3000, 3200, 3400, 3600]);
    let mut window = Opening::on(project).open();
    let view = window.view();
    let from = window.handle_at("2", "3");
    let to = from + vec2(0.0, 25.0);
    window.hold(from, to);
    let held = window.shifts(SECOND);
    window.event(Event::Zoom(1.5));
    assert_eq!(window.shifts(SECOND), held);
    window.event(Event::MouseWheel {
        unit: egui::MouseWheelUnit::Line,
        delta: vec2(0.0, 3.0),
        phase: egui::TouchPhase::Move,
        modifiers: Modifiers::NONE,
        source: egui::MouseWheelSource::Wheel,
    });
    window.settle();
    assert_eq!(window.shifts(SECOND), held);
    window.release(to);
    window.ctrl(Key::Z);
    let now = window.view();
    assert!((now.y[1] - view.y[1]).abs() < 3.0, "{now:?}");
}
