//! Is every file whole, and nothing left over, after the program was killed at random moments?
//!
//! The test binary starts itself again as the saver, which starts as the window does and then saves
//! documents, copies of unsaved work and exports without end, until it is killed. Two such savers work
//! in the same folders at a time. What a power cut does is tried on the simulated disk only.

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::Arc;
use std::thread;
use std::time::{Duration, SystemTime};

use layshaft::app::{App, Surroundings};
use layshaft::project::{
    Disk, Edit, Project, RecoveryCopy, format, save_new, save_whole, sweep_beside,
};

use super::{grow_old, names_in};
use crate::support::scripted_picker::ScriptedPicker;
use crate::support::window::camper_van;

/// How many savers work at the same time.
const SAVERS: usize = 2;

/// How many times each of them is killed.
const KILLS: usize = 150;

/// The longest time after its first round that a saver is left alive, in µs: a few rounds' worth.
const LONGEST_LIFE_US: u64 = 15_000;

/// Tells the test that it is the saver, and where to save.
const SAVER_FOLDER: &str = "LAYSHAFT_TEST_SAVER_FOLDER";

/// Tells the saver which one it is.
const SAVER_NUMBER: &str = "LAYSHAFT_TEST_SAVER_NUMBER";

/// Repeats a run of the test: the seed that it printed.
const SEED: &str = "LAYSHAFT_TEST_SEED";

/// The project's folder with exports in it, and the folder of copies.
#[derive(Clone, Copy)]
struct Place<'a>(&'a Path);

impl Place<'_> {
    fn projects(self) -> PathBuf {
        self.0.join("projects")
    }

    fn kept(self) -> PathBuf {
        self.0.join("kept")
    }

    fn document(self, saver: &str) -> PathBuf {
        self.projects().join(format!("коробка {saver} 🚚.ron"))
    }

    /// A window as it starts, with its locks.
    fn start(self, document: Option<PathBuf>) -> App {
        if let Some(document) = &document {
            // What opening does.
            sweep_beside(&Disk, document);
        }
        let surroundings = Surroundings {
            file_system: Arc::new(Disk),
            picker: Box::new(ScriptedPicker::default()),
            settings_folder: None,
            ..Surroundings::default()
        };
        let mut app = App::new(camper_van(), document, surroundings);
        app.keep_unsaved_work_in(&self.kept());
        app
    }
}

/// Two documents that no mixture of them equals.
fn documents() -> [Project; 2] {
    let untitled = Edit::Title(None).applied_to(&camper_van()).unwrap();
    [camper_van(), untitled]
}

/// An export, of many writes' length.
fn export() -> Vec<u8> {
    vec![b'p'; 150_000]
}

/// Saves without end; tells on stdout when the first round is done.
fn save_until_killed(place: Place<'_>, saver: &str) {
    let document = place.document(saver);
    let _window = place.start(Some(document.clone()));
    let copy_path = place.kept().join(format!("{}-7.ron", std::process::id()));
    for round in 0_usize.. {
        let project = documents()[round % 2].clone();
        save_whole(
            &Disk,
            &document,
            format::write(&project).unwrap().as_bytes(),
        )
        .unwrap();
        let copy = RecoveryCopy {
            file: Some(document.clone()),
            began_from: Some(7),
            written_unix_s: 7,
            project: Arc::new(project),
        };
        copy.write(&Disk, &copy_path).unwrap();
        let exported = place.projects().join(format!("{saver}.png"));
        let _ = fs::remove_file(&exported);
        save_new(&Disk, &exported, &export()).unwrap();
        if round == 0 {
            // Past the harness, which would keep it until the end of the test.
            writeln!(std::io::stdout(), "\nsaving").unwrap();
        }
    }
}

/// A saver that has saved once.
fn saver_at_work(place: Place<'_>, number: &str) -> Child {
    let this_test =
        "files::killed::after_300_kills_every_file_is_whole_and_the_next_start_cleans_up";
    let mut saver = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", this_test])
        .env(SAVER_FOLDER, place.0)
        .env(SAVER_NUMBER, number)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let lines = BufReader::new(saver.stdout.as_mut().unwrap()).lines();
    assert!(
        lines.map_while(Result::ok).any(|line| line == "saving"),
        "the saver does not save"
    );
    saver
}

/// Whether `name` is that of a temporary file.
fn is_temporary(name: &str) -> bool {
    name.starts_with('.') && name.ends_with(".layshaft-tmp")
}

