//! Is a file read only if it is an ordinary one of bounded size that holds text?

use std::fs::{self, File};
use std::path::Path;

use layshaft::project::{Disk, LARGEST_FILE_BYTES, ReadError, read_text};

use super::simulated::SimulatedDisk;
use super::{skipped, without_waiting};

/// What reading a real file with these bytes gives.
fn reading_of(bytes: &[u8]) -> Result<String, ReadError> {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("van.ron");
    fs::write(&path, bytes).unwrap();
    read_text(&Disk, &path)
}

/// The line and column at which reading a real file with these bytes fails.
fn first_bad_place(bytes: &[u8]) -> (usize, usize) {
    match reading_of(bytes) {
        Err(ReadError::NotText { line, column, .. }) => (line, column),
        other => panic!("not refused as text: {other:?}"),
    }
}

fn reading_without_waiting(path: &Path) -> Result<String, ReadError> {
    let path = path.to_owned();
    without_waiting(move || read_text(&Disk, &path))
}

#[test]
fn a_text_comes_back_as_it_is() {
    let text = "(name: \"Коробка 🚚\")\r\n\n";
    assert_eq!(reading_of(text.as_bytes()).unwrap(), text);
}

#[test]
fn an_empty_file_is_an_empty_text() {
    assert_eq!(reading_of(b"").unwrap(), "");
}

#[test]
fn one_byte_order_mark_is_taken_off() {
    assert_eq!(reading_of(b"\xEF\xBB\xBFtext").unwrap(), "text");
    assert_eq!(reading_of(b"\xEF\xBB\xBF").unwrap(), "");
    assert_eq!(
        reading_of(b"\xEF\xBB\xBF\xEF\xBB\xBFtext").unwrap(),
        "\u{feff}text"
    );
    assert_eq!(reading_of(b"text\xEF\xBB\xBF").unwrap(), "text\u{feff}");
}

#[test]
fn what_is_not_utf_8_is_refused_with_line_and_column() {
    assert_eq!(first_bad_place(b"\xFF"), (1, 1));
    assert_eq!(first_bad_place(b"one\ntwo\xC3("), (2, 4));
    assert_eq!(
        first_bad_place("ёё\r\n🚚".as_bytes().split_last().unwrap().1),
        (2, 1)
    );
    assert_eq!(first_bad_place(b"\xEF\xBB\xBFab\xFF"), (1, 3));
    // UTF-16, as some editors save when asked for "Unicode".
    assert_eq!(first_bad_place(b"\xFF\xFEt\0e\0x\0t\0"), (1, 1));
}

#[test]
fn sixteen_megabytes_are_read_and_one_byte_more_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("large.ron");
    let limit = usize::try_from(LARGEST_FILE_BYTES).unwrap();
    fs::write(&path, vec![b' '; limit]).unwrap();
    assert_eq!(read_text(&Disk, &path).unwrap().len(), limit);
    fs::write(&path, vec![b' '; limit + 1]).unwrap();
    assert_eq!(read_text(&Disk, &path), Err(ReadError::TooLarge { path }));
}

#[test]
fn a_file_that_states_its_size_is_refused_before_it_is_opened() {
    let disk = SimulatedDisk::default();
    disk.put_endless("film.ron", LARGEST_FILE_BYTES + 1);
    let path = SimulatedDisk::path("film.ron");
    assert_eq!(read_text(&disk, &path), Err(ReadError::TooLarge { path }));
    assert_eq!(disk.steps(), ["facts"]);
}

#[test]
fn of_a_file_that_states_too_small_a_size_one_byte_more_than_the_limit_is_read() {
    let disk = SimulatedDisk::default();
    disk.put_endless("liar.ron", 10);
    let path = SimulatedDisk::path("liar.ron");
    assert_eq!(read_text(&disk, &path), Err(ReadError::TooLarge { path }));
    assert_eq!(disk.bytes_read() as u64, LARGEST_FILE_BYTES + 1);
}

#[test]
fn a_missing_file_is_named_so() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("none.ron");
    assert_eq!(
        read_text(&Disk, &path),
        Err(ReadError::NotFound { path: path.clone() })
    );
    File::create(&path).unwrap();
    let below_a_file = path.join("none.ron");
    assert_eq!(
        read_text(&Disk, &below_a_file),
        Err(ReadError::NotFound { path: below_a_file })
    );
}

#[test]
fn a_folder_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().to_owned();
    assert_eq!(read_text(&Disk, &path), Err(ReadError::IsAFolder { path }));
}

#[test]
fn a_path_that_no_system_allows_is_an_error_and_one_line() {
    let error = read_text(&Disk, Path::new("a\0\nb")).unwrap_err();
    assert!(matches!(error, ReadError::Unreadable { .. }), "{error:?}");
    assert!(!error.to_string().contains(char::is_control), "{error}");
}

#[cfg(unix)]
#[test]
fn a_link_is_followed() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("real.ron"), "text").unwrap();
    let link = folder.path().join("link.ron");
    std::os::unix::fs::symlink("real.ron", &link).unwrap();
    assert_eq!(read_text(&Disk, &link).unwrap(), "text");
}

#[cfg(unix)]
#[test]
fn a_pipe_is_refused_without_waiting_for_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("pipe.ron");
    let made = std::process::Command::new("mkfifo").arg(&path).status();
    if !made.is_ok_and(|status| status.success()) {
        return skipped("no pipe can be made here");
    }
    assert_eq!(
        reading_without_waiting(&path),
        Err(ReadError::NotAFile { path: path.clone() })
    );
    let link = folder.path().join("link.ron");
    std::os::unix::fs::symlink(&path, &link).unwrap();
    assert_eq!(
        reading_without_waiting(&link),
        Err(ReadError::NotAFile { path: link })
    );
}

/// A pipe that takes the place of a file after the file was looked at.
#[cfg(unix)]
#[test]
fn a_pipe_is_not_even_waited_for_when_it_is_opened() {
    use layshaft::project::FileSystem;
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("pipe.ron");
    let made = std::process::Command::new("mkfifo").arg(&path).status();
    if !made.is_ok_and(|status| status.success()) {
        return skipped("no pipe can be made here");
    }
    assert!(without_waiting({
        let path = path.clone();
        move || Disk.open(&path).is_err()
    }));
    assert!(without_waiting(move || Disk.check_writable(&path).is_err()));
}

#[cfg(unix)]
#[test]
fn a_device_is_refused() {
    for device in ["/dev/zero", "/dev/null"] {
        let path = Path::new(device).to_owned();
        assert_eq!(
            reading_without_waiting(&path),
            Err(ReadError::NotAFile { path })
        );
    }
}

#[cfg(unix)]
#[test]
fn a_file_that_this_user_may_not_read_is_refused_with_the_reason() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("secret.ron");
    fs::write(&path, "text").unwrap();
    fs::set_permissions(&path, fs::Permissions::from_mode(0o000)).unwrap();
    if File::open(&path).is_ok() {
        return skipped("this user may read everything");
    }
    let reason = "permission denied".to_owned();
    assert_eq!(
        read_text(&Disk, &path),
        Err(ReadError::Unreadable { reason, path })
    );
}

#[cfg(target_os = "linux")]
#[test]
fn a_file_whose_stated_size_is_zero_is_read_all_the_same() {
    let text = read_text(&Disk, Path::new("/proc/self/status")).unwrap();
    assert!(text.contains("Pid:"), "{text}");
}
