//! What do `--to`, `--from` and `--coast` ask of a run?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::source::{road_speed, road_speeds};
use super::values::{decimal, ranged};
use crate::analysis::RunQuestions;
use crate::gearing::{RoadSpeed, quoted};

/// The questions that need a run to be answered.
const QUESTIONS: [Flag; 3] = [Flag::To, Flag::From, Flag::Coast];

/// What is asked; the usual questions, and the marked speeds, where no flag asks anything.
pub(super) fn questions(
    arguments: &Arguments,
    marked: &[RoadSpeed],
) -> Result<RunQuestions, CliError> {
    let usual = RunQuestions::usual(marked);
    let to = road_speeds(arguments, Flag::To)?;
    let from = match arguments.once(Flag::From)? {
        None => None,
        Some(_) if to.is_none() => return Err(CliError::FromWithoutTo),
        Some(text) => Some(speed(arguments, Flag::From, text)?),
    };
    let to = to.unwrap_or(usual.to);
    let is_below = |to: &&RoadSpeed| from.is_some_and(|from| to.kmh() <= from.kmh());
    if to.iter().any(|to| is_below(&to)) {
        return Err(CliError::ToBelowFrom);
    }
    let coast = arguments.once(Flag::Coast)?;
    let coast = coast.map(|text| coast_down(arguments, text)).transpose()?;
    Ok(RunQuestions { from, to, coast })
}

/// Refuses a question about a run where none is shown.
pub(super) fn refuse_all(arguments: &Arguments, shown: &'static str) -> Result<(), CliError> {
    for flag in QUESTIONS {
        if arguments.once(flag)?.is_some() {
            return Err(CliError::OnlyOfRun {
                flag: flag.name(),
                shown,
            });
        }
    }
    Ok(())
}

/// The higher speed, then the lower one: `120:60`.
fn coast_down(arguments: &Arguments, text: &str) -> Result<[RoadSpeed; 2], CliError> {
    let wrong = || CliError::NoCoast(quoted(text));
    let (from, to) = text.split_once(':').ok_or_else(wrong)?;
    let [from, to] = [
        speed(arguments, Flag::Coast, from)?,
        speed(arguments, Flag::Coast, to)?,
    ];
    if from.kmh() <= to.kmh() {
        return Err(wrong());
    }
    Ok([from, to])
}

/// A road speed in the unit of `--units`.
fn speed(arguments: &Arguments, flag: Flag, text: &str) -> Result<RoadSpeed, CliError> {
    let number = decimal(flag, text)?;
    ranged(flag.name(), text, road_speed(arguments, number)?)
}
