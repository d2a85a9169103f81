//! Does everything go that killed saves left, and nothing that a living program needs?

use std::fs;
use std::io::ErrorKind;
use std::path::Path;
use std::thread;
use std::time::{Duration, Instant};

use layshaft::project::{
    Disk, FileSystem, SaveError, save_new, save_private, save_whole, sweep_beside, sweep_stale,
};

use super::simulated::{FOLDER, Fault, Locking, SimulatedDisk};
use super::{names_in, pipe_at, skipped, without_waiting};

const NAME: &str = "van.ron";
const TEXT: &[u8] = b"a text";

/// Processes as names tell them.
const LIVING: u32 = 7001;
const GONE: u32 = 7002;

type Save = fn(&dyn FileSystem, &Path, &[u8]) -> Result<(), SaveError>;

const SAVES: [(&str, Save); 3] = [
    ("whole", save_whole),
    ("new", save_new),
    ("private", save_private),
];

fn sweep(disk: &SimulatedDisk) -> usize {
    sweep_stale(disk, Path::new(FOLDER))
}

/// Who made a temporary file.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Maker {
    ThisMachine,
    AnotherMachine,
    /// No mark of a machine is in the name.
    OlderProgram,
}

impl Maker {
    /// A name as the maker gives it: that of a save that was killed, with another process in it.
    fn name(self, process_id: u32) -> String {
        let disk = match self {
            Self::AnotherMachine => SimulatedDisk::default().of_another_machine(),
            Self::ThisMachine | Self::OlderProgram => SimulatedDisk::default(),
        };
        disk.fail_at(6, Fault::Killed);
        save_whole(&disk, &SimulatedDisk::path(NAME), TEXT).unwrap_err();
        let (path, _) = disk.files().pop_first().expect("the kill left a file");
        let name = path.file_name().unwrap().to_str().unwrap();
        let mark = name.rsplit('-').nth(3).unwrap();
        match self {
            Self::OlderProgram => format!(".{NAME}-{process_id}-3.layshaft-tmp"),
            _ => format!(".{NAME}-{mark}-{process_id}-3.layshaft-tmp"),
        }
    }
}

/// A temporary file, and whether it is to go.
#[derive(Debug)]
struct Case {
    locking: Locking,
    maker: Maker,
    process_id: u32,
    is_held: bool,
    hours: u64,
    goes: bool,
}

const fn case(
    (locking, maker, process_id): (Locking, Maker, u32),
    is_held: bool,
    hours: u64,
    goes: bool,
) -> Case {
    Case {
        locking,
        maker,
        process_id,
        is_held,
        hours,
        goes,
    }
}

#[test]
fn a_file_goes_when_nobody_holds_it_and_one_that_may_be_of_another_machine_after_a_day() {
    use Locking::{Everywhere, OneMachine, Unknown};
    use Maker::{AnotherMachine, OlderProgram, ThisMachine};
    let cases = [
        // The lock decides on this machine.
        case((Everywhere, ThisMachine, LIVING), false, 0, true),
        case((Everywhere, ThisMachine, GONE), false, 0, true),
        case((Everywhere, ThisMachine, LIVING), true, 0, false),
        case((Everywhere, ThisMachine, GONE), true, 48, false),
        // Elsewhere a process says nothing, and a lock not enough.
        case((Everywhere, AnotherMachine, GONE), false, 23, false),
        case((Everywhere, AnotherMachine, GONE), false, 25, true),
        case((Everywhere, AnotherMachine, GONE), true, 25, false),
        case((OneMachine, AnotherMachine, GONE), true, 23, false),
        case((OneMachine, AnotherMachine, LIVING), false, 25, true),
        case((Everywhere, OlderProgram, GONE), false, 23, false),
        case((Everywhere, OlderProgram, GONE), false, 25, true),
        case((Everywhere, OlderProgram, LIVING), true, 25, false),
        // Without locks, the process and the time.
        case((Unknown, ThisMachine, LIVING), false, 23, false),
        case((Unknown, ThisMachine, LIVING), false, 25, true),
        case((Unknown, ThisMachine, GONE), false, 0, true),
        case((Unknown, AnotherMachine, GONE), false, 23, false),
        case((Unknown, AnotherMachine, GONE), false, 25, true),
        case((Unknown, OlderProgram, GONE), false, 23, false),
        case((Unknown, OlderProgram, LIVING), false, 25, true),
    ];
    for case in cases {
        let disk = SimulatedDisk::default();
        disk.end_process(GONE);
        let name = case.maker.name(case.process_id);
        disk.put(&name, TEXT, 0o644);
        disk.age(&name, Duration::from_hours(case.hours));
        let held = case.is_held.then(|| {
            let holder = match case.maker {
                AnotherMachine => disk.of_another_process().of_another_machine(),
                _ => disk.of_another_process(),
            };
            let file = holder.open_lockable(&SimulatedDisk::path(&name)).unwrap();
            file.try_lock().unwrap();
            file
        });
        disk.reach_of_locks(case.locking);
        assert_eq!(sweep(&disk), usize::from(case.goes), "{name}: {case:?}");
        assert_eq!(disk.files().is_empty(), case.goes, "{name}: {case:?}");
        drop(held);
    }
}

