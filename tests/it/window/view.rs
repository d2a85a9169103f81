//! Can the diagram be zoomed, moved and reset like any plot, without ever losing it?

use super::{SECOND, with_shifts};
use crate::support::window::{Opening, Window};
use egui::{Key, Pos2, vec2};
use layshaft::chart::{Range, Role};

fn window() -> Window {
    Opening::on(with_shifts([3000, 3200, 3400, 3600])).open()
}

/// What lies at a place of the plot, seen through `view`.
fn value_at(window: &Window, view: Range, at: Pos2) -> [f64; 2] {
    let plot = window.plot();
    let share = |value: [f64; 2], share: f32| value[0] + (value[1] - value[0]) * f64::from(share);
    [
        share(view.x, (at.x - plot.left()) / plot.width()),
        share(view.y, (plot.bottom() - at.y) / plot.height()),
    ]
}

/// A place near the handles: they stay in view, and the view is measured by them.
fn near_handles(window: &Window) -> Pos2 {
    window.handle_at("3", "4") + vec2(25.0, 40.0)
}

/// A place of the plot where no line is near: a click there says nothing about sets.
fn empty_place(window: &Window) -> Pos2 {
    let (view, plot) = (window.view(), window.plot().shrink(20.0));
    let gears = |speed: f64| {
        let fan = window.app().diagram().lines_of(Role::Fan);
        fan.map(move |line| speed / line.points[1][0] * line.points[1][1])
    };
    let shares = || (0..=20_u8).map(|i| f32::from(i) / 20.0);
    let places = shares().flat_map(|x| shares().map(move |y| plot.lerp_inside(vec2(x, y))));
    let distance_rpm = |at: &Pos2| {
        let [speed, rpm] = value_at(window, view, *at);
        let away = gears(speed).map(|line| (line - rpm).abs());
        away.fold(f64::INFINITY, f64::min)
    };
    let farthest = places.max_by(|a, b| distance_rpm(a).total_cmp(&distance_rpm(b)));
    farthest.unwrap()
}

fn is_close(a: f64, b: f64, whole: [f64; 2]) -> bool {
    (a - b).abs() < 0.002 * (whole[1] - whole[0])
}

fn assert_same_view(a: Range, b: Range, whole: Range) {
    for i in 0..2 {
        assert!(is_close(a.x[i], b.x[i], whole.x), "{a:?} {b:?}");
        assert!(is_close(a.y[i], b.y[i], whole.y), "{a:?} {b:?}");
    }
}

fn whole(window: &Window) -> Range {
    window.app().diagram().whole()
}

#[test]
fn a_window_opens_on_the_whole_diagram() {
    let window = window();
    assert_same_view(window.view(), whole(&window), whole(&window));
}

#[test]
fn the_wheel_zooms_about_the_pointer() {
    let mut window = window();
    let at = near_handles(&window);
    let before = value_at(&window, window.view(), at);
    window.wheel(at, 120.0);
    let view = window.view();
    let after = value_at(&window, view, at);
    let whole = whole(&window);
    let width = |range: [f64; 2]| range[1] - range[0];
    assert!(width(view.x) < 0.8 * width(whole.x), "{view:?}");
    assert!(width(view.y) < 0.8 * width(whole.y), "{view:?}");
    assert!(
        is_close(before[0], after[0], whole.x),
        "{before:?} {after:?}"
    );
    assert!(
        is_close(before[1], after[1], whole.y),
        "{before:?} {after:?}"
    );
}

#[test]
fn dragging_the_plot_moves_what_is_seen_with_the_hand() {
    let mut window = window();
    let at = near_handles(&window);
    window.wheel(at, 120.0);
    let whole = whole(&window);
    let before = value_at(&window, window.view(), at);
    let to = at + vec2(-60.0, 35.0);
    window.drag(at, to);
    let after = value_at(&window, window.view(), to);
    assert!(
        is_close(before[0], after[0], whole.x),
        "{before:?} {after:?}"
    );
    assert!(
        is_close(before[1], after[1], whole.y),
        "{before:?} {after:?}"
    );
    assert_eq!(window.undo_steps(), 0, "a look is no change");
}

