//! Does every field read what people write, and keep what was there where it cannot?
#![expect(clippy::float_cmp, reason = "a number comes back as it was typed")]

use crate::support::window::{Opening, Window, camper_van, press};
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers};
use layshaft::chart;
use layshaft::gearing::EngineSpeed;
use layshaft::project::Project;
use std::collections::BTreeSet;

/// What a text in a field comes to in the document, told in the field itself once it is left.
struct Good {
    field: &'static str,
    typed: &'static str,
    shown: &'static str,
}

const fn good(field: &'static str, typed: &'static str, shown: &'static str) -> Good {
    Good {
        field,
        typed,
        shown,
    }
}

const GOOD: &[Good] = &[
    good("Title", "  Van, long road ", "Van, long road"),
    good("Title", "", ""),
    good("Tyre", "195/65 R 15", "195/65 R 15"),
    good("Tyre", "195/65r15", "195/65 R 15"),
    good("Tyre", "P195/65 R15 91T", "P195/65 R 15 91T"),
    good("Tyre", "31x10.50 R 15 LT", "31x10.50 R 15 LT"),
    good("Tyre", "130/90 - 16", "130/90 - 16"),
    good("Tyre", "circumference 1,935 m", "circumference 1935 mm"),
    good("Tyre", "diameter 632 mm", "diameter 632 mm"),
    good("Tyre", "520 revs per km", "520 revs per km"),
    good("Tyre", "682 revs/mile", "682 revs per mile"),
    good("Redline, rpm", "5200", "5200"),
    good("Redline, rpm", "5200 rpm", "5200"),
    good("Redline, rpm", "5200,5", "5200.5"),
    good("Redline, rpm", "6,500", "6500"),
    good("Redline, rpm", "4.800", "4800"),
    good("Redline, rpm", "4 600 1/min", "4600"),
    good("Lowest useful", "1200 1/min", "1200"),
    good("Lowest useful", "", ""),
    good("Idle", "750", "750"),
    good("Idle", "  ", ""),
    good("Mark, km/h", "110", "110"),
    good("Mark, km/h", "130, 50, 90 km/h", "50, 90, 130"),
    good("Mark, km/h", "90;110 90", "90, 110"),
    good("Mark, km/h", "50,100", "50, 100"),
    good("Mark, km/h", "90,5", "90.5"),
    good("Mark, km/h", "90,5 110", "90.5, 110"),
    good("Mark, km/h", "70 mph", "112.7"),
    good("Mark, km/h", "30 50 mph 100 km/h", "48.3, 80.5, 100"),
    good("Mark, km/h", "", ""),
    good("Mark, rpm", "3000 2000 2500 rpm", "2000, 2500, 3000"),
    good("Mark, rpm", "2,500 3 000", "2500, 3000"),
    good("Mark, rpm", "", ""),
    good("Name of set 1", "Five-speed, worn", "Five-speed, worn"),
    good("Label of gear 5, set 1", "OD", "OD"),
    good("Ratio of gear 1, set 1", "3,9", "3.9"),
    good("Ratio of gear 1, set 1", "3.9:1", "3.9"),
    good("Ratio of gear 1, set 1", "1:3,9", "3.9"),
    good("Ratio of gear 1, set 1", "34:9", "34:9"),
    good("Ratio of gear 1, set 1", "34/9", "34:9"),
    good("Ratio of gear 1, set 1", "34x9", "34:9"),
    good("Ratio of gear 1, set 1", "9:34", "34:9"),
    good("Ratio of gear 5, set 1", "25:34", "25:34"),
    good("Ratio of gear 1, set 1", "44/29 * 33 / 13", "44:29 × 33:13"),
    good("Ratio of reverse, set 1", "−3,5", "3.5"),
    good("Ratio of reverse, set 1", "-11:36", "36:11"),
    good("Final drive, set 1", "4,06", "4.06"),
    good("Final drive, set 1", "8x33", "33:8"),
    good("Final drive, set 1", "33:8", "33:8"),
    good("Shift point of all gears of set 1", "4000", "4000"),
    good("Shift point of all gears of set 1", "3950.5 rpm", "3950.5"),
];

