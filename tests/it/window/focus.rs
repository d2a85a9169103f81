//! Does the focus reach everything by key, come where it is expected, and never fall to nothing?

use super::SECOND;
use crate::support::window::{Opening, Window, camper_van, press, three_ten_speeds};
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::kittest::NodeT;
use layshaft::chart::GearOfSet;
use layshaft::project::{Project, View};

const SIZES: [[f32; 2]; 4] = [
    [667.0, 427.0],
    [1000.0, 640.0],
    [1280.0, 800.0],
    [2560.0, 1440.0],
];

/// The parts that a small window shows one at a time.
const PARTS: [&str; 3] = ["Vehicle and sets", "Diagram", "Table"];

/// Opens a project in a size and does something with each part of the window that can be looked at.
fn for_every_part(project: &Project, size: [f32; 2], look: impl Fn(&mut Window, &str)) {
    let [width, height] = size;
    let mut window = Opening::on(project.clone()).sized(width, height).open();
    let is_small = window.find(Role::Button, PARTS[0]).is_some();
    for part in &PARTS[..if is_small { PARTS.len() } else { 1 }] {
        if is_small {
            window.click(part);
        }
        look(&mut window, &format!("{part} at {width}"));
        assert_eq!(window.undo_steps(), 0, "{part}: walking changes nothing");
    }
}

#[test]
fn every_stop_of_tab_is_named_and_in_view_in_every_size() {
    for size in SIZES {
        for_every_part(&three_ten_speeds(), size, |window, what| {
            let stops = window.tab_stops(what);
            assert!(stops.len() < 70, "{what}: {} stops", stops.len());
        });
    }
}

#[test]
fn whatever_can_have_the_focus_is_reached_by_tab_and_arrows() {
    for size in [SIZES[0], SIZES[2]] {
        for_every_part(&camper_van(), size, |window, what| {
            let reached = window.reached(what);
            let missed: Vec<u64> = window.focusable().difference(&reached).copied().collect();
            assert!(missed.is_empty(), "{what}: {}", window.told(&missed));
        });
    }
}

#[test]
fn in_every_view_too_all_is_reached_named_and_in_view() {
    for view in View::ALL {
        for size in [SIZES[0], SIZES[1]] {
            let [width, height] = size;
            let mut window = Opening::on(camper_van()).sized(width, height).open();
            let what = format!("{} at {width}", view.name());
            if view == View::Speed || !window.look_at(view) {
                continue;
            }
            let stops = window.tab_stops(&what);
            assert!(stops.len() < 80, "{what}: {} stops", stops.len());
            if view == View::Effort {
                // Left and Right move its shift points, which get fields of their own then.
                continue;
            }
            let reached = window.reached(&what);
            let missed: Vec<u64> = window.focusable().difference(&reached).copied().collect();
            assert!(missed.is_empty(), "{what}: {}", window.told(&missed));
            assert_eq!(window.undo_steps(), 0, "{what}: walking changes nothing");
        }
    }
}

#[test]
fn on_the_diagram_of_effort_down_and_up_go_from_shift_point_to_shift_point() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::Num2);
    window.focus_handle("1", "2");
    window.key(Key::ArrowDown);
    assert!(window.handle("2", "3").is_focused(), "{}", window.focused());
    window.key(Key::ArrowDown);
    assert!(window.handle("3", "4").is_focused());
    window.key(Key::ArrowUp);
    assert!(window.handle("2", "3").is_focused());
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn f6_goes_from_part_to_part_and_back_and_remembers_where_it_was() {
    let mut window = Window::on_camper_van();
    let handle = window.handle("1", "2").accesskit_node().label().unwrap();
    let mut parts = Vec::new();
    for _ in 0..5 {
        window.key(Key::F6);
        parts.push(window.focused());
    }
    assert_eq!(parts[0], "Vehicle");
    assert!(parts[1].starts_with("Open set 1, "), "{parts:?}");
    assert_eq!(parts[2], handle);
    assert_eq!(parts[3], "One under another");
    assert_eq!(parts[4], "File");

    window.enter_field("Ratio of gear 3, set 2");
    window.key(Key::F6);
    assert_eq!(window.focused(), handle);
    window.key_with(Modifiers::SHIFT, Key::F6);
    assert_eq!(window.focused(), "Ratio of gear 3, set 2");
}

