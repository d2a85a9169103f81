//! Does a pasted text become gears only once somebody has looked it over?

use super::SECOND;
use crate::support::window::{Opening, Window};
use egui::accesskit::Role;
use egui::{Event, Key};
use egui_kittest::kittest::NodeT;
use layshaft::project::Candidate;
use layshaft::project::examples::Start;

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
fn a_chain_that_is_the_final_drive_is_shown_as_one_and_corrected_to_another() {
    let mut window = with_text("1st 2.6\n2nd 1.9\n3rd 1.5\nsprockets 16/42");
    assert!(window.says("chain front 16 rear 42 = 2.625"));
    window.get(Role::TextInput, "chain").focus();
    window.settle();
    window.type_over("16/46");
    window.invoke("Replace the selected set");
    let second = window.project().sets.iter().nth(SECOND).unwrap();
    assert_eq!(second.set.final_drives[0].to_string(), "chain 16/46");
    assert_eq!(window.text("Rear sprocket, set 2"), "46");
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

const COLUMNS: &str = "gear | stock | close\n1st | 3.42 | 2.92\n2nd | 1.98 | 1.95\n3rd | 1.36 | 1.41\nFD | 3.94 | 4.21";

/// A new project with that text in the dialog.
fn new_with_text(text: &str) -> Window {
    let mut window = Opening::on(Start::Car.example().project().unwrap()).open();
    window.ctrl_shift(Key::V);
    window.event(Event::Paste(text.to_owned()));
    window.settle();
    window
}

fn names(window: &Window) -> Vec<String> {
    let sets = window.project().sets.iter();
    sets.map(|candidate| candidate.set.name.to_string())
        .collect()
}

#[test]
fn enter_in_a_value_goes_to_the_next_and_from_the_last_to_the_answers() {
    let mut window = with_text(SHEET);
    window.get(Role::TextInput, "gear 2").focus();
    window.settle();
    window.type_over("2.2");
    for next in ["gear 3", "final drive", "Replace the selected set"] {
        window.key(Key::Enter);
        assert_eq!(window.focused(), next);
    }
    // What was corrected is still there, and nothing was answered yet.
    assert_eq!(window.undo_steps(), 0);
    window.key(Key::Enter);
    let second = window.project().sets.iter().nth(SECOND).unwrap();
    assert_eq!(ratios(second), ["34:9", "2.2", "1.3"]);
}

#[test]
fn a_value_that_is_reached_by_enter_is_typed_over() {
    let mut window = with_text(SHEET);
    window.get(Role::TextInput, "gear 2").focus();
    window.settle();
    window.key(Key::Enter);
    window.event(Event::Text("1.4".to_owned()));
    window.settle();
    assert_eq!(window.field("gear 3").value().unwrap(), "1.4");
}

#[test]
fn another_text_asks_before_corrections_are_lost() {
    let mut window = with_text(SHEET);
    window.get(Role::TextInput, "gear 2").focus();
    window.settle();
    window.type_over("2.2");
    assert!(!window.says("Read the text anew?"));
    for answer in ["Keep the corrections", "Read anew"] {
        window
            .get(Role::MultilineTextInput, "Text with a gear set")
            .focus();
        window.settle();
        window.type_over("1st 3.9\n2nd 2.5\nfinal drive 4.5");
        assert!(window.says("Read the text anew? 1 correction is lost."));
        assert!(
            window
                .find(Role::Button, "Replace the selected set")
                .is_none()
        );
        window.invoke(answer);
        assert!(!window.says("Read the text anew?"));
        let is_kept = answer == "Keep the corrections";
        let expected = if is_kept { "2.2" } else { "2.5" };
        assert_eq!(window.field("gear 2").value().unwrap(), expected);
    }
}

#[test]
fn columns_become_new_sets_in_one_step() {
    let mut window = new_with_text(COLUMNS);
    let before = window.project().clone();
    window.invoke("Add as 2 new sets");
    let sets = names(&window);
    assert_eq!(sets[1..], ["stock", "close"]);
    let close = window.project().sets.iter().nth(2).unwrap();
    assert_eq!(ratios(close), ["2.92", "1.95", "1.41"]);
    assert_eq!(close.set.final_drives[0].to_string(), "4.21");
    assert_eq!(window.undo_steps(), 1);
    window.ctrl(Key::Z);
    assert!(*window.project() == before);
}

#[test]
fn one_of_two_columns_takes_the_place_of_the_selected_set() {
    let mut window = new_with_text(COLUMNS);
    window.click_on(Role::CheckBox, "stock: 3 gears");
    window.invoke("Replace the selected set");
    let first = window.project().sets.iter().next().unwrap();
    assert_eq!(ratios(first), ["2.92", "1.95", "1.41"]);
    assert_eq!(names(&window), ["close"]);
}

#[test]
fn the_first_of_several_sets_can_take_the_place_of_the_selected_one() {
    let mut window = new_with_text(COLUMNS);
    window.invoke("Replace the selected set, add 1");
    assert_eq!(names(&window), ["stock", "close"]);
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn without_a_tick_nothing_can_be_taken() {
    let mut window = with_text(SHEET);
    window.click_on(Role::CheckBox, "Gear set: 3 gears");
    for name in ["Replace the selected set", "Add as a new set"] {
        assert!(
            window
                .get(Role::Button, name)
                .accesskit_node()
                .is_disabled()
        );
    }
    assert!(window.says("Tick the set that is wanted."));
}

#[test]
fn sets_without_room_are_refused_with_the_reason() {
    let window = with_text(COLUMNS);
    let count = window.project().sets.len();
    assert!(count > 1, "the example leaves room for one set at most");
    assert!(window.says("a project has at most three sets"));
    let add = window.get(Role::Button, "Add as 2 new sets");
    assert!(add.accesskit_node().is_disabled());
}

const WITH_VEHICLE: &str =
    "1st 3.42\n2nd 1.98\n3rd 1.36\nFD 3.94\ntyres 185/70 R 13, redline 6,200, shift at 5800";

#[test]
fn in_a_new_project_the_vehicle_of_the_text_is_taken_with_its_gears() {
    let mut window = new_with_text(WITH_VEHICLE);
    window.invoke("Replace the selected set");
    let project = window.project();
    assert_eq!(project.tyre.to_string(), "185/70 R 13");
    assert!((project.engine.redline.rpm() - 6200.0).abs() < 1e-9);
    let first = project.sets.iter().next().unwrap();
    assert!((first.set.shift.rpm() - 5800.0).abs() < 1e-9);
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn elsewhere_the_vehicle_of_the_text_is_taken_only_where_it_is_ticked() {
    let mut window = with_text(WITH_VEHICLE);
    let tyre = window.project().tyre;
    window.click_on(Role::CheckBox, "redline 6200 rpm (\"redline 6,200\")");
    window.invoke("Replace the selected set");
    assert_eq!(window.project().tyre, tyre);
    assert!((window.project().engine.redline.rpm() - 6200.0).abs() < 1e-9);
}

#[test]
fn overall_ratios_come_in_as_the_gear_ratios_that_they_mean() {
    let mut window = with_text("Overall: 1st 16.0, 2nd 8.0, 3rd 4.0; axle 4.0");
    assert!(window.says("3 gears, overall ratios"));
    assert!(window.says("= 2.000"));
    window.invoke("Replace the selected set");
    let second = window.project().sets.iter().nth(SECOND).unwrap();
    assert_eq!(ratios(second), ["4", "2", "1"]);
}

#[test]
fn a_transfer_box_of_the_text_becomes_a_stage() {
    let mut window =
        new_with_text("1st 4.1\n2nd 2.3\n3rd 1.45\naxle 4.7\nTransfer box\nHigh 1.19\nLow 2.36");
    window.get(Role::TextInput, "transfer box, low").focus();
    window.settle();
    window.type_over("2.4");
    window.invoke("Replace the selected set");
    let first = window.project().sets.iter().next().unwrap();
    let stage = &first.set.stages[0];
    let positions: Vec<String> = stage
        .positions
        .iter()
        .map(|p| p.ratio.to_string())
        .collect();
    assert_eq!(positions, ["1.19", "2.4"]);
}

#[test]
fn the_answers_are_on_a_small_screen_however_much_was_read() {
    let text = "gear | stock | close | rally\n1st | 3.42 | 2.92 | 2.7\n2nd | 1.98 | 1.95 | 1.9\n\
                3rd | 1.36 | 1.41 | 1.4\n4th | 1.02 | 1.1 | 1.15\nFD | 3.94 | 4.21 | 4.5";
    for (width, height) in [(1280.0, 800.0), (667.0, 427.0)] {
        let mut window = Opening::on(Start::Car.example().project().unwrap())
            .sized(width, height)
            .open();
        window.ctrl_shift(Key::V);
        window.event(Event::Paste(text.to_owned()));
        window.settle();
        for name in [
            "Replace the selected set, add 2",
            "Add as 3 new sets",
            "Cancel",
        ] {
            let place = window.get(Role::Button, name).rect();
            let screen = egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(width, height));
            assert!(
                screen.contains_rect(place),
                "{name} at {place:?} of {width} x {height}"
            );
        }
        // The last value is scrolled into view when it gets the focus.
        for value in ["gear 1, rally", "gear 2, rally"] {
            window.get(Role::TextInput, value).focus();
            window.settle();
        }
        for _ in 0..3 {
            window.key(Key::Enter);
        }
        assert_eq!(window.focused(), "final drive, rally");
        let buttons = window.get(Role::Button, "Cancel").rect();
        let value = window.get(Role::TextInput, "final drive, rally").rect();
        assert!(
            value.max.y < buttons.min.y && value.min.y > 0.0,
            "{value:?}"
        );
    }
}

#[test]
fn a_table_that_the_program_has_copied_comes_back_with_all_its_sets() {
    let mut window = Window::on_camper_van();
    window.ctrl_shift(Key::C);
    let table = window.copied().to_owned();
    let before: Vec<Vec<String>> = window.project().sets.iter().map(ratios).collect();
    let engine = window.project().engine.redline;
    let tyre = window.project().tyre;
    window.ctrl(Key::N);
    window.ctrl_shift(Key::V);
    window.event(Event::Paste(table));
    window.settle();
    assert!(window.says("This is a table that Layshaft has written."));
    window.invoke("Replace the selected set, add 2");
    let after: Vec<Vec<String>> = window.project().sets.iter().map(ratios).collect();
    assert_eq!(after, before);
    assert_eq!(window.project().engine.redline, engine);
    assert_eq!(window.project().tyre, tyre);
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn a_table_that_was_cut_says_so() {
    let mut window = Window::on_camper_van();
    window.ctrl_shift(Key::C);
    let table = window.copied().to_owned();
    let cut: Vec<&str> = table.lines().collect();
    let text = cut[..cut.len() - 3].join("\n");
    window.ctrl_shift(Key::V);
    window.event(Event::Paste(text));
    window.settle();
    assert!(
        window
            .get(Role::Button, "Add as a new set")
            .accesskit_node()
            .is_disabled()
    );
}

#[test]
fn a_text_goes_into_the_set_that_the_dialog_names_though_it_is_hidden() {
    let mut window = Window::on_camper_van();
    window.click_on(Role::CheckBox, "visible, set 2");
    window.ctrl_shift(Key::V);
    window.event(Event::Paste(SHEET.to_owned()));
    window.settle();
    assert!(window.says("The selected set is \"Same box, taller final drive\"."));
    window.invoke("Replace the selected set");
    let second = window.project().sets.iter().nth(SECOND).unwrap();
    assert_eq!(ratios(second), ["34:9", "2.1", "1.3"]);
}
