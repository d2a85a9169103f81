//! The dialogs in which something is found for a set: what fulfils a wish, a tooth pair, steps. Each shows the
//! whole set with what was found beside what there is, and is taken over as one step.

mod about;
mod choices;
mod columns;
mod count;
mod fill;
mod frame;
mod pairs;
mod typed_field;
mod whole_set;
mod wish;

pub(in crate::app) use count::{CountDialog, CountTexts, count_dialog_ui};
pub(in crate::app) use fill::{FillDialog, FillTexts, fill_dialog_ui};
pub(in crate::app) use pairs::{PairDialog, PairSpot, PairTexts, pair_dialog_ui};
pub(in crate::app) use wish::{WishDialog, WishTexts, wish_dialog_ui};

use crate::app::commands::Command;
use crate::app::desk::Desk;
use crate::gearing::{GearId, GearSetSpec, Ratio, RoadSpeed};
use crate::project::{Edit, EditError, Project, SetEdit, SetId};

/// What is to be found, and where it was asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Finder {
    /// What fulfils a wish, in a set.
    Wish(SetId, WishedAt),
    /// A tooth pair, in a set: for a gear or final drive of it, or nothing in particular.
    Pair(SetId, Option<PairSpot>),
    /// The steps of a set.
    Fill(SetId),
}

impl Finder {
    /// The command that finds it for the selected set.
    pub(in crate::app) fn command(self) -> Command {
        match self {
            Self::Wish(..) => Command::FindWish,
            Self::Pair(..) => Command::FindPair,
            Self::Fill(_) => Command::FillSteps,
        }
    }
}

/// Where a wish was asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WishedAt {
    /// Nowhere in particular.
    Set,
    /// At the final drive of that place, counted from 0.
    FinalDrive(usize),
    /// At the ratio of a gear.
    Gear(GearId),
    /// At the shift point of a gear, or of all of them.
    Shift(Option<GearId>),
    /// At the tyre of the set.
    Tyre,
    /// At the tyre of the vehicle.
    TyreOfVehicle,
}

/// What the dialogs hold, for as long as the window looks at the document.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::app) struct FinderTexts {
    pub(in crate::app) wish: WishTexts,
    pub(in crate::app) pair: PairTexts,
    pub(in crate::app) fill: FillTexts,
    pub(in crate::app) count: CountTexts,
}

/// What came of a dialog.
pub(in crate::app) enum FinderAnswer {
    /// What was found is taken over.
    Take(Taken),
    /// Teeth are found for a ratio that was found.
    Teeth(WantedTeeth),
    /// Never mind.
    Cancel,
}

/// A ratio for which teeth are wanted.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct WantedTeeth {
    pub(in crate::app) set: SetId,
    pub(in crate::app) spot: PairSpot,
    ratio: Ratio,
    /// The road speed at which the ratio was wished.
    road: RoadSpeed,
}

/// What was found, as a change of the document.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) enum Taken {
    /// One part.
    Part(Edit),
    /// Several parts of a set at once, and what that is called.
    Parts(SetId, Box<GearSetSpec>, &'static str),
}

impl Taken {
    /// The document with it.
    ///
    /// # Errors
    /// When the parts would not fit together.
    pub(in crate::app) fn applied_to(&self, project: &Project) -> Result<Project, EditError> {
        match self {
            Self::Part(edit) => edit.applied_to(project),
            Self::Parts(set, spec, _) => {
                let edit = SetEdit::Replace(spec.clone());
                Edit::Set(*set, edit).applied_to(project)
            }
        }
    }
}

/// The set that is meant, or the baseline where it is gone.
fn set_or_baseline(desk: &Desk, set: SetId) -> SetId {
    let sets = &desk.project().sets;
    sets.get(set)
        .map_or_else(|| sets.baseline().id, |there| there.id)
}
