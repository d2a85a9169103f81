//! Does unsaved work survive, and does nobody overwrite anybody?
//!
//! On real folders: what is dropped without an orderly end is like what crashed, because the system
//! lets go of its locks.

use crate::support::scripted_picker::ScriptedPicker;
use crate::support::window::{Place, QUICK, Window, camper_van};
use egui::Key;
use egui_kittest::kittest::Queryable;
use layshaft::app::Pace;
use layshaft::gearing::EngineSpeed;
use layshaft::project::{Disk, Edit, RecoveryCopy, differences, format};
use std::time::{Duration, Instant};

/// Another speed unit: one unsaved change.
fn change(window: &mut Window) {
    window.ctrl(Key::U);
    assert!(window.app().desk().history.is_unsaved());
}

/// Presses whatever has this name.
fn click(window: &mut Window, name: &str) {
    window.harness.get_by_label(name).click();
    window.settle();
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

/// So long something may take on a busy machine; where all is well, it takes a moment.
const LONGEST: Duration = Duration::from_secs(30);

/// Waits until something holds; another thread brings it about.
fn wait_for(what: &str, holds: impl Fn() -> bool) {
    let begun = Instant::now();
    while !holds() {
        assert!(begun.elapsed() < LONGEST, "{what}");
        std::thread::sleep(Duration::from_millis(2));
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
    assert_eq!(&*copy.project, window.app().desk().project());
    window.ctrl(Key::S);
    wait_for("no copy", || place.copies().is_empty());
}

#[test]
fn what_a_dead_window_left_is_offered_with_what_differs_and_opened_as_unsaved() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    let left = window.app().desk().project().clone();
    wait_for("a copy", || !place.copies().is_empty());
    drop(window);

    let mut next = place.window();
    assert!(next.shows("Unsaved work was found"));
    let words = next.says("Against its file");
    assert!(words, "what differs is said");
    click(&mut next, "Open it");
    assert_eq!(next.focused(), "Vehicle");
    let desk = next.app().desk();
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
    assert!(!place.window().shows("Unsaved work was found"));
}

#[test]
fn a_living_window_s_copy_is_not_offered_to_another() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    wait_for("a copy", || !place.copies().is_empty());
    assert!(!place.window().shows("Unsaved work was found"));
    drop(window);
}

#[test]
fn a_broken_copy_is_let_be() {
    let place = Place::new();
    let broken = place.kept().join("1-1.ron");
    std::fs::write(&broken, "(recovery: 1, proj").unwrap();
    assert!(!place.window().shows("Unsaved work was found"));
    assert!(broken.exists());
}

#[test]
fn a_second_window_is_told_and_opens_a_copy() {
    let place = Place::new();
    let first = place.window_on_file();
    let mut second = place.window();
    second.ask_to_open(&place.file());
    assert!(second.shows("The project is open already"));
    click(&mut second, "Open a copy");
    assert_eq!(second.app().desk().file, None);
    drop(first);
    second.ask_to_open(&place.file());
    assert_eq!(second.app().desk().file, Some(place.file()));
}

#[test]
fn a_file_that_somebody_else_changed_is_not_replaced_unasked() {
    let place = Place::new();
    let mut window = place.window_on_file();
    let theirs = Edit::Title(None).applied_to(&camper_van()).unwrap();
    std::fs::write(place.file(), format::write(&theirs).unwrap()).unwrap();
    change(&mut window);
    window.ctrl(Key::S);
    assert!(window.shows("The file has changed"));
    let on_disk = || std::fs::read_to_string(place.file()).unwrap();
    assert_eq!(on_disk(), format::write(&theirs).unwrap(), "not yet");
    click(&mut window, "Replace theirs");
    assert_eq!(
        on_disk(),
        format::write(window.app().desk().project()).unwrap()
    );
    assert!(!window.app().desk().history.is_unsaved());
}

#[test]
fn theirs_can_be_opened_instead() {
    let place = Place::new();
    let mut window = place.window_on_file();
    let theirs = Edit::Title(None).applied_to(&camper_van()).unwrap();
    std::fs::write(place.file(), format::write(&theirs).unwrap()).unwrap();
    change(&mut window);
    window.ctrl(Key::S);
    click(&mut window, "Open theirs");
    let project = window.app().desk().project();
    assert!(differences(project, &theirs).is_empty());
    window.ctrl(Key::Z);
    let project = window.app().desk().project();
    assert!(
        !differences(project, &theirs).is_empty(),
        "undoing brings ours back"
    );
    assert!(window.app().desk().history.is_unsaved());
}

