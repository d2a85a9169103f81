//! Where does Enter lead behind the last field, and what is typed next once something was added?

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::kittest::NodeT;
use layshaft::workshop::JobKind;

/// A window on a job of a kind, which has just begun.
fn begun(kind: JobKind) -> Window {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::Num6);
    window.click(kind.words());
    window.pause();
    window
}

/// Whether a field has the focus.
fn is_in_field(window: &Window) -> bool {
    let mut nodes = window.nodes();
    let focused = nodes.find(egui_kittest::Node::is_focused);
    focused.is_some_and(|node| node.accesskit_node().role() == Role::TextInput)
}

/// Enter through all fields that follow; what has the focus then.
fn behind_the_fields(window: &mut Window) -> String {
    for _ in 0..60 {
        if !is_in_field(window) {
            break;
        }
        window.key(Key::Enter);
    }
    window.focused()
}

#[test]
fn behind_the_last_field_of_a_job_stands_what_adds_to_it_or_prints_it() {
    for kind in JobKind::ALL {
        let mut window = begun(kind);
        assert_eq!(window.focused(), "Name", "{kind:?}");
        let reached = behind_the_fields(&mut window);
        let is_forward = reached.starts_with("Add a ") || reached == "Print a sheet…";
        assert!(is_forward, "{kind:?}: {reached}");
    }
}

#[test]
fn an_item_that_is_added_is_typed_next_by_pointer_and_by_key() {
    let mut kinds_with_items = 0;
    for kind in JobKind::ALL {
        let mut window = begun(kind);
        let add = behind_the_fields(&mut window);
        let Some(item) = add.strip_prefix("Add a ") else {
            continue;
        };
        let item = item.to_owned();
        kinds_with_items += 1;
        window.key(Key::Enter);
        window.pause();
        let first = window.focused();
        assert!(is_in_field(&window), "{kind:?}: {first}");
        assert_eq!(behind_the_fields(&mut window), add, "{kind:?}");
        window.click(&add);
        window.pause();
        let by_pointer = window.focused();
        assert!(is_in_field(&window), "{kind:?}: {by_pointer}");
        assert_ne!(by_pointer, first, "it is of the next item");
        let number = |name: &str| name.rsplit(' ').next().unwrap().parse::<usize>().unwrap();
        assert_eq!(number(&by_pointer), number(&first) + 1, "{by_pointer}");
        assert!(by_pointer.contains(&item), "{by_pointer}");
        assert_eq!(behind_the_fields(&mut window), add, "{kind:?}");
    }
    assert!(kinds_with_items >= 4);
}

#[test]
fn behind_the_last_field_of_the_plan_a_part_is_added() {
    let mut window = Opening::on(camper_van()).sized(1800.0, 900.0).open();
    window.ctrl(Key::Num6);
    window.click("Plan what changes");
    window.pause();
    let last = window.names(Role::TextInput).pop().unwrap();
    window.enter_field(&last);
    assert_eq!(behind_the_fields(&mut window), "Add a part");
}

#[test]
fn behind_the_last_field_of_the_write_up_stands_what_saves_it() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::E);
    window.wait_for_picture();
    window.enter_field("Width, pixels");
    window.key(Key::Enter);
    assert_eq!(window.focused(), "Save picture…");
}

#[test]
fn shift_and_enter_stay_in_the_first_field_of_the_window() {
    let mut window = Window::on_camper_van();
    window.enter_field("Title");
    window.key_with(Modifiers::SHIFT, Key::Enter);
    assert_eq!(window.focused(), "Title");
}

#[test]
fn where_the_diagram_is_not_shown_enter_stays_in_the_last_field_of_a_card() {
    let mut window = Opening::on(camper_van()).sized(667.0, 427.0).open();
    window.click("Vehicle and sets");
    window.enter_field("Shift point of all gears of set 2");
    let before = window.project().clone();
    for _ in 0..2 {
        window.key(Key::Enter);
        assert_eq!(window.focused(), "Shift point of all gears of set 2");
    }
    assert!(*window.project() == before);
}
