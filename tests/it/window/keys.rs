//! Are shift points moved by key and by those who cannot see them?

use super::{SECOND, with_shifts};
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::kittest::{NodeT, Queryable};

#[test]
fn arrow_keys_move_by_10_and_with_shift_by_100() {
    let mut window = Window::on_camper_van();
    let before = window.all_shifts();
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    assert_eq!(window.shifts(SECOND)[1], 3610);
    window.key_with(Modifiers::SHIFT, Key::ArrowUp);
    assert_eq!(window.shifts(SECOND)[1], 3710);
    window.key(Key::ArrowDown);
    window.key_with(Modifiers::SHIFT, Key::ArrowDown);
    window.key_with(Modifiers::SHIFT, Key::ArrowDown);
    assert_eq!(window.shifts(SECOND)[1], 3500);
    assert!(window.handle("2", "3").is_focused());

    let mut wanted = before;
    wanted[SECOND][1] = 3500;
    assert_eq!(window.all_shifts(), wanted);
}

#[test]
fn a_figure_between_two_steps_is_nudged_by_10_too() {
    let mut window = Opening::on(with_shifts([3605, 3601, 3600, 3600])).open();
    window.focus_handle("1", "2");
    window.key(Key::ArrowUp);
    assert_eq!(window.shifts(SECOND)[0], 3615);
    window.focus_handle("2", "3");
    window.key(Key::ArrowDown);
    assert_eq!(window.shifts(SECOND)[1], 3591);
}

#[test]
fn keys_stop_at_redline_and_idle() {
    let mut window = Opening::on(with_shifts([4450, 3600, 850, 3600])).open();
    window.focus_handle("1", "2");
    window.key_with(Modifiers::SHIFT, Key::ArrowUp);
    assert_eq!(window.shifts(SECOND)[0], 4500);
    window.focus_handle("3", "4");
    window.key_with(Modifiers::SHIFT, Key::ArrowDown);
    assert_eq!(window.shifts(SECOND)[2], 800);
}

#[test]
fn esc_takes_the_nudges_back() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    window.key_with(Modifiers::SHIFT, Key::ArrowUp);
    window.key(Key::Escape);
    assert_eq!(*window.project(), before);
    assert_eq!(window.undo_steps(), 0);
    assert!(!window.is_in_gesture());
}