#[test]
fn a_shift_point_is_reached_from_the_start_with_six_keys_at_most() {
    let mut window = Window::on_camper_van();
    let keys = [Key::F6, Key::F6, Key::F6];
    for key in keys {
        window.key(key);
    }
    assert!(window.handle("1", "2").is_focused());
    assert!(keys.len() <= 6);
    window.key(Key::ArrowRight);
    assert!(window.handle("2", "3").is_focused());
    window.key(Key::ArrowUp);
    assert_eq!(window.shifts(SECOND)[1], 3610);
    window.key(Key::ArrowLeft);
    assert!(window.handle("1", "2").is_focused());
}

/// What Tab goes through.
fn tabbed(window: &mut Window, times: usize) -> Vec<String> {
    let mut names = Vec::new();
    for _ in 0..times {
        window.key(Key::Tab);
        names.push(window.focused());
    }
    names
}

#[test]
fn tab_goes_down_the_ratios_to_final_drive_and_shift_point() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 4, set 2");
    let column = tabbed(&mut window, 4);
    let wanted = [
        "Ratio of gear 5, set 2",
        "Ratio of reverse, set 2",
        "Final drive, set 2",
        "Shift point of all gears of set 2",
    ];
    assert_eq!(column, wanted);
    for name in wanted.iter().rev().skip(1) {
        window.key_with(Modifiers::SHIFT, Key::Tab);
        assert_eq!(window.focused(), *name);
    }
}

#[test]
fn tab_goes_down_the_column_of_shift_points_too() {
    let mut window = Window::on_camper_van();
    window.click_on(Role::CheckBox, "one for each change, set 2");
    window.enter_field("Shift point of gear 1, set 2");
    let column = tabbed(&mut window, 4);
    let wanted = [
        "Shift point of gear 2, set 2",
        "Shift point of gear 3, set 2",
        "Shift point of gear 4, set 2",
        "Final drive, set 2",
    ];
    assert_eq!(column, wanted);
}

#[test]
fn labels_and_row_menus_are_reached_by_left_and_right() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 2, set 2");
    window.key(Key::ArrowLeft);
    assert_eq!(window.focused(), "Label of gear 2, set 2");
    window.key(Key::ArrowRight);
    window.key(Key::ArrowRight);
    assert_eq!(window.focused(), "Gear 2 menu, set 2");
    window.key(Key::ArrowRight);
    assert_eq!(window.focused(), "Gear 2 menu, set 2", "the row ends here");
}

#[test]
fn enter_in_the_last_field_of_the_vehicle_goes_to_the_card_and_from_there_to_the_diagram() {
    let mut window = Window::on_camper_van();
    window.enter_field("Mark, rpm");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Name of set 2");
    window.enter_field("Shift point of all gears of set 2");
    window.key(Key::Enter);
    assert!(window.handle("1", "2").is_focused());
    let before = window.project().clone();
    window.key(Key::Enter);
    assert!(
        *window.project() == before,
        "Enter pressed once more does nothing"
    );
}

#[test]
fn letters_typed_on_a_button_go_into_the_field_of_its_row_or_are_answered() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 2, set 2");
    window.key(Key::ArrowRight);
    window.type_text("2.05");
    assert_eq!(window.text("Ratio of gear 2, set 2"), "2.05");
    assert_eq!(window.focused(), "Ratio of gear 2, set 2");
    window.key(Key::Escape);

    window.key(Key::F6);
    window.type_text("3");
    assert!(
        window.says("Nothing can be typed here"),
        "{}",
        window.app().message()
    );
    assert_eq!(window.undo_steps(), 0);
}

#[test]
fn esc_keeps_the_field_and_the_button() {
    let mut window = Window::on_camper_van();
    window.type_in("Redline, rpm", "52");
    window.key(Key::Escape);
    assert_eq!(window.focused(), "Redline, rpm");
    assert_eq!(window.text("Redline, rpm"), "4500");
    window.type_text("5100");
    assert_eq!(window.text("Redline, rpm"), "5100", "all is selected again");
    window.key(Key::Escape);

    window.key(Key::F6);
    let button = window.focused();
    window.key(Key::Escape);
    assert_eq!(window.focused(), button);
}

#[test]
fn menus_and_dialogs_give_the_focus_back() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 2, set 2");
    window.ctrl(Key::O);
    assert_eq!(window.focused(), "Path");
    window.key(Key::Escape);
    assert_eq!(window.focused(), "Ratio of gear 2, set 2");
    window.click("Edit");
    window.key(Key::Escape);
    assert_eq!(window.focused(), "Ratio of gear 2, set 2");
    window.key(Key::ArrowRight);
    window.key(Key::Enter);
    window.key(Key::Escape);
    assert_eq!(window.focused(), "Gear 2 menu, set 2");
}

