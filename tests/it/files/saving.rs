//! Is a file saved whole or not at all, whichever step fails, and does it stay what it was?

use std::collections::BTreeMap;
use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use layshaft::project::{
    Access, Disk, FileSystem, SaveError, save_new, save_private, save_whole, sweep_stale,
};

use super::simulated::{FOLDER, Fault, OF_ANOTHER, SimulatedDisk};
use super::{names_in, skipped, without_waiting};

const NAME: &str = "van.ron";
const OLD: &[u8] = b"the old text";

/// The new text, of three writes' length.
fn new_text() -> Vec<u8> {
    (0..2500_u32)
        .map(|i| b'a' + u8::try_from(i % 26).unwrap())
        .collect()
}

/// The ways to save on the simulated disk.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Way {
    /// `save_whole` over the old text.
    Replacing,
    /// `save_whole` where nothing was.
    First,
    /// `save_new` where nothing was.
    New,
    /// The same where a file can have only one name.
    NewWithoutLinks,
    /// `save_private` over the old text.
    ReplacingPrivate,
    /// `save_private` where nothing was.
    FirstPrivate,
}

const WAYS: [Way; 6] = [
    Way::Replacing,
    Way::First,
    Way::New,
    Way::NewWithoutLinks,
    Way::ReplacingPrivate,
    Way::FirstPrivate,
];

const FAULTS: [Fault; 6] = [
    Fault::Refused(ErrorKind::StorageFull),
    Fault::Refused(ErrorKind::PermissionDenied),
    Fault::Refused(ErrorKind::NotFound),
    Fault::Refused(ErrorKind::AlreadyExists),
    Fault::CutShort,
    Fault::RefusedAndNothingIsRemoved,
];

impl Way {
    /// A disk before the save.
    fn disk(self) -> SimulatedDisk {
        let disk = SimulatedDisk::default();
        if self.before().is_some() {
            disk.put(NAME, OLD, 0o600);
        }
        if self == Self::NewWithoutLinks {
            disk.without_links();
        }
        disk
    }

    fn save(self, disk: &SimulatedDisk) -> Result<(), SaveError> {
        let path = SimulatedDisk::path(NAME);
        match self {
            Self::Replacing | Self::First => save_whole(disk, &path, &new_text()),
            Self::New | Self::NewWithoutLinks => save_new(disk, &path, &new_text()),
            Self::ReplacingPrivate | Self::FirstPrivate => save_private(disk, &path, &new_text()),
        }
    }

    /// What is under the name before the save.
    fn before(self) -> Option<Vec<u8>> {
        matches!(self, Self::Replacing | Self::ReplacingPrivate).then(|| OLD.to_vec())
    }

    /// The steps of a save in which nothing fails.
    fn steps(self) -> Vec<&'static str> {
        let disk = self.disk();
        self.save(&disk).unwrap();
        disk.steps()
    }
}

fn target_in(files: &BTreeMap<PathBuf, Vec<u8>>) -> Option<Vec<u8>> {
    files.get(&SimulatedDisk::path(NAME)).cloned()
}

fn is_old_or_new(way: Way, target: Option<&Vec<u8>>) -> bool {
    target == way.before().as_ref() || target == Some(&new_text())
}

#[test]
fn a_file_is_replaced_in_these_steps() {
    let steps = [
        "canonicalize",
        "facts",
        "check writable",
        "create",
        "lock",
        "is at",
        "copy permissions",
        "write",
        "write",
        "write",
        "flush",
        "sync",
        "rename",
        "sync folder",
        "names",
    ];
    assert_eq!(Way::Replacing.steps(), steps);
}

