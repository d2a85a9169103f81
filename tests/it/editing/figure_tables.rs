//! Has every view a table of its own, that says its figures, answers the pointer and is copied?

use crate::support::window::{Opening, Painted, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Pos2, vec2};
use egui_kittest::kittest::NodeT;
use layshaft::gearing::RoadSpeed;
use layshaft::project::{Edit, Marks, TechnicalData};

/// The camper van, of which a view is looked at.
fn window_on(view: &str) -> Window {
    let mut window = Window::on_camper_van();
    window.click(view);
    window
}

/// The spoken text of the one row that begins with `start`.
#[track_caller]
fn row(window: &Window, start: &str) -> String {
    let rows = window.names(Role::Row).into_iter();
    let rows: Vec<String> = rows.filter(|name| name.starts_with(start)).collect();
    assert_eq!(rows.len(), 1, "{start}: {rows:?}");
    rows.into_iter().next().unwrap()
}

/// A place in a row, scrolled into view.
#[track_caller]
fn at_row(window: &mut Window, start: &str) -> Pos2 {
    let name = row(window, start);
    window.shown(Role::Row, &name).left_center() + vec2(30.0, 0.0)
}

/// The label of the gear that is brought out, with the place of its set.
fn pointed(window: &Window) -> Option<(usize, String)> {
    let at = window.app().pointed()?;
    let sets = &window.project().sets;
    let gear = sets.get(at.set)?.set.gear(at.gear)?;
    Some((sets.place(at.set)?, gear.label.to_string()))
}

#[track_caller]
fn has(row: &str, words: &[&str]) {
    for words in words {
        assert!(row.contains(words), "{words} is not in: {row}");
    }
}

#[test]
fn the_table_of_effort_says_how_hard_every_gear_pulls() {
    let window = window_on("Effort");
    has(
        &row(&window, "Fitted five-speed, gear 5: "),
        &["effort at 110 km/h 2720 N, ", "gradient at 110 km/h 5.6 %"],
    );
    has(
        &row(&window, "Six-speed, two output shafts, gear 6: "),
        &["gradient at 90 km/h 5.6 % −2.1"],
    );
    let rows = window.names(Role::Row);
    assert!(rows.iter().all(|row| !row.contains("overall")), "{rows:?}");
    // None of the marked speeds is driven in first.
    assert_eq!(rows.len(), 4 + 4 + 5);
}

#[test]
fn what_is_said_of_a_set_and_of_all_figures_is_heard() {
    for (view, words) in [
        (
            "Effort",
            [
                "Top speed 150 km/h in 5, limited by power",
                "Vehicle 2350 kg",
            ],
        ),
        (
            "Run",
            [
                "Fitted five-speed: Baseline.",
                "Against the clock only on closed roads.",
            ],
        ),
        (
            "Cruise",
            [
                "Fitted five-speed: Baseline.",
                "Fuel is an estimate, 10 % either way.",
            ],
        ),
    ] {
        for arrangement in ["One under another", "Side by side"] {
            let mut window = window_on(view);
            window.click(arrangement);
            for words in words {
                assert!(window.says(words), "{view}: {words}");
            }
        }
    }
}

#[test]
fn the_table_of_runs_says_times_changes_and_what_differs() {
    let window = window_on("Run");
    has(
        &row(
            &window,
            "Same box, taller final drive, from rest, target to 100 km/h: ",
        ),
        &["time 19.64 s −0.38, distance 349 m, ", "gear 3"],
    );
    has(
        &row(&window, "Fitted five-speed, in one gear, gear 5: "),
        &["80 to 120 km/h 18.24 s"],
    );
    has(
        &row(&window, "Fitted five-speed, changing up, change 1–2: "),
        &["shift at 3600 rpm, best 4290 rpm"],
    );
}

