//! Has everything that can be used a name, and every letter a glyph?
//!
//! The harness itself checks both: a frame with an unnamed field or a missing glyph fails the test.

use crate::support::window::{Opening, Window, camper_van, three_ten_speeds};
use egui::accesskit::Role;
use egui::{Key, Theme, vec2};
use egui_kittest::Node;
use egui_kittest::kittest::NodeT;
use layshaft::app::Menu;
use std::collections::BTreeSet;

fn windows() -> impl Iterator<Item = Window> {
    let projects = [camper_van(), three_ten_speeds()];
    projects.into_iter().flat_map(|project| {
        [Theme::Light, Theme::Dark]
            .into_iter()
            .flat_map(move |theme| {
                let opening = || Opening::on(project.clone()).in_theme(theme);
                [opening().open(), opening().small().open()]
            })
    })
}

#[test]
fn every_field_and_handle_has_a_name_in_every_menu_and_dialog() {
    for mut window in windows() {
        for menu in Menu::ALL {
            window.invoke(menu.text());
            window.key(Key::Escape);
        }
        for key in [Key::O, Key::S] {
            window.ctrl(key);
            window.key(Key::Escape);
        }
        window.key(Key::F1);
        window.key(Key::Escape);
        window.ctrl(Key::K);
        window.key(Key::Escape);
        window.ctrl(Key::U);
        let at = window.handle_at("1", "2");
        window.hold(at, at + vec2(0.0, 30.0));
        window.release(at + vec2(0.0, 30.0));
        window.ctrl(Key::O);
        assert!(window.says("Save the changes?"));
        window.settle();
    }
}

#[test]
fn the_diagram_says_what_it_shows() {
    for window in windows() {
        let figures: Vec<_> = window
            .nodes()
            .filter(|node| node.accesskit_node().role() == Role::Figure)
            .collect();
        assert_eq!(figures.len(), 1);
        let name = figures[0].accesskit_node().label().unwrap();
        for set in &window.app().diagram().sets {
            assert!(name.contains(&set.name), "{name}");
        }
    }
}

#[test]
fn no_two_handles_have_the_same_name() {
    for mut window in windows() {
        for _ in 0..3 {
            let names: Vec<String> = window
                .handles()
                .into_iter()
                .map(|node| node.accesskit_node().label().unwrap())
                .collect();
            let different: BTreeSet<&String> = names.iter().collect();
            assert_eq!(different.len(), names.len());
            window.ctrl(Key::J);
        }
    }
}

#[test]
fn every_handle_can_be_reached_by_tab() {
    let mut window = Window::on_camper_van();
    let mut reached = BTreeSet::new();
    for _ in 0..200 {
        window.key(Key::Tab);
        let focused = window.handles().into_iter().find(Node::is_focused);
        reached.extend(focused.and_then(|node| node.accesskit_node().label()));
    }
    assert_eq!(reached.len(), window.handles().len());
}