#[test]
fn whichever_step_fails_the_file_is_old_or_new_as_the_error_says_and_nothing_stays_behind() {
    for way in WAYS {
        for step in 0..way.steps().len() {
            for fault in FAULTS {
                let disk = way.disk();
                disk.fail_at(step, fault);
                let result = way.save(&disk);
                let context = format!("{way:?}, {fault:?} at step {step}: {result:?}, {disk:?}");
                let is_saved = result.as_ref().map_or_else(SaveError::is_saved, |()| true);
                let expected = if is_saved {
                    Some(new_text())
                } else {
                    way.before()
                };
                assert_eq!(target_in(&disk.files()), expected, "{context}");
                let strays = disk.files().len() - usize::from(expected.is_some());
                // What a single refusal left, the sweep behind the save has taken.
                let removal_failed = disk.steps()[step..].contains(&"remove")
                    && fault == Fault::RefusedAndNothingIsRemoved;
                assert_eq!(strays, usize::from(removal_failed), "{context}");
            }
        }
    }
}

#[test]
fn every_failed_step_of_the_writing_itself_is_reported() {
    let tolerated = ["check writable", "lock", "remove", "link", "names"];
    for way in WAYS {
        for (step, name) in way.steps().into_iter().enumerate() {
            let disk = way.disk();
            disk.fail_at(step, Fault::Refused(ErrorKind::StorageFull));
            let result = way.save(&disk);
            let is_told = match name {
                "sync folder" => matches!(result, Err(SaveError::NotConfirmed { .. })),
                _ => matches!(
                    result,
                    Err(SaveError::NotSaved { .. } | SaveError::NoFolder { .. })
                ),
            };
            assert!(
                is_told || tolerated.contains(&name),
                "{way:?}, {name}: {result:?}"
            );
        }
    }
}

#[test]
fn a_kill_at_any_step_leaves_the_old_file_or_the_new_one_and_one_sweep_cleans_up() {
    for way in WAYS {
        for step in 0..way.steps().len() {
            let disk = way.disk();
            disk.fail_at(step, Fault::Killed);
            drop(way.save(&disk));
            disk.start_again();
            let target = target_in(&disk.files());
            assert!(
                is_old_or_new(way, target.as_ref()),
                "{way:?}, step {step}: {disk:?}"
            );
            let strays = disk.files().len() - usize::from(target.is_some());
            assert_eq!(sweep_stale(&disk, Path::new(FOLDER)), strays);
            assert_eq!(
                disk.files().len(),
                usize::from(target.is_some()),
                "{disk:?}"
            );
            assert_eq!(target_in(&disk.files()), target);
        }
    }
}

#[test]
fn a_power_cut_at_any_step_leaves_the_old_file_or_the_new_one() {
    for way in WAYS {
        for step in 0..way.steps().len() {
            let disk = way.disk();
            disk.fail_at(step, Fault::Killed);
            drop(way.save(&disk));
            for names_arrived in [true, false] {
                let target = target_in(&disk.files_after_power_cut(names_arrived));
                let context = format!("{way:?}, step {step}, {names_arrived}: {disk:?}");
                assert!(is_old_or_new(way, target.as_ref()), "{context}");
            }
        }
    }
}

#[test]
fn what_is_reported_as_saved_survives_a_power_cut() {
    for way in WAYS {
        let disk = way.disk();
        way.save(&disk).unwrap();
        for names_arrived in [true, false] {
            let target = target_in(&disk.files_after_power_cut(names_arrived));
            assert_eq!(target, Some(new_text()), "{way:?}");
        }
    }
}

#[test]
fn the_permissions_are_those_of_the_old_file_before_the_first_write() {
    let disk = Way::Replacing.disk();
    Way::Replacing.save(&disk).unwrap();
    assert_eq!(disk.mode(NAME), 0o600);
    let steps = disk.steps();
    let at = |name| steps.iter().position(|&step| step == name).unwrap();
    assert!(at("copy permissions") < at("write"), "{steps:?}");
}

#[test]
fn a_file_that_this_user_may_not_change_is_protected() {
    let disk = Way::Replacing.disk();
    let step = Way::Replacing
        .steps()
        .iter()
        .position(|&step| step == "check writable")
        .unwrap();
    disk.fail_at(step, Fault::Refused(ErrorKind::PermissionDenied));
    let result = Way::Replacing.save(&disk);
    assert!(
        matches!(result, Err(SaveError::Protected { .. })),
        "{result:?}"
    );
}

