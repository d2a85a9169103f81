//! Are steps laid out, moved by hand and taken over in the window?

use super::{command, why_not};
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::{Action, ActionData, ActionRequest, Role, TreeId};
use egui::{Event, Key, Modifiers, Vec2};
use egui_kittest::kittest::NodeT;
use layshaft::project::{Edit, SetEdit};

const FILL: &str = "Fill the steps…";
const DIALOG: &str = "Fill the steps";

fn opened() -> Window {
    let mut window = Window::on_camper_van();
    command(&mut window, FILL);
    assert_eq!(window.focused(), "Gears");
    window
}

/// The steps as the handles tell them.
fn steps(window: &Window) -> Vec<String> {
    let sliders = window.nodes().map(|node| node.accesskit_node());
    let sliders = sliders.filter(|node| {
        let name = node.label().unwrap_or_default();
        node.role() == Role::Slider && name.starts_with("Step ")
    });
    sliders
        .map(|node| node.value().unwrap_or_default())
        .collect()
}

fn ratios(window: &Window) -> Vec<f64> {
    window.ratios(1)
}

fn are_near(found: &[f64], expected: &[f64]) -> bool {
    let pairs = found.iter().zip(expected);
    found.len() == expected.len() && pairs.into_iter().all(|(a, b)| (a - b).abs() < 6e-5)
}

