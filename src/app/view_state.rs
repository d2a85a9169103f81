//! What is looked at, apart from the document: which set is forward, which part of the diagram?
//!
//! Nothing here is saved with the project or undone.

use super::arrangement::Part;
use super::dialogs::finders::FinderTexts;
use super::drafts::CellId;
use super::page::AppPage;
use super::table_panel::SeenColumns;
use super::typed::RatioForm;
use super::typed_as::TypedGears;
use crate::chart::{GearOfSet, Range};
use crate::gearing::{GearId, other_combinations};
use crate::project::View;
use crate::project::{Project, SetId};
use crate::workshop::{BenchItem, Job};

/// The state of the view.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct ViewState {
    /// The set whose handles are shown.
    pub selected: SetId,
    /// The set whose card is open.
    pub open_card: SetId,
    /// The page that is looked at.
    pub page: AppPage,
    /// What of the workshop is open, a job or the plan; none where there is nothing.
    pub open_at_bench: Option<BenchItem>,
    /// The set for which the plan of what changes is filled in where there is room for one only.
    pub planned_for: SetId,
    /// The part that has all the room in a small window.
    pub part: Part,
    /// The set whose card is to be scrolled into view in the next frame.
    pub reveal: Option<SetId>,
    /// The field that is to be seen in the next frame: what folds it away is unfolded.
    pub sought: Option<CellId>,
    /// The gear that the pointer is on, in diagram or table.
    pub pointed: Option<GearOfSet>,
    /// What is looked at: a diagram with its table.
    pub shown: View,
    /// The part of each diagram in view.
    pub ranges: Ranges,
    /// Whether the write-up is being made.
    pub write_up_is_open: bool,
    /// Whether the table shows the sets side by side, or one under another.
    pub side_by_side: bool,
    /// The columns of the table that are looked at.
    pub columns: SeenColumns,
    /// Whether the menu of the columns is to be opened in the next frame.
    pub columns_are_asked_for: bool,
    /// In which form gears are typed.
    pub ratio_form: RatioForm,
    /// What the gears were typed as.
    pub typed: TypedGears,
    /// What stands in the dialogs in which something is found.
    pub finders: FinderTexts,
}

/// The part of each diagram in view; without one, the whole.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Ranges([Option<Range>; View::ALL.len()]);

impl Ranges {
    /// The part of a diagram in view; none is the whole.
    pub(super) fn of(&self, view: View) -> Option<Range> {
        self.0[view as usize]
    }

    /// Shows another part of a diagram; none is the whole.
    pub(super) fn set(&mut self, view: View, range: Option<Range>) {
        self.0[view as usize] = range;
    }
}

impl ViewState {
    /// The first look at a project: the whole diagram, the first set that is not the baseline.
    pub(super) fn of(project: &Project) -> Self {
        let baseline = project.sets.baseline().id;
        let other = project.sets.iter().find(|c| c.id != baseline && c.visible);
        let selected = other.map_or(baseline, |c| c.id);
        Self {
            selected,
            open_card: selected,
            page: AppPage::default(),
            open_at_bench: at_bench(project, project.workshop.jobs().first()),
            planned_for: selected,
            part: Part::default(),
            reveal: None,
            sought: None,
            pointed: None,
            shown: View::default(),
            ranges: Ranges::default(),
            write_up_is_open: false,
            side_by_side: false,
            columns: SeenColumns::default(),
            columns_are_asked_for: false,
            ratio_form: RatioForm::default(),
            typed: TypedGears::default(),
            finders: FinderTexts::default(),
        }
    }