#[test]
fn a_taken_temporary_name_is_passed_over_and_left_alone() {
    let disk = Way::Replacing.disk();
    let step = Way::Replacing
        .steps()
        .iter()
        .position(|&step| step == "create")
        .unwrap();
    disk.fail_at(step, Fault::Refused(ErrorKind::AlreadyExists));
    Way::Replacing.save(&disk).unwrap();
    assert_eq!(disk.steps()[step..][..2], ["create", "create"]);
    assert!(!disk.steps().contains(&"remove"));
}

#[test]
fn a_new_file_never_replaces_one() {
    for without_links in [false, true] {
        let disk = SimulatedDisk::default();
        disk.put(NAME, OLD, 0o644);
        if without_links {
            disk.without_links();
        }
        let path = SimulatedDisk::path(NAME);
        let taken = SaveError::NameTaken { path: path.clone() };
        assert_eq!(save_new(&disk, &path, b"new"), Err(taken));
        assert_eq!(target_in(&disk.files()).unwrap(), OLD);
        assert_eq!(disk.files().len(), 1);
    }
}

/// Only where files cannot have two names is there an instant in which it would not be noticed.
#[test]
fn a_file_that_another_program_makes_meanwhile_is_not_replaced_either() {
    for way in [Way::New, Way::NewWithoutLinks] {
        let steps = way.steps();
        let is_placing = |name: &&str| matches!(*name, "link" | "rename");
        let placed = steps.iter().rposition(is_placing).unwrap();
        let last = if way == Way::New { placed } else { placed - 1 };
        for step in 0..=last {
            let disk = way.disk();
            disk.fail_at(step, Fault::Made(NAME));
            let result = way.save(&disk);
            let is_told = matches!(result, Err(SaveError::NameTaken { .. }));
            assert!(is_told, "{way:?}, step {step}: {result:?}");
            assert_eq!(target_in(&disk.files()).unwrap(), OF_ANOTHER);
            assert_eq!(disk.files().len(), 1, "{disk:?}");
        }
    }
}

#[test]
fn the_real_disk_makes_no_file_where_one_is() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(NAME);
    fs::write(&path, OLD).unwrap();
    let error = Disk
        .create_new(&path, Access::Usual)
        .err()
        .map(|error| error.kind());
    assert_eq!(error, Some(ErrorKind::AlreadyExists));
    let error = Disk.link(&path, &path).err().map(|error| error.kind());
    assert_eq!(error, Some(ErrorKind::AlreadyExists));
    assert_eq!(fs::read(&path).unwrap(), OLD);
}

#[test]
fn a_file_of_any_name_is_saved_and_saved_again() {
    let long = format!("{}.ron", "ё".repeat(125));
    let names = [
        "van.ron",
        "two  words.ron",
        "Коробка передач.ron",
        "🚚💨.ron",
        ".hidden",
        "no extension",
        "many.dots.ron",
        "-dash",
        "driver's.ron",
        &long,
    ];
    let folder = tempfile::tempdir().unwrap();
    for name in names {
        let path = folder.path().join(name);
        save_whole(&Disk, &path, OLD).unwrap();
        assert_eq!(fs::read(&path).unwrap(), OLD, "{name}");
        save_whole(&Disk, &path, &new_text()).unwrap();
        assert_eq!(fs::read(&path).unwrap(), new_text(), "{name}");
        save_whole(&Disk, &path, b"").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"", "{name}");
    }
    assert_eq!(names_in(folder.path()).len(), names.len());
}

#[test]
fn a_real_new_file_never_replaces_one() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(NAME);
    save_new(&Disk, &path, OLD).unwrap();
    let taken = SaveError::NameTaken { path: path.clone() };
    assert_eq!(save_new(&Disk, &path, b"other"), Err(taken));
    assert_eq!(fs::read(&path).unwrap(), OLD);
    assert_eq!(names_in(folder.path()), [NAME]);
}

