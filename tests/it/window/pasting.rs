//! Does a pasted text become gears only once somebody has looked it over?

use super::SECOND;
use crate::support::window::Window;
use egui::accesskit::Role;
use egui::{Event, Key};
use egui_kittest::kittest::NodeT;
use layshaft::project::Candidate;

const SHEET: &str = "1st 34/9\n2nd 2.1\n3rd 1.3\nfinal drive 4.06";

/// The camper van with that text in the dialog.
fn with_text(text: &str) -> Window {
    let mut window = Window::on_camper_van();
    window.ctrl_shift(Key::V);
    window.event(Event::Paste(text.to_owned()));
    window.settle();
    window
}

fn ratios(candidate: &Candidate) -> Vec<String> {
    let gears = candidate.set.gears.iter();
    gears.map(|gear| gear.ratio.to_string()).collect()
}

#[test]
fn what_was_read_is_shown_and_taken_as_one_step() {
    let mut window = with_text(SHEET);
    let before = window.project().clone();
    for name in ["gear 1", "gear 2", "gear 3", "final drive"] {
        window.get(Role::TextInput, name);
    }
    assert!(window.says("34 driven by 9 = 3.778"));
    window.invoke("Replace the selected set");
    let second = window.project().sets.iter().nth(SECOND).unwrap();
    assert_eq!(ratios(second), ["34:9", "2.1", "1.3"]);
    assert_eq!(second.set.final_drives[0].to_string(), "4.06");
    assert_eq!(window.undo_steps(), 1);
    window.ctrl(Key::Z);
    assert!(*window.project() == before);
}

#[test]
fn a_value_can_be_corrected_before_it_is_taken() {
    let mut window = with_text(SHEET);
    for (typed, is_said) in [("2.1x", true), ("2.2", false)] {
        window.get(Role::TextInput, "gear 2").focus();
        window.settle();
        window.type_over(typed);
        assert_eq!(window.says("is not a ratio"), is_said, "{typed}");
        let replace = window.get(Role::Button, "Replace the selected set");
        assert_eq!(replace.accesskit_node().is_disabled(), is_said, "{typed}");
    }
    window.invoke("Replace the selected set");
    let second = window.project().sets.iter().nth(SECOND).unwrap();
    assert_eq!(ratios(second), ["34:9", "2.2", "1.3"]);
}

#[test]
fn a_text_without_gears_says_what_to_paste_and_esc_takes_nothing() {
    let mut window = with_text("a box from the scrapyard");
    let before = window.project().clone();
    assert!(window.says("no gear ratio was found"));
    window.key(Key::Escape);
    assert!(!window.says("no gear ratio was found"));
    assert!(*window.project() == before);
    assert_eq!(window.undo_steps(), 0);
}
