//! Do the guides say what the program does: keys, options, cautions, spellings, outputs, pictures?
//!
//! What a guide repeats is compared with where it comes from. After a change of the program
//! `renew_the_readme` writes the tables, the printed outputs and the pictures anew.

mod format_table;
mod tables;

use format_table::format_table;
use layshaft::app::CAUTIONS;
use layshaft::cli::{self, Outcome};
use layshaft::gearing::{parse_ratio, parse_tyre, read_reduction};
use layshaft::import::gears::read_pasted;
use layshaft::project::examples::EXAMPLES;
use layshaft::project::format;
use layshaft::units::mm_text;
use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use tables::{
    bench_json_table, fits_json_table, json_table, key_table, motion_json_table, option_table,
    pairs_json_table,
};
use tempfile::TempDir;

fn top() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn guide(name: &str) -> String {
    fs::read_to_string(top().join(name)).unwrap()
}

/// The text under a heading, up to the next heading of whatever rank.
fn section<'a>(guide: &'a str, heading: &str) -> &'a str {
    let start = guide.find(&format!("\n{heading}\n"));
    let start = start.unwrap_or_else(|| panic!("no heading {heading}")) + heading.len() + 2;
    let rest = &guide[start..];
    let is_heading = |at: &usize| rest[at + 1..].trim_start_matches('#').starts_with(' ');
    let mut ends = rest.match_indices("\n#").map(|(at, _)| at);
    &rest[..ends.find(is_heading).unwrap_or(rest.len())]
}

/// The first table of a section, as it stands there.
fn table_of(section: &str) -> &str {
    let start = section.find("\n|").unwrap_or_else(|| panic!("no table")) + 1;
    let rest = &section[start..];
    let end = rest.find("\n\n").map_or(rest.len(), |end| end + 1);
    &rest[..end]
}

/// The rows of a section's table, without heading and rule, each with its cells.
fn rows_of(section: &str) -> Vec<Vec<&str>> {
    let rows = table_of(section).lines().skip(2);
    rows.map(|row| row.trim_matches('|').split('|').map(str::trim).collect())
        .collect()
}

/// What stands in backticks.
fn quoted(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

/// What the program prints, asked within this process.
fn printed(arguments: &[&str]) -> String {
    let (mut stdout, mut stderr) = (Vec::new(), Vec::new());
    let arguments = arguments.iter().map(OsString::from);
    let outcome = cli::run(arguments, &mut stdout, &mut stderr);
    assert_eq!(outcome, Outcome::Exit(0));
    String::from_utf8(stdout).unwrap()
}

/// The words of all commands, in the order of the help.
fn commands() -> Vec<String> {
    let help = printed(&["--help"]);
    let words = help.lines().filter_map(|line| {
        let word = line.strip_prefix("layshaft ")?.split(' ').next()?;
        word.bytes().all(|b| b.is_ascii_lowercase()).then_some(word)
    });
    let mut commands: Vec<String> = Vec::new();
    for word in words {
        if !commands.iter().any(|command| command == word) {
            commands.push(word.to_owned());
        }
    }
    commands
}

/// A fenced block of a guide.
struct Block<'a> {
    language: &'a str,
    text: &'a str,
    /// Whether nothing but blank lines stands between it and the block before it.
    follows: bool,
}

fn blocks(guide: &str) -> Vec<Block<'_>> {
    let parts: Vec<&str> = guide.split("\n```").collect();
    let fenced = parts.iter().enumerate().skip(1).step_by(2);
    fenced
        .map(|(at, part)| {
            let (language, text) = part.split_once('\n').unwrap();
            Block {
                language,
                text,
                follows: at > 1 && parts[at - 1].trim().is_empty(),
            }
        })
        .collect()
}

/// A command line of a guide, and what it must do.
struct Shown {
    line: String,
    words: Vec<String>,
    exit_code: i32,
}

