//! Does everything that is known of engine, vehicle and road find its field, and does nobody else meet any?

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Event, Key};
use egui_kittest::kittest::NodeT;
use layshaft::motion::{DrivenAxle, Fuel, MeasuredAt, Strokes, VehicleKind};
use layshaft::project::{EngineData, Project, RoadData, TechnicalData, VehicleData};

/// A window on a project of which nothing technical is known.
fn without() -> Window {
    let project = Project {
        technical: TechnicalData::default(),
        ..camper_van()
    };
    Opening::on(project).open()
}

/// The heading of a section, with what it says in short.
fn heading(window: &Window, section: &str) -> String {
    let mut names = window.names(Role::DisclosureTriangle).into_iter();
    names.find(|name| name.starts_with(section)).unwrap()
}

/// Folds or unfolds a section.
fn turn(window: &mut Window, section: &str) {
    let name = heading(window, section);
    window.click_on(Role::DisclosureTriangle, &name);
    window.pause();
}

/// With "Load and road" open, and all of its figures.
fn opened(mut window: Window) -> Window {
    turn(&mut window, "Load and road");
    turn(&mut window, "Further figures");
    window
}

fn vehicle(window: &Window) -> &VehicleData {
    &window.project().technical.vehicle
}

fn road(window: &Window) -> &RoadData {
    &window.project().technical.road
}

/// Chooses something in the menu of a choice.
fn choose(window: &mut Window, choice: &str, wanted: &str) {
    window.choose(choice, Role::RadioButton, wanted);
    window.pause();
}

/// What a field or a button says of itself beyond its name.
fn description(window: &Window, role: Role, name: &str) -> String {
    let node = window.get(role, name).accesskit_node();
    node.data().description().unwrap_or_default().to_owned()
}

#[test]
fn somebody_who_compares_ratios_meets_nothing_but_a_closed_heading() {
    let mut window = without();
    assert_eq!(
        heading(&window, "Load and road"),
        "Load and road: not known"
    );
    assert!(window.find(Role::TextInput, "Mass, kg").is_none());
    turn(&mut window, "Load and road");
    assert_eq!(heading(&window, "Load and road"), "Load and road");
    window.field("Mass, kg");
    // What few people know stays out of the way.
    assert!(window.find(Role::TextInput, "Adhesion").is_none());
    turn(&mut window, "Load and road");
    assert!(window.find(Role::TextInput, "Mass, kg").is_none());
}

#[test]
fn a_closed_heading_says_in_short_what_is_known() {
    let window = Window::on_camper_van();
    assert_eq!(
        heading(&window, "Load and road"),
        "Load and road: 2350 kg, 2 starting values, laden"
    );
}

/// A field, what is typed in it, and what stands there afterwards.
const GOOD: [(&str, &str, &str); 24] = [
    ("Mass, kg", "1,450 kg", "1450"),
    ("Mass, kg", "", ""),
    ("Drag area, m²", "0,66", "0.66"),
    ("Rolling coeff.", "0.012", "0.012"),
    ("Drag coeff. c_d", ".3", "0.3"),
    ("Front area, m²", "2.2 m²", "2.2"),
    ("Road load ABC", "120,5; 1,5; 0,42", "120.5 1.5 0.42"),
    ("Road load ABC", "120 -1.5 0.42", "120 -1.5 0.42"),
    ("Air, kg/m³", "1.1", "1.1"),
    ("Adhesion", "0.9", "0.9"),
    ("Wheelbase, m", "2,65 m", "2.65"),
    ("C. of g., m high", "0.55", "0.55"),
    ("Front share", "60 %", "0.6"),
    ("Wheels, kg·m²", "3.2", "3.2"),
    ("Load, kg", "300", "300"),
    ("Trailer, kg", "1,200", "1200"),
    ("Its drag, m²", "1.5", "1.5"),
    ("Wind, km/h", "30", "30"),
    ("Wind, km/h", "-20 mph", "-32.2"),
    ("Grade, %", "-4 %", "-4"),
    ("Gear change, s", "0,5 s", "0.5"),
    ("Launch, rpm", "1800 rpm", "1800"),
    ("Km a year", "15.000 km", "15000"),
    ("Km a year", " ", ""),
];

