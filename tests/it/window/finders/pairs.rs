//! Are tooth pairs found, sorted, gone through and taken over in the window?

use super::{choose_at_field, command, why_not};
use crate::support::gear_sets::ratio;
use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::NodeT;
use layshaft::gearing::{Factor, Ratio, ToothPair};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Edit, SetEdit};

const PAIR: &str = "Find a tooth pair…";
const DIALOG: &str = "Find a tooth pair";

/// The dialog for the fifth gear of the second set, at a ratio of 0.62.
fn opened() -> Window {
    let mut window = Window::on_camper_van();
    command(&mut window, PAIR);
    assert_eq!(window.focused(), "Ratio");
    window.type_text("0.62");
    window
}

/// The pairs in view, as they are heard.
fn rows(window: &Window) -> Vec<String> {
    let list = window.names(Role::ListBoxOption).into_iter();
    list.filter(|name| name.contains(" driven by ")).collect()
}

/// The teeth of the pairs in view: driven and driving.
fn teeth(window: &Window) -> Vec<(u16, u16)> {
    let rows = rows(window).into_iter();
    let pairs = rows.map(|row| {
        let (driven, rest) = row.split_once(" driven by ").unwrap();
        let driving = rest.split(' ').next().unwrap();
        (driven.parse().unwrap(), driving.parse().unwrap())
    });
    pairs.collect()
}

/// The pair that is chosen, as it is told beneath the table.
fn chosen(window: &Window) -> String {
    let mut labels = window
        .nodes()
        .filter_map(|node| node.accesskit_node().value());
    labels
        .find(|text| text.contains(" driven by "))
        .unwrap_or_default()
}

/// Types where two shafts stand and how large the teeth are.
fn fix_shafts(window: &mut Window) {
    for (field, text) in [
        ("Centre distance, mm", "76"),
        ("Module, mm", "2.25"),
        ("Helix angle, °", "27"),
    ] {
        window.type_in(field, text);
    }
}

#[test]
fn the_ratio_becomes_the_pair_that_is_chosen_as_one_step() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    command(&mut window, PAIR);
    window.type_text("0.62");
    assert_eq!(teeth(&window)[..3], [(18, 29), (26, 42), (23, 37)]);
    assert!(window.is_chosen("For: gear 5"));
    let third = rows(&window)[2].clone();
    // 2345 rpm at 110 km/h with just 0.62.
    assert_eq!(
        third,
        "23 driven by 37 = 0.6216, +0.262 %, +6 rpm, hunting yes, 60 teeth"
    );
    window.click_on(Role::ListBoxOption, &third);
    assert_eq!(chosen(&window), third);
    window.click("Take over");
    assert_eq!(window.set(1).set.gears[4].ratio.to_string(), "23:37");
    window.check_step(&before);
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn between_fixed_shafts_those_that_can_be_cut_come_first_and_the_rest_by_choice() {
    let mut window = opened();
    let tick = "those that cannot, too";
    assert!(window.find(Role::CheckBox, tick).is_none());
    fix_shafts(&mut window);
    assert_eq!(teeth(&window), [(23, 37)]);
    assert!(rows(&window)[0].ends_with("x1 + x2 +0.109, can be cut: yes"));
    assert!(window.says("10 pairs, 1 of them can be cut"));
    window.click_on(Role::CheckBox, tick);
    assert!(rows(&window).len() > 5);
    assert!(
        rows(&window)[0].ends_with("can be cut: no, above 1.3"),
        "{:?}",
        rows(&window)
    );
    // The chosen one stays.
    assert!(chosen(&window).starts_with("23 driven by 37"));
}

