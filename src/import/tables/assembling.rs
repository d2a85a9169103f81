//! Sets and what they share, from the texts of a table.

use super::error::TableError;
use super::found::{Found, FoundSet};
use super::headings::Column;
use super::page::compared_with;
use super::phrases::Facts;
use super::positions;
use super::sets::SetReader;
use super::{OwnSet, OwnTable};
use crate::gearing::{EngineSpeed, Name, RoadSpeed, Tyre, quoted};
use crate::units::SpeedUnit;

/// To what a marked road speed is rounded where it is printed, in its unit.
const PRINTED_GRAIN: f64 = 0.1;

/// The table that its texts give back.
///
/// # Errors
/// When a cell is no value of its column, or gears make no set.
pub(super) fn assembled(mut found: Found) -> Result<OwnTable, TableError> {
    let mut remarks = Vec::new();
    let mut read = Vec::with_capacity(found.sets.len());
    for (number, set) in (1..).zip(&mut found.sets) {
        let facts = set.facts.as_deref().map(Facts::of).unwrap_or_default();
        positions::leave_out(number, set, &facts.stages)?;
        for phrase in &facts.unread {
            let phrase = quoted(phrase);
            remarks.push(format!("set {number}: \"{phrase}\" was left out"));
        }
        let reader = SetReader::new(number, set);
        read.push(reader.read(facts, &mut remarks)?);
    }
    let tyre = usual_tyre(&read);
    let (marked_engine_speeds, marked_road_speeds) = marks(&found, &mut remarks);
    let baseline = baseline(&found, &mut remarks);
    let present = found.sets.len();
    if let Some(all) = found.head.sets.filter(|all| *all > present) {
        remarks.push(format!("only {present} of {all} gear sets are in the text"));
    }
    let left_out = unknown_columns(&found);
    if !left_out.is_empty() {
        remarks.push(format!("left out: the columns {}", left_out.join(", ")));
    }
    Ok(OwnTable {
        title: found.title.and_then(|title| Name::new(&title).ok()),
        units: units(&found.sets),
        idle: engine_speed(&found.sets, Column::Idle)?.or(found.head.idle),
        lowest_useful: engine_speed(&found.sets, Column::LowestUseful)?
            .or(found.head.lowest_useful),
        redline: engine_speed(&found.sets, Column::Redline)?.or(found.head.redline),
        marked_engine_speeds,
        marked_road_speeds,
        sets: read.into_iter().map(|set| own(set, tyre)).collect(),
        tyre,
        baseline,
        remarks,
    })
}

/// The set with a tyre only where that is its own.
fn own(set: OwnSet, usual: Option<Tyre>) -> OwnSet {
    OwnSet {
        tyre: set.tyre.filter(|tyre| Some(*tyre) != usual),
        ..set
    }
}

/// The tyre that most sets stand on, the first of those where they are even.
fn usual_tyre(sets: &[OwnSet]) -> Option<Tyre> {
    let tyres: Vec<Tyre> = sets.iter().filter_map(|set| set.tyre).collect();
    let count = |tyre: &Tyre| tyres.iter().filter(|other| *other == tyre).count();
    let most = tyres.iter().map(count).max()?;
    tyres.iter().find(|tyre| count(tyre) == most).copied()
}

fn units(sets: &[FoundSet]) -> Option<SpeedUnit> {
    let mut headings = sets.iter().flat_map(|set| &set.headings);
    headings.find_map(|heading| heading.speed_unit)
}

/// An engine speed that every row of every set repeats.
fn engine_speed(sets: &[FoundSet], column: Column) -> Result<Option<EngineSpeed>, TableError> {
    let mut speed = None;
    for (number, set) in (1..).zip(sets) {
        let reader = SetReader::new(number, set);
        for row in &set.rows {
            let Some(now) = reader.engine_speed(row, column)? else {
                continue;
            };
            if *speed.get_or_insert(now) != now {
                // The last cell of all was cut.
                return Err(reader.not_a_value(row, column));
            }
        }
    }
    Ok(speed)
}

/// The speeds that have a column in any set, in their order.
fn marks(found: &Found, remarks: &mut Vec<String>) -> (Vec<EngineSpeed>, Vec<RoadSpeed>) {
    let (mut engine_speeds, mut road_speeds) = (Vec::new(), Vec::new());
    for heading in found.sets.iter().flat_map(|set| &set.headings) {
        let Some(number) = heading.number else {
            continue;
        };
        let is_read = match heading.column {
            Column::AtEngineSpeed => {
                EngineSpeed::from_rpm(number).map(|speed| once(&mut engine_speeds, speed))
            }
            Column::AtRoadSpeed => {
                let units = heading.speed_unit.unwrap_or_default();
                // The fastest that can be marked may be printed a little faster.
                let slack = units.to_kmh(PRINTED_GRAIN);
                let speed_kmh = units.to_kmh(number);
                let is_fastest =
                    (RoadSpeed::FASTEST_KMH..RoadSpeed::FASTEST_KMH + slack).contains(&speed_kmh);
                let speed_kmh = if is_fastest {
                    RoadSpeed::FASTEST_KMH
                } else {
                    speed_kmh
                };
                RoadSpeed::from_kmh(speed_kmh).map(|speed| once(&mut road_speeds, speed))
            }
            _ => Ok(()),
        };
        if let Err(error) = is_read {
            let remark = format!("\"{}\" is not marked: {error}", quoted(&heading.words));
            if !remarks.contains(&remark) {
                remarks.push(remark);
            }
        }
    }
    (engine_speeds, road_speeds)
}

fn once<T: PartialEq>(list: &mut Vec<T>, value: T) {
    if !list.contains(&value) {
        list.push(value);
    }
}

/// The place of the set that the others are compared with.
fn baseline(found: &Found, remarks: &mut Vec<String>) -> usize {
    let sets = &found.sets;
    let says_so = |set: &FoundSet| {
        let mut rows = set.rows.iter();
        rows.any(|row| set.cell(row, Column::Baseline).is_some())
    };
    if let Some(place) = sets.iter().position(says_so) {
        return place;
    }
    let against = sets.iter().find_map(compared_with);
    let against = against.and_then(|number| format!("{number}").parse().ok());
    let Some(wanted) = found.head.baseline.or(against) else {
        return 0;
    };
    let is_it = |(place, set): (usize, &FoundSet)| set.number.unwrap_or(place + 1) == wanted;
    let place = sets.iter().enumerate().position(is_it);
    if place.is_none() && sets.len() > 1 {
        remarks.push(format!(
            "set {wanted}, with which the others were compared, is not in the text"
        ));
    }
    place.unwrap_or(0)
}

fn unknown_columns(found: &Found) -> Vec<String> {
    let mut unknown = Vec::new();
    for heading in found.sets.iter().flat_map(|set| &set.headings) {
        if heading.column == Column::Unknown {
            once(&mut unknown, format!("\"{}\"", quoted(&heading.words)));
        }
    }
    unknown
}
