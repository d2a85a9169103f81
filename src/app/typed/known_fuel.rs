//! A typed consumption that is known: how much, how fast, in which gear of which set.

use super::speeds::{parted, road_speed};
use super::{Reading, told};
use crate::gearing::{Gear, parse_decimal};
use crate::motion::FuelConsumption;
use crate::project::{KnownFuel, Project};
use crate::units::{mark_text, plain_number};

/// How it is typed.
const SHAPE: &str = "type L/100 km, road speed and gear, as 7.4 at 100 in 5 of set 1";

/// The consumption as it is typed: `7.4 at 100 in 5 of set 1`; empty where none is known.
pub(in crate::app) fn spelled(project: &Project) -> String {
    let Some(known) = project.technical.known_fuel else {
        return String::new();
    };
    let place = project.sets.place(known.set);
    let set = project.sets.get(known.set).map(|candidate| &candidate.set);
    let gear = set.and_then(|set| set.gear(known.gear));
    let litres = plain_number(known.consumption.l_per_100km());
    let speed = mark_text(known.speed.kmh(), project.units);
    match place.zip(gear) {
        Some((place, gear)) => {
            let (label, number) = (gear.label.as_str(), place + 1);
            format!("{litres} at {speed} in {label} of set {number}")
        }
        None => String::new(),
    }
}

/// The consumption that a text means; of the baseline where it names no set. A speed is in the project's
/// unit where none stands behind it.
///
/// # Errors
/// When it does not read, or there is no such set or gear.
pub(in crate::app) fn read(project: &Project, text: &str) -> Reading<Option<KnownFuel>> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let (litres, rest) = text.split_once(" at ").ok_or(SHAPE)?;
    let (speed, rest) = rest.split_once(" in ").ok_or(SHAPE)?;
    let (label, number) = match rest.split_once(" of set ") {
        Some((label, number)) => (label.trim(), Some(number.trim())),
        None => (rest.trim(), None),
    };
    let candidate = match number {
        None => project.sets.baseline(),
        Some(number) => {
            let place = number.parse::<usize>().ok().and_then(|n| n.checked_sub(1));
            let candidate = place.and_then(|place| project.sets.iter().nth(place));
            candidate.ok_or_else(|| format!("there is no set {number}"))?
        }
    };
    let mut gears = candidate.set.gears.iter();
    let is_meant = |gear: &&Gear| [label, without_ordinal(label)].contains(&gear.label.as_str());
    let gear = gears.find(is_meant);
    let gear = gear.ok_or_else(|| format!("{} has no gear {label}", candidate.set.name))?;
    let number = litres.trim_end_matches("L/100 km").trim();
    let number = parse_decimal(number);
    let number = number.map_err(|error| error.about("a consumption", "7.4"))?;
    let (speed, unit) = parted(speed);
    // What is spelled as the speed that is there is that speed.
    let present = project.technical.known_fuel.map(|known| known.speed);
    let same = present.filter(|at| unit.is_none() && mark_text(at.kmh(), project.units) == speed);
    let speed = match same {
        Some(same) => same,
        None => road_speed(speed, unit.unwrap_or(project.units))?,
    };
    Ok(Some(KnownFuel {
        set: candidate.id,
        gear: gear.id,
        speed,
        consumption: FuelConsumption::from_l_per_100km(number).map_err(told)?,
    }))
}

/// `5` of `5th`, as gears are called in sentences.
fn without_ordinal(label: &str) -> &str {
    let endings = ["st", "nd", "rd", "th"].into_iter();
    let mut numbers = endings.filter_map(|ending| label.strip_suffix(ending));
    let is_number = |number: &&str| number.bytes().all(|byte| byte.is_ascii_digit());
    numbers.find(is_number).unwrap_or(label)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::examples::EXAMPLES;

    fn camper_van() -> Project {
        EXAMPLES[0].project().unwrap()
    }

    #[test]
    fn what_is_spelled_is_read_back() {
        let project = camper_van();
        let text = spelled(&project);
        assert!(!text.is_empty());
        assert_eq!(read(&project, &text).unwrap(), project.technical.known_fuel);
        assert_eq!(read(&project, " ").unwrap(), None);
    }

    #[test]
    fn a_unit_may_stand_behind_each_figure_and_the_set_may_be_left_out() {
        let project = camper_van();
        assert_eq!(
            read(&project, "7.4 at 100 in 5th"),
            read(&project, "7.4 at 100 in 5")
        );
        let known = read(&project, "7,4 L/100 km at 60 mph in 5")
            .unwrap()
            .unwrap();
        assert_eq!(known.set, project.sets.baseline().id);
        assert!((known.speed.kmh() - 96.560_64).abs() < 1e-9);
        assert!((known.consumption.l_per_100km() - 7.4).abs() < 1e-12);
    }

    #[test]
    fn what_does_not_read_says_what_is_wanted() {
        let project = camper_van();
        for (text, says) in [
            ("7.4", "as 7.4 at 100 in 5 of set 1"),
            ("7.4 at 100", "as 7.4 at 100 in 5 of set 1"),
            ("much at 100 in 5", "a consumption"),
            ("7.4 at 100 in 9", "has no gear 9"),
            ("7.4 at 100 in 5 of set 4", "there is no set 4"),
            ("7.4 at fast in 5", "a road speed"),
        ] {
            let problem = read(&project, text).unwrap_err();
            assert!(problem.contains(says), "{text}: {problem}");
        }
    }
}
