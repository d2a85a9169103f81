//! What a change within one gear set is called.

use super::{Named, optional};
use crate::gearing::{
    EngineSpeed, FinalDrive, Gear, GearId, GearRole, GearSet, Position, Sprocket, quoted,
};
use crate::project::differences::{acting_gears, listed, position_words, rpm};
use crate::project::set_edits::SetEdit;
use std::fmt::Display;

/// The change of a set, in words that do not name the set; `both` is the set before and after.
pub(super) fn named_in_set(edit: &SetEdit, both: [&GearSet; 2]) -> Named {
    let [before, after] = both;
    let gear = |id: &GearId| called(*id, both);
    match edit {
        SetEdit::Name(_) => Named::text("name", both.map(|set| Some(set.name.as_str()))),
        SetEdit::Tyre(_) => Named::figure("tyre", both.map(tyre_words)),
        SetEdit::ShiftAll(_) => Named::figure("shift point of all gears", both.map(common_shift)),
        SetEdit::Shift(id, _) => {
            let what = format!("shift point of {}", gear(id));
            figure(what, both, |set| Some(rpm(set.shift_of(set.gear(*id)?))))
        }
        SetEdit::Shifts(..) => named_shifts(both),
        SetEdit::AddGear(_, new) | SetEdit::InsertGear(_, new) => {
            // The gears behind it may have been counted anew: it is called what it is called now.
            let what = format!("new gear {}", called(new.id, [after; 2]));
            Named::thing(what, ratio_of(after, new.id))
        }
        SetEdit::RemoveGear(id) => {
            Named::thing(format!("removed gear {}", gear(id)), ratio_of(before, *id))
        }
        SetEdit::MoveGear(id, _) => figure(format!("place of gear {}", gear(id)), both, |set| {
            Some(set.gears.iter().position(|gear| gear.id == *id)? + 1)
        }),
        SetEdit::Label(id, _) => figure(format!("label of {}", gear(id)), both, |set| {
            Some(&set.gear(*id)?.label)
        }),
        SetEdit::Ratio(id, _) => {
            let what = format!("ratio of {}", gear(id));
            Named::figure(what, both.map(|set| ratio_of(set, *id)))
        }
        SetEdit::FinalDriveOf(id, _) => {
            let what = format!("final drive of {}", gear(id));
            figure(what, both, |set| drive_of(set, *id))
        }
        SetEdit::Role(id, _) => figure(format!("gear {}", gear(id)), both, |set| {
            Some(role_words(set.gear(*id)?.role))
        }),
        SetEdit::Reverse(_) => named_reverse(both),
        SetEdit::FinalDrive(at, _) => figure(drive_words(before, *at), both, |set| {
            set.final_drives.get(*at)
        }),
        SetEdit::Sprocket(at, of, _) => named_sprocket(*at, *of, both),
        SetEdit::AddFinalDrive(ratio) => {
            let at = after.final_drives.len().saturating_sub(1);
            Named::thing(format!("new {}", drive_words(after, at)), ratio)
        }
        SetEdit::RemoveFinalDrive(at) => {
            let what = format!("removed {}", drive_words(before, *at));
            Named::thing(what, optional(before.final_drives.get(*at)))
        }
        SetEdit::AddStage(stage) => Named::thing("new stage", &stage.name),
        SetEdit::RemoveStage(at) => Named::thing("removed stage", stage_name(before, *at)),
        SetEdit::StageName(at, _) => figure(format!("name of stage {}", at + 1), both, |set| {
            Some(&set.stages.get(*at)?.name)
        }),
        SetEdit::StagePresent(at, _) => figure(stage_name(before, *at), both, |set| {
            let stage = set.stages.get(*at)?;
            Some(&stage.positions.get(stage.present)?.name)
        }),
        SetEdit::StageActsOn(at, _) => {
            let what = format!("gears of {}", stage_name(before, *at));
            figure(what, both, |set| {
                Some(acting_gears(set, set.stages.get(*at)?))
            })
        }
        SetEdit::StageShowsOthers(at, _) => named_shown_positions(*at, both),
        SetEdit::Position(at, place, _) => named_position(*at, *place, both),
        SetEdit::AddPosition(at, position) => {
            let what = format!("new position of {}", stage_name(before, *at));
            Named::thing(what, position_words(position))
        }
        SetEdit::RemovePosition(at, place) => {
            let what = format!("removed position of {}", stage_name(before, *at));
            Named::thing(
                what,
                optional(position(before, *at, *place).map(position_words)),
            )
        }
        SetEdit::Replace(_) => Named::thing("pasted gears", &after.name),
    }
}

/// The teeth of one of a chain's sprockets.
fn named_sprocket(at: usize, of: Sprocket, both: [&GearSet; 2]) -> Named {
    let what = format!("{} sprocket of {}", of.word(), drive_words(both[0], at));
    figure(what, both, |set| match set.final_drives.get(at)? {
        FinalDrive::Chain(sprockets) => Some(sprockets.teeth(of)),
        FinalDrive::Gears(_) => None,
    })
}

