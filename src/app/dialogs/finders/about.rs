//! The set that something is found for, and what it is compared with.

use crate::app::desk::Desk;
use crate::gearing::{GearId, GearResult, GearSet, RoadSpeed, SetResults, Tyre};
use crate::project::{Project, SetId};
use crate::units::SpeedUnit;

/// A set with its figures.
#[derive(Clone, Copy)]
pub(super) struct About<'a> {
    pub(super) project: &'a Project,
    pub(super) id: SetId,
    pub(super) set: &'a GearSet,
    pub(super) results: &'a SetResults,
    /// The figures of the baseline: its own, where it is the baseline.
    pub(super) baseline: &'a SetResults,
    pub(super) is_baseline: bool,
}

impl<'a> About<'a> {
    /// The set of that identity; none where it is gone.
    pub(super) fn of(desk: &'a Desk, id: SetId) -> Option<Self> {
        let project = desk.project();
        let place = project.sets.place(id)?;
        let results = &desk.results().sets;
        let baseline = project.sets.baseline_place();
        Some(Self {
            project,
            id,
            set: &project.sets.get(id)?.set,
            results: results.get(place)?,
            baseline: results.get(baseline)?,
            is_baseline: place == baseline,
        })
    }

    pub(super) fn units(&self) -> SpeedUnit {
        self.project.units
    }

    /// The tyre that it stands on.
    pub(super) fn tyre(&self) -> &'a Tyre {
        self.set.tyre.as_ref().unwrap_or(&self.project.tyre)
    }

    /// A gear, forward or reverse.
    pub(super) fn gear(&self, id: GearId) -> Option<&'a GearResult> {
        let mut all = self.results.gears.iter().chain(&self.results.reverse);
        all.find(|result| result.gear.id == id)
    }

    /// Which final drive a gear drives, counted from 0.
    pub(super) fn final_drive_of(&self, id: GearId) -> Option<usize> {
        match id {
            GearId::REVERSE => Some(self.set.reverse.as_ref()?.final_drive),
            forward => Some(self.set.gear(forward)?.final_drive),
        }
    }

    /// The highest gear that drives that final drive; top, where none does.
    pub(super) fn highest_on(&self, final_drive: usize) -> Option<GearId> {
        let on_it = |result: &&GearResult| self.final_drive_of(result.gear.id) == Some(final_drive);
        let highest = self.results.chain().filter(on_it).last();
        Some(highest.or_else(|| self.results.top())?.gear.id)
    }

    /// A road speed to begin with: the highest that is marked, else 100 in the project's unit.
    pub(super) fn usual_road_speed(&self) -> Option<RoadSpeed> {
        let marks = self.project.marked_road_speeds.as_slice().iter();
        let highest = marks.copied().max_by(|a, b| a.kmh().total_cmp(&b.kmh()));
        highest.or_else(|| RoadSpeed::from_kmh(self.units().to_kmh(100.0)).ok())
    }
}
