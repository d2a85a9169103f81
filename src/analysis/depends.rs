//! The one place that says what depends on what: when does a figure hold for another state of the
//! document too?
//!
//! Whoever adds something to the project is made to say here whether charts show it.

use crate::gearing::{GearSet, GearSetSpec};
use crate::project::{Candidate, Project};

/// Whether what is read off a set in `before` is read off a set in `after` as well.
///
/// So it is with what is read off it in other positions. It depends on the set, the tyre that it
/// stands on and the engine's limits; its identity, its livery, whether it is shown, and the other
/// sets are nothing to it.
pub(super) fn set_holds(before: (&Project, &Candidate), after: (&Project, &Candidate)) -> bool {
    let parts = |(project, candidate): (&Project, &Candidate)| {
        let tyre = project.tyre_of(&candidate.set);
        (tyre, project.engine)
    };
    before.1.set == after.1.set && parts(before) == parts(after)
}

/// Whether diagrams and tables of `before` are those of `after` as well.
///
/// They depend on everything but what is written about the project and how its write-up is made.
pub(super) fn charts_hold(before: &Project, after: &Project) -> bool {
    let Project {
        title: _,
        date: _,
        note: _,
        write_up: _,
        // What the bench does is looked at there.
        workshop: _,
        technical,
        units,
        tyre,
        engine,
        marked_engine_speeds,
        marked_road_speeds,
        sets,
    } = before;
    *units == after.units
        && *tyre == after.tyre
        && *engine == after.engine
        && *marked_engine_speeds == after.marked_engine_speeds
        && *marked_road_speeds == after.marked_road_speeds
        && *technical == after.technical
        && *sets == after.sets
}

/// Whether what is strange about the sets of `before` once their engine runs is strange about those of
/// `after` as well.
///
/// None of it asks where a gear is left: while a shift point is dragged it stays what it is.
pub(super) fn motion_findings_hold(before: &Project, after: &Project) -> bool {
    let same = |(before, after): (&Candidate, &Candidate)| {
        before.technical == after.technical && same_but_for_shifts(&before.set, &after.set)
    };
    before.units == after.units
        && before.tyre == after.tyre
        && before.engine == after.engine
        && before.marked_road_speeds == after.marked_road_speeds
        && before.technical == after.technical
        && before.sets.len() == after.sets.len()
        && before.sets.iter().zip(after.sets.iter()).all(same)
}

/// The same of what each set should not be driven with, which is compared with the baseline too.
pub(super) fn check_findings_hold(before: &Project, after: &Project) -> bool {
    let baseline = |project: &Project| project.sets.baseline_place();
    motion_findings_hold(before, after) && baseline(before) == baseline(after)
}

fn same_but_for_shifts(before: &GearSet, after: &GearSet) -> bool {
    if before == after {
        return true;
    }
    let mut shifted = GearSetSpec::clone(after);
    shifted.shift = before.shift;
    for (gear, like) in shifted.gears.iter_mut().zip(&before.gears) {
        gear.shift = like.shift;
    }
    shifted == **before
}
