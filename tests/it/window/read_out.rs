//! Can the diagram be read line by line by those who cannot see it?

use super::{SECOND, with_shifts};
use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT;
use layshaft::analysis::Analysis;
use layshaft::chart::Charts;
use layshaft::project::View;
use std::sync::Arc;

fn lines(window: &Window) -> Vec<String> {
    window.names(Role::ListItem)
}

#[test]
fn the_figure_holds_a_list_with_a_name() {
    let window = Window::on_camper_van();
    let list = window.get(Role::List, "Diagram, line by line");
    let figure = list.accesskit_node().parent().unwrap();
    assert_eq!(figure.role(), Role::Figure);
    let items = list.accesskit_node().children().map(|node| node.role());
    let items: Vec<Role> = items.collect();
    assert!(items.len() > 12);
    assert!(items.iter().all(|role| *role == Role::ListItem));
    assert_eq!(lines(&window).len(), items.len());
}

#[test]
fn its_lines_say_what_the_pointer_reads_at_round_and_at_marked_speeds() {
    let lines = lines(&Window::on_camper_van());
    let line = |start: &str| {
        let mut found = lines.iter().filter(|line| line.starts_with(start));
        let line = found
            .next()
            .unwrap_or_else(|| panic!("no {start} in {lines:#?}"));
        assert_eq!(found.next(), None, "{start} is said twice");
        line
    };
    // The figures that the reading at the pointer and the table have at 110 km/h.
    assert!(
        line("at 110 km/h; ").starts_with(
            "at 110 km/h; Fitted five-speed: 4 3970, 5 3160; \
             Same box, taller final drive: 4 3510 −450, 5 2800 −360; "
        ),
        "{lines:#?}"
    );
    for speed in [20, 40, 60, 80, 100, 120, 50, 90] {
        line(&format!("at {speed} km/h; "));
    }
    assert!(line("at 20 km/h; ").contains("Fitted five-speed: 1 "));
}

#[test]
fn its_lines_say_where_every_shift_point_of_every_set_is() {
    let mut window = Opening::on(with_shifts([3000, 3200, 3400, 3600])).open();
    let of_second = |window: &Window, words: &str| {
        let line = format!("Same box, taller final drive: {words}");
        lines(window).iter().any(|l| l.starts_with(&line))
    };
    assert!(of_second(&window, "1→2 at 3000 rpm, falls "));
    assert!(of_second(&window, "4→5 at 3600 rpm, falls "));
    let all = lines(&window);
    let count = all.iter().filter(|line| line.contains("→")).count();
    assert_eq!(count, window.app().diagram().handles.len());
    assert!(
        all.iter()
            .any(|l| l.starts_with("Fitted five-speed: 1→2 at "))
    );

    window.focus_handle("1", "2");
    window.key(Key::ArrowUp);
    assert_eq!(window.shifts(SECOND)[0], 3010);
    assert!(of_second(&window, "1→2 at 3010 rpm, falls "));
}

#[test]
fn in_miles_an_hour_marked_speeds_are_told_as_they_are_written() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::U);
    let lines = lines(&window);
    let told = |heading: &str| lines.iter().any(|line| line.starts_with(heading));
    assert!(told("at 68.4 mph; "), "{lines:#?}");
    assert!(told("at 20 mph; "), "{lines:#?}");
}

#[test]
fn the_list_is_no_stop_of_tab() {
    let mut window = Window::on_camper_van();
    let is_of_list = |role: Role| matches!(role, Role::List | Role::ListItem);
    for _ in 0..200 {
        window.key(Key::Tab);
        let mut focused = window.nodes().filter(egui_kittest::Node::is_focused);
        assert!(!focused.any(|node| is_of_list(node.accesskit_node().role())));
    }
}

#[test]
fn every_view_is_told_in_lines_of_its_own() {
    let charts = Charts::of(Analysis::of(Arc::new(camper_van())));
    for view in View::ALL {
        let scene = charts.scene(view);
        let lines = scene.read_out();
        assert!(lines.len() >= 4, "{lines:#?}");
        for set in &scene.sets {
            let name = format!("{}: ", set.name);
            assert!(lines.iter().any(|line| line.contains(&name)), "{lines:#?}");
        }
        let mut different = lines.clone();
        different.sort();
        different.dedup();
        assert_eq!(different.len(), lines.len(), "{lines:#?}");
    }
    let steps = charts.scene(View::Steps).read_out();
    assert!(
        steps[0].starts_with("gear 1; Fitted five-speed: "),
        "{steps:#?}"
    );
}
