//! Is unsaved work kept from other eyes, and does nothing that was planted there lead astray or wait?

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use layshaft::app::App;
use layshaft::project::{
    CopyError, Disk, FileSystem, RecoveryCopy, SaveError, save_private, save_whole, sweep_beside,
};

use super::simulated::SimulatedDisk;
use super::{names_in, pipe_at, without_waiting};
use crate::support::window::{Opening, Place, camper_van};

const NAME: &str = "1-1.ron";
const OLD: &[u8] = b"the old text";

#[test]
fn a_private_file_is_the_owner_s_from_its_making_on_whatever_it_was() {
    let path = SimulatedDisk::path(NAME);
    for before in [None, Some(0o666), Some(0o644), Some(0o600)] {
        let disk = SimulatedDisk::default();
        if let Some(mode) = before {
            disk.put(NAME, OLD, mode);
        }
        save_private(&disk, &path, b"new").unwrap();
        assert_eq!(disk.mode(NAME), 0o600);
        assert!(!disk.steps().contains(&"copy permissions"));
    }
}

#[test]
fn a_folder_is_no_place_for_a_private_file_of_its_name() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().to_owned();
    let refused = SaveError::IsAFolder { path: path.clone() };
    assert_eq!(save_private(&Disk, &path, b"new"), Err(refused));
    let path = folder.path().join("none").join(NAME);
    let refused = SaveError::NoFolder {
        folder: folder.path().join("none"),
    };
    assert_eq!(save_private(&Disk, &path, b"new"), Err(refused));
}

/// A copy of the camper van.
fn a_copy() -> RecoveryCopy {
    RecoveryCopy {
        file: None,
        began_from: None,
        written_unix_s: 7,
        project: Arc::new(camper_van()),
    }
}

/// Starts on a folder for settings and one for copies, with a document open, as the program does.
fn start(folder: &Path, document: &Path) -> App {
    Opening::on(camper_van())
        .of_real_file(document)
        .with_settings(&folder.join("settings"))
        .keeping_work_in(&folder.join("kept"))
        .app()
}

/// Starts and ends at once, as after a crash; a failed test if it waits.
fn start_without_waiting(place: &Place) {
    let (folder, document) = (place.folder().to_owned(), place.file());
    without_waiting(move || drop(start(&folder, &document)));
}

#[test]
fn nothing_waits_for_a_pipe_wherever_it_was_planted() {
    let place = Place::new();
    let kept = place.kept();
    // A first start shows which lock stands for the document.
    start_without_waiting(&place);
    let document_lock = names_in(&kept)
        .into_iter()
        .find(|name| name.starts_with("open-"))
        .expect("the document is locked");
    fs::remove_file(kept.join(&document_lock)).unwrap();

    a_copy().write(&Disk, &kept.join("3-3.ron")).unwrap();
    let temporary = ".van.ron-4294967295-0.layshaft-tmp";
    let planted = [
        "kept/1-1.ron",
        "kept/1-1.lock",
        "kept/2-2.lock",
        "kept/3-3.lock",
        "kept/open-0123456789abcdef.lock",
        &format!("kept/{document_lock}"),
        &format!("kept/{temporary}"),
        &format!("projects/{temporary}"),
        &format!("settings/{temporary}"),
        "settings/settings.ron",
    ];
    for name in planted {
        if !pipe_at(&place.folder().join(name)) {
            return;
        }
    }
    start_without_waiting(&place);
    let document = place.file();
    without_waiting(move || {
        sweep_beside(&Disk, &document);
        save_whole(&Disk, &document, OLD).unwrap();
    });
    for name in planted {
        assert!(place.folder().join(name).exists(), "{name} was not ours");
    }
    let pipe = kept.join("1-1.ron");
    let refused = SaveError::NotAFile { path: pipe.clone() };
    let written = without_waiting(move || a_copy().write(&Disk, &pipe));
    assert_eq!(written, Err(CopyError::Save(refused)));
}