/// The next number of a sequence that looks random (splitmix64, Steele et al. 2014).
fn next_random(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
    let mut z = *state;
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// The seed from the environment, or one from the clock.
fn seed() -> u64 {
    let from_clock = || {
        SystemTime::UNIX_EPOCH
            .elapsed()
            .unwrap()
            .subsec_nanos()
            .into()
    };
    std::env::var(SEED).map_or_else(|_| from_clock(), |text| text.parse().unwrap())
}

/// Kills a saver many times; the number of kills that left a temporary file, and of files for locks.
fn kill_again_and_again(place: Place<'_>, number: &str, seed: u64) -> [usize; 2] {
    let mut random = seed;
    let mut left = [0; 2];
    for kill in 0..KILLS {
        let mut saver = saver_at_work(place, number);
        thread::sleep(Duration::from_micros(
            next_random(&mut random) % LONGEST_LIFE_US,
        ));
        assert_eq!(saver.try_wait().unwrap(), None, "the saver ended by itself");
        saver.kill().unwrap();
        saver.wait().unwrap();
        let project = fs::read_to_string(place.document(number)).unwrap();
        let is_whole = documents()
            .iter()
            .any(|d| format::write(d).unwrap() == project);
        assert!(is_whole, "the document is broken after kill {kill}");
        if let Ok(bytes) = fs::read(place.projects().join(format!("{number}.png"))) {
            assert!(bytes == export(), "the export is broken after kill {kill}");
        }
        let copy_path = place.kept().join(format!("{}-7.ron", saver.id()));
        let copy = RecoveryCopy::read(&Disk, &copy_path).expect("the copy is whole");
        assert!(documents().contains(&copy.project), "kill {kill}");
        // The work was looked at, and is thrown away.
        fs::remove_file(copy_path).unwrap();
        let names = [names_in(&place.projects()), names_in(&place.kept())].concat();
        let of_this_saver = format!("-{}-", saver.id());
        let is_its = |name: &&String| is_temporary(name) && name.contains(&of_this_saver);
        left[0] += names.iter().filter(is_its).count();
        let its_lock = format!("{}-", saver.id());
        let is_its = |name: &&String| name.starts_with(&its_lock);
        left[1] += names.iter().filter(is_its).count();
    }
    left
}

#[test]
fn after_300_kills_every_file_is_whole_and_the_next_start_cleans_up() {
    if let Some(folder) = std::env::var_os(SAVER_FOLDER) {
        let number = std::env::var(SAVER_NUMBER).unwrap();
        return save_until_killed(Place(Path::new(&folder)), &number);
    }
    let seed = seed();
    println!("{SEED}={seed}");
    let folder = tempfile::tempdir().unwrap();
    let place = Place(folder.path());
    fs::create_dir(place.projects()).unwrap();
    fs::create_dir(place.kept()).unwrap();
    let left = thread::scope(|scope| {
        let killers: Vec<_> = (0..SAVERS)
            .map(|n| {
                let seed = seed.wrapping_add(n as u64);
                scope.spawn(move || kill_again_and_again(place, &n.to_string(), seed))
            })
            .collect();
        killers
            .into_iter()
            .map(|k| k.join().unwrap())
            .collect::<Vec<_>>()
    });
    println!("temporary files and locks that each saver's kills left: {left:?}");
    for [temporary, locks] in left {
        assert!(
            temporary > 0,
            "no kill struck a save: this test shows nothing"
        );
        // Where the other saver has not started meanwhile and swept.
        assert!(locks > 0, "a window that is killed leaves its lock");
    }
    if cfg!(not(target_os = "linux")) {
        // Elsewhere nothing tells this machine from others, only that a file is old.
        for name in names_in(&place.projects())
            .iter()
            .filter(|n| is_temporary(n))
        {
            grow_old(&place.projects().join(name));
        }
        for name in names_in(&place.kept()).iter().filter(|n| is_temporary(n)) {
            grow_old(&place.kept().join(name));
        }
    }
    let mut next = place.start(Some(place.document("0")));
    eframe::App::on_exit(&mut next, None);
    drop(next);
    let mut after_that = place.start(None);
    eframe::App::on_exit(&mut after_that, None);
    let mut left_over = names_in(&place.projects());
    left_over.retain(|name| {
        let is_of =
            |saver: &str| place.document(saver).ends_with(name) || *name == format!("{saver}.png");
        !is_of("0") && !is_of("1")
    });
    assert_eq!(left_over, [""; 0]);
    assert_eq!(names_in(&place.kept()), [""; 0]);
}