/// The commands of a block; a backslash carries a line on.
fn commands_of(block: &str) -> Vec<Shown> {
    let joined = block.replace("\\\n", " ");
    let lines = joined
        .lines()
        .filter(|line| line.starts_with("layshaft"))
        .map(str::to_owned);
    lines
        .map(|line| {
            let (command, remark) = line.split_once(" # exit code ").unwrap_or((&line, "0"));
            Shown {
                words: words_of(command),
                exit_code: remark.trim().parse().unwrap(),
                line: line.clone(),
            }
        })
        .collect()
}

/// The words of a command line; quotation marks hold words together.
fn words_of(line: &str) -> Vec<String> {
    let mut words = Vec::new();
    for (at, part) in line.split('"').enumerate() {
        if at % 2 == 1 {
            words.push(part.to_owned());
        } else {
            words.extend(part.split_whitespace().map(str::to_owned));
        }
    }
    words
}

/// A folder as a reader has it who tries the commands out.
fn folder_to_try_in() -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    for name in ["saves", "assets"] {
        fs::create_dir(folder.path().join(name)).unwrap();
    }
    for entry in fs::read_dir(top().join("saves")).unwrap() {
        let entry = entry.unwrap();
        fs::copy(
            entry.path(),
            folder.path().join("saves").join(entry.file_name()),
        )
        .unwrap();
    }
    folder
}

/// What a command prints in a folder; its exit code must be the one that is shown.
fn tried(shown: &Shown, folder: &Path) -> String {
    let (name, arguments) = shown.words.split_first().unwrap();
    assert_eq!(name, "layshaft", "{}", shown.line);
    let first = arguments.first().map_or("", String::as_str);
    let is_headless = ["--help", "--version"].contains(&first)
        || commands().iter().any(|command| command == first);
    assert!(is_headless, "{} opens the window", shown.line);
    let output = Command::new(env!("CARGO_BIN_EXE_layshaft"))
        .args(arguments)
        .current_dir(folder)
        .stdin(Stdio::null())
        .output()
        .unwrap();
    let stderr = String::from_utf8_lossy(&output.stderr);
    let code = output.status.code();
    assert_eq!(code, Some(shown.exit_code), "{}\n{stderr}", shown.line);
    String::from_utf8(output.stdout).unwrap()
}

/// Every output that the guide shows beneath a command, with what is really printed.
fn shown_and_printed<'a>(guide: &'a str, folder: &Path) -> Vec<(&'a str, String)> {
    let mut outputs = Vec::new();
    let mut last = String::new();
    for block in blocks(guide) {
        match block.language {
            "console" => {
                for shown in commands_of(block.text) {
                    last = tried(&shown, folder);
                }
            }
            "text" if block.follows => outputs.push((block.text, last.clone())),
            _ => {}
        }
    }
    outputs
}

fn pixels(path: &Path) -> image::RgbaImage {
    image::open(path).unwrap().into_rgba8()
}

/// The pictures that the commands of the guide made, by name.
fn pictures_made(folder: &Path) -> BTreeMap<OsString, PathBuf> {
    let entries = fs::read_dir(folder.join("assets")).unwrap();
    entries
        .map(|entry| entry.unwrap())
        .map(|entry| (entry.file_name(), entry.path()))
        .collect()
}

fn is_same_table(heading: &str, expected: &str) {
    let readme = guide("README.md");
    let present = table_of(section(&readme, heading));
    assert_eq!(
        present, expected,
        "{heading}: the program has changed; renew_the_readme writes the table"
    );
}

#[test]
fn the_keys_are_those_of_the_table_of_commands() {
    is_same_table("## Keys", &key_table());
}

#[test]
fn the_options_are_those_of_the_help() {
    is_same_table("## Command line", &option_table());
    let readme = guide("README.md");
    let section = section(&readme, "## Command line");
    let help = printed(&["--help"]);
    let codes = help.lines().last().unwrap();
    assert!(section.contains(codes), "{codes}");
}

#[test]
fn the_json_keys_are_those_of_the_reference() {
    is_same_table("### JSON for other programs", &json_table());
    is_same_table(
        "### JSON of effort, runs and steady speeds",
        &motion_json_table(),
    );
    is_same_table("### Tooth pairs", &pairs_json_table());
    is_same_table("### On the bench", &bench_json_table());
    is_same_table("### Fits and turned shafts", &fits_json_table());
}

