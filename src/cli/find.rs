//! `layshaft find`: the value with which an engine speed makes a road speed in a gear.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::source::{numbered_set, road_speed};
use super::values::{TextOrJson, decimal, engine_speed, needed, ranged, text_or_json, word_choice};
use super::{PRINTED, output, source};
use crate::finders::{Sought, SpeedWish};
use crate::gearing::{DrivenGear, Drivetrain, GearSet, quoted};
use crate::project::{Candidate, Project};
use crate::sheet::found::{self, Found};
use crate::sheet::json;
use std::io::Write;

/// What the command is called in its sentences.
const NAME: &str = "layshaft find";

/// The exit code, when the value is printed.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    let sought = sought(arguments)?;
    let format = text_or_json(arguments)?;
    let wish = wish(arguments)?;
    let gear = needed(arguments, NAME, (Flag::Gear, "G, the label of the gear"))?;
    let source::Sourced { project, notes } = source::project(arguments)?;
    let candidate = candidate(arguments, &project)?;
    let drivetrain = Drivetrain::resolve(&candidate.set, &project.tyre);
    let gear = labelled(&drivetrain, &candidate.set, gear)?;
    let value = sought.found(&drivetrain, gear, wish);
    let found = Found {
        sought,
        set: &candidate.set,
        gear,
        wish,
        units: project.units,
        value: value.map_err(CliError::OutOfReach)?,
    };
    match format {
        TextOrJson::Text => output::print(stdout, &found::text(&found))?,
        TextOrJson::Json => output::print_bytes(stdout, json::found(&found)?.as_bytes())?,
    }
    output::notes(stderr, &notes);
    Ok(PRINTED)
}

fn sought(arguments: &Arguments) -> Result<Sought, CliError> {
    let choices = [
        ("final", Sought::FinalDrive),
        ("tyre", Sought::RollingCircumference),
        ("ratio", Sought::GearRatio),
    ];
    let word = arguments.word.as_ref().ok_or(CliError::NothingToFind)?;
    word_choice("layshaft find", &word.to_string_lossy(), &choices)
}

fn wish(arguments: &Arguments) -> Result<SpeedWish, CliError> {
    let rpm = needed(arguments, NAME, (Flag::Rpm, "N, the engine speed"))?;
    let at = needed(arguments, NAME, (Flag::At, "KMH, the road speed"))?;
    let road = road_speed(arguments, decimal(Flag::At, at)?)?;
    Ok(SpeedWish {
        engine: engine_speed(Flag::Rpm, rpm)?,
        road: ranged(Flag::At.name(), at, road)?,
    })
}

/// The set that is meant: the baseline, where none is named.
fn candidate<'a>(arguments: &Arguments, project: &'a Project) -> Result<&'a Candidate, CliError> {
    match arguments.once(Flag::Set)? {
        None => Ok(project.sets.baseline()),
        Some(number) => numbered_set(project, Flag::Set, number),
    }
}

/// The gear of that label, forward or reverse.
fn labelled<'a>(
    drivetrain: &'a Drivetrain,
    set: &GearSet,
    label: &str,
) -> Result<&'a DrivenGear, CliError> {
    let gears = || drivetrain.gears.iter().chain(&drivetrain.reverse);
    let found = gears().find(|gear| gear.label == label.trim());
    found.ok_or_else(|| {
        let labels: Vec<&str> = gears().map(|gear| gear.label.as_str()).collect();
        CliError::NoSuchGear {
            gear: quoted(label),
            set: quoted(set.name.as_str()),
            labels: labels.join(", "),
        }
    })
}
