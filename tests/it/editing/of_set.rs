//! Can a set have an engine of its own and efficiencies, and does nobody meet them who wants neither?
#![expect(clippy::float_cmp, reason = "what was typed is kept to the digit")]

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, vec2};
use layshaft::motion::Efficiency;
use layshaft::project::{EngineData, Project, SetEfficiencies, TechnicalData};

/// Folds or unfolds what stands under a heading.
fn turn(window: &mut Window, heading: &str) {
    let mut names = window.names(Role::DisclosureTriangle).into_iter();
    let name = names.find(|name| name.starts_with(heading)).unwrap();
    window.click_on(Role::DisclosureTriangle, &name);
    window.pause();
}

/// The engine of the second set's own, whose card is open at first.
fn own(window: &Window) -> Option<&EngineData> {
    window.set(1).technical.engine.as_ref()
}

fn efficiencies(window: &Window) -> &SetEfficiencies {
    &window.set(1).technical.efficiencies
}

const GIVE: &str = "Give it its own engine, set 2";
const TAKE: &str = "Use the vehicle's engine, set 2";

#[test]
fn somebody_who_compares_ratios_meets_neither() {
    let mut project = Project {
        technical: TechnicalData::default(),
        ..camper_van()
    };
    let ids: Vec<_> = project.sets.iter().map(|candidate| candidate.id).collect();
    for id in ids {
        let without = layshaft::project::Edit::Efficiencies(id, SetEfficiencies::default());
        project = without.applied_to(&project).unwrap();
    }
    let window = Opening::on(project).open();
    assert!(window.find(Role::Button, GIVE).is_none());
    let headings = window.names(Role::DisclosureTriangle);
    assert!(!headings.iter().any(|name| name.starts_with("Efficiency")));
}

#[test]
fn a_set_is_given_its_own_engine_and_takes_the_vehicle_s_again() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window.click(GIVE);
    assert_eq!(own(&window), Some(&before.technical.engine));
    assert_eq!(window.focused(), "Torque curve, set 2");
    window.check_step(&before);
    window.fill("Capacity, L, set 2", "2.4");
    let litres = |engine: &EngineData| engine.displacement.unwrap().l();
    assert_eq!(litres(own(&window).unwrap()), 2.4);
    assert_eq!(litres(&window.project().technical.engine), 2.0);
    window.click(TAKE);
    assert_eq!(own(&window), None);
    window.ctrl(Key::Z);
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(litres(own(&window).unwrap()), 2.0);
    assert_eq!(window.focused(), "Capacity, L, set 2");
}

#[test]
fn its_rows_are_those_of_the_vehicle_s_engine_and_change_that_set_alone() {
    let mut window = Window::on_camper_van();
    window.click(GIVE);
    turn(&mut window, "Engine: ");
    let names = |window: &Window, is_own: bool| {
        let roles = [
            Role::TextInput,
            Role::MultilineTextInput,
            Role::Slider,
            Role::Image,
        ];
        let all = roles.into_iter().flat_map(|role| window.names(role));
        let of_set = |name: &str| name.ends_with(", set 2");
        let part = all.filter(|name| of_set(name) == is_own);
        let part = part.map(|name| name.trim_end_matches(", set 2").to_owned());
        part.collect::<Vec<_>>()
    };
    let (own_names, others) = (names(&window, true), names(&window, false));
    let of_engine = others.iter().filter(|name| {
        ["Torque", "Brochure", "Capacity"]
            .iter()
            .any(|start| name.starts_with(start))
    });
    let of_engine: Vec<_> = of_engine.collect();
    assert!(of_engine.len() > 12, "{of_engine:?}");
    for name in of_engine {
        assert!(own_names.contains(name), "{name}");
    }
    let vehicles = window.project().technical.engine.clone();
    let from = window
        .shown(Role::Slider, "Torque at 2250 rpm, set 2")
        .center();
    window.drag(from, from + vec2(0.0, -12.0));
    let nm = |engine: &EngineData| engine.curve.as_ref().unwrap().points()[4].torque.nm();
    assert!(nm(own(&window).unwrap()) > 305.0);
    assert_eq!(window.project().technical.engine, vehicles);
    window.ctrl(Key::Z);
    assert_eq!(window.focused(), "Torque at 2250 rpm, set 2");
    assert_eq!(own(&window), Some(&vehicles));
}

