//! What is said of a column once, for whoever renders it?

use super::measure::Measure;
use crate::gearing::{EngineLimits, EngineSpeed, GearResult, RoadSpeed, SetResults};
use crate::units::{SpeedUnit, mark_text, typed_rpm_text};

/// A column: what it holds, and what readers and programs call it.
#[derive(Debug)]
pub struct ColumnDefinition {
    /// Its name among all columns, and its key in JSON; a number's key ends in the unit.
    pub key: &'static str,
    /// What the reference of JSON keys says of it; `None` where JSON leaves it out.
    pub meaning: Option<&'static str>,
    /// Its heading in CSV, without its unit.
    pub csv_title: &'static str,
    /// What stands in it.
    pub holds: Holds,
    /// Whether it is about shifting up, of which JSON says nothing for reverse.
    pub is_forward_only: bool,
    /// How readers see it; `None` where only programs do.
    pub readers: Option<ForReaders>,
}

/// What stands in a column for each gear, in full precision.
#[derive(Debug, Clone, Copy)]
pub enum Holds {
    /// What the gear is called.
    Label,
    /// The ratio of the gear itself; readers see the teeth too, where teeth were typed.
    TypedRatio,
    /// One number, where the gear has it.
    Number(Measure, NumberOf),
    /// One number at idle; there is no such column where idle is not known.
    AtIdle(Measure, NumberOf),
    /// A column for each marked engine speed; a list in JSON, whose entries have this key.
    AtEngineSpeeds(Measure, NumberAtEngineSpeed, Key),
    /// A column for each marked road speed; a list in JSON, whose entries have this key.
    AtRoadSpeeds(Measure, NumberAtRoadSpeed, Key),
}

/// How a number of a gear is found.
pub type NumberOf = fn(&SetGear<'_>) -> Option<f64>;
/// How a number of a gear at an engine speed is found.
pub type NumberAtEngineSpeed = fn(&SetGear<'_>, EngineSpeed) -> f64;
/// How a number of a gear at a road speed is found.
pub type NumberAtRoadSpeed = fn(&SetGear<'_>, RoadSpeed) -> f64;

/// A key of JSON with what the reference says of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Key {
    /// The key itself, its unit in its name.
    pub name: &'static str,
    /// What stands under it.
    pub meaning: &'static str,
}

/// A column as readers see it.
#[derive(Debug, Clone, Copy)]
pub struct ForReaders {
    /// Its heading, without its unit and without the speed that it stands for.
    pub title: &'static str,
    /// How little a comparison can do without it.
    pub need: Need,
    /// The difference between a figure and its counterpart of the baseline, in words.
    pub difference: Option<fn(now: f64, before: f64) -> String>,
    /// How it stands on the page for the bench; `None` where it does not.
    pub bench: Option<AtTheBench>,
}

/// A column on the page for the bench, where there is room for few: of the columns for marked speeds the
/// first one stands there.
#[derive(Debug, Clone, Copy)]
pub struct AtTheBench {
    /// Its heading, without its unit.
    pub title: &'static str,
    /// Whether it is worked with, and brought out.
    pub stands_out: bool,
}

/// How little a comparison can do without a column; on a page the smallest leave first where room is
/// short, those of the same need together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Need {
    /// A comparison can do without it, without that of the lowest number first.
    Detail(u8),
    /// It is usual in a comparison; a page can do without it, for its diagram says it too.
    Usual(u8),
    /// There is no comparison without it.
    Always,
}

/// A gear with the set that it belongs to.
#[derive(Debug, Clone, Copy)]
pub struct SetGear<'a> {
    /// The figures of the set.
    pub set: &'a SetResults,
    /// Those of the gear.
    pub gear: &'a GearResult,
}

impl<'a> SetGear<'a> {
    /// All gears of a set in typed order, then reverse.
    pub fn all(set: &'a SetResults) -> impl Iterator<Item = Self> {
        let gears = set.gears.iter().chain(&set.reverse);
        gears.map(move |gear| Self { set, gear })
    }

    /// Whether it is the reverse gear.
    pub fn is_reverse(&self) -> bool {
        self.gear.gear.role.is_none()
    }

    /// The gear of another set that it is compared with.
    pub fn counterpart_in(&self, baseline: &'a SetResults) -> Option<Self> {
        let gear = baseline.counterpart(self.set, self.gear)?;
        Some(Self {
            set: baseline,
            gear,
        })
    }

    /// The road speed in km/h at an engine speed.
    pub fn speed_kmh(&self, rpm: EngineSpeed) -> f64 {
        self.set.drivetrain.speed_kmh(&self.gear.gear, rpm.rpm())
    }

    /// The engine speed in rev/min at a road speed.
    pub fn engine_rpm(&self, speed: RoadSpeed) -> f64 {
        self.set.drivetrain.engine_rpm(&self.gear.gear, speed.kmh())
    }
}

/// The speed that a column stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mark {
    /// What a gear does at an engine speed.
    EngineSpeed(EngineSpeed),
    /// What a gear does at a road speed.
    RoadSpeed(RoadSpeed),
}

