//! Parts that can be had: a typed list of them, ranked by how near each comes to what is sought.

use super::target::{FoundValue, Sought, SpeedWish};
use crate::gearing::{
    FinalDrive, FinalDriveError, Ratio, RatioError, Sprockets, Tyre, TyreError, list_items,
    parse_final_drive, parse_ratio, parse_tyre, quoted, read_reduction, sprocket_teeth,
};
use std::fmt;

/// A part as it can be had.
#[derive(Debug, Clone, PartialEq)]
pub enum Part {
    /// Gears or sprockets behind an output shaft.
    FinalDrive(FinalDrive),
    /// A gear of the gearbox.
    Gear(Ratio),
    /// A tyre.
    Tyre(Tyre),
}

/// What a list holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PartKind {
    /// Final drives of gears, as ratio or teeth.
    FinalDrives,
    /// Chains; a lone count is a rear sprocket on the front one that is fitted.
    Chains(Sprockets),
    /// Ratios of a gear, as number, teeth or product.
    Gears,
    /// Tyres, by size or measured.
    Tyres,
}

/// A part that does not read.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PartError {
    /// No final drive.
    #[error(transparent)]
    FinalDrive(#[from] FinalDriveError),
    /// No ratio, or no sprocket.
    #[error(transparent)]
    Ratio(#[from] RatioError),
    /// No tyre.
    #[error("\"{text}\": {problem}")]
    Tyre {
        /// What was typed.
        text: String,
        /// Why it is none.
        problem: TyreError,
    },
}

/// A part with how near it comes.
#[derive(Debug, Clone, PartialEq)]
pub struct RankedPart {
    /// The part.
    pub part: Part,
    /// Its ratio, or its rolling circumference in mm.
    pub value: f64,
    /// How much more that is than what is sought, as a share of it; below 0 where it is less.
    pub difference_share: f64,
    /// The engine speed in rev/min that it gives at the road speed of the wish.
    pub engine_rpm: f64,
}

impl Part {
    /// Its ratio, or its rolling circumference in mm.
    pub fn value(&self) -> f64 {
        match self {
            Self::FinalDrive(drive) => drive.value(),
            Self::Gear(ratio) => ratio.value(),
            Self::Tyre(tyre) => tyre.rolling_circumference_mm(),
        }
    }
}

impl fmt::Display for Part {
    /// The spelling that reads back.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::FinalDrive(drive) => drive.fmt(f),
            Self::Gear(ratio) => ratio.fmt(f),
            Self::Tyre(tyre) => tyre.fmt(f),
        }
    }
}

/// The parts that `text` lists, in typed order, each with its own error where it does not read.
///
/// Lines and semicolons part them, and a comma before a blank; figures and tooth pairs also blanks, and
/// commas as in every list. A tyre and a product of pairs may hold blanks themselves.
///
/// # Example
/// ```
/// use layshaft::finders::{PartKind, parse_parts};
/// let drives = parse_parts(PartKind::FinalDrives, "3.73 37:9\n4,10; 41:10");
/// let values = drives.iter().map(|part| part.as_ref().unwrap().value());
/// assert_eq!(values.collect::<Vec<_>>(), [3.73, 37.0 / 9.0, 4.1, 4.1]);
/// ```
pub fn parse_parts(kind: PartKind, text: &str) -> Vec<Result<Part, PartError>> {
    items(kind, text)
        .iter()
        .map(|item| kind.read(item))
        .collect()
}

/// The parts by how near each comes to what was found, the nearest first; of parts as near, in their order.
pub fn ranked(
    parts: impl IntoIterator<Item = Part>,
    (sought, found, wish): (Sought, &FoundValue, SpeedWish),
) -> Vec<RankedPart> {
    let with_nearness = parts.into_iter().map(|part| {
        let value = part.value();
        RankedPart {
            part,
            value,
            difference_share: value / found.value - 1.0,
            engine_rpm: sought.engine_rpm_with(found, wish, value),
        }
    });
    let mut ranked: Vec<RankedPart> = with_nearness.collect();
    let distance = |ranked: &RankedPart| ranked.difference_share.abs();
    ranked.sort_by(|one, other| distance(one).total_cmp(&distance(other)));
    ranked
}

impl PartKind {
    fn read(self, text: &str) -> Result<Part, PartError> {
        Ok(match self {
            Self::FinalDrives => Part::FinalDrive(parse_final_drive(text)?),
            Self::Chains(fitted) => Part::FinalDrive(chain(fitted, text)?),
            Self::Gears => Part::Gear(parse_ratio(text)?.driven_first().clone()),
            Self::Tyres => {
                let tyre = parse_tyre(text);
                Part::Tyre(tyre.map_err(|problem| PartError::Tyre {
                    text: quoted(text),
                    problem,
                })?)
            }
        })
    }
}

