//! Is what is fitted counted in the window, and the gear named?

use super::command;
use crate::support::window::Window;
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT;

/// The dialog on the camper van.
fn opened() -> Window {
    let mut window = Window::on_camper_van();
    command(&mut window, "What is fitted…");
    assert_eq!(window.focused(), "Turns of the engine");
    window
}

/// All that is said in the window.
fn said(window: &Window) -> String {
    let labels = window
        .nodes()
        .filter_map(|node| node.accesskit_node().value());
    labels.collect::<Vec<String>>().join("\n")
}

#[test]
fn turns_that_are_counted_name_the_gear_by_keys_alone() {
    let mut window = opened();
    // Fourth gear of the fitted five-speed: 0.93 × 73 ÷ 15 = 4.526; half of that with one wheel held.
    window.type_text("22.63 ± 0.05");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Turns of the free wheel");
    window.type_text("10");
    let told = said(&window);
    assert!(told.contains("Overall ratio 4.526 ± 0.010"), "{told}");
    assert!(
        told.contains("Only gear 4 of set 1 is within the error"),
        "{told}"
    );
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Close");
    window.key(Key::Enter);
    assert!(window.find(Role::Dialog, "What is fitted").is_none());
    assert_eq!(window.undo_steps(), 0, "it changes nothing");
    command(&mut window, "What is fitted…");
    assert!(
        said(&window).contains("4.526"),
        "what was typed is still there"
    );
}

#[test]
fn an_engine_speed_on_the_road_counts_in_the_unit_of_the_project() {
    let mut window = opened();
    window.click("Measured: driven");
    window.type_in("Engine speed, rpm", "2580 30");
    window.type_in("Road speed, km/h", "90 0,5");
    let told = said(&window);
    // Fifth gear of the fitted five-speed has 2580 rpm at 90 km/h.
    assert!(told.contains("gear 5 of set 1"), "{told}");
    window.click("Measured: both wheels turned");
    assert!(said(&window).contains("Type both figures."));
}

#[test]
fn what_is_no_reading_is_told_beside_its_field() {
    let mut window = opened();
    window.type_text("22 x");
    let told = said(&window);
    assert!(told.contains("as 41.1 ± 0.1"), "{told}");
    window.type_in("Turns of the engine", "0");
    assert!(said(&window).contains("between 0.01 and 10000"));
    window.key(Key::Escape);
    assert!(window.find(Role::Dialog, "What is fitted").is_none());
}
