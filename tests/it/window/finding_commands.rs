//! Is everything found by a part of its words, and done by key, mouse and screen reader?

use crate::support::memory_disk::MemoryDisk;
use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::{Live, Role};
use egui_kittest::kittest::NodeT;
use layshaft::app::{Command, TABLE};
use layshaft::project::examples::EXAMPLES;
use layshaft::project::format;

fn finding(typed: &str) -> Window {
    let mut window = Opening::on(camper_van()).in_file("van.ron").open();
    find(&mut window, typed);
    window
}

fn find(window: &mut Window, typed: &str) {
    window.ctrl(Key::K);
    window.type_text(typed);
}

/// What was found, from top to bottom.
fn found(window: &Window) -> Vec<String> {
    window.names(Role::ListBoxOption)
}

fn chosen(window: &Window) -> Vec<String> {
    let lines = window.nodes().map(|node| node.accesskit_node());
    let chosen = lines.filter(|node| node.is_selected() == Some(true));
    chosen.filter_map(|node| node.label()).collect()
}

fn is_open(window: &Window) -> bool {
    window.find(Role::Dialog, "Find a command").is_some()
}

#[test]
fn every_command_example_and_set_is_offered() {
    let window = finding("");
    let found = found(&window);
    for entry in TABLE.iter().filter(|e| e.command != Command::FindCommand) {
        let of_it = found.iter().filter(|line| line.starts_with(entry.text));
        let of_it: Vec<_> = of_it
            .filter(|line| line.contains(entry.menu.text()))
            .collect();
        assert!(!of_it.is_empty(), "{}", entry.text);
    }
    for example in EXAMPLES {
        assert!(found.contains(&format!("{}, Example", example.name)));
    }
    for candidate in &window.project().sets {
        assert!(found.contains(&format!("{}, Gear set", candidate.set.name)));
    }
}

#[test]
fn enter_does_what_was_found_first() {
    let mut window = finding("MPH switch");
    assert_eq!(found(&window), ["Switch km/h and mph, View   Ctrl+U"]);
    window.key(Key::Enter);
    assert!(!is_open(&window));
    assert_eq!(window.undo_steps(), 1);
}

#[test]
fn what_gears_are_typed_as_is_found_by_its_words() {
    for (typed, says) in [
        ("overall", "Gears are typed as overall ratios"),
        ("type speeds", "Gears are typed as km/h per 1000 rpm"),
        ("type gear ratios", "Gears are typed as gear ratios"),
    ] {
        let mut window = finding(typed);
        window.key(Key::Enter);
        assert!(window.says(says), "{typed}");
    }
}

#[test]
fn arrows_choose_and_stay_within_the_list() {
    let mut window = finding("set");
    let lines = found(&window);
    assert!(lines.len() > 3);
    assert_eq!(chosen(&window), lines[..1]);
    window.key(Key::ArrowUp);
    assert_eq!(chosen(&window), lines[..1]);
    window.key(Key::ArrowDown);
    assert_eq!(chosen(&window), lines[1..2]);
    for _ in 0..lines.len() {
        window.key(Key::ArrowDown);
    }
    assert_eq!(chosen(&window), lines[lines.len() - 1..]);
    assert_eq!(window.focused(), "Words of the command");
    window.type_text(" re");
    assert!(found(&window).len() > 1);
    assert_eq!(chosen(&window), found(&window)[..1], "typing begins anew");
}

#[test]
fn the_chosen_line_is_in_view_and_announced() {
    let mut window = finding("");
    for _ in 0..40 {
        window.key(Key::ArrowDown);
    }
    let line = chosen(&window).swap_remove(0);
    let rect = window.get(Role::ListBoxOption, &line).rect();
    let dialog = window.get(Role::Dialog, "Find a command").rect();
    assert!(dialog.contains_rect(rect), "{rect}");
    let name = line.split(',').next().unwrap();
    let is_told = window.nodes().any(|node| {
        let node = node.accesskit_node();
        node.live() == Live::Polite && node.value().is_some_and(|told| told.starts_with(name))
    });
    assert!(is_told, "{name}");
}

#[test]
fn sets_examples_and_recent_files_are_gone_to() {
    let mut window = finding("two output");
    window.key(Key::Enter);
    assert!(
        window.handles()[0]
            .accesskit_node()
            .label()
            .unwrap()
            .contains("Six-speed")
    );

    window.ctrl(Key::S);
    find(&mut window, "two-seater");
    window.key(Key::Enter);
    assert!(*window.project() == EXAMPLES[1].project().unwrap());

    find(&mut window, "recent van");
    let path = MemoryDisk::path("van.ron").display().to_string();
    assert!(window.says(&path), "{:?}", found(&window));
    window.key(Key::Enter);
    let saved = format::read(&window.disk.text("van.ron").unwrap()).unwrap();
    assert!(*window.project() == saved);
}

#[test]
fn what_cannot_be_done_says_why_and_is_not_done() {
    let mut window = finding("undo");
    assert!(found(&window)[0].starts_with("Undo, Edit"));
    assert!(window.says("Not now: nothing was changed"));
    window.key(Key::Enter);
    assert!(is_open(&window));
    window.key(Key::Escape);
    assert!(!is_open(&window));
}

#[test]
fn a_click_of_mouse_or_screen_reader_does_it() {
    let line = "Keys and cautions, Help   F1";
    let mut window = finding("cautions");
    window.get(Role::ListBoxOption, line).click_accesskit();
    window.settle();
    assert!(window.find(Role::Dialog, "Keys and cautions").is_some());

    let mut window = finding("cautions");
    window.click_on(Role::ListBoxOption, line);
    assert!(window.find(Role::Dialog, "Keys and cautions").is_some());
}

#[test]
fn words_that_nothing_has_are_told_and_enter_does_nothing() {
    let mut window = finding("gearbox of the moon");
    assert!(found(&window).is_empty());
    assert!(window.says("Nothing has all of these words"));
    let before = window.project().clone();
    window.key(Key::Enter);
    window.key(Key::ArrowDown);
    assert!(is_open(&window));
    assert!(*window.project() == before);
}
