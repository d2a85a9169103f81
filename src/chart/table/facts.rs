//! What is said of a set as a whole? Each fact is defined here, once, for readers and programs.

use super::definition::Key;
use crate::gearing::{FinalDrive, GearSet, Name, Position, SetResults, Stage, Tyre};
use crate::project::Project;
use crate::units::{mm_text, step_text};
use std::borrow::Cow;

/// A fact about a set: its words, and its keys in JSON.
#[derive(Debug)]
pub struct FactDefinition {
    /// One short phrase for readers, or several.
    pub words: fn(&ProjectSet<'_>) -> Vec<String>,
    /// What programs get; `None` where they find it elsewhere, or not yet.
    pub figures: Option<FactFigures>,
    /// Whether it is the vehicle's rather than the set's own: a page says such a fact once.
    pub is_of_vehicle: fn(&ProjectSet<'_>) -> bool,
    /// What the page for the bench says of it; `None` where it says nothing.
    pub at_bench: Option<fn(&ProjectSet<'_>) -> Vec<String>>,
}

/// What programs get of a fact, in full precision.
#[derive(Debug, Clone, Copy)]
pub enum FactFigures {
    /// One number; `None` where there is none.
    One(Key, fn(&ProjectSet<'_>) -> Option<f64>),
    /// An object with several numbers.
    Several(Key, &'static [FactPart]),
}

/// One number of several.
#[derive(Debug, Clone, Copy)]
pub struct FactPart {
    /// Its key, the unit in its name.
    pub key: Key,
    /// The unit's sign; empty for a pure number.
    pub unit: &'static str,
    /// The number; `None` where it is not known.
    pub number: fn(&ProjectSet<'_>) -> Option<f64>,
}

/// A set with all that its facts rest on.
#[derive(Debug, Clone, Copy)]
pub struct ProjectSet<'a> {
    /// The project that it belongs to.
    pub project: &'a Project,
    /// What was typed.
    pub set: &'a GearSet,
    /// Its figures.
    pub results: &'a SetResults,
}

impl ProjectSet<'_> {
    /// The tyre that it stands on: its own, else the vehicle's.
    pub fn tyre(&self) -> &Tyre {
        self.set.tyre.as_ref().unwrap_or(&self.project.tyre)
    }
}

/// One phrase about a set.
#[derive(Debug, Clone)]
pub struct Fact {
    /// What it is said of.
    pub definition: &'static FactDefinition,
    /// The phrase.
    pub words: String,
    /// Whether it is the vehicle's rather than the set's own.
    pub is_of_vehicle: bool,
}

/// Every fact, in the order in which they are said.
pub static FACTS: &[FactDefinition] = &[
    FactDefinition {
        words: |s| vec![format!("spread {}", step_text(s.results.spread))],
        figures: Some(FactFigures::One(
            Key {
                name: "spread",
                meaning: "overall first ÷ overall top gear",
            },
            |s| Some(s.results.spread),
        )),
        is_of_vehicle: |_| false,
        at_bench: None,
    },
    FactDefinition {
        words: |s| widest_drop(s.results).into_iter().collect(),
        figures: Some(FactFigures::One(
            Key {
                name: "widest_drop_share",
                meaning: "largest share of its engine speed that an upshift loses; null with one gear",
            },
            |s| s.results.widest_drop().map(|(_, _, share)| share),
        )),
        is_of_vehicle: |_| false,
        at_bench: None,
    },
    FactDefinition {
        words: |s| vec![final_drives(s.set)],
        // Every gear has its own.
        figures: None,
        is_of_vehicle: |_| false,
        at_bench: Some(|s| vec![final_drives(s.set)]),
    },
    FactDefinition {
        words: |s| {
            s.set
                .stages
                .iter()
                .map(|t| stage(t, Positions::Shown))
                .collect()
        },
        figures: None,
        is_of_vehicle: |_| false,
        // Whoever has the box on the bench has all of its positions there.
        at_bench: Some(|s| {
            s.set
                .stages
                .iter()
                .map(|t| stage(t, Positions::All))
                .collect()
        }),
    },
    FactDefinition {
        words: |s| vec![tyre(s)],
        figures: Some(FactFigures::Several(
            Key {
                name: "tyre",
                meaning: "the tyre that the set stands on",
            },
            TYRE,
        )),
        is_of_vehicle: |s| s.set.tyre.is_none(),
        at_bench: Some(|s| vec![tyre(s)]),
    },
];

const TYRE: &[FactPart] = &[
    FactPart {
        key: Key {
            name: "overall_diameter_mm",
            meaning: "overall diameter without load; null where only the rolling was measured",
        },
        unit: "mm",
        number: |s| s.tyre().overall_diameter_mm(),
    },
    FactPart {
        key: Key {
            name: "rolling_circumference_mm",
            meaning: "distance for one turn under load",
        },
        unit: "mm",
        number: |s| Some(s.tyre().rolling_circumference_mm()),
    },
    FactPart {
        key: Key {
            name: "revs_per_km",
            meaning: "turns in a kilometre",
        },
        unit: "",
        number: |s| Some(s.tyre().revs_per_km()),
    },
    FactPart {
        key: Key {
            name: "revs_per_mile",
            meaning: "turns in a mile",
        },
        unit: "",
        number: |s| Some(s.tyre().revs_per_mile()),
    },
];

/// All that is said of a set.
pub(super) fn facts(set: &ProjectSet<'_>) -> Vec<Fact> {
    let mut facts = Vec::new();
    for definition in FACTS {
        let phrases = (definition.words)(set).into_iter();
        facts.extend(phrases.map(|words| Fact {
            definition,
            words,
            is_of_vehicle: (definition.is_of_vehicle)(set),
        }));
    }
    facts
}

/// The upshift that loses most, `widest 1→2, 46 %`; none with one gear, or where no upshift loses any.
fn widest_drop(set: &SetResults) -> Option<String> {
    let (from, to, share) = set.widest_drop().filter(|(_, _, share)| *share > 0.0)?;
    let [from, to] = [from, to].map(|gear| label_before_mark(&gear.gear.label));
    Some(format!("widest {from}→{to}, {:.0} %", share * 100.0))
}

/// A label in quotation marks where it could not be told from what follows; its own are doubled then.
fn label_before_mark(label: &str) -> Cow<'_, str> {
    if label.contains(['→', ',', ';']) || label.starts_with('"') {
        Cow::Owned(quoted(label))
    } else {
        Cow::Borrowed(label)
    }
}

/// What the page for the bench says of a set, without what is the vehicle's.
pub fn bench_facts(set: &ProjectSet<'_>) -> Vec<String> {
    let own = FACTS.iter().filter(|fact| !(fact.is_of_vehicle)(set));
    let said = own.filter_map(|fact| Some((fact.at_bench?)(set)));
    said.flatten().collect()
}

fn final_drives(set: &GearSet) -> String {
    let finals: Vec<String> = set.final_drives.iter().map(FinalDrive::reading).collect();
    format!("final drive {}", finals.join(" and "))
}

/// Which positions of a stage are named.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Positions {
    /// The one it stands in, and the others where they are shown beside it.
    Shown,
    All,
}

fn stage(stage: &Stage, named: Positions) -> String {
    let present = &stage.positions[stage.present];
    if stage.is_fixed() {
        let ratio = present.ratio.reading();
        return format!("{} {ratio}", name_alone(&stage.name));
    }
    let said = |position: &Position| {
        let ratio = position.ratio.reading();
        format!("{} = {ratio}", name_before(" = ", &position.name))
    };
    let name = name_before(" in ", &stage.name);
    let mut words = format!("{name} in {}", said(present));
    let others = stage.positions.iter().enumerate();
    let others = others.filter(|(at, _)| *at != stage.present);
    let has_others = stage.shows_others || named == Positions::All;
    let others = others.filter(|_| has_others);
    for (_, other) in others {
        words += ", also ";
        words += &said(other);
    }
    words
}

/// How a phrase about a set opens that is not about a stage.
const OPENINGS: [&str; 4] = ["spread ", "widest ", "final drive ", "tyre "];

/// What ends a phrase about a set, wherever these are read back.
const PHRASE_ENDS: [&str; 5] = ["; ", ", spread ", ", widest ", ", final drive ", ", tyre "];

/// The name of a stage with nothing but a ratio after it: in quotation marks where it could not be told
/// from another phrase; its own are doubled then.
fn name_alone(name: &Name) -> String {
    let name = name.as_str();
    let followed = format!("{name} ");
    let could_end = |mark: &&str| followed.contains(mark);
    let is_like_another = OPENINGS.iter().any(|opening| followed.starts_with(opening));
    if [" in ", " = ", "×"]
        .iter()
        .any(|mark| followed.contains(mark))
        || PHRASE_ENDS.iter().any(could_end)
        || is_like_another
        || name.starts_with('"')
    {
        quoted(name)
    } else {
        name.to_owned()
    }
}

fn quoted(name: &str) -> String {
    format!("\"{}\"", name.replace('"', "\"\""))
}

/// A name with `behind` after it: in quotation marks where it could not be told from what follows, or
/// from another phrase; its own are doubled then.
fn name_before(behind: &str, name: &Name) -> String {
    let name = name.as_str();
    let followed = format!("{name}{behind}");
    let ends_early = followed.find(behind) != Some(name.len());
    let is_like_another = OPENINGS.iter().any(|opening| followed.starts_with(opening));
    if ends_early || is_like_another || name.contains("; ") || name.starts_with('"') {
        quoted(name)
    } else {
        name.to_owned()
    }
}

fn tyre(set: &ProjectSet<'_>) -> String {
    let circumference = mm_text(set.results.drivetrain.rolling_circumference_mm);
    format!("tyre {}, rolls {circumference} mm a turn", set.tyre())
}