#[test]
fn what_does_not_read_in_its_engine_is_said_at_its_heading_and_its_folded_card() {
    let mut window = Window::on_camper_van();
    window.click(GIVE);
    window.fill("Capacity, L, set 2", "much");
    turn(&mut window, "Engine of this set");
    let headings = window.names(Role::DisclosureTriangle);
    let told = "Engine of this set: a field does not read".to_owned();
    assert!(headings.contains(&told), "{headings:?}");
    assert!(!headings.contains(&"Engine: a field does not read".to_owned()));
    window.open_card(1);
    let lines = window.names(Role::Button);
    assert!(
        lines
            .iter()
            .any(|line| line.starts_with("Open set 2") && line.contains("does not read"))
    );
    window.open_card(2);
    window.click(TAKE);
    window.click(GIVE);
    assert_eq!(window.text("Capacity, L, set 2"), "2");
}

#[test]
fn efficiencies_are_typed_as_shares_or_per_cent_and_undone_where_they_stand() {
    let mut window = Window::on_camper_van();
    turn(&mut window, "Efficiency: ");
    let before = window.project().clone();
    let share = |share: f64| Efficiency::new(share).unwrap();
    window.fill("Efficiency of all gears, set 2", "94 %");
    assert_eq!(efficiencies(&window).of_set, Some(share(0.94)));
    window.check_step(&before);
    window.fill("Efficiency of a direct gear, set 2", "0,98");
    assert_eq!(efficiencies(&window).direct, Some(share(0.98)));
    window.fill("Efficiency of gear 5, set 2", "0.93");
    let fifth = window.set(1).set.gears[4].id;
    assert_eq!(
        efficiencies(&window).of_gears.get(&fifth),
        Some(&share(0.93))
    );
    turn(&mut window, "Efficiency");
    let heading = "Efficiency: 0.94, some gears their own".to_owned();
    assert!(window.names(Role::DisclosureTriangle).contains(&heading));
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(window.focused(), "Efficiency of gear 5, set 2");
    assert!(efficiencies(&window).of_gears.is_empty());
    window.fill("Efficiency of all gears, set 2", "");
    assert_eq!(efficiencies(&window).of_set, None);
    window.fill("Efficiency of gear 1, set 2", "95");
    window.pause();
    assert!(window.says("an efficiency must be between 0.01 and 1, not 95"));
}

#[test]
fn what_stands_under_both_engines_has_two_names() {
    let mut window = Window::on_camper_van();
    window.click(GIVE);
    turn(&mut window, "Engine: ");
    for heading in ["11 points", "11 points, set 2", "More of the engine, set 2"] {
        window.get(Role::DisclosureTriangle, heading);
    }
    window.click_on(Role::DisclosureTriangle, "11 points, set 2");
    window.pause();
    window.fill("Torque of point 1, set 2", "171");
    let nm = |engine: &EngineData| engine.curve.as_ref().unwrap().points()[0].torque.nm();
    assert_eq!(nm(own(&window).unwrap()), 171.0);
    assert_eq!(nm(&window.project().technical.engine), 170.0);
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(window.focused(), "Torque of point 1, set 2");
}

#[test]
fn tab_goes_through_both_engines_and_every_stop_is_named_and_in_view() {
    for [width, height] in [[667.0, 427.0], [1280.0, 800.0]] {
        let mut window = Opening::on(camper_van()).sized(width, height).open();
        if window.is_in_parts() {
            window.click("Vehicle and sets");
        }
        window.click(GIVE);
        for heading in ["Engine: ", "11 points", "11 points, set 2", "Efficiency: "] {
            turn(&mut window, heading);
        }
        let stops = window.tab_stops("both engines");
        let stops: Vec<&String> = stops.iter().map(|(_, name)| name).collect();
        for name in [
            "Torque at 1000 rpm",
            "Torque at 4500 rpm, set 2",
            "Engine speed of point 11",
            "Engine speed of point 11, set 2",
            "Use the vehicle's engine, set 2",
            "Efficiency of gear 5, set 2",
        ] {
            assert!(stops.iter().any(|stop| *stop == name), "{name}: {stops:?}");
        }
    }
}