#[test]
fn what_cannot_be_a_file_is_refused_by_name() {
    let folder = tempfile::tempdir().unwrap();
    let in_folder = |name: &str| folder.path().join(name);
    fs::write(in_folder("file"), OLD).unwrap();
    let save = |path: &Path| save_whole(&Disk, path, b"new").unwrap_err();

    let path = folder.path().to_owned();
    assert_eq!(save(&path), SaveError::IsAFolder { path });
    let path = PathBuf::new();
    assert_eq!(save(&path), SaveError::NoFileName { path });
    let path = in_folder("new/");
    assert_eq!(save(&path), SaveError::NoFileName { path });
    assert_eq!(
        save(&in_folder("none/a")),
        SaveError::NoFolder {
            folder: in_folder("none")
        }
    );
    assert_eq!(
        save(&in_folder("file/a")),
        SaveError::NoFolder {
            folder: in_folder("file")
        }
    );
    assert_eq!(names_in(folder.path()), ["file"]);
    assert_eq!(fs::read(in_folder("file")).unwrap(), OLD);
}

#[test]
fn a_path_that_no_system_allows_is_an_error_and_one_line() {
    let error = save_whole(&Disk, Path::new("a\0\nb"), b"new").unwrap_err();
    assert!(matches!(error, SaveError::NotSaved { .. }), "{error:?}");
    assert!(!error.to_string().contains(char::is_control), "{error}");
}

#[test]
fn a_name_that_is_too_long_is_refused_with_the_reason() {
    let folder = tempfile::tempdir().unwrap();
    let error = save_whole(&Disk, &folder.path().join("a".repeat(5000)), b"new").unwrap_err();
    assert!(matches!(error, SaveError::NotSaved { .. }), "{error:?}");
    assert!(error.to_string().chars().count() < 300, "{error}");
}

#[cfg(unix)]
mod on_unix {
    use std::os::unix::fs::{MetadataExt, PermissionsExt, symlink};
    use std::os::unix::net::UnixListener;
    use std::process::Command;

    use super::*;

    fn mode_of(path: &Path) -> u32 {
        fs::metadata(path).unwrap().mode() & 0o7777
    }

