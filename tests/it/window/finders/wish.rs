//! Does what is wished come true once what was found is taken over?

use super::{choose_at_field, command, rpm_at, why_not};
use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::NodeT;
use layshaft::gearing::{FinalDrive, Sprockets, Tyre};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::{Edit, SetEdit};

const WISH: &str = "Find for a wish…";
const DIALOG: &str = "Find for a wish";

/// Chooses among buttons that stand in a row.
#[track_caller]
fn choose(window: &mut Window, row: &str, choice: &str) {
    window.click(&format!("{row}: {choice}"));
}

/// Types what can be had of final drives.
fn list(window: &mut Window, text: &str) {
    window
        .get(Role::MultilineTextInput, "Final drives that can be had")
        .focus();
    window.settle();
    window.type_over(text);
}

fn is_open(window: &Window) -> bool {
    window.find(Role::Dialog, DIALOG).is_some()
}

/// What is heard of the gears of the set.
fn rows(window: &Window) -> Vec<String> {
    let names = window.names(Role::ListItem).into_iter();
    names.filter(|name| name.starts_with("gear ")).collect()
}

#[test]
fn an_engine_speed_that_is_wished_comes_true_with_each_part_that_can_be_sought() {
    for sought in ["final drive", "ratio of gear 5", "tyre of the set"] {
        let mut window = Window::on_camper_van();
        let before = window.project().clone();
        command(&mut window, WISH);
        choose(&mut window, "Find", "final drive");
        choose(&mut window, "Find", sought);
        window.fill("Engine speed, rpm", "2400");
        window.fill("at, km/h", "120");
        window.click("Take over");
        assert!(!is_open(&window));
        let rpm = rpm_at(&window, 1, "5", 120.0);
        assert!((rpm - 2400.0).abs() < 0.5, "{sought}: {rpm}");
        assert!(window.app().message().starts_with("Taken over: "));
        window.check_step(&before);
        assert_eq!(window.undo_steps(), 1);
    }
}

#[test]
fn a_speed_at_the_redline_and_a_drop_come_true() {
    let mut window = Window::on_camper_van();
    command(&mut window, WISH);
    choose(&mut window, "Wished", "speed at the redline");
    choose(&mut window, "In gear", "4");
    window.fill("Road speed, km/h", "140");
    window.click("Take over");
    let at_redline = rpm_at(&window, 1, "4", 140.0);
    assert!((at_redline - 4500.0).abs() < 0.5, "{at_redline}");

    command(&mut window, WISH);
    choose(&mut window, "Wished", "drop at a shift");
    choose(&mut window, "At", "3 → 4");
    window.fill("Drop, rpm", "900");
    window.click("Take over");
    let results = &window.app().desk().results().sets[1];
    let drop = results.gears[2].upshift.unwrap().rpm_drop();
    assert!((drop - 900.0).abs() < 0.5, "{drop}");
}

#[test]
fn other_tyres_and_the_final_drive_that_keeps_what_is_fitted_are_one_step() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    let fitted = rpm_at(&window, 0, "5", 100.0);
    command(&mut window, WISH);
    choose(&mut window, "Wished", "as fitted, other tyres");
    assert_eq!(window.text("Other tyres"), "215/65 R 16 C");
    window.fill("Other tyres", "235/65 R 16 C");
    window.click("Take over");
    let set = &window.set(1).set;
    assert_eq!(set.tyre.unwrap().to_string(), "235/65 R 16 C");
    let rpm = rpm_at(&window, 1, "5", 100.0);
    assert!((rpm - fitted).abs() < 0.5, "{rpm} {fitted}");
    window.check_step(&before);
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn what_can_be_had_is_ranked_and_the_chosen_part_is_taken() {
    let mut window = Window::on_camper_van();
    command(&mut window, WISH);
    window.fill("Engine speed, rpm", "2400");
    window.fill("at, km/h", "120");
    list(&mut window, "4.1 3.2 37:11 3,73");
    let buttons = window.names(Role::Button);
    let ranked = buttons
        .iter()
        .filter(|name| name.contains(" rpm at 120 km/h"));
    let ranked: Vec<&str> = ranked.map(|name| name.split(',').next().unwrap()).collect();
    // 3.3929 is sought.
    assert_eq!(ranked, ["exactly as found", "37:11", "3.2", "3.73", "4.1"]);
    let line = buttons
        .iter()
        .find(|name| name.starts_with("37:11"))
        .unwrap();
    assert_eq!(line, "37:11, 2380 rpm at 120 km/h, −0.9 %");
    window.click(line);
    let fifth = rows(&window)
        .into_iter()
        .find(|row| row.starts_with("gear 5"))
        .unwrap();
    assert!(
        fifth.ends_with("overall 2.489, 2380 rpm at 120 km/h"),
        "{fifth}"
    );
    window.click("Take over");
    let drive = &window.set(1).set.final_drives[0];
    assert_eq!(drive.to_string(), "37:11");
}