#[test]
fn a_file_that_is_gone_is_written_again() {
    let place = Place::new();
    let mut window = place.window_on_file();
    std::fs::remove_file(place.file()).unwrap();
    change(&mut window);
    window.ctrl(Key::S);
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
    window.ask_to_open(from_here);
    assert_eq!(window.app().desk().file.as_ref(), Some(&file));
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
    let file = place.projects().join(name);
    if std::fs::copy(place.file(), &file).is_err() {
        return; // This disk has no such names.
    }
    let picker = ScriptedPicker::default();
    let mut window = place.window_with(picker.clone());
    window.ctrl(Key::O);
    picker.answer(Some(file.clone()));
    window.settle();
    assert_eq!(window.app().desk().file.as_ref(), Some(&file));
    change(&mut window);
    let left = window.app().desk().project().clone();
    wait_for("a copy", || !place.copies().is_empty());
    let copy = RecoveryCopy::read(&Disk, &place.copies()[0]).unwrap();
    assert_eq!(copy.file.as_ref(), Some(&file));
    drop(window);

    let mut next = place.window();
    click(&mut next, "Open it");
    next.ctrl(Key::S);
    let text = std::fs::read_to_string(&file).unwrap();
    assert_eq!(format::read(&text).unwrap(), left);
}

#[test]
fn recovered_work_does_not_replace_what_somebody_else_wrote_meanwhile() {
    let place = Place::new();
    crash_with_work(&place);
    let theirs = change_by_others(&place, 4200.0);

    let mut next = place.window();
    assert!(next.says("Unsaved work was found, and its file has changed"));
    assert!(next.says("redline: yours 4500, theirs 4200"));
    assert!(next.says("units: yours mph, theirs km/h"));
    click(&mut next, "Open yours");
    next.ctrl(Key::S);
    assert!(next.shows("The file has changed"));
    assert!(next.says("redline: yours 4500, theirs 4200"));
    let on_disk = || std::fs::read_to_string(place.file()).unwrap();
    assert_eq!(on_disk(), theirs, "not without an answer");
    click(&mut next, "Replace theirs");
    let yours = format::write(next.app().desk().project()).unwrap();
    assert_eq!(on_disk(), yours);
}

#[test]
fn theirs_can_be_opened_and_yours_kept_for_the_next_start() {
    let place = Place::new();
    crash_with_work(&place);
    change_by_others(&place, 4200.0);
    let mut next = place.window();
    click(&mut next, "Open theirs");
    let redline_rpm = next.app().desk().project().engine.redline.rpm();
    assert!((redline_rpm - 4200.0).abs() < 1e-9);
    assert_eq!(place.copies().len(), 1);
}

#[test]
fn a_second_change_by_others_after_a_cancelled_question_is_noticed() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    change_by_others(&place, 4200.0);
    window.ctrl(Key::S);
    click(&mut window, "Cancel");
    let second = change_by_others(&place, 4300.0);
    window.ctrl(Key::S);
    assert!(window.says("redline: yours 4500, theirs 4300"));
    let on_disk = std::fs::read_to_string(place.file()).unwrap();
    assert_eq!(on_disk, second);
}

#[test]
fn a_change_by_others_while_their_first_one_is_being_replaced_is_noticed() {
    let place = Place::new();
    let mut window = place.window_on_file();
    change(&mut window);
    change_by_others(&place, 4200.0);
    window.ctrl(Key::S);
    let second = change_by_others(&place, 4300.0);
    click(&mut window, "Replace theirs");
    assert!(window.says("redline: yours 4500, theirs 4300"));
    assert_eq!(std::fs::read_to_string(place.file()).unwrap(), second);
}

#[test]
fn steady_changes_are_kept_although_they_never_come_to_rest() {
    let place = Place::new();
    let restless = Pace {
        quiet: Duration::from_hours(1),
        ..QUICK
    };
    let mut window = place.opening().at_pace(restless).open();
    window.open_by_path(&place.file());
    window.focus_handle("2", "3");
    let begun = Instant::now();
    while place.copies().is_empty() {
        window.key(Key::ArrowDown);
        assert!(window.app().desk().history.is_unsaved());
        assert!(begun.elapsed() < LONGEST, "nothing is kept");
    }
}

#[test]
fn what_cannot_be_kept_is_said_for_as_long_as_it_cannot() {
    let place = Place::new();
    std::fs::remove_dir(place.kept()).unwrap();
    std::fs::write(place.kept(), "a file in the way").unwrap();
    let mut window = place.window_on_file();
    assert!(window.says("Unsaved work is not being kept"));
    change(&mut window);
    std::fs::remove_file(place.kept()).unwrap();
    wait_for("a copy in a folder made anew", || {
        place.kept().is_dir() && !place.copies().is_empty()
    });
    wait_for("the end of the note", || {
        window.app().lasting_note().is_none()
    });
    window.settle();
    assert!(!window.says("Unsaved work is not being kept"));
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
        !place.window().shows("Unsaved work was found"),
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
    first.ask_to_open(&place.file());
    let mut second = place.window();
    click(&mut second, "Open it");
    assert!(second.says("The project is open already"));
    click(&mut second, "Open as a copy");
    assert_eq!(second.app().desk().file, None);
    assert!(second.app().desk().history.is_unsaved());
    drop(first);
}

#[test]
fn saving_as_what_another_window_has_open_is_refused() {
    let place = Place::new();
    let first = place.window_on_file();
    let before = std::fs::read_to_string(place.file()).unwrap();
    let mut second = place.window();
    change(&mut second);
    second.ctrl_shift(Key::S);
    second.give_path(&place.file());
    assert!(second.says("another window has this project open"));
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
    assert_eq!(window.app().desk().file, Some(place.file()));
    window.ctrl(Key::S);
    assert!(window.shows("The file has changed"));
}