    #[test]
    fn a_new_file_has_the_permissions_of_any_new_file() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("any"), OLD).unwrap();
        save_whole(&Disk, &folder.path().join(NAME), OLD).unwrap();
        save_new(&Disk, &folder.path().join("new"), OLD).unwrap();
        let mode = mode_of(&folder.path().join("any"));
        assert_eq!(mode_of(&folder.path().join(NAME)), mode);
        assert_eq!(mode_of(&folder.path().join("new")), mode);
    }

    #[test]
    fn a_saved_file_keeps_its_permissions() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(NAME);
        for mode in [0o644, 0o600, 0o664, 0o666, 0o755] {
            fs::write(&path, OLD).unwrap();
            fs::set_permissions(&path, fs::Permissions::from_mode(mode)).unwrap();
            save_whole(&Disk, &path, &new_text()).unwrap();
            assert_eq!(mode_of(&path), mode, "{mode:o}");
        }
    }

    #[test]
    fn a_saved_file_keeps_its_owner_where_that_is_allowed() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(NAME);
        fs::write(&path, OLD).unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).unwrap();
        if std::os::unix::fs::chown(&path, Some(12_345), Some(12_346)).is_err() {
            return skipped("this user may not give files away");
        }
        save_whole(&Disk, &path, &new_text()).unwrap();
        let metadata = fs::metadata(&path).unwrap();
        assert_eq!((metadata.uid(), metadata.gid()), (12_345, 12_346));
        assert_eq!(mode_of(&path), 0o640);
    }

    #[test]
    fn a_link_stays_a_link_and_its_target_is_replaced_in_its_own_folder() {
        let folder = tempfile::tempdir().unwrap();
        let elsewhere = folder.path().join("elsewhere");
        fs::create_dir(&elsewhere).unwrap();
        fs::write(elsewhere.join("real.ron"), OLD).unwrap();
        let link = folder.path().join("link.ron");
        symlink("elsewhere/real.ron", &link).unwrap();
        let link_to_link = folder.path().join("second.ron");
        symlink(&link, &link_to_link).unwrap();

        save_whole(&Disk, &link_to_link, &new_text()).unwrap();
        assert_eq!(fs::read(elsewhere.join("real.ron")).unwrap(), new_text());
        assert_eq!(
            fs::read_link(&link).unwrap(),
            Path::new("elsewhere/real.ron")
        );
        assert_eq!(fs::read_link(&link_to_link).unwrap(), link);
        assert_eq!(names_in(&elsewhere), ["real.ron"]);
        assert_eq!(
            names_in(folder.path()),
            ["elsewhere", "link.ron", "second.ron"]
        );
    }

    #[test]
    fn a_link_that_leads_nowhere_is_left_alone() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("link.ron");
        symlink("none.ron", &path).unwrap();
        let broken = SaveError::BrokenLink { path: path.clone() };
        assert_eq!(save_whole(&Disk, &path, OLD), Err(broken));
        let taken = SaveError::NameTaken { path: path.clone() };
        assert_eq!(save_new(&Disk, &path, OLD), Err(taken));
        assert_eq!(names_in(folder.path()), ["link.ron"]);
    }

    #[test]
    fn links_in_a_circle_are_an_error() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("circle.ron");
        symlink("circle.ron", &path).unwrap();
        let result = save_whole(&Disk, &path, OLD);
        assert!(
            matches!(result, Err(SaveError::NotSaved { .. })),
            "{result:?}"
        );
    }

    #[test]
    fn another_name_of_the_file_keeps_the_old_text() {
        let folder = tempfile::tempdir().unwrap();
        let (path, other) = (folder.path().join(NAME), folder.path().join("other.ron"));
        fs::write(&path, OLD).unwrap();
        fs::hard_link(&path, &other).unwrap();
        save_whole(&Disk, &path, &new_text()).unwrap();
        assert_eq!(fs::read(&path).unwrap(), new_text());
        assert_eq!(fs::read(&other).unwrap(), OLD);
    }

    #[test]
    fn a_new_file_ends_with_one_name() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(NAME);
        save_new(&Disk, &path, OLD).unwrap();
        assert_eq!(fs::metadata(&path).unwrap().nlink(), 1);
    }

    /// Only on nodes made for it: should the program be wrong, no device of the machine is lost.
    #[test]
    fn a_device_a_pipe_or_a_socket_is_never_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let (device, pipe) = (folder.path().join("device"), folder.path().join("pipe"));
        let socket = folder.path().join("socket");
        let _listener = UnixListener::bind(&socket).unwrap();
        let mut make_device = Command::new("mknod");
        make_device.arg(&device).args(["c", "1", "3"]);
        let mut make_pipe = Command::new("mkfifo");
        make_pipe.arg(&pipe);
        for (node, command) in [("device", &mut make_device), ("pipe", &mut make_pipe)] {
            let output = command.output();
            if !output.is_ok_and(|output| output.status.success()) {
                skipped(&format!("no {node} can be made here"));
            }
        }
        for name in names_in(folder.path()) {
            let path = folder.path().join(&name);
            let refused = SaveError::NotAFile { path: path.clone() };
            let result = without_waiting({
                let path = path.clone();
                move || save_whole(&Disk, &path, OLD)
            });
            assert_eq!(result, Err(refused), "{name}");
            assert!(!fs::metadata(&path).unwrap().is_file(), "{name}");
        }
    }

    #[test]
    fn a_read_only_folder_is_named_and_the_file_in_it_not_touched() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(NAME);
        fs::write(&path, OLD).unwrap();
        fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o555)).unwrap();
        let may_write_everywhere = fs::write(folder.path().join("probe"), OLD).is_ok();
        let result = save_whole(&Disk, &path, &new_text());
        let result_new = save_new(&Disk, &folder.path().join("new"), &new_text());
        fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).unwrap();
        if may_write_everywhere {
            return skipped("this user may write in read-only folders");
        }
        let reason = "permission denied".to_owned();
        let refused = SaveError::FolderNotWritable {
            reason,
            folder: folder.path().canonicalize().unwrap(),
        };
        assert_eq!(result, Err(refused.clone()));
        assert_eq!(result_new, Err(refused));
        assert_eq!(fs::read(&path).unwrap(), OLD);
        assert_eq!(names_in(folder.path()), [NAME]);
    }

    #[test]
    fn a_read_only_file_in_a_writable_folder_is_not_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(NAME);
        fs::write(&path, OLD).unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o444)).unwrap();
        if fs::OpenOptions::new().write(true).open(&path).is_ok() {
            return skipped("this user may write read-only files");
        }
        let reason = "permission denied".to_owned();
        let protected = SaveError::Protected {
            reason,
            path: path.clone(),
        };
        assert_eq!(save_whole(&Disk, &path, &new_text()), Err(protected));
        assert_eq!(fs::read(&path).unwrap(), OLD);
        assert_eq!(names_in(folder.path()), [NAME]);
    }

    /// A disk of 64 kB in memory.
    #[cfg(target_os = "linux")]
    struct SmallDisk(tempfile::TempDir);

    #[cfg(target_os = "linux")]
    impl SmallDisk {
        fn mounted() -> Option<Self> {
            let folder = tempfile::tempdir().unwrap();
            let mut mount = Command::new("mount");
            mount
                .args(["-t", "tmpfs", "-o", "size=64k", "tmpfs"])
                .arg(folder.path());
            let is_mounted = mount.output().is_ok_and(|output| output.status.success());
            is_mounted.then(|| Self(folder))
        }

        fn make_read_only(&self) {
            let mut mount = Command::new("mount");
            let status = mount.args(["-o", "remount,ro"]).arg(self.0.path()).status();
            assert!(status.unwrap().success());
        }
    }

    #[cfg(target_os = "linux")]
    impl Drop for SmallDisk {
        fn drop(&mut self) {
            drop(Command::new("umount").arg(self.0.path()).status());
        }
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn on_a_full_disk_the_old_file_stays_and_nothing_is_left_behind() {
        let Some(disk) = SmallDisk::mounted() else {
            return skipped("no small disk can be mounted here");
        };
        let path = disk.0.path().join(NAME);
        save_whole(&Disk, &path, OLD).unwrap();
        let reason = "the disk is full".to_owned();
        let full = SaveError::NotSaved {
            reason,
            path: path.clone(),
        };
        assert_eq!(save_whole(&Disk, &path, &vec![b'x'; 100_000]), Err(full));
        assert_eq!(fs::read(&path).unwrap(), OLD);
        assert_eq!(names_in(disk.0.path()), [NAME]);
        save_whole(&Disk, &path, &new_text()).unwrap();
        assert_eq!(fs::read(&path).unwrap(), new_text());
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn on_a_read_only_disk_nothing_is_saved() {
        let Some(disk) = SmallDisk::mounted() else {
            return skipped("no small disk can be mounted here");
        };
        let path = disk.0.path().join(NAME);
        save_whole(&Disk, &path, OLD).unwrap();
        disk.make_read_only();
        let refused = SaveError::FolderNotWritable {
            reason: "the disk is read-only".to_owned(),
            folder: disk.0.path().canonicalize().unwrap(),
        };
        assert_eq!(save_whole(&Disk, &path, &new_text()), Err(refused));
        assert_eq!(fs::read(&path).unwrap(), OLD);
    }
}
