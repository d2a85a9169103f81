//! Does undoing say what it undid, bring it into view and leave nothing half-typed?

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, vec2};

const THIRD: &str = "Ratio of gear 3, set 2";

/// Third gear's ratio of the second set is changed; what it was before and is now.
fn change_third(window: &mut Window) -> [String; 2] {
    let before = window.text(THIRD);
    window.fill(THIRD, "1.417");
    [before, window.text(THIRD)]
}

/// Something is within the window, as far as it has room.
#[track_caller]
fn assert_in_view(window: &Window, role: Role, name: &str) {
    let rect = window.get(role, name).rect();
    let screen = window.harness.ctx.content_rect();
    assert!(screen.contains_rect(rect), "{name} is at {rect}");
}

fn fold(window: &mut Window, section: &str) {
    window.click_on(Role::DisclosureTriangle, section);
    window.pause();
}

#[test]
fn undo_and_redo_name_the_figure_with_both_its_values() {
    let mut window = Window::on_camper_van();
    let [before, after] = change_third(&mut window);
    window.ctrl(Key::Z);
    let figure = format!("ratio of 3, set 2: {after}");
    assert!(window.says(&format!("Undone: {figure}, now {before} again")));
    window.ctrl(Key::Y);
    assert!(window.says(&format!("Redone: {figure} instead of {before}")));
}

#[test]
fn menu_and_list_of_commands_name_the_figure_too() {
    let mut window = Window::on_camper_van();
    change_third(&mut window);
    window.click("Edit");
    assert!(window.shows("Undo: ratio of 3, set 2: 1.417"));
    window.key(Key::Escape);
    window.ctrl(Key::K);
    window.type_text("undo");
    assert!(window.says("Undo: ratio of 3, set 2: 1.417"));
    window.key(Key::Enter);
    assert!(window.says("Undone: ratio of 3, set 2: 1.417"));
    window.click("Edit");
    assert!(window.shows("Redo: ratio of 3, set 2: 1.417"));
}

#[test]
fn undoing_opens_the_card_and_gives_its_field_the_focus() {
    let mut window = Window::on_camper_van();
    let [before, _] = change_third(&mut window);
    window.open_card(1);
    assert!(window.find(Role::TextInput, THIRD).is_none());
    window.ctrl(Key::Z);
    assert_eq!(window.focused(), THIRD);
    assert_in_view(&window, Role::TextInput, THIRD);
    assert_eq!(window.text(THIRD), before);
    // It has the focus without being typed in: the next undo is the document's again.
    window.ctrl(Key::Y);
    assert_eq!(window.text(THIRD), "1.417");
}

#[test]
fn a_field_that_was_scrolled_away_comes_back_though_it_has_the_focus() {
    let mut window = Opening::on(camper_van()).sized(640.0, 420.0).open();
    window.click("Vehicle and sets");
    change_third(&mut window);
    window.ctrl(Key::Z);
    assert_eq!(window.focused(), THIRD);
    let at = window.get(Role::TextInput, THIRD).rect().center();
    for _ in 0..20 {
        window.wheel(at, 200.0);
    }
    let rect = window.get(Role::TextInput, THIRD).rect();
    assert!(!window.harness.ctx.content_rect().contains_rect(rect));
    window.ctrl(Key::Y);
    assert_eq!(window.focused(), THIRD);
    assert_in_view(&window, Role::TextInput, THIRD);
}

#[test]
fn a_folded_section_unfolds_for_what_was_undone_in_it() {
    let mut window = Window::on_camper_van();
    window.fill("Redline, rpm", "4300");
    fold(&mut window, "Vehicle");
    assert!(window.find(Role::TextInput, "Redline, rpm").is_none());
    let in_short = "Vehicle: 215/65 R 16 C, redline 4300 rpm";
    assert!(window.find(Role::DisclosureTriangle, in_short).is_some());
    window.ctrl(Key::Z);
    assert_eq!(window.focused(), "Redline, rpm");
    assert_in_view(&window, Role::TextInput, "Redline, rpm");
    // And it is not held open.
    fold(&mut window, "Vehicle");
    assert!(window.find(Role::TextInput, "Redline, rpm").is_none());
}

#[test]
fn date_and_note_unfold_with_the_vehicle_around_them() {
    let mut window = Window::on_camper_van();
    fold(&mut window, "Date and note");
    window.fill("Date", "12 May 2026");
    fold(&mut window, "Date and note");
    fold(&mut window, "Vehicle");
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(window.focused(), "Date");
    assert_in_view(&window, Role::TextInput, "Date");
}

#[test]
fn a_window_of_one_part_turns_to_the_forms() {
    let mut window = Opening::on(camper_van()).sized(640.0, 420.0).open();
    assert!(window.is_in_parts());
    window.click("Vehicle and sets");
    change_third(&mut window);
    window.click("Table");
    window.ctrl(Key::Z);
    assert_eq!(window.focused(), THIRD);
    assert_in_view(&window, Role::TextInput, THIRD);
}

#[test]
fn a_shift_point_goes_back_under_the_handle_that_has_the_focus() {
    let mut window = Window::on_camper_van();
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
    window.open_card(1);
    window.focus_handle("1", "2");
    let handle = window.focused();
    window.ctrl(Key::Z);
    assert!(window.find(Role::TextInput, "Name of set 2").is_some());
    let [is_handle, was_handle] = [window.focused(), handle].map(|name| name.starts_with("Shift"));
    assert!(is_handle && was_handle, "{}", window.focused());
}

#[test]
fn the_button_that_undoes_keeps_the_focus_for_the_next_time() {
    let mut window = Window::on_camper_van();
    change_third(&mut window);
    window.fill("Redline, rpm", "4300");
    window.get(Role::Button, "Undo").focus();
    window.settle();
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Undo");
    window.key(Key::Enter);
    assert!(window.says("Undone: ratio of 3, set 2"));
    assert_in_view(&window, Role::TextInput, THIRD);
}

#[test]
fn what_was_left_half_typed_in_the_field_goes_with_its_value() {
    let mut window = Window::on_camper_van();
    let [_, after] = change_third(&mut window);
    window.ctrl(Key::Z);
    window.fill(THIRD, "1.4o");
    assert_eq!(window.text(THIRD), "1.4o");
    window.enter_field("Title");
    window.ctrl(Key::Y);
    assert_eq!(window.text(THIRD), after);
    assert!(!window.says("1.4o"));
}

#[test]
fn what_is_being_typed_is_undone_first() {
    let mut window = Window::on_camper_van();
    let [before, after] = change_third(&mut window);
    window.type_in(THIRD, "9");
    window.ctrl(Key::Z);
    assert_eq!(window.text(THIRD), after);
    window.ctrl(Key::Z);
    assert_eq!(window.text(THIRD), before);
}

#[test]
fn a_gear_that_comes_back_has_the_focus_on_its_ratio() {
    let mut window = Window::on_camper_van();
    window.open_card(2);
    window.click("Gear 3 menu, set 2");
    window.click("Remove gear");
    window.ctrl(Key::Z);
    assert!(window.says("Undone: removed gear 3, set 2"));
    assert_eq!(window.focused(), THIRD);
}

#[test]
fn a_set_that_comes_back_has_its_card_open() {
    let mut window = Window::on_camper_van();
    window.choose("Edit", Role::Button, "Remove set");
    assert!(window.find(Role::TextInput, "Name of set 2").is_none());
    window.ctrl(Key::Z);
    assert!(window.says("Undone: removed set 2: "));
    assert!(window.find(Role::TextInput, "Name of set 2").is_some());
}
