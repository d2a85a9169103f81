//! Can load case and road be changed by one click each, above the diagrams that depend on them?

use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::{Role, Toggled};
use egui_kittest::kittest::NodeT;
use layshaft::motion::{AddedMass, DragArea, Headwind, Trailer};
use layshaft::project::{Project, RoadData, View};

/// The camper van with 300 kg in it, 900 kg behind it and wind from ahead.
fn laden() -> Project {
    let mut project = camper_van();
    project.technical.road = RoadData {
        load: AddedMass::from_kg(300.0).ok(),
        trailer: Some(Trailer {
            mass: AddedMass::from_kg(900.0).unwrap(),
            drag_area: DragArea::from_m2(1.2).unwrap(),
        }),
        headwind: Headwind::from_kmh(20.0).ok(),
        ..RoadData::default()
    };
    project
}

fn opened() -> Window {
    let mut window = Opening::on(laden()).open();
    window.ctrl(Key::Num2);
    window
}

fn is_on(window: &Window, name: &str) -> bool {
    let button = window.get(Role::Button, name).accesskit_node();
    button.toggled() == Some(Toggled::True)
}

/// The highest figure of the run: how far and long it goes with what is carried.
fn run(window: &Window) -> Vec<[f64; 2]> {
    let scene = window.app().desk().diagram(View::Run);
    scene.lines[0].points.clone()
}

#[test]
fn each_part_of_the_load_case_is_left_out_and_counted_again_by_one_click() {
    let mut window = opened();
    for name in ["Laden 300 kg", "Trailer 900 kg", "Headwind 20 km/h"] {
        let before = run(&window);
        assert!(is_on(&window, name), "{name}");
        window.click(name);
        assert!(!is_on(&window, name), "{name}");
        assert_ne!(run(&window), before, "{name}");
        window.click(name);
        assert!(is_on(&window, name), "{name}");
        assert_eq!(run(&window), before, "{name}");
    }
    assert_eq!(window.undo_steps(), 6);
}

#[test]
fn the_empty_vehicle_is_one_click_away_and_what_was_typed_stays() {
    let mut window = opened();
    assert!(!is_on(&window, "Empty"));
    window.click("Empty");
    assert!(is_on(&window, "Empty"));
    let road = &window.project().technical.road;
    assert_eq!(road.load, laden().technical.road.load);
    assert_eq!(road.load_case().extra, AddedMass::NONE);
    assert_eq!(road.load_case().trailer, None);
    window.ctrl(Key::Z);
    assert!(is_on(&window, "Trailer 900 kg"));
}

#[test]
fn what_is_typed_anew_counts_though_it_was_set_aside() {
    let mut window = opened();
    window.click("Empty");
    assert!(!is_on(&window, "Laden 300 kg"));
    window.click("Grades…");
    window.fill("Load, kg", "450");
    assert!(is_on(&window, "Laden 450 kg"));
    assert!(!is_on(&window, "Trailer 900 kg"));
}

#[test]
fn another_road_is_one_click_away_and_all_figures_are_for_it() {
    let mut window = opened();
    let level = run(&window);
    assert!(is_on(&window, "Level"));
    window.click("5 %");
    assert!(is_on(&window, "5 %") && !is_on(&window, "Level"));
    assert_ne!(run(&window), level);
    window.click("Level");
    assert_eq!(run(&window), level);
    assert_eq!(window.project().technical.road.grade, None);
}

#[test]
fn other_roads_are_typed_as_a_list() {
    let mut window = opened();
    window.click("Grades…");
    assert_eq!(window.focused(), "Show grades, %");
    window.type_text("4, 7");
    window.key(Key::Enter);
    assert!(window.find(Role::Button, "7 %").is_some());
    assert!(window.find(Role::Button, "5 %").is_none());
    let texts = window.app().diagram().labels.iter();
    assert!(
        texts
            .map(|label| label.text.as_str())
            .any(|text| text == "7 %")
    );
}

#[test]
fn what_is_not_typed_yet_leads_to_its_field() {
    let mut project = camper_van();
    project.technical.road = RoadData::default();
    let mut window = Opening::on(project).open();
    window.ctrl(Key::Num4);
    for (name, field) in [
        ("Laden…", "Load, kg"),
        ("Trailer…", "Trailer, kg"),
        ("Headwind…", "Wind, km/h"),
    ] {
        window.click(name);
        assert_eq!(window.focused(), field);
    }
}

#[test]
fn who_compares_ratios_meets_nothing_of_it() {
    let window = Opening::on(laden()).open();
    assert!(window.find(Role::Button, "Empty").is_none());
}
