//! The headings of the program's tables: which column stands beneath each.

use crate::gearing::parse_decimal;
use crate::units::SpeedUnit;

/// The most columns that a table of the program has: all marks there can be, several times over.
pub(super) const MOST_COLUMNS: usize = 200;

/// What stands in a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Column {
    SetNumber,
    SetName,
    Gear,
    Ratio,
    FinalDrive,
    Overall,
    Step,
    ShiftAt,
    Against,
    AtEngineSpeed,
    AtRoadSpeed,
    Teeth,
    Crawler,
    ShiftPoint,
    FinalDrives,
    OnFinalDrive,
    Stages,
    ThroughStage,
    Tyre,
    Baseline,
    Idle,
    LowestUseful,
    Redline,
    /// Of stages, where that is not the present one.
    Position,
    /// A road speed that follows from others.
    RoadSpeed,
    /// A figure of an upshift that follows from others.
    Reckoned,
    /// Another's, or without a heading.
    Unknown,
}

impl Column {
    /// Whether a set has such a column only once; two marked speeds may be spelled the same.
    pub(super) fn is_counted(self) -> bool {
        !matches!(
            self,
            Self::Gear | Self::Against | Self::AtEngineSpeed | Self::AtRoadSpeed | Self::Unknown
        )
    }

    /// Whether every gear has something in it.
    pub(super) fn is_always_filled(self) -> bool {
        matches!(
            self,
            Self::Ratio
                | Self::Overall
                | Self::RoadSpeed
                | Self::AtEngineSpeed
                | Self::AtRoadSpeed
                | Self::OnFinalDrive
        )
    }
}

/// The unit of a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Unit {
    None,
    Rpm,
    Percent,
    Speed,
}

/// Every heading that is the same in every table, with the unit that goes with it.
const PLAIN: [(&str, Unit, Column); 28] = [
    ("set", Unit::None, Column::SetNumber),
    ("name", Unit::None, Column::SetName),
    ("gear", Unit::None, Column::Gear),
    ("ratio", Unit::None, Column::Ratio),
    ("final drive", Unit::None, Column::FinalDrive),
    ("overall", Unit::None, Column::Overall),
    ("overall ratio", Unit::None, Column::Overall),
    ("step", Unit::None, Column::Step),
    ("shift at", Unit::Rpm, Column::ShiftAt),
    ("falls to", Unit::Rpm, Column::Reckoned),
    ("drop", Unit::Rpm, Column::Reckoned),
    ("drop", Unit::Percent, Column::Reckoned),
    ("per 1000 rpm", Unit::Speed, Column::RoadSpeed),
    ("at idle", Unit::Speed, Column::RoadSpeed),
    ("at redline", Unit::Speed, Column::RoadSpeed),
    ("teeth", Unit::None, Column::Teeth),
    ("crawler", Unit::None, Column::Crawler),
    ("shift point", Unit::Rpm, Column::ShiftPoint),
    ("final drives", Unit::None, Column::FinalDrives),
    ("on final drive", Unit::None, Column::OnFinalDrive),
    ("stages", Unit::None, Column::Stages),
    ("through stage", Unit::None, Column::ThroughStage),
    ("tyre", Unit::None, Column::Tyre),
    ("baseline", Unit::None, Column::Baseline),
    ("idle", Unit::Rpm, Column::Idle),
    ("lowest useful", Unit::Rpm, Column::LowestUseful),
    ("redline", Unit::Rpm, Column::Redline),
    ("position", Unit::None, Column::Position),
];

/// What stands above a column.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Heading {
    pub(super) column: Column,
    /// As it reads.
    pub(super) words: String,
    /// The speed or the number of a set in it.
    pub(super) number: Option<f64>,
    /// The unit of its road speeds.
    pub(super) speed_unit: Option<SpeedUnit>,
    unit: Unit,
}

impl Heading {
    /// A heading with its unit in brackets: `at 90 km/h (rpm)`.
    pub(super) fn in_brackets(text: &str) -> Self {
        let text = text.trim();
        let parts = text
            .strip_suffix(')')
            .and_then(|text| text.rsplit_once('('));
        let known = match parts {
            Some((title, unit)) => unit_of(unit).and_then(|unit| known(title.trim(), unit)),
            None => known(text, (Unit::None, None)),
        };
        known.unwrap_or_else(|| Self::unknown(text))
    }

    /// A heading whose unit is its last word: `at 90 km/h rpm`.
    pub(super) fn in_words(text: &str) -> Self {
        let known = known(text, (Unit::None, None)).or_else(|| {
            let (title, unit) = text.rsplit_once(' ')?;
            known(title, unit_of(unit)?)
        });
        known.unwrap_or_else(|| Self::unknown(text))
    }

    fn unknown(text: &str) -> Self {
        Self {
            column: Column::Unknown,
            words: text.to_owned(),
            number: None,
            speed_unit: None,
            unit: Unit::None,
        }
    }
}

/// Whether every heading is one of the program's.
pub(super) fn are_known(headings: &[Heading]) -> bool {
    let mut headings = headings.iter();
    headings.all(|heading| heading.column != Column::Unknown)
}

/// Whether headings are those of a table of the program: it names gears, and a column has a unit as
/// only this program writes it.
pub(super) fn are_own(headings: &[Heading]) -> bool {
    let mut names_gears = false;
    let (mut known, mut with_unit) = (0, 0);
    for heading in headings {
        match heading.column {
            Column::Gear => names_gears = true,
            Column::Unknown => {}
            _ => {
                known += 1;
                with_unit += usize::from(heading.unit != Unit::None);
            }
        }
    }
    names_gears && known >= 2 && with_unit >= 1 && headings.len() <= MOST_COLUMNS
}

/// Whether a word is the unit of a column.
pub(super) fn is_unit(text: &str) -> bool {
    unit_of(text).is_some()
}

fn unit_of(text: &str) -> Option<(Unit, Option<SpeedUnit>)> {
    match text {
        "rpm" => Some((Unit::Rpm, None)),
        "%" => Some((Unit::Percent, None)),
        text => {
            let unit = SpeedUnit::ALL.into_iter().find(|u| u.sign() == text)?;
            Some((Unit::Speed, Some(unit)))
        }
    }
}

fn known(title: &str, (unit, speed_unit): (Unit, Option<SpeedUnit>)) -> Option<Heading> {
    let heading = |column, number, speed_unit| Heading {
        column,
        words: title.to_owned(),
        number,
        speed_unit,
        unit,
    };
    let plain = PLAIN.iter().find(|row| row.0 == title && row.1 == unit);
    if let Some((_, _, column)) = plain {
        return Some(heading(*column, None, speed_unit));
    }
    if let Some(number) = title.strip_prefix("against set ") {
        let number = parse_decimal(number).ok()?;
        return (unit == Unit::Rpm).then(|| heading(Column::Against, Some(number), None));
    }
    let (number, marked) = title.strip_prefix("at ")?.split_once(' ')?;
    let number = parse_decimal(number).ok()?;
    match (unit_of(marked)?, unit) {
        ((Unit::Rpm, _), Unit::Speed) => {
            Some(heading(Column::AtEngineSpeed, Some(number), speed_unit))
        }
        ((Unit::Speed, marked), Unit::Rpm) => {
            Some(heading(Column::AtRoadSpeed, Some(number), marked))
        }
        _ => None,
    }
}
