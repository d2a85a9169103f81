//! Format 1: the file's own types and their way to and from the domain.

mod misfit;
mod set;
mod tyre;
mod values;
mod write_up;

use super::outline::Step::{Item, Key};
use super::outline::place_of;
use super::{FormatError, Place, WriteError, options};
use crate::gearing::EngineLimits;
use crate::project::document::{Candidates, CandidatesError, Marks, Project};
use crate::units::SpeedUnit;
use misfit::Misfit;
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
        .map_err(|error| FormatError::Broken(Place::of(error, text)))?;
    file.into_project().map_err(|Misfit { path, reason }| {
        let (line, column) = place_of(text, &path);
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

impl ProjectV1 {
    fn into_project(self) -> Result<Project, Misfit> {
        let sets: Result<Vec<_>, Misfit> = (0..)
            .zip(self.sets)
            .map(|(place, set)| {
                let visible = set.visible;
                let set = set.into_gear_set().map_err(|mut misfit| {
                    misfit.reason = format!("set {}: {}", place + 1, misfit.reason);
                    misfit.within([Key("sets"), Item(place)])
                })?;
                Ok((set, visible))
            })
            .collect();
        let baseline = self.baseline.checked_sub(1);
        let baseline =
            baseline.ok_or_else(|| Misfit::new([Key("baseline")], &"sets are counted from 1"))?;
        let sets = Candidates::new(sets?, baseline).map_err(|error| match error {
            CandidatesError::NoSuchBaseline { .. } => Misfit::new([Key("baseline")], &error),
            _ => Misfit::new([Key("sets")], &error),
        })?;
        let write_up = self.write_up.map(|choices| choices.into_write_up(&sets));
        let many = |key| move |error| Misfit::new([Key(key)], &error);
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
            .map_err(many("marked_engine_speeds_rpm"))?,
            marked_road_speeds: Marks::new(
                self.marked_road_speeds_kmh.iter().map(|v| v.0).collect(),
            )
            .map_err(many("marked_road_speeds_kmh"))?,
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