#[test]
fn the_view_never_leaves_the_whole() {
    for away in [vec2(900.0, 0.0), vec2(0.0, 700.0), vec2(-900.0, -700.0)] {
        let mut window = window();
        let at = near_handles(&window);
        window.wheel(at, 60.0);
        window.drag(at, at + away);
        let whole = whole(&window);
        let view = window.view();
        let slack = |range: [f64; 2]| 0.002 * (range[1] - range[0]);
        assert!(view.x[0] >= whole.x[0] - slack(whole.x), "{view:?}");
        assert!(view.x[1] <= whole.x[1] + slack(whole.x), "{view:?}");
        assert!(view.y[0] >= whole.y[0] - slack(whole.y), "{view:?}");
        assert!(view.y[1] <= whole.y[1] + slack(whole.y), "{view:?}");
    }
}

#[test]
fn the_whole_cannot_be_moved_or_made_smaller() {
    let mut window = window();
    let at = near_handles(&window);
    window.drag(at, at + vec2(130.0, -90.0));
    assert_same_view(window.view(), whole(&window), whole(&window));
    window.wheel(at, -500.0);
    assert_same_view(window.view(), whole(&window), whole(&window));
}

#[test]
fn a_double_click_on_the_plot_shows_the_whole_again() {
    let mut window = window();
    let at = near_handles(&window);
    window.wheel(at, 120.0);
    assert!(window.view().x[1] < whole(&window).x[1] - 1.0);
    let at = empty_place(&window);
    window.move_to(at);
    for _ in 0..2 {
        window.press(at);
        window.release(at);
    }
    window.settle();
    assert_same_view(window.view(), whole(&window), whole(&window));
}

#[test]
fn a_double_click_on_a_handle_is_no_reset_and_changes_nothing() {
    let mut window = window();
    let at = near_handles(&window);
    window.wheel(at, 120.0);
    let view = window.view();
    let before = window.project().clone();
    let at = window.handle_at("3", "4");
    window.move_to(at);
    for _ in 0..2 {
        window.press(at);
        window.release(at);
    }
    window.settle();
    assert_same_view(window.view(), view, whole(&window));
    assert_eq!(*window.project(), before);
}

#[test]
fn home_shows_the_whole_again() {
    let mut window = window();
    let at = near_handles(&window);
    window.wheel(at, 120.0);
    window.key(Key::Home);
    assert_same_view(window.view(), whole(&window), whole(&window));
}

#[test]
fn the_view_stays_while_shift_points_move() {
    let mut window = window();
    let at = near_handles(&window);
    window.wheel(at, 60.0);
    let view = window.view();
    let from = window.handle_at("2", "3");
    window.drag(from, from + vec2(0.0, 40.0));
    assert_ne!(window.shifts(SECOND)[1], 3200);
    assert_same_view(window.view(), view, whole(&window));
}

#[test]
fn other_units_show_the_whole_again() {
    let mut window = window();
    let at = near_handles(&window);
    window.wheel(at, 120.0);
    window.ctrl(Key::U);
    assert_same_view(window.view(), whole(&window), whole(&window));
}

#[test]
fn a_click_on_a_line_brings_its_set_forward() {
    let mut window = window();
    let is_forward = |window: &Window, name: &str| {
        use egui_kittest::kittest::NodeT;
        let labels = window
            .handles()
            .into_iter()
            .map(|node| node.accesskit_node().label());
        labels.flatten().all(|label| label.ends_with(name))
    };
    assert!(is_forward(&window, "Same box, taller final drive"));
    // Top gear of the first set, driven, where no other line is near.
    let top = window.app().diagram().lines_of(Role::Fan).nth(4);
    let [speed, rpm] = top.unwrap().points[1];
    let at = window.place_of(speed / rpm * 3900.0, 3900.0);
    window.click_at(at);
    assert!(is_forward(&window, "Fitted five-speed"));
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn ctrl_j_brings_the_next_set_forward() {
    let mut window = window();
    let first = window.handles().len();
    window.ctrl(Key::J);
    assert_ne!(window.handles().len(), first, "the third set has six gears");
    window.ctrl(Key::J);
    window.ctrl(Key::J);
    assert_eq!(window.handles().len(), first);
}

#[test]
fn a_diagram_without_a_set_says_so_and_offers_one() {
    let mut window = Window::on_camper_van();
    for set in 1..=3 {
        window.click_on(
            egui::accesskit::Role::CheckBox,
            &format!("visible, set {set}"),
        );
    }
    assert!(window.says("All sets are hidden"));
    window.key(Key::F6);
    assert_eq!(window.focused(), "Show Six-speed, two output shafts");
    window.key(Key::Enter);
    assert!(window.set(2).visible && !window.says("All sets are hidden"));
    assert_ne!(window.focused(), "", "the focus goes on to the diagram");
}