/// How many positions of a stage are shown at once.
fn named_shown_positions(at: usize, both: [&GearSet; 2]) -> Named {
    let what = format!("positions of {}", stage_name(both[0], at));
    figure(what, both, |set| {
        let all = set.stages.get(at)?.shows_others;
        Some(if all { "all shown" } else { "one shown" })
    })
}

/// A figure that a set has or has not.
fn figure<'a, T: Display>(
    what: impl Into<String>,
    both: [&'a GearSet; 2],
    of: impl Fn(&'a GearSet) -> Option<T>,
) -> Named {
    Named::figure(what, both.map(|set| optional(of(set))))
}

/// What a gear is called: before the change, where it was there.
fn called(id: GearId, [before, after]: [&GearSet; 2]) -> String {
    if id == GearId::REVERSE {
        return "reverse".to_owned();
    }
    let gear = before.gear(id).or_else(|| after.gear(id));
    optional(gear.map(|gear| &gear.label))
}

fn ratio_of(set: &GearSet, id: GearId) -> String {
    match id {
        GearId::REVERSE => optional(set.reverse.as_ref().map(|reverse| &reverse.ratio)),
        id => optional(set.gear(id).map(|gear| &gear.ratio)),
    }
}

/// The final drive of a gear as its button has it: `F2`.
fn drive_of(set: &GearSet, id: GearId) -> Option<String> {
    let at = match id {
        GearId::REVERSE => set.reverse.as_ref().map(|reverse| reverse.final_drive),
        id => set.gear(id).map(|gear| gear.final_drive),
    };
    at.map(|at| format!("F{}", at + 1))
}

/// `final drive`, with its number where there are several; counted from 0.
fn drive_words(set: &GearSet, at: usize) -> String {
    match set.final_drives.len() {
        0 | 1 => "final drive".to_owned(),
        _ => format!("final drive {}", at + 1),
    }
}

fn role_words(role: GearRole) -> &'static str {
    match role {
        GearRole::Shifted => "in the shift chain",
        GearRole::Crawler => "crawler",
    }
}

fn named_reverse([before, after]: [&GearSet; 2]) -> Named {
    match (&before.reverse, &after.reverse) {
        (Some(was), None) => Named::thing("removed reverse", &was.ratio),
        (None, Some(is)) => Named::thing("new reverse", &is.ratio),
        (was, is) => {
            let ratios = [was, is].map(|reverse| optional(reverse.as_ref().map(|r| &r.ratio)));
            Named::figure("reverse", ratios)
        }
    }
}

/// That gears have shift points of their own.
const ONE_EACH: &str = "one for each change";

fn has_own_shifts(set: &GearSet) -> bool {
    set.gears.iter().any(|gear| gear.shift.is_some())
}

/// The shift point that all gears have.
fn common_shift(set: &GearSet) -> String {
    if has_own_shifts(set) {
        ONE_EACH.to_owned()
    } else {
        rpm(set.shift)
    }
}

/// All shift points, moved together or taken apart; where both, it is told where they are.
fn named_shifts(both: [&GearSet; 2]) -> Named {
    let [before, after] = both.map(has_own_shifts);
    let [was, is] = both.map(all_shifts);
    if before != after && was == is {
        let of_which = |has_own| if has_own { ONE_EACH } else { "one for all" };
        return Named::figure("shift points", [before, after].map(of_which));
    }
    Named::figure("shift points", [was, is])
}

/// The shift points of the chain, each once as long as all are the same.
fn all_shifts(set: &GearSet) -> String {
    let chain: Vec<&Gear> = set.chain().collect();
    let changes = chain.len().saturating_sub(1).max(1);
    let mut speeds: Vec<EngineSpeed> = chain
        .iter()
        .take(changes)
        .map(|g| set.shift_of(g))
        .collect();
    if speeds.windows(2).all(|pair| pair[0] == pair[1]) {
        speeds.truncate(1);
    }
    listed(speeds.into_iter().map(rpm))
}

fn tyre_words(set: &GearSet) -> String {
    let own = set.tyre.map(|tyre| tyre.to_string());
    own.unwrap_or_else(|| "the vehicle's".to_owned())
}

fn stage_name(set: &GearSet, at: usize) -> String {
    let name = set.stages.get(at).map(|stage| stage.name.as_str());
    quoted(name.unwrap_or_default())
}

fn position(set: &GearSet, at: usize, place: usize) -> Option<&Position> {
    set.stages.get(at)?.positions.get(place)
}

/// Name or ratio of a position, whichever is another.
fn named_position(at: usize, place: usize, both: [&GearSet; 2]) -> Named {
    let stage = stage_name(both[0], at);
    let [was, is] = both.map(|set| position(set, at, place));
    let name = was.map_or("", |position| position.name.as_str());
    if was.map(|position| &position.ratio) == is.map(|position| &position.ratio) {
        let names = [was, is].map(|position| optional(position.map(|p| &p.name)));
        return Named::figure(format!("name of position {} of {stage}", place + 1), names);
    }
    let ratios = [was, is].map(|position| optional(position.map(|p| &p.ratio)));
    Named::figure(format!("ratio of {}, {stage}", quoted(name)), ratios)
}