#[test]
fn names_of_the_user_s_own_stay_whatever_they_resemble() {
    let disk = SimulatedDisk::default();
    disk.end_process(GONE);
    let ours = Maker::ThisMachine.name(GONE);
    let resembling = [
        NAME.to_owned(),
        ours[1..].to_owned(),
        format!("{ours}~"),
        format!("{ours}.ron"),
        ours.replace("-3.", "-03."),
        ours.replace("-3.", "."),
    ];
    for name in &resembling {
        disk.put(name, TEXT, 0o644);
        disk.age(name, Duration::from_hours(48));
    }
    assert_eq!(sweep(&disk), 0);
    assert_eq!(disk.files().len(), resembling.len());
}

const FAULTS: [Fault; 6] = [
    Fault::Refused(ErrorKind::PermissionDenied),
    Fault::Refused(ErrorKind::NotFound),
    Fault::Refused(ErrorKind::WouldBlock),
    Fault::CutShort,
    Fault::RefusedAndNothingIsRemoved,
    Fault::Killed,
];

/// A disk with a project and what three killed saves and a living one left beside it.
fn littered() -> SimulatedDisk {
    let disk = SimulatedDisk::default();
    disk.put(NAME, TEXT, 0o644);
    for process_id in [1, 2, 3] {
        disk.put(&Maker::ThisMachine.name(process_id), b"half", 0o644);
    }
    disk.put("notes.txt", TEXT, 0o644);
    disk
}

#[test]
fn whichever_step_of_a_sweep_fails_nothing_else_is_touched_and_the_next_one_ends_it() {
    let sound = littered();
    assert_eq!(sweep(&sound), 3);
    let steps = sound.steps();
    let clean = sound.files();
    assert_eq!(clean.len(), 2);
    for (step, name) in steps.into_iter().enumerate() {
        for fault in FAULTS {
            let disk = littered();
            disk.fail_at(step, fault);
            let removed = sweep(&disk);
            let context = format!("{fault:?} at {name} {step}: {disk:?}");
            assert_eq!(disk.files().len(), 5 - removed, "{context}");
            disk.start_again();
            assert_eq!(sweep(&disk), 3 - removed, "{context}");
            assert_eq!(disk.files(), clean, "{context}");
        }
    }
}

#[test]
fn a_sweep_between_any_two_steps_of_a_save_neither_hinders_it_nor_leaves_anything() {
    for (way, save) in SAVES {
        let path = SimulatedDisk::path(NAME);
        let alone = SimulatedDisk::default();
        save(&alone, &path, TEXT).unwrap();
        for is_elsewhere in [false, true] {
            for locking in [Locking::Everywhere, Locking::OneMachine, Locking::Unknown] {
                for step in 0..alone.steps().len() {
                    let disk = SimulatedDisk::default();
                    disk.reach_of_locks(locking);
                    disk.meanwhile(step, move |disk| {
                        if is_elsewhere {
                            sweep(&disk.of_another_machine());
                        } else {
                            sweep(disk);
                        }
                    });
                    let saved = save(&disk, &path, TEXT);
                    let context = format!("{way}, {locking:?}, {is_elsewhere}, {step}: {disk:?}");
                    assert_eq!(saved, Ok(()), "{context}");
                    let files: Vec<_> = disk.files().into_iter().collect();
                    assert_eq!(files, [(path.clone(), TEXT.to_vec())], "{context}");
                }
            }
        }
    }
}

