//! Do overall ratios and road speeds stay in their fields as they were typed?
#![expect(
    clippy::float_cmp,
    reason = "a ratio that nobody touches stays the same number"
)]

use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT;
use layshaft::project::Edit;

const OVERALL: [&str; 5] = ["18.25", "9.7", "6.2785", "4,5", "3.65"];

fn ratio_of(gear: &str) -> String {
    format!("Ratio of gear {gear}, set 1")
}

/// The fields of the first set's forward gears.
fn fields(window: &mut Window) -> Vec<String> {
    let gears = ["1", "2", "3", "4", "5"];
    gears.map(|gear| window.text(&ratio_of(gear))).to_vec()
}

/// A window in which the overall ratios of the first set were typed.
fn with_overall_ratios() -> Window {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    for (gear, text) in ["1", "2", "3", "4", "5"].iter().zip(OVERALL) {
        window.fill(&ratio_of(gear), text);
    }
    window
}

/// What is said of the words of a card beyond themselves; none where the words do not stand there.
fn said_of(window: &Window, words: &str) -> Option<String> {
    let mut nodes = window.nodes().map(|node| node.accesskit_node());
    let label = nodes.find(|node| {
        let is_label = node.role() == Role::Label;
        is_label && node.value().as_deref() == Some(words)
    });
    label.map(|node| node.data().description().unwrap_or_default().to_owned())
}

const TYPED: [&str; 5] = ["18.25", "9.7", "6.2785", "4.5", "3.65"];

#[test]
fn typed_overall_ratios_stay_at_every_letter_of_a_final_drive_and_gear_ratios_follow() {
    let mut window = with_overall_ratios();
    let before = window.project().clone();
    let steps = window.undo_steps();
    window.enter_field("Final drive, set 1");
    for letter in ["4", ".", "1", "2", "5"] {
        window.type_text(letter);
        assert_eq!(fields(&mut window), TYPED, "after {letter}");
    }
    window.key(Key::Enter);
    assert_eq!(fields(&mut window), TYPED);
    assert!((window.ratios(0)[4] - 3.65 / 4.125).abs() < 1e-12);
    assert_eq!(window.undo_steps(), steps + 1);
    window.check_step(&before);
    window.type_in("Final drive, set 1", "5.5");
    window.key(Key::Escape);
    assert_eq!(fields(&mut window), TYPED);
    assert!((window.ratios(0)[4] - 3.65 / 4.125).abs() < 1e-12);
}

#[test]
fn a_gear_that_was_only_looked_at_keeps_its_ratio_and_shows_another_overall_ratio() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    window.fill("Ratio of gear 2, set 1", "9.7");
    window.fill("Final drive, set 1", "4");
    let expected = [3.72, 9.7 / 4.0, 1.29, 0.93, 0.74];
    assert_eq!(window.ratios(0), expected);
    assert_eq!(
        fields(&mut window),
        ["14.88", "9.7", "5.16", "3.72", "2.96"]
    );
    assert_eq!(window.text("Ratio of reverse, set 1"), "13.8");
}

#[test]
fn a_figure_that_is_typed_where_the_same_was_reckoned_is_typed_all_the_same() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    // 0.93 · 73 ÷ 15 is 4.526, and 1.29 · 73 ÷ 15 is 6.278.
    let reckoned = fields(&mut window);
    assert_eq!(reckoned[2..4], ["6.278", "4.526"]);
    window.fill("Ratio of gear 4, set 1", "4.526");
    window.enter_field("Ratio of gear 3, set 1");
    window.key(Key::Enter);
    window.fill("Final drive, set 1", "4");
    assert_eq!(fields(&mut window)[2..4], ["5.16", "4.526"]);
}

