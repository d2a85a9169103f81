//! Does a chain take the final drive's place, with a field for each of its two sprockets?

use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use layshaft::project::examples::Start;

const FRONT: &str = "Front sprocket, set 1";
const REAR: &str = "Rear sprocket, set 1";
const MENU: &str = "Final drive 1 menu, set 1";

/// A new motorcycle, on a chain of 15/45.
fn on_a_chain() -> Window {
    Opening::on(Start::Motorcycle.example().project().unwrap()).open()
}

fn drive(window: &Window) -> String {
    window.set(0).set.final_drives[0].to_string()
}

#[test]
fn each_sprocket_is_typed_by_itself_in_one_step() {
    for (field, drive_after) in [(FRONT, "chain 17/45"), (REAR, "chain 15/17")] {
        let mut window = on_a_chain();
        let before = window.project().clone();
        window.fill(field, "17");
        assert_eq!(drive(&window), drive_after);
        assert_eq!(window.undo_steps(), 1);
        window.check_step(&before);
    }
}

#[test]
fn the_row_says_what_the_sprockets_come_to() {
    let mut window = on_a_chain();
    assert!(window.says("= 3.000"));
    window.type_in(FRONT, "17");
    assert!(window.says("= 2.647"), "while it is typed");
}

#[test]
fn both_sprockets_typed_into_the_front_field_fill_both_in_one_step() {
    for text in ["16/46", "16:46", "46:16"] {
        let mut window = on_a_chain();
        let before = window.project().clone();
        window.fill(FRONT, text);
        assert_eq!(
            (window.text(FRONT), window.text(REAR)),
            ("16".into(), "46".into())
        );
        assert_eq!(window.undo_steps(), 1);
        window.check_step(&before);
    }
}

#[test]
fn enter_and_tab_go_from_the_front_sprocket_to_the_rear_one_and_on() {
    for key in [Key::Enter, Key::Tab] {
        let mut window = on_a_chain();
        window.enter_field(FRONT);
        for next in [REAR, "Shift point of all gears of set 1"] {
            window.key(key);
            assert_eq!(window.focused(), next);
        }
    }
}

#[test]
fn a_pair_that_is_shortened_to_one_count_leaves_the_other_sprocket_as_it_was() {
    let mut window = on_a_chain();
    window.type_in(FRONT, "16/46");
    for _ in 0.."/46".len() {
        window.key(Key::Backspace);
    }
    window.key(Key::Enter);
    assert_eq!(drive(&window), "chain 16/45");
}

#[test]
fn what_is_no_sprocket_is_told_and_leaves_the_chain_as_it_was() {
    for (field, text, says) in [
        (FRONT, "0", "teeth are whole numbers from 1 to 999, not 0"),
        (
            REAR,
            "16/46",
            "teeth are whole numbers from 1 to 999, not 16/46",
        ),
        (
            FRONT,
            "16/",
            "type the front sprocket's teeth, or both as 16/46",
        ),
        (REAR, "", "teeth are whole numbers from 1 to 999"),
    ] {
        let mut window = on_a_chain();
        window.fill(field, text);
        assert!(window.says(says), "{text}");
        assert_eq!(drive(&window), "chain 15/45");
    }
}

#[test]
fn a_chain_takes_the_place_of_gears_and_is_typed_next() {
    let mut window = Opening::on(Start::Car.example().project().unwrap()).open();
    let before = window.project().clone();
    window.choose(MENU, Role::Button, "Chain instead");
    assert_eq!(drive(&window), "chain 16/64", "the nearest to a ratio of 4");
    assert_eq!(window.focused(), FRONT);
    assert!(window.find(Role::TextInput, "Final drive, set 1").is_none());
    assert_eq!(window.undo_steps(), 1);
    window.type_text("16/46");
    window.key(Key::Enter);
    assert_eq!(drive(&window), "chain 16/46");
    window.ctrl(Key::Z);
    window.check_step(&before);
}

#[test]
fn counted_teeth_stay_when_gears_become_a_chain_and_back() {
    let mut window = Opening::on(camper_van()).open();
    let before = window.project().clone();
    window.choose(MENU, Role::Button, "Chain instead");
    assert_eq!(drive(&window), "chain 15/73");
    window.choose(MENU, Role::Button, "Gears instead");
    assert_eq!(drive(&window), "73:15");
    assert_eq!(window.focused(), "Final drive, set 1");
    assert!(*window.project() == before);
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn several_final_drives_tell_their_sprockets_apart() {
    let mut window = on_a_chain();
    window.choose(MENU, Role::Button, "Add final drive");
    window.choose("Final drive 2 menu, set 1", Role::Button, "Gears instead");
    assert_eq!(window.text("Final drive 2, set 1"), "45:15");
    window.fill("Front sprocket 1, set 1", "16");
    assert_eq!(drive(&window), "chain 16/45");
}

#[test]
fn a_chain_typed_into_the_field_of_gears_is_sent_to_its_own_fields() {
    let mut window = Opening::on(Start::Car.example().project().unwrap()).open();
    window.fill("Final drive, set 1", "chain 16/46");
    assert!(window.says("\"Chain instead\""));
    assert_eq!(drive(&window), "4");
}

#[test]
fn no_stage_is_offered_that_a_final_drive_is() {
    let mut window = on_a_chain();
    window.click("Add stage, set 1");
    assert!(window.find(Role::Button, "Transfer box").is_some());
    assert!(window.find(Role::Button, "Chain").is_none());
}
