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
use layshaft::gearing::EngineSpeed;
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
        std::fs::write(place.file(), format::write(&camper_van()).unwrap()).unwrap();
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
        self.window_with(ScriptedPicker::default())
    }

    /// The same with a system's dialog that the test answers.
    fn window_with(&self, picker: ScriptedPicker) -> Harness<'static, App> {
        let kept = self.kept();
        let mut harness = Harness::builder()
            .with_size([1280.0, 800.0])
            .with_max_steps(60)
            .with_context_setup(theme::apply)
            .build_eframe(move |_| {
                let surroundings = Surroundings {
                    file_system: Arc::new(Disk),
                    picker: Box::new(picker),
                    settings_folder: None,
                    ..Surroundings::default()
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

/// Whether some text in the window contains `words`.
fn says(harness: &Harness<'static, App>, words: &str) -> bool {
    harness.query_all_by_label_contains(words).next().is_some()
}

fn redline(rpm: f64) -> Edit {
    Edit::Redline(EngineSpeed::from_rpm(rpm).unwrap())
}

/// What somebody else puts into the project's file: another redline.
fn change_by_others(place: &Place, rpm: f64) -> String {
    let theirs = redline(rpm).applied_to(&camper_van()).unwrap();
    let text = format::write(&theirs).unwrap();
    std::fs::write(place.file(), &text).unwrap();
    text
}

/// Leaves unsaved work on the project's file, as after a crash.
fn crash_with_work(place: &Place) {
    let mut window = place.window_on_file();
    change(&mut window);
    wait_for("a copy", || !place.copies().is_empty());
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
    assert_eq!(&*copy.project, window.state().desk().project());
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
        format::write(&camper_van()).unwrap(),
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
    std::fs::write(place.file(), format::write(&theirs).unwrap()).unwrap();
    change(&mut window);
    press(&mut window, Modifiers::COMMAND, Key::S);
    assert!(window.query_by_label("The file has changed").is_some());
    let on_disk = || std::fs::read_to_string(place.file()).unwrap();
    assert_eq!(on_disk(), format::write(&theirs).unwrap(), "not yet");
    click(&mut window, "Replace theirs");
    assert_eq!(
        on_disk(),
        format::write(window.state().desk().project()).unwrap()
    );
    assert!(!window.state().desk().history.is_unsaved());
}

#[test]
fn theirs_can_be_opened_instead() {
    let place = Place::new();
    let mut window = place.window_on_file();
    let theirs = Edit::Title(None).applied_to(&camper_van()).unwrap();
    std::fs::write(place.file(), format::write(&theirs).unwrap()).unwrap();
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

#[test]
fn a_path_that_does_not_begin_at_the_root_is_made_whole_before_it_is_kept() {
    let place = Place::new();
    let within = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let file = within.path().join("m.ron");
    std::fs::write(&file, format::write(&camper_van()).unwrap()).unwrap();
    let here = std::env::current_dir().unwrap();
    let from_here = file
        .strip_prefix(&here)
        .expect("tests run above their target folder");
    let mut window = place.window();
    open(&mut window, from_here);
    assert_eq!(window.state().desk().file.as_ref(), Some(&file));
    change(&mut window);
    wait_for("a copy", || !place.copies().is_empty());
    let copy = RecoveryCopy::read(&Disk, &place.copies()[0]).unwrap();
    assert_eq!(copy.file, Some(file));
}

#[cfg(unix)]
#[test]
fn work_on_a_file_whose_path_is_no_text_is_kept_offered_and_saved() {
    use std::os::unix::ffi::OsStrExt;
    let place = Place::new();
    let name = std::ffi::OsStr::from_bytes(b"caf\xe9.ron");
    let file = place.folder.path().join(name);
    if std::fs::copy(place.file(), &file).is_err() {
        return; // This disk has no such names.
    }
    let picker = ScriptedPicker::default();
    let mut window = place.window_with(picker.clone());
    press(&mut window, Modifiers::COMMAND, Key::O);
    picker.answer(Some(file.clone()));
    window.run();
    assert_eq!(window.state().desk().file.as_ref(), Some(&file));
    change(&mut window);
    let left = window.state().desk().project().clone();
    wait_for("a copy", || !place.copies().is_empty());
    let copy = RecoveryCopy::read(&Disk, &place.copies()[0]).unwrap();
    assert_eq!(copy.file.as_ref(), Some(&file));
    drop(window);

    let mut next = place.window();
    click(&mut next, "Open it");
    press(&mut next, Modifiers::COMMAND, Key::S);
    let text = std::fs::read_to_string(&file).unwrap();
    assert_eq!(format::read(&text).unwrap(), left);
}

#[test]
fn recovered_work_does_not_replace_what_somebody_else_wrote_meanwhile() {
    let place = Place::new();
    crash_with_work(&place);
    let theirs = change_by_others(&place, 4200.0);

    let mut next = place.window();
    assert!(says(
        &next,
        "Unsaved work was found, and its file has changed"
    ));
    assert!(says(&next, "redline: yours 4500, theirs 4200"));
    assert!(says(&next, "units: yours mph, theirs km/h"));
    click(&mut next, "Open yours");
    press(&mut next, Modifiers::COMMAND, Key::S);
    assert!(next.query_by_label("The file has changed").is_some());
    assert!(says(&next, "redline: yours 4500, theirs 4200"));
    let on_disk = || std::fs::read_to_string(place.file()).unwrap();
    assert_eq!(on_disk(), theirs, "not without an answer");
    click(&mut next, "Replace theirs");
    let yours = format::write(next.state().desk().project()).unwrap();
    assert_eq!(on_disk(), yours);
}

#[test]
fn theirs_can_be_opened_and_yours_kept_for_the_next_start() {
    let place = Place::new();
    crash_with_work(&place);
    change_by_others(&place, 4200.0);
    let mut next = place.window();
    click(&mut next, "Open theirs");
    let redline_rpm = next.state().desk().project().engine.redline.rpm();
    assert!((redline_rpm - 4200.0).abs() < 1e-9);
    assert_eq!(place.copies().len(), 1);
}

#[test]
fn a_second_change_by_others_after_a_cancelled_question_is_noticed() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    change_by_others(&place, 4200.0);
    press(&mut window, Modifiers::COMMAND, Key::S);
    click(&mut window, "Cancel");
    let second = change_by_others(&place, 4300.0);
    press(&mut window, Modifiers::COMMAND, Key::S);
    assert!(says(&window, "redline: yours 4500, theirs 4300"));
    let on_disk = std::fs::read_to_string(place.file()).unwrap();
    assert_eq!(on_disk, second);
}

#[test]
fn a_change_by_others_while_their_first_one_is_being_replaced_is_noticed() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    change_by_others(&place, 4200.0);
    press(&mut window, Modifiers::COMMAND, Key::S);
    let second = change_by_others(&place, 4300.0);
    click(&mut window, "Replace theirs");
    assert!(says(&window, "redline: yours 4500, theirs 4300"));
    assert_eq!(std::fs::read_to_string(place.file()).unwrap(), second);
}

#[test]
fn steady_changes_are_kept_at_most_two_seconds_behind() {
    let place = Place::new();
    let mut window = place.window_on_file();
    window.get_by_label_contains("Shift point 2 to 3").focus();
    window.run();
    let begun = Instant::now();
    while place.copies().is_empty() {
        press(&mut window, Modifiers::NONE, Key::ArrowDown);
        assert!(window.state().desk().history.is_unsaved());
        assert!(begun.elapsed() < Duration::from_secs(8), "nothing is kept");
        std::thread::sleep(Duration::from_millis(50));
    }
}

#[test]
fn what_cannot_be_kept_is_said_for_as_long_as_it_cannot() {
    let place = Place::new();
    std::fs::remove_dir(place.kept()).unwrap();
    std::fs::write(place.kept(), "a file in the way").unwrap();
    let mut window = place.window_on_file();
    assert!(says(&window, "Unsaved work is not being kept"));
    change(&mut window);
    std::fs::remove_file(place.kept()).unwrap();
    wait_for("a copy in a folder made anew", || {
        place.kept().is_dir() && !place.copies().is_empty()
    });
    wait_for("the end of the note", || {
        window.state().lasting_note().is_none()
    });
    window.run();
    assert!(!says(&window, "Unsaved work is not being kept"));
}

#[test]
fn a_folder_that_was_deleted_is_made_again() {
    let place = Place::new();
    let mut window = place.window_on_file();
    std::fs::remove_dir_all(place.kept()).unwrap();
    change(&mut window);
    wait_for("a copy", || {
        place.kept().is_dir() && !place.copies().is_empty()
    });
    assert!(
        place
            .window()
            .query_by_label("Unsaved work was found")
            .is_none(),
        "its window still lives"
    );
    drop(window);
}

#[test]
fn work_on_a_file_that_another_window_has_open_is_recovered_as_a_copy() {
    let place = Place::new();
    crash_with_work(&place);
    let mut first = place.window();
    click(&mut first, "Keep it for later");
    open(&mut first, &place.file());
    let mut second = place.window();
    click(&mut second, "Open it");
    assert!(says(&second, "The project is open already"));
    click(&mut second, "Open as a copy");
    assert_eq!(second.state().desk().file, None);
    assert!(second.state().desk().history.is_unsaved());
    drop(first);
}

#[test]
fn saving_as_what_another_window_has_open_is_refused() {
    let place = Place::new();
    let first = place.window_on_file();
    let before = std::fs::read_to_string(place.file()).unwrap();
    let mut second = place.window();
    change(&mut second);
    press(&mut second, Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    second.get_by_label("Path").focus();
    second.run();
    press(&mut second, Modifiers::COMMAND, Key::A);
    let path = place.file().display().to_string();
    second.get_by_label("Path").type_text(&path);
    second.run();
    press(&mut second, Modifiers::NONE, Key::Enter);
    assert!(says(&second, "another window has this project open"));
    assert_eq!(std::fs::read_to_string(place.file()).unwrap(), before);
    drop(first);
}

#[test]
fn a_copy_of_the_first_format_is_offered_and_belongs_to_no_file_that_nobody_can_find() {
    let place = Place::new();
    let project = format::write(&redline(4300.0).applied_to(&camper_van()).unwrap()).unwrap();
    let copy = |file: &str| {
        format!("(recovery: 1, file: Some({file:?}), written_unix_s: 7, project: {project:?})")
    };
    let path = place.kept().join("1-1.ron");
    std::fs::write(&path, copy("m.ron")).unwrap();
    let read = RecoveryCopy::read(&Disk, &path).unwrap();
    assert_eq!((read.file, read.written_unix_s), (None, 7));

    let file = place.file().display().to_string();
    std::fs::write(&path, copy(&file)).unwrap();
    let mut window = place.window();
    click(&mut window, "Open yours");
    assert_eq!(window.state().desk().file, Some(place.file()));
    press(&mut window, Modifiers::COMMAND, Key::S);
    assert!(window.query_by_label("The file has changed").is_some());
}
