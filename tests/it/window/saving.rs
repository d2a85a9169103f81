//! Is work saved where it is wanted, and never lost where that fails?

use super::SECOND;
use crate::support::memory_disk::{HOME, MemoryDisk};
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, vec2};
use layshaft::app::Purpose;
use layshaft::project::format;
use std::path::PathBuf;

fn change_something(window: &mut Window) {
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
}

fn path_text(name: &str) -> String {
    MemoryDisk::path(name).display().to_string()
}

fn path_dialog_is_open(window: &Window) -> bool {
    window.says("Save the project")
}

#[test]
fn ctrl_s_saves_in_the_file_and_it_reads_back_equal() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    change_something(&mut window);
    let project = window.project().clone();
    window.ctrl(Key::S);
    let text = window.disk.text("van.ron").unwrap();
    assert_eq!(format::read(&text).unwrap(), project);
    assert_eq!(
        window.disk.file_names(),
        ["van.ron"],
        "nothing is left beside it"
    );
    assert!(window.says("Saved in"));
    assert!(!window.says("(not saved)"));
    assert_eq!(window.picker.calls(), 0);
}

#[test]
fn open_nudges_are_saved_too() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    window.focus_handle("2", "3");
    window.key(Key::ArrowUp);
    window.ctrl(Key::S);
    let saved = format::read(&window.disk.text("van.ron").unwrap()).unwrap();
    assert_eq!(saved, *window.project());
    assert_eq!(window.shifts(SECOND)[1], 3610);
    assert!(!window.says("(not saved)"));
}

#[test]
fn without_a_file_saving_asks_for_one() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::S);
    assert!(path_dialog_is_open(&window));
    let (purpose, suggested) = window.picker.last_asked();
    assert_eq!(purpose, Purpose::Save);
    assert_eq!(suggested, Some(PathBuf::from("camper-van-which-gears.ron")));
}

#[test]
fn a_chosen_file_gets_the_ending_ron() {
    let mut window = Window::on_camper_van();
    change_something(&mut window);
    window.ctrl_shift(Key::S);
    window.picker.answer(Some(MemoryDisk::path("van")));
    window.settle();
    assert!(!path_dialog_is_open(&window));
    let text = window.disk.text("van.ron").unwrap();
    assert_eq!(format::read(&text).unwrap(), *window.project());
    assert!(window.says("van.ron"));
}

#[test]
fn a_typed_path_gets_the_ending_ron() {
    let mut window = Window::on_camper_van();
    window.ctrl_shift(Key::S);
    window.type_over(&path_text("typed"));
    window.key(Key::Enter);
    assert!(!path_dialog_is_open(&window));
    assert_eq!(window.disk.file_names(), ["typed.ron"]);
}

#[test]
fn an_ending_that_was_typed_stays() {
    let mut window = Window::on_camper_van();
    window.ctrl_shift(Key::S);
    window.type_over(&path_text("van.txt"));
    window.invoke("Save");
    assert_eq!(window.disk.file_names(), ["van.txt"]);
}

#[test]
fn saving_over_another_file_asks_and_esc_keeps_it() {
    let mut window = Window::on_camper_van();
    window.disk.put("other.ron", "something else");
    window.ctrl_shift(Key::S);
    window.type_over(&path_text("other"));
    window.key(Key::Enter);
    assert!(window.says("Replace the file?"));
    assert!(window.says("other.ron"));
    window.key(Key::Escape);
    assert!(!window.says("Replace the file?"));
    assert_eq!(window.disk.text("other.ron").unwrap(), "something else");
    assert!(window.app().desk().file.is_none());
}

#[test]
fn enter_keeps_the_other_file_and_asks_for_another_place() {
    let mut window = Window::on_camper_van();
    window.disk.put("other.ron", "something else");
    window.ctrl_shift(Key::S);
    window.type_over(&path_text("other"));
    window.key(Key::Enter);
    window.key(Key::Enter);
    assert_eq!(window.disk.text("other.ron").unwrap(), "something else");
    assert!(path_dialog_is_open(&window));
}

#[test]
fn replacing_another_file_must_be_said() {
    let mut window = Window::on_camper_van();
    window.disk.put("other.ron", "something else");
    window.ctrl_shift(Key::S);
    window.type_over(&path_text("other.ron"));
    window.key(Key::Enter);
    window.invoke("Replace it");
    let text = window.disk.text("other.ron").unwrap();
    assert_eq!(format::read(&text).unwrap(), *window.project());
}

#[test]
fn the_own_file_is_replaced_without_a_question() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    change_something(&mut window);
    window.ctrl_shift(Key::S);
    assert_eq!(
        window.picker.last_asked().1,
        Some(MemoryDisk::path("van.ron"))
    );
    window.key(Key::Enter);
    assert!(!window.says("Replace the file?"));
    let text = window.disk.text("van.ron").unwrap();
    assert_eq!(format::read(&text).unwrap(), *window.project());
}

