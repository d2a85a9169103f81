//! Is what was typed last taken back first, be it a text that does not read?

use crate::support::window::Window;
use egui::accesskit::Role;
use egui::{Key, Modifiers};

const THIRD: &str = "Ratio of gear 3, set 2";

/// Leaves a text that does not read in a field.
fn leave(window: &mut Window, field: &str, text: &str) -> String {
    let before = window.text(field);
    window.type_in(field, text);
    window.key(Key::Tab);
    assert_eq!(window.text(field), text);
    before
}

#[test]
fn a_text_that_does_not_read_is_given_up_by_undo_in_its_field() {
    for (field, text) in [("Tyre", "1985 mm"), ("Redline, rpm", "6k")] {
        let mut window = Window::on_camper_van();
        let before = leave(&mut window, field, text);
        window.key_with(Modifiers::SHIFT, Key::Tab);
        assert_eq!(window.focused(), field);
        window.ctrl(Key::Z);
        assert_eq!(window.text(field), before);
        assert_eq!(window.focused(), field);
        let words = format!("Undone: what was typed in {field}: {text}");
        assert!(window.shows(&words), "{}", window.app().message());
        assert_eq!(window.undo_steps(), 0);
        // All of it is selected: what is typed takes its place.
        window.type_text("7");
        assert_eq!(window.text(field), "7");
    }
}

#[test]
fn a_date_that_there_is_not_is_given_up_from_the_next_field() {
    let mut window = Window::on_camper_van();
    window.click_on(Role::DisclosureTriangle, "Date and note");
    let before = leave(&mut window, "Date", "31.02.2026");
    assert_eq!(window.focused(), "Note");
    window.ctrl(Key::Z);
    assert_eq!(window.text("Date"), before);
    assert_eq!(window.focused(), "Date");
    assert!(window.says("Undone: what was typed in Date: 31.02.2026"));
}

#[test]
fn what_was_half_typed_after_the_last_step_goes_before_that_step() {
    let mut window = Window::on_camper_van();
    window.fill("Title", "Another title");
    let before = leave(&mut window, "Redline, rpm", "6k");
    window.enter_field("Idle");
    window.ctrl(Key::Z);
    assert_eq!(window.text("Redline, rpm"), before);
    assert_eq!(window.focused(), "Redline, rpm");
    assert_eq!(window.text("Title"), "Another title");
    window.ctrl(Key::Z);
    assert!(window.says("Undone: title: \"Another title\""));
}

#[test]
fn what_was_half_typed_before_the_last_step_stays_until_that_is_undone() {
    let mut window = Window::on_camper_van();
    let title = window.text("Title");
    let before = leave(&mut window, "Redline, rpm", "6k");
    window.fill("Title", "Another title");
    window.enter_field("Idle");
    window.ctrl(Key::Z);
    assert_eq!(window.text("Title"), title);
    assert_eq!(window.text("Redline, rpm"), "6k");
    window.ctrl(Key::Z);
    assert_eq!(window.text("Redline, rpm"), before);
}

#[test]
fn of_two_half_typed_texts_the_later_one_goes_first() {
    let mut window = Window::on_camper_van();
    leave(&mut window, "Redline, rpm", "6k");
    leave(&mut window, "Tyre", "1985 mm");
    window.enter_field("Title");
    window.ctrl(Key::Z);
    assert!(window.says("Undone: what was typed in Tyre: 1985 mm"));
    window.enter_field("Title");
    window.ctrl(Key::Z);
    assert!(window.says("Undone: what was typed in Redline, rpm: 6k"));
}

#[test]
fn a_half_typed_ratio_of_a_folded_card_comes_into_view() {
    let mut window = Window::on_camper_van();
    let before = leave(&mut window, THIRD, "1.4o");
    window.open_card(1);
    window.ctrl(Key::Z);
    assert_eq!(window.focused(), THIRD);
    assert_eq!(window.text(THIRD), before);
}

#[test]
fn menu_button_and_list_of_commands_name_the_half_typed_text() {
    let mut window = Window::on_camper_van();
    window.fill("Title", "Another title");
    let before = leave(&mut window, "Redline, rpm", "6k");
    window.click("Edit");
    assert!(window.shows("Undo: what was typed in Redline, rpm: 6k"));
    window.key(Key::Escape);
    window.get(Role::Button, "Undo").focus();
    window.settle();
    window.key(Key::Enter);
    assert_eq!(window.text("Redline, rpm"), before);
    assert_eq!(window.focused(), "Undo");
}

#[test]
fn typing_is_undone_in_the_field_before_the_text_is_given_up() {
    let mut window = Window::on_camper_van();
    let before = leave(&mut window, "Redline, rpm", "6k");
    window.key_with(Modifiers::SHIFT, Key::Tab);
    window.key(Key::End);
    window.type_text("m");
    assert_eq!(window.text("Redline, rpm"), "6km");
    window.ctrl(Key::Z);
    assert_eq!(window.text("Redline, rpm"), "6k");
    window.ctrl(Key::Z);
    assert_eq!(window.text("Redline, rpm"), before);
}

#[test]
fn a_text_that_changes_under_the_focus_is_all_selected_anew() {
    let long = "A title of 22 letters!";
    let mut window = Window::on_camper_van();
    window.fill("Title", long);
    window.fill("Title", "And another of twenty");
    window.key_with(Modifiers::SHIFT, Key::Tab);
    window.enter_field("Title");
    window.ctrl(Key::Z);
    assert_eq!(window.text("Title"), long);
    window.type_text("X");
    assert_eq!(window.text("Title"), "X");
}

#[test]
fn letters_that_the_fonts_lack_are_told_by_their_numbers() {
    let mut window = Window::on_camper_van();
    // The field itself has boxes for them.
    let ctx = &window.harness.ctx;
    ctx.set_missing_glyph_policy(egui::MissingGlyphPolicy::Tofu);
    window.type_in("Redline, rpm", "٤٥");
    window.key(Key::Tab);
    assert!(window.says("U+0664U+0665"));
    let tells = |window: &Window| window.names(Role::Label).join("\n");
    assert!(!tells(&window).contains('٤'), "{}", tells(&window));
}
