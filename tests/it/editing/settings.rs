//! Does the window come back the way it was left?

use crate::support::window::{Opening, Window, camper_van};
use egui::accesskit::Role;
use egui::{Key, Theme};
use layshaft::project::{Project, format};
use std::path::Path;

fn window_with(settings: &Path) -> Window {
    Opening::on(camper_van()).with_settings(settings).open()
}

#[test]
fn looks_size_and_table_are_remembered() {
    let folder = tempfile::tempdir().unwrap();
    let mut window = window_with(folder.path());
    assert_eq!(
        window.harness.ctx.theme(),
        Theme::Light,
        "as the system, which does not say"
    );
    window.click("View");
    window.click("Light or dark");
    window.click("Dark");
    window.ctrl(Key::Equals);
    window.click("Side by side");
    window.settle();
    let zoom = window.harness.ctx.zoom_factor();
    assert!(zoom > 1.05);

    let window = window_with(folder.path());
    assert_eq!(window.harness.ctx.theme(), Theme::Dark);
    assert!((window.harness.ctx.zoom_factor() - zoom).abs() < 1e-6);
    assert!(window.is_chosen("Side by side"));
}

#[test]
fn without_a_folder_nothing_is_remembered() {
    let mut window = Window::on_camper_van();
    window.click("Side by side");
    assert!(!Window::on_camper_van().is_chosen("Side by side"));
}

#[test]
fn broken_settings_are_the_defaults_and_are_written_anew() {
    for broken in [
        "",
        "(zoom: \"large\"",
        "(theme: Pink)",
        "\u{0}\u{1}",
        "(zoom: nan)",
    ] {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("settings.ron");
        std::fs::write(&path, broken).unwrap();
        let mut window = window_with(folder.path());
        assert!((window.harness.ctx.zoom_factor() - 1.0).abs() < 1e-6);
        assert!(!window.is_chosen("Side by side"));
        window.click("Side by side");
        assert!(
            window_with(folder.path()).is_chosen("Side by side"),
            "{broken}"
        );
    }
}

#[test]
fn a_folder_that_is_gone_stops_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let gone = folder.path().join("gone");
    let mut window = window_with(&gone);
    window.click("Side by side");
    assert!(window.is_chosen("Side by side"));
}

/// Puts the camper van under another title into a file.
fn file(folder: &Path, name: &str) -> Project {
    let mut project = camper_van();
    project.title = Some(layshaft::gearing::Name::new(name).unwrap());
    std::fs::write(folder.join(name), format::write(&project).unwrap()).unwrap();
    project
}

fn recent(window: &mut Window) -> Vec<String> {
    window.click("File");
    window.move_onto(Role::Button, "Open recent");
    let names = window.names(Role::Button);
    let is_file = |name: &String| Path::new(name).extension().is_some_and(|e| e == "ron");
    let recent = names.into_iter().filter(is_file).collect();
    window.key(Key::Escape);
    window.key(Key::Escape);
    recent
}

fn open_recent(window: &mut Window, name: &str) {
    window.click("File");
    window.move_onto(Role::Button, "Open recent");
    window.click(name);
}

#[test]
fn recent_files_come_back_the_last_one_first() {
    let folder = tempfile::tempdir().unwrap();
    let settings = tempfile::tempdir().unwrap();
    let mut window = window_with(settings.path());
    for name in ["a.ron", "b.ron"] {
        file(folder.path(), name);
        window.open_by_path(&folder.path().join(name));
    }
    assert_eq!(recent(&mut window), ["b.ron", "a.ron"]);

    let mut window = window_with(settings.path());
    assert_eq!(recent(&mut window), ["b.ron", "a.ron"]);
    open_recent(&mut window, "a.ron");
    assert_eq!(window.app().desk().name(), "a.ron");
    assert_eq!(recent(&mut window), ["a.ron", "b.ron"]);
}

#[test]
fn a_recent_file_that_is_gone_says_so_and_leaves_the_list() {
    let folder = tempfile::tempdir().unwrap();
    let settings = tempfile::tempdir().unwrap();
    let mut window = window_with(settings.path());
    file(folder.path(), "a.ron");
    window.open_by_path(&folder.path().join("a.ron"));
    std::fs::remove_file(folder.path().join("a.ron")).unwrap();
    window.ctrl(Key::N);
    let before = window.project().clone();
    open_recent(&mut window, "a.ron");
    assert!(*window.project() == before, "the open document stays");
    assert!(
        window.app().message().contains("a.ron"),
        "{}",
        window.app().message()
    );
    assert_eq!(recent(&mut window), [""; 0]);
    assert_eq!(recent(&mut window_with(settings.path())), [""; 0]);
}

#[test]
fn saving_remembers_the_file_too() {
    let folder = tempfile::tempdir().unwrap();
    let settings = tempfile::tempdir().unwrap();
    let path = folder.path().join("van.ron");
    let mut window = Opening::on(camper_van())
        .in_real_file(&path)
        .with_settings(settings.path())
        .open();
    window.fill("Idle", "700");
    window.ctrl(Key::S);
    assert_eq!(recent(&mut window), ["van.ron"]);
}