#[test]
fn sprockets_that_can_be_had_are_those_of_the_chain() {
    let motorcycle = EXAMPLES
        .iter()
        .find(|example| example.name.contains("otorcycle"));
    let project = motorcycle.unwrap().project().unwrap();
    let mut window = Opening::on(project).open();
    let chain = |window: &Window| match window.set(1).set.final_drives[0] {
        FinalDrive::Chain(sprockets) => sprockets,
        FinalDrive::Gears(_) => panic!("it has a chain"),
    };
    let before: Sprockets = chain(&window);
    command(&mut window, WISH);
    window.fill("Engine speed, rpm", "4000");
    window.fill("at, km/h", "100");
    list(&mut window, "40 44; 16/45");
    window.click_lowest("Take over");
    assert!(!is_open(&window));
    // The exact value is no chain; of the list the one that was chosen is.
    window.click("Undo");
    command(&mut window, WISH);
    let buttons = window.names(Role::Button).into_iter();
    let line = buttons
        .filter(|name| name.starts_with("chain "))
        .collect::<Vec<_>>();
    assert_eq!(line.len(), 3);
    let line = line.into_iter().find(|name| name.contains("/44")).unwrap();
    window.click(&line);
    window.click("Take over");
    let after = chain(&window);
    assert_eq!((after.front(), after.rear()), (before.front(), 44));
}

#[test]
fn what_does_not_read_is_told_at_its_field_and_nothing_is_lost() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    command(&mut window, WISH);
    assert_eq!(
        why_not(&window, "Take over"),
        "Not now: the wish is not whole yet"
    );
    window.type_in("Engine speed, rpm", "24OO");
    let field = window.field("Engine speed, rpm").accesskit_node();
    let told = field.data().description().unwrap().to_owned();
    assert!(told.contains("\"24OO\" is not an engine speed"), "{told}");
    assert!(!why_not(&window, "Take over").is_empty());
    list(&mut window, "3.7 4.x 3.9");
    let list = window.get(Role::MultilineTextInput, "Final drives that can be had");
    let told = list
        .accesskit_node()
        .data()
        .description()
        .unwrap()
        .to_owned();
    assert!(told.contains("4.x"), "{told}");
    window.type_in("Engine speed, rpm", "2400");
    assert_eq!(why_not(&window, "Take over"), "");
    window.type_in("at, km/h", "0.01");
    assert!(window.says("nothing gives that: a final drive must be between"));
    window.key(Key::Escape);
    assert!(*window.project() == before);
    // What was typed stands when it is opened again.
    command(&mut window, WISH);
    assert_eq!(window.text("Engine speed, rpm"), "2400");
    assert_eq!(window.text("at, km/h"), "0.01");
    window.key(Key::Escape);
    window.ctrl(Key::U);
    command(&mut window, WISH);
    assert_eq!(window.text("Engine speed, rpm"), "2400");
    assert!(window.find(Role::TextInput, "at, mph").is_some());
}

#[test]
fn the_menu_of_a_field_asks_for_what_stands_in_it() {
    let mut window = Window::on_camper_van();
    for (field, chosen) in [
        (
            "Final drive, set 2",
            vec!["In gear: 5", "Find: final drive"],
        ),
        (
            "Ratio of gear 3, set 2",
            vec!["In gear: 3", "Find: ratio of gear 3"],
        ),
        (
            "Ratio of reverse, set 2",
            vec!["In gear: R", "Find: ratio of gear R"],
        ),
        ("Tyre", vec!["In gear: 5", "Find: tyre of the vehicle"]),
        (
            "Shift point of all gears of set 2",
            vec![
                "Wished: drop at a shift",
                "At: 4 → 5",
                "Find: ratio of gear 5",
            ],
        ),
    ] {
        choose_at_field(&mut window, field, WISH);
        for choice in chosen {
            assert!(window.is_chosen(choice), "{field}: {choice}");
        }
        window.key(Key::Escape);
        assert!(!is_open(&window));
    }
}

#[test]
fn the_vehicle_s_tyre_is_taken_over_for_all_sets() {
    let mut window = Window::on_camper_van();
    choose_at_field(&mut window, "Tyre", WISH);
    window.fill("Engine speed, rpm", "2800");
    window.fill("at, km/h", "120");
    window.click("Take over");
    assert!(matches!(
        window.project().tyre,
        Tyre::RollingCircumference(_)
    ));
    assert_eq!(window.set(1).set.tyre, None);
    let rpm = rpm_at(&window, 1, "5", 120.0);
    assert!((rpm - 2800.0).abs() < 0.5, "{rpm}");
}

