//! Are the menus opened, gone through and left by key, and do they say how things stand?

use crate::support::window::{Opening, Window, camper_van, press};
use egui::accesskit::{Role, Toggled};
use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::NodeT;
use layshaft::app::Menu;
use layshaft::project::examples::EXAMPLES;

/// The first entry of each menu that can be invoked on a project as it was opened.
const FIRST: [(Menu, Key, &str); 4] = [
    (Menu::File, Key::F, "New"),
    (Menu::Edit, Key::E, "Paste gears…"),
    (Menu::View, Key::V, "Diagram: speed"),
    (Menu::Help, Key::H, "Find a command…"),
];

/// A window in which the title is being typed.
fn window() -> Window {
    let mut window = Window::on_camper_van();
    window.enter_field("Title");
    window
}

/// Alt with a letter as the system sends it: the key and the letter in one frame.
fn alt(window: &mut Window, key: Key) {
    let press = press(Modifiers::ALT, key);
    window.event(Event::ModifiersChanged(Modifiers::ALT));
    let letter = Event::Text(key.name().to_lowercase());
    window.frame(vec![press, letter]);
    window.event(Event::ModifiersChanged(Modifiers::NONE));
    window.settle();
}

/// An entry that stands nowhere but in its menu.
const OWN: [(Menu, &str); 4] = [
    (Menu::File, "Quit"),
    (Menu::Edit, "Remove set"),
    (Menu::View, "Whole diagram"),
    (Menu::Help, "Keys and cautions"),
];

fn open_menu(window: &Window) -> Option<Menu> {
    let is_open = |(_, entry): &(Menu, &str)| window.find(Role::Button, entry).is_some();
    let open: Vec<_> = OWN.into_iter().filter(is_open).collect();
    assert!(open.len() < 2, "{open:?}");
    open.first().map(|(menu, _)| *menu)
}

#[test]
fn alt_with_its_letter_opens_each_menu_on_its_first_entry_and_types_nothing() {
    for (menu, key, first) in FIRST {
        let mut window = window();
        let title = window.text("Title");
        alt(&mut window, key);
        assert_eq!(open_menu(&window), Some(menu));
        assert_eq!(window.focused(), first);
        assert_eq!(window.text("Title"), title);
        assert_eq!(window.undo_steps(), 0);
    }
}

#[test]
fn esc_closes_a_menu_and_gives_the_focus_back() {
    for (_, key, _) in FIRST {
        let mut window = window();
        alt(&mut window, key);
        window.key(Key::Escape);
        assert_eq!(open_menu(&window), None);
        assert_eq!(window.focused(), "Title");
    }
}

#[test]
fn a_menu_that_was_opened_by_mouse_gives_the_focus_back_too() {
    let mut window = window();
    window.click("Edit");
    assert_eq!(open_menu(&window), Some(Menu::Edit));
    window.key(Key::Escape);
    assert_eq!(window.focused(), "Title");
}

#[test]
fn what_a_menu_runs_gives_the_focus_back() {
    let mut window = window();
    window.choose("View", Role::Button, "Switch km/h and mph");
    assert_eq!(window.undo_steps(), 1);
    assert_eq!(window.focused(), "Title");
    alt(&mut window, Key::E);
    window.key(Key::Enter);
    assert_eq!(window.undo_steps(), 0, "it was undone");
    assert_eq!(window.focused(), "Title");
}

#[test]
fn f10_opens_the_first_menu_and_closes_it() {
    let mut window = window();
    window.key(Key::F10);
    assert_eq!(open_menu(&window), Some(Menu::File));
    assert_eq!(window.focused(), "New");
    window.key(Key::F10);
    assert_eq!(open_menu(&window), None);
    assert_eq!(window.focused(), "Title");
}

#[test]
fn left_and_right_go_round_the_menus() {
    let mut window = window();
    window.key(Key::F10);
    for (menu, _, first) in FIRST.into_iter().cycle().skip(1).take(4) {
        window.key(Key::ArrowRight);
        assert_eq!(open_menu(&window), Some(menu));
        assert_eq!(window.focused(), first);
    }
    window.key(Key::ArrowLeft);
    assert_eq!(open_menu(&window), Some(Menu::Help));
    alt(&mut window, Key::V);
    assert_eq!(open_menu(&window), Some(Menu::View));
    window.key(Key::Escape);
    assert_eq!(window.focused(), "Title");
}