#[test]
fn the_row_shows_what_is_not_typed_in_it() {
    let mut window = Window::on_camper_van();
    window.fill("Final drive, set 1", "4");
    window.fill("Ratio of gear 1, set 1", "3.5");
    assert_eq!(said_of(&window, "overall 14.000").as_deref(), Some(""));
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    assert_eq!(said_of(&window, "overall 14.000"), None);
    assert_eq!(said_of(&window, "gear 3.500").as_deref(), Some(""));
    window.fill("Ratio of gear 1, set 1", "15.588");
    let follows = "The figure before it stays as typed; this gear ratio follows";
    assert_eq!(said_of(&window, "gear 3.897").as_deref(), Some(follows));
    assert_eq!(said_of(&window, "gear 1.990").as_deref(), Some(""));
}

#[test]
fn the_heading_says_that_typed_figures_stay() {
    let mut window = Window::on_camper_van();
    window.open_card(1);
    assert_eq!(said_of(&window, "ratio").as_deref(), Some(""));
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    let says = "Overall ratios typed here stay when a final drive or a stage changes: the gear \
                ratios follow";
    assert_eq!(said_of(&window, "overall ratio").as_deref(), Some(says));
    window.choose("Set 1 menu", Role::RadioButton, "km/h per 1000 rpm");
    let says = "Speeds typed here stay when a final drive, a stage or the tyre changes: the gear \
                ratios follow";
    assert_eq!(said_of(&window, "km/h per 1000").as_deref(), Some(says));
}

#[test]
fn typed_speeds_stay_on_another_tyre_stage_and_final_drive_in_either_unit() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "km/h per 1000 rpm");
    for (gear, text) in ["1", "2", "3", "4", "5"]
        .iter()
        .zip(["7", "13.1", "20.25", "28", "35.5"])
    {
        window.fill(&ratio_of(gear), text);
    }
    let typed = ["7", "13.1", "20.25", "28", "35.5"];
    window.fill("Tyre", "225/75 R 16 C");
    assert_eq!(fields(&mut window), typed);
    window.fill("Final drive, set 1", "41:10");
    assert_eq!(fields(&mut window), typed);
    window.click("Add stage, set 1");
    window.click("Transfer box");
    assert_eq!(fields(&mut window), typed);
    window.click_on(Role::RadioButton, "Put in position 2 of stage 1, set 1");
    assert_eq!(fields(&mut window), typed);
    window.fill("Ratio of position 2 of stage 1, set 1", "2.5");
    assert_eq!(fields(&mut window), typed);
    window.click("Remove stage 1, set 1");
    assert_eq!(fields(&mut window), typed);
    window.click_on(Role::CheckBox, "own tyre, set 1");
    window.fill("Tyre of set 1", "195/70 R 15 C");
    assert_eq!(fields(&mut window), typed);
    window.ctrl(Key::U);
    assert_eq!(fields(&mut window)[3], "17.4");
    window.fill("Ratio of gear 4, set 1", "17.375");
    window.fill("Final drive, set 1", "3.9");
    assert_eq!(fields(&mut window)[3], "17.375");
    window.ctrl(Key::U);
    assert_eq!(fields(&mut window), ["7", "13.1", "20.25", "27.96", "35.5"]);
}

#[test]
fn another_form_of_typing_lets_all_figures_go() {
    let mut window = with_overall_ratios();
    let ratios = window.ratios(0);
    window.choose("Set 1 menu", Role::RadioButton, "gear ratios");
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    window.fill("Final drive, set 1", "4");
    assert_eq!(window.ratios(0), ratios);
}

#[test]
fn a_copy_of_a_set_has_nothing_that_stays_even_where_another_was_before() {
    let edit = Edit::RemoveSet(camper_van().sets.iter().nth(2).unwrap().id);
    let project = edit.applied_to(&camper_van()).unwrap();
    let mut window = Opening::on(project).open();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    window.fill("Ratio of gear 5, set 1", "3.5");
    for _ in 0..2 {
        window.choose("Set 1 menu", Role::Button, "Duplicate set");
        let ratios = window.ratios(1);
        window.fill("Final drive, set 2", "4");
        assert_eq!(window.ratios(1), ratios);
        assert_eq!(window.text("Ratio of gear 5, set 1"), "3.5");
        // The next copy comes under the identity of this one.
        window.fill("Ratio of gear 5, set 2", "3.5");
        window.choose("Set 2 menu", Role::Button, "Remove set");
    }
}