#[test]
fn every_field_reads_what_people_write_and_enter_makes_it_one_step() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    for case in GOOD {
        let what = format!("{} {}", case.field, case.typed);
        window.fill(case.field, case.typed);
        assert_eq!(shown(&mut window, case), case.shown, "{what}");
        assert_eq!(window.undo_steps(), 1, "{what}");
        window.check_step(&before);
        window.click("Undo");
    }
}

/// What stands in the field of a case; a label names its own field.
fn shown(window: &mut Window, case: &Good) -> String {
    let name = match case.field.strip_prefix("Label of gear ") {
        Some(rest) => {
            let (_, set) = rest.split_once(", ").unwrap();
            format!("Label of gear {}, {set}", case.shown)
        }
        None => case.field.to_owned(),
    };
    window.text(&name)
}

struct Bad {
    field: &'static str,
    typed: &'static str,
    says: &'static str,
}

const fn bad(field: &'static str, typed: &'static str, says: &'static str) -> Bad {
    Bad { field, typed, says }
}

const BAD: &[Bad] = &[
    bad("Tyre", "195", "does not say what was measured"),
    bad("Tyre", "185 R 14 C", "has no aspect ratio"),
    bad("Tyre", "", "there is no tyre yet"),
    bad("Tyre", "65/195 R 15", "look swapped"),
    bad("Redline, rpm", "", "there is no number yet"),
    bad(
        "Redline, rpm",
        "fast",
        "\"fast\" is not a redline such as 4500",
    ),
    bad("Redline, rpm", "4.5000.0", "more than one decimal mark"),
    bad("Redline, rpm", "0", "between 1 and 30000 rpm"),
    bad("Redline, rpm", "6.5", "at least 200 rpm, not 6.5"),
    bad("Redline, rpm", "30001", "between 1 and 30000 rpm"),
    bad("Lowest useful", "-5", "is not an engine speed such as 1500"),
    bad("Idle", "1e3", "is not an idle speed such as 800"),
    bad("Mark, km/h", "0", "between 0.001 and 1000 km/h"),
    bad(
        "Mark, km/h",
        "90, fast",
        "\"fast\" is not a road speed such as 110",
    ),
    bad("Mark, km/h", "1 2 3 4 5 6 7 8 9", "at most 8 speeds"),
    bad("Mark, rpm", "90000", "between 1 and 30000 rpm"),
    bad("Name of set 1", "", "must not be empty"),
    bad(
        "Label of gear 5, set 1",
        "4",
        "there is a gear \"4\" already",
    ),
    bad(
        "Label of gear 5, set 1",
        "R",
        "there is a gear \"R\" already",
    ),
    bad("Label of gear 5, set 1", "", "must not be empty"),
    bad(
        "Ratio of gear 1, set 1",
        "three",
        "\"three\" is not a ratio",
    ),
    bad("Ratio of gear 1, set 1", "0", "between 0.001"),
    bad("Ratio of gear 1, set 1", "401", "and 400, not 401"),
    bad(
        "Ratio of gear 1, set 1",
        "34.5:9",
        "teeth are whole numbers",
    ),
    bad("Ratio of gear 1, set 1", "3..7", "is not a ratio"),
    bad("Ratio of reverse, set 1", "R", "is not a ratio"),
    bad("Final drive, set 1", "", "type a ratio such as"),
    bad("Final drive, set 1", "1000:9", "not 1000"),
    bad(
        "Shift point of all gears of set 1",
        "soon",
        "is not a shift point such as 3600",
    ),
];

