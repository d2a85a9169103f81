//! A typed date: a day or a month that there is, told in a way that can be read in one way only.

use super::{Reading, name};
use crate::gearing::Name;
use time::{Date, Month};

/// How a date can be typed.
const FORMS: &str = "type it as 2026-11-26, 26.11.2026 or 26 Nov 2026";

/// The months as they begin in English.
const MONTHS: [&str; 12] = [
    "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec",
];

/// A date, kept as it was typed.
///
/// # Errors
/// When it is no date, or could be two.
pub(in crate::app) fn date(text: &str) -> Reading<Name> {
    let parts = parts(text).ok_or_else(|| format!("this is no date: {FORMS}"))?;
    let mut days: Vec<Date> = readings(parts).collect();
    days.sort_unstable();
    days.dedup();
    match days.as_slice() {
        [] => Err(format!("there is no such day: {FORMS}")),
        [_] => name(text),
        [one, other, ..] => Err(format!("this can be {one} or {other}: {FORMS}")),
    }
}

/// The three parts of a date.
#[derive(Clone, Copy)]
enum Parts {
    /// Year, month, day.
    FromYear([u16; 3]),
    /// Day, month, year.
    FromDay([u16; 3]),
    /// Day and month, or month and day, then the year: with slashes both are written.
    Either([u16; 3]),
}

fn parts(text: &str) -> Option<Parts> {
    let is_parting = |c: char| matches!(c, '-' | '.' | '/' | ',') || c.is_whitespace();
    let words = text
        .trim()
        .split(is_parting)
        .filter(|word| !word.is_empty());
    let words: Vec<&str> = words.collect();
    if let [month, year] = words[..] {
        return Some(Parts::FromDay([1, named_month(month)?, number(year)?]));
    }
    let [a, b, c] = words.try_into().ok()?;
    if let Some(month) = named_month(b) {
        return Some(Parts::FromDay([day_number(a)?, month, number(c)?]));
    }
    if let Some(month) = named_month(a) {
        return Some(Parts::FromDay([day_number(b)?, month, number(c)?]));
    }
    let all = [number(a)?, number(b)?, number(c)?];
    match (a.len(), c.len()) {
        (4, _) => Some(Parts::FromYear(all)),
        (_, 4) if text.contains('/') => Some(Parts::Either(all)),
        (_, 4) => Some(Parts::FromDay(all)),
        _ => None,
    }
}

/// A month's number by its English name, whole or cut.
fn named_month(word: &str) -> Option<u16> {
    let word = word.to_lowercase();
    let at = MONTHS.iter().position(|month| word.starts_with(month))?;
    u16::try_from(at + 1).ok()
}

/// A day's number, an ending such as that of 1st left out.
fn day_number(word: &str) -> Option<u16> {
    let endings = ["st", "nd", "rd", "th"];
    let bare = endings.iter().find_map(|ending| word.strip_suffix(ending));
    number(bare.unwrap_or(word))
}

fn number(word: &str) -> Option<u16> {
    let is_plain = word.len() <= 4 && word.bytes().all(|byte| byte.is_ascii_digit());
    is_plain.then(|| word.parse().ok())?
}

/// The days that the parts can mean.
fn readings(parts: Parts) -> impl Iterator<Item = Date> {
    let orders = match parts {
        Parts::FromYear([year, month, day]) | Parts::FromDay([day, month, year]) => {
            vec![[year, month, day]]
        }
        Parts::Either([a, b, year]) => vec![[year, b, a], [year, a, b]],
    };
    orders.into_iter().filter_map(|[year, month, day]| {
        let month = Month::try_from(u8::try_from(month).ok()?).ok()?;
        Date::from_calendar_date(year.into(), month, u8::try_from(day).ok()?).ok()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_are_read_in_the_usual_ways_and_kept_as_typed() {
        for text in [
            "2026-11-26",
            "26.11.2026",
            "26. 11. 2026",
            "26/11/2026",
            "11/26/2026",
            "5/5/2026",
            "26 Nov 2026",
            "November 26, 2026",
            "1st March 2024",
            "May 2027",
            "29.02.2024",
        ] {
            assert_eq!(date(text).unwrap().as_str(), text);
        }
    }

    #[test]
    fn what_is_no_day_or_two_is_refused_with_how_to_type_it() {
        for (text, says) in [
            ("soon", "this is no date"),
            ("26.11.", "this is no date"),
            ("26.11.26", "this is no date"),
            ("29.02.2025", "there is no such day"),
            ("2026-13-01", "there is no such day"),
            ("00.01.2026", "there is no such day"),
            ("11/12/2026", "this can be 2026-11-12 or 2026-12-11"),
        ] {
            let problem = date(text).unwrap_err();
            assert!(problem.starts_with(says), "{text}: {problem}");
            assert!(problem.contains("type it as 2026-11-26"), "{problem}");
        }
    }
}