#[test]
fn undoing_a_figure_frees_its_gear_and_redoing_holds_it_again() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    window.fill("Ratio of gear 5, set 1", "3.5");
    window.fill("Ratio of gear 5, set 1", "3.4");
    window.type_in("Ratio of gear 5, set 1", "3.1");
    window.key(Key::Escape);
    window.fill("Final drive, set 1", "4");
    assert_eq!(window.text("Ratio of gear 5, set 1"), "3.4");
    window.click("Undo");
    window.click("Undo");
    window.fill("Final drive, set 1", "4.5");
    assert_eq!(window.text("Ratio of gear 5, set 1"), "3.5", "typed before");
    window.click("Undo");
    window.click("Undo");
    window.fill("Final drive, set 1", "4.5");
    assert_eq!(window.ratios(0)[4], 0.74, "from the file");
    window.click("Undo");
    window.fill("Ratio of reverse, set 1", "15");
    window.click("Undo");
    window.click("Redo");
    window.fill("Final drive, set 1", "5");
    assert_eq!(window.text("Ratio of reverse, set 1"), "15");
}

#[test]
fn a_final_drive_that_no_ratio_could_follow_is_refused_with_the_gear() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    window.fill("Ratio of gear 1, set 1", "18");
    let before = window.project().clone();
    window.type_in("Final drive, set 1", "0.04");
    assert!(*window.project() == before);
    let words = "gear 1 cannot keep its overall ratio 18";
    assert!(
        window.app().message().starts_with(words),
        "{}",
        window.app().message()
    );
    window.key(Key::Tab);
    assert!(*window.project() == before);
    assert_eq!(window.text("Final drive, set 1"), "73:15");
}

/// Lays a text over the window, to be pasted over the set whose card is open.
fn lay_over(window: &mut Window, text: &str) {
    window.ctrl_shift(Key::V);
    window.event(egui::Event::Paste(text.to_owned()));
    window.settle();
}

#[test]
fn pasting_over_a_set_lets_its_figures_go() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "overall ratios");
    window.fill("Final drive, set 1", "4");
    window.fill("Ratio of gear 1, set 1", "14");
    lay_over(
        &mut window,
        "1st 3.5 2nd 1.99 3rd 1.29 4th 0.93 5th 0.74 final 4",
    );
    window.invoke("Replace the selected set");
    assert_eq!(window.text("Ratio of gear 1, set 1"), "14", "the same gear");
    window.fill("Final drive, set 1", "5");
    assert_eq!(window.text("Ratio of gear 1, set 1"), "17.5");
}

#[test]
fn another_tyre_that_is_pasted_keeps_the_speeds_that_were_typed_elsewhere() {
    let mut window = Window::on_camper_van();
    window.choose("Set 1 menu", Role::RadioButton, "km/h per 1000 rpm");
    window.fill("Ratio of gear 1, set 1", "7.25");
    let before = fields(&mut window);
    window.open_card(2);
    lay_over(
        &mut window,
        "1st 3.5\n2nd 1.99\n3rd 1.29\nfinal 4\ntyre 225/75 R 16",
    );
    let boxes = window.names(Role::CheckBox).into_iter();
    let tyre = boxes
        .into_iter()
        .find(|name| name.starts_with("tyre"))
        .unwrap();
    window.click_on(Role::CheckBox, &tyre);
    window.invoke("Replace the selected set");
    let after = fields(&mut window);
    assert_eq!(after[0], "7.25");
    assert_ne!(after[1..], before[1..]);
}
