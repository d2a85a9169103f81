//! The reference of JSON keys: every key with its meaning and its unit.

use crate::chart::table::{COLUMNS, ColumnDefinition, FACTS, FactFigures, Holds, Key, Measure};

/// What stands before and around the figures: path and meaning.
const HEAD: [(&str, &str); 4] = [
    ("format", "number of this format: 1"),
    ("title", "title of the project, empty where it has none"),
    ("sets", "the gear sets in their order"),
    ("sets[].name", "name of the set"),
];

const OTHER_POSITIONS: [(&str, &str); 4] = [
    (
        "sets[].other_positions",
        "the set in every other position of the stages that show these; mostly empty",
    ),
    (
        "sets[].other_positions[].position",
        "what the position is called, of several stages together",
    ),
    (
        "sets[].other_positions[].gears",
        "the gears that are others there, with the keys of a gear",
    ),
    (
        "sets[].other_positions[].reverse",
        "the reverse gear, where it is another; else null",
    ),
];

const FINDINGS: [(&str, &str); 5] = [
    ("findings", "what is valid but strange"),
    (
        "findings[].set",
        "number of the set, counted from 1; null where it is about the vehicle",
    ),
    (
        "findings[].gear",
        "label of the gear; null where it is about the whole set or the vehicle",
    ),
    ("findings[].kind", "its kind, for programs"),
    ("findings[].finding", "its sentence, for readers"),
];

/// The key of the engine speed that was asked for.
pub(super) const ENGINE_SPEED: Key = Key {
    name: "engine_rpm",
    meaning: "engine speed that was asked for",
};

/// The key of the road speed that was asked for.
pub(super) const ROAD_SPEED: Key = Key {
    name: "speed_kmh",
    meaning: "road speed that was asked for",
};

/// Every key of the output with its meaning and, in brackets, its unit, in the order of the output.
///
/// `sets[].gears[].gear` is the key `gear` of each entry of `gears` of each entry of `sets`.
pub fn key_reference() -> Vec<(String, String)> {
    reference_with(COLUMNS)
}

/// The same with these columns.
pub(in crate::sheet) fn reference_with(definitions: &[&ColumnDefinition]) -> Vec<(String, String)> {
    let mut reference = Reference(Vec::new());
    for (path, meaning) in HEAD {
        reference.row(path, meaning, "");
    }
    reference.facts();
    reference.gears(definitions);
    reference.row("sets[].reverse", &of_reverse(definitions), "");
    for (path, meaning) in OTHER_POSITIONS.into_iter().chain(FINDINGS) {
        reference.row(path, meaning, "");
    }
    reference.0
}

/// The rows as far as they are written.
struct Reference(Vec<(String, String)>);

impl Reference {
    fn row(&mut self, path: &str, meaning: &str, unit: &str) {
        let meaning = match unit {
            "" => meaning.to_owned(),
            unit => format!("{meaning} ({unit})"),
        };
        self.0.push((path.to_owned(), meaning));
    }

    fn facts(&mut self) {
        for figures in FACTS.iter().filter_map(|fact| fact.figures) {
            match figures {
                FactFigures::One(key, _) => {
                    self.row(&format!("sets[].{}", key.name), key.meaning, "");
                }
                FactFigures::Several(key, parts) => {
                    let path = format!("sets[].{}", key.name);
                    self.row(&path, key.meaning, "");
                    for part in parts {
                        let path = format!("{path}.{}", part.key.name);
                        self.row(&path, part.key.meaning, part.unit);
                    }
                }
            }
        }
    }

    /// Single values first, then the lists, as in the output.
    fn gears(&mut self, definitions: &[&ColumnDefinition]) {
        self.row("sets[].gears", "forward gears in typed order", "");
        let mut lists = Self(Vec::new());
        for definition in definitions {
            let Some(meaning) = definition.meaning else {
                continue;
            };
            let path = format!("sets[].gears[].{}", definition.key);
            match definition.holds {
                Holds::Label => self.row(&path, meaning, ""),
                Holds::TypedRatio => self.row(&path, meaning, Measure::Ratio.inner_unit()),
                Holds::Number(measure, _) | Holds::AtIdle(measure, _) => {
                    self.row(&path, meaning, measure.inner_unit());
                }
                Holds::AtEngineSpeeds(measure, _, key) => {
                    lists.list(&path, meaning, (ENGINE_SPEED, "rpm"), (key, measure));
                }
                Holds::AtRoadSpeeds(measure, _, key) => {
                    lists.list(&path, meaning, (ROAD_SPEED, "km/h"), (key, measure));
                }
            }
        }
        self.0.append(&mut lists.0);
    }

    fn list(&mut self, path: &str, meaning: &str, asked: (Key, &str), found: (Key, Measure)) {
        self.row(path, meaning, "");
        let (key, unit) = asked;
        self.row(&format!("{path}[].{}", key.name), key.meaning, unit);
        let (key, measure) = found;
        let unit = measure.inner_unit();
        self.row(&format!("{path}[].{}", key.name), key.meaning, unit);
    }
}

/// What the reverse gear has, and what it has not.
fn of_reverse(definitions: &[&ColumnDefinition]) -> String {
    let is_missing = |d: &&&ColumnDefinition| d.is_forward_only && d.meaning.is_some();
    let missing: Vec<&str> = definitions
        .iter()
        .filter(is_missing)
        .map(|d| d.key)
        .collect();
    let missing = match missing.as_slice() {
        [] => String::new(),
        [key] => format!(" except {key}"),
        [keys @ .., last] => format!(" except {} and {last}", keys.join(", ")),
    };
    format!("the reverse gear, with the keys of a gear{missing}; null where there is none")
}
