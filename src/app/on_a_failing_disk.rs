//! Do settings, copies of unsaved work and locks bear a disk that fails at every step?
//!
//! On the simulated disk of the tests of saving: whichever step fails in whichever way, what was to be
//! written is old or new, nothing else is touched, and the next start leaves nothing over.

use super::recovery::{Lock, abandoned, sweep};
use super::settings::Settings;
use super::simulated::{FOLDER, Fault, Locking, SimulatedDisk};
use crate::project::examples::EXAMPLES;
use crate::project::{CopyError, FileSystem, RecoveryCopy};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

const FAULTS: [Fault; 7] = [
    Fault::Refused(ErrorKind::StorageFull),
    Fault::Refused(ErrorKind::PermissionDenied),
    Fault::Refused(ErrorKind::NotFound),
    Fault::Refused(ErrorKind::WouldBlock),
    Fault::CutShort,
    Fault::RefusedAndNothingIsRemoved,
    Fault::Killed,
];

const STRANGER: &str = "notes.txt";

fn folder() -> &'static Path {
    Path::new(FOLDER)
}

/// A disk with a file of somebody else.
fn disk() -> SimulatedDisk {
    let disk = SimulatedDisk::default();
    disk.put(STRANGER, b"of somebody else", 0o644);
    disk
}

/// Does `task` with every fault at every step that it takes on a disk that `prepared` has, and hands
/// each outcome to `judge`; then the next start sweeps, and only the stranger's file and those named
/// in `may_stay` are left.
fn with_every_fault<T>(
    prepared: impl Fn() -> SimulatedDisk,
    task: impl Fn(&SimulatedDisk) -> T,
    judge: impl Fn(&SimulatedDisk, &T),
    may_stay: &[&str],
) {
    let sound = prepared();
    drop(task(&sound));
    let steps = sound.steps();
    assert!(steps.len() > 2, "{steps:?}");
    for (step, name) in steps.into_iter().enumerate() {
        for fault in FAULTS {
            let disk = prepared();
            disk.fail_at(step, fault);
            let outcome = task(&disk);
            println!("{fault:?} at {name} {step}: {disk:?}");
            judge(&disk, &outcome);
            drop(outcome);
            disk.start_again();
            sweep(&disk, folder());
            let mut files = disk.files();
            let stranger = files.remove(&SimulatedDisk::path(STRANGER));
            assert_eq!(stranger.as_deref(), Some(b"of somebody else".as_slice()));
            files.retain(|path, _| !may_stay.iter().any(|name| path.ends_with(name)));
            assert!(files.is_empty(), "left over: {files:?}");
        }
    }
}

fn settings(zoom: f32) -> Settings {
    Settings {
        zoom,
        ..Settings::default()
    }
}

/// A disk with settings on it.
fn disk_with_settings() -> SimulatedDisk {
    let disk = disk();
    let written = settings(1.5).write(&disk.of_another_process(), folder());
    written.unwrap();
    disk
}

#[test]
fn settings_are_written_whole_or_stay_as_they_were() {
    with_every_fault(
        disk_with_settings,
        |disk| settings(2.0).write(disk, folder()),
        |disk, _| {
            let read = Settings::read(&disk.of_another_process(), folder());
            assert!(read == settings(1.5) || read == settings(2.0), "{read:?}");
        },
        &["settings.ron"],
    );
}

#[test]
fn settings_are_read_as_they_are_or_not_at_all_and_never_touched() {
    let prepared = || {
        let disk = disk_with_settings();
        let temporary = left_by_a_kill();
        disk.put(&temporary, b"half", 0o644);
        disk
    };
    with_every_fault(
        prepared,
        |disk| Settings::read(disk, folder()),
        |disk, read| {
            assert!(*read == settings(1.5) || *read == Settings::default());
            let now = Settings::read(&disk.of_another_process(), folder());
            assert_eq!(now, settings(1.5));
        },
        &["settings.ron"],
    );
}

