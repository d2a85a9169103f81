//! `layshaft preload`: the torque that keeps a shaft turning, beside the maker's band.

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::{TextOrJson, decimal, quantity, ranged, text_or_json};
use super::{PRINTED, output};
use crate::gearing::{parse_ratio, quoted};
use crate::sheet::json;
use crate::sheet::preload::{self, AnsweredTorque};
use crate::workshop::{
    PullForce, Radius, TorqueBand, TorqueReading, TurningMeasurement, TurningTorque,
};
use std::io::Write;

/// The exit code, when the torque is printed.
pub(super) fn run(arguments: &Arguments, stdout: &mut dyn Write) -> Result<u8, CliError> {
    if arguments.file.is_some() {
        return Err(CliError::NoFileWanted("preload"));
    }
    let format = text_or_json(arguments)?;
    let ratio = arguments.once(Flag::Ratio)?;
    let ratio = ratio.map(|text| {
        let ratio = parse_ratio(text).map_err(|error| CliError::value(Flag::Ratio.name(), &error));
        ratio.map(|typed| typed.driven_first().clone())
    });
    let measured = TurningMeasurement {
        reading: reading(arguments)?,
        before: torque(arguments, Flag::Before)?,
        ratio: ratio.transpose()?,
        seals: torque(arguments, Flag::Seals)?,
    };
    let torque_nmm = measured.torque_nmm();
    if torque_nmm < 0.0 {
        return Err(CliError::NothingTurns);
    }
    let band = band(arguments)?;
    let answered = AnsweredTorque { torque_nmm, band };
    match format {
        TextOrJson::Text => output::print(stdout, &preload::text(&answered))?,
        TextOrJson::Json => output::print_bytes(stdout, json::preload(&answered)?.as_bytes())?,
    }
    Ok(PRINTED)
}

/// By cord and scale, or by wrench.
fn reading(arguments: &Arguments) -> Result<TorqueReading, CliError> {
    let pull = quantity(arguments, Flag::Pull, PullForce::from_n)?;
    let radius = quantity(arguments, Flag::Radius, Radius::from_mm)?;
    let reading = torque(arguments, Flag::Reading)?;
    let wrench = quantity(arguments, Flag::Wrench, Radius::from_mm)?;
    let adapter = quantity(arguments, Flag::Adapter, Radius::from_mm)?;
    match (pull, radius, reading, wrench, adapter) {
        (Some(pull), Some(radius), None, None, None) => Ok(TorqueReading::Pull { pull, radius }),
        (None, None, Some(reading), None, None) => Ok(TorqueReading::Wrench {
            reading,
            adapter: None,
        }),
        (None, None, Some(reading), Some(wrench), Some(adapter)) => Ok(TorqueReading::Wrench {
            reading,
            adapter: Some([wrench, adapter]),
        }),
        _ => Err(CliError::NothingPulled),
    }
}

/// A torque that is typed in N·m.
fn torque(arguments: &Arguments, flag: Flag) -> Result<Option<TurningTorque>, CliError> {
    quantity(arguments, flag, TurningTorque::from_nm)
}

fn band(arguments: &Arguments) -> Result<Option<TorqueBand>, CliError> {
    let flag = Flag::Band;
    let Some(text) = arguments.once(flag)? else {
        return Ok(None);
    };
    let wrong = || CliError::NoBand {
        flag: flag.name(),
        value: quoted(text),
    };
    let (low, high) = text.split_once(',').ok_or_else(wrong)?;
    let end = |end: &str| {
        ranged(
            flag.name(),
            end,
            TurningTorque::from_nm(decimal(flag, end)?),
        )
    };
    TorqueBand::new(end(low)?, end(high)?)
        .map(Some)
        .ok_or_else(wrong)
}
