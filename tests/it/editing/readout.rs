//! Does the reading at the pointer say the same as the table?

use crate::support::window::Window;
use egui::accesskit::Role;
use egui::{Pos2, Shape};

/// Everything that is painted as text.
fn painted(window: &Window) -> Vec<String> {
    fn collect(shape: &Shape, texts: &mut Vec<String>) {
        match shape {
            Shape::Text(text) => texts.push(text.galley.text().to_owned()),
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| collect(shape, texts)),
            _ => {}
        }
    }
    let mut texts = Vec::new();
    for clipped in &window.harness.output().shapes {
        collect(&clipped.shape, &mut texts);
    }
    texts
}

/// Where a road speed stands in the plot: two handles tell the scale.
fn x_of(window: &Window, speed: f64) -> f32 {
    let scene = window.app().diagram();
    let set = &scene.sets[1];
    let handles: Vec<_> = scene.handles.iter().filter(|h| h.set == set.id).collect();
    let [a, b] = [0, 3].map(|at| {
        let name = handles[at].name(&set.name);
        let x = f64::from(window.get(Role::Slider, &name).rect().center().x);
        (handles[at].at[0], x)
    });
    let x = a.1 + (speed - a.0) / (b.0 - a.0) * (b.1 - a.1);
    #[expect(clippy::cast_possible_truncation, reason = "a place on the screen")]
    let x = x as f32;
    x
}

#[test]
fn near_a_marked_speed_the_figures_are_those_of_that_speed() {
    let mut window = Window::on_camper_van();
    let plot = window.get_by_role(Role::Figure).rect();
    // Within the whole km/h that is written, wherever the pointer is.
    for offset in [-1.5, 0.0, 1.5] {
        let x = x_of(&window, 110.0) + offset;
        window.rest_at(Pos2::new(x, plot.center().y));
        let texts = painted(&window);
        assert!(texts.contains(&"at 110 km/h".to_owned()), "{offset}");
        for reading in ["43970 53160", "43510−450 52800−360"] {
            let found = texts.iter().any(|text| {
                let bare: String = text.chars().filter(|c| !c.is_whitespace()).collect();
                bare == reading.replace(' ', "")
            });
            assert!(found, "{offset}: {reading} in {texts:#?}");
        }
    }
}

#[test]
fn beside_the_plot_there_is_no_reading() {
    let mut window = Window::on_camper_van();
    window.rest_at(Pos2::new(60.0, 12.0));
    let texts = painted(&window);
    let headings = ["at 50 km/h", "at 90 km/h", "at 110 km/h"];
    assert!(!texts.iter().any(|text| headings.contains(&text.as_str())));
}
