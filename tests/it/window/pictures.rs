//! Does a picture open as an untitled project, which never finds its way back into the picture?

use crate::support::memory_disk::MemoryDisk;
use crate::support::window::{Opening, Window, camper_van, three_ten_speeds};
use egui::accesskit::Role;
use egui::{DroppedFile, Key, vec2};
use layshaft::project::{Project, SetId, SetTechnical, TechnicalData, format};
use layshaft::sheet::page::{Page, Picture};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// A picture of the project; the pixels do not matter.
fn picture_of(project: &Project) -> Vec<u8> {
    let page = Page::of(project).unwrap();
    page.png(&Picture::new(1, 1)).unwrap()
}

/// As much of the project as a picture of all its sets shows.
fn shown_of(project: &Project) -> Project {
    let all: Vec<SetId> = project.sets.iter().map(|set| set.id).collect();
    project.as_shown(&all).unwrap()
}

/// A window on the camper van, and a picture of other gear sets at hand.
fn with_picture() -> (Window, Vec<u8>) {
    let window = Opening::on(camper_van()).in_file("van.ron").open();
    let bytes = picture_of(&three_ten_speeds());
    window.disk.put_bytes("shared.png", &bytes);
    (window, bytes)
}

fn open(window: &mut Window, name: &str) {
    window.ctrl(Key::O);
    window.type_over(&MemoryDisk::path(name).display().to_string());
    window.key(Key::Enter);
}

fn change_something(window: &mut Window) {
    let at = window.handle_at("2", "3");
    window.drag(at, at + vec2(0.0, 50.0));
}

/// A file as a file manager drops it.
#[derive(Debug)]
struct Dropped(PathBuf);

impl DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        Err("the window reads files itself".to_owned())
    }
}

/// A project as a picture of its speeds gives it back: without engine and vehicle.
fn ratios_of(project: Project) -> Project {
    let nothing = vec![SetTechnical::default(); project.sets.len()];
    Project {
        technical: TechnicalData::default(),
        sets: project.sets.with_technical(nothing),
        ..project
    }
}

fn drop_on(window: &mut Window, name: &str) {
    let file = Arc::new(Dropped(MemoryDisk::path(name)));
    window.harness.input_mut().dropped_files.push(file);
    window.harness.step();
    window.settle();
}

#[test]
fn a_picture_opens_as_an_untitled_project_that_asks_for_a_file_when_it_is_saved() {
    let (mut window, bytes) = with_picture();
    open(&mut window, "shared.png");
    assert_eq!(*window.project(), ratios_of(three_ten_speeds()));
    assert_eq!(window.undo_steps(), 0);
    assert!(window.app().desk().file.is_none());
    assert!(window.app().message().starts_with("Opened the project in"));
    assert!(!window.says("(not saved)"));

    change_something(&mut window);
    window.ctrl(Key::S);
    assert!(window.says("Save the project"));
    window.type_over(&MemoryDisk::path("mine.ron").display().to_string());
    window.key(Key::Enter);
    let saved = format::read(&window.disk.text("mine.ron").unwrap()).unwrap();
    assert_eq!(saved, *window.project());
    assert!(window.disk.bytes("shared.png") == bytes);
}

#[test]
fn nothing_is_saved_under_the_name_of_a_picture() {
    let (mut window, bytes) = with_picture();
    open(&mut window, "shared.png");
    window.disk.put_bytes("renamed.ron", &bytes);
    for (name, words) in [
        ("shared.png", "this is the name of a picture"),
        ("new.PNG", "this is the name of a picture"),
        ("renamed.ron", "this is a picture"),
    ] {
        window.ctrl_shift(Key::S);
        window.type_over(&MemoryDisk::path(name).display().to_string());
        window.key(Key::Enter);
        assert!(window.says(words), "{name}");
        window.key(Key::Escape);
    }
    for name in ["shared.png", "renamed.ron"] {
        assert!(window.disk.bytes(name) == bytes, "{name}");
    }
    let names = ["renamed.ron", "shared.png", "van.ron"];
    assert_eq!(window.disk.file_names(), names);
}

#[test]
fn a_dropped_picture_opens_and_asks_first_where_work_would_be_lost() {
    let (mut window, _) = with_picture();
    drop_on(&mut window, "shared.png");
    assert_eq!(*window.project(), ratios_of(three_ten_speeds()));

    change_something(&mut window);
    let changed = window.project().clone();
    window.disk.put_bytes("van.png", &picture_of(&camper_van()));
    drop_on(&mut window, "van.png");
    assert!(window.says("Save the changes?"));
    assert_eq!(*window.project(), changed);
    window.invoke("Do not save");
    assert_eq!(*window.project(), shown_of(&camper_van()));

    drop_on(&mut window, "van.ron");
    let file = window.app().desk().file.clone();
    assert_eq!(file, Some(MemoryDisk::path("van.ron")));
}

#[test]
fn a_picture_is_not_among_the_recent_files() {
    let (mut window, _) = with_picture();
    window
        .disk
        .put("trucks.ron", &format::write(&three_ten_speeds()).unwrap());
    open(&mut window, "trucks.ron");
    open(&mut window, "shared.png");
    window.ctrl(Key::K);
    window.type_text("recent");
    let recent = window.names(Role::ListBoxOption).join("\n");
    assert!(recent.contains("trucks.ron"), "{recent}");
    assert!(!recent.contains("shared.png"), "{recent}");
}

#[test]
fn a_picture_without_a_project_leaves_the_document_and_is_told_in_a_sentence() {
    let (mut window, bytes) = with_picture();
    let mut bare = camper_van();
    bare.write_up.carries_project = false;
    window.disk.put_bytes("bare.png", &picture_of(&bare));
    window.disk.put_bytes("cut.png", &bytes[..bytes.len() / 3]);
    for (name, words) in [
        ("bare.png", "this picture holds no Layshaft project"),
        ("cut.png", "this picture is damaged or cut off"),
    ] {
        open(&mut window, name);
        assert!(window.says(words), "{name}");
        assert!(window.says(name));
        assert_eq!(*window.project(), camper_van());
        window.key(Key::Escape);
    }
}

#[test]
fn tab_offers_pictures_beside_projects_where_a_file_is_opened_and_not_where_one_is_saved() {
    let (mut window, bytes) = with_picture();
    window.disk.put_bytes("van.png", &bytes);
    let begun = MemoryDisk::path("van").display().to_string();
    window.ctrl(Key::O);
    window.type_over(&begun);
    window.key(Key::Tab);
    for name in ["van.png", "van.ron"] {
        assert!(window.find(Role::Button, name).is_some(), "{name}");
    }
    window.key(Key::Escape);
    window.ctrl_shift(Key::S);
    window.type_over(&begun);
    window.key(Key::Tab);
    assert!(window.find(Role::Button, "van.png").is_none());
}