#[test]
fn what_does_not_read_says_why_stays_in_its_field_and_changes_nothing() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    for case in BAD {
        let text_before = window.text(case.field);
        window.type_in(case.field, case.typed);
        let what = format!("{} {}", case.field, case.typed);
        window.pause();
        assert!(window.says(case.says), "{what} says nothing");
        assert!(*window.project() == before, "{what}");

        window.key(Key::Tab);
        assert_ne!(window.focused(), case.field, "{what}");
        assert!(window.says(case.says), "{what}");
        assert_eq!(window.text(case.field), case.typed);
        assert!(*window.project() == before, "{what}");
        assert_eq!(window.undo_steps(), 0, "{what}");

        window.enter_field(case.field);
        window.key(Key::Escape);
        assert_eq!(window.text(case.field), text_before);
        assert!(!window.says(case.says), "{what}");
        assert!(*window.project() == before, "{what}");
        assert!(!window.is_in_gesture());
    }
}

#[test]
fn half_a_text_is_no_mistake_until_somebody_pauses_or_leaves() {
    let mut window = Window::on_camper_van();
    window.type_in("Tyre", "195/65");
    assert!(!window.says("has no rim"));
    window.type_text(" R 15");
    window.pause();
    assert!(!window.says("tyre size"));
    window.type_in("Redline, rpm", "fast");
    window.key(Key::Enter);
    assert!(window.says("\"fast\" is not a redline"));
}

#[test]
fn the_window_sleeps_again_once_it_has_said_what_does_not_read() {
    let mut window = Window::on_camper_van();
    window.type_in("Tyre", "195/65");
    assert!(!window.is_asleep());
    window.pause();
    assert!(window.says("has no rim") && window.is_asleep());
}

#[test]
fn a_title_of_too_many_characters_is_refused() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window.enter_field("Title");
    window.ctrl(Key::A);
    window.event(Event::Paste("x".repeat(300)));
    window.settle();
    window.pause();
    assert!(window.says("characters"));
    assert!(*window.project() == before);
}

#[test]
fn date_and_note_are_typed_behind_their_heading() {
    let mut window = Window::on_camper_van();
    let start = window.project().clone();
    window.click_on(Role::DisclosureTriangle, "Date and note");
    window.fill("Date", "May 2027");
    assert_eq!(window.project().date.as_ref().unwrap().as_str(), "May 2027");
    window.check_step(&start);

    let dated = window.project().clone();
    window.click_on(Role::MultilineTextInput, "Note");
    window.type_text("Measured cold. ");
    window.key(Key::Enter);
    window.type_text("Two up.");
    assert_eq!(window.project().note.as_str(), "Measured cold. \nTwo up.");
    window.key(Key::Escape);
    window.click("Bring set 1 forward");
    window.check_step(&dated);
    assert_eq!(window.undo_steps(), 2);
}

#[test]
fn a_note_keeps_the_blanks_that_are_being_typed() {
    let mut window = Window::on_camper_van();
    window.click_on(Role::DisclosureTriangle, "Date and note");
    window.click_on(Role::MultilineTextInput, "Note");
    window.type_text("one ");
    window.type_text("two");
    assert_eq!(window.project().note.as_str(), "one two");
}

#[test]
fn what_is_typed_shows_at_once_and_is_no_step_yet() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    let top_before = top_speed(&window);
    window.type_in("Ratio of gear 5, set 1", "0.6");
    assert_eq!(window.ratios(0)[4], 0.6);
    assert!(window.is_in_gesture());
    assert!(top_speed(&window) > top_before * 1.2);
    window.type_text("8");
    assert_eq!(window.ratios(0)[4], 0.68);
    window.key(Key::Escape);
    assert!(*window.project() == before);
    assert_eq!(window.undo_steps(), 0);
    assert!(!window.is_in_gesture());
    assert_eq!(window.text("Ratio of gear 5, set 1"), "0.74");
}

/// The highest road speed of the first set in the diagram.
fn top_speed(window: &Window) -> f64 {
    let scene = window.app().diagram();
    let fan = scene.lines_of(chart::Role::Fan);
    let of_first = fan.filter(|line| line.of.set == scene.sets[0].id);
    of_first.map(|line| line.points[1][0]).fold(0.0, f64::max)
}