#[test]
fn keys_alone_lead_from_the_field_to_the_wish_and_back() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 5, set 2");
    window.key_with(Modifiers::SHIFT, Key::F10);
    assert_eq!(window.focused(), WISH);
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Engine speed, rpm");
    window.type_text("2400");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "at, km/h");
    window.type_text("120");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Take over");
    window.key(Key::Enter);
    assert!(!is_open(&window));
    assert_eq!(window.focused(), "Ratio of gear 5, set 2");
    let rpm = rpm_at(&window, 1, "5", 120.0);
    assert!((rpm - 2400.0).abs() < 0.5, "{rpm}");
}

#[test]
fn figures_that_stay_do_not_move_the_set_away_from_the_wish() {
    let mut window = Window::on_camper_van();
    window.choose("Edit", Role::Button, "Type gears as overall ratios");
    window.fill("Ratio of gear 5, set 2", "3.2");
    command(&mut window, WISH);
    window.fill("Engine speed, rpm", "2400");
    window.fill("at, km/h", "120");
    window.click("Take over");
    let rpm = rpm_at(&window, 1, "5", 120.0);
    assert!((rpm - 2400.0).abs() < 0.5, "{rpm}");
}

#[test]
fn a_set_of_one_gear_has_no_drop_to_be_wished() {
    let mut project = camper_van();
    let id = project.sets.iter().nth(1).unwrap().id;
    let gears = project.sets.get(id).unwrap().set.gears.clone();
    for gear in gears.iter().skip(1) {
        let edit = Edit::Set(id, SetEdit::RemoveGear(gear.id));
        project = edit.applied_to(&project).unwrap();
    }
    let mut window = Opening::on(project).open();
    command(&mut window, WISH);
    choose(&mut window, "Wished", "drop at a shift");
    assert!(window.says("a set of one gear has no change up"));
    choose(&mut window, "Wished", "engine speed");
    assert_eq!(rows(&window).len(), 2);
}

#[test]
fn a_shift_point_of_the_diagram_and_a_row_of_the_table_ask_for_their_own() {
    let mut window = Window::on_camper_van();
    let at = window.handle_at("2", "3");
    window.secondary_click_at(at);
    window.click(WISH);
    assert!(window.is_chosen("At: 2 → 3"));
    window.key(Key::Escape);
    window.focus_handle("3", "4");
    window.key_with(Modifiers::SHIFT, Key::F10);
    assert_eq!(window.focused(), WISH);
    window.key(Key::Enter);
    assert!(window.is_chosen("At: 3 → 4"));
    assert_eq!(window.focused(), "Drop, rpm");
    window.type_text("800");
    window.key(Key::Enter);
    window.key(Key::Enter);
    let results = &window.app().desk().results().sets[1];
    let drop = results.gears[2].upshift.unwrap().rpm_drop();
    assert!((drop - 800.0).abs() < 0.5, "{drop}");
    assert_eq!(window.undo_steps(), 1);

    let row = window.names(Role::Row).into_iter();
    let row = row.filter(|row| row.contains("gear 4")).nth(1).unwrap();
    let at = window.shown(Role::Row, &row).left_center();
    window.secondary_click_at(at + egui::vec2(20.0, 0.0));
    window.click(WISH);
    assert!(window.is_chosen("In gear: 4"));
    assert!(window.is_chosen("Find: ratio of gear 4"));
}

#[test]
fn the_menu_at_the_end_of_a_row_finds_as_well() {
    let mut window = Window::on_camper_van();
    window.choose("Gear 3 menu, set 2", Role::Button, WISH);
    assert!(window.is_chosen("In gear: 3"));
    window.key(Key::Escape);
    window.choose("Final drive 1 menu, set 2", Role::Button, WISH);
    assert!(window.is_chosen("Find: final drive"));
}

#[test]
fn from_a_ratio_that_was_found_the_way_goes_on_to_its_teeth() {
    let mut window = Window::on_camper_van();
    choose_at_field(&mut window, "Ratio of gear 5, set 2", WISH);
    window.fill("Engine speed, rpm", "2400");
    window.fill("at, km/h", "120");
    window.click("Teeth for it…");
    assert!(!is_open(&window));
    assert_eq!(window.focused(), "Ratio");
    assert_eq!(window.text("Ratio"), "0.5822");
    assert_eq!(window.text("Cruise at, km/h"), "120");
    assert!(window.is_chosen("For: gear 5"));
    window.click("Take over");
    let rpm = rpm_at(&window, 1, "5", 120.0);
    assert!((rpm - 2400.0).abs() < 24.0, "{rpm}");
    assert_eq!(window.undo_steps(), 1);
    // What was wished stands.
    command(&mut window, WISH);
    assert_eq!(window.text("Engine speed, rpm"), "2400");
    window.click("Find: tyre of the set");
    assert!(window.find(Role::Button, "Teeth for it…").is_none());
}
