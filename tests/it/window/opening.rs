//! Does opening bring the file's project, and leave the present one where that fails?

use crate::support::memory_disk::MemoryDisk;
use crate::support::window::{Opening, Window, camper_van, three_ten_speeds};
use egui::{Key, vec2};
use layshaft::app::Purpose;
use layshaft::project::format;

const BROKEN: &str =
    "(\n    format: 1,\n    tyre: Size(\"195/65 R 15\"),\n    engine: (redline_rpm: -3),\n)\n";

fn open(window: &mut Window, name: &str) {
    window.ctrl(Key::O);
    window.type_over(&MemoryDisk::path(name).display().to_string());
    window.key(Key::Enter);
}

fn dialog_is_open(window: &Window) -> bool {
    window.says("Open a project")
}

#[test]
fn a_window_that_was_started_with_a_file_loses_nothing_when_it_first_saves() {
    let start = Opening::on(camper_van());
    let mut window = start.started_with("trucks.ron", &three_ten_speeds()).open();
    assert_eq!(window.focused(), "Vehicle", "where any document begins");
    window.type_in("Tyre", "1985 mm");
    window.ctrl(Key::J);
    let selected = window.app().desk().selected;
    window.wheel(window.plot().center(), 100.0);
    let view = window.view().x;
    window.ctrl(Key::S);
    assert_eq!(window.text("Tyre"), "1985 mm");
    assert_eq!(window.app().desk().selected, selected);
    let mut ends = view.into_iter().zip(window.view().x);
    assert!(ends.all(|(before, after)| (before - after).abs() < 1e-9));
}

#[test]
fn a_file_is_opened_with_a_history_of_its_own() {
    let mut window = Window::on_camper_van();
    let trucks = three_ten_speeds();
    window
        .disk
        .put("trucks.ron", &format::write(&trucks).unwrap());
    open(&mut window, "trucks.ron");
    assert_eq!(*window.project(), trucks);
    assert_eq!(window.undo_steps(), 0);
    assert_eq!(
        window.app().desk().file,
        Some(MemoryDisk::path("trucks.ron"))
    );
    assert!(window.says("trucks.ron"));
    assert!(!window.says("(not saved)"));
    assert_eq!(window.handles().len(), 9);
}

#[test]
fn the_system_dialog_chooses_a_file() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    window
        .disk
        .put("trucks.ron", &format::write(&three_ten_speeds()).unwrap());
    window.ctrl(Key::O);
    assert_eq!(
        window.picker.last_asked(),
        (Purpose::Open, Some(MemoryDisk::path("van.ron")))
    );
    window.picker.answer(Some(MemoryDisk::path("trucks.ron")));
    window.settle();
    assert!(!dialog_is_open(&window));
    assert_eq!(*window.project(), three_ten_speeds());
}

#[test]
fn a_broken_file_leaves_the_document_and_says_line_and_column() {
    let mut window = Window::on_camper_van();
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
    window.ctrl(Key::Z);
    window.disk.put("broken.ron", BROKEN);
    let before = window.project().clone();
    open(&mut window, "broken.ron");
    assert!(dialog_is_open(&window));
    assert!(window.says("line 4, column "), "no place is told");
    assert!(window.says("broken.ron"));
    assert_eq!(*window.project(), before);
    assert!(window.app().desk().file.is_none());

    window.key(Key::Escape);
    assert!(!dialog_is_open(&window));
    window.ctrl(Key::Y);
    assert_eq!(window.undo_steps(), 1, "the history is still there");
}

#[test]
fn a_broken_file_from_the_system_dialog_is_told_too() {
    let mut window = Window::on_camper_van();
    window.disk.put("broken.ron", BROKEN);
    let before = window.project().clone();
    window.ctrl(Key::O);
    window.picker.answer(Some(MemoryDisk::path("broken.ron")));
    window.settle();
    assert!(dialog_is_open(&window));
    assert!(window.says("line 4, column "));
    assert_eq!(*window.project(), before);
}

#[test]
fn a_missing_file_is_told_and_another_can_be_typed() {
    let mut window = Window::on_camper_van();
    window
        .disk
        .put("trucks.ron", &format::write(&three_ten_speeds()).unwrap());
    open(&mut window, "trks.ron");
    assert!(window.says("there is no such file"));
    window.type_over(&MemoryDisk::path("trucks.ron").display().to_string());
    window.key(Key::Enter);
    assert_eq!(*window.project(), three_ten_speeds());
    assert!(!dialog_is_open(&window));
}

#[test]
fn unsaved_work_is_asked_for_before_another_file_is_opened() {
    let mut window = Window::on_camper_van();
    window
        .disk
        .put("trucks.ron", &format::write(&three_ten_speeds()).unwrap());
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
    let before = window.project().clone();
    window.ctrl(Key::O);
    assert!(window.says("Save the changes?"));
    assert_eq!(window.picker.calls(), 0);
    window.key(Key::Escape);
    assert_eq!(*window.project(), before);

    window.ctrl(Key::O);
    window.invoke("Do not save");
    assert!(dialog_is_open(&window));
    // Not before a file was read is the work given up.
    assert_eq!(*window.project(), before);
    window.picker.answer(Some(MemoryDisk::path("trucks.ron")));
    window.settle();
    assert_eq!(*window.project(), three_ten_speeds());
}

#[test]
fn saving_first_goes_on_to_what_was_wanted() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
    let changed = window.project().clone();
    window.ctrl(Key::O);
    window.invoke("Save");
    let saved = format::read(&window.disk.text("van.ron").unwrap()).unwrap();
    assert_eq!(saved, changed);
    assert!(dialog_is_open(&window));
}

#[test]
fn a_file_written_by_hand_is_not_reformatted_without_asking() {
    let by_hand = format!(
        "// Weighed in May.\n{}",
        format::write(&camper_van()).unwrap()
    );
    let mut window = Window::on_camper_van();
    window.disk.put("by-hand.ron", &by_hand);
    open(&mut window, "by-hand.ron");
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
    window.ctrl(Key::S);
    assert!(window.says("Save in Layshaft's own layout?"));
    assert_eq!(window.disk.text("by-hand.ron").unwrap(), by_hand);
    window.key(Key::Escape);
    assert_eq!(window.disk.text("by-hand.ron").unwrap(), by_hand);

    window.ctrl(Key::S);
    window.invoke("Save here");
    let saved = format::read(&window.disk.text("by-hand.ron").unwrap()).unwrap();
    assert_eq!(saved, *window.project());
}

#[test]
fn a_new_project_is_in_no_file() {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    let before = window.disk.text("van.ron").unwrap();
    window.ctrl(Key::N);
    assert!(window.app().desk().file.is_none());
    assert_eq!(window.project().sets.len(), 1);
    window.ctrl(Key::S);
    assert!(window.says("Save the project"));
    assert_eq!(window.disk.text("van.ron").unwrap(), before);
}

#[test]
fn opening_without_a_path_asks_for_one() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::O);
    window.type_over("");
    window.key(Key::Enter);
    assert!(dialog_is_open(&window));
    assert!(window.says("Type a path first."));
}

#[test]
fn a_project_opens_at_the_top_of_its_panel() {
    let mut window = Opening::on(three_ten_speeds())
        .in_file("other.ron")
        .small()
        .open();
    let top = |window: &Window| window.field("Title").rect().top();
    let before = top(&window);
    window.enter_field("Title");
    window.key(Key::PageDown);
    assert!(top(&window) < before - 50.0);
    open(&mut window, "other.ron");
    assert!((top(&window) - before).abs() < 1.0);
}