#[test]
fn what_stops_reading_takes_its_preview_back() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window.type_in("Redline, rpm", "4O00");
    assert!(*window.project() == before, "not 4 rpm");
    window.key(Key::Tab);
    assert!(*window.project() == before);
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn enter_goes_down_the_column_and_shift_of_focus_selects_what_stands_there() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 1, set 1");
    for text in ["3.5", "2.0", "1.3", "0.95", "0.7", "3.3"] {
        window.type_text(text);
        window.key(Key::Enter);
    }
    assert_eq!(window.ratios(0), [3.5, 2.0, 1.3, 0.95, 0.7]);
    let reverse = window.set(0).set.reverse.as_ref().unwrap();
    assert_eq!(reverse.ratio.value(), 3.3);
    assert_eq!(window.undo_steps(), 6);
    assert_eq!(window.focused(), "Final drive, set 1");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Shift point of all gears of set 1");
    assert_eq!(window.undo_steps(), 6, "walking changes nothing");
}

#[test]
fn enter_goes_down_the_vehicle_too() {
    let mut window = Window::on_camper_van();
    window.enter_field("Title");
    let mut column = vec![window.focused()];
    for _ in 0..6 {
        window.key(Key::Enter);
        column.push(window.focused());
    }
    let wanted = [
        "Title",
        "Tyre",
        "Redline, rpm",
        "Lowest useful",
        "Idle",
        "Mark, km/h",
        "Mark, rpm",
    ];
    assert_eq!(column, wanted);
    assert_eq!(window.undo_steps(), 0, "walking changes nothing");
}

#[test]
fn arrows_move_through_the_column_and_take_what_was_typed() {
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 2, set 1", "2.1");
    window.key(Key::ArrowDown);
    assert_eq!(window.focused(), "Ratio of gear 3, set 1");
    window.type_text("1.4");
    window.key(Key::ArrowUp);
    assert_eq!(window.focused(), "Ratio of gear 2, set 1");
    window.key(Key::ArrowUp);
    assert_eq!(window.focused(), "Ratio of gear 1, set 1");
    assert_eq!(window.ratios(0)[..3], [3.72, 2.1, 1.4]);
    assert_eq!(window.undo_steps(), 2);
    assert!(!window.is_in_gesture());
}

#[test]
fn the_columns_of_two_sets_are_two_columns() {
    let mut window = Window::on_camper_van();
    window.enter_field("Label of gear 5, set 1");
    window.key(Key::ArrowDown);
    assert_ne!(window.focused(), "Label of gear 1, set 2");
}

#[test]
fn left_and_right_stay_within_the_text() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 1, set 1");
    window.key(Key::End);
    window.key(Key::ArrowLeft);
    window.key(Key::Backspace);
    window.type_text("5");
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.52");
    assert_eq!(window.focused(), "Ratio of gear 1, set 1");
}

#[test]
fn tab_takes_what_was_typed_and_goes_down_the_column() {
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 1, set 1", "3.5");
    window.key(Key::Tab);
    assert_eq!(window.focused(), "Ratio of gear 2, set 1");
    assert_eq!(window.ratios(0)[0], 3.5);
    assert_eq!(window.undo_steps(), 1);
    window.key_with(Modifiers::SHIFT, Key::Tab);
    assert_eq!(window.focused(), "Ratio of gear 1, set 1");
}

#[test]
fn clicking_elsewhere_takes_what_was_typed() {
    for elsewhere in ["Ratio of gear 4, set 2", "Redline, rpm"] {
        let mut window = Window::on_camper_van();
        window.type_in("Ratio of gear 1, set 1", "3.5");
        window.enter_field(elsewhere);
        assert_eq!(window.ratios(0)[0], 3.5);
        assert_eq!(window.undo_steps(), 1);
        assert!(!window.is_in_gesture());
    }
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 1, set 1", "3.5");
    let diagram = window.nodes().find(|n| role(n) == Role::Figure).unwrap();
    let at = diagram.rect().center();
    window.click_at(at);
    assert_eq!(window.undo_steps(), 1);
    assert!(!window.is_in_gesture());
}

