//! Which project do flags describe, without a file?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::typed_set::TypedSet;
use super::values::{decimal, engine_speed, ranged};
use crate::gearing::{EngineLimits, EngineSpeed, GearSet, RollingCircumference, Tyre, parse_tyre};
use crate::project::{Candidates, Marks, Note, Project, WriteUp};
use crate::units::SpeedUnit;

/// The project that the flags describe: a set for each `--gears`, the first the baseline.
pub(super) fn project(arguments: &Arguments) -> Result<Project, CliError> {
    let engine = limits(arguments, None)?;
    let tyres = tyres(arguments, None)?;
    let sets = sets(arguments, &tyres, engine.redline)?;
    project_of(sets, tyres[0], engine, Flag::Gears)
}

/// The limits of the engine; the redline of a text holds where no flag gives one.
pub(super) fn limits(
    arguments: &Arguments,
    redline_in_text: Option<EngineSpeed>,
) -> Result<EngineLimits, CliError> {
    let limit = |flag| -> Result<Option<EngineSpeed>, CliError> {
        let text = arguments.once(flag)?;
        text.map(|text| engine_speed(flag, text)).transpose()
    };
    let redline = limit(Flag::Redline)?.or(redline_in_text);
    let redline = redline.ok_or(CliError::SetNeeds("--redline RPM"))?;
    Ok(EngineLimits {
        idle: limit(Flag::Idle)?,
        lowest_useful: limit(Flag::LowestUseful)?,
        redline,
    })
}

/// A project of nothing but sets, tyre and engine; `flag` is what gave the sets.
pub(super) fn project_of(
    sets: Vec<GearSet>,
    tyre: Tyre,
    engine: EngineLimits,
    flag: Flag,
) -> Result<Project, CliError> {
    let sets = sets.into_iter().map(|set| (set, true)).collect();
    Ok(Project {
        title: None,
        date: None,
        note: Note::default(),
        units: SpeedUnit::Kmh,
        tyre,
        engine,
        marked_engine_speeds: Marks::default(),
        marked_road_speeds: Marks::default(),
        write_up: WriteUp::default(),
        sets: Candidates::new(sets, 0).map_err(|error| CliError::value(flag.name(), &error))?,
    })
}

/// The tyres in their order, at least one; that of a text holds where no flag gives one.
pub(super) fn tyres(
    arguments: &Arguments,
    tyre_in_text: Option<Tyre>,
) -> Result<Vec<Tyre>, CliError> {
    let sizes = arguments.all(Flag::Tyre)?;
    let circumferences = arguments.all(Flag::Circumference)?;
    match (sizes.is_empty(), circumferences.is_empty()) {
        (true, true) => match tyre_in_text {
            Some(tyre) => Ok(vec![tyre]),
            None => Err(CliError::SetNeeds("--tyre SIZE or --circumference MM")),
        },
        (false, false) => Err(CliError::TwoTyres),
        (false, true) => {
            let read = |text: &&str| {
                parse_tyre(text).map_err(|error| CliError::value(Flag::Tyre.name(), &error))
            };
            sizes.iter().map(read).collect()
        }
        (true, false) => circumferences.iter().map(|text| measured(text)).collect(),
    }
}

fn measured(text: &str) -> Result<Tyre, CliError> {
    let flag = Flag::Circumference;
    let mm = RollingCircumference::from_mm(decimal(flag, text)?);
    ranged(flag.name(), text, mm).map(Tyre::RollingCircumference)
}

/// A set for each `--gears`, at most three.
fn sets(
    arguments: &Arguments,
    tyres: &[Tyre],
    redline: EngineSpeed,
) -> Result<Vec<GearSet>, CliError> {
    let gears = arguments.all(Flag::Gears)?;
    let count = gears.len();
    if count > Candidates::MOST {
        return Err(CliError::TooManySets(count));
    }
    let finals = arguments.all(Flag::Final)?;
    if finals.is_empty() {
        return Err(CliError::SetNeeds(
            "--final RATIO, which is 1 where there is no final drive",
        ));
    }
    let names = names(arguments, count)?;
    let tyre_flag = if arguments.all(Flag::Tyre)?.is_empty() {
        Flag::Circumference
    } else {
        Flag::Tyre
    };
    let tyres = one_each(tyre_flag, tyres, count)?;
    let finals = one_each(Flag::Final, &finals, count)?;
    let reverses = one_each(Flag::Reverse, &arguments.all(Flag::Reverse)?, count)?;
    let shifts = one_each(Flag::Shift, &arguments.all(Flag::Shift)?, count)?;
    let typed_sets = (0..count).map(|at| TypedSet {
        place: Some(at).filter(|_| count > 1),
        name: names
            .get(at)
            .map_or_else(|| format!("Set {}", at + 1), |name| (*name).to_owned()),
        gears: gears[at],
        final_drive: finals[at].unwrap_or_default(),
        reverse: reverses[at],
        shift: shifts[at],
        tyre: tyres[at].filter(|tyre| Some(*tyre) != tyres[0]),
    });
    typed_sets.map(|typed| typed.gear_set(redline)).collect()
}

/// The names in their order, at most one for each set.
pub(super) fn names(arguments: &Arguments, count: usize) -> Result<Vec<&str>, CliError> {
    let names = arguments.all(Flag::Name)?;
    if names.len() > count {
        return Err(CliError::TooManyNames {
            given: names.len(),
            sets: in_words(count),
        });
    }
    Ok(names)
}

/// One value for each set, where a flag was given not at all, once, or once for each.
pub(super) fn one_each<T: Copy>(
    flag: Flag,
    values: &[T],
    sets: usize,
) -> Result<Vec<Option<T>>, CliError> {
    match values {
        [] => Ok(vec![None; sets]),
        [one] => Ok(vec![Some(*one); sets]),
        each if each.len() == sets => Ok(each.iter().copied().map(Some).collect()),
        wrong => Err(CliError::Count {
            flag: flag.name(),
            given: wrong.len(),
            sets: in_words(sets),
        }),
    }
}

pub(super) fn in_words(sets: usize) -> String {
    match sets {
        1 => "one gear set".to_owned(),
        sets => format!("{sets} gear sets"),
    }
}
