//! Is what is found for a set found where it is wanted, shown beside what there is, and taken over as one step?

mod count;
mod fill;
mod pairs;
mod wish;

use crate::support::window::Window;
use egui::Key;
use egui::accesskit::Role;

/// Opens what a command opens, by its words.
fn command(window: &mut Window, words: &str) {
    window.ctrl(Key::K);
    window.type_text(words);
    window.key(Key::Enter);
}

/// Opens the menu of a field by a right click and chooses an entry.
#[track_caller]
fn choose_at_field(window: &mut Window, field: &str, entry: &str) {
    let at = window.shown(Role::TextInput, field).center();
    window.secondary_click_at(at);
    window.click(entry);
}

/// The engine speed in rev/min of the gear of that label of a set, counted from 0, at a road speed in km/h.
fn rpm_at(window: &Window, set: usize, label: &str, kmh: f64) -> f64 {
    let results = &window.app().desk().results().sets[set];
    let mut gears = results.gears.iter();
    let gear = gears.find(|gear| gear.gear.label == label).unwrap();
    results.drivetrain.engine_rpm(&gear.gear, kmh)
}

/// Why a button cannot be pressed just now, or nothing where it can.
fn why_not(window: &Window, button: &str) -> String {
    use egui_kittest::kittest::NodeT;
    let node = window.get(Role::Button, button).accesskit_node();
    if !node.is_disabled() {
        return String::new();
    }
    node.data().description().unwrap_or_default().to_owned()
}