    /// Keeps to what is still there after the document changed.
    pub(super) fn keep_to(&mut self, project: &Project) {
        let is_there = |id: SetId| project.sets.get(id).is_some_and(|c| c.visible);
        if is_there(self.open_card) {
            // A set that was hidden for a while comes forward again.
            self.selected = self.open_card;
        }
        if !is_there(self.selected) {
            let visible = project.sets.iter().find(|c| c.visible);
            self.selected = visible.unwrap_or_else(|| project.sets.baseline()).id;
        }
        if project.sets.get(self.open_card).is_none() {
            self.open_card = self.selected;
        }
        if !is_there(self.planned_for) {
            self.planned_for = self.selected;
        }
        let open = self.open_at_bench;
        let open = open.filter(|item| project.workshop.has(*item));
        self.open_at_bench = open.or_else(|| at_bench(project, project.workshop.jobs().last()));
        let gear_is_there = |at: GearOfSet| {
            let Some(set) = project.sets.get(at.set).map(|c| &c.set) else {
                return false;
            };
            let others = || other_combinations(&set.stages).len();
            let is_there = match at.gear {
                GearId::REVERSE => set.reverse.is_some(),
                gear => set.gear(gear).is_some(),
            };
            is_there && at.other.is_none_or(|other| other < others())
        };
        self.pointed = self.pointed.filter(|at| gear_is_there(*at));
    }

    /// The visible set behind the selected one, the first after the last.
    pub(super) fn next_set(&self, project: &Project) -> SetId {
        let visible: Vec<SetId> = project
            .sets
            .iter()
            .filter(|c| c.visible)
            .map(|c| c.id)
            .collect();
        let at = visible.iter().position(|id| *id == self.selected);
        let next = at.map_or(0, |at| at + 1) % visible.len().max(1);
        visible.get(next).copied().unwrap_or(self.selected)
    }
}

/// That job, else the plan where there is one.
fn at_bench(project: &Project, job: Option<&Job>) -> Option<BenchItem> {
    let plan = || project.workshop.plan.as_ref().map(|_| BenchItem::Plan);
    job.map(|job| BenchItem::Job(job.id)).or_else(plan)
}

/// `wanted` kept within the whole diagram; none where it shows the whole.
///
/// Nothing lies outside, so there is no use in going there; it is never narrower than a
/// hundredth of the whole.
pub(super) fn kept_within(wanted: Range, whole: Range) -> Option<Range> {
    let kept = Range {
        x: kept_range(wanted.x, whole.x),
        y: kept_range(wanted.y, whole.y),
    };
    let shows_all = |range: [f64; 2], all: [f64; 2]| {
        let slack = 1e-6 * (all[1] - all[0]);
        (range[0] - all[0]).abs() < slack && (range[1] - all[1]).abs() < slack
    };
    let is_whole = shows_all(kept.x, whole.x) && shows_all(kept.y, whole.y);
    (!is_whole).then_some(kept)
}

fn kept_range(wanted: [f64; 2], whole: [f64; 2]) -> [f64; 2] {
    let all = whole[1] - whole[0];
    let width = wanted[1] - wanted[0];
    if !width.is_finite() || !wanted[0].is_finite() || width >= all {
        return whole;
    }
    let width = width.max(all / 100.0);
    let from = wanted[0].clamp(whole[0], whole[1] - width);
    [from, from + width]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_diagram_has_a_range_of_its_own() {
        let mut ranges = Ranges::default();
        let part = Range {
            x: [10.0, 20.0],
            y: [1000.0, 2000.0],
        };
        for view in View::ALL {
            ranges.set(view, Some(part));
            for other in View::ALL {
                assert_eq!(ranges.of(other), (other == view).then_some(part));
            }
            ranges.set(view, None);
        }
    }

    #[test]
    fn a_range_is_moved_into_the_whole_and_keeps_its_width() {
        let cases = [
            ([-20.0, 30.0], [0.0, 50.0]),
            ([180.0, 230.0], [150.0, 200.0]),
            ([-5.0, 230.0], [0.0, 200.0]),
            ([f64::NAN, 1.0], [0.0, 200.0]),
            ([50.0, 50.0], [50.0, 52.0]),
        ];
        for (wanted, expected) in cases {
            let kept = kept_range(wanted, [0.0, 200.0]);
            let is_near = |at: usize| (kept[at] - expected[at]).abs() < 1e-9;
            assert!(is_near(0) && is_near(1), "{wanted:?} gave {kept:?}");
        }
    }
}