fn role(node: &egui_kittest::Node<'_>) -> Role {
    use egui_kittest::kittest::NodeT;
    node.accesskit_node().role()
}

#[test]
fn typing_back_what_was_there_leaves_no_step() {
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 1, set 1", "3.5");
    window.key(Key::Backspace);
    window.type_text("72");
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.72");
    window.key(Key::Enter);
    assert_eq!(window.undo_steps(), 0);
    assert!(!window.is_in_gesture());
}

#[test]
fn typing_then_ctrl_s_saves_what_was_typed() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("van.ron");
    let mut window = Opening::on(camper_van()).in_real_file(&path).open();
    window.type_in("Redline, rpm", "5000");
    window.ctrl(Key::S);
    assert!(window.app().message().contains("Saved in"));
    assert_eq!(saved(&path).engine.redline, rpm(5000.0));
    assert!(!window.app().desk().history.is_unsaved());
    assert_eq!(window.focused(), "Redline, rpm");
    window.key(Key::Backspace);
    assert_eq!(
        window.project().engine.redline,
        rpm(500.0),
        "typing goes on"
    );
}

fn saved(path: &std::path::Path) -> Project {
    layshaft::project::format::read(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn rpm(rpm: f64) -> EngineSpeed {
    EngineSpeed::from_rpm(rpm).unwrap()
}

#[test]
fn saving_with_an_unreadable_field_saves_the_rest_and_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("van.ron");
    let mut window = Opening::on(camper_van()).in_real_file(&path).open();
    window.fill("Idle", "700");
    window.type_in("Redline, rpm", "fast");
    window.ctrl(Key::S);
    let said = "Saved, but without what does not read in \"Redline, rpm\": ";
    assert!(window.app().message().starts_with(said));
    assert_eq!(saved(&path), *window.project());
    assert_eq!(saved(&path).engine.redline, rpm(4500.0));
    assert_eq!(window.text("Redline, rpm"), "fast");
}

#[test]
fn a_dialog_takes_the_keys_from_the_field() {
    let mut window = Window::on_camper_van();
    window.type_in("Redline, rpm", "5000");
    window.ctrl(Key::S);
    assert!(window.says("Save the project"));
    assert_eq!(window.focused(), "Path");
    let typed = window.project().clone();
    window.type_text("x");
    window.key(Key::Escape);
    assert!(!window.says("Save the project"));
    assert!(*window.project() == typed);
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn undo_takes_back_what_is_being_typed() {
    let start = camper_van();
    // By button: the whole typing; by key: the field's own undo, as in any text field.
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 1, set 1", "3.5");
    window.click("Undo");
    assert!(*window.project() == start);
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.72");
    window.click("Redo");
    assert_eq!(window.ratios(0)[0], 3.5);

    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 1, set 1", "3.5");
    for _ in 0..5 {
        window.ctrl(Key::Z);
    }
    assert!(*window.project() == start);
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.72");
    assert_eq!(window.undo_steps(), 0);
    assert!(!window.is_in_gesture());
}

#[test]
fn in_a_field_where_nothing_is_typed_ctrl_z_takes_the_last_step_back() {
    let mut window = Window::on_camper_van();
    window.fill("Ratio of gear 1, set 1", "3.5");
    assert_eq!(window.focused(), "Ratio of gear 2, set 1");
    window.ctrl(Key::Z);
    assert_eq!(window.ratios(0)[0], 3.72);
    window.ctrl_shift(Key::Z);
    assert_eq!(window.ratios(0)[0], 3.5);
}

#[test]
fn the_fields_own_undo_never_goes_back_beyond_its_typing() {
    let mut window = Window::on_camper_van();
    window.fill("Ratio of gear 1, set 1", "3.5");
    window.click("Undo");
    window.type_in("Ratio of gear 1, set 1", "3.6");
    for _ in 0..5 {
        window.ctrl(Key::Z);
    }
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.72");
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn an_unreadable_field_outlives_undoing_something_else() {
    let mut window = Window::on_camper_van();
    window.type_in("Redline, rpm", "fast");
    window.fill("Idle", "700");
    window.click("Undo");
    assert!(*window.project() == camper_van());
    assert_eq!(window.text("Redline, rpm"), "fast");
    assert!(window.says("\"fast\" is not a redline"));
    window.enter_field("Redline, rpm");
    window.key(Key::Escape);
    assert_eq!(window.text("Redline, rpm"), "4500");
}

#[test]
fn undoing_a_field_that_does_not_read_shows_what_came_back() {
    let mut window = Window::on_camper_van();
    window.fill("Redline, rpm", "5000");
    window.type_in("Redline, rpm", "fast");
    window.click("Undo");
    assert_eq!(window.text("Redline, rpm"), "5000");
    window.click("Undo");
    assert_eq!(window.text("Redline, rpm"), "4500");
    assert!(!window.says("is not a number"));
}

#[test]
fn another_document_begins_without_drafts() {
    let mut window = Window::on_camper_van();
    window.type_in("Redline, rpm", "fast");
    window.ctrl(Key::N);
    window.click("Leave without it");
    assert!(!window.says("fast"));
    assert_ne!(window.text("Redline, rpm"), "fast");

    let mut window = Window::on_camper_van();
    window.type_in("Redline, rpm", "5000");
    window.ctrl(Key::N);
    window.click("Do not save");
    assert_ne!(window.project().engine.redline, rpm(5000.0));
    assert_eq!(window.undo_steps(), 0);
    assert!(!window.is_in_gesture());
}

#[test]
fn removing_a_set_forgets_what_was_typed_in_it() {
    for text in ["9.99", "three"] {
        let mut window = Window::on_camper_van();
        window.type_in("Ratio of gear 1, set 3", text);
        window.choose("Set 3 menu", Role::Button, "Remove set");
        assert_eq!(window.project().sets.len(), 2);
        assert!(!window.says("is not a ratio"));
        // The copy gets the number of the set that went.
        window.choose("Set 2 menu", Role::Button, "Duplicate set");
        assert_eq!(window.project().sets.len(), 3);
        assert_eq!(window.text("Ratio of gear 1, set 3"), "3.72");
        assert!(!window.says("is not a ratio"), "{text}");
    }
}

#[test]
fn removing_a_part_forgets_what_does_not_read_in_the_parts_behind_it() {
    let mut window = Window::on_camper_van();
    for _ in 0..2 {
        window.choose("Final drive 1 menu, set 1", Role::Button, "Add final drive");
    }
    window.fill("Final drive 3, set 1", "5.1");
    window.type_in("Final drive 2, set 1", "low");
    window.choose(
        "Final drive 2 menu, set 1",
        Role::Button,
        "Remove final drive",
    );
    assert_eq!(window.text("Final drive 2, set 1"), "5.1");
    assert!(!window.says("\"low\""));
}

#[test]
fn fast_typing_in_slow_frames_goes_where_it_belongs() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 1, set 1");
    let mut events = Vec::new();
    for text in ["3.545", "1.904", "1.31"] {
        let characters = text.chars().map(|c| Event::Text(c.to_string()));
        events.extend(characters);
        events.push(press(Modifiers::NONE, Key::Enter));
    }
    window.frame(events);
    window.settle();
    assert_eq!(window.ratios(0), [3.545, 1.904, 1.31, 0.93, 0.74]);
    assert_eq!(window.undo_steps(), 3);
    assert_eq!(window.focused(), "Ratio of gear 4, set 1");
}

#[test]
fn ctrl_s_in_the_frame_of_the_last_character_saves_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("van.ron");
    let mut window = Opening::on(camper_van()).in_real_file(&path).open();
    window.enter_field("Redline, rpm");
    let typed = ["5", "0", "0", "0"].map(|c| Event::Text(c.to_owned()));
    let mut events = typed.to_vec();
    events.push(press(Modifiers::COMMAND, Key::S));
    window.frame(events);
    window.settle();
    assert_eq!(saved(&path).engine.redline, rpm(5000.0));
}

#[test]
fn a_double_click_takes_the_whole_figure() {
    let mut window = Window::on_camper_van();
    let at = window
        .shown(Role::TextInput, "Ratio of gear 1, set 1")
        .center();
    window.click_twice_at(at);
    window.type_text("3.5");
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.5");
}

#[test]
fn a_second_click_places_the_cursor() {
    let mut window = Window::on_camper_van();
    let rect = window.shown(Role::TextInput, "Ratio of gear 1, set 1");
    for _ in 0..2 {
        window.click_at(rect.right_center() - egui::vec2(4.0, 0.0));
    }
    window.type_text("5");
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.725");
}

#[test]
fn a_screen_reader_sets_a_field_in_one_step() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window
        .field("Redline, rpm")
        .set_text_value_accesskit("5000");
    window.harness.step();
    window.settle();
    assert_eq!(window.project().engine.redline, rpm(5000.0));
    assert!(!window.is_in_gesture());
    window.check_step(&before);
}

