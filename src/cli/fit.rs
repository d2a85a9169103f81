//! `layshaft fit`: the limits of a seat and of a part, and the interference of both.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::{TextOrJson, needed_quantity, ranged, signed_decimal, text_or_json};
use super::{PRINTED, output};
use crate::gearing::quoted;
use crate::sheet::fit::{self, AnsweredFit};
use crate::sheet::json;
use crate::workshop::{Deviation, Diameter, NoClass, OutsideTable, SeatClass, SizeLimits};
use std::io::Write;
use std::str::FromStr;

/// The exit code, when the fit is printed, whatever it is.
pub(super) fn run(arguments: &Arguments, stdout: &mut dyn Write) -> Result<u8, CliError> {
    if arguments.file.is_some() {
        return Err(CliError::NoFileWanted("fit"));
    }
    let format = text_or_json(arguments)?;
    let flag = (Flag::Diameter, "MM, the nominal diameter");
    let diameter = needed_quantity(arguments, "layshaft fit", flag, Diameter::from_mm)?;
    let class = class(arguments)?;
    let outside = |error: OutsideTable| CliError::value(Flag::Diameter.name(), &error);
    let given = part(arguments)?;
    let answered = AnsweredFit {
        diameter,
        class,
        seat: class.limits(diameter).map_err(outside)?,
        is_part_given: given.is_some(),
        part: match given {
            Some(part) => part,
            None => class.side().normal_bearing(diameter).map_err(outside)?,
        },
    };
    match format {
        TextOrJson::Text => output::print(stdout, &fit::text(&answered))?,
        TextOrJson::Json => output::print_bytes(stdout, json::fit(&answered)?.as_bytes())?,
    }
    Ok(PRINTED)
}

/// The class of the one or the other side.
fn class(arguments: &Arguments) -> Result<SeatClass, CliError> {
    let shaft = arguments.once(Flag::ShaftClass)?;
    let bore = arguments.once(Flag::BoreClass)?;
    match (shaft, bore) {
        (Some(shaft), None) => named(Flag::ShaftClass, shaft).map(SeatClass::Shaft),
        (None, Some(bore)) => named(Flag::BoreClass, bore).map(SeatClass::Bore),
        (None, None) | (Some(_), Some(_)) => Err(CliError::NoSeat),
    }
}

fn named<T: FromStr<Err = NoClass>>(flag: Flag, text: &str) -> Result<T, CliError> {
    text.parse()
        .map_err(|error: NoClass| CliError::value(flag.name(), &error))
}

/// The limits of the part, the upper one first, where they are given.
fn part(arguments: &Arguments) -> Result<Option<SizeLimits>, CliError> {
    let flag = Flag::Part;
    let Some(text) = arguments.once(flag)? else {
        return Ok(None);
    };
    let wrong = || CliError::ItemCount {
        flag: flag.name(),
        wanted: "the upper limit in µm and then the lower, as \"0 -12\"",
        value: quoted(text),
    };
    let items: Vec<&str> = text.split_whitespace().collect();
    let [upper, lower] = items[..] else {
        return Err(wrong());
    };
    let limit = |item: &str| {
        ranged(
            flag.name(),
            item,
            Deviation::from_um(signed_decimal(flag, item)?),
        )
    };
    let (upper, lower) = (limit(upper)?, limit(lower)?);
    SizeLimits::new(lower, upper).map(Some).ok_or_else(wrong)
}
