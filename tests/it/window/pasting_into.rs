//! Is it said what a pasted text lacks, what it takes from the set it goes into, and what went?

use super::SECOND;
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Event, Key};
use egui_kittest::kittest::NodeT;
use layshaft::gearing::Name;
use layshaft::project::Edit;
use layshaft::project::examples::Start;

/// Pastes a text into the dialog.
fn paste(window: &mut Window, text: &str) {
    window.ctrl_shift(Key::V);
    window.event(Event::Paste(text.to_owned()));
    window.settle();
}

/// The camper van, whose second set is selected, with that text in the dialog.
fn with_text(text: &str) -> Window {
    let mut window = Window::on_camper_van();
    paste(&mut window, text);
    window
}

/// Types into a field of the dialog.
fn correct(window: &mut Window, field: &str, text: &str) {
    window.get(Role::TextInput, field).focus();
    window.settle();
    window.type_over(text);
}

const OVERALL: &str = "overall ratios: 15.2, 9.1, 5.9, 4.3";

#[test]
fn a_text_without_a_final_drive_shows_the_one_that_would_be_used() {
    let mut window = with_text(OVERALL);
    let own = window.project().sets.iter().nth(SECOND).unwrap();
    let own = own.set.final_drives[0].to_string();
    assert_eq!(window.field("final drive").value().unwrap(), own);
    assert!(window.says(", from set 2"));
    correct(&mut window, "final drive", "4.3");
    assert!(!window.says(", from set 2"));
    assert!(window.says("= 3.535"));
    window.invoke("Replace the selected set");
    let second = &window.project().sets.iter().nth(SECOND).unwrap().set;
    assert_eq!(second.final_drives[0].to_string(), "4.3");
    assert!((second.gears[0].ratio.value() - 15.2 / 4.3).abs() < 1e-12);
}

#[test]
fn pasted_overall_ratios_stay_when_a_final_drive_is_typed_afterwards() {
    let mut window = with_text(OVERALL);
    window.invoke("Replace the selected set");
    window.fill("Final drive, set 2", "4.3");
    for (gear, overall) in [("1", "15.2"), ("2", "9.1"), ("3", "5.9"), ("4", "4.3")] {
        let field = format!("Ratio of gear {gear}, set 2");
        assert_eq!(window.text(&field), overall);
    }
    assert!((window.ratios(SECOND)[0] - 15.2 / 4.3).abs() < 1e-12);
}

#[test]
fn pasted_speeds_stay_when_a_final_drive_is_typed_afterwards() {
    let mut window = with_text("km/h per 1000 rpm\n1st 7.5\n2nd 13.6\n3rd 20.1\nreverse 8.25");
    assert!(window.says("3 gears, km/h at 1000 rpm"));
    window.invoke("Replace the selected set");
    window.fill("Final drive, set 2", "4.3");
    for (gear, speed) in [("gear 1", "7.5"), ("gear 3", "20.1"), ("reverse", "8.25")] {
        assert_eq!(window.text(&format!("Ratio of {gear}, set 2")), speed);
    }
}

#[test]
fn a_reverse_that_the_text_does_not_name_is_said_to_be_gone() {
    let mut window = with_text("1st 3.5\n2nd 2.1\n3rd 1.3\nfinal drive 4.06");
    window.invoke("Replace the selected set");
    assert!(window.says("set 2: 3 gears pasted, its reverse 3.45 is gone; Undo brings it back"));
    window.ctrl(Key::Z);
    paste(&mut window, "1st 3.5\n2nd 2.1\nR 3.3\nfinal drive 4.06");
    window.invoke("Replace the selected set");
    assert!(window.says("set 2: 2 gears pasted; Undo brings back what was there"));
}

#[test]
fn a_set_without_a_name_in_the_text_can_be_named_and_keeps_its_own_otherwise() {
    let own = "Same box, taller final drive";
    for (typed, name) in [
        (None, own),
        (Some("From the scrapyard"), "From the scrapyard"),
    ] {
        let mut window = with_text(OVERALL);
        assert_eq!(window.field("name").value().unwrap(), own);
        assert!(window.says("from set 2"));
        if let Some(typed) = typed {
            correct(&mut window, "name", typed);
        }
        window.invoke("Replace the selected set");
        let second = window.project().sets.iter().nth(SECOND).unwrap();
        assert_eq!(second.set.name.as_str(), name);
    }
}

#[test]
fn a_name_that_is_none_is_told_and_keeps_the_set_from_being_taken() {
    let mut window = with_text(OVERALL);
    correct(&mut window, "name", " ");
    assert!(window.says("a name must not be empty"));
    let replace = window.get(Role::Button, "Replace the selected set");
    assert!(replace.accesskit_node().is_disabled());
}

#[test]
fn the_text_s_name_for_a_set_is_kept_though_the_replaced_set_has_it_already() {
    let text = "gear | stock | close\n1st | 3.42 | 2.92\n2nd | 1.98 | 1.95\nFD | 3.94 | 4.21";
    let mut window = Opening::on(Start::Car.example().project().unwrap()).open();
    for _ in 0..2 {
        paste(&mut window, text);
        window.click_on(Role::CheckBox, "close: 2 gears");
        assert_eq!(window.field("name, stock").value().unwrap(), "stock");
        window.invoke("Replace the selected set");
        let first = window.project().sets.iter().next().unwrap();
        assert_eq!(first.set.name.as_str(), "stock");
    }
}

#[test]
fn a_value_that_does_not_read_hides_none_of_the_others() {
    let mut window = with_text("1st 34/9\n2nd 2.1\n3rd 1.3\nfinal drive 4.06");
    correct(&mut window, "gear 2", "2.1x");
    assert!(window.says("is not a ratio"));
    for told in ["34 driven by 9 = 3.778", "= 1.300", "= 4.060"] {
        assert!(window.says(told), "{told}");
    }
    // Without what is behind the gears overall ratios come to nothing.
    let mut window = with_text(OVERALL);
    correct(&mut window, "final drive", "4.3x");
    assert!(!window.says("= 3."));
}

#[test]
fn a_title_is_offered_where_the_project_has_none() {
    let title = Name::new("Vans of the club").unwrap();
    let titled = Edit::Title(Some(title.clone())).applied_to(&camper_van());
    let mut window = Opening::on(titled.unwrap()).open();
    window.ctrl_shift(Key::C);
    let table = window.copied().to_owned();
    paste(&mut window, &table);
    let tick = "title \"Vans of the club\"";
    assert!(window.find(Role::CheckBox, tick).is_none());
    window.key(Key::Escape);
    window.ctrl(Key::N);
    paste(&mut window, &table);
    window.get(Role::CheckBox, tick);
    window.invoke("Replace the selected set, add 2");
    assert_eq!(window.project().title, Some(title));
}

#[test]
fn the_dialog_does_not_shrink_while_a_text_is_typed() {
    let mut window = with_text(OVERALL);
    let place = |window: &Window| window.get(Role::Button, "Cancel").rect();
    let before = place(&window);
    window
        .get(Role::MultilineTextInput, "Text with a gear set")
        .focus();
    window.settle();
    window.type_over("none");
    assert!(window.says("no gear ratio was found"));
    assert!((place(&window).top() - before.top()).abs() < 40.0);
}
