//! Does the command line print what was asked for, or one sentence and nothing else?
//!
//! Most tests call the library; those about processes, pipes and files start the real program.

mod bench;
mod brochure;
mod chart;
mod check;
mod closed_forms;
mod count;
mod described;
mod examples;
mod find;
mod fits;
mod formats;
mod from_picture;
mod help;
mod jobs;
mod json;
mod motion;
mod output;
mod pairs;
mod pasted;
mod pasted_torque;
mod published;
mod random;
mod refusals;
mod runs;
mod sets_by_flags;
mod speedometer;
mod unreadable;

use layshaft::cli::{self, Outcome};
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

/// A complete set by flags, to which a test adds what it is about.
const ONE_SET: [&str; 10] = [
    "--gears",
    "3.54 1.91 1.31 1.03 0.83",
    "--final",
    "4.06",
    "--tyre",
    "185/60R14",
    "--redline",
    "6500",
    "--shift",
    "6000",
];

/// What `table` takes, beside the short `-o`.
const TABLE_OPTIONS: &[&str] = &[
    "--gears",
    "--pasted",
    "--final",
    "--tyre",
    "--circumference",
    "--redline",
    "--shift",
    "--name",
    "--reverse",
    "--idle",
    "--lowest-useful",
    "--rpm",
    "--torque",
    "--pasted-torque",
    "--brochure",
    "--measured-at",
    "--mass",
    "--road-load",
    "--drag-area",
    "--rolling",
    "--air-density",
    "--efficiency",
    "--engine-inertia",
    "--wheel-inertia",
    "--mass-factor",
    "--grade",
    "--driven",
    "--adhesion",
    "--wheelbase",
    "--cg-height",
    "--front-share",
    "--pause",
    "--launch-rpm",
    "--displacement",
    "--fuel",
    "--willans",
    "--signal",
    "--signal-ratio",
    "--speed",
    "--units",
    "--show",
    "--as",
    "--decimal",
];

/// What a command line was answered with.
#[derive(Debug)]
struct Answer {
    outcome: Outcome,
    stdout: String,
    stderr: String,
}

impl Answer {
    /// The result, if it was printed with exit code 0.
    fn printed(&self) -> &str {
        assert_eq!(self.outcome, Outcome::Exit(0), "{self:?}");
        &self.stdout
    }

    /// The sentence, if nothing was printed and the exit code is 2.
    fn sentence(&self) -> &str {
        assert_eq!(self.outcome, Outcome::Exit(2), "{self:?}");
        assert_eq!(self.stdout, "", "{self:?}");
        assert_is_one_sentence(&self.stderr);
        &self.stderr
    }
}

fn assert_is_one_sentence(stderr: &str) {
    let line = stderr.strip_suffix('\n').unwrap_or_else(|| {
        panic!("no line break at the end of {stderr:?}");
    });
    assert!(!line.contains(char::is_control), "{line:?}");
    assert!(line.chars().count() < 300, "{line:?}");
    assert!(line.chars().count() > 20, "{line:?}");
    for word in ["panicked", "RUST_BACKTRACE", "os error", "src/"] {
        assert!(!line.contains(word), "{line:?}");
    }
}

/// The answer of the library to `arguments`.
fn answer<T: Into<OsString>>(arguments: impl IntoIterator<Item = T>) -> Answer {
    let (mut stdout, mut stderr) = (Vec::new(), Vec::new());
    let arguments = arguments.into_iter().map(Into::into);
    let outcome = cli::run(arguments, &mut stdout, &mut stderr);
    Answer {
        outcome,
        stdout: String::from_utf8(stdout).unwrap(),
        stderr: String::from_utf8(stderr).unwrap(),
    }
}

/// The answer to a set by flags with more arguments behind it.
fn answer_to_one_set(command: &str, more: &[&str]) -> Answer {
    answer([&[command], &ONE_SET[..], more].concat())
}

/// The program, with nothing on standard input.
fn program() -> Command {
    let mut program = Command::new(env!("CARGO_BIN_EXE_layshaft"));
    program.stdin(Stdio::null());
    program
}

/// What the real program answers.
fn program_answer<T: AsRef<std::ffi::OsStr>>(arguments: impl IntoIterator<Item = T>) -> Output {
    program().args(arguments).output().unwrap()
}

/// A project of three sets; the tests count its lines, so it is no example that anybody polishes.
fn three_sets() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/it/cli/three-sets.ron")
}

/// The text of the three sets with one part replaced, which must be there.
fn changed_project(part: &str, replacement: &str) -> String {
    let text = std::fs::read_to_string(three_sets()).unwrap();
    assert!(text.contains(part), "{part}");
    text.replace(part, replacement)
}

/// Arguments with a file in second place.
fn about(command: &str, file: &Path, more: &[&str]) -> Vec<OsString> {
    let mut arguments: Vec<OsString> = vec![command.into(), file.into()];
    arguments.extend(more.iter().map(OsString::from));
    arguments
}

/// The JSON that `layshaft table` prints.
fn json_of(answer: &Answer) -> serde_json::Value {
    serde_json::from_str(answer.printed()).unwrap()
}

/// Whether two numbers agree to the last digits that the way through text may change.
fn is_close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-12 * a.abs().max(b.abs())
}
