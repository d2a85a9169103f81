//! `layshaft count`: what a vehicle has, by turns counted on the lift or an engine speed read on the road.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::source::road_speed;
use super::values::{TextOrJson, decimal, engine_speed, ranged, text_or_json};
use super::{PRINTED, output, source};
use crate::checks::{Counted, EngineSpeedError, Measured, RoadSpeedError, Turns, TurnsError};
use crate::gearing::{RoadSpeed, RollingCircumference, quoted};
use crate::project::Project;
use crate::sheet::counted::{self, CountedRatio};
use crate::sheet::json;
use std::io::Write;

/// The exit code, when the ratio is printed.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    let format = text_or_json(arguments)?;
    let source::Sourced { project, notes } = source::project(arguments)?;
    let measured = measured(arguments, &project)?.overall_ratio();
    let counted = CountedRatio::among(measured, &project);
    match format {
        TextOrJson::Text => output::print(stdout, &counted::text(&counted))?,
        TextOrJson::Json => output::print_bytes(stdout, json::counted(&counted)?.as_bytes())?,
    }
    output::notes(stderr, &notes);
    Ok(PRINTED)
}

/// What was counted on the lift, or read on the road on the tyre of the baseline.
fn measured(arguments: &Arguments, project: &Project) -> Result<Measured, CliError> {
    let turns = [Flag::Input, Flag::Wheel].map(|flag| turns(arguments, flag));
    let read = [Flag::Rpm, Flag::At].map(|flag| arguments.once(flag));
    let ([input, wheels], [rpm, at]) = (turns, read);
    match (input?, wheels?, rpm?, at?) {
        (Some(input), Some(wheels), None, None) if arguments.has(Flag::OneWheel) => {
            let free_wheel = wheels;
            Ok(Measured::OneWheelHeld { input, free_wheel })
        }
        (Some(input), Some(wheels), None, None) => Ok(Measured::BothWheels { input, wheels }),
        (None, None, Some(rpm), Some(at)) if !arguments.has(Flag::OneWheel) => {
            driven(arguments, project, [rpm, at])
        }
        _ => Err(CliError::NothingCounted),
    }
}

fn driven(
    arguments: &Arguments,
    project: &Project,
    [rpm, at]: [&str; 2],
) -> Result<Measured, CliError> {
    let (rpm, rpm_off) = with_error(Flag::Rpm, rpm)?;
    let (at, at_off) = with_error(Flag::At, at)?;
    let road = road_speed(arguments, decimal(Flag::At, at)?)?;
    let unit_kmh = road_speed(arguments, 1.0)?.map_or(1.0, RoadSpeed::kmh);
    let (rpm_off, at_off) = (
        EngineSpeedError::from_rpm(number(Flag::Rpm, rpm_off)?),
        RoadSpeedError::from_kmh(number(Flag::At, at_off)? * unit_kmh),
    );
    let tyre = project.tyre_of(&project.sets.baseline().set);
    let circumference = RollingCircumference::from_mm(tyre.rolling_circumference_mm());
    Ok(Measured::Driven {
        engine: engine_speed(Flag::Rpm, rpm)?,
        engine_error: rpm_off.map_err(|error| CliError::value(Flag::Rpm.name(), &error))?,
        road: ranged(Flag::At.name(), at, road)?,
        road_error: at_off.map_err(|error| CliError::value(Flag::At.name(), &error))?,
        circumference: circumference.map_err(CliError::OutOfReach)?,
    })
}

/// `37` or `37 0.25`: turns, and what they may be off.
fn turns(arguments: &Arguments, flag: Flag) -> Result<Option<Counted>, CliError> {
    let Some(text) = arguments.once(flag)? else {
        return Ok(None);
    };
    let (turns, off) = with_error(flag, text)?;
    let error = TurnsError::new(number(flag, off)?);
    Ok(Some(Counted {
        turns: ranged(flag.name(), turns, Turns::new(decimal(flag, turns)?))?,
        error: error.map_err(|error| CliError::value(flag.name(), &error))?,
    }))
}

fn number(flag: Flag, text: Option<&str>) -> Result<f64, CliError> {
    text.map_or(Ok(0.0), |text| decimal(flag, text))
}

/// A reading, and what it may be off where that is given.
fn with_error(flag: Flag, text: &str) -> Result<(&str, Option<&str>), CliError> {
    let items: Vec<&str> = text.split_whitespace().collect();
    match items[..] {
        [reading] => Ok((reading, None)),
        [reading, off] => Ok((reading, Some(off))),
        _ => Err(CliError::ItemCount {
            flag: flag.name(),
            wanted: "a reading, or a reading and what it may be off",
            value: quoted(text),
        }),
    }
}
