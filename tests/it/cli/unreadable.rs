//! Are files that hold no project answered with their place, and left alone?

use super::{Answer, about, answer, changed_project, json_of, three_sets};

fn table_of(bytes: &[u8]) -> Answer {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::write(&file, bytes).unwrap();
    let answer = answer(about("table", &file, &[]));
    assert_eq!(std::fs::read(&file).unwrap(), bytes);
    answer
}

#[test]
fn a_broken_file_is_told_with_line_and_column() {
    let broken = [
        (changed_project("3.72", "372000"), "line 17, column "),
        (changed_project("title:", "titel:"), "line 3, column 5: "),
        (changed_project("215/65 R 16 C", "abc"), "line 5, column "),
        (
            changed_project("redline_rpm: 4500", "redline_rpm: -1"),
            "line 6, column ",
        ),
        (
            changed_project("units: Kmh", "units: Knots"),
            "line 4, column ",
        ),
        (
            changed_project("label: \"2\"", "label: \"1\""),
            "line 18, column 25: set 1: ",
        ),
        (
            changed_project("baseline: 1", "baseline: 4"),
            "line 9, column 15: the baseline is set 4",
        ),
        (changed_project("format: 1", "format: 3"), "format 3"),
        (changed_project("format: 1", "format: 0"), "format 0"),
        ("abc".to_owned(), "not a Layshaft project"),
        (String::new(), "not a Layshaft project"),
        ("(".repeat(100_000), "not a Layshaft project"),
        (
            format!("(format: 1, {}: 2)", "k".repeat(400)),
            "line 1, column ",
        ),
        (
            format!("(format: 1, sets: {}", "[".repeat(50_000)),
            "too deep in one another",
        ),
        (
            changed_project("redline_rpm: 4500", "redline_rpm: 1e400"),
            "not 1e400",
        ),
    ];
    for (text, told) in broken {
        let answer = table_of(text.as_bytes());
        let sentence = answer.sentence();
        assert!(
            sentence.contains(told) && sentence.contains("a.ron"),
            "{told}: {sentence}"
        );
        assert!(!sentence.contains(&"k".repeat(41)), "{sentence}");
    }
}

#[test]
fn what_is_no_text_is_told_with_line_and_column() {
    let mut bytes = b"(\n  ".to_vec();
    bytes.push(0xff);
    let answer = table_of(&bytes);
    assert!(
        answer.sentence().contains("line 2, column 3"),
        "{}",
        answer.stderr
    );
}

#[test]
fn a_byte_order_mark_and_other_line_ends_are_read() {
    let text = std::fs::read_to_string(three_sets()).unwrap();
    let expected = table_of(text.as_bytes());
    let marked = format!("\u{feff}{}", text.replace('\n', "\r\n"));
    assert_eq!(table_of(marked.as_bytes()).printed(), expected.printed());
}

#[test]
fn a_huge_file_is_refused_without_being_read() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::File::create(&file)
        .unwrap()
        .set_len(1 << 40)
        .unwrap();
    assert!(
        answer(about("table", &file, &[]))
            .sentence()
            .contains("larger than 16 MB")
    );
}

#[cfg(unix)]
#[test]
fn a_device_is_not_read() {
    for device in ["/dev/zero", "/dev/null"] {
        assert!(answer(["table", device]).sentence().contains("device"));
    }
}

#[test]
fn a_path_of_any_length_is_told_by_its_end() {
    let path = format!("/{}van.ron", "deep/".repeat(100));
    let answer = answer(["check", &path]);
    assert!(
        answer.sentence().ends_with("deep/van.ron\n"),
        "{}",
        answer.stderr
    );
    assert!(answer.stderr.chars().count() < 100);
}

#[test]
fn a_road_speed_that_once_could_be_marked_still_opens_and_is_a_finding() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    std::fs::write(
        &file,
        changed_project("[50, 90, 110]", "[5e-324, 0.0005, 90]"),
    )
    .unwrap();
    for format in ["text", "markdown", "bbcode", "csv", "json"] {
        let answer = answer(about("table", &file, &["--as", format]));
        let text = answer.printed();
        let words = text.split(|c: char| !c.is_alphanumeric());
        let endless: Vec<&str> = words
            .filter(|word| matches!(*word, "NaN" | "inf"))
            .collect();
        assert_eq!(endless, [""; 0], "{format}: {text}");
        for told in [
            "vehicle: 0.0005 km/h is marked",
            "vehicle: next to 0 km/h is marked",
        ] {
            assert!(answer.stderr.contains(told), "{format}: {}", answer.stderr);
        }
    }
    let json = json_of(&answer(about("table", &file, &["--as", "json"])));
    let gears = json["sets"][1]["gears"].as_array().unwrap();
    for gear in gears {
        for at in gear["engine_speeds"].as_array().unwrap() {
            assert!(at["engine_rpm"].is_number(), "{at}");
        }
    }
    let picture = folder.path().join("a.png");
    let mut arguments = about("chart", &file, &["-o"]);
    arguments.push(picture.into());
    answer(arguments).printed();
}
