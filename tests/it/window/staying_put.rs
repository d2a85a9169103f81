//! Does what is clicked stay where it was seen, whatever is shown beside it?

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Rect};

/// Where buttons of these names stand.
fn places(window: &Window, names: &[&str]) -> Vec<Rect> {
    let place = |name: &&str| window.get(Role::Button, name).rect();
    names.iter().map(place).collect()
}

#[test]
fn no_name_of_a_view_moves_when_another_one_is_shown() {
    let views = ["Speed", "Effort", "Run", "Cruise", "Speedometer"];
    for size in [[1280.0, 800.0], [720.0, 480.0]] {
        let mut window = Opening::on(camper_van()).sized(size[0], size[1]).open();
        if window.is_in_parts() {
            window.click("Diagram");
        }
        let before = places(&window, &views);
        for view in views {
            window.click(view);
            window.settle();
            assert_eq!(places(&window, &views), before, "{view} {size:?}");
        }
        window.click("Run");
        window.click("Run: revs");
        window.settle();
        assert_eq!(places(&window, &views), before, "{size:?}");
    }
}

#[test]
fn the_names_of_the_pages_stay_where_they_are() {
    let mut window = Opening::on(camper_van()).open();
    let pages = ["Drive", "Workshop"];
    let before = places(&window, &pages);
    window.ctrl(Key::Num6);
    window.settle();
    assert_eq!(places(&window, &pages), before);
}
