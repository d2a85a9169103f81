//! Format 1: its types, and their way to and from those of format 2.
//!
//! It is frozen: what it could say it says for ever, and a file of it is spelled as it always was.

mod set;
mod stage;
mod tyre;
mod write_up;

use super::shared::misfit::Misfit;
use super::shared::text::parsed;
use super::shared::values::{Kmh, NameText, NoteText, Rpm};
use super::shared::vehicle::{EngineEntry, UnitsEntry};
use super::v2::{self, ProjectV2};
use super::{FormatError, Place};
use crate::project::document::Project;
use serde::{Deserialize, Serialize};
use set::SetV1;
use tyre::TyreV1;
use write_up::WriteUpV1;

/// A whole file. Keys that may be absent are skipped when there is nothing to say.
#[derive(Serialize, Deserialize)]
#[serde(rename = "Project", deny_unknown_fields)]
pub(super) struct ProjectV1 {
    format: u32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    title: Option<NameText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    date: Option<NameText>,
    #[serde(default, skip_serializing_if = "NoteText::is_empty")]
    note: NoteText,
    units: UnitsEntry,
    tyre: TyreV1,
    engine: EngineEntry,
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

/// A file of format 2 says something that format 1 cannot say.
#[derive(Debug, Clone, Copy)]
pub(super) struct BeyondFormat1;

/// The project in a text of format 1.
///
/// # Errors
/// When the text is broken or of format 2, with the place; or when parts that are valid do not fit
/// together.
pub(super) fn read(text: &str) -> Result<Project, FormatError> {
    let file: ProjectV1 = parsed(text).map_err(|error| match v2::own_word(&error, text) {
        Some(word) => FormatError::Broken(Place::beyond_format_1(word, &error)),
        None => FormatError::broken(error, text),
    })?;
    let project = ProjectV2::from(file).into_project();
    project.map_err(|misfit: Misfit| misfit.told_in(text))
}

impl From<ProjectV1> for ProjectV2 {
    fn from(file: ProjectV1) -> Self {
        Self {
            format: 2,
            title: file.title,
            date: file.date,
            note: file.note,
            units: file.units,
            tyre: file.tyre.into(),
            engine: file.engine,
            marked_engine_speeds_rpm: file.marked_engine_speeds_rpm,
            marked_road_speeds_kmh: file.marked_road_speeds_kmh,
            baseline: file.baseline,
            write_up: file.write_up.map(Into::into),
            technical: None,
            workshop: None,
            sets: file.sets.into_iter().map(Into::into).collect(),
        }
    }
}

impl TryFrom<ProjectV2> for ProjectV1 {
    type Error = BeyondFormat1;

    fn try_from(file: ProjectV2) -> Result<Self, BeyondFormat1> {
        if file.technical.is_some() || file.workshop.is_some() {
            return Err(BeyondFormat1);
        }
        let sets = file.sets.into_iter().map(SetV1::try_from);
        Ok(Self {
            format: 1,
            title: file.title,
            date: file.date,
            note: file.note,
            units: file.units,
            tyre: file.tyre.try_into()?,
            engine: file.engine,
            marked_engine_speeds_rpm: file.marked_engine_speeds_rpm,
            marked_road_speeds_kmh: file.marked_road_speeds_kmh,
            baseline: file.baseline,
            write_up: file.write_up.map(WriteUpV1::try_from).transpose()?,
            sets: sets.collect::<Result<_, _>>()?,
        })
    }
}
