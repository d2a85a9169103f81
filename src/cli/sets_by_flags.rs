//! Which project do flags describe, without a file?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::typed_set::TypedSet;
use super::values::{decimal, engine_speed, ranged};
use crate::gearing::{EngineLimits, EngineSpeed, GearSet, RollingCircumference, Tyre, parse_tyre};
use crate::project::{Candidates, Marks, Note, Project, TechnicalData, WriteUp};
use crate::units::SpeedUnit;
use crate::workshop::Workshop;

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
        technical: TechnicalData::default(),
        workshop: Workshop::default(),
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
    if arguments.all(Flag::Final)?.is_empty() {
        return Err(CliError::SetNeeds(NEEDS_FINAL));
    }
    let names_in_text = vec![None; count];
    let of_sets = of_each_set(arguments, names_in_text, tyres)?.into_iter();
    let typed_sets = of_sets.enumerate().map(|(at, of_set)| TypedSet {
        place: Some(at).filter(|_| count > 1),
        name: of_set.name,
        gears: gears[at],
        final_drive: of_set.final_drive.unwrap_or_default(),
        reverse: of_set.reverse,
        shift: of_set.shift,
        tyre: of_set.own_tyre,
    });
    typed_sets.map(|typed| typed.gear_set(redline)).collect()
}

/// What is wanted where neither text nor flag gives a final drive.
pub(super) const NEEDS_FINAL: &str = "--final RATIO, which is 1 where there is no final drive";

/// What the flags say of one set.
pub(super) struct OfSet<'a> {
    /// Its name: by flag, else that of the text, else its number.
    pub(super) name: String,
    pub(super) final_drive: Option<&'a str>,
    pub(super) reverse: Option<&'a str>,
    pub(super) shift: Option<&'a str>,
    /// Its tyre, where it is not that of the first set.
    pub(super) own_tyre: Option<Tyre>,
}

/// What the flags say of each set; a text may have names of its own.
pub(super) fn of_each_set<'a>(
    arguments: &'a Arguments,
    names_in_text: Vec<Option<String>>,
    tyres: &[Tyre],
) -> Result<Vec<OfSet<'a>>, CliError> {
    let count = names_in_text.len();
    let names = names(arguments, count)?;
    let tyre_flag = if arguments.all(Flag::Tyre)?.is_empty() {
        Flag::Circumference
    } else {
        Flag::Tyre
    };
    let tyres = one_each(tyre_flag, tyres, count)?;
    let finals = one_each(Flag::Final, &arguments.all(Flag::Final)?, count)?;
    let reverses = one_each(Flag::Reverse, &arguments.all(Flag::Reverse)?, count)?;
    let shifts = one_each(Flag::Shift, &arguments.all(Flag::Shift)?, count)?;
    let of_sets = names_in_text.into_iter().enumerate().map(|(at, in_text)| {
        let name = names.get(at).map(|name| (*name).to_owned()).or(in_text);
        OfSet {
            name: name.unwrap_or_else(|| format!("Set {}", at + 1)),
            final_drive: finals[at],
            reverse: reverses[at],
            shift: shifts[at],
            own_tyre: tyres[at].filter(|tyre| Some(*tyre) != tyres[0]),
        }
    });
    Ok(of_sets.collect())
}

/// The names in their order, at most one for each set.
fn names(arguments: &Arguments, count: usize) -> Result<Vec<&str>, CliError> {
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
