//! What becomes of a project when pasted sets, and what else their text says, are taken?

use crate::gearing::{EngineSpeed, GearId, GearSet, GearSetSpec, Name, Tyre};
use crate::import::gears::{FigureKind, Offered, PastedSet, pasted_parts};
use crate::import::tables::{Missing, OwnSet};
use crate::project::{Candidate, Candidates, Edit, Figure, Project, SetEdit, SetId, TypedFigure};

/// What pasted sets go into.
pub(super) struct PasteTarget<'a> {
    /// The selected set: what a text does not say stays with it or is copied from it.
    pub(super) before: &'a GearSet,
    /// Its number.
    pub(super) number: usize,
    /// Whether the project has a title.
    pub(super) has_title: bool,
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
            number: project.sets.place(candidate.id).map_or(1, |at| at + 1),
            has_title: project.title.is_some(),
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
    /// The title of a table of the program, for a project without one.
    pub(super) title: Option<Name>,
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

/// What comes of it.
pub(super) struct Pasting {
    /// The project with all that is wanted.
    pub(super) project: Project,
    /// Its pasted sets, in their order; at least one.
    pub(super) placed: Vec<SetId>,
}

/// The project with all that is wanted. The figures that were typed for other gears stay on another
/// tyre.
///
/// # Errors
/// A sentence, when a set cannot be or has no room; nothing is taken then.
pub(super) fn with_pasted(
    project: &Project,
    selected: SetId,
    taken: &Taken,
    figures: &[TypedFigure],
) -> Result<Pasting, String> {
    let mut after = project.clone();
    for offered in &taken.offers {
        let edit = match *offered {
            Offered::Tyre(tyre) => Edit::Tyre(tyre).keeping(figures.to_vec()),
            Offered::Redline(redline) => Edit::Redline(redline),
            Offered::ShiftPoint(_) => continue,
        };
        apply(&mut after, &edit)?;
    }
    if taken.title.is_some() {
        apply(&mut after, &Edit::Title(taken.title.clone()))?;
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
            let others = after.sets.iter().filter(|c| c.id != selected);
            parts.name = free_name(name, others).unwrap_or(parts.name);
        }
        let edit = SetEdit::Replace(Box::new(parts));
        apply(&mut after, &Edit::Set(selected, edit))?;
        placed.push(selected);
    }
    for set in sets {
        let mut parts = parts(set, &after.tyre)?;
        let name = set.name().unwrap_or(UNNAMED);
        parts.name = free_name(name, after.sets.iter()).unwrap_or(parts.name);
        let set = GearSet::try_from(parts).map_err(|why| why.to_string())?;
        let behind = placed.last().copied().unwrap_or(selected);
        apply(&mut after, &Edit::AddSet(behind, Box::new(set)))?;
        let place = after.sets.place(behind).map(|place| place + 1);
        placed.extend(place.and_then(|at| after.sets.iter().nth(at)).map(|c| c.id));
    }
    Ok(Pasting {
        project: after,
        placed,
    })
}

impl Pasting {
    /// What was pasted in the place of gear ratios: figures that stay when what is behind the gears
    /// changes.
    pub(super) fn figures(&self, taken: &Taken) -> Vec<TypedFigure> {
        let sets = self.placed.iter().zip(&taken.sets);
        sets.flat_map(|(id, set)| self.figures_of(*id, set))
            .collect()
    }

    fn figures_of(&self, id: SetId, set: &TakenSet) -> Vec<TypedFigure> {
        let (TakenSet::Foreign(pasted), Some(placed)) = (set, self.project.sets.get(id)) else {
            return Vec::new();
        };
        let figure = |value: f64| match pasted.kind {
            FigureKind::GearRatio => None,
            FigureKind::Overall => Some(Figure::Overall(value)),
            FigureKind::SpeedPer1000(unit) => Some(Figure::SpeedPer1000(value, unit)),
        };
        let (gears, _, reverse) = pasted.figures();
        let ids = placed.set.gears.iter().map(|gear| gear.id);
        let gears = ids.zip(&gears);
        let all = gears.chain(reverse.iter().map(|ratio| (GearId::REVERSE, ratio)));
        all.filter_map(|(gear, ratio)| {
            Some(TypedFigure {
                set: id,
                gear,
                figure: figure(ratio.value())?,
            })
        })
        .collect()
    }

    /// What came, and what went with the set `before` in whose place it came.
    pub(super) fn told(&self, before: &Project, place: Place) -> String {
        let came = self.placed.iter().filter_map(|id| {
            let number = self.project.sets.place(*id)? + 1;
            let gears = match self.project.sets.get(*id)?.set.gears.len() {
                1 => "1 gear".to_owned(),
                n => format!("{n} gears"),
            };
            Some(format!("set {number}: {gears} pasted"))
        });
        let came: Vec<String> = came.collect();
        let gone = self.reverse_gone(before);
        let gone = match (place, gone) {
            (Place::Selected, Some(ratio)) => {
                format!(", its reverse {ratio} is gone; Undo brings it back")
            }
            (Place::Selected, None) => "; Undo brings back what was there".to_owned(),
            (Place::New, _) => String::new(),
        };
        came.join(", ") + &gone
    }

    /// The reverse gear of the set in whose place another came that has none.
    fn reverse_gone(&self, before: &Project) -> Option<String> {
        let id = *self.placed.first()?;
        let had = before.sets.get(id)?.set.reverse.as_ref()?;
        let has = self.project.sets.get(id)?.set.reverse.as_ref();
        has.is_none().then(|| had.ratio.to_string())
    }
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

/// What a new set is called whose text has no name for it.
pub(super) const UNNAMED: &str = "Pasted set";

/// The name of a set, told from those of the others.
fn free_name<'a>(name: &str, others: impl Iterator<Item = &'a Candidate>) -> Option<Name> {
    let taken: Vec<&Name> = others.map(|candidate| &candidate.set.name).collect();
    let names = (1..=Candidates::MOST + 1).map(|n| match n {
        1 => name.to_owned(),
        n => format!("{name} {n}"),
    });
    names
        .filter_map(|name| Name::new(&name).ok())
        .find(|name| !taken.contains(&name))
}