#[test]
fn pitch_and_pressure_angle_count_and_what_does_not_read_is_told() {
    let mut window = opened();
    fix_shafts(&mut window);
    window.click("Give the size of teeth as a diametral pitch");
    window.type_in("Diametral pitch", "11.2889");
    assert!(window.says("10 pairs, 1 of them can be cut"));
    assert!(rows(&window)[0].contains("+0.109"), "{:?}", rows(&window));
    window.type_in("Pressure angle, °", "14.5");
    assert!(
        rows(&window)[0].contains("x1 + x2 +0.1"),
        "{:?}",
        rows(&window)
    );
    for (field, text, says) in [
        (
            "Pressure angle, °",
            "35",
            "a pressure angle must be between 10 and 30°, not 35",
        ),
        ("Diametral pitch", "", "type how large the teeth are"),
        ("Teeth of a gear", "45-15", "the fewest first"),
        ("Teeth together", "1", "a sum of teeth is a whole number"),
        ("Head-gear pair", "x", "\"x\" is not a ratio"),
        ("Within, %", "", "type how far off a pair may be"),
        ("Cruise at, km/h", "fast", "is not a road speed"),
        ("Ratio", "0.6.2", "is not a ratio"),
    ] {
        let before = window.text(field);
        window.type_in(field, text);
        let description = window.field(field).accesskit_node().data().description();
        let told = description.unwrap_or_default().to_owned() + &why_not(&window, "Take over");
        assert!(told.contains(says), "{field}: {told}");
        window.type_in(field, &before);
    }
    assert_eq!(why_not(&window, "Take over"), "");
}

#[test]
fn the_table_is_sorted_by_its_headings_one_way_and_the_other() {
    let mut window = opened();
    window.type_in("Within, %", "3");
    let nearest = teeth(&window);
    window.click("Sort by driven teeth");
    let rising: Vec<u16> = teeth(&window).iter().map(|(driven, _)| *driven).collect();
    assert!(rising.is_sorted(), "{rising:?}");
    window.get(Role::Button, "Sort by driven teeth").focus();
    window.settle();
    window.key(Key::Enter);
    let falling: Vec<u16> = teeth(&window).iter().map(|(driven, _)| *driven).collect();
    assert!(falling.iter().rev().is_sorted(), "{falling:?}");
    assert!(falling[0] > rising[0]);
    window.click("Sort by hunting");
    assert!(rows(&window)[0].contains("hunting yes"));
    window.click("Sort by hunting");
    assert!(!rows(&window)[0].contains("hunting yes"));
    window.click("Sort by per cent off, whichever way");
    assert_eq!(teeth(&window), nearest);
}

#[test]
fn of_thousands_of_pairs_only_those_in_view_are_made() {
    let mut window = opened();
    window.type_in("Teeth of a gear", "9-120");
    window.type_in("Within, %", "100");
    assert!(window.says(" pairs"));
    let count = window.names(Role::Label).into_iter().chain(
        window
            .nodes()
            .filter_map(|node| node.accesskit_node().value()),
    );
    let count = count.into_iter().find_map(|text| {
        let number = text.strip_suffix(" pairs")?;
        number.parse::<usize>().ok()
    });
    assert!(count.unwrap() > 5000, "{count:?}");
    assert!(
        (5..15).contains(&rows(&window).len()),
        "{:?}",
        rows(&window)
    );
    // The last is reached by one key.
    window.type_in("Ratio", "0.62");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Tooth pairs");
    window.key(Key::End);
    let last = rows(&window).pop().unwrap();
    assert_eq!(chosen(&window), last);
    window.key(Key::Home);
    assert_eq!(chosen(&window), rows(&window)[0]);
}

#[test]
fn keys_alone_go_through_the_pairs_and_take_one() {
    let mut window = opened();
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Tooth pairs");
    let all = rows(&window);
    window.key(Key::ArrowDown);
    window.key(Key::ArrowDown);
    window.key(Key::ArrowUp);
    assert_eq!(chosen(&window), all[1]);
    assert_eq!(window.focused(), "Tooth pairs");
    window.key(Key::PageDown);
    assert_ne!(chosen(&window), all[1]);
    window.key(Key::PageUp);
    assert_eq!(chosen(&window), all[1]);
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Take over");
    window.key(Key::Enter);
    assert!(window.find(Role::Dialog, DIALOG).is_none());
    assert_eq!(window.set(1).set.gears[4].ratio.to_string(), "26:42");
}

