//! Are tooth pairs that are typed one after the other read in one order?

use crate::support::window::Window;
use egui::Key;
use egui::accesskit::Role;

/// A box as a sheet gives it that writes what drives first; the fourth makes sense both ways.
const DRIVING_FIRST: [(&str, &str); 5] = [
    ("1", "11:38"),
    ("2", "21:44"),
    ("3", "31:43"),
    ("4", "38:39"),
    ("5", "38:31"),
];

fn fill(window: &mut Window, pairs: &[(&str, &str)]) {
    for (gear, pair) in pairs {
        window.fill(&format!("Ratio of gear {gear}, set 1"), pair);
    }
}

/// The ratios of the first set as they are spelled, driven first.
fn spelled(window: &Window) -> Vec<String> {
    let gears = window.set(0).set.gears.iter();
    gears.map(|gear| gear.ratio.to_string()).collect()
}

const READ: [&str; 5] = ["38:11", "44:21", "43:31", "39:38", "31:38"];

#[test]
fn pairs_typed_driving_first_are_all_turned_from_first_to_top() {
    let mut window = Window::on_camper_van();
    fill(&mut window, &DRIVING_FIRST);
    assert_eq!(spelled(&window), READ);
}

#[test]
fn pairs_typed_driving_first_are_all_turned_from_top_to_first() {
    let mut window = Window::on_camper_van();
    let mut pairs = DRIVING_FIRST;
    pairs.reverse();
    fill(&mut window, &pairs);
    assert_eq!(spelled(&window), READ);
}

#[test]
fn a_pair_that_is_typed_before_its_neighbours_is_never_turned_by_them() {
    let mut window = Window::on_camper_van();
    fill(&mut window, &DRIVING_FIRST[3..4]);
    assert_eq!(spelled(&window)[3], "38:39", "nothing is known yet");
    fill(&mut window, &DRIVING_FIRST[..3]);
    assert_eq!(spelled(&window)[..4], ["38:11", "44:21", "43:31", "38:39"]);
    // Typed once more it finds its neighbours.
    window.fill("Ratio of gear 4, set 1", "38:40");
    assert_eq!(
        spelled(&window)[3],
        "38:40",
        "a correction of what stood there"
    );
    window.fill("Ratio of gear 4, set 1", "1");
    window.fill("Ratio of gear 4, set 1", "38:39");
    assert_eq!(spelled(&window)[3], "39:38");
}

#[test]
fn a_pair_that_is_corrected_in_its_field_keeps_the_order_that_stands_there() {
    let mut window = Window::on_camper_van();
    fill(&mut window, &DRIVING_FIRST);
    window.enter_field("Ratio of gear 4, set 1");
    assert_eq!(window.text("Ratio of gear 4, set 1"), "39:38");
    window.key(Key::End);
    window.key(Key::Backspace);
    window.type_text("7");
    window.key(Key::Enter);
    assert_eq!(spelled(&window)[3], "39:37");
}

#[test]
fn a_swap_by_its_button_tells_the_order_too() {
    let mut window = Window::on_camper_van();
    window.fill("Ratio of gear 4, set 1", "38:39");
    window.click("38 driven by 39 = 0.974, swap, gear 4, set 1");
    assert_eq!(spelled(&window)[3], "39:38");
    window.fill("Ratio of gear 3, set 1", "1.3");
    window.fill("Ratio of gear 5, set 1", "40:41");
    assert_eq!(spelled(&window)[4], "41:40", "as the gear before it");
    window.click("41 driven by 40 = 1.025, swap, gear 5, set 1");
    assert_eq!(spelled(&window)[4], "40:41");
}

#[test]
fn an_order_holds_for_the_pair_that_was_typed_and_no_other() {
    let mut window = Window::on_camper_van();
    fill(&mut window, &DRIVING_FIRST[..3]);
    for _ in 0..3 {
        window.click("Undo");
    }
    window.fill("Ratio of gear 4, set 1", "38:39");
    assert_eq!(
        spelled(&window)[3],
        "38:39",
        "what was undone tells nothing"
    );
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    window.choose("Set 1 menu", Role::RadioButton, "gear ratios");
    fill(&mut window, &DRIVING_FIRST[..3]);
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    window.choose("Set 1 menu", Role::RadioButton, "gear ratios");
    window.fill("Ratio of gear 4, set 1", "1");
    window.fill("Ratio of gear 4, set 1", "38:39");
    assert_eq!(
        spelled(&window)[3],
        "39:38",
        "looking at another form forgets no order"
    );
}