#[test]
fn a_save_between_any_two_steps_of_a_sweep_is_whole_and_the_sweep_takes_what_it_was_to_take() {
    let sound = littered();
    sweep(&sound);
    for step in 0..sound.steps().len() {
        for (way, save) in SAVES {
            let disk = littered();
            let name = format!("{way}.ron");
            let path = SimulatedDisk::path(&name);
            disk.meanwhile(step, {
                let path = path.clone();
                move |disk| save(disk, &path, b"new").unwrap()
            });
            sweep(&disk);
            let files = disk.files();
            assert_eq!(files[&path], b"new", "{way}, {step}: {disk:?}");
            assert!(
                sweep(&disk) <= 1,
                "at most what the two saw held by each other"
            );
            assert_eq!(disk.files().len(), 3, "{way}, {step}: {disk:?}");
        }
    }
}

#[test]
fn a_save_whose_new_file_a_sweep_has_taken_hold_of_takes_another_name() {
    let alone = SimulatedDisk::default();
    let path = SimulatedDisk::path(NAME);
    save_whole(&alone, &path, TEXT).unwrap();
    let lock = alone.steps().iter().position(|&s| s == "lock").unwrap();
    let disk = SimulatedDisk::default();
    disk.fail_at(lock, Fault::Refused(ErrorKind::WouldBlock));
    save_whole(&disk, &path, TEXT).unwrap();
    assert_eq!(disk.steps()[lock..][..3], ["lock", "create", "lock"]);
    assert_eq!(disk.files().len(), 1, "the first one is swept in the end");
}

#[test]
fn a_save_that_finds_its_file_held_every_time_says_so_and_does_not_go_on_for_ever() {
    let disk = SimulatedDisk::default();
    disk.hold_every_new_file();
    let saved = save_whole(&disk, &SimulatedDisk::path(NAME), TEXT);
    assert!(
        matches!(saved, Err(SaveError::NotSaved { .. })),
        "{saved:?}"
    );
}

/// A name that no living program of this machine has: of one that was killed, if `is_ours`.
fn real_name(is_ours: bool) -> String {
    let ours = real_temporary_name();
    let begin = ours.rsplitn(4, '-').nth(3).unwrap();
    // No system has a process with this id.
    if is_ours {
        format!("{begin}-4294967295-0.layshaft-tmp")
    } else {
        format!(".{NAME}-4294967295-0.layshaft-tmp")
    }
}

/// The name under which a save into a folder of its own goes on; seen by whoever looks meanwhile.
fn real_temporary_name() -> String {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(NAME);
    loop {
        let seen = thread::scope(|scope| {
            let saver = scope.spawn(|| save_whole(&Disk, &path, &vec![0; 4_000_000]).unwrap());
            let mut seen = None;
            while seen.is_none() && !saver.is_finished() {
                seen = names_in(folder.path())
                    .into_iter()
                    .find(|name| name.ends_with(".layshaft-tmp"));
            }
            seen
        });
        if let Some(name) = seen {
            return name;
        }
    }
}