#[test]
fn behind_a_head_gear_pair_the_gear_s_own_pair_is_sought() {
    let mut project = camper_van();
    let (id, gear) = {
        let second = project.sets.iter().nth(1).unwrap();
        (second.id, second.set.gears[2].id)
    };
    let pair = |driven, driving| Factor::Teeth(ToothPair::new(driven, driving).unwrap());
    let product = Ratio::from_factors(vec![pair(38, 21), pair(25, 31)]).unwrap();
    let edit = Edit::Set(id, SetEdit::Ratio(gear, product));
    project = edit.applied_to(&project).unwrap();
    let mut window = Opening::on(project).open();
    choose_at_field(&mut window, "Ratio of gear 3, set 2", PAIR);
    assert_eq!(window.text("Ratio"), "1.4593");
    assert_eq!(window.text("Head-gear pair"), "38:21");
    assert_eq!(teeth(&window)[0], (25, 31));
    window.type_in("Ratio", "1.35");
    window.click("Take over");
    let ratio = &window.set(1).set.gears[2].ratio;
    assert!(ratio.to_string().starts_with("38:21 × "), "{ratio}");
    assert!((ratio.value() / 1.35 - 1.0).abs() < 0.01, "{ratio}");
}

#[test]
fn what_was_typed_stands_until_the_ratio_is_another_one() {
    let mut window = opened();
    window.type_in("Within, %", "2.5");
    window.key(Key::Escape);
    command(&mut window, PAIR);
    assert_eq!(window.text("Ratio"), "0.62");
    assert_eq!(window.text("Within, %"), "2.5");
    window.key(Key::Escape);
    window.fill("Ratio of gear 5, set 2", "0.7");
    command(&mut window, PAIR);
    assert_eq!(window.text("Ratio"), "0.7");
    assert_eq!(window.text("Within, %"), "2.5");
    window.click("For: final drive");
    assert_eq!(window.text("Ratio"), "4.3125");
}

#[test]
fn a_final_drive_of_gears_becomes_a_pair_and_a_chain_has_none() {
    let mut window = Window::on_camper_van();
    choose_at_field(&mut window, "Final drive, set 2", PAIR);
    window.type_in("Ratio", "3.9");
    window.type_in("Teeth of a gear", "9-45");
    window.click("Take over");
    let drive = &window.set(1).set.final_drives[0];
    assert_eq!(drive.to_string(), "39:10");
    assert!((ratio(3.9).value() - drive.value()).abs() < 1e-9);

    let motorcycle = EXAMPLES
        .iter()
        .find(|example| example.name.contains("otorcycle"));
    let mut window = Opening::on(motorcycle.unwrap().project().unwrap()).open();
    command(&mut window, PAIR);
    assert!(window.find(Role::Button, "For: final drive").is_none());
    assert!(window.find(Role::Button, "For: gear 1").is_some());
}

#[test]
fn where_nothing_comes_near_nothing_can_be_taken() {
    let mut window = opened();
    window.type_in("Teeth together", "44");
    window.type_in("Within, %", "0.01");
    assert!(window.says("no pair"));
    assert_eq!(
        why_not(&window, "Take over"),
        "Not now: no pair comes near enough"
    );
    window.key(Key::Enter);
    window.key(Key::ArrowDown);
    assert!(rows(&window).is_empty());
}

#[test]
fn in_a_small_window_the_table_comes_into_view_with_the_focus() {
    let mut window = Opening::on(camper_van()).sized(667.0, 427.0).open();
    command(&mut window, PAIR);
    window.type_text("0.62");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Tooth pairs");
    let take = window.get(Role::Button, "Take over").rect();
    let table = window.get(Role::ListBox, "Tooth pairs").rect();
    assert!(table.bottom() <= take.top(), "{table} {take}");
    assert!(table.height() > 100.0);
}

#[test]
fn a_final_drive_is_looked_for_among_pinions_and_wheels() {
    let mut window = Window::on_camper_van();
    choose_at_field(&mut window, "Final drive, set 2", PAIR);
    assert_eq!(window.text("Teeth of a gear"), "8-80");
    window.key(Key::Escape);
    command(&mut window, PAIR);
    window.type_in("Teeth of a gear", "20-30");
    window.key(Key::Escape);
    choose_at_field(&mut window, "Final drive, set 2", PAIR);
    assert_eq!(
        window.text("Teeth of a gear"),
        "20-30",
        "what was typed stands"
    );
}
