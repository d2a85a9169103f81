//! Does a new project have the structure of its kind of vehicle, and no data of any?

use crate::support::window::{Opening, Window, camper_van};
use egui::Key;
use egui::accesskit::Role;
use layshaft::analysis::{Analysis, ProjectResults};
use layshaft::app::Command;
use layshaft::gearing::{FinalDrive, GearRole};
use layshaft::project::examples::Start;
use layshaft::project::{Project, format};

const COMMANDS: [(Start, Command, &str); 3] = [
    (Start::Car, Command::New, "New"),
    (
        Start::Ranges,
        Command::NewWithRanges,
        "New truck or tractor",
    ),
    (Start::Motorcycle, Command::NewMotorcycle, "New motorcycle"),
];

fn begun(start: Start) -> Project {
    start.example().project().unwrap()
}

/// Looks for a command by a part of its words and does what was found first.
fn find(window: &mut Window, words: &str) {
    window.ctrl(Key::K);
    window.type_text(words);
    window.key(Key::Enter);
}

#[test]
fn each_has_the_parts_of_its_kind() {
    let parts = |start| begun(start).sets.baseline().set.to_spec();
    let car = parts(Start::Car);
    assert_eq!((car.gears.len(), car.stages.len()), (5, 0));
    let truck = parts(Start::Ranges);
    let positions = truck.stages[0].positions.iter().map(|p| p.name.as_str());
    assert_eq!(positions.collect::<Vec<_>>(), ["High", "Low"]);
    assert_eq!(truck.gears[0].role, GearRole::Crawler);
    assert!(truck.reverse.is_some());
    let motorcycle = parts(Start::Motorcycle);
    assert_eq!((motorcycle.gears.len(), motorcycle.stages.len()), (6, 1));
    assert_eq!(motorcycle.stages[0].positions.len(), 1);
    assert!(matches!(
        motorcycle.final_drives[..],
        [FinalDrive::Chain(_)]
    ));
}

#[test]
fn each_has_one_set_no_words_of_its_own_and_the_program_s_layout() {
    let texts = [
        include_str!("../../../assets/new-car.ron"),
        include_str!("../../../assets/new-truck-or-tractor.ron"),
        include_str!("../../../assets/new-motorcycle.ron"),
    ];
    for (start, text) in Start::ALL.into_iter().zip(texts) {
        let project = begun(start);
        assert_eq!(project.sets.len(), 1);
        assert!(project.title.is_none() && project.note.as_str().is_empty());
        assert_eq!(format::write(&project).unwrap(), text);
    }
}

#[test]
fn nothing_is_strange_about_any_but_a_motorcycle_s_tyre() {
    let told = |start| {
        let analysis = Analysis::from(&begun(start));
        let told = analysis.findings().iter().map(|finding| finding.code);
        told.collect::<Vec<_>>()
    };
    assert_eq!(told(Start::Car), [""; 0]);
    assert_eq!(told(Start::Ranges), [""; 0]);
    assert_eq!(told(Start::Motorcycle), ["tyre"]);
}

#[test]
fn each_is_begun_from_the_file_menu() {
    for (start, command, text) in COMMANDS {
        assert_eq!(command.entry().unwrap().text, text);
        let mut window = Opening::on(camper_van()).in_file("van.ron").open();
        window.choose("File", Role::Button, text);
        assert!(*window.project() == begun(start), "{text}");
        assert_eq!(window.undo_steps(), 0);
    }
    let mut window = Window::on_camper_van();
    window.ctrl(Key::N);
    assert!(*window.project() == begun(Start::Car), "Ctrl+N stays a car");
}

#[test]
fn each_is_found_by_what_is_in_it() {
    for (words, start) in [
        ("ranges", Start::Ranges),
        ("tractor", Start::Ranges),
        ("primary", Start::Motorcycle),
        ("chain", Start::Motorcycle),
    ] {
        let mut window = Window::on_camper_van();
        find(&mut window, words);
        assert!(*window.project() == begun(start), "{words}");
    }
}

#[test]
fn unsaved_work_is_asked_about_before_any_of_them() {
    for (_, _, text) in COMMANDS {
        let mut window = Opening::on(camper_van()).in_file("van.ron").open();
        window.fill("Redline, rpm", "4700");
        let work = window.project().clone();
        window.choose("File", Role::Button, text);
        assert!(window.says("has changes that are not saved"), "{text}");
        window.click("Cancel");
        assert!(*window.project() == work, "{text}");
    }
}

#[test]
fn a_motorcycle_is_typed_from_a_data_sheet_by_key_alone() {
    let mut window = Window::on_camper_van();
    find(&mut window, "primary");
    window.enter_field("Ratio of gear 1, set 1");
    for ratio in ["2.5", "1.8", "1.45", "1.25", "1.1", "1.0"] {
        window.type_text(ratio);
        window.key(Key::Enter);
    }
    assert_eq!(window.focused(), FRONT);
    window.type_text("16/42");
    window.enter_field("Ratio of position 1 of stage 1, set 1");
    window.type_text("1.9");
    window.key(Key::Enter);
    let results = ProjectResults::of(window.project());
    let overall = results.sets[0].gears.iter().map(|g| g.gear.overall_ratio);
    let expected = [2.5, 1.8, 1.45, 1.25, 1.1, 1.0].map(|ratio| ratio * 1.9 * 42.0 / 16.0);
    for (overall, expected) in overall.zip(expected) {
        assert!(
            (overall - expected).abs() < 1e-9,
            "{overall} for {expected}"
        );
    }
}

const FRONT: &str = "Front sprocket, set 1";

#[test]
fn an_example_says_that_it_is_one_until_something_is_done_in_it() {
    let mut window = Opening::on(camper_van()).open();
    let said = "An example to look around in.";
    assert!(!window.says(said), "a project of somebody's own is none");
    find(&mut window, "open two-seater");
    assert!(window.says(said));
    window.ctrl(Key::U);
    window.pause();
    assert!(!window.says(said), "now it is somebody's work");
    window.ctrl(Key::Z);
    window.pause();
    window.click("Start with my own");
    window.pause();
    assert_eq!(*window.project(), begun(Start::Car));
    assert!(!window.says(said));
}