#[test]
fn every_field_reads_what_people_write_and_is_undone_in_one_step() {
    let mut window = opened(without());
    let before = window.project().clone();
    for (field, typed, stands) in GOOD {
        window.fill(field, typed);
        assert_eq!(window.text(field), stands, "{field} {typed}");
        if stands.is_empty() {
            assert_eq!(*window.project(), before, "{field}");
            continue;
        }
        assert_eq!(window.undo_steps(), 1, "{field} {typed}");
        window.check_step(&before);
        window.click("Undo");
        assert_eq!(window.text(field), "", "{field}");
        assert_eq!(*window.project(), before, "{field}");
    }
}

/// A field, what does not read in it, and what is said then.
const BAD: [(&str, &str, &str); 8] = [
    ("Mass, kg", "heavy", "\"heavy\" is not a mass such as 1450"),
    (
        "Mass, kg",
        "12",
        "a mass must be between 50 and 100000 kg, not 12",
    ),
    (
        "Rolling coeff.",
        "1.2",
        "a rolling coefficient must be between 0 and 0.2, not 1.2",
    ),
    ("Road load ABC", "120", "type A, B and C of the coast-down"),
    (
        "Front share",
        "60",
        "a share of the front axle must be between 0 and 1, not 60",
    ),
    (
        "Wind, km/h",
        "gale",
        "\"gale\" is not a headwind such as 30",
    ),
    (
        "Grade, %",
        "60",
        "a grade must be between -50 and 50 %, not 60",
    ),
    (
        "Launch, rpm",
        "0",
        "an engine speed at the start must be between",
    ),
];

#[test]
fn what_does_not_read_stays_with_a_sentence_and_the_document_as_it_was() {
    let mut window = opened(without());
    let before = window.project().clone();
    for (field, typed, says) in BAD {
        window.fill(field, typed);
        window.pause();
        assert!(window.says(says), "{field} {typed}");
        assert!(description(&window, Role::TextInput, field).contains(says));
        assert_eq!(window.text(field), typed);
        assert_eq!(*window.project(), before);
        window.enter_field(field);
        window.key(Key::Escape);
        assert_eq!(window.text(field), "");
    }
}

#[test]
fn a_kind_gives_starting_values_that_are_marked_and_counted() {
    let mut window = opened(without());
    assert_eq!(
        description(&window, Role::TextInput, "Mass, kg"),
        "empty, with the driver"
    );
    choose(&mut window, "Kind", "Sports car");
    assert_eq!(vehicle(&window).kind, Some(VehicleKind::SportsCar));
    assert!(window.says("8 starting values for what is not typed"));
    for (field, hint) in [
        ("Mass, kg", "1100, starting value"),
        ("Drag area, m²", "0.63, starting value"),
        ("Rolling coeff.", "0.012, starting value"),
        ("Drag coeff. c_d", "in the starting drag area"),
        ("Front share", "0.52, starting value"),
        ("Load, kg", "nothing carried"),
    ] {
        assert_eq!(description(&window, Role::TextInput, field), hint);
        // It is a hint, not a text: nothing was typed.
        assert_eq!(window.text(field), "");
    }
    let driven = description(&window, Role::Button, "Driven axle");
    assert_eq!(driven, "rear, starting value");
    window.fill("Mass, kg", "980");
    assert!(window.says("7 starting values"));
    choose(&mut window, "Driven axle", "all");
    assert_eq!(vehicle(&window).driven, Some(DrivenAxle::All));
    assert!(window.says("6 starting values"));
    window.fill("Drag coeff. c_d", "0.4");
    assert_eq!(
        description(&window, Role::TextInput, "Drag area, m²"),
        "0.7 of c_d and frontal area"
    );
    window.fill("Road load ABC", "120 1.5 0.42");
    assert!(window.says("4 starting values"));
    assert!(window.says("The measured road load counts"));
    let rolling = description(&window, Role::TextInput, "Rolling coeff.");
    assert_eq!(rolling, "in the measured road load");
}

#[test]
fn a_choice_is_undone_and_has_the_focus_then() {
    let mut window = without();
    turn(&mut window, "Load and road");
    choose(&mut window, "Kind", "Van");
    assert_eq!(window.undo_steps(), 1);
    turn(&mut window, "Load and road");
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(vehicle(&window).kind, None);
    assert_eq!(window.focused(), "Kind");
    window.key(Key::Enter);
    window.pause();
    window.click_on(Role::RadioButton, "Lorry");
    assert_eq!(vehicle(&window).kind, Some(VehicleKind::Lorry));
}