#[test]
fn enter_makes_the_nudges_one_step() {
    let mut window = Window::on_camper_van();
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    window.key(Key::ArrowUp);
    window.key(Key::Enter);
    assert_eq!(window.undo_steps(), 1);
    assert!(!window.is_in_gesture());
    window.key(Key::ArrowUp);
    window.key(Key::Escape);
    assert_eq!(
        window.shifts(SECOND)[1],
        3620,
        "Esc takes back what followed"
    );
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn leaving_by_tab_makes_the_nudges_one_step() {
    let mut window = Window::on_camper_van();
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    window.key(Key::ArrowUp);
    window.key(Key::Tab);
    assert!(!window.handle("2", "3").is_focused());
    assert_eq!(window.undo_steps(), 1);
    assert!(!window.is_in_gesture());
    assert_eq!(window.shifts(SECOND)[1], 3620);
}

#[test]
fn leaving_for_another_handle_keeps_the_nudges() {
    let mut window = Window::on_camper_van();
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    window.focus_handle("3", "4");
    window.key(Key::ArrowDown);
    window.key(Key::Enter);
    assert_eq!(window.shifts(SECOND), [3600, 3610, 3590, 3600]);
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn dragging_another_handle_keeps_the_nudges() {
    for [from, to] in [["1", "2"], ["3", "4"], ["4", "5"]] {
        let mut window = Window::on_camper_van();
        window.focus_handle("2", "3");
        window.key(Key::ArrowUp);
        let at = window.handle_at(from, to);
        window.drag(at, at + vec2(0.0, 30.0));
        assert_eq!(window.shifts(SECOND)[1], 3610, "{from} to {to}");
        assert_eq!(window.undo_steps(), 2, "{from} to {to}");
    }
}

#[test]
fn dragging_the_line_keeps_the_nudges() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    window.focus_handle("1", "2");
    window.key(Key::ArrowUp);
    let [a, b] = [["2", "3"], ["3", "4"]].map(|[from, to]| window.handle_at(from, to));
    let from = a + (b - a) * 0.5;
    window.drag(from, from + vec2(0.0, 30.0));
    let shifts = window.shifts(SECOND);
    assert_eq!(shifts[1] - shifts[0], 190);
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn nudges_of_a_handle_that_went_out_of_view_are_kept() {
    let mut window = Window::on_camper_van();
    window.focus_handle("1", "2");
    window.key(Key::ArrowUp);
    let corner = window.plot().right_bottom() - vec2(30.0, 30.0);
    window.wheel(corner, 200.0);
    let is_in_view = |window: &Window| window.handles().len() == 4;
    assert!(!is_in_view(&window));

    window.get(Role::TextInput, "Title").focus();
    window.settle();
    window.type_over("Another title");
    window.key(Key::Enter);
    assert_eq!(window.shifts(SECOND)[0], 3610);
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn nudges_after_typing_and_typing_after_nudges_are_steps_of_their_own() {
    let mut window = Window::on_camper_van();
    window.get(Role::TextInput, "Title").focus();
    window.settle();
    window.type_over("Another title");
    window.focus_handle("1", "2");
    window.key(Key::ArrowUp);
    window.get(Role::TextInput, "Title").focus();
    window.settle();
    window.type_over("A third title");
    window.key(Key::Enter);
    assert_eq!(window.shifts(SECOND)[0], 3610);
    assert_eq!(window.undo_steps(), 3);
}

#[test]
fn a_drag_right_after_typing_is_one_step_and_the_typing_another() {
    for text in ["Another title", "\u{7}"] {
        let mut window = Window::on_camper_van();
        window.get(Role::TextInput, "Title").focus();
        window.settle();
        window.type_over(text);
        let steps = usize::from(text != "\u{7}");
        let at = window.handle_at("2", "3");
        window.drag(at, at + vec2(0.0, 60.0));
        assert_eq!(window.undo_steps(), steps + 1, "{text:?}");
    }
}

#[test]
fn a_drag_right_after_writing_the_note_is_one_step_and_the_note_another() {
    let mut window = Window::on_camper_van();
    window.harness.get_by_label("Date and note").click();
    window.settle();
    window.get(Role::MultilineTextInput, "Note").focus();
    window.settle();
    window.type_over("Mind the grease nipples.");
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 60.0));
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn a_screen_reader_steps_up_and_down() {
    let mut window = Window::on_camper_van();
    window.handle("2", "3").increment_accesskit();
    window.settle();
    window.handle("3", "4").decrement_accesskit();
    window.settle();
    assert_eq!(window.shifts(SECOND), [3600, 3610, 3590, 3600]);
    assert!(!window.is_in_gesture());
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn a_screen_reader_sets_a_value() {
    let mut window = Window::on_camper_van();
    window.handle("2", "3").set_value_accesskit(3000.0);
    window.settle();
    assert_eq!(window.shifts(SECOND)[1], 3000);
    assert_eq!(window.undo_steps(), 1);
    window.handle("2", "3").set_value_accesskit(9e9);
    window.settle();
    assert_eq!(window.shifts(SECOND)[1], 4500);
    window.handle("2", "3").set_value_accesskit(f64::NAN);
    window.settle();
    assert_eq!(window.shifts(SECOND)[1], 4500);
    assert!(!window.is_in_gesture());
}

#[test]
fn a_handle_says_its_figure_its_range_and_its_step() {
    let window = Opening::on(camper_van()).small().open();
    let handle = window.handle("2", "3");
    let node = handle.accesskit_node();
    assert_eq!(node.numeric_value(), Some(3600.0));
    assert_eq!(node.min_numeric_value(), Some(800.0));
    assert_eq!(node.max_numeric_value(), Some(4500.0));
    assert_eq!(node.data().numeric_value_step(), Some(10.0));
    assert_eq!(node.value().unwrap(), "2→3 at 3600 rpm, falls 1270 to 2330");
}

#[test]
fn a_quick_shift_and_arrow_moves_by_100() {
    let mut window = Window::on_camper_van();
    window.focus_handle("2", "3");
    let up = |pressed| Event::Key {
        key: Key::ArrowUp,
        physical_key: None,
        pressed,
        repeat: false,
        modifiers: Modifiers::SHIFT,
    };
    // Shift is up again before the frame looks.
    window.frame(vec![
        Event::ModifiersChanged(Modifiers::SHIFT),
        up(true),
        up(false),
        Event::ModifiersChanged(Modifiers::NONE),
    ]);
    window.settle();
    assert_eq!(window.shifts(SECOND)[1], 3700);
}

#[test]
fn page_keys_move_by_100() {
    let mut window = Window::on_camper_van();
    window.focus_handle("2", "3");
    window.key(Key::PageUp);
    assert_eq!(window.shifts(SECOND)[1], 3700);
    window.key(Key::PageDown);
    window.key(Key::PageDown);
    assert_eq!(window.shifts(SECOND)[1], 3500);
    assert!(window.handle("2", "3").is_focused());
}

/// The names of all handles in the order in which they are reached and read out.
fn names_in_order(window: &Window) -> Vec<String> {
    let names = window.names(Role::Slider).into_iter();
    names.filter(|n| n.starts_with("Shift point ")).collect()
}

#[test]
fn handles_are_in_the_order_of_their_gears_wherever_the_mouse_is() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    let shifts = [["1", "2"], ["2", "3"], ["3", "4"], ["4", "5"]];
    let wanted = names_in_order(&window);
    for (name, [from, to]) in wanted.iter().zip(shifts) {
        assert!(name.starts_with(&format!("Shift point {from} to {to}, ")));
    }
    for [from, to] in shifts {
        let at = window.handle_at(from, to);
        window.rest_at(at + vec2(1.0, 4.0));
        assert_eq!(names_in_order(&window), wanted, "over {from} to {to}");
        window.focus_handle("1", "2");
        for name in &wanted {
            assert_eq!(window.focused(), *name, "over {from} to {to}");
            window.key(Key::Tab);
        }
    }
}