#[test]
fn progressive_steps_of_a_book_are_laid_out_and_taken_over_as_one_step() {
    let mut window = opened();
    let before = window.project().clone();
    window.type_in("First gear", "3.6");
    window.type_in("Top gear", "0.8");
    window.click("Steps: progressive");
    assert_eq!(window.text("Each step over the next"), "1.1");
    assert!(window.says("Each step over the next: 1.10, 1.10, 1.10"));
    window.click("Take over");
    assert!(window.find(Role::Dialog, DIALOG).is_none());
    let expected = [3.6, 2.1424, 1.4025, 1.01, 0.8];
    assert!(
        are_near(&ratios(&window), &expected),
        "{:?}",
        ratios(&window)
    );
    window.check_step(&before);
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn gears_come_and_go_with_their_number_and_keep_their_ends() {
    let mut window = opened();
    window.type_over("7");
    assert_eq!(steps(&window).len(), 6);
    window.click("Take over");
    let gears = &window.set(1).set.gears;
    let labels: Vec<&str> = gears.iter().map(|gear| gear.label.as_str()).collect();
    assert_eq!(labels, ["1", "2", "3", "4", "5", "6", "7"]);
    let seven = ratios(&window);
    assert!((seven[0] - 3.72).abs() < 1e-9 && (seven[6] - 0.74).abs() < 1e-9);
    command(&mut window, FILL);
    window.type_over("3");
    window.click("Take over");
    let three = ratios(&window);
    assert!(are_near(&three, &[3.72, 1.6592, 0.74]), "{three:?}");
}

#[test]
fn a_step_is_dragged_between_first_and_top_and_the_axis_stands_still() {
    let mut window = opened();
    window.click("Steps: as they are");
    let before = steps(&window);
    assert_eq!(before, ["1.87", "1.54", "1.39", "1.26"]);
    let handle = |window: &Window| window.get(Role::Slider, "Step 1→2").rect().center();
    let from = handle(&window);
    window.hold(from, from + Vec2::new(0.0, 20.0));
    window.settle();
    assert!((handle(&window) - from).y.abs() - 20.0 < 2.0);
    let middle = steps(&window);
    assert_ne!(middle[0], before[0]);
    // Back where it was taken hold of, all is as it was.
    window.rest_at(from);
    assert_eq!(steps(&window), before);
    let to = from + Vec2::new(0.0, 30.0);
    window.move_to(to);
    window.release(to);
    window.settle();
    let after = steps(&window);
    let number = |text: &String| text.parse::<f64>().unwrap();
    assert!(number(&after[0]) < number(&before[0]) && number(&after[1]) > number(&before[1]));
    assert_eq!(after[2..], before[2..]);
    window.click("Take over");
    let ratios = ratios(&window);
    assert!((ratios[0] - 3.72).abs() < 1e-9 && (ratios[4] - 0.74).abs() < 1e-9);
    assert!(
        ratios[1] > 1.99 && (ratios[2] - 1.29).abs() < 1e-9,
        "{ratios:?}"
    );
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn arrow_keys_move_a_step_and_esc_puts_it_back_before_it_closes() {
    let mut window = opened();
    let before = steps(&window);
    window.get(Role::Slider, "Step 3→4").focus();
    window.settle();
    window.key(Key::ArrowUp);
    assert_eq!(window.focused(), "Step 3→4");
    assert_eq!(steps(&window)[2], "1.51");
    window.key_with(Modifiers::SHIFT, Key::ArrowDown);
    assert_eq!(steps(&window)[2], "1.41");
    window.key(Key::PageUp);
    assert_eq!(steps(&window)[2], "1.51");
    window.key(Key::Escape);
    assert_eq!(steps(&window), before);
    assert_eq!(window.focused(), "Step 3→4");
    window.key(Key::ArrowDown);
    window.click("Lay them anew");
    assert_eq!(steps(&window), before);
    window.key(Key::Escape);
    assert!(window.find(Role::Dialog, DIALOG).is_none());
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn those_who_hear_the_steps_can_set_them() {
    let mut window = opened();
    let handle = window.get(Role::Slider, "Step 1→2");
    let (target_node, _) = handle.accesskit_node().locate();
    window.event(Event::AccessKitActionRequest(ActionRequest {
        action: Action::SetValue,
        target_tree: TreeId::ROOT,
        target_node,
        data: Some(ActionData::NumericValue(1.7)),
    }));
    window.settle();
    assert_eq!(steps(&window)[0], "1.70");
    let image = window.get(Role::Image, "Step of each gear over the next");
    let told = image
        .accesskit_node()
        .data()
        .description()
        .unwrap()
        .to_owned();
    assert!(
        told.starts_with("Steps from first gear on: 1.70, "),
        "{told}"
    );
}

#[test]
fn what_cannot_be_laid_out_is_told_and_nothing_is_lost() {
    let mut window = opened();
    for (field, text, says) in [
        ("Gears", "13", "a whole number from 2 to 12, not \"13\""),
        ("Gears", "x", "a whole number from 2 to 12, not \"x\""),
        ("First gear", "y", "\"y\" is not a ratio"),
        ("First gear", "0.5", "first gear must be shorter than top"),
        ("Top gear", "9", "first gear must be shorter than top"),
    ] {
        let before = window.text(field);
        window.type_in(field, text);
        assert!(
            why_not(&window, "Take over").contains(says),
            "{}",
            why_not(&window, "Take over")
        );
        window.type_in(field, &before);
        assert_eq!(why_not(&window, "Take over"), "");
    }
    window.click("Steps: progressive");
    window.type_in("Each step over the next", "1.9");
    assert!(window.says("take one nearer to 1"));
    window.key(Key::Escape);
    command(&mut window, FILL);
    assert_eq!(window.text("Each step over the next"), "1.9");
    assert!(window.is_chosen("Steps: progressive"));
}

#[test]
fn two_gears_have_one_step_that_cannot_be_moved() {
    let mut window = opened();
    window.type_over("2");
    assert!(steps(&window).is_empty());
    assert!(window.says("One step."));
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Take over");
}

#[test]
fn a_crawler_and_reverse_stay_as_they_are() {
    let mut project = camper_van();
    let second = project.sets.iter().nth(1).unwrap();
    let (id, first) = (second.id, second.set.gears[0].id);
    let edit = SetEdit::Role(first, layshaft::gearing::GearRole::Crawler);
    project = Edit::Set(id, edit).applied_to(&project).unwrap();
    let mut window = Opening::on(project).open();
    command(&mut window, FILL);
    assert_eq!(window.text("Gears"), "4");
    window.click("Take over");
    let four = ratios(&window);
    assert!((four[0] - 3.72).abs() < 1e-9 && (four[1] - 1.99).abs() < 1e-9);
    assert!(window.set(1).set.reverse.is_some());
}
