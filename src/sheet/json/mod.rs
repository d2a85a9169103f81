//! The figures for another program: JSON, metric, in full precision.
//!
//! Keys carry their units. What is added later may stand beside these keys; none of them changes
//! its meaning within one format number. The figures of gears and sets are those that the chart's
//! table defines.

mod counted;
mod figure_keys;
mod fit;
mod found;
mod jobs;
mod journal;
pub(super) mod keys;
mod motion;
mod object;
mod pairs;
mod plan;
mod preload;
mod shim;
mod speedometer;

pub use counted::counted;
pub use found::found;
pub use keys::key_reference;

use super::of_views::NotWritten;
use crate::analysis::{Analysis, NoMotion, ProjectFinding};
use crate::chart::table::{
    COLUMNS, ColumnDefinition, FACTS, FactFigures, Figure, Holds, Mark, ProjectSet, SetGear, Value,
};
use crate::chart::{AskedFigures, MarkedSpeeds};
use crate::gearing::{OtherPosition, SetResults};
use crate::project::Project;
pub use figure_keys::FIGURE_KEYS;
pub use fit::{FIT_KEYS, fit};
pub use jobs::{JOB_KEYS, jobs};
pub use journal::{JOURNAL_KEYS, journal};
use keys::{ENGINE_SPEED, ROAD_SPEED};
use object::Json;
pub use object::JsonError;
pub use pairs::{PAIR_KEYS, pairs};
pub use preload::{PRELOAD_KEYS, preload};
pub use shim::{SHIM_KEYS, shim};

/// The format that is written.
pub const FORMAT: u32 = 1;

/// The figures of every set at the wanted speeds with all findings, pretty-printed, one line break
/// at the end.
///
/// # Errors
/// When the serialiser gives up.
pub fn table(analysis: &Analysis, marked: &MarkedSpeeds) -> Result<String, JsonError> {
    table_with(analysis, marked, COLUMNS)
}

/// The same with these columns.
pub(super) fn table_with(
    analysis: &Analysis,
    marked: &MarkedSpeeds,
    definitions: &[&ColumnDefinition],
) -> Result<String, JsonError> {
    let (project, results) = (analysis.project(), analysis.results());
    let columns = Columns {
        definitions,
        marked,
    };
    let candidates = project.sets.iter().zip(&results.sets).enumerate();
    let sets = candidates.map(|(place, (candidate, set))| {
        let of_set = ProjectSet {
            project,
            set: &candidate.set,
            results: set,
        };
        columns.set(&of_set, results.other_positions(project, place))
    });
    let mut entries = head(project);
    entries.push(("sets", Json::List(sets.collect())));
    entries.push(("findings", findings(analysis)));
    Json::Object(entries).printed()
}

/// The figures that are asked for with all findings.
///
/// # Errors
/// When something is not known that they need, or the serialiser gives up.
pub fn figures(analysis: &Analysis, asked: &AskedFigures) -> Result<String, NotWritten> {
    let motion = || analysis.motion().map_err(NoMotion::clone);
    Ok(match asked {
        AskedFigures::Effort(speeds) => motion::effort(analysis, motion()?, speeds)?,
        AskedFigures::Run(questions) => motion::run(analysis, motion()?, questions)?,
        AskedFigures::Cruise(speeds) => motion::cruise(analysis, motion()?, speeds)?,
        AskedFigures::Speedometer(speeds) => speedometer::speedometer(analysis, speeds)?,
    })
}

/// The findings alone, under the same keys.
///
/// # Errors
/// When the serialiser gives up.
pub fn check(analysis: &Analysis) -> Result<String, JsonError> {
    let mut entries = head(analysis.project());
    entries.push(("findings", findings(analysis)));
    Json::Object(entries).printed()
}

fn head(project: &Project) -> Vec<(&'static str, Json<'_>)> {
    let title = project.title.as_ref().map_or("", |title| title.as_str());
    vec![
        ("format", Json::Count(FORMAT as usize)),
        ("title", Json::Text(title)),
    ]
}

