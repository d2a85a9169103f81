//! Is a picture as good as the project that it carries, and answered with a sentence where it carries none?

use super::{Answer, about, answer, changed_project, three_sets};
use layshaft::project::PICTURE_KEYWORD;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

/// A folder with a picture that `layshaft chart` made.
fn exported(project: &Path, more: &[&str]) -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let picture = folder.path().join("shared.png");
    chart(project, more, &picture);
    (folder, picture)
}

fn chart(project: &Path, more: &[&str], out: &Path) {
    let mut arguments = about("chart", project, more);
    arguments.extend([OsString::from("-o"), out.into()]);
    answer(arguments).printed();
}

/// A picture of one pixel with a text under a keyword.
fn pixel_with(keyword: &str, text: &str) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, 1, 1);
    let added = encoder.add_itxt_chunk(keyword.to_owned(), text.to_owned());
    added.unwrap();
    let mut writer = encoder.write_header().unwrap();
    writer.write_image_data(&[7]).unwrap();
    writer.finish().unwrap();
    bytes
}

/// What a table of these bytes as a file of that name is answered with.
fn table_of(name: &str, bytes: &[u8]) -> Answer {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join(name);
    std::fs::write(&file, bytes).unwrap();
    let answer = answer(about("table", &file, &[]));
    assert_eq!(std::fs::read(&file).unwrap(), bytes);
    answer
}

#[test]
fn every_command_takes_a_picture_like_its_project() {
    let (folder, picture) = exported(&three_sets(), &[]);
    let bytes = std::fs::read(&picture).unwrap();
    for (command, more) in [
        ("table", &["--as", "json"][..]),
        ("table", &[]),
        ("check", &[]),
    ] {
        let [of_picture, of_project] =
            [&picture, &three_sets()].map(|file| answer(about(command, file, more)));
        assert_eq!(of_picture.outcome, of_project.outcome, "{command}");
        assert_eq!(of_picture.stdout, of_project.stdout, "{command}");
        assert_eq!(of_picture.stderr, of_project.stderr, "{command}");
    }
    let again = folder.path().join("again.png");
    chart(&picture, &[], &again);
    assert!(std::fs::read(again).unwrap() == bytes);
    assert!(std::fs::read(picture).unwrap() == bytes);
}

#[test]
fn a_picture_is_known_by_what_it_holds_not_by_its_name() {
    let (_folder, picture) = exported(&three_sets(), &[]);
    let bytes = std::fs::read(&picture).unwrap();
    for name in ["renamed.ron", "renamed", "renamed.jpg"] {
        let answer = table_of(name, &bytes);
        assert!(answer.printed().starts_with("Camper van"), "{name}");
    }
    let text = std::fs::read(three_sets()).unwrap();
    let answer = table_of("text.png", &text);
    assert!(answer.printed().starts_with("Camper van"));
}

#[test]
fn a_picture_without_the_project_says_so() {
    let (_folder, picture) = exported(&three_sets(), &["--no-project"]);
    let refused = answer(about("table", &picture, &[]));
    let told = refused.sentence();
    assert!(
        told.contains("this picture holds no Layshaft project"),
        "{told}"
    );
    assert!(told.trim_end().ends_with("shared.png"), "{told}");
}

#[test]
fn only_what_was_shown_comes_out() {
    let (_folder, picture) = exported(&three_sets(), &["--sets", "2"]);
    let answer = answer(about("table", &picture, &["--as", "json"]));
    let json: serde_json::Value = serde_json::from_str(answer.printed()).unwrap();
    assert_eq!(json["sets"].as_array().unwrap().len(), 1);
}

#[test]
fn every_other_picture_is_answered_in_one_sentence_and_left_alone() {
    let (_folder, picture) = exported(&three_sets(), &[]);
    let whole = std::fs::read(&picture).unwrap();
    let at = |mark: &[u8]| {
        whole
            .windows(mark.len())
            .position(|part| part == mark)
            .unwrap()
    };
    let mut damaged = whole.clone();
    damaged[at(b"baseline")] ^= 1;
    let broken = changed_project("3.72", "372000");
    let newer = changed_project("format: 1", "format: 99");
    let large = "x".repeat(1024 * 1024 + 1);
    for (bytes, told) in [
        (
            pixel_with("Comment", "(format: 1)"),
            "holds no Layshaft project",
        ),
        (damaged, "damaged or cut off"),
        (whole[..at(b"baseline")].to_vec(), "damaged or cut off"),
        (whole[..8].to_vec(), "damaged or cut off"),
        (pixel_with(PICTURE_KEYWORD, &large), "larger than 1 MB"),
        (pixel_with(PICTURE_KEYWORD, &broken), "line 17, column "),
        (pixel_with(PICTURE_KEYWORD, &newer), "format 99"),
        (pixel_with(PICTURE_KEYWORD, "abc"), "not a Layshaft project"),
        (whole[..7].to_vec(), "line 1, column 1 is not text"),
        (b"\xff\xd8\xff\xe0\x00\x10JFIF\x00".to_vec(), "only a PNG"),
    ] {
        let answer = table_of("got.png", &bytes);
        let sentence = answer.sentence();
        assert!(sentence.contains(told), "{told}: {sentence}");
        assert!(sentence.contains("got.png"), "{sentence}");
    }
}

#[test]
fn a_picture_that_was_cut_off_in_its_pixels_still_gives_the_project() {
    let (_folder, picture) = exported(&three_sets(), &[]);
    let whole = std::fs::read(&picture).unwrap();
    let half = table_of("half.png", &whole[..whole.len() / 2]);
    assert_eq!(
        half.printed(),
        answer(about("table", &picture, &[])).printed()
    );
}

#[test]
fn the_picture_that_is_read_is_not_written_over() {
    let (_folder, picture) = exported(&three_sets(), &[]);
    let mut arguments = about("chart", &picture, &["-o"]);
    arguments.push(picture.clone().into());
    let before = std::fs::read(&picture).unwrap();
    let refused = answer(arguments);
    assert!(refused.sentence().contains("another name"));
    assert!(std::fs::read(&picture).unwrap() == before);
}