/// A chain: a rear sprocket, both sprockets in any order, or what says itself that it is one; else gears.
fn chain(fitted: Sprockets, text: &str) -> Result<FinalDrive, PartError> {
    if let Ok(rear) = sprocket_teeth(text) {
        return Ok(Sprockets::new(fitted.front(), rear)?.into());
    }
    let drive = parse_final_drive(text)?;
    let FinalDrive::Gears(ratio) = &drive else {
        return Ok(drive);
    };
    // Both together are known to reduce.
    let reduces = read_reduction(&parse_ratio(&ratio.to_string())?);
    Ok(Sprockets::of(&reduces).map_or(drive, FinalDrive::Chain))
}

/// The pieces of a list, each one part.
fn items(kind: PartKind, text: &str) -> Vec<String> {
    let text = text.replace(", ", ";").replace(",\t", ";");
    let pieces = text.split(['\n', '\r', ';']).map(str::trim);
    let pieces = pieces.filter(|piece| !piece.is_empty());
    let parted = pieces.flat_map(|piece| {
        let tight = without_blanks_in_pairs(piece);
        if kind == PartKind::Tyres || is_one(&tight) {
            vec![piece.to_owned()]
        } else {
            list_items(&tight, &[])
        }
    });
    parted.collect()
}

/// Words within which blanks part nothing.
const OF_CHAINS: [&str; 3] = ["chain", "front", "rear"];

/// Whether a piece is one part: a product, a chain in words, or a single figure whose comma is decimal.
fn is_one(piece: &str) -> bool {
    let lower = piece.to_lowercase();
    let is_figure = |c: char| c.is_ascii_digit() || c == ',';
    let is_one_figure = piece.chars().all(is_figure) && piece.matches(',').count() == 1;
    is_one_figure || piece.contains(['*', '×']) || OF_CHAINS.iter().any(|word| lower.contains(word))
}

/// `34 : 9` is one pair.
fn without_blanks_in_pairs(piece: &str) -> String {
    let mut tight = String::new();
    for mark in piece.split_inclusive([':', '/']) {
        tight.push_str(mark.trim_start());
        if tight.ends_with([':', '/']) {
            let sign = tight.pop();
            tight.truncate(tight.trim_end().len());
            tight.extend(sign);
        }
    }
    tight
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spelled(kind: PartKind, text: &str) -> Vec<String> {
        let parts = parse_parts(kind, text).into_iter();
        let spelled = parts.map(|part| match part {
            Ok(part) => part.to_string(),
            Err(problem) => format!("! {problem}"),
        });
        spelled.collect()
    }

    #[test]
    fn ratios_are_parted_by_blanks_lines_and_marks_and_pairs_are_kept_together() {
        for text in [
            "3.73 34:9 4.1",
            "3,73; 34 : 9; 4,1",
            "3.73, 34/9, 4.10",
            "3.73\n34:9\r\n\n4.1\n",
            "3,73 9:34 4,10",
        ] {
            let read = spelled(PartKind::FinalDrives, text);
            assert_eq!(read, ["3.73", "34:9", "4.1"], "{text}");
        }
    }

    #[test]
    fn a_product_is_one_gear_and_an_overdrive_is_read_as_typed() {
        let read = spelled(PartKind::Gears, "34:17 * 20:30; 22:31 0.8");
        assert_eq!(read, ["34:17 × 20:30", "22:31", "0.8"]);
    }

    #[test]
    fn tyres_may_hold_blanks_and_are_parted_by_lines_and_commas() {
        let read = spelled(
            PartKind::Tyres,
            "195/65 R 15, 205/60 R15\ncircumference 1935 mm",
        );
        assert_eq!(read.len(), 3);
        assert!(read.iter().all(|tyre| !tyre.starts_with('!')), "{read:?}");
    }

    #[test]
    fn sprockets_are_a_rear_one_or_both_in_any_order() {
        let fitted = Sprockets::new(15, 45).unwrap();
        let read = spelled(PartKind::Chains(fitted), "44 46 16/46 47:16; chain 14/42");
        let expected = [
            "chain 15/44",
            "chain 15/46",
            "chain 16/46",
            "chain 16/47",
            "chain 14/42",
        ];
        assert_eq!(read, expected);
    }

    #[test]
    fn what_does_not_read_is_told_and_the_others_stand() {
        let read = spelled(PartKind::FinalDrives, "3.73 4.1O 4.3");
        assert_eq!((read[0].as_str(), read[2].as_str()), ("3.73", "4.3"));
        assert!(read[1].contains("4.1O"), "{read:?}");
        let read = spelled(PartKind::Tyres, "195/65 R 15\n195/6O R 15");
        assert!(read[1].starts_with("! \"195/6O R 15\": "), "{read:?}");
    }
}
