//! Which gears have a row, in which order? Those of a set as it stands, then those of every other position
//! that it shows.

use super::definition::SetGear;
use super::typed::TypedGear;
use crate::analysis::ProjectResults;
use crate::gearing::{OtherPosition, SetResults};
use crate::project::{Candidate, Project};

/// A gear that has a row of its own.
#[derive(Debug, Clone, Copy)]
pub struct RowGear<'a> {
    /// Its figures.
    pub figures: SetGear<'a>,
    /// What was typed about it.
    pub typed: TypedGear<'a>,
    /// Which of the other positions it is in, counted from 0.
    pub other: Option<usize>,
}

impl<'a> RowGear<'a> {
    /// All that a set of a project has, the set by its place.
    pub fn all(
        project: &'a Project,
        candidate: &'a Candidate,
        results: &'a ProjectResults,
        place: usize,
    ) -> Vec<Self> {
        let is_baseline = project.sets.baseline_place() == place;
        let typed: Vec<TypedGear<'a>> =
            TypedGear::all(project, &candidate.set, is_baseline).collect();
        let present = results.sets.get(place).map(|set| (None, &**set));
        let others = results.other_positions(project, place).iter().enumerate();
        let others = others.map(|(at, other)| (Some((at, other)), &other.results));
        let mut rows = Vec::with_capacity(typed.len());
        for (other, set) in present.into_iter().chain(others) {
            rows.extend(rows_of(&typed, set, other));
        }
        rows
    }
}

/// The rows of the gears that those figures are of.
fn rows_of<'a>(
    typed: &[TypedGear<'a>],
    set: &'a SetResults,
    other: Option<(usize, &'a OtherPosition)>,
) -> impl Iterator<Item = RowGear<'a>> {
    SetGear::all(set).filter_map(move |figures| {
        let id = figures.gear.gear.id;
        let typed = typed.iter().find(|typed| typed.id() == id)?;
        Some(RowGear {
            figures,
            typed: TypedGear {
                position: other.map(|(_, other)| other.name.as_str()),
                ..*typed
            },
            other: other.map(|(at, _)| at),
        })
    })
}