#[test]
fn idle_frames_change_nothing_while_a_field_is_open() {
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 1, set 1", "3.5");
    let revision = window.app().desk().history.revision();
    for _ in 0..20 {
        window.harness.step();
    }
    assert_eq!(window.app().desk().history.revision(), revision);
    assert_eq!(window.text("Ratio of gear 1, set 1"), "3.5");
}

#[test]
fn no_two_fields_or_buttons_of_the_forms_have_the_same_name() {
    let window = Window::on_camper_van();
    for role in [
        Role::TextInput,
        Role::Button,
        Role::CheckBox,
        Role::RadioButton,
    ] {
        let names = window.names(role);
        let different: BTreeSet<&String> = names.iter().collect();
        assert_eq!(different.len(), names.len(), "{names:#?}");
    }
}

#[test]
fn a_list_that_is_typed_says_how_it_was_read() {
    let mut window = Window::on_camper_van();
    for (text, says) in [
        ("50,100", "read as 50 and 100"),
        ("90,5", "read as 90.5"),
        ("90,5 110", "read as 90.5 and 110"),
        ("60 mph", ""),
    ] {
        window.type_in("Mark, km/h", text);
        if says.is_empty() {
            assert!(!window.says("read as"), "{text}");
        } else {
            assert!(window.says(says), "{text}");
        }
        window.key(Key::Escape);
    }
    window.type_in("Mark, rpm", "2,500");
    assert!(window.says("read as 2500"));
}

#[test]
fn marks_keep_their_figure_through_other_units() {
    let mut window = Window::on_camper_van();
    window.fill("Mark, km/h", "90 110");
    let before = window.project().marked_road_speeds.clone();
    window.click("mph");
    assert_eq!(window.text("Mark, mph"), "55.9, 68.4");
    window.type_in("Mark, mph", "55.9, 68.4, 30");
    window.key(Key::Enter);
    window.click("km/h");
    assert_eq!(window.text("Mark, km/h"), "48.3, 90, 110");
    let kept = window.project().marked_road_speeds.as_slice()[1..].to_vec();
    assert_eq!(kept, before.as_slice());
}

#[test]
fn what_does_not_read_survives_a_switch_of_units() {
    let mut window = Window::on_camper_van();
    window.type_in("Mark, km/h", "90, fast");
    window.click("mph");
    assert_eq!(window.text("Mark, mph"), "90, fast");
    window.ctrl(Key::U);
    assert_eq!(window.text("Mark, km/h"), "90, fast");
    window.type_in("Mark, km/h", "90");
    window.key(Key::Enter);
    assert_eq!(window.text("Mark, km/h"), "90");
}