#[cfg(unix)]
mod on_unix {
    use super::*;
    use std::os::unix::fs::{MetadataExt, PermissionsExt, symlink};
    use std::process::Command;

    fn mode_of(path: &Path) -> u32 {
        fs::symlink_metadata(path).unwrap().mode() & 0o7777
    }

    /// Tells the test that it runs under another umask, and where.
    const UNDER_UMASK: &str = "LAYSHAFT_TEST_PRIVATE_FOLDER";

    #[test]
    fn whatever_the_umask_copies_are_0600_and_their_folder_is_0700() {
        if let Some(folder) = std::env::var_os(UNDER_UMASK) {
            let folder = PathBuf::from(folder).join("local").join("kept");
            Disk.make_private_folder(&folder).unwrap();
            return a_copy().write(&Disk, &folder.join(NAME)).unwrap();
        }
        let this_test = "files::private::on_unix::\
                         whatever_the_umask_copies_are_0600_and_their_folder_is_0700";
        for umask in ["000", "022", "077", "277"] {
            let folder = tempfile::tempdir().unwrap();
            let status = Command::new("sh")
                .arg("-c")
                .arg(format!("umask {umask}; exec \"$0\" --exact {this_test}"))
                .arg(std::env::current_exe().unwrap())
                .env(UNDER_UMASK, folder.path())
                .stdout(std::process::Stdio::null())
                .status();
            assert!(status.unwrap().success());
            let kept = folder.path().join("local").join("kept");
            assert_eq!(mode_of(&kept) & 0o077, 0, "umask {umask}");
            assert_eq!(mode_of(&kept.join(NAME)), 0o600, "umask {umask}");
            assert_eq!(names_in(&kept), [NAME]);
        }
    }

    #[test]
    fn a_wider_folder_is_narrowed_and_a_file_in_its_place_is_an_error() {
        let folder = tempfile::tempdir().unwrap();
        let kept = folder.path().join("kept");
        for mode in [0o755, 0o777, 0o750, 0o700] {
            fs::create_dir_all(&kept).unwrap();
            fs::set_permissions(&kept, fs::Permissions::from_mode(mode)).unwrap();
            Disk.make_private_folder(&kept).unwrap();
            assert_eq!(mode_of(&kept), 0o700, "{mode:o}");
        }
        fs::remove_dir(&kept).unwrap();
        fs::write(&kept, OLD).unwrap();
        assert!(Disk.make_private_folder(&kept).is_err());
        assert_eq!(fs::read(&kept).unwrap(), OLD);
    }

    #[test]
    fn locks_of_a_window_are_the_owner_s_too() {
        let place = Place::new();
        let app = start(place.folder(), &place.file());
        let kept = place.kept();
        let names = names_in(&kept);
        assert_eq!(names.len(), 2, "{names:?}");
        for name in names {
            assert_eq!(mode_of(&kept.join(&name)), 0o600, "{name}");
        }
        drop(app);
    }

    #[test]
    fn a_planted_link_is_replaced_or_let_be_and_never_followed() {
        let place = Place::new();
        let kept = place.kept();
        let precious = place.folder().join("precious");
        fs::write(&precious, OLD).unwrap();
        let copy = kept.join(NAME);
        symlink(&precious, &copy).unwrap();
        a_copy().write(&Disk, &copy).unwrap();
        assert_eq!(mode_of(&copy), 0o600);
        assert_eq!(RecoveryCopy::read(&Disk, &copy), Some(a_copy()));

        let planted = [
            "2-2.lock",
            "open-0123456789abcdef.lock",
            ".van.ron-4294967295-0.layshaft-tmp",
        ];
        for name in planted {
            symlink(&precious, kept.join(name)).unwrap();
        }
        assert!(Disk.open_lockable(&kept.join("2-2.lock")).is_err());
        start_without_waiting(&place);
        for name in planted {
            assert_eq!(fs::read_link(kept.join(name)).unwrap(), precious, "{name}");
        }
        assert_eq!(fs::read(&precious).unwrap(), OLD);
    }
}
