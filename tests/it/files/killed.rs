//! Is every file whole after the saving program was killed at a random moment?
//!
//! The test binary starts itself again as the saver, which does nothing but save alternating
//! documents until it is killed. What a power cut does is tried on the simulated disk only.

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, SystemTime};

use layshaft::project::{Disk, save_whole, sweep_stale};

use super::names_in;

const KILLS: usize = 200;

/// The longest time after its first save that a saver is left alive, in µs: a few saves' worth.
const LONGEST_LIFE_US: u64 = 30_000;

/// Tells the test that it is the saver, and where to save.
const SAVER_FOLDER: &str = "LAYSHAFT_TEST_SAVER_FOLDER";

/// Repeats a run of the test: the seed that it printed.
const SEED: &str = "LAYSHAFT_TEST_SEED";

const TARGETS: [&str; 3] = ["van.ron", ".коробка 🚚.ron", "no extension"];

/// Two documents, of many writes' length, that no mixture of them equals.
fn documents() -> [Vec<u8>; 2] {
    [vec![b'o'; 40_000], vec![b'n'; 150_000]]
}

/// Saves without end; tells on stdout when the first save is done.
fn save_until_killed(folder: &Path) {
    for round in 0_usize.. {
        let document = &documents()[round % 2];
        save_whole(
            &Disk,
            &folder.join(TARGETS[round % TARGETS.len()]),
            document,
        )
        .unwrap();
        if round == 0 {
            // Past the harness, which would keep it until the end of the test.
            writeln!(std::io::stdout(), "\nsaving").unwrap();
        }
    }
}

/// A saver that has saved once.
fn saver_at_work(folder: &Path) -> Child {
    let this_test = "files::killed::after_200_kills_every_file_is_whole_and_one_sweep_cleans_up";
    let mut saver = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", this_test])
        .env(SAVER_FOLDER, folder)
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

#[test]
fn after_200_kills_every_file_is_whole_and_one_sweep_cleans_up() {
    if let Some(folder) = std::env::var_os(SAVER_FOLDER) {
        return save_until_killed(Path::new(&folder));
    }
    let seed = seed();
    println!("{SEED}={seed}");
    let folder = tempfile::tempdir().unwrap();
    let mut random = seed;
    for kill in 0..KILLS {
        let mut saver = saver_at_work(folder.path());
        thread::sleep(Duration::from_micros(
            next_random(&mut random) % LONGEST_LIFE_US,
        ));
        assert_eq!(saver.try_wait().unwrap(), None, "the saver ended by itself");
        saver.kill().unwrap();
        saver.wait().unwrap();
        for target in TARGETS {
            let Ok(bytes) = fs::read(folder.path().join(target)) else {
                continue;
            };
            assert!(
                documents().contains(&bytes),
                "{target} is broken after kill {kill}"
            );
        }
    }
    let (strays, targets): (Vec<_>, Vec<_>) = names_in(folder.path())
        .into_iter()
        .partition(|name| is_temporary(name));
    println!(
        "{} temporary files were left by {KILLS} kills",
        strays.len()
    );
    assert_eq!(targets.len(), TARGETS.len(), "{targets:?}");
    assert!(
        !strays.is_empty(),
        "no kill struck a save: this test shows nothing"
    );
    if cfg!(not(target_os = "linux")) {
        // Elsewhere nobody knows that a process is gone, only that a file is old.
        for name in &strays {
            grow_old(&folder.path().join(name));
        }
    }
    assert_eq!(sweep_stale(&Disk, folder.path()), strays.len());
    assert_eq!(names_in(folder.path()), targets);
}

fn grow_old(path: &Path) {
    let file = fs::OpenOptions::new().write(true).open(path).unwrap();
    file.set_modified(SystemTime::now() - Duration::from_hours(48))
        .unwrap();
}
