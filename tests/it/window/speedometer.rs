//! Does the view of speedometers come by mouse and by key, and say what each set's instrument shows?

use super::SECOND;
use crate::support::window::{Opening, Painted, Window, camper_van, without_engine};
use egui::accesskit::Role;
use egui::{Event, Key, Pos2};
use layshaft::project::{Project, View};
use layshaft::units::SpeedUnit;

/// A window that looks at speedometers.
fn opened_on(project: Project) -> Window {
    let mut window = Opening::on(project).open();
    window.ctrl(Key::Num5);
    window
}

/// What is written in the window.
fn texts(window: &Window) -> Vec<String> {
    let texts = Painted::of(window).texts.into_iter();
    texts.map(|(text, _)| text).collect()
}

/// Where a road speed stands in the plot, as the axis in view says.
fn at_speed(window: &Window, speed: f64) -> Pos2 {
    let (plot, range) = (window.plot(), window.app().diagram().x.range);
    #[expect(clippy::cast_possible_truncation, reason = "a place on the screen")]
    let share = ((speed - range[0]) / (range[1] - range[0])) as f32;
    Pos2::new(plot.left() + share * plot.width(), plot.center().y)
}

#[test]
fn it_is_reached_by_mouse_and_by_key_also_without_an_engine() {
    for project in [camper_van(), without_engine()] {
        let mut window = Opening::on(project).open();
        window.click("Speedometer");
        assert_eq!(window.app().diagram().view, View::Speedometer);
        window.ctrl(Key::Num1);
        assert_eq!(window.app().diagram().view, View::Speed);
        window.ctrl(Key::Num5);
        assert_eq!(window.app().diagram().view, View::Speedometer);
        assert!(window.is_chosen("Speedometer"));
        window.choose("View", Role::Button, "Diagram: speed");
        window.choose("View", Role::Button, "Diagram: speedometer");
        assert_eq!(window.app().diagram().view, View::Speedometer);
        assert_eq!(window.undo_steps(), 0, "what is looked at is no change");
        assert!(window.app().diagram().lacks.is_none());
    }
}

#[test]
fn the_pointer_reads_what_is_shown_and_how_much_that_is_above_the_true_speed() {
    let mut window = opened_on(camper_van());
    let at = at_speed(&window, 90.0);
    window.rest_at(at);
    let texts = texts(&window);
    let bare = |text: &str| text.chars().filter(|c| !c.is_whitespace()).collect();
    let texts: Vec<String> = texts.iter().map(|text| bare(text)).collect();
    for words in ["at 90 km/h", "−10.2", "−9.5", "79.8"] {
        let words: String = bare(words);
        let is_there = texts.iter().any(|text| text.contains(&words));
        assert!(is_there, "{words} in {texts:#?}");
    }
}

#[test]
fn its_lines_are_told_to_those_who_cannot_see_them() {
    let window = opened_on(camper_van());
    let lines = window.names(Role::ListItem);
    let line = lines.iter().find(|line| line.starts_with("at 90 km/h; "));
    assert_eq!(
        line.unwrap(),
        "at 90 km/h; Fitted five-speed: 0.0 (shows 90 km/h); Same box, taller final drive: −10.2 \
         (shows 79.8 km/h); Six-speed, two output shafts: −9.5 (shows 80.5 km/h)"
    );
}

#[test]
fn its_table_says_the_verdict_and_what_puts_it_right() {
    let mut window = opened_on(camper_van());
    for words in [
        "Fitted five-speed: Baseline. Odometer counts true. Keeps UN R39 in its original series up to 120 km/h",
        "Reads low by 13.7 km/h at 120 km/h and does not keep UN R39 in its original series",
        "A corrector that makes 1.1285 turns or pulses of one reads as in the baseline",
        "What the law of the place says decides.",
    ] {
        assert!(window.says(words), "{words}");
    }
    window.click("Side by side");
    let rows = window.names(Role::Row);
    let row = rows.iter().find(|row| row.contains("at 120 km/h of "));
    let row = row.unwrap_or_else(|| panic!("{rows:#?}"));
    assert!(row.contains("120.0, 106.3 −13.7, 107.3 −12.7"), "{row}");
}

