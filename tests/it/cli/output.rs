//! Does a result arrive whole or not at all, wherever it goes?

use super::{about, answer, answer_to_one_set, program, program_answer, three_sets};
use layshaft::cli::{self, Outcome};
use std::io::{self, ErrorKind, Read, Write};
use std::process::Stdio;

/// A pipe whose reader left, or a disk that is full.
struct Broken(ErrorKind);

impl Write for Broken {
    fn write(&mut self, _: &[u8]) -> io::Result<usize> {
        Err(self.0.into())
    }

    fn flush(&mut self) -> io::Result<()> {
        Err(self.0.into())
    }
}

fn outcome_on(stdout: &mut dyn Write, command: &str) -> (Outcome, String) {
    let mut stderr = Vec::new();
    let outcome = cli::run(about(command, &three_sets(), &[]), stdout, &mut stderr);
    (outcome, String::from_utf8(stderr).unwrap())
}

#[test]
fn a_closed_pipe_is_no_error() {
    for command in ["table", "check"] {
        let (outcome, stderr) = outcome_on(&mut Broken(ErrorKind::BrokenPipe), command);
        assert_eq!(outcome, Outcome::Exit(0), "{stderr}");
    }
}

#[test]
fn the_program_survives_a_reader_that_leaves() {
    let many = vec!["1000"; 40].join(",");
    let mut child = program()
        .args(about(
            "table",
            &three_sets(),
            &["--as", "json", "--rpm", &many],
        ))
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let mut stderr = String::new();
    child
        .stderr
        .take()
        .unwrap()
        .read_to_string(&mut stderr)
        .unwrap();
    assert_eq!(child.wait().unwrap().code(), Some(0), "{stderr}");
    assert_eq!(stderr, "");
}

#[test]
fn any_other_failure_to_print_is_told() {
    let (outcome, stderr) = outcome_on(&mut Broken(ErrorKind::StorageFull), "table");
    assert_eq!(outcome, Outcome::Exit(2));
    assert_eq!(
        stderr,
        "layshaft: standard output cannot be written: the disk is full\n"
    );
}

#[test]
fn a_deaf_standard_error_changes_nothing() {
    let mut stdout = Vec::new();
    let mut stderr = Broken(ErrorKind::BrokenPipe);
    let outcome = cli::run(["nowhere.ron".into()], &mut stdout, &mut stderr);
    assert_eq!(outcome, Outcome::Exit(2));
}

#[test]
fn a_named_output_holds_what_would_be_printed() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out.json");
    for flag in ["-o", "--output"] {
        let mut arguments = about("table", &three_sets(), &["--as", "json", flag]);
        arguments.push(out.clone().into());
        assert_eq!(answer(arguments).printed(), "");
        let printed = answer(about("table", &three_sets(), &["--as", "json"]));
        assert_eq!(std::fs::read_to_string(&out).unwrap(), printed.printed());
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
    }
}

#[test]
fn a_dash_is_standard_output() {
    let answer = answer_to_one_set("table", &["-o", "-"]);
    assert!(answer.printed().starts_with("Set 1\n"));
    assert!(!std::path::Path::new("-").exists());
}

#[test]
fn a_wrong_command_line_leaves_the_output_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out.txt");
    std::fs::write(&out, "before").unwrap();
    let shown = out.to_str().unwrap();
    for more in [
        &["--rpm", "abc"][..],
        &["--as", "xml"],
        &["--speed", "1,,2"],
    ] {
        answer_to_one_set("table", &[&["-o", shown], more].concat()).sentence();
        assert_eq!(std::fs::read_to_string(&out).unwrap(), "before");
    }
    answer(["table", "nowhere.ron", "-o", shown]).sentence();
    assert_eq!(std::fs::read_to_string(&out).unwrap(), "before");
}

#[test]
fn what_cannot_be_written_leaves_nothing_behind() {
    let folder = tempfile::tempdir().unwrap();
    let taken = folder.path().join("taken");
    std::fs::create_dir(&taken).unwrap();
    let answer = answer_to_one_set("table", &["-o", taken.to_str().unwrap()]);
    assert!(answer.sentence().contains("a folder has this name"));
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn a_project_is_never_its_own_output() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    let text = std::fs::read_to_string(three_sets()).unwrap();
    std::fs::write(&file, &text).unwrap();
    let mut names = vec![file.clone(), folder.path().join("./a.ron")];
    #[cfg(unix)]
    {
        let link = folder.path().join("link.ron");
        std::os::unix::fs::symlink(&file, &link).unwrap();
        names.push(link);
    }
    for name in names {
        let mut arguments = about("table", &file, &["-o"]);
        arguments.push(name.into());
        assert!(
            answer(arguments)
                .sentence()
                .contains("-o names the project file itself")
        );
        assert_eq!(std::fs::read_to_string(&file).unwrap(), text);
    }
}

#[cfg(unix)]
#[test]
fn a_device_is_never_replaced() {
    let answer = answer_to_one_set("table", &["-o", "/dev/null"]);
    assert!(answer.sentence().contains("device"), "{}", answer.stderr);
}

#[test]
fn the_program_prints_the_same_as_the_library() {
    for more in [&[][..], &["--as", "json"], &["--as", "csv"]] {
        let arguments = about("table", &three_sets(), more);
        let output = program_answer(&arguments);
        assert_eq!(output.status.code(), Some(0));
        assert_eq!(
            String::from_utf8(output.stdout).unwrap(),
            answer(arguments).printed()
        );
        assert!(output.stderr.is_empty());
    }
}