impl Mark {
    /// The speed in the unit in which it is shown, in full precision.
    pub fn in_unit(self, units: SpeedUnit) -> f64 {
        match self {
            Self::EngineSpeed(speed) => speed.rpm(),
            Self::RoadSpeed(speed) => units.from_kmh(speed.kmh()),
        }
    }

    /// The sign of the unit in which it is shown.
    pub fn unit(self, units: SpeedUnit) -> &'static str {
        match self {
            Self::EngineSpeed(_) => "rpm",
            Self::RoadSpeed(_) => units.sign(),
        }
    }

    /// The speed as it was typed, without its unit.
    fn words(self, units: SpeedUnit) -> String {
        match self {
            Self::EngineSpeed(speed) => typed_rpm_text(speed.rpm()),
            Self::RoadSpeed(speed) => mark_text(speed.kmh(), units),
        }
    }
}

/// What stands in one column of a table: a definition at the speed that it stands for.
#[derive(Debug, Clone, Copy)]
pub enum Figure {
    /// What the gear is called.
    Label,
    /// The ratio of the gear itself.
    TypedRatio,
    /// One number, where the gear has it.
    Number(Measure, NumberOf),
    /// A number at an engine speed.
    AtEngineSpeed(Measure, NumberAtEngineSpeed, EngineSpeed),
    /// A number at a road speed.
    AtRoadSpeed(Measure, NumberAtRoadSpeed, RoadSpeed),
}

/// One figure in full precision.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value<'a> {
    /// A typed text.
    Text(&'a str),
    /// A number, km/h and rev/min; `None` where the gear has none.
    Number(Option<f64>),
}

impl ColumnDefinition {
    /// Whether a table of an engine with these limits has it, at whatever speeds.
    pub fn is_known(&self, engine: &EngineLimits) -> bool {
        match self.holds {
            Holds::AtIdle(..) => engine.idle.is_some(),
            Holds::Label
            | Holds::TypedRatio
            | Holds::Number(..)
            | Holds::AtEngineSpeeds(..)
            | Holds::AtRoadSpeeds(..) => true,
        }
    }

    /// What it holds at the marked speeds: one figure for each column.
    pub fn figures(&self, marked: &super::MarkedSpeeds) -> Vec<Figure> {
        match self.holds {
            Holds::Label => vec![Figure::Label],
            Holds::TypedRatio => vec![Figure::TypedRatio],
            Holds::Number(measure, number) | Holds::AtIdle(measure, number) => {
                vec![Figure::Number(measure, number)]
            }
            Holds::AtEngineSpeeds(measure, number, _) => {
                let speeds = marked.engine_speeds.iter();
                let figure = |rpm: &EngineSpeed| Figure::AtEngineSpeed(measure, number, *rpm);
                speeds.map(figure).collect()
            }
            Holds::AtRoadSpeeds(measure, number, _) => {
                let speeds = marked.road_speeds.iter();
                let figure = |speed: &RoadSpeed| Figure::AtRoadSpeed(measure, number, *speed);
                speeds.map(figure).collect()
            }
        }
    }
}

impl Figure {
    /// What a gear has of it.
    pub fn value<'a>(&self, gear: &SetGear<'a>) -> Value<'a> {
        match *self {
            Self::Label => Value::Text(&gear.gear.gear.label),
            Self::TypedRatio => Value::Number(Some(gear.gear.gear.ratio)),
            Self::Number(_, number) => Value::Number(number(gear)),
            Self::AtEngineSpeed(_, number, rpm) => Value::Number(Some(number(gear, rpm))),
            Self::AtRoadSpeed(_, number, speed) => Value::Number(Some(number(gear, speed))),
        }
    }

    /// What its numbers measure; `None` for text.
    pub fn measure(&self) -> Option<Measure> {
        match *self {
            Self::Label => None,
            Self::TypedRatio => Some(Measure::Ratio),
            Self::Number(measure, _)
            | Self::AtEngineSpeed(measure, ..)
            | Self::AtRoadSpeed(measure, ..) => Some(measure),
        }
    }

    /// The sign of the unit in which it is shown; empty for a pure number and text.
    pub fn unit(&self, units: SpeedUnit) -> &'static str {
        self.measure().map_or("", |measure| measure.unit(units))
    }

    /// The speed that it stands for.
    pub fn mark(&self) -> Option<Mark> {
        match *self {
            Self::Label | Self::TypedRatio | Self::Number(..) => None,
            Self::AtEngineSpeed(_, _, rpm) => Some(Mark::EngineSpeed(rpm)),
            Self::AtRoadSpeed(_, _, speed) => Some(Mark::RoadSpeed(speed)),
        }
    }

    /// The engine speed in rev/min at which it holds, where it holds at one alone.
    pub fn engine_rpm(&self, gear: &SetGear<'_>) -> Option<f64> {
        self.mark().map(|mark| match mark {
            Mark::EngineSpeed(rpm) => rpm.rpm(),
            Mark::RoadSpeed(speed) => gear.engine_rpm(speed),
        })
    }

    /// A heading for readers with the speed that it stands for: `at 2000 rpm`.
    pub fn heading(&self, title: &str, units: SpeedUnit) -> String {
        match self.mark() {
            Some(mark) => format!("{title} {} {}", mark.words(units), mark.unit(units)),
            None => title.to_owned(),
        }
    }
}
