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
    assert!(answer.printed().starts_with("redline "));
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
fn a_device_is_written_and_never_replaced() {
    use std::os::unix::fs::FileTypeExt;
    let answer = answer_to_one_set("table", &["-o", "/dev/null"]);
    assert_eq!(answer.printed(), "");
    let null = std::fs::metadata("/dev/null").unwrap();
    assert!(null.file_type().is_char_device());
}

#[cfg(target_os = "linux")]
#[test]
fn a_device_that_takes_nothing_is_told() {
    let answer = answer_to_one_set("table", &["-o", "/dev/full"]);
    let told = "the device or pipe cannot be written (the disk is full): /dev/full";
    assert!(answer.sentence().contains(told), "{}", answer.stderr);
}

#[cfg(unix)]
#[test]
fn the_standard_streams_have_names() {
    let printed = answer(about("table", &three_sets(), &[]));
    for name in ["/dev/stdout", "/dev/fd/1", "/proc/self/fd/1"] {
        let named = answer(about("table", &three_sets(), &["-o", name]));
        assert_eq!(named.printed(), printed.printed(), "{name}");
    }
    for name in ["/dev/stderr", "/dev/fd/2"] {
        let named = answer(about("table", &three_sets(), &["-o", name]));
        assert_eq!(named.printed(), "");
        assert!(named.stderr.starts_with(printed.printed()), "{name}");
    }
}

/// A file that stands behind standard output stays the same file, and keeps what it held.
#[cfg(unix)]
#[test]
fn a_file_behind_standard_output_is_appended_to_and_not_replaced() {
    use std::io::Write as _;
    use std::os::unix::fs::MetadataExt;
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("out.txt");
    let mut out = std::fs::File::create(&path).unwrap();
    out.write_all(b"before\n").unwrap();
    let number = out.metadata().unwrap().ino();
    let status = program()
        .args(about("table", &three_sets(), &["-o", "/dev/stdout"]))
        .stdout(out)
        .status()
        .unwrap();
    assert_eq!(status.code(), Some(0));
    assert_eq!(std::fs::metadata(&path).unwrap().ino(), number);
    let printed = answer(about("table", &three_sets(), &[]));
    let held = std::fs::read_to_string(&path).unwrap();
    assert_eq!(held, format!("before\n{}", printed.printed()));
}

#[cfg(unix)]
#[test]
fn a_named_pipe_gets_the_result() {
    let folder = tempfile::tempdir().unwrap();
    let pipe = folder.path().join("pipe");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status();
    assert!(made.unwrap().success());
    let reader = std::thread::spawn({
        let pipe = pipe.clone();
        move || std::fs::read_to_string(pipe).unwrap()
    });
    let mut arguments = about("table", &three_sets(), &["-o"]);
    arguments.push(pipe.into());
    assert_eq!(answer(arguments).printed(), "");
    let printed = answer(about("table", &three_sets(), &[]));
    assert_eq!(reader.join().unwrap(), printed.printed());
}

/// What a shell answers to the program with the arguments and redirections behind it.
#[cfg(target_os = "linux")]
fn shell_answer(line: &str) -> std::process::Output {
    let mut shell = std::process::Command::new("sh");
    let script = format!("\"$0\" {line}");
    let program = env!("CARGO_BIN_EXE_layshaft");
    shell.args(["-c", &script, program]).arg(three_sets());
    shell.stdin(Stdio::null()).output().unwrap()
}

#[cfg(target_os = "linux")]
#[test]
fn a_closed_standard_output_is_told_where_something_was_to_be_printed() {
    for line in [
        "table \"$1\" >&-",
        "check \"$1\" --as json >&-",
        "--help >&-",
        "--version >&-",
    ] {
        let output = shell_answer(line);
        assert_eq!(output.status.code(), Some(2), "{line}");
        let stderr = String::from_utf8(output.stderr).unwrap();
        let told = "layshaft: standard output cannot be written: it is closed\n";
        assert_eq!(stderr, told, "{line}");
    }
    for line in ["table \"$1\" -o /dev/null >&-", "table \"$1\" > /dev/null"] {
        assert_eq!(shell_answer(line).status.code(), Some(0), "{line}");
    }
}

#[test]
fn what_cannot_be_seen_is_made_visible_for_a_terminal_and_kept_for_programs_and_files() {
    let name = "a\u{202e}b\u{200b}c\u{2066}";
    let shown = "a\u{fffd}b\u{fffd}c\u{fffd}";
    for format in ["text", "markdown", "bbcode"] {
        let answer = answer_to_one_set("table", &["--name", name, "--as", format]);
        assert!(answer.printed().contains(shown), "{format}: {answer:?}");
        assert!(!answer.printed().contains(name), "{format}");
    }
    for format in ["csv", "json"] {
        let answer = answer_to_one_set("table", &["--name", name, "--as", format]);
        assert!(answer.printed().contains(name), "{format}: {answer:?}");
    }
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out.txt");
    answer_to_one_set("table", &["--name", name, "-o", out.to_str().unwrap()]).printed();
    assert!(std::fs::read_to_string(&out).unwrap().contains(name));
}

#[test]
fn findings_and_sentences_hold_nothing_that_cannot_be_seen() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a.ron");
    let label = super::changed_project("label: \"1\"", "label: \"1\u{202e}\"");
    let wide = label.replace("Number(3.72)", "Number(8.72)");
    std::fs::write(&file, wide).unwrap();
    let check = answer(about("check", &file, &[]));
    assert!(check.stdout.contains("gear 1\u{fffd}: "), "{check:?}");
    let table = answer(about("table", &file, &["--as", "json"]));
    assert!(table.stdout.contains("1\u{202e}"), "{table:?}");
    assert!(table.stderr.contains("gear 1\u{fffd}: "), "{table:?}");
    for arguments in [
        &["\u{2067}a.ron"][..],
        &["table", "nowhere\u{200f}.ron"],
        &["--a\u{200b}s"],
    ] {
        let answer = answer(arguments);
        assert!(answer.sentence().contains('\u{fffd}'), "{answer:?}");
    }
    let answer = answer_to_one_set("table", &["--rpm", "1\u{feff}000"]);
    assert!(answer.sentence().contains("\"1\u{fffd}000\""), "{answer:?}");
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
