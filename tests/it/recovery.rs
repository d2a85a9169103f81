//! Does unsaved work survive, and does nobody overwrite anybody?
//!
//! On real folders: what is dropped without an orderly end is like what crashed, because the system
//! lets go of its locks.

use crate::support::scripted_picker::ScriptedPicker;
use crate::support::window::camper_van;
use egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use layshaft::app::{App, Surroundings};
use layshaft::draw::theme;
use layshaft::project::{Disk, Edit, RecoveryCopy, differences, format};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// A folder for a project and one for what is kept of it.
struct Place {
    folder: TempDir,
}

impl Place {
    fn new() -> Self {
        let place = Self {
            folder: tempfile::tempdir().unwrap(),
        };
        std::fs::create_dir(place.kept()).unwrap();
        std::fs::write(place.file(), format::write(&camper_van())).unwrap();
        place
    }

    fn file(&self) -> PathBuf {
        self.folder.path().join("van.ron")
    }

    fn kept(&self) -> PathBuf {
        self.folder.path().join("kept")
    }

    fn copies(&self) -> Vec<PathBuf> {
        let entries = std::fs::read_dir(self.kept()).unwrap();
        let paths = entries.map(|entry| entry.unwrap().path());
        paths
            .filter(|p| p.extension().is_some_and(|e| e == "ron"))
            .collect()
    }

    /// A window that keeps its work here.
    fn window(&self) -> Harness<'static, App> {
        let kept = self.kept();
        let mut harness = Harness::builder()
            .with_size([1280.0, 800.0])
            .with_max_steps(60)
            .with_context_setup(theme::apply)
            .build_eframe(move |_| {
                let surroundings = Surroundings {
                    file_system: Arc::new(Disk),
                    picker: Box::new(ScriptedPicker::default()),
                    settings_folder: None,
                };
                let mut app = App::new(camper_van(), None, surroundings);
                app.keep_unsaved_work_in(&kept);
                app
            });
        harness.run();
        harness
    }

    /// A window on the project's file, opened by typing its path.
    fn window_on_file(&self) -> Harness<'static, App> {
        let mut harness = self.window();
        open(&mut harness, &self.file());
        harness
    }
}

fn press(harness: &mut Harness<'static, App>, modifiers: Modifiers, key: Key) {
    harness.key_press_modifiers(modifiers, key);
    harness.run();
}

fn open(harness: &mut Harness<'static, App>, path: &Path) {
    press(harness, Modifiers::COMMAND, Key::O);
    harness.get_by_label("Path").focus();
    harness.run();
    harness
        .get_by_label("Path")
        .type_text(&path.display().to_string());
    harness.run();
    press(harness, Modifiers::NONE, Key::Enter);
}

/// Another speed unit: one unsaved change.
fn change(harness: &mut Harness<'static, App>) {
    press(harness, Modifiers::COMMAND, Key::U);
    assert!(harness.state().desk().history.is_unsaved());
}

fn click(harness: &mut Harness<'static, App>, name: &str) {
    harness.get_by_label(name).click();
    harness.run();
}

/// Waits until something holds, ten seconds at most.
fn wait_for(what: &str, holds: impl Fn() -> bool) {
    let begun = Instant::now();
    while !holds() {
        assert!(begun.elapsed() < Duration::from_secs(10), "{what}");
        std::thread::sleep(Duration::from_millis(50));
    }
}

#[test]
fn a_copy_is_written_after_a_change_and_goes_when_the_work_is_saved() {
    let place = Place::new();
    let mut window = place.window_on_file();
    assert!(place.copies().is_empty(), "nothing to keep yet");
    change(&mut window);
    wait_for("a copy", || !place.copies().is_empty());
    let copy = RecoveryCopy::read(&Disk, &place.copies()[0]).unwrap();
    assert_eq!(copy.file, Some(place.file()));
    assert_eq!(&copy.project, window.state().desk().project());
    press(&mut window, Modifiers::COMMAND, Key::S);
    wait_for("no copy", || place.copies().is_empty());
}