#[test]
fn saving_under_another_name_leaves_the_first_file_as_it_was() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    let before = window.disk.text("van.ron").unwrap();
    change_something(&mut window);
    window.ctrl_shift(Key::S);
    window.type_over(&path_text("copy.ron"));
    window.key(Key::Enter);
    assert_eq!(window.disk.text("van.ron").unwrap(), before);
    change_something(&mut window);
    window.ctrl(Key::S);
    let copy = format::read(&window.disk.text("copy.ron").unwrap()).unwrap();
    assert_eq!(copy, *window.project());
}

#[test]
fn a_missing_folder_is_said_in_the_dialog_and_the_work_stays() {
    let mut window = Window::on_camper_van();
    change_something(&mut window);
    let project = window.project().clone();
    window.ctrl_shift(Key::S);
    window.type_over("/no/such/folder/van.ron");
    window.key(Key::Enter);
    assert!(path_dialog_is_open(&window));
    assert!(window.says("there is no such folder"));
    assert_eq!(*window.project(), project);
    assert_eq!(window.undo_steps(), 1);

    window.type_over(&path_text("van.ron"));
    window.key(Key::Enter);
    assert!(!path_dialog_is_open(&window));
    assert_eq!(window.disk.file_names(), ["van.ron"]);
}

#[test]
fn a_disk_that_cannot_be_written_is_said_and_the_work_stays() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    let before = window.disk.text("van.ron").unwrap();
    window.disk.make_read_only();
    change_something(&mut window);
    let project = window.project().clone();
    window.ctrl(Key::S);
    assert!(path_dialog_is_open(&window));
    assert!(window.says("cannot be written"));
    assert!(window.says(HOME));
    assert_eq!(*window.project(), project);
    assert_eq!(window.disk.text("van.ron").unwrap(), before);

    window.key(Key::Escape);
    assert!(!path_dialog_is_open(&window));
    assert!(window.says("(not saved)"));
}

#[test]
fn an_empty_path_is_asked_for_again() {
    let mut window = Window::on_camper_van();
    window.ctrl_shift(Key::S);
    window.type_over(" ");
    window.key(Key::Enter);
    assert!(path_dialog_is_open(&window));
    assert!(window.says("Type a path first."));
}

#[test]
fn esc_leaves_the_dialog_and_nothing_is_saved() {
    let mut window = Window::on_camper_van();
    change_something(&mut window);
    window.ctrl(Key::S);
    window.key(Key::Escape);
    assert!(!path_dialog_is_open(&window));
    assert!(window.disk.file_names().is_empty());
    assert!(window.says("(not saved)"));
    // The answer comes when nobody waits for it any more.
    window.picker.answer(Some(MemoryDisk::path("late.ron")));
    window.settle();
    assert!(window.disk.file_names().is_empty());
}

#[test]
fn a_dialog_that_never_answers_is_passed_by_typing() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::S);
    for _ in 0..20 {
        window.harness.step();
    }
    let field = window.get(Role::TextInput, "Path");
    assert!(field.is_focused());
    window.type_over(&path_text("van.ron"));
    window.key(Key::Enter);
    assert_eq!(window.disk.file_names(), ["van.ron"]);
    // And the window goes on as before.
    change_something(&mut window);
    window.ctrl(Key::S);
    assert!(!window.says("(not saved)"));
}

#[test]
fn where_no_system_dialog_can_be_shown_the_own_one_stays() {
    let mut window = Window::on_camper_van();
    window.picker.show_nothing();
    window.ctrl(Key::S);
    assert!(path_dialog_is_open(&window));
    assert!(window.says("Type the path of the file."));
    window.type_over(&path_text("van.ron"));
    window.key(Key::Enter);
    assert_eq!(window.disk.file_names(), ["van.ron"]);
}

#[test]
fn cancelling_the_system_dialog_closes_the_own_one() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::S);
    window.picker.answer(None);
    window.settle();
    assert!(!path_dialog_is_open(&window));
    assert!(window.disk.file_names().is_empty());
}

#[test]
fn the_answer_to_an_earlier_dialog_is_not_taken_for_this_one() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::S);
    window.key(Key::Escape);
    window.ctrl(Key::S);
    window
        .picker
        .answer_to(1, Some(MemoryDisk::path("first.ron")));
    window.settle();
    assert!(path_dialog_is_open(&window));
    assert!(window.disk.file_names().is_empty());
    window
        .picker
        .answer_to(2, Some(MemoryDisk::path("second.ron")));
    window.settle();
    assert_eq!(window.disk.file_names(), ["second.ron"]);
}

#[test]
fn saving_onto_a_folder_is_answered_as_opening_one_is() {
    let mut window = Window::on_camper_van();
    change_something(&mut window);
    for folder in [HOME.to_owned(), format!("{HOME}/")] {
        window.ctrl(Key::S);
        window.type_over(&folder);
        window.key(Key::Enter);
        assert!(path_dialog_is_open(&window), "{folder}");
        assert!(
            window.says("this is a folder, choose a file in it"),
            "{folder}"
        );
        window.key(Key::Escape);
    }
    window.ctrl(Key::S);
    window.type_over(&format!("{HOME}/none/"));
    window.key(Key::Enter);
    assert!(window.says("this path ends in no file name"));
    assert!(window.disk.file_names().is_empty());
}