#[test]
fn the_driven_gear_that_reads_nearest_without_reading_low_is_told() {
    let mut window = opened_on(without_engine());
    window.click_on(
        Role::DisclosureTriangle,
        "Speed signal: at the gearbox output, starting value",
    );
    window.fill("Drive", "8 driving 21");
    // 21 teeth show 0.8862 of the true speed: 18.6 would be right, and 19 would read low.
    assert!(window.says("A driven gear of 18 teeth reads nearest without reading low"));
}

#[test]
fn a_box_without_a_signal_says_the_usual_ways_and_has_no_line() {
    let mut window = opened_on(camper_van());
    let heading = "Checks of this set: as the vehicle's";
    window.click_on(Role::DisclosureTriangle, heading);
    window.choose("Signal taken, set 2", Role::RadioButton, "nowhere");
    for words in [
        "This set gives the speedometer no signal",
        "a ring on the differential, a sensor at a wheel or a satellite sender",
    ] {
        assert!(window.says(words), "{words}");
    }
    let scene = window.app().diagram();
    let places: Vec<usize> = scene.lines.iter().map(|line| line.of.place).collect();
    assert!(!places.contains(&SECOND) && places.len() == 2, "{places:?}");
    let lines = window.names(Role::ListItem);
    let at_90 = lines.iter().find(|line| line.starts_with("at 90 km/h; "));
    let told = "Same box, taller final drive: no signal";
    assert!(at_90.unwrap().contains(told), "{lines:#?}");
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(window.focused(), "Signal taken, set 2");
    assert_eq!(window.app().diagram().lines.len(), 3);
}

#[test]
fn a_baseline_without_a_signal_asks_for_the_meter_constant_and_takes_it() {
    let mut window = opened_on(without_engine());
    window.open_card(1);
    let heading = "Checks of this set: as the vehicle's";
    window.click_on(Role::DisclosureTriangle, heading);
    window.choose("Signal taken, set 1", Role::RadioButton, "nowhere");
    assert!(window.says("The baseline gives no signal to compare with; type the meter constant"));
    assert!(window.app().diagram().lines.is_empty());
    window.click_on(
        Role::DisclosureTriangle,
        "Speed signal: at the gearbox output, starting value",
    );
    window.fill("Meter, per km", "800");
    window.fill("Drive", "8 driving 21");
    assert_eq!(window.app().diagram().lines.len(), 2);
}

#[test]
fn in_miles_everything_is_told_in_miles() {
    let window = opened_on(Project {
        units: SpeedUnit::Mph,
        ..camper_van()
    });
    let rows = window.names(Role::Row);
    let is_there = |start: &str| rows.iter().any(|row| row.contains(start));
    assert!(
        is_there("true speed at 40 km/h (24.9 mph): shown 24.9 mph"),
        "{rows:#?}"
    );
    assert!(window.says("up to 74.6 mph"));
    let scene = window.app().diagram();
    assert_eq!(
        [scene.x.quantity.sign(), scene.y.quantity.sign()],
        ["mph", "± mph"]
    );
}

#[test]
fn a_signal_that_is_typed_moves_the_lines_at_once_and_esc_takes_it_back() {
    let mut window = opened_on(without_engine());
    window.click_on(
        Role::DisclosureTriangle,
        "Speed signal: at the gearbox output, starting value",
    );
    let line = |window: &Window| window.app().diagram().lines[0].points.clone();
    let before = line(&window);
    window.type_in("Odometer, %", "2");
    assert_ne!(line(&window), before);
    window.key(Key::Escape);
    assert_eq!(line(&window), before);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn its_range_is_kept_while_other_views_are_looked_at() {
    let mut window = opened_on(camper_van());
    let whole = texts(&window);
    let at = window.plot().center();
    window.wheel(at, 200.0);
    window.event(Event::PointerGone);
    let zoomed = texts(&window);
    assert_ne!(zoomed, whole);
    window.ctrl(Key::Num1);
    window.ctrl(Key::Num5);
    assert_eq!(texts(&window), zoomed);
    window.key(Key::Home);
    assert_eq!(texts(&window), whole);
}