#[test]
fn what_a_dead_window_left_is_offered_with_what_differs_and_opened_as_unsaved() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    let left = window.state().desk().project().clone();
    wait_for("a copy", || !place.copies().is_empty());
    drop(window);

    let mut next = place.window();
    assert!(next.query_by_label("Unsaved work was found").is_some());
    let words = next.query_by_label_contains("Against its file");
    assert!(words.is_some(), "what differs is said");
    click(&mut next, "Open it");
    let desk = next.state().desk();
    assert_eq!(desk.project(), &left);
    assert_eq!(desk.file, Some(place.file()));
    assert!(desk.history.is_unsaved());
    let on_disk = std::fs::read_to_string(place.file()).unwrap();
    assert_eq!(
        on_disk,
        format::write(&camper_van()),
        "the file is as it was"
    );
    wait_for("our own copy only", || place.copies().len() == 1);
}

#[test]
fn what_was_left_can_be_kept_for_later_or_thrown_away() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    wait_for("a copy", || !place.copies().is_empty());
    drop(window);

    let mut next = place.window();
    click(&mut next, "Keep it for later");
    assert_eq!(place.copies().len(), 1);
    drop(next);
    let mut last = place.window();
    click(&mut last, "Throw it away");
    assert!(place.copies().is_empty());
    drop(last);
    assert!(
        place
            .window()
            .query_by_label("Unsaved work was found")
            .is_none()
    );
}

#[test]
fn a_living_window_s_copy_is_not_offered_to_another() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    wait_for("a copy", || !place.copies().is_empty());
    assert!(
        place
            .window()
            .query_by_label("Unsaved work was found")
            .is_none()
    );
    drop(window);
}

#[test]
fn a_broken_copy_is_let_be() {
    let place = Place::new();
    let broken = place.kept().join("1-1.ron");
    std::fs::write(&broken, "(recovery: 1, proj").unwrap();
    assert!(
        place
            .window()
            .query_by_label("Unsaved work was found")
            .is_none()
    );
    assert!(broken.exists());
}

#[test]
fn a_second_window_is_told_and_opens_a_copy() {
    let place = Place::new();
    let first = place.window_on_file();
    let mut second = place.window();
    open(&mut second, &place.file());
    assert!(
        second
            .query_by_label("The project is open already")
            .is_some()
    );
    click(&mut second, "Open a copy");
    assert_eq!(second.state().desk().file, None);
    drop(first);
    open(&mut second, &place.file());
    assert_eq!(second.state().desk().file, Some(place.file()));
}

#[test]
fn a_file_that_somebody_else_changed_is_not_replaced_unasked() {
    let place = Place::new();
    let mut window = place.window_on_file();
    let theirs = Edit::Title(None).applied_to(&camper_van()).unwrap();
    std::fs::write(place.file(), format::write(&theirs)).unwrap();
    change(&mut window);
    press(&mut window, Modifiers::COMMAND, Key::S);
    assert!(window.query_by_label("The file has changed").is_some());
    let on_disk = || std::fs::read_to_string(place.file()).unwrap();
    assert_eq!(on_disk(), format::write(&theirs), "not yet");
    click(&mut window, "Replace theirs");
    assert_eq!(on_disk(), format::write(window.state().desk().project()));
    assert!(!window.state().desk().history.is_unsaved());
}

#[test]
fn theirs_can_be_opened_instead() {
    let place = Place::new();
    let mut window = place.window_on_file();
    let theirs = Edit::Title(None).applied_to(&camper_van()).unwrap();
    std::fs::write(place.file(), format::write(&theirs)).unwrap();
    change(&mut window);
    press(&mut window, Modifiers::COMMAND, Key::S);
    click(&mut window, "Open theirs");
    let project = window.state().desk().project();
    assert!(differences(project, &theirs).is_empty());
}

#[test]
fn a_file_that_is_gone_is_written_again() {
    let place = Place::new();
    let mut window = place.window_on_file();
    std::fs::remove_file(place.file()).unwrap();
    change(&mut window);
    press(&mut window, Modifiers::COMMAND, Key::S);
    assert!(place.file().exists());
}
