//! The figures for another program: JSON, metric, in full precision.
//!
//! Keys carry their units. What is added later may stand beside these keys; none of them changes
//! its meaning within one format number.

use crate::chart::MarkedSpeeds;
use crate::gearing::{Drivetrain, EngineSpeed, GearResult, RoadSpeed, SetResults, Tyre};
use crate::project::{Candidate, Project, ProjectResults};
use serde::Serialize;

/// The format that is written.
pub const FORMAT: u32 = 1;

/// Every key with its meaning and its unit, in the order of the output; `[]` stands for each entry
/// of a list.
const KEYS: [(&str, &str, &str); 33] = [
    ("format", "number of this format: 1", ""),
    ("title", "title of the project, empty where it has none", ""),
    ("sets", "the gear sets in their order", ""),
    ("sets[].name", "name of the set", ""),
    ("sets[].spread", "overall first ÷ overall top gear", ""),
    ("sets[].tyre", "the tyre that the set stands on", ""),
    (
        "sets[].tyre.overall_diameter_mm",
        "overall diameter without load; null where only the rolling was measured",
        "mm",
    ),
    (
        "sets[].tyre.rolling_circumference_mm",
        "distance for one turn under load",
        "mm",
    ),
    ("sets[].tyre.revs_per_km", "turns in a kilometre", ""),
    ("sets[].tyre.revs_per_mile", "turns in a mile", ""),
    ("sets[].gears", "forward gears in typed order", ""),
    ("sets[].gears[].gear", "label of the gear", ""),
    (
        "sets[].gears[].ratio",
        "ratio of the gear: input turns for one output turn",
        "",
    ),
    (
        "sets[].gears[].final_drive",
        "ratio of the final drive that the gear drives",
        "",
    ),
    (
        "sets[].gears[].overall_ratio",
        "engine turns for one wheel turn, all stages included",
        "",
    ),
    (
        "sets[].gears[].step",
        "overall ratio ÷ that of the next gear; null on top and on a crawler",
        "",
    ),
    (
        "sets[].gears[].shift_rpm",
        "engine speed at which the driver changes up; null on top and on a crawler",
        "rpm",
    ),
    (
        "sets[].gears[].rpm_after_shift",
        "engine speed after that upshift; null on top and on a crawler",
        "rpm",
    ),
    (
        "sets[].gears[].rpm_drop",
        "engine speed lost at that upshift; null on top and on a crawler",
        "rpm",
    ),
    (
        "sets[].gears[].speed_per_1000_rpm_kmh",
        "road speed for every 1000 rpm",
        "km/h",
    ),
    (
        "sets[].gears[].redline_speed_kmh",
        "road speed at the redline, also the highest for changing down into the gear",
        "km/h",
    ),
    (
        "sets[].gears[].speeds",
        "road speeds at the engine speeds that were asked for",
        "",
    ),
    (
        "sets[].gears[].speeds[].engine_rpm",
        "engine speed that was asked for",
        "rpm",
    ),
    (
        "sets[].gears[].speeds[].speed_kmh",
        "road speed at it, also above the redline",
        "km/h",
    ),
    (
        "sets[].gears[].engine_speeds",
        "engine speeds at the road speeds that were asked for",
        "",
    ),
    (
        "sets[].gears[].engine_speeds[].speed_kmh",
        "road speed that was asked for",
        "km/h",
    ),
    (
        "sets[].gears[].engine_speeds[].engine_rpm",
        "engine speed at it, also above the redline",
        "rpm",
    ),
    (
        "sets[].reverse",
        "the reverse gear, with the keys of a gear except step, shift_rpm, rpm_after_shift and \
         rpm_drop; null where there is none",
        "",
    ),
    ("findings", "what is valid but strange", ""),
    (
        "findings[].set",
        "number of the set, counted from 1; null where it is about the vehicle",
        "",
    ),
    (
        "findings[].gear",
        "label of the gear; null where it is about the whole set or the vehicle",
        "",
    ),
    ("findings[].kind", "its kind, for programs", ""),
    ("findings[].finding", "its sentence, for readers", ""),
];

/// Every key of the output with its meaning and, in brackets, its unit.
///
/// `sets[].gears[].gear` is the key `gear` of each entry of `gears` of each entry of `sets`.
pub fn key_reference() -> Vec<(String, String)> {
    let row = |(path, meaning, unit): &(&str, &str, &str)| {
        let meaning = match *unit {
            "" => (*meaning).to_owned(),
            unit => format!("{meaning} ({unit})"),
        };
        ((*path).to_owned(), meaning)
    };
    KEYS.iter().map(row).collect()
}

/// The figures of every set at the wanted speeds with all findings, pretty-printed, one line break
/// at the end.
pub fn table(project: &Project, results: &ProjectResults, marked: &MarkedSpeeds) -> String {
    let sets = project.sets.iter().zip(&results.sets);
    printed(&Table {
        format: FORMAT,
        title: title(project),
        sets: sets
            .map(|(candidate, set)| Set::of(project, candidate, set, marked))
            .collect(),
        findings: findings(results),
    })
}

/// The findings alone, under the same keys.
pub fn check(project: &Project, results: &ProjectResults) -> String {
    printed(&Check {
        format: FORMAT,
        title: title(project),
        findings: findings(results),
    })
}

