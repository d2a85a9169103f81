//! Format 2: its types, and their way to and from the domain.
//!
//! It is format 1, the service description of tyres, chains as final drives, technical data, liveries of
//! sets, and the workshop. Its keys are complete for what stands, all of them in the README; until a program
//! that writes it is released, they may still change. From then on it is frozen like format 1, and what comes
//! next is a format of its own.

pub(super) mod engine;
#[cfg(test)]
mod every_key;
pub(super) mod final_drive;
mod limits;
mod livery;
mod same_words;
pub(super) mod set;
pub(super) mod speedometer;
pub(super) mod stage;
pub(super) mod technical;
pub(super) mod tyre;
pub(super) mod vehicle;
mod workshop;
pub(super) mod write_up;

use super::FormatError;
use super::outline::Step::{Item, Key};
use super::shared::misfit::Misfit;
use super::shared::text::parsed;
use super::shared::values::{Kmh, NameText, NoteText, Rpm};
use super::shared::vehicle::{EngineEntry, UnitsEntry};
use crate::project::document::{Candidates, CandidatesError, Marks, Project};
use ron::error::SpannedError;
use serde::{Deserialize, Serialize};
use set::SetV2;
use technical::TechnicalV2;
use tyre::TyreV2;
use workshop::WorkshopV2;
use write_up::WriteUpV2;

/// A whole file. Keys that may be absent are skipped when there is nothing to say.
#[derive(Serialize, Deserialize)]
#[serde(rename = "Project", deny_unknown_fields)]
pub(super) struct ProjectV2 {
    pub(super) format: u32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) title: Option<NameText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) date: Option<NameText>,
    #[serde(default, skip_serializing_if = "NoteText::is_empty")]
    pub(super) note: NoteText,
    pub(super) units: UnitsEntry,
    pub(super) tyre: TyreV2,
    pub(super) engine: EngineEntry,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) marked_engine_speeds_rpm: Vec<Rpm>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) marked_road_speeds_kmh: Vec<Kmh>,
    /// Counted from 1.
    pub(super) baseline: usize,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) write_up: Option<WriteUpV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) technical: Option<TechnicalV2>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) workshop: Option<WorkshopV2>,
    pub(super) sets: Vec<SetV2>,
}

/// The project in a text of format 2.
///
/// # Errors
/// When the text is broken, with the place; or when parts that are valid do not fit together.
pub(super) fn read(text: &str) -> Result<Project, FormatError> {
    let file: ProjectV2 = parsed(text).map_err(|error| FormatError::broken(error, text))?;
    file.into_project().map_err(|misfit| misfit.told_in(text))
}

/// The word at which the types of format 1 stopped in `text`, where those of format 2 do not.
pub(super) fn own_word<'a>(error: &'a SpannedError, text: &str) -> Option<&'a str> {
    let (ron::Error::NoSuchStructField { found, .. } | ron::Error::NoSuchEnumVariant { found, .. }) =
        &error.code
    else {
        return None;
    };
    let place = |error: &SpannedError| (error.span.end.line, error.span.end.col);
    let goes_on = match parsed::<ProjectV2>(text) {
        Ok(_) => true,
        Err(theirs) => place(&theirs) > place(error),
    };
    goes_on.then_some(found.as_str())
}

impl ProjectV2 {
    /// The project that the file holds.
    ///
    /// # Errors
    /// When parts that are valid do not fit together.
    pub(super) fn into_project(self) -> Result<Project, Misfit> {
        let sets: Result<Vec<_>, Misfit> = (0..)
            .zip(self.sets)
            .map(|(place, set)| {
                let (visible, livery) = (set.visible, set.livery.map(|number| number.0));
                let (set, technical) = set.into_parts().map_err(|mut misfit| {
                    misfit.reason = format!("set {}: {}", place + 1, misfit.reason);
                    misfit.within([Key("sets"), Item(place)])
                })?;
                Ok(((set, visible, livery), technical))
            })
            .collect();
        let baseline = self.baseline.checked_sub(1);
        let baseline =
            baseline.ok_or_else(|| Misfit::new([Key("baseline")], &"sets are counted from 1"))?;
        let (sets, technical_of_sets): (Vec<_>, Vec<_>) = sets?.into_iter().unzip();
        let sets = Candidates::with_liveries(sets, baseline).map_err(|error| match error {
            CandidatesError::NoSuchBaseline { .. } => Misfit::new([Key("baseline")], &error),
            CandidatesError::SameLivery { set, .. } => {
                Misfit::new([Key("sets"), Item(set - 1), Key("livery")], &error)
            }
            CandidatesError::Count(_) | CandidatesError::NoSuchSet => {
                Misfit::new([Key("sets")], &error)
            }
        })?;
        let sets = sets.with_technical(technical_of_sets);
        let technical = self.technical.map(|data| data.into_data(&sets));
        let workshop = self.workshop.map(|file| file.into_workshop(&sets));
        let write_up = self.write_up.map(|choices| choices.into_write_up(&sets));
        let many = |key| move |error| Misfit::new([Key(key)], &error);
        Ok(Project {
            title: self.title.map(|t| t.0),
            date: self.date.map(|t| t.0),
            note: self.note.0,
            units: self.units.into(),
            tyre: self.tyre.into(),
            engine: self.engine.into(),
            marked_engine_speeds: Marks::new(
                self.marked_engine_speeds_rpm.iter().map(|n| n.0).collect(),
            )
            .map_err(many("marked_engine_speeds_rpm"))?,
            marked_road_speeds: Marks::new(
                self.marked_road_speeds_kmh.iter().map(|v| v.0).collect(),
            )
            .map_err(many("marked_road_speeds_kmh"))?,
            technical: technical.transpose()?.unwrap_or_default(),
            workshop: workshop.transpose()?.unwrap_or_default(),
            write_up: write_up.transpose()?.unwrap_or_default(),
            sets,
        })
    }
}

impl From<&Project> for ProjectV2 {
    fn from(project: &Project) -> Self {
        let engine_speeds = project.marked_engine_speeds.as_slice();
        let road_speeds = project.marked_road_speeds.as_slice();
        Self {
            format: 2,
            title: project.title.clone().map(NameText),
            date: project.date.clone().map(NameText),
            note: NoteText(project.note.clone()),
            units: project.units.into(),
            tyre: (&project.tyre).into(),
            engine: project.engine.into(),
            marked_engine_speeds_rpm: engine_speeds.iter().copied().map(Rpm).collect(),
            marked_road_speeds_kmh: road_speeds.iter().copied().map(Kmh).collect(),
            baseline: project.sets.baseline_place() + 1,
            write_up: WriteUpV2::of(&project.write_up, &project.sets),
            technical: TechnicalV2::of(&project.technical, &project.sets),
            workshop: WorkshopV2::of(&project.workshop, &project.sets),
            sets: (0..)
                .zip(&project.sets)
                .map(|(place, candidate)| SetV2::of(place, candidate))
                .collect(),
        }
    }
}
