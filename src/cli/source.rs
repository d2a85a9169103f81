//! Which project is a command about, and at which speeds is it wanted?

use super::arguments::Arguments;
use super::error::CliError;
use super::flag_row::Group;
use super::flags::Flag;
use super::named_text::refuse_standard_input_twice;
use super::sets_by_flags;
use super::technical_by_flags::with_technical;
use super::values::{choice, list};
use crate::chart::MarkedSpeeds;
use crate::gearing::{EngineSpeed, OutOfRange, RoadSpeed, quoted};
use crate::project::{Candidate, Disk, Project, format, read_project_text, shown};
use crate::units::SpeedUnit;
use std::path::Path;

/// The most speeds that `--rpm` or `--speed` can hold.
const MOST_SPEEDS: usize = 40;

/// A project, and what must be said of how it was read.
pub(super) struct Sourced {
    pub(super) project: Project,
    /// Whole lines.
    pub(super) notes: String,
}

impl From<Project> for Sourced {
    fn from(project: Project) -> Self {
        Self {
            project,
            notes: String::new(),
        }
    }
}

/// The project of the file, of a text or of the flags, with the unit that was asked for.
pub(super) fn project(arguments: &Arguments) -> Result<Sourced, CliError> {
    let units = units(arguments)?;
    let of_set = arguments.first_of(|row| match row.group {
        Group::Sets | Group::Technical => true,
        Group::Pairs
        | Group::Wish
        | Group::Counted
        | Group::Bench
        | Group::Speeds
        | Group::Output => false,
    });
    refuse_standard_input_twice(arguments)?;
    let has_gears = !arguments.all(Flag::Gears)?.is_empty();
    let pasted = arguments.path(Flag::Pasted)?;
    let mut sourced: Sourced = match (&arguments.file, of_set) {
        (Some(_), Some(flag)) => return Err(CliError::FileAndSets(flag.name())),
        (Some(file), None) => read_file(file)?.into(),
        (None, Some(_)) if has_gears && pasted.is_some() => return Err(CliError::GearsAndPasted),
        (None, Some(_)) if has_gears => sets_by_flags::project(arguments)?.into(),
        (None, Some(_)) if let Some(text) = pasted => super::pasted::project(arguments, text)?,
        (None, Some(_)) => return Err(CliError::SetNeeds("--gears \"RATIOS\", first to top")),
        (None, None) => return Err(CliError::NothingToShow),
    };
    if arguments.file.is_none() {
        sourced = with_technical(arguments, sourced)?;
    }
    if let Some(units) = units {
        sourced.project.units = units;
    }
    Ok(sourced)
}

/// The speeds of `--rpm` and `--speed` in the order given; the project's where a flag is not given.
pub(super) fn marked(arguments: &Arguments, project: &Project) -> Result<MarkedSpeeds, CliError> {
    let mut marked = MarkedSpeeds::of(project);
    if let Some(speeds) = speeds(arguments, Flag::Rpm, EngineSpeed::from_rpm)? {
        marked.engine_speeds = speeds;
    }
    if let Some(speeds) = road_speeds(arguments, Flag::Speed)? {
        marked.road_speeds = speeds;
    }
    Ok(marked)
}

/// The set of that number, counted from 1.
pub(super) fn numbered_set<'a>(
    project: &'a Project,
    flag: Flag,
    number: &str,
) -> Result<&'a Candidate, CliError> {
    let at = number.trim().parse::<usize>().ok();
    let at = at.and_then(|number| number.checked_sub(1));
    let candidate = at.and_then(|at| project.sets.iter().nth(at));
    candidate.ok_or_else(|| CliError::NoSuchSet {
        flag: flag.name(),
        number: format!("\"{}\"", quoted(number)),
        present: project.sets.len(),
    })
}

/// The road speeds of a flag, in the unit of `--units`; none where it is not given.
pub(super) fn road_speeds(
    arguments: &Arguments,
    flag: Flag,
) -> Result<Option<Vec<RoadSpeed>>, CliError> {
    let unit = asked_unit(arguments)?;
    let read = |speed| RoadSpeed::from_kmh(unit.to_kmh(speed));
    speeds(arguments, flag, read)
}

/// A road speed in the unit of `--units`, where it is one.
pub(super) fn road_speed(
    arguments: &Arguments,
    number: f64,
) -> Result<Result<RoadSpeed, OutOfRange>, CliError> {
    Ok(RoadSpeed::from_kmh(asked_unit(arguments)?.to_kmh(number)))
}

/// The unit of typed road speeds.
fn asked_unit(arguments: &Arguments) -> Result<SpeedUnit, CliError> {
    Ok(units(arguments)?.unwrap_or(SpeedUnit::Kmh))
}

fn units(arguments: &Arguments) -> Result<Option<SpeedUnit>, CliError> {
    let choices = [("kmh", SpeedUnit::Kmh), ("mph", SpeedUnit::Mph)];
    let text = arguments.once(Flag::Units)?;
    text.map(|text| choice(Flag::Units, text, &choices))
        .transpose()
}

fn speeds<T>(
    arguments: &Arguments,
    flag: Flag,
    read: impl Fn(f64) -> Result<T, OutOfRange>,
) -> Result<Option<Vec<T>>, CliError> {
    let Some(text) = arguments.once(flag)? else {
        return Ok(None);
    };
    let speeds = list(&flag.name(), text, read)?;
    if speeds.len() > MOST_SPEEDS {
        return Err(CliError::TooManySpeeds {
            flag: flag.name(),
            given: speeds.len(),
            most: MOST_SPEEDS,
        });
    }
    Ok(Some(speeds))
}

fn read_file(file: &Path) -> Result<Project, CliError> {
    let found = read_project_text(&Disk, file)?;
    format::read(&found.text).map_err(|reason| CliError::NoProject {
        file: shown(file),
        reason,
    })
}
