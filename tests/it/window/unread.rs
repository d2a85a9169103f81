//! Is a text that does not read asked about before it is lost, and is the way to it found?

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, ViewportCommand};

const ASKED: &str = "Leave what does not read?";

/// A window on a file, in which a field holds what does not read and all else is saved.
fn with_unread(field: &str) -> Window {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    leave_in(&mut window, field);
    window
}

fn leave_in(window: &mut Window, field: &str) {
    window.type_in(field, "6k");
    window.key(Key::Tab);
    window.ctrl(Key::S);
    assert!(window.says("Saved, but without what does not read in"));
}

fn is_asking(window: &Window) -> bool {
    window.find(Role::AlertDialog, ASKED).is_some()
}

/// Goes to the field from the question; the text stands in it, selected as a whole.
#[track_caller]
fn check_mended(window: &mut Window, field: &str) {
    assert!(is_asking(window));
    window.key(Key::Enter);
    assert!(!is_asking(window));
    assert_eq!(window.focused(), field);
    assert_eq!(window.text(field), "6k");
    window.type_text("7");
    assert_eq!(window.text(field), "7");
}

#[test]
fn a_saved_project_with_what_does_not_read_keeps_its_mark_until_it_is_mended() {
    let mut window = with_unread("Redline, rpm");
    assert!(window.shows("van.ron (not saved)"));
    window.ctrl(Key::Z);
    assert!(window.shows("van.ron"));
    let commands = window.ask_to_close();
    assert!(!commands.contains(&ViewportCommand::CancelClose));
}

#[test]
fn closing_asks_and_leads_to_the_field() {
    let mut window = with_unread("Redline, rpm");
    let commands = window.ask_to_close();
    assert!(commands.contains(&ViewportCommand::CancelClose));
    check_mended(&mut window, "Redline, rpm");
}

#[test]
fn a_text_that_is_still_being_typed_is_asked_about() {
    let mut window = Window::on_camper_van();
    window.type_in("Redline, rpm", "6k");
    window.ask_to_close();
    check_mended(&mut window, "Redline, rpm");
}

#[test]
fn a_new_project_another_file_and_an_example_ask() {
    let mut window = with_unread("Redline, rpm");
    for key in [Key::N, Key::O] {
        window.ctrl(key);
        assert!(is_asking(&window), "{key:?}");
        window.key(Key::Escape);
        assert_eq!(window.text("Redline, rpm"), "6k");
    }
}

#[test]
fn what_is_left_without_is_lost_and_the_file_as_it_was() {
    let mut window = with_unread("Redline, rpm");
    let saved = window.disk.text("van.ron").unwrap();
    window.ask_to_close();
    window.get(Role::Button, "Leave without it").click();
    window.harness.step();
    assert!(window.commands().contains(&ViewportCommand::Close));
    assert_eq!(window.disk.text("van.ron").unwrap(), saved);
}

#[test]
fn the_field_is_found_in_a_folded_card_and_on_the_other_page() {
    let mut window = with_unread("Ratio of gear 3, set 2");
    window.open_card(0);
    window.ctrl(Key::Num6);
    window.ask_to_close();
    check_mended(&mut window, "Ratio of gear 3, set 2");
}

#[test]
fn a_field_of_a_job_is_found_from_the_page_of_driving() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    window.ctrl(Key::Num6);
    window.click("Shim for end play or preload");
    window.pause();
    leave_in(&mut window, "Trial shim, mm");
    window.click("Drive");
    window.ask_to_close();
    check_mended(&mut window, "Trial shim, mm");
}

#[test]
fn a_field_behind_the_write_up_is_found_and_one_in_it_opens_it() {
    let mut window = with_unread("Redline, rpm");
    window.ctrl(Key::E);
    window.pause();
    window.ask_to_close();
    check_mended(&mut window, "Redline, rpm");
    assert!(window.find(Role::Window, "Write-up").is_none());

    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    window.ctrl(Key::E);
    leave_in(&mut window, "Width, pixels");
    window.ctrl(Key::E);
    assert!(window.find(Role::Window, "Write-up").is_none());
    window.ask_to_close();
    check_mended(&mut window, "Width, pixels");
}

#[test]
fn the_newest_of_several_is_gone_to_and_all_are_told() {
    let mut window = with_unread("Redline, rpm");
    leave_in(&mut window, "Idle");
    assert!(window.says("does not read in 2 fields"));
    window.ask_to_close();
    assert!(window.shows("Redline, rpm: 6k") && window.shows("Idle: 6k"));
    check_mended(&mut window, "Idle");
}
