//! Where does the focus begin once another document or another set is shown?

use crate::support::memory_disk::MemoryDisk;
use crate::support::window::{Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use layshaft::project::format;

/// A window with unsaved work and the focus in a card.
fn in_a_card() -> Window {
    let mut window = Window::on_camper_van();
    window.fill("Ratio of gear 3, set 2", "1.417");
    window.enter_field("Ratio of gear 2, set 2");
    window
}

fn find(window: &mut Window, words: &str) {
    window.ctrl(Key::K);
    window.type_text(words);
    window.key(Key::Enter);
}

#[test]
fn a_new_project_begins_in_its_title_whichever_way_it_was_asked_for() {
    let by_key = |window: &mut Window| window.ctrl(Key::N);
    let by_menu = |window: &mut Window| window.choose("File", Role::Button, "New motorcycle");
    let by_words = |window: &mut Window| find(window, "new truck");
    for way in [by_key as fn(&mut Window), by_menu, by_words] {
        let mut window = in_a_card();
        way(&mut window);
        window.invoke("Do not save");
        assert_eq!(window.focused(), "Title");
        window.enter_field("Idle");
        way(&mut window);
        assert_eq!(window.focused(), "Title");
    }
}

#[test]
fn what_was_opened_begins_at_the_first_heading_where_a_stray_figure_overwrites_nothing() {
    let by_path = |window: &mut Window| window.open_by_path(&MemoryDisk::path("van.ron"));
    let by_words = |window: &mut Window| find(window, "farm four");
    let by_menu = |window: &mut Window| {
        window.click("File");
        window.move_onto(Role::Button, "Open example");
        window.click_lowest("Camper van");
    };
    // An example offers a project of one's own before all else.
    let file = ["Vehicle", "Title"];
    let example = ["Start with my own", "Vehicle"];
    let ways = [
        (by_path as fn(&mut Window), file),
        (by_words, example),
        (by_menu, example),
    ];
    for (way, [first, next]) in ways {
        let mut window = Window::on_camper_van();
        let text = format::write(&camper_van()).unwrap();
        window.disk.put("van.ron", &text);
        window.enter_field("Ratio of gear 2, set 2");
        way(&mut window);
        assert_eq!(window.focused(), first);
        let before = window.project().clone();
        window.type_text("7");
        window.key(Key::Tab);
        assert_eq!(*window.project(), before);
        assert_eq!(window.focused(), next);
    }
}

#[test]
fn a_pasted_set_is_named_next() {
    let mut window = Window::on_camper_van();
    window.choose("Edit", Role::Button, "Remove set");
    window.enter_field("Idle");
    window.ctrl_shift(Key::V);
    window.type_text("3.6 2.1 1.4 1.0 0.8 final drive 3.9");
    window.invoke("Add as a new set");
    assert!(
        window.focused().starts_with("Name of set"),
        "{}",
        window.focused()
    );
}

#[test]
fn a_stage_that_has_come_has_its_ratio_typed_next_and_is_seen_whole() {
    for (stage, field) in [
        ("Transfer box", "Ratio of position 2 of stage 1, set 2"),
        ("Primary drive", "Ratio of position 1 of stage 1, set 2"),
    ] {
        let mut window = Window::on_camper_van();
        window.choose("Add stage, set 2", Role::Button, stage);
        assert_eq!(window.focused(), field);
        let shown = [
            (Role::TextInput, field),
            (Role::Button, "Add position to stage 1, set 2"),
        ];
        let column = window.plot().left();
        for (role, name) in shown {
            let rect = window.get(role, name).rect();
            let screen = window.harness.ctx.content_rect();
            assert!(
                screen.contains_rect(rect) && rect.left() < column,
                "{name}: {rect}"
            );
        }
    }
}

#[test]
fn the_next_set_has_the_focus_in_the_field_of_the_same_place_or_in_its_name() {
    let mut window = Window::on_camper_van();
    for (from, to) in [
        ("Ratio of gear 2, set 2", "Ratio of gear 2, set 3"),
        ("Name of set 3", "Name of set 1"),
        ("Idle", "Name of set 2"),
    ] {
        window.enter_field(from);
        window.ctrl(Key::J);
        assert_eq!(window.focused(), to);
    }
    window.focus_handle("2", "3");
    window.ctrl(Key::J);
    assert!(
        window.focused().starts_with("Shift point"),
        "{}",
        window.focused()
    );
}