/// The name of the temporary file of a killed save.
fn left_by_a_kill() -> String {
    let disk = SimulatedDisk::default();
    disk.fail_at(7, Fault::Killed);
    assert!(settings(1.0).write(&disk, folder()).is_err());
    let (path, _) = disk.files().pop_first().unwrap();
    path.file_name().unwrap().to_str().unwrap().to_owned()
}

const COPY: &str = "12-34.ron";

fn copy(written_unix_s: u64) -> RecoveryCopy {
    RecoveryCopy {
        file: None,
        began_from: Some(7),
        written_unix_s,
        project: Arc::new(EXAMPLES[0].project().unwrap()),
    }
}

/// A disk with a copy, the locks of its dead window and what a killed save left.
fn disk_with_a_dead_window() -> SimulatedDisk {
    let disk = disk();
    let other = disk.of_another_process();
    copy(1).write(&other, &SimulatedDisk::path(COPY)).unwrap();
    for name in ["12-34.lock", "56-78.lock", "open-0123456789abcdef.lock"] {
        disk.put(name, b"", 0o600);
    }
    disk.put(&left_by_a_kill(), b"half", 0o600);
    disk
}

#[test]
fn a_copy_is_written_whole_or_the_older_one_stays() {
    let path = SimulatedDisk::path(COPY);
    with_every_fault(
        disk_with_a_dead_window,
        |disk| copy(2).write(disk, &path),
        |disk, written| {
            let kept = RecoveryCopy::read(&disk.of_another_process(), &path);
            let is_new = written.as_ref().map_or_else(CopyError::is_kept, |()| true);
            assert_eq!(kept, Some(copy(if is_new { 2 } else { 1 })));
            assert_eq!(disk.mode(COPY), 0o600);
        },
        &[COPY],
    );
}

#[test]
fn a_copy_that_cannot_be_read_now_is_found_by_the_next_start() {
    with_every_fault(
        disk_with_a_dead_window,
        |disk| abandoned(disk, folder()),
        |disk, found| {
            assert!(found.len() <= 1);
            assert!(found.iter().all(|left| left.copy == copy(1)));
            let next = abandoned(&disk.of_another_process(), folder());
            assert_eq!(next.len(), 1, "never lost");
        },
        &[COPY],
    );
}

#[test]
fn a_copy_that_is_thrown_away_is_gone_or_offered_again() {
    with_every_fault(
        disk_with_a_dead_window,
        |disk| {
            for left in abandoned(disk, folder()) {
                left.remove(disk);
            }
        },
        |_, ()| {},
        &[COPY],
    );
}

#[test]
fn a_sweep_takes_the_locks_of_the_dead_and_leaves_those_of_the_living() {
    let disk = disk_with_a_dead_window();
    let held = SimulatedDisk::path("99-1.lock");
    let lock = Lock::taken(&disk.of_another_process(), &held).unwrap();
    assert_eq!(sweep(&disk, folder()), 4);
    let left = ["12-34.ron", "99-1.lock", STRANGER].map(SimulatedDisk::path);
    assert_eq!(disk.files().into_keys().collect::<Vec<_>>(), left);
    drop(lock);
    assert_eq!(sweep(&disk, folder()), 1);
}

#[test]
fn whichever_step_of_a_sweep_fails_no_work_and_no_lock_of_the_living_goes() {
    with_every_fault(
        || {
            let disk = disk_with_a_dead_window();
            disk.put("99-1.lock", b"", 0o600);
            disk
        },
        |disk| {
            let lock = Lock::taken(&disk.of_another_process(), &lock_path()).unwrap();
            sweep(disk, folder());
            lock
        },
        |disk, _lock| {
            assert!(disk.files().contains_key(&lock_path()));
            assert!(disk.files().contains_key(&SimulatedDisk::path(COPY)));
            let other = disk.of_another_process();
            assert!(Lock::taken(&other, &lock_path()).is_none());
        },
        &[COPY],
    );
}

fn lock_path() -> PathBuf {
    SimulatedDisk::path("99-1.lock")
}

