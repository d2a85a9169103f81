//! Does everything that the road checks ask for find its field, and is it judged once it stands there?

use crate::support::window::{Opening, Window, camper_van, without_engine};
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT;
use layshaft::checks::{
    Axle, Coupling, SharingShafts, SignalSource, SpeedometerRule, TakenOff, TyresOnAxle,
};
use layshaft::project::{Edit, LimitsData, Project, SecondAxleData, SpeedometerData, View};
use layshaft::units::SpeedUnit;

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

const SECTIONS: [&str; 3] = ["Speed signal", "Limits", "Second driven axle"];

/// A window without an engine in which all of it can be typed.
fn opened() -> Window {
    opened_on(without_engine())
}

fn opened_on(project: Project) -> Window {
    let mut window = Opening::on(project).open();
    window.look_at(View::Speedometer);
    for section in SECTIONS {
        turn(&mut window, section);
    }
    window
}

/// A window that looks at speedometers, with what is checked of the set in its card.
fn with_own_open() -> Window {
    let mut window = opened();
    window.look_at(View::Speedometer);
    turn(&mut window, "Checks of this set");
    window
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

/// All findings, a sentence each.
fn findings(window: &Window) -> Vec<String> {
    let findings = window.app().desk().findings().iter();
    findings.map(ToString::to_string).collect()
}

/// Those of the set at that place.
fn findings_of(window: &Window, place: usize) -> Vec<String> {
    let findings = window.app().desk().findings_of(place);
    findings.map(ToString::to_string).collect()
}

#[test]
fn somebody_who_compares_ratios_meets_one_closed_heading_and_none_in_a_card() {
    let window = Opening::on(without_engine()).open();
    window.get(
        Role::DisclosureTriangle,
        "Speed signal: at the gearbox output, starting value",
    );
    let names = window.names(Role::DisclosureTriangle);
    for hidden in ["Limits", "Second driven axle", "Checks of this set"] {
        let is_it = |name: &String| name.starts_with(hidden);
        assert!(!names.iter().any(is_it), "{names:?}");
    }
    assert_eq!(findings(&window), [""; 0]);
}

/// A field, what is typed in it, and what stands there afterwards.
const GOOD: [(&str, &str, &str); 23] = [
    ("Drive", "8:21", "8 driving 21"),
    ("Drive", "4 pulses per turn", "4 pulses"),
    ("Odometer, %", "+2,5 %", "2.5"),
    ("Odometer, %", "-1", "-1"),
    ("Needle, %", "3", "3"),
    ("Meter, per km", "625", "625"),
    ("Meter, per km", "1,000 a mile", "621.37"),
    ("Own rule", "10 4", "10 % + 4"),
    ("Top speed, km/h", "155", "155"),
    ("Top speed, km/h", "100 mph", "160.9"),
    ("Front axle, kg", "1,450 kg", "1450"),
    ("Rear axle, kg", "1900", "1900"),
    ("Box factor", "0,9", "0.9"),
    ("Axle shaft, N·m", "3,200 N·m", "3200"),
    ("Prop. shaft, rpm", "5.500", "5500"),
    ("Final drive", "37:9", "37:9"),
    ("Final drive", "4,11", "4.11"),
    ("Angle drive", "0,62", "0.62"),
    ("Its tyre", "215/75R15", "215/75 R 15"),
    ("Its tyre", "circumference 2.1 m", "circumference 2100 mm"),
    ("Front axle, kg", "", ""),
    ("Own rule", " ", ""),
    ("Its tyre", "", ""),
];

#[test]
fn every_field_reads_what_people_write_and_is_undone_in_one_step() {
    let mut window = opened();
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

/// A field of a card, what is typed in it, and what stands there afterwards.
const GOOD_OWN: [(&str, &str, &str); 4] = [
    ("Drive, set 2", "7 driving 20", "7 driving 20"),
    ("Rated, N·m, set 2", "350 N·m", "350"),
    ("Second axle, set 2", "41:10", "41:10"),
    ("Rated, N·m, set 2", "1,200", "1200"),
];

#[test]
fn every_field_of_a_set_reads_too_and_leaves_vehicle_and_other_sets_alone() {
    let mut window = with_own_open();
    let before = window.project().clone();
    for (field, typed, stands) in GOOD_OWN {
        window.fill(field, typed);
        assert_eq!(window.text(field), stands, "{field} {typed}");
        assert_eq!(window.project().technical, before.technical);
        assert_eq!(window.set(0), before.sets.iter().next().unwrap());
        window.check_step(&before);
        window.click("Undo");
        assert_eq!(*window.project(), before, "{field}");
    }
}

/// A field, what does not read in it, and what is said then.
const BAD: [(&str, &str, &str); 14] = [
    ("Drive", "8", "type the teeth of drive and driven gear"),
    ("Drive", "8 1000", "999"),
    (
        "Odometer, %",
        "much",
        "\"much\" is not an error in per cent such as 2.5",
    ),
    (
        "Needle, %",
        "900",
        "an error in per cent must be between -50 and 100, not 900",
    ),
    (
        "Meter, per km",
        "5",
        "a meter constant must be between 10 and 1000000 per km, not 5",
    ),
    (
        "Own rule",
        "10",
        "type what may be shown above the true speed, as 10 % + 4",
    ),
    (
        "Top speed, km/h",
        "fast",
        "\"fast\" is not a road speed such as",
    ),
    (
        "Front axle, kg",
        "5",
        "a mass must be between 50 and 100000 kg, not 5",
    ),
    (
        "Box factor",
        "90 %",
        "\"90 %\" is not a factor of a rating such as 0.9",
    ),
    ("Axle shaft, N·m", "strong", "\"strong\" is not a"),
    ("Prop. shaft, rpm", "0", "must be between"),
    ("Final drive", "low", "\"low\""),
    (
        "Angle drive",
        "20",
        "the ratio of an angle drive must be between 0.1 and 10, not 20",
    ),
    ("Its tyre", "big", "\"big\""),
];

#[test]
fn what_does_not_read_stays_with_a_sentence_and_the_document_as_it_was() {
    let mut window = opened();
    let before = window.project().clone();
    for (field, typed, says) in BAD {
        window.fill(field, typed);
        window.pause();
        assert!(window.says(says), "{field} {typed}");
        let description = description(&window, Role::TextInput, field);
        assert!(description.contains(says), "{description}");
        assert_eq!(window.text(field), typed);
        assert_eq!(*window.project(), before);
        window.enter_field(field);
        window.key(Key::Escape);
        assert_eq!(window.text(field), "");
    }
}

#[test]
fn every_choice_changes_what_its_name_says_and_says_what_holds() {
    let mut window = opened();
    let steps = [
        ("Signal taken", "at a wheel"),
        ("Rule", "49 CFR 393.82"),
        ("Rear tyres", "four: twins"),
        ("Sharing it", "four of two axles"),
        ("It is the", "rear"),
        ("Taken off", "behind it, at the ring gear"),
        ("Coupling", "viscous"),
    ];
    for (count, (choice, wanted)) in steps.into_iter().enumerate() {
        choose(&mut window, choice, wanted);
        assert_eq!(description(&window, Role::Button, choice), wanted);
        assert_eq!(window.undo_steps(), count + 1, "{choice}");
    }
    let technical = &window.project().technical;
    let (speedometer, axle) = (&technical.speedometer, &technical.second_axle);
    assert_eq!(speedometer.signal.source, Some(SignalSource::Wheel));
    assert_eq!(speedometer.rule, SpeedometerRule::Cfr393);
    assert_eq!(technical.limits.rear_tyres, TyresOnAxle::Four);
    assert_eq!(technical.limits.shafts, Some(SharingShafts::Four));
    assert_eq!(axle.axle, Some(Axle::Rear));
    assert_eq!(axle.taken_off, TakenOff::BehindFinalDrive);
    assert_eq!(axle.coupling, Some(Coupling::Viscous));
    for _ in steps {
        window.ctrl(Key::Z);
        window.pause();
    }
    assert_eq!(*window.project(), without_engine());
}

#[test]
fn what_was_undone_unfolds_its_section_and_has_the_focus() {
    for (section, field, typed) in [
        ("Speed signal", "Needle, %", "3"),
        ("Limits", "Rear axle, kg", "1900"),
        ("Second driven axle", "Final drive", "4.1"),
    ] {
        let mut window = opened();
        window.fill(field, typed);
        turn(&mut window, section);
        assert!(window.find(Role::TextInput, field).is_none(), "{section}");
        window.ctrl(Key::Z);
        window.pause();
        assert_eq!(window.focused(), field);
    }
    let mut window = with_own_open();
    window.fill("Rated, N·m, set 2", "250");
    turn(&mut window, "Checks of this set");
    window.open_card(1);
    window.ctrl(Key::Z);
    window.pause();
    assert_eq!(window.focused(), "Rated, N·m, set 2");
}

#[test]
fn what_is_half_typed_outlives_the_fold() {
    let mut window = opened();
    window.fill("Angle drive", "steep");
    turn(&mut window, "Second driven axle");
    turn(&mut window, "Second driven axle");
    assert_eq!(window.text("Angle drive"), "steep");
}

#[test]
fn a_card_asks_for_its_own_once_somebody_looks_at_speedometers_or_something_is_known() {
    let is_there = |window: &Window| {
        let names = window.names(Role::DisclosureTriangle);
        names
            .iter()
            .any(|name| name.starts_with("Checks of this set"))
    };
    let mut window = Opening::on(without_engine()).open();
    assert!(!is_there(&window));
    window.look_at(View::Speedometer);
    assert!(is_there(&window));
    window.look_at(View::Speed);
    assert!(!is_there(&window));
    for known in [
        Edit::SpeedometerData(Box::new(SpeedometerData {
            rule: SpeedometerRule::Cfr393,
            ..SpeedometerData::default()
        })),
        Edit::LimitsData(Box::new(LimitsData {
            rear_tyres: TyresOnAxle::Four,
            ..LimitsData::default()
        })),
        Edit::SecondAxleData(Box::new(SecondAxleData {
            coupling: Some(Coupling::Viscous),
            ..SecondAxleData::default()
        })),
    ] {
        let project = known.applied_to(&without_engine()).unwrap();
        let window = Opening::on(project).open();
        assert!(is_there(&window), "{known:?}");
    }
}

#[test]
fn a_signal_of_a_set_is_the_vehicle_s_until_it_says_another() {
    let mut window = with_own_open();
    assert_eq!(
        description(&window, Role::Button, "Signal taken, set 2"),
        "as the vehicle's"
    );
    choose(&mut window, "Signal taken, set 2", "at the differential");
    assert!(heading(&window, "Checks of this set").ends_with("Checks of this set"));
    turn(&mut window, "Checks of this set");
    assert_eq!(
        heading(&window, "Checks of this set"),
        "Checks of this set: at the differential"
    );
    turn(&mut window, "Checks of this set");
    choose(&mut window, "Signal taken, set 2", "as the vehicle's");
    assert_eq!(*window.project(), without_engine());
}

#[test]
fn a_typed_rule_is_one_more_to_choose_and_empty_it_is_that_of_before() {
    let mut window = opened();
    window.fill("Own rule", "5 % + 2");
    assert_eq!(description(&window, Role::Button, "Rule"), "the typed rule");
    choose(&mut window, "Rule", "UN R39");
    assert_eq!(window.text("Own rule"), "");
    let rule = window.project().technical.speedometer.rule;
    assert_eq!(rule, SpeedometerRule::R39);
}

#[test]
fn in_miles_speeds_of_the_checks_are_typed_in_miles() {
    let mut window = opened_on(Project {
        units: SpeedUnit::Mph,
        ..without_engine()
    });
    window.fill("Top speed, mph", "100");
    let top = window.project().technical.limits.top_speed.unwrap();
    assert!((top.kmh() - 160.9344).abs() < 1e-9);
    window.fill("Own rule", "10 % + 2.5");
    let rule = window.project().technical.speedometer.rule;
    let SpeedometerRule::Typed { offset, .. } = rule else {
        panic!("{rule:?}");
    };
    assert!((offset.kmh() - 2.5 * 1.609_344).abs() < 1e-9);
    assert_eq!(window.text("Own rule"), "10 % + 2.5");
}

#[test]
fn what_plays_no_part_is_said() {
    let mut window = opened();
    window.fill("Odometer, %", "2");
    window.fill("Meter, per km", "625");
    assert!(window.says("The odometer's own error counts, not the meter constant."));
    window.fill("Angle drive", "0.6");
    assert!(window.says("Nothing is checked without its final drive."));
    window.fill("Final drive", "4.1");
    assert!(!window.says("Nothing is checked without its final drive."));
}

#[test]
fn a_second_axle_with_another_final_drive_is_a_finding_until_both_are_the_same() {
    let mut window = opened();
    window.fill("Final drive", "4.1");
    choose(&mut window, "Coupling", "viscous");
    let said = findings_of(&window, 0);
    let [of_first] = &said[..] else {
        panic!("{said:?}");
    };
    // 73:15 drives the first axle of the fitted set, so the second is 18.7 % taller.
    assert!(
        of_first.contains("the front tyres want to roll 18.7 % farther"),
        "{of_first}"
    );
    assert!(of_first.contains("do not couple them"), "{of_first}");
    window.fill("Final drive", "73:15");
    assert_eq!(findings_of(&window, 0), [""; 0]);
    assert_eq!(findings_of(&window, 1).len(), 1);
}

#[test]
fn a_set_with_a_second_axle_of_its_own_is_checked_with_that() {
    let mut window = with_own_open();
    window.fill("Final drive", "73:15");
    choose(&mut window, "Coupling", "viscous");
    assert_eq!(findings_of(&window, 1).len(), 1);
    window.fill("Second axle, set 2", "69:16");
    assert_eq!(findings_of(&window, 1), [""; 0]);
}

#[test]
fn ratings_are_held_against_engine_tyres_and_papers() {
    let mut project = camper_van();
    let rated = "215/65R16C 109/107R";
    project.tyre = layshaft::gearing::parse_tyre(rated).unwrap();
    let mut window = opened_on(project);
    window.look_at(View::Speedometer);
    turn(&mut window, "Checks of this set");
    let before = findings(&window).len();
    for (field, typed, words) in [
        ("Top speed, km/h", "180", "170 km/h"),
        ("Rear axle, kg", "2100", "rear axle"),
        ("Rated, N·m, set 2", "250", "250 N·m"),
        ("Axle shaft, N·m", "1500", "axle shaft"),
        ("Prop. shaft, rpm", "3000", "propeller shaft"),
    ] {
        window.fill(field, typed);
        let said = findings(&window);
        assert!(said.len() > before, "{field}: {said:?}");
        let is_said = said.iter().any(|said| said.contains(words));
        assert!(is_said, "{field}: {words} in {said:#?}");
        window.ctrl(Key::Z);
        window.pause();
        assert_eq!(findings(&window).len(), before, "{field}");
    }
}
