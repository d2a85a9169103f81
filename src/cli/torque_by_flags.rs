//! Which torque curve do flags describe?

use super::arguments::Arguments;
use super::brochure::built_curve;
use super::error::CliError;
use super::flags::Flag;
use super::named_text::named_text;
use super::values::ranged;
use crate::gearing::{EngineSpeed, parse_decimal, quoted};
use crate::import::torque::{SPEAKS_OF_WHEELS, read_torque};
use crate::motion::{Torque, TorqueCurve, TorquePoint};
use std::path::Path;

/// The flags that each give the whole curve.
const CURVES: [Flag; 3] = [Flag::Torque, Flag::PastedTorque, Flag::Brochure];

/// The torque curve of the flags, and what must be said of how it was read.
#[derive(Debug, Default)]
pub(super) struct CurveByFlags {
    /// None where no flag gives one.
    pub(super) curve: Option<TorqueCurve>,
    /// Whole lines.
    pub(super) notes: String,
}

impl From<TorqueCurve> for CurveByFlags {
    fn from(curve: TorqueCurve) -> Self {
        Self {
            curve: Some(curve),
            notes: String::new(),
        }
    }
}

/// The curve that the one flag gives.
pub(super) fn curve(arguments: &Arguments) -> Result<CurveByFlags, CliError> {
    let given: Vec<Flag> = CURVES.into_iter().filter(|f| arguments.has(*f)).collect();
    if let [one, other, ..] = given[..] {
        return Err(CliError::TwoCurves([one.name(), other.name()]));
    }
    if let Some(points) = arguments.once(Flag::Torque)? {
        return typed_curve(points).map(CurveByFlags::from);
    }
    if let Some(figures) = arguments.once(Flag::Brochure)? {
        return built_curve(figures).map(CurveByFlags::from);
    }
    match arguments.path(Flag::PastedTorque)? {
        Some(path) => pasted_curve(path, arguments.has(Flag::MeasuredAt)),
        None => Ok(CurveByFlags::default()),
    }
}

/// The curve of a copied text, with what was guessed in it or left out.
fn pasted_curve(path: &Path, is_place_said: bool) -> Result<CurveByFlags, CliError> {
    let flag = Flag::PastedTorque;
    let read = read_torque(&named_text(flag, path)?);
    let pasted = read.map_err(|error| CliError::value(flag.name(), &error))?;
    let curve = pasted.curve();
    let notes = pasted.remarks.iter().filter_map(|remark| {
        let answer = match (remark == SPEAKS_OF_WHEELS, is_place_said) {
            (true, true) => return None,
            (true, false) => format!(" Give {} wheels or crank.", Flag::MeasuredAt.name()),
            (false, _) => String::new(),
        };
        Some(format!("pasted torque: {remark}{answer}\n"))
    });
    Ok(CurveByFlags {
        notes: notes.collect(),
        ..curve
            .map_err(|error| CliError::value(flag.name(), &error))?
            .into()
    })
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