#[test]
fn a_set_that_has_come_is_named_next() {
    let mut window = Window::on_camper_van();
    window.choose("Set 3 menu", Role::Button, "Remove set");
    assert_ne!(window.focused(), "", "the focus goes on from what is gone");
    window.ctrl(Key::D);
    assert!(
        window.focused().starts_with("Name of set "),
        "{}",
        window.focused()
    );
    window.type_text("Short one");
    window.key(Key::Enter);
    let names: Vec<String> = window
        .project()
        .sets
        .iter()
        .map(|c| c.set.name.to_string())
        .collect();
    assert!(names.contains(&"Short one".to_owned()), "{names:?}");
}

#[test]
fn the_focus_goes_on_from_a_part_that_is_gone() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::D);
    window.choose("Add stage, set 2", Role::Button, "Transfer box");
    window.enter_field("Name of stage 1, set 2");
    window.ctrl(Key::Z);
    assert_ne!(window.focused(), "");
}

#[test]
fn the_row_in_focus_brings_its_line_forward_until_the_pointer_moves() {
    let mut window = Window::on_camper_van();
    let free = window.plot().right_bottom() - vec2(20.0, 20.0);
    window.rest_at(free);
    assert_eq!(window.app().pointed(), None);
    window.get(Role::Button, "Copy table").focus();
    window.settle();
    window.key(Key::Tab);
    let first = window.set(0);
    let gears: Vec<_> = first.set.gears.iter().map(|gear| gear.id).collect();
    let set = first.id;
    let pointed = |gear| {
        Some(GearOfSet {
            set,
            gear,
            other: None,
        })
    };
    assert_eq!(window.app().pointed(), pointed(gears[0]));
    window.key(Key::ArrowDown);
    assert_eq!(window.app().pointed(), pointed(gears[1]));
    assert!(window.is_asleep());
    window.rest_at(free - vec2(3.0, 0.0));
    assert_eq!(window.app().pointed(), None);
}

#[test]
fn what_was_half_typed_is_still_there_after_folding_and_switching() {
    let mut window = Window::on_camper_van();
    window.type_in("Ratio of gear 1, set 2", "three");
    window.open_card(1);
    assert!(
        window
            .names(Role::Button)
            .iter()
            .any(|name| name.contains("a field does not read"))
    );
    assert_eq!(window.text("Ratio of gear 1, set 2"), "three");
    window.key(Key::Escape);

    let mut window = Opening::on(camper_van()).sized(667.0, 427.0).open();
    window.click("Vehicle and sets");
    window.type_in("Tyre", "185");
    window.click("Table");
    window.click("Vehicle and sets");
    assert_eq!(window.text("Tyre"), "185");
    window.type_in("Redline, rpm", "5000");
    window.click("Diagram");
    assert_eq!(window.undo_steps(), 1, "what reads is taken");
    assert!(!window.is_in_gesture());
}

#[test]
fn f6_shows_the_parts_of_a_small_window_one_after_the_other() {
    let mut window = Opening::on(camper_van()).sized(667.0, 427.0).open();
    let mut parts = Vec::new();
    for _ in 0..6 {
        window.key(Key::F6);
        assert_ne!(window.focused(), "");
        let shown = PARTS.into_iter().find(|part| window.is_chosen(part));
        parts.push(shown.unwrap());
    }
    assert_eq!(
        parts[..4],
        ["Diagram", "Table", "Table", "Vehicle and sets"]
    );
}

#[test]
fn arrows_move_the_bars_between_the_parts() {
    let mut window = Window::on_camper_van();
    for (name, key, is_high) in [
        ("Width of the left column", Key::ArrowRight, true),
        ("Height of the table", Key::ArrowUp, false),
    ] {
        let place = |window: &Window| {
            let rect = window.get(Role::Splitter, name).rect();
            if is_high { rect.left() } else { -rect.top() }
        };
        window.get(Role::Splitter, name).focus();
        window.settle();
        let before = place(&window);
        window.key(key);
        assert!((place(&window) - before - 20.0).abs() < 1.0, "{name}");
        assert_eq!(window.focused(), name);
    }
}