#[test]
fn what_was_undone_unfolds_what_it_stands_in() {
    let mut window = opened(without());
    window.fill("Grade, %", "4");
    turn(&mut window, "Further figures");
    turn(&mut window, "Load and road");
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(window.focused(), "Grade, %");
    // And it is not held open.
    turn(&mut window, "Load and road");
    assert!(window.find(Role::TextInput, "Grade, %").is_none());
}

#[test]
fn what_was_half_typed_outlives_the_fold() {
    let mut window = opened(without());
    window.fill("Adhesion", "good");
    turn(&mut window, "Load and road");
    turn(&mut window, "Load and road");
    assert_eq!(window.text("Adhesion"), "good");
}

#[test]
fn a_trailer_without_mass_and_drag_is_none() {
    let mut window = opened(without());
    window.fill("Its drag, m²", "1.5");
    window.fill("Trailer, kg", "800");
    let trailer = road(&window).trailer.unwrap();
    assert_eq!((trailer.mass.kg(), trailer.drag_area.m2()), (800.0, 1.5));
    window.fill("Its drag, m²", "");
    assert!(road(&window).trailer.unwrap().drag_area.m2() < 1e-9);
    window.fill("Trailer, kg", "");
    assert_eq!(road(&window).trailer, None);
}

#[test]
fn the_formula_beside_an_inertia_is_told() {
    let mut window = opened(without());
    window.fill("Wheels, kg·m²", "3.2");
    choose(&mut window, "Mass factor", "by formula");
    assert!(window.says("the mass factor by formula covers the inertias"));
    choose(&mut window, "Mass factor", "none: inertias as typed");
    assert!(!window.says("the mass factor by formula covers the inertias"));
}

#[test]
fn tab_goes_through_the_fields_in_reading_order() {
    let mut window = opened(without());
    window.enter_field("Mass, kg");
    let mut met = vec![window.focused()];
    while met.len() < 8 {
        window.key(Key::Tab);
        met.push(window.focused());
    }
    assert_eq!(
        met,
        [
            "Mass, kg",
            "Drag area, m²",
            "Rolling coeff.",
            "Driven axle",
            "Further figures",
            "Drag coeff. c_d",
            "Front area, m²",
            "Road load ABC"
        ]
    );
}

/// With "Engine" open, and all of its figures.
fn with_engine_open(mut window: Window) -> Window {
    turn(&mut window, "Engine");
    turn(&mut window, "More of the engine");
    window
}

fn engine(window: &Window) -> &EngineData {
    &window.project().technical.engine
}

/// Goes into the field of the torque curve, with all of it selected, and pastes.
fn paste(window: &mut Window, text: &str) {
    window.click_on(Role::MultilineTextInput, CURVE);
    assert_eq!(window.focused(), CURVE);
    window.ctrl(Key::A);
    window.event(Event::Paste(text.to_owned()));
    window.settle();
}

const CURVE: &str = "Torque curve";

/// What stands in the field of the torque curve.
fn curve(window: &Window) -> String {
    let field = window.get(Role::MultilineTextInput, CURVE);
    field.value().unwrap_or_default()
}

#[test]
fn the_engine_stands_in_a_closed_heading_that_says_what_is_known() {
    let window = without();
    assert_eq!(heading(&window, "Engine"), "Engine: not known");
    let window = Window::on_camper_van();
    assert_eq!(heading(&window, "Engine"), "Engine: 2 L, 305 N·m, 96 kW");
}

#[test]
fn a_torque_curve_is_typed_or_pasted_in_lines_and_undone_in_one_step() {
    let mut window = with_engine_open(without());
    let before = window.project().clone();
    for text in [
        "1000:96 2500:130 4600:152",
        "rpm\tNm\n1000\t96\n2500\t130\n4600\t152\n",
    ] {
        paste(&mut window, text);
        window.key(Key::Tab);
        assert_eq!(curve(&window), "1000:96 2500:130 4600:152");
        assert_eq!(window.undo_steps(), 1, "{text}");
        window.check_step(&before);
        assert!(window.says("152 N·m at 4600, 73 kW at 4600 rpm"));
        window.ctrl(Key::Z);
        window.pause();
        assert_eq!(*window.project(), before);
        assert_eq!(window.focused(), CURVE);
    }
}

#[test]
fn what_was_guessed_of_a_pasted_curve_is_said_while_it_is_typed() {
    let mut window = with_engine_open(without());
    paste(&mut window, "rpm torque\n1000 100\n3000 120\nsoon");
    assert!(window.says("Left out: \"soon\""));
}