fn printed(value: &impl Serialize) -> String {
    // Strings, numbers and lists of them always have a JSON form.
    let mut text = serde_json::to_string_pretty(value).unwrap_or_default();
    text.push('\n');
    text
}

fn title(project: &Project) -> &str {
    project.title.as_ref().map_or("", |title| title.as_str())
}

#[derive(Serialize)]
struct Table<'a> {
    format: u32,
    title: &'a str,
    sets: Vec<Set<'a>>,
    findings: Vec<FindingEntry<'a>>,
}

#[derive(Serialize)]
struct Check<'a> {
    format: u32,
    title: &'a str,
    findings: Vec<FindingEntry<'a>>,
}

#[derive(Serialize)]
struct Set<'a> {
    name: &'a str,
    spread: f64,
    tyre: TyreFigures,
    gears: Vec<GearEntry<'a>>,
    reverse: Option<GearEntry<'a>>,
}

#[derive(Serialize)]
struct TyreFigures {
    overall_diameter_mm: Option<f64>,
    rolling_circumference_mm: f64,
    revs_per_km: f64,
    revs_per_mile: f64,
}

#[derive(Serialize)]
struct GearEntry<'a> {
    gear: &'a str,
    ratio: f64,
    final_drive: f64,
    overall_ratio: f64,
    /// Absent, not null, for reverse.
    #[serde(flatten)]
    shift: Option<ShiftFigures>,
    speed_per_1000_rpm_kmh: f64,
    redline_speed_kmh: f64,
    speeds: Vec<SpeedAt>,
    engine_speeds: Vec<EngineSpeedAt>,
}

#[derive(Serialize)]
struct ShiftFigures {
    step: Option<f64>,
    shift_rpm: Option<f64>,
    rpm_after_shift: Option<f64>,
    rpm_drop: Option<f64>,
}

#[derive(Serialize)]
struct SpeedAt {
    engine_rpm: f64,
    speed_kmh: f64,
}

#[derive(Serialize)]
struct EngineSpeedAt {
    speed_kmh: f64,
    engine_rpm: f64,
}

#[derive(Serialize)]
struct FindingEntry<'a> {
    set: Option<usize>,
    gear: Option<&'a str>,
    kind: &'static str,
    finding: String,
}

impl<'a> Set<'a> {
    fn of(
        project: &Project,
        candidate: &'a Candidate,
        results: &'a SetResults,
        marked: &MarkedSpeeds,
    ) -> Self {
        let drivetrain = &results.drivetrain;
        let gear = |result, shift| GearEntry::of(drivetrain, result, shift, marked);
        Self {
            name: candidate.set.name.as_str(),
            spread: results.spread,
            tyre: TyreFigures::of(candidate.set.tyre.unwrap_or(project.tyre)),
            gears: results
                .gears
                .iter()
                .map(|result| gear(result, Some(ShiftFigures::of(result))))
                .collect(),
            reverse: results.reverse.as_ref().map(|result| gear(result, None)),
        }
    }
}

impl TyreFigures {
    fn of(tyre: Tyre) -> Self {
        Self {
            overall_diameter_mm: tyre.overall_diameter_mm(),
            rolling_circumference_mm: tyre.rolling_circumference_mm(),
            revs_per_km: tyre.revs_per_km(),
            revs_per_mile: tyre.revs_per_mile(),
        }
    }
}

impl<'a> GearEntry<'a> {
    fn of(
        drivetrain: &Drivetrain,
        result: &'a GearResult,
        shift: Option<ShiftFigures>,
        marked: &MarkedSpeeds,
    ) -> Self {
        let gear = &result.gear;
        let speed_at = |rpm: &EngineSpeed| SpeedAt {
            engine_rpm: rpm.rpm(),
            speed_kmh: drivetrain.speed_kmh(gear, rpm.rpm()),
        };
        let engine_speed_at = |speed: &RoadSpeed| EngineSpeedAt {
            speed_kmh: speed.kmh(),
            engine_rpm: drivetrain.engine_rpm(gear, speed.kmh()),
        };
        Self {
            gear: &gear.label,
            ratio: gear.ratio,
            final_drive: gear.final_drive,
            overall_ratio: gear.overall_ratio,
            shift,
            speed_per_1000_rpm_kmh: result.speed_per_1000_rpm_kmh,
            redline_speed_kmh: result.redline_speed_kmh,
            speeds: marked.engine_speeds.iter().map(speed_at).collect(),
            engine_speeds: marked.road_speeds.iter().map(engine_speed_at).collect(),
        }
    }
}

impl ShiftFigures {
    fn of(result: &GearResult) -> Self {
        let upshift = result.upshift;
        Self {
            step: result.step,
            shift_rpm: upshift.map(|up| up.shift_rpm),
            rpm_after_shift: upshift.map(|up| up.rpm_after_shift),
            rpm_drop: upshift.map(|up| up.rpm_drop()),
        }
    }
}

fn findings(results: &ProjectResults) -> Vec<FindingEntry<'_>> {
    results
        .findings()
        .map(|(set, finding)| FindingEntry {
            set: set.map(|place| place + 1),
            gear: finding.gear.as_deref(),
            kind: finding.kind.code(),
            finding: finding.to_string(),
        })
        .collect()
}
