//! Does the line at the foot say what matters now, to eye and ear, and nothing that is over?

use super::{SECOND, with_shifts};
use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::{Live, Role};
use egui_kittest::kittest::NodeT;

type Deed = fn(&mut Window);

fn in_file() -> Window {
    Opening::on(camper_van()).in_file("van.ron").open()
}

/// What is announced when it changes.
fn announced(window: &Window) -> Vec<String> {
    let nodes = window.nodes().map(|node| node.accesskit_node());
    let live = nodes.filter(|node| node.live() == Live::Polite);
    live.map(|node| node.value().unwrap_or_default()).collect()
}

#[test]
fn the_message_is_announced() {
    let mut window = in_file();
    assert!(announced(&window)[0].starts_with("Point at the diagram"));
    window.ctrl(Key::U);
    window.ctrl(Key::S);
    let said = announced(&window);
    assert!(said[0].starts_with("Saved in"), "{said:?}");
}

#[test]
fn the_first_words_go_with_the_first_thing_that_is_done() {
    let deeds: [Deed; 4] = [
        |window| window.ctrl(Key::U),
        |window| window.type_in("Redline, rpm", "4400"),
        |window| window.key(Key::F1),
        |window| {
            window.focus_handle("2", "3");
            window.key(Key::ArrowUp);
        },
    ];
    for deed in deeds {
        let mut window = in_file();
        assert!(window.app().message().starts_with("Point at"));
        deed(&mut window);
        assert_eq!(window.app().message(), "");
    }
}

#[test]
fn what_was_saved_undone_or_copied_is_said_until_the_next_change() {
    let deeds: [(Deed, &str); 3] = [
        (|window| window.ctrl(Key::S), "Saved in"),
        (|window| window.ctrl(Key::Z), "Undone: "),
        (|window| window.ctrl_shift(Key::C), "Copied"),
    ];
    for (deed, words) in deeds {
        let mut window = in_file();
        window.ctrl(Key::U);
        deed(&mut window);
        assert!(window.app().message().starts_with(words));
        // To look around is no deed.
        window.rest_at(window.plot().center());
        window.pause();
        window.key(Key::Tab);
        assert!(window.app().message().starts_with(words), "{words}");
        window.type_in("Redline, rpm", "4400");
        assert_eq!(window.app().message(), "", "{words}");
    }
}

#[test]
fn an_answer_of_the_system_that_comes_too_late_takes_no_message_away() {
    let mut window = Window::on_camper_van();
    window.ctrl(Key::S);
    let path = crate::support::memory_disk::MemoryDisk::path("van.ron");
    window.give_path(&path);
    assert!(window.app().message().starts_with("Saved in"));
    window.picker.answer_to(1, None);
    window.settle();
    assert!(window.app().message().starts_with("Saved in"));
}

#[test]
fn the_findings_are_told_reached_by_key_and_listed() {
    let mut window = Opening::on(with_shifts([5000, 3600, 700, 3600])).open();
    let count = window.app().desk().findings().len();
    assert_eq!(count, 3);
    let node = window.get(Role::Button, "3 findings");
    let told = node
        .accesskit_node()
        .data()
        .description()
        .unwrap()
        .to_owned();
    let name = window.set(SECOND).set.name.to_string();
    assert_eq!(told.lines().count(), 3);
    assert!(told.lines().all(|line| line.starts_with(&name)), "{told}");
    node.focus();
    window.settle();
    window.key(Key::Enter);
    assert!(window.find(Role::Dialog, "Findings").is_some());
    for line in told.lines() {
        window.get(Role::ListItem, line);
    }
    window.key(Key::Escape);
    assert_eq!(window.focused(), "3 findings");
}

#[test]
fn what_an_engine_makes_of_a_set_is_a_finding_in_status_line_card_and_table() {
    let mut window = in_file();
    assert!(window.says("No findings"));
    window.fill("Mark, km/h", "90, 160");
    let says = "no gear holds 160 km/h on the level with this load";
    let node = window.get(Role::Button, "3 findings");
    let told = node
        .accesskit_node()
        .data()
        .description()
        .unwrap()
        .to_owned();
    let lines: Vec<&str> = told.lines().collect();
    assert_eq!(lines.len(), 3, "{told}");
    for (line, candidate) in lines.iter().zip(window.project().sets.iter()) {
        assert_eq!(*line, format!("{}: {says}", candidate.set.name));
    }
    assert!(window.says(says), "on the open card");
    let table = window.app().desk().table();
    assert!(table.sets.iter().all(|set| set.findings == [says]));
    window.ctrl(Key::Z);
    assert!(window.says("No findings"));
}

#[test]
fn without_findings_there_is_nothing_to_open() {
    let window = in_file();
    assert!(window.says("No findings"));
    assert!(
        !window
            .names(Role::Button)
            .iter()
            .any(|name| name.contains("finding"))
    );
}

#[test]
fn the_reason_of_what_cannot_be_kept_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let blocked = folder.path().join("blocked");
    std::fs::write(&blocked, "a file where a folder should be").unwrap();
    let mut window = Opening::on(camper_van()).keeping_work_in(&blocked).open();
    window.ctrl(Key::U);
    let end = std::time::Instant::now() + std::time::Duration::from_mins(1);
    while window.app().lasting_note().is_none() {
        assert!(std::time::Instant::now() < end, "it is never said");
        std::thread::sleep(std::time::Duration::from_millis(2));
        window.harness.step();
    }
    window.settle();
    let (words, why) = window.app().lasting_note().unwrap();
    let is_told = window.nodes().any(|node| {
        let node = node.accesskit_node();
        node.value().as_deref() == Some(words) && node.data().description() == Some(why.as_str())
    });
    assert!(is_told, "{words}: {why}");
}

#[test]
fn the_window_is_called_as_its_title_says() {
    let mut window = in_file();
    assert_eq!(
        window.harness.root().accesskit_node().label().unwrap(),
        "van.ron – Layshaft"
    );
    window.ctrl(Key::U);
    assert_eq!(
        window.harness.root().accesskit_node().label().unwrap(),
        "*van.ron – Layshaft"
    );
}

#[test]
fn a_command_that_is_barred_says_why_when_it_is_invoked_by_its_keys() {
    let mut window = Window::on_camper_van();
    let before = window.project().clone();
    window.ctrl(Key::D);
    let why = "Duplicate set is not possible now: a project has three sets at most";
    assert_eq!(window.app().message(), why);
    window.ctrl(Key::Z);
    let why = "Undo is not possible now: nothing was changed";
    assert_eq!(window.app().message(), why);
    assert!(*window.project() == before);
}