#[test]
fn a_menu_that_was_opened_by_a_screen_reader_is_gone_through_by_key() {
    let mut window = window();
    window.invoke("File");
    window.key(Key::ArrowRight);
    assert_eq!(open_menu(&window), Some(Menu::Edit));
    window.key(Key::ArrowDown);
    assert_eq!(window.focused(), "Copy table");
    assert_eq!(
        window.text("Title"),
        camper_van().title.unwrap().to_string()
    );
}

#[test]
fn an_open_menu_follows_the_pointer_along_the_bar_and_stays_where_the_keys_led() {
    let mut window = window();
    window.click("File");
    window.move_onto(Role::Button, "View");
    assert_eq!(open_menu(&window), Some(Menu::View));
    window.key(Key::ArrowRight);
    assert_eq!(open_menu(&window), Some(Menu::Help));
    window.pause();
    assert_eq!(open_menu(&window), Some(Menu::Help));
    window.click("Help");
    assert_eq!(open_menu(&window), None);
}

#[test]
fn a_further_menu_is_entered_by_right_and_left_again_by_left() {
    let mut window = window();
    alt(&mut window, Key::F);
    // Behind two further kinds of a new project and what cannot be invoked yet.
    for _ in 0..4 {
        window.key(Key::ArrowDown);
    }
    assert_eq!(window.focused(), "Open example");
    window.key(Key::ArrowRight);
    assert_eq!(window.focused(), "Camper van");
    window.key(Key::ArrowLeft);
    assert_eq!(window.focused(), "Open example");
    assert_eq!(open_menu(&window), Some(Menu::File));
    window.key(Key::ArrowRight);
    window.key(Key::ArrowDown);
    window.key(Key::Enter);
    assert!(*window.project() == EXAMPLES[1].project().unwrap());
    assert_eq!(open_menu(&window), None);
}

#[test]
fn alt_and_what_follows_it_in_one_slow_frame_are_answered_in_their_order() {
    let mut window = window();
    window.frame(vec![
        press(Modifiers::ALT, Key::H),
        Event::Text("h".to_owned()),
        press(Modifiers::NONE, Key::ArrowDown),
        press(Modifiers::NONE, Key::Enter),
    ]);
    window.settle();
    assert!(window.find(Role::Dialog, "Keys and cautions").is_some());
}

#[test]
fn the_present_theme_is_marked() {
    for (theme, name) in [(1, "Dark"), (0, "Light"), (2, "Like the system")] {
        let mut window = Window::on_camper_van();
        let names = ["Light", "Dark", "Like the system"];
        assert_eq!(names[theme], name);
        window.click("View");
        window.click("Light or dark");
        window.click(name);
        alt(&mut window, Key::V);
        window.click("Light or dark");
        for other in names {
            let node = window.get(Role::Button, other).accesskit_node();
            let expected = if other == name {
                Toggled::True
            } else {
                Toggled::False
            };
            assert_eq!(node.toggled(), Some(expected), "{other} in {name}");
        }
    }
}

#[test]
fn what_cannot_be_done_now_is_shown_and_cannot_be_chosen() {
    let mut window = Window::on_camper_van();
    alt(&mut window, Key::E);
    for name in ["Undo", "Redo"] {
        let found = window.all(Role::Button, name);
        assert!(!found.is_empty(), "{name}");
        assert!(found.iter().all(|node| node.accesskit_node().is_disabled()));
    }
}

#[test]
fn the_menu_key_and_shift_f10_open_what_a_right_click_opens() {
    for (modifiers, key) in [(Modifiers::NONE, Key::Menu), (Modifiers::SHIFT, Key::F10)] {
        let mut window = Opening::on(camper_van()).open();
        let row = window.names(Role::Row).swap_remove(1);
        window.shown(Role::Row, &row);
        window.get(Role::Row, &row).focus();
        window.settle();
        window.key_with(modifiers, key);
        assert_eq!(window.focused(), "Copy row");
        window.key(Key::Escape);
        assert!(window.find(Role::Button, "Copy row").is_none());
        assert_eq!(window.focused(), row);
        window.key_with(modifiers, key);
        window.key(Key::Enter);
        assert!(window.copied().contains('\t'), "{}", window.copied());
        assert_eq!(window.focused(), row);
    }
}
