//! The arguments: what they ask for, and which flags were given with which values.
//!
//! What the values mean is read elsewhere, where the quantity is known.

use super::error::CliError;
use super::flag_row::FlagRow;
use super::flags::{self, FLAGS, Flag};
use super::nearest::nearest;
use super::subcommand::Subcommand;
use crate::gearing::quoted;
use lexopt::Arg;
use std::ffi::{OsStr, OsString};
use std::path::{Path, PathBuf};

/// What the arguments ask for.
#[derive(Debug)]
pub(super) enum Asked {
    /// The window, on a file or on the example.
    Window(Option<PathBuf>),
    /// A headless command.
    Command(Subcommand, Arguments),
    /// The help about a command, or about all.
    Help(Option<Subcommand>),
    /// The version.
    Version,
}

/// The file and the flags that a command was given.
#[derive(Debug, Default)]
pub(super) struct Arguments {
    /// What is asked of the file, for a command that takes such a word.
    pub(super) word: Option<OsString>,
    /// The project file.
    pub(super) file: Option<PathBuf>,
    given: Vec<(Flag, OsString)>,
}

/// What the arguments ask for.
pub(super) fn read(arguments: impl IntoIterator<Item = OsString>) -> Result<Asked, CliError> {
    let words = Words::read(arguments)?;
    let command = words.command();
    if words.help {
        Ok(Asked::Help(command))
    } else if words.version {
        Ok(Asked::Version)
    } else if let Some(command) = command {
        words.for_command(command)
    } else {
        words.for_window()
    }
}

/// The arguments one by one: positional words and flags.
#[derive(Debug, Default)]
struct Words {
    positional: Vec<OsString>,
    given: Vec<(Flag, OsString)>,
    help: bool,
    version: bool,
}

impl Words {
    fn read(arguments: impl IntoIterator<Item = OsString>) -> Result<Self, CliError> {
        let mut words = Self::default();
        let mut parser = lexopt::Parser::from_args(arguments);
        while let Some(argument) = parser.next().map_err(|error| unread(&error))? {
            let row = match argument {
                Arg::Value(word) => {
                    words.positional.push(word);
                    continue;
                }
                Arg::Long("help") | Arg::Short('h') => {
                    words.help = true;
                    continue;
                }
                Arg::Long("version") | Arg::Short('V') => {
                    words.version = true;
                    continue;
                }
                Arg::Long(name) => {
                    let row = flags::long(name, words.command());
                    row.ok_or_else(|| unknown_long(name))?
                }
                Arg::Short(letter) => flags::short(letter).ok_or_else(|| unknown_short(letter))?,
            };
            let value = if row.value.is_empty() {
                OsString::new()
            } else {
                value(&mut parser, row)?
            };
            words.given.push((row.flag, value));
        }
        Ok(words)
    }

    /// The command that the first word names.
    fn command(&self) -> Option<Subcommand> {
        self.positional
            .first()?
            .to_str()
            .and_then(Subcommand::named)
    }

    fn for_command(self, command: Subcommand) -> Result<Asked, CliError> {
        let file_at = if command.takes_word() { 2 } else { 1 };
        if let Some(second) = self.positional.get(file_at + 1) {
            return Err(CliError::SecondFile(shown(second)));
        }
        let of_command = |(flag, value): (Flag, OsString)| {
            let meant = flag.of_command(command);
            let meant = meant.ok_or_else(|| CliError::NotOfCommand {
                flag: flag.name(),
                command: command.name(),
            });
            meant.map(|flag| (flag, value))
        };
        let given = self.given.into_iter().map(of_command);
        let given = given.collect::<Result<_, _>>()?;
        let mut behind = self.positional.into_iter().skip(1);
        let arguments = Arguments {
            word: if command.takes_word() {
                behind.next()
            } else {
                None
            },
            file: behind.next().map(PathBuf::from),
            given,
        };
        Ok(Asked::Command(command, arguments))
    }

    fn for_window(self) -> Result<Asked, CliError> {
        let file = self.positional.first();
        if let Some(file) = file.filter(|file| !Path::new(file).exists()) {
            return Err(no_such_file(file));
        }
        if let Some((flag, _)) = self.given.first() {
            return Err(CliError::NotOfWindow {
                flag: flag.name(),
                commands: command_names(flag.row()),
            });
        }
        match self.positional.get(1) {
            None => Ok(Asked::Window(file.map(PathBuf::from))),
            Some(second) => Err(match second.to_str().and_then(Subcommand::named) {
                Some(command) => CliError::CommandBehindFile(command.name()),
                None => CliError::SecondFile(shown(second)),
            }),
        }
    }
}