#[test]
fn a_real_sweep_takes_what_nobody_holds_and_leaves_links_folders_and_pipes() {
    let folder = tempfile::tempdir().unwrap();
    let ours = real_name(true);
    let name = |n: u32| ours.replace("-0.layshaft-tmp", &format!("-{n}.layshaft-tmp"));
    let at = |n: u32| folder.path().join(name(n));
    for n in 0..2 {
        fs::write(at(n), TEXT).unwrap();
    }
    let held = Disk.open_lockable(&at(0)).unwrap();
    held.try_lock().unwrap();
    fs::create_dir(at(2)).unwrap();
    let mut expected = vec![name(0), name(2)];
    if pipe_at(&at(3)) {
        expected.push(name(3));
    }
    #[cfg(unix)]
    {
        fs::write(folder.path().join("precious"), TEXT).unwrap();
        std::os::unix::fs::symlink(folder.path().join("precious"), at(4)).unwrap();
        std::os::unix::fs::symlink("nowhere", at(5)).unwrap();
        expected.extend([name(4), name(5), "precious".to_owned()]);
    }
    let swept = without_waiting({
        let folder = folder.path().to_owned();
        move || sweep_stale(&Disk, &folder)
    });
    assert_eq!(names_in(folder.path()), expected);
    assert_eq!(swept, 1);
    drop(held);
    assert_eq!(sweep_stale(&Disk, folder.path()), 1);
    assert_eq!(sweep_stale(&Disk, &folder.path().join("no such folder")), 0);
}

#[test]
fn a_save_and_an_opening_sweep_the_folder_of_the_file_itself_not_that_of_a_link() {
    let folder = tempfile::tempdir().unwrap();
    let [real, other] = ["real", "other"].map(|name| folder.path().join(name));
    for place in [&real, &other] {
        fs::create_dir(place).unwrap();
    }
    let stray = real.join(real_name(true));
    let path = real.join(NAME);
    save_whole(&Disk, &path, TEXT).unwrap();
    for save in [save_whole as Save, save_private] {
        fs::write(&stray, TEXT).unwrap();
        save(&Disk, &path, TEXT).unwrap();
        assert_eq!(names_in(&real), [NAME]);
    }
    fs::write(&stray, TEXT).unwrap();
    save_new(&Disk, &real.join("new.ron"), TEXT).unwrap();
    assert_eq!(names_in(&real), ["new.ron", NAME]);
    #[cfg(unix)]
    {
        fs::write(&stray, TEXT).unwrap();
        let link = other.join("link.ron");
        std::os::unix::fs::symlink(&path, &link).unwrap();
        assert_eq!(sweep_beside(&Disk, &link), 1);
        assert!(!stray.exists());
    }
    assert_eq!(sweep_beside(&Disk, &real.join("none.ron")), 0);
}

#[test]
fn what_an_older_program_left_is_swept_after_a_day() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(real_name(false));
    fs::write(&path, TEXT).unwrap();
    assert_eq!(sweep_stale(&Disk, folder.path()), 0);
    super::grow_old(&path);
    assert_eq!(sweep_stale(&Disk, folder.path()), 1);
}

#[test]
fn savers_and_sweepers_of_one_folder_do_not_get_into_each_other_s_way() {
    let folder = tempfile::tempdir().unwrap();
    let begun = Instant::now();
    let goes_on = || begun.elapsed() < Duration::from_millis(800);
    let save_on = |n: u64| {
        let mut saves = 0;
        while goes_on() {
            let save = SAVES[if saves % 2 == 0 { 0 } else { 2 }].1;
            let text = format!("{n} {saves}");
            let path = folder.path().join(format!("{n}.ron"));
            save(&Disk, &path, text.as_bytes()).unwrap();
            assert_eq!(fs::read_to_string(&path).unwrap(), text);
            saves += 1;
        }
    };
    thread::scope(|scope| {
        for n in [1, 2] {
            scope.spawn(move || save_on(n));
            scope.spawn(|| {
                while goes_on() {
                    sweep_stale(&Disk, folder.path());
                }
            });
        }
    });
    sweep_stale(&Disk, folder.path());
    assert_eq!(names_in(folder.path()), ["1.ron", "2.ron"]);
}

/// Prints what a sweep costs among many names: `cargo test --release --test it -- --ignored
/// --nocapture among_100_000_names`.
#[test]
#[ignore = "measures, and proves nothing"]
fn the_cost_of_a_sweep_among_100_000_names() {
    let folder = tempfile::tempdir().unwrap();
    for n in 0..100_000 {
        fs::write(folder.path().join(format!("picture {n}.png")), b"").unwrap();
    }
    for round in 0..3 {
        let begun = Instant::now();
        sweep_stale(&Disk, folder.path());
        skipped(&format!("{:?} for sweep {round}", begun.elapsed()));
    }
}
