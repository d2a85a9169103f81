//! Why does a command print nothing, in one sentence?

use crate::analysis::{Needed, NoMotion};
use crate::gearing::{OutOfRange, quoted};
use crate::motion::BrochureError;
use crate::project::format::FormatError;
use crate::project::{ProjectTextError, ReadError, SaveError};
use crate::sheet::NotWritten;
use crate::sheet::json::JsonError;
use crate::sheet::page::PageError;
use crate::unseen::printable;

/// The most characters of a message, line break not counted.
const MOST_CHARACTERS: usize = 299;

/// Why a command printed nothing.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub(super) enum CliError {
    /// A flag that is not there.
    #[error("there is no option {flag}; {}", meant_flag(*nearest))]
    UnknownFlag {
        /// As it was typed, with its dashes.
        flag: String,
        /// The one that was probably meant, without dashes.
        nearest: Option<&'static str>,
    },
    /// A flag that does nothing for this command.
    #[error(
        "{flag} does not go with layshaft {command}; layshaft {command} --help lists what does"
    )]
    NotOfCommand {
        /// With its dashes.
        flag: String,
        /// The command's name.
        command: &'static str,
    },
    /// A flag without a command.
    #[error("{flag} does not go with the window; it belongs to {commands}")]
    NotOfWindow {
        /// With its dashes.
        flag: String,
        /// The commands that take it.
        commands: String,
    },
    /// Nothing behind a flag, or another flag.
    #[error("{flag} needs a value: {flag} {value}{}", instead(next.as_deref()))]
    NoValue {
        /// With its dashes.
        flag: String,
        /// What stands for the value in the help.
        value: &'static str,
        /// The flag that follows instead.
        next: Option<String>,
    },
    /// `--help=something`.
    #[error("{0} takes no value")]
    UnwantedValue(String),
    /// Anything else that the reader of arguments does not like.
    #[error("the arguments cannot be read: {0}")]
    Unread(String),
    /// A flag that was given more than once.
    #[error("{0} is given twice; give it once")]
    Twice(String),
    /// A value that is no text.
    #[error("{flag} needs a text, but \"{value}\" is not valid Unicode")]
    NotUnicode {
        /// With its dashes.
        flag: String,
        /// What can be shown of it.
        value: String,
    },
    /// A value that is none of those there are.
    #[error("{flag} is {choices}, not \"{value}\"")]
    NoSuchChoice {
        /// With its dashes.
        flag: String,
        /// The values there are.
        choices: String,
        /// What was given.
        value: String,
    },
    /// A second file.
    #[error("only one project file can be given; \"{0}\" is one too many")]
    SecondFile(String),
    /// The command behind the file.
    #[error("the command comes before the file: layshaft {0} FILE")]
    CommandBehindFile(&'static str),
    /// A first word that is neither command nor file.
    #[error("there is no file \"{file}\"; {}", meant_command(*nearest))]
    NoSuchFile {
        /// As it was typed.
        file: String,
        /// The word that was probably meant: a command, `--help`, `--version`.
        nearest: Option<&'static str>,
    },
    /// Neither a file nor a set.
    #[error("give a project file, or a gear set by --gears, --final, --tyre and --redline")]
    NothingToShow,
    /// A file and flags that describe a set.
    #[error("{0} describes a gear set without a file; give the file or the flags, not both")]
    FileAndSets(String),
    /// Gears by a flag and by a text.
    #[error("--gears and --pasted each give the gear sets; give one of them")]
    GearsAndPasted,
    /// Two texts from the one standard input.
    #[error("{} and {} cannot both read standard input; give one of them a file", .0[0], .0[1])]
    StandardInputTwice([String; 2]),
    /// A text that cannot be read from standard input.
    #[error("{flag}: standard input cannot be read: {reason}")]
    NoStandardInput {
        /// With its dashes.
        flag: String,
        /// Why, in words.
        reason: String,
    },
    /// A flag that a gear set needs.
    #[error("a gear set by flags needs {0}")]
    SetNeeds(&'static str),
    /// Tyre and circumference.
    #[error(
        "give --tyre or --circumference, not both: the measured circumference overrides a size"
    )]
    TwoTyres,
    /// More sets than are weighed at once.
    #[error("--gears is given {0} times, but at most 3 gear sets are weighed at once")]
    TooManySets(usize),
    /// A flag that is neither given once nor once for each set.
    #[error("{flag} is given {given} times for {sets}; give it once for all, or once for each")]
    Count {
        /// With its dashes.
        flag: String,
        /// How many times it was given.
        given: usize,
        /// How many sets there are, in words.
        sets: String,
    },
    /// More names than sets.
    #[error("--name is given {given} times for {sets}; give it once for each at most")]
    TooManyNames {
        /// How many times it was given.
        given: usize,
        /// How many sets there are, in words.
        sets: String,
    },
    /// Gears that seem to be parted by commas.
    #[error("{flag} parts gears by blanks, not by commas as in \"{value}\"")]
    CommasBetweenGears {
        /// With its dashes.
        flag: String,
        /// The item with the commas.
        value: String,
    },
    /// More than one torque curve.
    #[error("{} and {} each give the torque curve; give one of them", .0[0], .0[1])]
    TwoCurves([String; 2]),
    /// A point of a torque curve that does not read.
    #[error("--torque has points such as 2500:130, rpm and N·m, parted by blanks, not \"{0}\"")]
    NoTorquePoint(String),
    /// Figures of a brochure that do not read.
    #[error(
        "--brochure is peak torque in N·m and peak power in kW, each at its rpm, as \"150@4000 80@6000\", not \"{0}\""
    )]
    NoBrochure(String),
    /// A peak power that has a range, or the torque in second place.
    #[error("--brochure has torque first and power second, at one engine speed, not at \"{0}\"")]
    PeakPowerOverRange(String),
    /// Figures of a brochure that no engine has.
    #[error("--brochure: {0}; torque comes first, in N·m, and power second, in kW")]
    NotOneEngine(BrochureError),
    /// Too few or too many numbers behind a flag.
    #[error("{flag} is {wanted}, parted by blanks, not \"{value}\"")]
    ItemCount {
        /// With its dashes.
        flag: String,
        /// What it holds, in words.
        wanted: &'static str,
        /// What was given.
        value: String,
    },
    /// A measured and an estimated road load.
    #[error("give --road-load, or --drag-area with --rolling: what was measured is both together")]
    TwoRoadLoads,
    /// Engine or vehicle are not known well enough.
    #[error("--show {show}: {reason}{}", flag.map_or_else(String::new, |flag| format!("; without a file, {flag} gives it")))]
    NoMotion {
        /// What was asked for.
        show: &'static str,
        /// What is not known, or what contradicts.
        reason: NoMotion,
        /// The flags that give what is not known.
        flag: Option<&'static str>,
    },
    /// Several tables at once.
    #[error("layshaft table shows one at a time; layshaft chart takes several behind --show")]
    OneTable,
    /// A beginning without an end.
    #[error("--from needs --to: the road speeds that each gear is timed to")]
    FromWithoutTo,
    /// An end before the beginning.
    #[error("--to must be above --from; to time the vehicle rolling down, give --coast FROM:TO")]
    ToBelowFrom,
    /// What is no coast-down.
    #[error("--coast is the higher road speed and the lower one, as 120:60, not \"{0}\"")]
    NoCoast(String),
    /// A question about a run where none is shown.
    #[error("{flag} goes with --show run, not with --show {shown}")]
    OnlyOfRun {
        /// With its dashes.
        flag: String,
        /// What is shown.
        shown: &'static str,
    },
    /// A list with nothing between two commas, or nothing at all.
    #[error(
        "{flag} has an empty item in \"{value}\"; give speeds parted by one comma or by blanks"
    )]
    EmptyItem {
        /// With its dashes.
        flag: String,
        /// The whole list.
        value: String,
    },
    /// An item of a list that is no number.
    #[error("{flag} holds \"{value}\", which is not a number such as 2500 or 62.5")]
    NotANumber {
        /// With its dashes.
        flag: String,
        /// The item.
        value: String,
    },
    /// A number outside its range.
    #[error("{flag}: {what} must be {bounds}, not \"{value}\"")]
    OutOfRange {
        /// With its dashes.
        flag: String,
        /// The quantity with its article.
        what: &'static str,
        /// The range in words.
        bounds: &'static str,
        /// What was given.
        value: String,
    },
    /// More speeds than are printed at once.
    #[error("{flag} holds {given} speeds, but at most {most} are printed at once")]
    TooManySpeeds {
        /// With its dashes.
        flag: String,
        /// How many there were.
        given: usize,
        /// How many there may be.
        most: usize,
    },
    /// Neither one shift point nor one for each change.
    #[error(
        "{flag} holds {given} shift points, but a set of {gears} gears has {} changes; give one, or \
         one for each change",
        gears - 1
    )]
    ShiftCount {
        /// With its dashes, and with the set where there are several.
        flag: String,
        /// How many there were.
        given: usize,
        /// How many gears the set has.
        gears: usize,
    },
    /// Any other value that cannot be, with the reason from whoever knows the quantity.
    #[error("{flag}: {reason}")]
    Value {
        /// With its dashes, and with the set where there are several.
        flag: String,
        /// One sentence.
        reason: String,
    },
    /// A file for a command that reads none.
    #[error("layshaft {0} reads no file; layshaft {0} --help lists what it takes")]
    NoFileWanted(&'static str),
    /// Nothing behind `find`.
    #[error("say what to find: layshaft find final, layshaft find tyre or layshaft find ratio")]
    NothingToFind,
    /// Neither turns nor speeds, or parts of both.
    #[error(
        "layshaft count needs --input and --wheel with turns, or --rpm and --at with what was read on the road"
    )]
    NothingCounted,
    /// A flag that a command cannot do without.
    #[error("{command} needs {flag} {what}")]
    Needs {
        /// The command.
        command: &'static str,
        /// With its dashes.
        flag: String,
        /// What stands behind it.
        what: &'static str,
    },
    /// What is no band, or one that is turned round.
    #[error("{flag} is LOW,HIGH, the lower number first, not \"{value}\"")]
    NoBand {
        /// With its dashes.
        flag: String,
        /// What was given.
        value: String,
    },
    /// How many shims nobody stacks.
    #[error("--most is how many shims may be stacked, 1 to 10, not \"{0}\"")]
    Stacked(String),
    /// No torque, or two.
    #[error(
        "layshaft preload needs --pull and --radius, or --reading, or --reading with --wrench and --adapter"
    )]
    NothingPulled,
    /// No seat, or two.
    #[error("layshaft fit needs --shaft CLASS or --bore CLASS, one of them")]
    NoSeat,
    /// Less than nothing is left for the bearings.
    #[error("the seals and what was measured before take more than was measured; measure again")]
    NothingTurns,
    /// A gear that is not there.
    #[error("there is no gear \"{gear}\" in \"{set}\"; its gears are {labels}")]
    NoSuchGear {
        /// As it was typed.
        gear: String,
        /// The name of the set.
        set: String,
        /// All labels there are.
        labels: String,
    },
    /// A wish that nothing fulfils.
    #[error("nothing fulfils that wish: {0}")]
    OutOfReach(OutOfRange),
    /// Teeth without the shafts that they are to fit.
    #[error("{0} says what teeth fit a centre distance; give --centre MM with it")]
    NoCentre(String),
    /// Two sizes of teeth.
    #[error("--module and --pitch both say how large the teeth are; give one of them")]
    TwoSizesOfTeeth,
    /// A decimal mark without CSV.
    #[error("--decimal goes with --as csv only")]
    DecimalWithoutCsv,
    /// A file that cannot be read.
    #[error(transparent)]
    NotRead(#[from] ReadError),
    /// A file that is neither project nor picture of one.
    #[error(transparent)]
    NoProjectText(#[from] ProjectTextError),
    /// A file that holds no project.
    #[error("{file}: {reason}")]
    NoProject {
        /// Its path.
        file: String,
        /// What is wrong, with line and column where there is one.
        reason: FormatError,
    },
    /// A picture without a place to go.
    #[error("say where the picture goes: -o OUT.png, or -o - for standard output")]
    NoOutput,
    /// A set that is not there.
    #[error("{flag} names set {number}, but there {}", there_are(*present))]
    NoSuchSet {
        /// With its dashes.
        flag: String,
        /// Counted from 1.
        number: String,
        /// How many there are.
        present: usize,
    },
    /// A job that is not there.
    #[error(
        "--job names job {number}, but the project has {present}; layshaft jobs FILE lists them"
    )]
    NoSuchJob {
        /// As it was given.
        number: String,
        /// How many there are.
        present: usize,
    },
    /// A plan that is not there.
    #[error("--job plan: the project has no plan of what changes")]
    NoPlan,
    /// The drops of a set that is not there to be seen.
    #[error("--drops names a set that the picture does not show; --sets says which it shows")]
    DropsOfUnseen,
    /// Drops in a diagram that has none.
    #[error("--drops goes with --show speed, not with --show {0}")]
    NoDrops(String),
    /// What only a picture has, for a page of paper.
    #[error("{0} goes with a picture, not with --page")]
    NotOnPaper(String),
    /// A picture that cannot be made.
    #[error(transparent)]
    Page(#[from] PageError),
    /// Output over the input.
    #[error("-o names the project file itself; give the output another name")]
    OwnInput,
    /// Output over a pasted text.
    #[error("-o names the text that {0} reads; give the output another name")]
    OwnText(String),
    /// A file that cannot be written.
    #[error(transparent)]
    NotWritten(SaveError),
    /// A device or pipe that cannot be written.
    #[error("the device or pipe cannot be written ({reason}): {path}")]
    NotStreamed {
        /// Why, in words.
        reason: String,
        /// Its path.
        path: String,
    },
    /// Standard output that cannot be written.
    #[error("standard output cannot be written: {0}")]
    NotPrinted(String),
    /// Figures without a JSON form.
    #[error(transparent)]
    NotSpelled(#[from] JsonError),
}

impl CliError {
    /// A value that cannot be, with the reason from whoever knows the quantity.
    pub(super) fn value(flag: impl Into<String>, reason: &impl ToString) -> Self {
        Self::Value {
            flag: flag.into(),
            reason: reason.to_string(),
        }
    }

    /// Why figures cannot be printed.
    pub(super) fn not_written(show: &'static str, reason: NotWritten) -> Self {
        match reason {
            NotWritten::NoMotion(reason) => Self::no_motion(show, reason),
            NotWritten::Json(error) => Self::NotSpelled(error),
        }
    }

    /// Why something that follows from engine and vehicle cannot be shown, with the flag that helps.
    pub(super) fn no_motion(show: &'static str, reason: NoMotion) -> Self {
        let flag = match reason {
            NoMotion::Unknown(Needed::TorqueCurve) => {
                Some("--torque, --pasted-torque or --brochure")
            }
            NoMotion::Unknown(Needed::Mass) => Some("--mass"),
            NoMotion::Unknown(Needed::Rolling) => Some("--rolling or --road-load"),
            NoMotion::Unknown(Needed::Drag) => Some("--drag-area or --road-load"),
            NoMotion::Unknown(Needed::FrontShare) => Some("--front-share"),
            NoMotion::Formula(_)
            | NoMotion::NoBand
            | NoMotion::Calibration(_)
            | NoMotion::StartingValue(_) => None,
        };
        Self::NoMotion { show, reason, flag }
    }

    /// A number outside its range, quoted as it was typed.
    pub(super) fn out_of_range(flag: String, error: OutOfRange, typed: &str) -> Self {
        Self::OutOfRange {
            flag,
            what: error.what,
            bounds: error.bounds,
            value: quoted(typed),
        }
    }
}

/// One line under 300 characters, the program's name first.
pub(super) fn sentence(error: &impl std::fmt::Display) -> String {
    let line = format!("layshaft: {error}");
    let line: String = line.chars().map(printable).collect();
    if line.chars().count() <= MOST_CHARACTERS {
        return line;
    }
    line.chars()
        .take(MOST_CHARACTERS - 1)
        .chain(['…'])
        .collect()
}

fn meant_flag(nearest: Option<&str>) -> String {
    match nearest {
        Some(flag) => format!("did you mean --{flag}?"),
        None => "layshaft --help lists all options".to_owned(),
    }
}

fn meant_command(nearest: Option<&str>) -> String {
    match nearest {
        Some(word) => format!("did you mean layshaft {word}?"),
        None => "layshaft opens a project file, and layshaft --help lists its commands".to_owned(),
    }
}

fn instead(next: Option<&str>) -> String {
    next.map_or_else(String::new, |next| format!("; \"{next}\" follows instead"))
}

fn there_are(present: usize) -> String {
    match present {
        1 => "is only one".to_owned(),
        _ => format!("are only {present}"),
    }
}
