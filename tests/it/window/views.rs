//! Does the window show every view, with its reading, its handles, and what it lacks?

use crate::support::window::Painted;
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Event, Key, vec2};
use layshaft::chart;
use layshaft::project::{EngineData, View};

/// The set that is forward in the camper van: the second.
const FORWARD: usize = 1;

#[test]
fn every_view_is_reached_by_its_name_and_by_key() {
    let mut window = Window::on_camper_van();
    for (key, view) in [
        (Key::Num2, View::Effort),
        (Key::Num3, View::Run),
        (Key::Num4, View::Cruise),
        (Key::Num1, View::Speed),
    ] {
        window.ctrl(key);
        assert_eq!(window.app().diagram().view, view);
        window.click(View::Run.name());
        assert_eq!(window.app().diagram().view, View::Run);
    }
    assert_eq!(window.undo_steps(), 0, "what is looked at is no change");
}

#[test]
fn what_belongs_to_the_run_is_offered_while_that_is_looked_at() {
    let mut window = Window::on_camper_van();
    for view in [View::Revs, View::Distance] {
        assert!(window.find(Role::Button, view.name()).is_none());
        assert!(window.look_at(view));
        window.click(View::Speed.name());
    }
}

#[test]
fn the_reading_at_the_pointer_is_that_of_the_view() {
    let mut window = Window::on_camper_van();
    for view in View::ALL {
        if window.look_at(view) {
            let at = window.plot().center();
            window.move_to(at);
            let heading = window.app().diagram().x.quantity.at(1.0);
            let word = heading.split(' ').next().unwrap();
            let is_heading = |text: &String| text.starts_with(word);
            assert!(texts(&window).iter().any(is_heading), "{view:?}");
        }
    }
}

#[test]
fn a_shift_point_dragged_on_the_diagram_of_effort_moves_the_run_in_the_same_frame() {
    let mut window = Window::on_camper_van();
    let time = |window: &Window| {
        let desk = window.app().desk();
        let run = desk.diagram(View::Run);
        let of_set = |line: &&chart::Line| line.of.place == FORWARD;
        let line = run.lines_of(chart::Role::FullLoad).find(of_set).unwrap();
        line.points.clone()
    };
    window.ctrl(Key::Num2);
    let before = window.shifts(FORWARD);
    let run_before = time(&window);
    let from = window.handle_at("2", "3");
    window.drag(from, from + vec2(30.0, 0.0));
    let after = window.shifts(FORWARD);
    assert!(
        after[1] > before[1] + 100 && after[1] % 10 == 0,
        "{after:?}"
    );
    assert_eq!([after[0], after[2]], [before[0], before[2]]);
    assert_ne!(time(&window), run_before);
    assert_eq!(window.undo_steps(), 1);
    // Its hand stays on it: the place follows the pointer along the axis of road speeds.
    let moved = window.handle_at("2", "3").x - from.x;
    assert!((moved - 30.0).abs() < 2.0, "{moved}");
}

#[test]
fn on_the_diagram_of_effort_left_and_right_move_a_shift_point() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::Num2);
    let before = window.shifts(FORWARD)[0];
    window.focus_handle("1", "2");
    window.key(Key::ArrowRight);
    assert_eq!(window.shifts(FORWARD)[0], before + 10);
    window.key(Key::ArrowLeft);
    window.key(Key::ArrowLeft);
    assert_eq!(window.shifts(FORWARD)[0], before - 10);
    window.key(Key::Escape);
    assert_eq!(window.shifts(FORWARD)[0], before);
}

#[test]
fn every_view_keeps_the_range_that_was_looked_at() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::Num2);
    let whole = texts(&window);
    let at = window.plot().center();
    window.wheel(at, 200.0);
    window.event(Event::PointerGone);
    let zoomed = texts(&window);
    assert_ne!(zoomed, whole);
    window.ctrl(Key::Num1);
    window.ctrl(Key::Num2);
    assert_eq!(texts(&window), zoomed);
    window.key(Key::Home);
    assert_eq!(texts(&window), whole);
}

/// What is written in the window.
fn texts(window: &Window) -> Vec<String> {
    let texts = Painted::of(window).texts.into_iter();
    texts.map(|(text, _)| text).collect()
}

#[test]
fn a_view_without_its_inputs_names_them_and_leads_to_their_fields() {
    let mut project = camper_van();
    project.technical.engine = EngineData::default();
    let mut window = Opening::on(project).open();
    window.ctrl(Key::Num2);
    assert!(window.says("What is not known yet"));
    for _ in 0..3 {
        window.key(Key::F6);
    }
    assert_eq!(window.focused(), "The torque curve of the engine");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Torque curve");
    window.event(Event::Text("1500:190 3000:300 4500:250".to_owned()));
    window.key(Key::Tab);
    assert!(!window.says("What is not known yet"));
    assert!(!window.app().diagram().lines.is_empty());
}

#[test]
fn an_empty_project_is_told_the_kind_of_vehicle_first() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::N);
    window.ctrl(Key::Num3);
    let kind = "The kind of vehicle, which has starting values for all of these";
    window.click_on(Role::Link, kind);
    assert_eq!(window.focused(), "Kind");
}