#[test]
fn the_table_of_cruise_says_what_a_steady_speed_asks_for() {
    let window = window_on("Cruise");
    has(
        &row(
            &window,
            "Six-speed, two output shafts, in top gear, speed at 90 km/h in 6th: ",
        ),
        &[
            "fuel 8.3 L/100 km −0.35 (−4.1 %) against 5th",
            "in a year −42 L",
        ],
    );
    row(&window, "Fitted five-speed, every gear, gear 5: ");
}

#[test]
fn a_target_that_is_not_reached_is_said_without_a_unit() {
    let fast = RoadSpeed::from_kmh(190.0).unwrap();
    let edit = Marks::new(vec![fast]).map(Edit::MarkedRoadSpeeds).unwrap();
    let mut window = Opening::on(edit.applied_to(&camper_van()).unwrap()).open();
    window.click("Run");
    let row = row(
        &window,
        "Fitted five-speed, from rest, target to 190 km/h: ",
    );
    assert!(row.ends_with("time not reached"), "{row}");
}

#[test]
fn sets_stand_side_by_side_in_every_table() {
    let mut window = Window::on_camper_van();
    window.click("Side by side");
    let all = "Fitted five-speed, Same box, taller final drive, Six-speed, two output shafts";
    window.click("Run");
    has(
        &row(
            &window,
            &format!("From rest, target to 100 km/h of {all}: "),
        ),
        &["time, s 20.01, 19.64 −0.38, 19.29 −0.72; "],
    );
    row(
        &window,
        "In one gear, gear 3 of Same box, taller final drive: ",
    );
    window.click("Cruise");
    has(
        &row(
            &window,
            &format!("In top gear, speed at 90 km/h in 5th, in 6th of {all}: "),
        ),
        &["engine speed, rpm 2580, 2290 −290, 2070 −510; "],
    );
    window.click("Effort");
    row(&window, &format!("Gear 5 of {all}: "));
}

#[test]
fn a_row_of_a_gear_brings_its_line_forward_and_any_other_none() {
    let mut window = window_on("Cruise");
    let at = at_row(&mut window, "Fitted five-speed, every gear, gear 4: ");
    window.rest_at(at);
    assert_eq!(pointed(&window), Some((0, "4".to_owned())));
    assert!(window.is_asleep());
    let at = at_row(
        &mut window,
        "Six-speed, two output shafts, in top gear, speed at 90 km/h",
    );
    window.rest_at(at);
    assert_eq!(pointed(&window), Some((2, "6".to_owned())));
    window.click("Run");
    let at = at_row(
        &mut window,
        "Fitted five-speed, from rest, target to 100 km/h: ",
    );
    window.rest_at(at);
    assert_eq!(pointed(&window), None);
    let at = at_row(&mut window, "Fitted five-speed, changing up, change 2–3: ");
    window.rest_at(at);
    assert_eq!(pointed(&window), Some((0, "2".to_owned())));
}

#[test]
fn a_click_on_any_row_brings_its_set_forward() {
    for row in [
        "Six-speed, two output shafts, from rest, target to 100 km/h: ",
        "Six-speed, two output shafts, in one gear, gear 5: ",
    ] {
        let mut window = window_on("Run");
        let at = at_row(&mut window, row);
        window.click_at(at);
        window.click("Speed");
        let handle = "Shift point 1 to 2, Six-speed, two output shafts";
        assert!(window.find(Role::Slider, handle).is_some(), "{row}");
    }
}

#[test]
fn arrows_walk_through_all_parts_of_a_table_and_no_head_hides_the_row_in_focus() {
    for arrangement in ["One under another", "Side by side"] {
        let mut window = window_on("Run");
        window.click(arrangement);
        let rows = window.names(Role::Row);
        window.get(Role::Row, &rows[0]).focus();
        window.settle();
        let below = window.get(Role::Button, "Copy table").rect().bottom();
        for name in &rows {
            assert_eq!(window.focused(), *name);
            let row = window.get(Role::Row, name);
            assert!(row.rect().top() > below + 20.0, "{name} is under a head");
            window.key(Key::ArrowDown);
        }
    }
}

