//! Which torque curve do the four figures of a brochure describe?

use super::error::CliError;
use super::flags::Flag;
use super::values::ranged;
use crate::gearing::{EngineSpeed, NumberError, OutOfRange, parse_decimal, parse_rpm, quoted};
use crate::motion::{Brochure, Power, Torque, TorqueCurve};

/// The curve built from the peak torque in N·m and the peak power in kW, each at its engine speed:
/// `320@1750-3000 110@3600`.
pub(super) fn built_curve(text: &str) -> Result<TorqueCurve, CliError> {
    let wrong = || CliError::NoBrochure(quoted(text));
    let parts: Vec<&str> = text.split('@').collect();
    let [torque, middle, power_speed] = parts[..] else {
        return Err(wrong());
    };
    let middle = middle.trim();
    let (speeds, power) = middle.rsplit_once(char::is_whitespace).ok_or_else(wrong)?;
    if ends_of_range(power_speed).is_some() {
        return Err(CliError::PeakPowerOverRange(quoted(power_speed.trim())));
    }
    let torque = figure(
        torque,
        "a torque in N·m",
        "320",
        parse_decimal,
        Torque::from_nm,
    )?;
    let speeds = speeds.trim_end_matches(',');
    let [first, last] = ends_of_range(speeds).unwrap_or([speeds, speeds]);
    let plateau = [engine_speed(first)?, engine_speed(last)?];
    let power = figure(power, "a power in kW", "110", parse_decimal, Power::from_kw)?;
    let brochure = Brochure::new(torque, plateau, power, engine_speed(power_speed)?);
    let brochure = brochure.map_err(CliError::NotOneEngine)?;
    let curve = brochure.curve();
    curve.map_err(|error| CliError::value(Flag::Brochure.name(), &error))
}

/// Both ends of `1750-3000`.
fn ends_of_range(text: &str) -> Option<[&str; 2]> {
    let (first, last) = text.split_once(['-', '–'])?;
    Some([first, last])
}

fn engine_speed(text: &str) -> Result<EngineSpeed, CliError> {
    figure(
        text,
        "an engine speed",
        "3600",
        parse_rpm,
        EngineSpeed::from_rpm,
    )
}

/// One of the figures; where it does not read, the sentence says what it should be.
fn figure<T>(
    text: &str,
    what: &str,
    example: &str,
    parse: fn(&str) -> Result<f64, NumberError>,
    new: fn(f64) -> Result<T, OutOfRange>,
) -> Result<T, CliError> {
    let flag = Flag::Brochure.name();
    let number =
        parse(text).map_err(|error| CliError::value(&flag, &error.about(what, example)))?;
    ranged(flag, text, new(number))
}