#[test]
fn whichever_step_of_taking_a_lock_fails_two_never_hold_it() {
    with_every_fault(
        disk,
        |disk| Lock::taken(disk, &lock_path()),
        |disk, lock| {
            let other = disk.of_another_process();
            assert_eq!(Lock::is_held(&other, &lock_path()), lock.is_some());
            let taken = Lock::taken(&other, &lock_path());
            assert_eq!(taken.is_some(), lock.is_none());
        },
        &[],
    );
}

#[test]
fn whichever_step_of_letting_go_fails_the_lock_is_free() {
    with_every_fault(
        disk,
        |disk| {
            if let Some(lock) = Lock::taken(disk, &lock_path()) {
                lock.end(disk);
            }
        },
        |disk, ()| assert!(!Lock::is_held(&disk.of_another_process(), &lock_path())),
        &[],
    );
}

#[test]
fn a_lock_is_had_although_a_sweep_or_another_s_end_comes_between_any_two_steps() {
    let alone = disk();
    drop(Lock::taken(&alone, &lock_path()));
    for step in 0..=alone.steps().len() {
        for is_there in [false, true] {
            let disk = disk();
            if is_there {
                disk.put("99-1.lock", b"", 0o600);
            }
            disk.meanwhile(step, |disk| {
                sweep(disk, folder());
            });
            let lock = Lock::taken(&disk, &lock_path());
            assert!(lock.is_some(), "before step {step}: {disk:?}");
            let other = disk.of_another_process();
            assert!(Lock::is_held(&other, &lock_path()), "{step}: {disk:?}");
            assert!(Lock::taken(&other, &lock_path()).is_none());
        }
    }
}

#[test]
fn a_sweep_never_takes_the_file_of_a_lock_that_is_had_between_any_two_of_its_steps() {
    let alone = disk_with_a_dead_window();
    sweep(&alone, folder());
    for step in 0..alone.steps().len() {
        for name in ["12-34.lock", "56-78.lock", "open-0123456789abcdef.lock"] {
            let disk = disk_with_a_dead_window();
            let path = SimulatedDisk::path(name);
            let had = Arc::new(Mutex::new(None));
            disk.meanwhile(step, {
                let (had, path) = (Arc::clone(&had), path.clone());
                move |disk| {
                    // One window takes it and ends, and the next one makes the file anew.
                    if let Some(first) = Lock::taken(disk, &path) {
                        first.end(disk);
                        *had.lock().unwrap() = Lock::taken(disk, &path);
                    }
                }
            });
            sweep(&disk, folder());
            let is_had = had.lock().unwrap().is_some();
            let is_held = Lock::is_held(&disk.of_another_process(), &path);
            assert_eq!(is_held, is_had, "{name}, before step {step}: {disk:?}");
        }
    }
}

#[test]
fn somebody_who_only_asks_does_not_keep_a_lock_from_being_had() {
    let disk = disk();
    disk.put("99-1.lock", b"", 0o600);
    let asking = disk.of_another_process().open_lockable(&lock_path());
    let asking = asking.unwrap();
    asking.try_lock().unwrap();
    let alone = disk.of_another_process();
    assert!(
        Lock::taken(&alone, &lock_path()).is_none(),
        "as long as it is asked"
    );
    // Between the first try and the second.
    disk.meanwhile(2, move |_| drop(asking));
    assert!(Lock::taken(&disk, &lock_path()).is_some(), "{disk:?}");
}

#[test]
fn where_no_locks_are_known_nothing_is_held_and_no_file_made_for_it_stays() {
    let disk = disk();
    disk.reach_of_locks(Locking::Unknown);
    assert!(Lock::taken(&disk, &lock_path()).is_none());
    assert!(!Lock::is_held(&disk, &lock_path()));
    assert_eq!(disk.files().len(), 1);
}

#[test]
fn the_lock_of_a_document_has_the_same_name_in_every_version() {
    let path = Lock::of_document(&disk(), folder(), Path::new("/nowhere/van.ron"));
    assert_eq!(path, SimulatedDisk::path("open-ca44680f8ae2ee03.lock"));
}