#[test]
fn the_table_that_is_shown_is_copied_by_button_by_key_and_by_row() {
    for (view, start, words) in [
        ("Effort", "Fitted five-speed, gear 5: ", "road load"),
        (
            "Run",
            "Fitted five-speed, in one gear, gear 5: ",
            "From rest",
        ),
        (
            "Cruise",
            "Fitted five-speed, every gear, gear 5: ",
            "In top gear",
        ),
    ] {
        let mut window = window_on(view);
        window.click("Copy table");
        let text = window.copied().to_owned();
        has(&text, &["Camper van", words]);
        assert!(!text.contains("overall"), "{text}");

        let mut window = window_on(view);
        window.ctrl_shift(Key::C);
        assert_eq!(window.copied(), text);

        let mut window = window_on(view);
        let at = at_row(&mut window, start);
        window.secondary_click_at(at);
        window.click_lowest("Copy table");
        assert_eq!(window.copied(), text);
    }
}

#[test]
fn a_row_is_copied_with_its_name_and_its_differences() {
    let mut window = window_on("Cruise");
    let at = at_row(
        &mut window,
        "Same box, taller final drive, in top gear, speed at 90 km/h",
    );
    window.secondary_click_at(at);
    window.click("Copy row");
    let cells: Vec<&str> = window.copied().split('\t').collect();
    let row = [
        "at 90 km/h in 5th",
        "8.4 −0.20 (−2.4 %)",
        "2290 −290",
        "−25",
    ];
    assert_eq!(cells, row);
}

#[test]
fn without_an_engine_the_table_of_ratios_stays() {
    let mut project = camper_van();
    project.technical = TechnicalData::default();
    let mut window = Opening::on(project).open();
    for view in ["Speed", "Effort", "Run", "Cruise"] {
        window.click(view);
        has(
            &row(&window, "Fitted five-speed, gear 5: "),
            &["overall 3.601"],
        );
    }
}

#[test]
fn columns_are_chosen_of_the_table_of_ratios_alone() {
    let mut window = window_on("Effort");
    let columns = window.get(Role::Button, "Columns");
    let why = columns
        .accesskit_node()
        .data()
        .description()
        .unwrap_or_default()
        .to_owned();
    assert!(columns.accesskit_node().is_disabled());
    has(&why, &["Not now: only the table of ratios"]);
    // By its command one comes to that table.
    window.choose("View", Role::Button, "Table: columns…");
    assert!(window.find(Role::CheckBox, "overall").is_some());
    window.key(Key::Escape);
    has(
        &row(&window, "Fitted five-speed, gear 5: "),
        &["overall 3.601"],
    );
}

#[test]
fn without_marked_speeds_it_is_said_what_the_figures_wait_for() {
    let edit = Edit::MarkedRoadSpeeds(Marks::new(Vec::new()).unwrap());
    let project = edit.applied_to(&camper_van()).unwrap();
    let mut window = Opening::on(project).sized(1920.0, 1080.0).open();
    let is_said = |window: &Window| {
        let texts = Painted::of(window).texts.into_iter();
        let mut texts = texts.map(|(text, _)| text);
        texts.any(|text| text.starts_with("Figures stand here for every road speed"))
    };
    for (view, wanted) in [("Effort", true), ("Run", false), ("Cruise", true)] {
        window.click(view);
        assert_eq!(is_said(&window), wanted, "{view}");
    }
}

#[test]
fn a_shift_point_that_is_typed_changes_the_run_at_once() {
    let mut window = window_on("Run");
    let start = "Fitted five-speed, from rest, target to 100 km/h: ";
    let before = row(&window, start);
    window.type_in("Shift point of all gears of set 1", "4200");
    assert_ne!(row(&window, start), before);
    window.key(Key::Escape);
    assert_eq!(row(&window, start), before);
}
