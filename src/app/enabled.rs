//! Which commands cannot be invoked just now, and why not?

use super::commands::Command;
use super::desk::Desk;
use crate::project::Candidates;

impl Command {
    /// Why the command cannot be invoked just now; none where it can.
    pub(super) fn why_not(self, desk: &Desk) -> Option<&'static str> {
        let count = desk.project().sets.len();
        let (is_barred, why) = match self {
            Self::Undo => (desk.undoable().is_none(), "nothing was changed"),
            Self::Redo => (desk.redoable().is_none(), "nothing was undone"),
            Self::CopySet => (
                count >= Candidates::MOST,
                "a project has three sets at most",
            ),
            Self::RemoveSet => (count < 2, "this is the only set"),
            Self::NextSet => (count < 2, "there is only one set"),
            Self::BestShifts => return why_no_best_shifts(desk),
            Self::Findings => {
                let has_none = desk.findings().is_empty();
                (has_none, "there are no findings")
            }
            Self::New
            | Self::NewWithRanges
            | Self::NewMotorcycle
            | Self::Open
            | Self::Save
            | Self::SaveAs
            | Self::Quit
            | Self::PasteSet
            | Self::FindWish
            | Self::FindPair
            | Self::FillSteps
            | Self::CountFitted
            | Self::TypeRatios
            | Self::TypeOverall
            | Self::TypeSpeeds
            | Self::WriteUp
            | Self::CopyTable
            | Self::OneUnderAnother
            | Self::SideBySide
            | Self::Columns
            | Self::ShowWorkshop
            | Self::ShowSpeed
            | Self::ShowEffort
            | Self::ShowRun
            | Self::ShowCruise
            | Self::ShowSpeedometer
            | Self::Fit
            | Self::SwitchUnits
            | Self::ThemeLight
            | Self::ThemeDark
            | Self::ThemeSystem
            | Self::ZoomIn
            | Self::ZoomOut
            | Self::ZoomReset
            | Self::FindCommand
            | Self::Help => (false, ""),
        };
        is_barred.then_some(why)
    }
}

fn why_no_best_shifts(desk: &Desk) -> Option<&'static str> {
    if desk.lacks_for_motion().is_some() {
        return Some("not all is known that runs need of engine and vehicle");
    }
    let has_offer = desk
        .open_card
        .is_some_and(|set| desk.best_shifts(set).is_some());
    (!has_offer).then_some("the set has them already, or reaches no speed")
}
