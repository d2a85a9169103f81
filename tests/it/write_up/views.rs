//! Are the diagrams of the picture chosen in the window, and do they come out?

use crate::support::window::{Opening, Window, camper_van, without_engine};
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT;
use layshaft::project::{Project, View, Views};
use layshaft::sheet::page::Page;

fn opened(project: Project) -> Window {
    let mut window = Opening::on(project).in_file("van.ron").open();
    window.ctrl(Key::E);
    window
}

fn views(window: &Window) -> &[View] {
    window.project().write_up.views.as_slice()
}

fn tick(window: &mut Window, view: View) {
    window.get(Role::CheckBox, view.name()).click();
    window.settle();
}

fn is_in(view: View, page: &Page, words: &str) -> bool {
    let texts = page.texts().unwrap();
    texts.iter().any(|(_, text)| text.contains(words)) || panic!("{view:?} lacks {words}")
}

#[test]
fn each_diagram_is_a_choice_that_can_be_taken_back() {
    let mut window = opened(camper_van());
    tick(&mut window, View::Cruise);
    tick(&mut window, View::Effort);
    assert_eq!(views(&window), [View::Speed, View::Effort, View::Cruise]);
    tick(&mut window, View::Speed);
    assert_eq!(views(&window), [View::Effort, View::Cruise]);
    assert_eq!(window.undo_steps(), 3);
    for _ in 0..3 {
        window.ctrl(Key::Z);
    }
    assert_eq!(views(&window), [View::Speed]);
}

#[test]
fn the_last_diagram_stays() {
    let mut window = opened(camper_van());
    tick(&mut window, View::Speed);
    assert_eq!(views(&window), [View::Speed]);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn without_an_engine_the_others_are_not_offered_and_it_is_said_why() {
    let mut window = opened(without_engine());
    let effort = window.get(Role::CheckBox, "Effort");
    assert!(effort.accesskit_node().is_disabled());
    assert!(window.says("the torque curve of the engine is not known"));
    tick(&mut window, View::Speed);
    assert_eq!(views(&window), [View::Speed]);
}

#[test]
fn every_chosen_diagram_comes_out_with_its_words_or_says_what_is_missing() {
    let of = |mut project: Project, view: View| {
        project.write_up.views = Views::new([view]).unwrap();
        Page::of(&project).unwrap()
    };
    for (view, words) in [
        (View::Effort, "Top speed 146 km/h in 5"),
        (View::Run, "to 100 km/h 20.01 s"),
        (View::Cruise, "at 110 km/h in 5th 11 L/100 km"),
    ] {
        assert!(is_in(view, &of(camper_van(), view), words));
        let nothing = "Nothing to show: the torque curve of the engine is not known.";
        assert!(is_in(view, &of(without_engine(), view), nothing));
    }
}
