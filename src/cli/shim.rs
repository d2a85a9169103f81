//! `layshaft shim`: what shim a place takes, from the play that was measured.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::{TextOrJson, choice, decimal, needed, ranged, signed_decimal, text_or_json};
use super::{PRINTED, output};
use crate::gearing::quoted;
use crate::sheet::json;
use crate::sheet::shim;
use crate::units::LengthUnit;
use crate::workshop::{
    AnsweredShim, Measurement, Reading, Readings, Seat, Setting, SettingBand, ShimJob,
    ShimThickness, StackedShims, Stock, parse_sizes,
};
use std::io::Write;

/// What the command is called in its sentences.
const NAME: &str = "layshaft shim";

/// The exit code, when the answer is printed, whatever it is.
pub(super) fn run(arguments: &Arguments, stdout: &mut dyn Write) -> Result<u8, CliError> {
    if arguments.file.is_some() {
        return Err(CliError::NoFileWanted("shim"));
    }
    let format = text_or_json(arguments)?;
    let job = job(arguments)?;
    let stock = stock(arguments)?;
    let answered = AnsweredShim::of(job, stock.as_ref());
    match format {
        TextOrJson::Text => output::print(stdout, &shim::text(&answered, LengthUnit::Millimetre))?,
        TextOrJson::Json => output::print_bytes(stdout, json::shim(&answered)?.as_bytes())?,
    }
    Ok(PRINTED)
}

fn job(arguments: &Arguments) -> Result<ShimJob, CliError> {
    let seats = [("behind", Seat::Behind), ("under", Seat::Under)];
    let seat = needed(arguments, NAME, (Flag::Seat, "behind or under"))?;
    let seat = choice(Flag::Seat, seat, &seats)?;
    let trial = needed(
        arguments,
        NAME,
        (Flag::Trial, "MM, the trial shim, 0 for none"),
    )?;
    let play = needed(
        arguments,
        NAME,
        (Flag::Play, "\"MM …\", the play that was measured"),
    )?;
    let setting = needed(
        arguments,
        NAME,
        (Flag::Setting, "LOW,HIGH, the wanted setting"),
    )?;
    let trial_mm = decimal(Flag::Trial, trial)?;
    Ok(ShimJob {
        seat,
        measurement: Measurement::Play {
            trial: ranged(Flag::Trial.name(), trial, ShimThickness::from_mm(trial_mm))?,
            play: readings(play)?,
        },
        setting: band(setting)?,
    })
}

/// Readings, parted by blanks or semicolons.
fn readings(text: &str) -> Result<Readings, CliError> {
    let flag = Flag::Play;
    let items = text.split(|c: char| c.is_whitespace() || c == ';');
    let items = items.filter(|item| !item.is_empty());
    let read = |item: &str| {
        ranged(
            flag.name(),
            item,
            Reading::from_mm(signed_decimal(flag, item)?),
        )
    };
    let readings: Vec<Reading> = items.map(read).collect::<Result<_, _>>()?;
    Readings::new(readings).ok_or_else(|| CliError::EmptyItem {
        flag: flag.name(),
        value: quoted(text),
    })
}

/// A setting, its tighter end first.
fn band(text: &str) -> Result<SettingBand, CliError> {
    let flag = Flag::Setting;
    let wrong = || CliError::NoBand {
        flag: flag.name(),
        value: quoted(text),
    };
    let (low, high) = text.split_once(',').ok_or_else(wrong)?;
    let end = |end: &str| {
        ranged(
            flag.name(),
            end,
            Setting::from_mm(signed_decimal(flag, end)?),
        )
    };
    SettingBand::new(end(low)?, end(high)?).ok_or_else(wrong)
}

/// The sizes that can be had; none where none are listed.
fn stock(arguments: &Arguments) -> Result<Option<Stock>, CliError> {
    let most = match arguments.once(Flag::Most)? {
        None => StackedShims::ONE,
        Some(text) => {
            let most = text.trim().parse::<u8>().ok();
            let most = most.and_then(StackedShims::new);
            most.ok_or_else(|| CliError::Stacked(quoted(text)))?
        }
    };
    let Some(text) = arguments.once(Flag::Sizes)? else {
        return Ok(None);
    };
    let sizes = parse_sizes(text, LengthUnit::Millimetre);
    let sizes = sizes.map_err(|error| CliError::value(Flag::Sizes.name(), &error))?;
    Ok(Some(Stock::new(&sizes, most)))
}