#[test]
fn the_keys_of_the_project_file_are_those_of_format_2() {
    is_same_table("### Every key", &format_table());
}

#[test]
fn the_cautions_are_those_of_the_help_window() {
    let readme = guide("README.md");
    let present: Vec<&str> = section(&readme, "## Cautions")
        .lines()
        .filter(|line| !line.is_empty())
        .collect();
    assert_eq!(present, CAUTIONS.map(|caution| format!("- {caution}")));
}

#[test]
fn every_command_does_what_is_shown_and_makes_the_picture_that_is_shown() {
    let readme = guide("README.md");
    let folder = folder_to_try_in();
    let outputs = shown_and_printed(&readme, folder.path());
    assert!(outputs.len() > 1, "outputs are shown");
    for (shown, printed) in outputs {
        assert_eq!(shown.trim_end(), printed.trim_end(), "renew_the_readme");
    }
    let pictures = pictures_made(folder.path());
    assert!(pictures.len() > 1, "pictures are shown");
    for (name, path) in pictures {
        let kept = top().join("assets").join(&name);
        let is_same = pixels(&kept) == pixels(&path);
        assert!(is_same, "{}: renew_the_readme", kept.display());
    }
}

#[test]
fn every_picture_has_words_for_those_who_do_not_see_it() {
    let readme = guide("README.md");
    let pictures: Vec<&str> = readme.split("![").skip(1).collect();
    assert!(pictures.len() > 2);
    for picture in pictures {
        let (words, _) = picture.split_once("](").unwrap();
        assert!(words.len() > 40, "{words}");
    }
}

#[test]
fn ratios_are_read_as_the_readme_says() {
    let readme = guide("README.md");
    for row in rows_of(section(&readme, "### Ratios")) {
        for spelling in quoted(row[0]) {
            let ratio = read_reduction(&parse_ratio(spelling).unwrap());
            assert_eq!(ratio.reading(), row[1], "{spelling}");
        }
    }
}

#[test]
fn tyres_are_read_as_the_readme_says() {
    let readme = guide("README.md");
    for row in rows_of(section(&readme, "### Tyres")) {
        for spelling in quoted(row[0]) {
            let tyre = parse_tyre(spelling).unwrap();
            let circumference = mm_text(tyre.rolling_circumference_mm());
            let read = (tyre.to_string(), format!("{circumference} mm"));
            assert_eq!(read, (row[1].to_owned(), row[2].to_owned()), "{spelling}");
        }
    }
    for spelling in ["185R14C", "7.50 R 16", "1935 mm"] {
        assert!(readme.contains(&format!("`{spelling}`")), "{spelling}");
        assert!(parse_tyre(spelling).is_err(), "{spelling}");
    }
}

#[test]
fn every_pasted_example_is_read_without_a_remark() {
    let readme = guide("README.md");
    let examples: Vec<_> = blocks(&readme)
        .into_iter()
        .filter(|block| block.language == "gears")
        .collect();
    assert!(examples.len() > 2);
    for example in examples {
        let pasted = read_pasted(example.text).unwrap();
        let [set] = &pasted.sets[..] else {
            panic!("{}", example.text)
        };
        assert!(set.gears.len() >= 3, "{}", example.text);
        assert_eq!(set.final_drives.len(), 1, "{}", example.text);
        assert_eq!(set.remarks, Vec::<String>::new(), "{}", example.text);
    }
}

#[test]
fn the_project_file_that_is_shown_is_whole_and_in_the_own_layout() {
    let readme = guide("README.md");
    let shown = blocks(&readme)
        .into_iter()
        .find(|block| block.language == "ron")
        .unwrap();
    let text = shown.text.trim_start().to_owned() + "\n";
    let project = format::read(&text).unwrap();
    assert_eq!(format::write(&project).unwrap(), text);
}

