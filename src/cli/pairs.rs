//! `layshaft pairs`: the tooth pairs that come near a ratio.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::{choice, decimal, decimal_mark, needed, ranged};
use super::{PRINTED, output};
use crate::finders::{
    CentreDistance, DiametralPitch, FixedCentre, HelixAngle, NormalModule, PairWish, PressureAngle,
    RatioTolerance, parse_teeth_limits, parse_tooth_sum, tooth_pairs,
};
use crate::gearing::{OutOfRange, parse_ratio};
use crate::sheet::{json, pairs};
use std::io::Write;

/// The formats that pairs can be printed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Format {
    Text,
    Csv,
    Json,
}

const FORMATS: [(&str, Format); 3] = [
    ("text", Format::Text),
    ("csv", Format::Csv),
    ("json", Format::Json),
];

/// What needs its flags, in its sentences.
const SEARCH: &str = "a search for tooth pairs";

/// The exit code, when the pairs are printed, however few they are.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    if arguments.file.is_some() {
        return Err(CliError::NoFileWanted("pairs"));
    }
    let format = arguments.once(Flag::As)?;
    let format = format.map(|text| choice(Flag::As, text, &FORMATS));
    let format = format.transpose()?.unwrap_or(Format::Text);
    let mark = decimal_mark(arguments, format == Format::Csv)?;
    let out = output::wanted(arguments)?;
    let wish = wish(arguments)?;
    let found = tooth_pairs(&wish);
    match format {
        Format::Text => out.write_text(&pairs::text(&wish, &found), stdout, stderr)?,
        Format::Csv => out.write(pairs::csv(&found, mark).as_bytes(), stdout, stderr)?,
        Format::Json => out.write(json::pairs(&found)?.as_bytes(), stdout, stderr)?,
    }
    Ok(PRINTED)
}

fn wish(arguments: &Arguments) -> Result<PairWish, CliError> {
    let ratio = needed(
        arguments,
        SEARCH,
        (Flag::Ratio, "R, driven ÷ driving teeth"),
    )?;
    let ratio = parse_ratio(ratio).map_err(|error| CliError::value(Flag::Ratio.name(), &error))?;
    let within = needed(
        arguments,
        SEARCH,
        (Flag::Within, "PERCENT, how far off a pair may be"),
    )?;
    let teeth = needed(
        arguments,
        SEARCH,
        (Flag::Teeth, "FROM-TO, the fewest and the most of a gear"),
    )?;
    let teeth = parse_teeth_limits(teeth);
    let sum = arguments.once(Flag::Sum)?.map(parse_tooth_sum).transpose();
    Ok(PairWish {
        ratio: ratio.driven_first().clone(),
        within: quantity(Flag::Within, within, RatioTolerance::from_percent)?,
        teeth: teeth.map_err(|error| CliError::value(Flag::Teeth.name(), &error))?,
        sum: sum.map_err(|error| CliError::value(Flag::Sum.name(), &error))?,
        centre: fixed_centre(arguments)?,
    })
}

/// The shafts that the pairs are to fit, where any are given.
fn fixed_centre(arguments: &Arguments) -> Result<Option<FixedCentre>, CliError> {
    let teeth = [Flag::Module, Flag::Pitch, Flag::Helix, Flag::PressureAngle];
    let Some(distance) = arguments.once(Flag::Centre)? else {
        let teeth = arguments.first_of(|row| teeth.contains(&row.flag));
        return match teeth {
            Some(flag) => Err(CliError::NoCentre(flag.name())),
            None => Ok(None),
        };
    };
    let degrees = arguments.once(Flag::Helix)?;
    let helix = degrees.map(|text| quantity(Flag::Helix, text, HelixAngle::from_degrees));
    let degrees = arguments.once(Flag::PressureAngle)?;
    let flag = Flag::PressureAngle;
    let pressure = degrees.map(|text| quantity(flag, text, PressureAngle::from_degrees));
    Ok(Some(FixedCentre {
        distance: quantity(Flag::Centre, distance, CentreDistance::from_mm)?,
        module: module(arguments)?,
        helix: helix.transpose()?.unwrap_or(HelixAngle::SPUR),
        pressure: pressure.transpose()?.unwrap_or(PressureAngle::USUAL),
    }))
}

/// How large the teeth are.
fn module(arguments: &Arguments) -> Result<NormalModule, CliError> {
    match arguments.once(Flag::Pitch)? {
        Some(_) if arguments.once(Flag::Module)?.is_some() => Err(CliError::TwoSizesOfTeeth),
        Some(pitch) => {
            let pitch = quantity(Flag::Pitch, pitch, DiametralPitch::from_per_inch)?;
            Ok(pitch.module())
        }
        None => {
            let module_mm = needed(
                arguments,
                SEARCH,
                (
                    Flag::Module,
                    "MM or --pitch DP where it has a --centre: the size of the teeth",
                ),
            )?;
            quantity(Flag::Module, module_mm, NormalModule::from_mm)
        }
    }
}

fn quantity<T>(
    flag: Flag,
    text: &str,
    read: impl Fn(f64) -> Result<T, OutOfRange>,
) -> Result<T, CliError> {
    ranged(flag.name(), text, read(decimal(flag, text)?))
}
