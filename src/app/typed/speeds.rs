//! Typed engine speeds and road speeds, one or a list of them.

use super::{Reading, told};
use crate::gearing::{
    EngineSpeed, LOWEST_REDLINE_RPM, OutOfRange, RoadSpeed, engine_speed_items, list_items,
    parse_decimal, parse_rpm,
};
use crate::project::Marks;
use crate::units::{SpeedUnit, mark_text, plain_number};

/// The spellings of the unit of engine speeds that are forgiven behind a figure.
const RPM: [&str; 8] = [
    "rpm", "r/min", "rev/min", "1/min", "/min", "min-1", "min⁻¹", "U/min",
];

/// The spellings of the units of road speeds, and what each means.
pub(super) const OF_ROAD: [(&str, SpeedUnit); 6] = [
    ("km/h", SpeedUnit::Kmh),
    ("kmh", SpeedUnit::Kmh),
    ("kph", SpeedUnit::Kmh),
    ("kmph", SpeedUnit::Kmh),
    ("mph", SpeedUnit::Mph),
    ("mi/h", SpeedUnit::Mph),
];

/// Which engine speed is typed, for the sentence that says why it does not read.
#[derive(Debug, Clone, Copy)]
pub(in crate::app) struct Engine {
    what: &'static str,
    example: &'static str,
}

impl Engine {
    const fn named(what: &'static str, example: &'static str) -> Self {
        Self { what, example }
    }

    pub(in crate::app) const ANY: Self = Self::named("an engine speed", "1500");
    pub(in crate::app) const IDLE: Self = Self::named("an idle speed", "800");
    pub(in crate::app) const SHIFT: Self = Self::named("a shift point", "3600");
    pub(in crate::app) const LAUNCH: Self = Self::named("an engine speed at the start", "1800");
    const REDLINE: Self = Self::named("a redline", "4500");
}

/// An engine speed; a trailing unit is forgiven.
pub(in crate::app) fn engine_speed(of: Engine, text: &str) -> Reading<EngineSpeed> {
    let Engine { what, example } = of;
    let number = without(text, &RPM);
    let rpm = parse_rpm(number).map_err(|error| error.about(what, example))?;
    EngineSpeed::from_rpm(rpm).map_err(|error| told(OutOfRange { what, ..error }))
}

/// A redline, which is above what any engine idles at.
///
/// # Errors
/// When it does not read, or is too low for any engine.
pub(in crate::app) fn redline(text: &str) -> Reading<EngineSpeed> {
    let redline = engine_speed(Engine::REDLINE, text)?;
    if redline.rpm() < LOWEST_REDLINE_RPM {
        let (least, typed) = (
            plain_number(LOWEST_REDLINE_RPM),
            plain_number(redline.rpm()),
        );
        return Err(format!(
            "a redline is at least {least} rpm, not {typed}: type all of its digits"
        ));
    }
    Ok(redline)
}

/// Marked engine speeds.
pub(in crate::app) fn engine_speeds(text: &str) -> Reading<Marks<EngineSpeed>> {
    let items = engine_speed_items(text, &RPM);
    let speeds = items.iter().map(|item| engine_speed(Engine::ANY, item));
    Marks::new(speeds.collect::<Reading<Vec<_>>>()?).map_err(told)
}

/// Marked road speeds in `unit`; a unit that is typed behind one holds for those before it too.
///
/// What is spelled as a mark that is there already is that mark: spelled in another unit than it was
/// typed in, it has lost digits.
pub(in crate::app) fn road_speeds(
    text: &str,
    unit: SpeedUnit,
    present: &Marks<RoadSpeed>,
) -> Reading<Marks<RoadSpeed>> {
    let units = OF_ROAD.map(|(sign, _)| sign);
    let mut meant = unit;
    let mut speeds = Vec::new();
    for item in list_items(text, &units).iter().rev() {
        let (number, own) = parted(item);
        meant = own.unwrap_or(meant);
        let mut known = present.as_slice().iter();
        let known = known.find(|mark| meant == unit && mark_text(mark.kmh(), unit) == number);
        speeds.push(match known {
            Some(mark) => *mark,
            None => road_speed(number, meant)?,
        });
    }
    Marks::new(speeds).map_err(told)
}

pub(super) fn road_speed(number: &str, unit: SpeedUnit) -> Reading<RoadSpeed> {
    let speed = parse_decimal(number).map_err(|error| error.about("a road speed", "110"))?;
    RoadSpeed::from_kmh(unit.to_kmh(speed)).map_err(told)
}

/// One road speed in `unit`, unless a unit is typed behind it; none where nothing is typed.
pub(in crate::app) fn one_road_speed(text: &str, unit: SpeedUnit) -> Reading<Option<RoadSpeed>> {
    known_road_speed(text, unit, None)
}

/// The same of a road speed that may be known: what is spelled as the present one is that.
///
/// # Errors
/// When it is no road speed.
pub(in crate::app) fn known_road_speed(
    text: &str,
    unit: SpeedUnit,
    present: Option<RoadSpeed>,
) -> Reading<Option<RoadSpeed>> {
    let (number, own) = parted(text);
    if number.is_empty() {
        return Ok(None);
    }
    let unit_meant = own.unwrap_or(unit);
    let same = present.filter(|speed| mark_text(speed.kmh(), unit_meant) == number);
    match same {
        Some(speed) => Ok(Some(speed)),
        None => road_speed(number, unit_meant).map(Some),
    }
}

/// A figure and the unit behind it.
pub(super) fn parted(item: &str) -> (&str, Option<SpeedUnit>) {
    let lower = item.trim();
    let found = OF_ROAD.iter().find_map(|(sign, unit)| {
        let number = lower.strip_suffix(sign)?;
        Some((number.trim(), Some(*unit)))
    });
    found.unwrap_or((lower, None))
}

/// A figure without the unit behind it.
pub(super) fn without<'a>(text: &'a str, units: &[&str]) -> &'a str {
    let text = text.trim();
    let bare = units.iter().find_map(|unit| text.strip_suffix(unit));
    bare.unwrap_or(text).trim()
}

/// How a list was read, where that can be doubted: it holds a comma, or more than one figure.
pub(in crate::app) fn read_as(text: &str, figures: &[String]) -> Option<String> {
    let is_doubtful = text.contains(',') || figures.len() > 1;
    match figures {
        [first @ .., last] if is_doubtful => Some(match first {
            [] => format!("read as {last}"),
            _ => format!("read as {} and {last}", first.join(", ")),
        }),
        _ => None,
    }
}
