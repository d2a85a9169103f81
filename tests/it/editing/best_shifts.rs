//! Are the best shift points offered with what they gain, taken in one step, and given back?

use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT;

const OFFER: &str = "Take the best shift points, set 2";

/// The engine speeds at which the second set is changed up.
fn shifts(window: &Window) -> Vec<f64> {
    let set = &window.set(1).set;
    let mut shifts: Vec<f64> = set.chain().map(|gear| set.shift_of(gear).rpm()).collect();
    shifts.pop();
    shifts
}

/// What is said of the button while it can be pressed.
fn offer(window: &Window) -> Option<String> {
    let button = window.find(Role::Button, OFFER)?;
    let node = button.accesskit_node();
    let words = node.data().description().map(str::to_owned);
    words.filter(|_| !node.is_disabled())
}

#[test]
fn the_open_card_says_what_they_gain_before_they_are_taken() {
    let window = Window::on_camper_van();
    let words = "Best: 1–2 at 4340, 2–3 at 4220, 3–4 at 4120, 4–5 at 4000 rpm; \
                 to 100 km/h 18.95 s instead of 19.64 s";
    assert!(window.says(words));
    let all = "to 50 km/h 5.35 s instead of 5.46 s\nto 90 km/h 14.61 s instead of 15.97 s\n\
               to 100 km/h 18.95 s instead of 19.64 s\nto 110 km/h 23.36 s instead of 24.04 s";
    assert_eq!(offer(&window).as_deref(), Some(all));
}

#[test]
fn they_are_taken_in_one_step_and_what_was_comes_back() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    assert_eq!(shifts(&window), [3600.0; 4]);
    let promised = offer(&window).unwrap();
    window.get(Role::Button, OFFER).focus();
    window.settle();
    window.key(Key::Enter);
    assert_eq!(shifts(&window), [4340.0, 4220.0, 4120.0, 4000.0]);
    let says = "Changes up 1–2 at 4340, 2–3 at 4220, 3–4 at 4120, 4–5 at 4000 rpm: \
                to 100 km/h 18.95 s instead of 19.64 s";
    assert_eq!(window.app().message(), says);
    assert_eq!(offer(&window), None);
    assert_eq!(window.focused(), "Shift point of all gears of set 2");
    assert_eq!(window.undo_steps(), 1);
    window.ctrl(Key::Z);
    let undone = "Undone: shift points, set 2: 4340 4220 4120 4000, now 3600 again";
    assert_eq!(window.app().message(), undone);
    assert_eq!(window.project(), &before);
    assert_eq!(offer(&window), Some(promised));
}

#[test]
fn the_command_is_about_the_open_card_and_says_why_it_cannot_be_invoked() {
    let mut window = Window::on_camper_van();
    window.choose("Edit", Role::Button, "Take the best shift points");
    assert_ne!(shifts(&window), [3600.0; 4]);
    let why = |window: &mut Window| {
        window.click("Edit");
        let node = window.get(Role::Button, "Take the best shift points");
        let node = node.accesskit_node();
        assert!(node.is_disabled());
        let why = node.data().description().unwrap().to_owned();
        window.key(Key::Escape);
        why
    };
    assert_eq!(
        why(&mut window),
        "Not now: the set has them already, or reaches no speed"
    );
    let mut project = camper_van();
    project.technical.engine.curve = None;
    let mut window = Opening::on(project).open();
    assert!(window.find(Role::Button, OFFER).is_none());
    let says = "Not now: not all is known that runs need of engine and vehicle";
    assert_eq!(why(&mut window), says);
}

#[test]
fn another_card_is_offered_its_own_from_its_menu_too() {
    let mut window = Window::on_camper_van();
    let (second, third) = (window.set(1).set.clone(), window.set(2).set.clone());
    window.open_card(3);
    window.choose("Set 3 menu", Role::Button, "Take the best shift points");
    assert_eq!(window.set(1).set, second);
    assert_ne!(window.set(2).set, third);
    let button = window.get(Role::Button, "Take the best shift points, set 3");
    assert!(button.accesskit_node().is_disabled());
}

#[test]
fn a_shift_point_that_is_typed_moves_what_is_offered_in_the_same_frame() {
    let mut window = Window::on_camper_van();
    let before = offer(&window).unwrap();
    window.type_in("Shift point of all gears of set 2", "3000");
    let typed = offer(&window).unwrap();
    assert_ne!(typed, before);
    assert!(typed.contains("instead of"), "{typed}");
    window.key(Key::Escape);
    assert_eq!(offer(&window), Some(before));
}

#[test]
fn a_second_press_in_the_same_place_hits_nothing_else() {
    let mut window = Window::on_camper_van();
    let at = window.shown(Role::Button, OFFER).center();
    window.click_twice_at(at);
    assert_eq!(shifts(&window), [4340.0, 4220.0, 4120.0, 4000.0]);
    assert_eq!(window.undo_steps(), 1);
}
