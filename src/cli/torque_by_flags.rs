//! Which torque curve do flags describe?

use super::arguments::Arguments;
use super::error::CliError;
use super::flags::Flag;
use super::values::ranged;
use crate::gearing::{EngineSpeed, parse_decimal, quoted};
use crate::motion::{Torque, TorqueCurve, TorquePoint};

/// The torque curve, where the flags give one.
pub(super) fn curve(arguments: &Arguments) -> Result<Option<TorqueCurve>, CliError> {
    let points = arguments.once(Flag::Torque)?;
    points.map(typed_curve).transpose()
}

/// Torque over engine speed, `1000:96 2500:130`.
fn typed_curve(text: &str) -> Result<TorqueCurve, CliError> {
    let points: Result<Vec<TorquePoint>, CliError> =
        text.split_whitespace().map(torque_point).collect();
    TorqueCurve::new(points?).map_err(|error| CliError::value(Flag::Torque.name(), &error))
}

fn torque_point(item: &str) -> Result<TorquePoint, CliError> {
    let flag = Flag::Torque;
    let pair = item.split_once(':');
    let (rpm, nm) = pair.ok_or_else(|| CliError::NoTorquePoint(quoted(item)))?;
    let number = |text: &str| {
        // Its own reasons speak of a number that stands alone.
        let number = parse_decimal(text).ok();
        number.ok_or_else(|| CliError::NoTorquePoint(quoted(item)))
    };
    Ok(TorquePoint {
        speed: ranged(flag.name(), rpm, EngineSpeed::from_rpm(number(rpm)?))?,
        torque: ranged(flag.name(), nm, Torque::from_nm(number(nm)?))?,
    })
}
