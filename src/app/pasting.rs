//! What becomes of a project when pasted sets, and what else their text says, are taken?

use crate::gearing::{EngineSpeed, GearSet, GearSetSpec, Name, Tyre};
use crate::import::gears::{Offered, PastedSet, pasted_parts};
use crate::import::tables::{Missing, OwnSet};
use crate::project::{Candidates, Edit, Project, SetEdit, SetId, TypedFigure};

/// What pasted sets go into.
pub(super) struct PasteTarget<'a> {
    /// The selected set: what a text does not say stays with it or is copied from it.
    pub(super) before: &'a GearSet,
    /// The vehicle's tyre.
    pub(super) tyre: &'a Tyre,
    /// How many sets can be added.
    pub(super) free: usize,
}

impl<'a> PasteTarget<'a> {
    /// The set of that identity, or the baseline where it is gone.
    pub(super) fn of(project: &'a Project, selected: SetId) -> Self {
        let candidate = project.sets.get(selected);
        let candidate = candidate.unwrap_or_else(|| project.sets.baseline());
        Self {
            before: &candidate.set,
            tyre: &project.tyre,
            free: Candidates::MOST - project.sets.len(),
        }
    }
}

/// A set of a pasted text.
pub(super) enum TakenSet {
    /// As somebody has written it.
    Foreign(PastedSet),
    /// Out of one of the program's own tables: it brings nearly all of itself.
    Own(OwnSet),
}

impl TakenSet {
    /// What the text calls it.
    fn name(&self) -> Option<&str> {
        match self {
            Self::Foreign(set) => set.name.as_deref(),
            Self::Own(set) => Some(set.name.as_str()),
        }
    }

    /// Its parts, those that the text lacks as they are in the set `before`.
    ///
    /// # Errors
    /// A sentence, when something is missing or does not fit.
    fn parts(&self, before: &GearSet, tyre: &Tyre) -> Result<GearSetSpec, String> {
        match self {
            Self::Foreign(set) => {
                pasted_parts(before, set, Some(tyre)).map_err(|why| why.to_string())
            }
            Self::Own(set) => own_set(set, before).map(|set| set.to_spec()),
        }
    }
}

/// A set of one of the program's own tables; final drives and shift point that were left out of the
/// table are those of the set `before`.
///
/// # Errors
/// A sentence, when its parts do not fit together.
pub(super) fn own_set(set: &OwnSet, before: &GearSet) -> Result<GearSet, String> {
    let missing = Missing {
        final_drives: before.final_drives.clone(),
        shift: before.shift,
    };
    set.gear_set(&missing).map_err(|why| why.to_string())
}

/// What is wanted of a pasted text.
pub(super) struct Taken {
    /// The sets, corrected.
    pub(super) sets: Vec<TakenSet>,
    /// What else is wanted.
    pub(super) offers: Vec<Offered>,
    /// Where the sets go.
    pub(super) place: Place,
}

/// Where pasted sets go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    /// The first takes the place of the selected set, the others follow it.
    Selected,
    /// Each becomes a set of its own behind the selected one.
    New,
}

/// The project with all that is wanted, and the first of its pasted sets. The figures that were typed
/// for other gears stay on another tyre.
///
/// # Errors
/// A sentence, when a set cannot be or has no room; nothing is taken then.
pub(super) fn with_pasted(
    project: &Project,
    selected: SetId,
    taken: &Taken,
    figures: &[TypedFigure],
) -> Result<(Project, SetId), String> {
    let mut after = project.clone();
    for offered in &taken.offers {
        let edit = match *offered {
            Offered::Tyre(tyre) => Edit::Tyre(tyre).keeping(figures.to_vec()),
            Offered::Redline(redline) => Edit::Redline(redline),
            Offered::ShiftPoint(_) => continue,
        };
        apply(&mut after, &edit)?;
    }
    let before = PasteTarget::of(project, selected).before;
    let parts = |set: &TakenSet, tyre: &Tyre| -> Result<GearSetSpec, String> {
        let mut parts = set.parts(before, tyre)?;
        if let Some(shift) = shift_point(&taken.offers) {
            parts.shift = shift;
        }
        Ok(parts)
    };
    let mut sets = taken.sets.iter();
    let mut placed = Vec::new();
    if taken.place == Place::Selected
        && let Some(set) = sets.next()
    {
        let mut parts = parts(set, &after.tyre)?;
        if let Some(name) = set.name() {
            parts.name = free_name(Some(name), &after.sets).unwrap_or(parts.name);
        }
        let edit = SetEdit::Replace(Box::new(parts));
        apply(&mut after, &Edit::Set(selected, edit))?;
        placed.push(selected);
    }
    for set in sets {
        let mut parts = parts(set, &after.tyre)?;
        parts.name = free_name(set.name(), &after.sets).unwrap_or(parts.name);
        let set = GearSet::try_from(parts).map_err(|why| why.to_string())?;
        let behind = placed.last().copied().unwrap_or(selected);
        apply(&mut after, &Edit::AddSet(behind, Box::new(set)))?;
        let place = after.sets.place(behind).map(|place| place + 1);
        placed.extend(place.and_then(|at| after.sets.iter().nth(at)).map(|c| c.id));
    }
    Ok((after, placed.first().copied().unwrap_or(selected)))
}

fn apply(project: &mut Project, edit: &Edit) -> Result<(), String> {
    *project = edit.applied_to(project).map_err(|why| why.to_string())?;
    Ok(())
}

fn shift_point(offers: &[Offered]) -> Option<EngineSpeed> {
    offers.iter().find_map(|offered| match offered {
        Offered::ShiftPoint(shift) => Some(*shift),
        _ => None,
    })
}

/// The name that a text gives a set, told from those of the others.
fn free_name(name: Option<&str>, sets: &Candidates) -> Option<Name> {
    let name = name.unwrap_or("Pasted set");
    let is_taken = |name: &Name| sets.iter().any(|c| c.set.name == *name);
    let names = (1..=Candidates::MOST + 1).map(|n| match n {
        1 => name.to_owned(),
        n => format!("{name} {n}"),
    });
    names
        .filter_map(|name| Name::new(&name).ok())
        .find(|name| !is_taken(name))
}
