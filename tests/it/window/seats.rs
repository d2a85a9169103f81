//! A shaft that is turned down and a ring on its seat, typed as in the workshop, in a wide window and a narrow one.

use crate::support::window::{Opening, Painted, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Rect};
use layshaft::workshop::JobState;

/// A window on the page of the workshop with one job of that kind begun.
fn with(kind: &str, [width, height]: [f32; 2]) -> Window {
    let mut window = Opening::on(camper_van()).sized(width, height).open();
    window.ctrl(Key::Num6);
    window.click(kind);
    window.pause();
    window
}

const WIDE: [f32; 2] = [1280.0, 900.0];
const NARROW: [f32; 2] = [1000.0, 640.0];

/// Types a shaft from 40 to 39 mm for k6.
fn from_40_to_39(window: &mut Window) {
    for (field, text) in [
        ("Diameter now, mm", "40"),
        ("Diameter wanted, mm", "39"),
        ("Class wanted there", "k6"),
        ("Hardened layer, depth, mm", "0.8"),
    ] {
        window.fill(field, text);
    }
}

fn nothing_is_there(window: &mut Window) {
    for what in [
        "Splines there",
        "Needles run there",
        "A synchroniser cone there",
        "A seal runs there",
    ] {
        window.choose(what, Role::RadioButton, "no");
    }
}

/// Where a text is seen.
fn seen(window: &Window, text: &str) -> Rect {
    let texts = Painted::of(window).texts;
    let found = texts.iter().find(|(painted, _)| painted == text);
    let (_, rect) = found.unwrap_or_else(|| panic!("{text} is not in {texts:?}"));
    assert!(rect.is_positive(), "{text} is out of sight");
    *rect
}

fn state(window: &Window) -> JobState {
    window.app().desk().answers()[0].state
}

#[test]
fn a_shaft_is_asked_about_turned_measured_and_done() {
    let mut window = with("Shaft turned down", WIDE);
    from_40_to_39(&mut window);
    assert!(window.says("whether there are splines"));
    assert!(!window.says("Cutting list for the lathe:"));
    nothing_is_there(&mut window);
    assert!(window.says("Turn it to 39.002 to 39.018 mm for k6"));
    assert!(window.says("Cutting list for the lathe:"));
    window.click("Add a place along the seat");
    window.pause();
    window.type_over("39.010 39.012");
    window.key(Key::Enter);
    window.pause();
    assert_eq!(state(&window), JobState::Done);
    assert!(
        !window.says("Cutting list for the lathe:"),
        "nothing is left to turn"
    );
    window.choose("Splines there", Role::RadioButton, "yes");
    assert_eq!(state(&window), JobState::ToChange);
    assert!(window.says("Do not turn it down"));
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(state(&window), JobState::Done);
}

#[test]
fn a_ring_in_a_warm_case_wants_a_stop() {
    let mut window = with("Fit of a bearing or ring", WIDE);
    window.choose(
        "The seat is",
        Role::RadioButton,
        "a bore: the part sits in it",
    );
    window.fill("Nominal diameter, mm", "72");
    window.fill("Class of the bore", "n7");
    assert!(window.says("shafts have small letters, bores capitals"));
    window.fill("Class of the bore", "N7");
    assert!(window.says("Clearance 4 to interference 39 µm with a bore of N7"));
    window.fill("Case runs warmer by, K", "60");
    assert!(window.says("Hot, the case may lose the ring"));
    window.choose("A stop holds the ring", Role::RadioButton, "yes");
    assert!(window.says("the stop holds it"));
}

#[test]
fn in_a_narrow_window_how_far_a_job_is_stays_in_sight_while_it_is_typed() {
    let mut window = with("Shaft turned down", NARROW);
    from_40_to_39(&mut window);
    nothing_is_there(&mut window);
    let line = "To be measured: turn it to 39.002 to 39.018 mm for k6";
    let before = seen(&window, line);
    window.click("Add a place along the seat");
    window.pause();
    window.type_over("39.030");
    window.key(Key::Enter);
    window.pause();
    let line = "To be changed: the journal does not lie within k6: largest above by 12 µm, smallest above by 12 µm";
    let after = seen(&window, line);
    assert_eq!(after.min, before.min, "it is scrolled away");
    // Side by side there is no need of it.
    let window = with("Shaft turned down", WIDE);
    let texts = Painted::of(&window).texts;
    assert!(!texts.iter().any(|(text, _)| text.starts_with("Open: ")));
}