/// What is told of every gear.
struct Columns<'a> {
    definitions: &'a [&'a ColumnDefinition],
    marked: &'a MarkedSpeeds,
}

impl Columns<'_> {
    fn set<'a>(&self, set: &ProjectSet<'a>, others: &'a [OtherPosition]) -> Json<'a> {
        let mut entries = vec![("name", Json::Text(set.set.name.as_str()))];
        for figures in FACTS.iter().filter_map(|fact| fact.figures) {
            entries.push(match figures {
                FactFigures::One(key, number) => (key.name, Json::number(number(set))),
                FactFigures::Several(key, parts) => {
                    let part = parts.iter();
                    let part = part.map(|p| (p.key.name, Json::number((p.number)(set))));
                    (key.name, Json::Object(part.collect()))
                }
            });
        }
        entries.extend(self.gears(set.results));
        let others = others.iter().map(|other| {
            let position = ("position", Json::Text(&other.name));
            let gears = self.gears(&other.results);
            Json::Object([position].into_iter().chain(gears).collect())
        });
        entries.push(("other_positions", Json::List(others.collect())));
        Json::Object(entries)
    }

    /// The forward gears, then reverse.
    fn gears<'a>(&self, set: &'a SetResults) -> [(&'static str, Json<'a>); 2] {
        let (reverse, gears): (Vec<_>, Vec<_>) = SetGear::all(set).partition(SetGear::is_reverse);
        let gears = gears.iter().map(|gear| self.gear(gear));
        let reverse = reverse.first().map(|gear| self.gear(gear));
        [
            ("gears", Json::List(gears.collect())),
            ("reverse", reverse.unwrap_or(Json::Null)),
        ]
    }

    /// Single values first, then the lists at the speeds that were asked for.
    fn gear<'a>(&self, gear: &SetGear<'a>) -> Json<'a> {
        let mut values = Vec::new();
        let mut lists = Vec::new();
        for definition in self.definitions {
            if definition.meaning.is_none() || (definition.is_forward_only && gear.is_reverse()) {
                continue;
            }
            let figures = definition.figures(self.marked);
            match definition.holds {
                Holds::Label | Holds::TypedRatio | Holds::Number(..) | Holds::AtIdle(..) => {
                    let figures = figures.iter();
                    values.extend(figures.map(|f| (definition.key, value(f, gear))));
                }
                Holds::AtEngineSpeeds(_, _, key) | Holds::AtRoadSpeeds(_, _, key) => {
                    let entries = figures.iter().map(|f| list_entry(f, key.name, gear));
                    lists.push((definition.key, Json::List(entries.collect())));
                }
            }
        }
        values.append(&mut lists);
        Json::Object(values)
    }
}

fn value<'a>(figure: &Figure, gear: &SetGear<'a>) -> Json<'a> {
    match figure.value(gear) {
        Value::Text(text) => Json::Text(text),
        Value::Number(number) => Json::number(number),
    }
}

/// The speed that was asked for, and what the gear does at it.
fn list_entry<'a>(figure: &Figure, key: &'static str, gear: &SetGear<'a>) -> Json<'a> {
    let asked = figure.mark().map(|mark| match mark {
        Mark::EngineSpeed(speed) => (ENGINE_SPEED.name, Json::Number(speed.rpm())),
        Mark::RoadSpeed(speed) => (ROAD_SPEED.name, Json::Number(speed.kmh())),
    });
    let entries = asked.into_iter().chain([(key, value(figure, gear))]);
    Json::Object(entries.collect())
}

fn findings(analysis: &Analysis) -> Json<'_> {
    let findings = analysis.findings().iter();
    Json::List(findings.map(finding).collect())
}

fn finding(finding: &ProjectFinding) -> Json<'_> {
    let gear = finding.gear.as_deref();
    let place = finding.set.map(|place| Json::Count(place + 1));
    Json::Object(vec![
        ("set", place.unwrap_or(Json::Null)),
        ("gear", gear.map_or(Json::Null, Json::Text)),
        ("kind", Json::Text(finding.code)),
        ("finding", Json::Text(&finding.sentence)),
    ])
}
