//! Does everything go that killed saves left, and nothing that a living program needs?

use std::fs;
use std::path::Path;
use std::time::Duration;

use layshaft::project::{Disk, sweep_stale};

use super::names_in;
use super::simulated::{FOLDER, SimulatedDisk};

const NAME: &str = "van.ron";
const OLD: &[u8] = b"the old text";

#[test]
fn a_sweep_takes_what_a_gone_process_left_or_what_is_a_day_old_and_nothing_else() {
    let (alive, gone) = (7001, 7002);
    let disk = SimulatedDisk::default();
    disk.end_process(gone);
    let of_gone = format!(".van.ron-{gone}-3.layshaft-tmp");
    let of_living = format!(".van.ron-{alive}-3.layshaft-tmp");
    let of_long_ago = format!(".van.ron-{alive}-4.layshaft-tmp");
    let of_the_user = format!("van.ron-{gone}-3.layshaft-tmp");
    for name in [&of_gone, &of_living, &of_long_ago, &of_the_user, NAME] {
        disk.put(name, OLD, 0o644);
        disk.age(name, Duration::from_hours(23));
    }
    disk.age(&of_long_ago, Duration::from_hours(25));
    disk.age(&of_the_user, Duration::from_hours(25));
    disk.age(NAME, Duration::from_hours(25));
    assert_eq!(sweep_stale(&disk, Path::new(FOLDER)), 2);
    let mut left = [&of_living, &of_the_user, NAME].map(SimulatedDisk::path);
    left.sort();
    assert_eq!(disk.files().into_keys().collect::<Vec<_>>(), left);
}

#[test]
fn a_real_sweep_leaves_links_folders_and_the_files_of_this_process() {
    let folder = tempfile::tempdir().unwrap();
    let mine = format!(".a-{}-0.layshaft-tmp", std::process::id());
    fs::write(folder.path().join(&mine), OLD).unwrap();
    // No system has a process with this id.
    fs::create_dir(folder.path().join(".b-4294967295-0.layshaft-tmp")).unwrap();
    let mut expected = vec![mine, ".b-4294967295-0.layshaft-tmp".to_owned()];
    #[cfg(unix)]
    {
        let link = ".c-4294967295-0.layshaft-tmp";
        std::os::unix::fs::symlink("anywhere", folder.path().join(link)).unwrap();
        expected.push(link.to_owned());
    }
    assert_eq!(sweep_stale(&Disk, folder.path()), 0);
    assert_eq!(names_in(folder.path()), expected);
    assert_eq!(sweep_stale(&Disk, &folder.path().join("no such folder")), 0);
}
