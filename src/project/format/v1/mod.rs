//! Format 1: the file's own types and their way to and from the domain.

mod set;
mod tyre;
mod values;
mod write_up;

use super::{FormatError, Place, WriteError, options};
use crate::gearing::EngineLimits;
use crate::project::document::{Candidates, Marks, Project};
use crate::units::SpeedUnit;
use ron::ser::PrettyConfig;
use serde::{Deserialize, Serialize};
use set::SetV1;
use tyre::TyreV1;
use values::{Kmh, NameText, NoteText, Rpm};
use write_up::WriteUpV1;

/// A whole file. Keys that may be absent are skipped when there is nothing to say.
#[derive(Serialize, Deserialize)]
#[serde(rename = "Project", deny_unknown_fields)]
struct ProjectV1 {
    format: u32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    title: Option<NameText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    date: Option<NameText>,
    #[serde(default, skip_serializing_if = "NoteText::is_empty")]
    note: NoteText,
    units: UnitsV1,
    tyre: TyreV1,
    engine: EngineV1,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    marked_engine_speeds_rpm: Vec<Rpm>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    marked_road_speeds_kmh: Vec<Kmh>,
    /// Counted from 1.
    baseline: usize,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    write_up: Option<WriteUpV1>,
    sets: Vec<SetV1>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Units")]
enum UnitsV1 {
    Kmh,
    Mph,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Engine", deny_unknown_fields)]
#[expect(
    clippy::struct_field_names,
    reason = "the keys of the file carry their unit"
)]
struct EngineV1 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    idle_rpm: Option<Rpm>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    lowest_useful_rpm: Option<Rpm>,
    redline_rpm: Rpm,
}

/// The project in a text of format 1.
///
/// # Errors
/// When the text is broken, with the place; or when parts that are valid do not fit together.
pub(super) fn read(text: &str) -> Result<Project, FormatError> {
    let file: ProjectV1 = options()
        .from_str(text)
        .map_err(|error| FormatError::Broken(error.into()))?;
    file.into_project().map_err(|reason| {
        let (line, column) = place_of_sets(text);
        FormatError::Broken(Place {
            line,
            column,
            reason,
        })
    })
}

/// The text of a project in format 1.
///
/// # Errors
/// When the serialiser gives up.
pub(super) fn write(project: &Project) -> Result<String, WriteError> {
    let layout = PrettyConfig::new()
        .new_line("\n")
        .indentor("    ")
        .depth_limit(4)
        .escape_strings(true);
    let mut text = options().to_string_pretty(&ProjectV1::from(project), layout)?;
    text.push('\n');
    Ok(text)
}

/// Where the list of sets begins: parts that do not fit together have no place of their own.
///
/// Only a key that opens its line counts: the same letters may stand within a title.
fn place_of_sets(text: &str) -> (usize, usize) {
    let mut lines = (1..).zip(text.lines());
    let found = lines.find_map(|(number, line)| {
        let key = line.trim_start();
        let indent = line.chars().count() - key.chars().count();
        key.starts_with("sets:").then_some((number, indent + 1))
    });
    found.unwrap_or((1, 1))
}

impl ProjectV1 {
    fn into_project(self) -> Result<Project, String> {
        let sets: Result<Vec<_>, String> = (1..)
            .zip(self.sets)
            .map(|(number, set)| {
                let visible = set.visible;
                let set = set.into_gear_set();
                let set = set.map_err(|reason| format!("set {number}: {reason}"))?;
                Ok((set, visible))
            })
            .collect();
        let baseline = self
            .baseline
            .checked_sub(1)
            .ok_or("sets are counted from 1")?;
        let told = |e: &dyn std::error::Error| e.to_string();
        let sets = Candidates::new(sets?, baseline).map_err(|e| told(&e))?;
        let write_up = self.write_up.map(|choices| choices.into_write_up(&sets));
        Ok(Project {
            title: self.title.map(|t| t.0),
            date: self.date.map(|t| t.0),
            note: self.note.0,
            units: self.units.into(),
            tyre: self.tyre.into(),
            engine: EngineLimits {
                idle: self.engine.idle_rpm.map(|n| n.0),
                lowest_useful: self.engine.lowest_useful_rpm.map(|n| n.0),
                redline: self.engine.redline_rpm.0,
            },
            marked_engine_speeds: Marks::new(
                self.marked_engine_speeds_rpm.iter().map(|n| n.0).collect(),
            )
            .map_err(|e| told(&e))?,
            marked_road_speeds: Marks::new(
                self.marked_road_speeds_kmh.iter().map(|v| v.0).collect(),
            )
            .map_err(|e| told(&e))?,
            write_up: write_up.transpose()?.unwrap_or_default(),
            sets,
        })
    }
}

impl From<&Project> for ProjectV1 {
    fn from(project: &Project) -> Self {
        let engine_speeds = project.marked_engine_speeds.as_slice();
        let road_speeds = project.marked_road_speeds.as_slice();
        Self {
            format: 1,
            title: project.title.clone().map(NameText),
            date: project.date.clone().map(NameText),
            note: NoteText(project.note.clone()),
            units: project.units.into(),
            tyre: (&project.tyre).into(),
            engine: EngineV1 {
                idle_rpm: project.engine.idle.map(Rpm),
                lowest_useful_rpm: project.engine.lowest_useful.map(Rpm),
                redline_rpm: Rpm(project.engine.redline),
            },
            marked_engine_speeds_rpm: engine_speeds.iter().copied().map(Rpm).collect(),
            marked_road_speeds_kmh: road_speeds.iter().copied().map(Kmh).collect(),
            baseline: project.sets.baseline_place() + 1,
            write_up: WriteUpV1::of(&project.write_up, &project.sets),
            sets: project.sets.iter().map(SetV1::from).collect(),
        }
    }
}

impl From<UnitsV1> for SpeedUnit {
    fn from(units: UnitsV1) -> Self {
        match units {
            UnitsV1::Kmh => Self::Kmh,
            UnitsV1::Mph => Self::Mph,
        }
    }
}

impl From<SpeedUnit> for UnitsV1 {
    fn from(units: SpeedUnit) -> Self {
        match units {
            SpeedUnit::Kmh => Self::Kmh,
            SpeedUnit::Mph => Self::Mph,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_title_that_speaks_of_sets_is_not_taken_for_their_place() {
        let text = "(\n  title: \"Two sets: which?\",\n  sets: [],\n)";
        assert_eq!(place_of_sets(text), (3, 3));
    }
}