impl Arguments {
    /// The values of a flag in their order.
    pub(super) fn all(&self, flag: Flag) -> Result<Vec<&str>, CliError> {
        let values = self.given.iter().filter(|(given, _)| *given == flag);
        values
            .map(|(_, value)| {
                value.to_str().ok_or_else(|| CliError::NotUnicode {
                    flag: flag.name(),
                    value: shown(value),
                })
            })
            .collect()
    }

    /// The value of a flag that may be given once.
    pub(super) fn once(&self, flag: Flag) -> Result<Option<&str>, CliError> {
        match *self.all(flag)?.as_slice() {
            [] => Ok(None),
            [value] => Ok(Some(value)),
            _ => Err(CliError::Twice(flag.name())),
        }
    }

    /// The value of a flag that names a file and may be given once.
    pub(super) fn path(&self, flag: Flag) -> Result<Option<&Path>, CliError> {
        let mut values = self.given.iter().filter(|(given, _)| *given == flag);
        match (values.next(), values.next()) {
            (_, Some(_)) => Err(CliError::Twice(flag.name())),
            (first, None) => Ok(first.map(|(_, value)| Path::new(value))),
        }
    }

    /// Whether a flag without a value was given.
    pub(super) fn has(&self, flag: Flag) -> bool {
        self.given.iter().any(|(given, _)| *given == flag)
    }

    /// The first flag of those that was given.
    pub(super) fn first_of(&self, is_one: impl Fn(&FlagRow) -> bool) -> Option<Flag> {
        let mut given = self.given.iter().map(|(flag, _)| *flag);
        given.find(|flag| is_one(flag.row()))
    }
}

/// The value behind a flag; one that is a flag itself was hardly meant.
fn value(parser: &mut lexopt::Parser, row: &FlagRow) -> Result<OsString, CliError> {
    let missing = |next: Option<&OsStr>| CliError::NoValue {
        flag: row.flag.name(),
        value: row.value,
        next: next.map(shown),
    };
    let value = parser.value().ok().ok_or_else(|| missing(None))?;
    if value.to_str().is_some_and(is_flag) {
        return Err(missing(Some(&value)));
    }
    Ok(value)
}

fn is_flag(text: &str) -> bool {
    match text.strip_prefix("--") {
        Some(rest) => {
            let name = rest.split('=').next().unwrap_or(rest);
            flags::long(name, None).is_some() || ["help", "version"].contains(&name)
        }
        None => ["-o", "-h", "-V"].contains(&text),
    }
}

fn unread(error: &lexopt::Error) -> CliError {
    match error {
        lexopt::Error::UnexpectedValue { option, .. } => CliError::UnwantedValue(quoted(option)),
        other => CliError::Unread(quoted(&other.to_string())),
    }
}

fn unknown_long(name: &str) -> CliError {
    let known = FLAGS.iter().map(|row| row.long);
    CliError::UnknownFlag {
        flag: format!("--{}", quoted(name)),
        nearest: nearest(name, known.chain(["help", "version"])),
    }
}

fn unknown_short(letter: char) -> CliError {
    CliError::UnknownFlag {
        flag: quoted(&format!("-{letter}")),
        nearest: None,
    }
}

fn no_such_file(file: &OsStr) -> CliError {
    let word = file.to_str().unwrap_or_default();
    // Other programs have commands of these names.
    let nearest = match word {
        "help" => Some("--help"),
        "version" => Some("--version"),
        word => nearest(word, Subcommand::ALL.map(Subcommand::name)),
    };
    CliError::NoSuchFile {
        file: shown(file),
        nearest,
    }
}

/// `layshaft table or layshaft check`: the commands that take a flag of that name.
fn command_names(row: &FlagRow) -> String {
    let commands = FLAGS.iter().filter(|other| other.long == row.long);
    let commands = commands.flat_map(|row| row.commands);
    let names = commands.map(|c| format!("layshaft {}", c.name()));
    names.collect::<Vec<String>>().join(" or ")
}

fn shown(text: impl AsRef<OsStr>) -> String {
    quoted(&text.as_ref().to_string_lossy())
}