#[test]
fn page_keys_scroll_the_part_in_focus() {
    let mut window = Opening::on(three_ten_speeds()).small().open();
    window.enter_field("Title");
    let top = window.field("Title").rect().top();
    window.key(Key::PageDown);
    assert!(window.field("Title").rect().top() < top - 100.0);
    window.key(Key::PageUp);
    assert!((window.field("Title").rect().top() - top).abs() < 1.0);
    let middle = window.plot().center();
    window.wheel(middle, 60.0);
    let part = window.view().x[1];
    window.get(Role::DisclosureTriangle, "Vehicle").focus();
    window.settle();
    window.key(Key::End);
    assert!(window.field("Title").rect().top() < top - 100.0);
    window.key(Key::Home);
    assert!((window.field("Title").rect().top() - top).abs() < 1.0);
    let is_same = (part - window.view().x[1]).abs() < 1e-3 * part;
    assert!(is_same, "Home has shown the whole diagram");
}

#[test]
fn keys_pressed_before_a_window_has_opened_go_to_it() {
    let mut window = Window::on_camper_van();
    window.enter_field("Ratio of gear 2, set 2");
    let tab = press(Modifiers::NONE, Key::Tab);
    window.frame(vec![press(Modifiers::COMMAND, Key::E), tab.clone(), tab]);
    window.settle();
    assert_eq!(window.focused(), "Bench page, Letter");
    window.frame(vec![
        press(Modifiers::NONE, Key::Escape),
        Event::Text("2".to_owned()),
    ]);
    window.settle();
    assert_eq!(window.focused(), "Ratio of gear 2, set 2");
    assert_eq!(window.text("Ratio of gear 2, set 2"), "2");
    window.key(Key::Escape);

    window.frame(vec![
        press(Modifiers::COMMAND, Key::O),
        Event::Text("/x".to_owned()),
    ]);
    window.settle();
    assert_eq!(window.text("Path"), "/x");
}

#[test]
fn the_ratio_of_a_gear_that_has_come_is_typed_next() {
    let mut window = Window::on_camper_van();
    window.get(Role::Button, "Add gear, set 2").focus();
    window.settle();
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Ratio of gear 6, set 2");
    window.type_text("0.62");
    window.key(Key::Enter);
    assert_eq!(window.ratios(SECOND).last(), Some(&0.62));
    window.click("Remove reverse, set 2");
    window.get(Role::Button, "Add reverse, set 2").focus();
    window.settle();
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Ratio of reverse, set 2");
}

#[test]
fn commands_mean_the_set_whose_card_is_open_and_a_set_that_is_shown_again_comes_forward() {
    let mut window = Window::on_camper_van();
    window.click_on(Role::CheckBox, "visible, set 2");
    assert!(
        window.is_chosen("Bring Six-speed, two output shafts forward")
            || window.handles().len() > 3
    );
    window.ctrl(Key::U);
    window.ctrl(Key::U);
    window.click_on(Role::CheckBox, "visible, set 2");
    assert!(window.is_chosen("Bring Same box, taller final drive forward"));
    window.click_on(Role::CheckBox, "visible, set 2");
    window.choose("Edit", Role::Button, "Remove set");
    let names: Vec<String> = window
        .project()
        .sets
        .iter()
        .map(|c| c.set.name.to_string())
        .collect();
    assert_eq!(names, ["Fitted five-speed", "Six-speed, two output shafts"]);
}

#[test]
fn a_row_that_is_wider_than_the_table_keeps_its_gear_in_view() {
    let mut window = Opening::on(camper_van()).sized(667.0, 427.0).open();
    window.click("Table");
    window.click("Side by side");
    window.get(Role::Button, "Copy table").focus();
    window.settle();
    window.key(Key::Tab);
    window.key(Key::ArrowDown);
    let row = window.nodes().find(egui_kittest::Node::is_focused).unwrap();
    assert_eq!(row.accesskit_node().role(), Role::Row);
    assert!(row.rect().left() >= 0.0, "{:?}", row.rect());
}

#[test]
fn help_left_by_its_button_gives_the_focus_back() {
    let mut window = Window::on_camper_van();
    window.enter_field("Redline, rpm");
    window.key(Key::F1);
    window.key(Key::Tab);
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Redline, rpm");
}

#[test]
fn a_new_project_is_called_something_first() {
    let mut window = Window::on_camper_van();
    window.enter_field("Lowest useful");
    window.ctrl(Key::N);
    assert_eq!(window.focused(), "Title");
}

#[test]
fn a_row_stays_forward_behind_its_menu() {
    let mut window = Window::on_camper_van();
    window.get(Role::Button, "Copy table").focus();
    window.settle();
    window.key(Key::Tab);
    let pointed = window.app().pointed();
    assert!(pointed.is_some());
    window.key_with(Modifiers::SHIFT, Key::F10);
    window.key(Key::Escape);
    assert_eq!(window.app().pointed(), pointed);
}