#[test]
fn a_curve_that_speaks_of_the_wheels_was_measured_there() {
    let mut window = with_engine_open(without());
    paste(&mut window, "rpm\twheel torque Nm\n1000\t96\n2500\t130");
    window.key(Key::Tab);
    assert_eq!(engine(&window).measured_at, MeasuredAt::Wheels);
    assert_eq!(
        description(&window, Role::Button, "Measured at"),
        "the wheels"
    );
    choose(&mut window, "Measured at", "the crank");
    assert_eq!(engine(&window).measured_at, MeasuredAt::Crank);
}

#[test]
fn a_brochure_makes_a_curve_and_a_curve_takes_its_place() {
    let mut window = with_engine_open(without());
    window.fill("Brochure", "152 Nm @ 4600, 96 kW @ 6,180 rpm");
    assert_eq!(window.text("Brochure"), "152 N·m at 4600, 96 kW at 6180");
    assert!(window.says("152 N·m at 4600, 96 kW at 6180 rpm"));
    assert_eq!(curve(&window), "");
    paste(&mut window, "1000:96 2500:130");
    window.key(Key::Tab);
    assert_eq!(window.text("Brochure"), "");
    window.ctrl(Key::Z);
    window.ctrl(Key::Z);
    assert_eq!(engine(&window).curve, None);
}

#[test]
fn every_other_figure_of_the_engine_is_typed_or_chosen() {
    let mut window = with_engine_open(without());
    for (field, typed, stands) in [
        ("Capacity, L", "1,6 L", "1.6"),
        ("Inertia, kg·m²", "0.2", "0.2"),
        ("Willans line", "0,4 1.6", "0.4 1.6 bar"),
        (
            "Known fuel",
            "7,4 at 60 mph in 5",
            "7.4 at 96.6 in 5 of set 1",
        ),
    ] {
        window.fill(field, typed);
        assert_eq!(window.text(field), stands);
    }
    choose(&mut window, "Fuel", "diesel");
    choose(&mut window, "Strokes", "two");
    assert_eq!(window.undo_steps(), 6);
    assert_eq!(engine(&window).fuel, Fuel::Diesel);
    assert_eq!(engine(&window).strokes, Strokes::Two);
}

#[test]
fn what_is_no_engine_stays_in_its_field_with_a_sentence() {
    let mut window = with_engine_open(without());
    let before = window.project().clone();
    for (field, typed, says) in [
        ("Brochure", "152 Nm", "type peak torque and peak power"),
        ("Capacity, L", "1600", "a displacement must be between"),
        ("Willans line", "0.4", "type slope efficiency and friction"),
        ("Known fuel", "7.4", "type L/100 km, road speed and gear"),
    ] {
        window.type_in(field, typed);
        window.key(Key::Tab);
        window.pause();
        assert!(window.says(says), "{field} {typed}");
        assert_eq!(window.text(field), typed);
        assert_eq!(*window.project(), before);
        window.ctrl(Key::Z);
        window.pause();
        assert_eq!(window.text(field), "", "{field}");
    }
}

#[test]
fn what_is_no_curve_stays_in_its_lines_with_a_sentence() {
    let mut window = with_engine_open(without());
    let before = window.project().clone();
    for (text, says) in [
        ("strong", "no torque curve was found"),
        ("1000:96", "only the point at 1000"),
    ] {
        paste(&mut window, text);
        window.key(Key::Tab);
        window.pause();
        assert!(window.says(says), "{text}");
        assert!(description(&window, Role::MultilineTextInput, CURVE).contains(says));
        assert_eq!(curve(&window), text);
        assert_eq!(*window.project(), before);
        window.ctrl(Key::Z);
        window.pause();
        assert_eq!(curve(&window), "");
    }
}

#[test]
fn a_figure_that_was_typed_for_one_kind_says_so_once_the_kind_is_another() {
    let mut window = opened(without());
    choose(&mut window, "Kind", "Car");
    window.fill("Mass, kg", "1300");
    choose(&mut window, "Kind", "Van");
    assert_eq!(window.text("Mass, kg"), "1300");
    let label = window.nodes().find(|node| {
        let node = node.accesskit_node();
        node.role() == Role::Label && node.value().as_deref() == Some("Mass, kg")
    });
    let label = label.unwrap().accesskit_node();
    let said = label.data().description().unwrap().to_owned();
    assert_eq!(
        said,
        "empty, with the driver; for Van the starting value is 2100"
    );
}