#[test]
fn the_engine_and_the_vehicle_that_are_shown_stand_in_an_example_and_every_key_in_the_format() {
    let readme = guide("README.md");
    let section = section(&readme, "### Engine and vehicle in the file");
    let shown = blocks(section);
    assert!(guide("saves/farm-four-wheel-drive.ron").contains(shown[0].text));
    let every_key = guide("tests/it/format/golden-v2.ron");
    let names = quoted(section).map(|word| word.split(':').next().unwrap_or_default());
    let is_key =
        |name: &&str| !name.is_empty() && name.chars().all(|c| !c.is_uppercase() && c != '\n');
    let keys: Vec<&str> = names.filter(is_key).collect();
    assert!(keys.len() > 30, "{keys:?}");
    for key in keys {
        assert!(every_key.contains(&format!(" {key}: ")), "{key}");
    }
}

#[test]
fn the_readme_names_every_example() {
    let readme = guide("README.md").to_lowercase();
    for example in EXAMPLES {
        let name = example.name.to_lowercase();
        assert!(readme.contains(&name), "{name}");
    }
}

/// The anchor of a heading: small letters, blanks as dashes, no other signs.
fn anchor(heading: &str) -> String {
    let letters = heading.trim_start_matches('#').trim().to_lowercase();
    let letters = letters.replace(' ', "-");
    letters
        .chars()
        .filter(|c| c.is_alphanumeric() || *c == '-')
        .collect()
}

#[test]
fn every_link_within_a_guide_leads_to_a_heading() {
    for name in ["README.md", "DEVELOPERS.md"] {
        let guide = guide(name);
        let headings: Vec<String> = guide
            .lines()
            .filter(|line| line.starts_with('#'))
            .map(anchor)
            .collect();
        for link in guide.split("](#").skip(1) {
            let link = link.split(')').next().unwrap();
            assert!(headings.iter().any(|h| h == link), "{name}: #{link}");
        }
    }
}

fn folders_under(path: &str) -> Vec<String> {
    let mut folders = Vec::new();
    for entry in fs::read_dir(top().join(path)).unwrap() {
        let entry = entry.unwrap();
        if entry.path().is_dir() {
            let folder = format!("{path}/{}", entry.file_name().to_str().unwrap());
            folders.extend(folders_under(&folder));
            folders.push(folder);
        }
    }
    folders
}

#[test]
fn the_map_for_developers_shows_every_folder() {
    let map = guide("DEVELOPERS.md");
    for folder in ["src", "tests"].into_iter().flat_map(folders_under) {
        assert!(map.contains(&format!("`{folder}/")), "{folder}/");
    }
}

/// The guide with the first table under a heading replaced.
fn with_table(guide: &str, heading: &str, table: &str) -> String {
    let old = table_of(section(guide, heading));
    let at = old.as_ptr() as usize - guide.as_ptr() as usize;
    [&guide[..at], table, &guide[at + old.len()..]].concat()
}

#[test]
#[ignore = "writes README.md and the pictures that it shows"]
fn renew_the_readme() {
    let mut readme = guide("README.md");
    for (heading, table) in [
        ("## Keys", key_table()),
        ("## Command line", option_table()),
        ("### JSON for other programs", json_table()),
        (
            "### JSON of effort, runs and steady speeds",
            motion_json_table(),
        ),
        ("### Tooth pairs", pairs_json_table()),
        ("### On the bench", bench_json_table()),
        ("### Fits and turned shafts", fits_json_table()),
        ("### Every key", format_table()),
    ] {
        readme = with_table(&readme, heading, &table);
    }
    let folder = folder_to_try_in();
    let before = readme.clone();
    for (shown, printed) in shown_and_printed(&before, folder.path()) {
        let old = format!("```text\n{shown}\n```");
        let new = format!("```text\n{}\n```", printed.trim_end());
        readme = readme.replacen(&old, &new, 1);
    }
    fs::write(top().join("README.md"), readme).unwrap();
    for (name, path) in pictures_made(folder.path()) {
        fs::copy(path, top().join("assets").join(name)).unwrap();
    }
}
