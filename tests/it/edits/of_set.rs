//! The edits within a gear set, one case or more for each.

use super::{Case, FIRST, SECOND, candidate, every_edit, of_first, start};
use crate::support::gear_sets::{gear, name, ratio, rpm, set, tyre};
use crate::support::variants::{assert_all_met, variants};
use layshaft::gearing::{
    ActsOn, FinalDrive, Gear, GearId, GearRole, GearSet, Label, Position, Reverse, Sprocket,
    Sprockets, Stage,
};
use layshaft::project::{Edit, SetEdit};

variants!(
    SET_EDITS,
    set_edit_name,
    SetEdit {
        Name,
        Tyre,
        ShiftAll,
        Shift,
        Shifts,
        AddGear,
        InsertGear,
        RemoveGear,
        MoveGear,
        Label,
        Ratio,
        FinalDriveOf,
        Role,
        Reverse,
        FinalDrive,
        Sprocket,
        AddFinalDrive,
        RemoveFinalDrive,
        AddStage,
        RemoveStage,
        StageName,
        StagePresent,
        StageShowsOthers,
        StageActsOn,
        Position,
        AddPosition,
        RemovePosition,
        Replace,
    }
);

/// An edit of the first set, and what only the set after it shows.
pub(super) struct SetCase {
    pub(super) edit: SetEdit,
    shows: fn(&GearSet) -> bool,
}

fn case(edit: SetEdit, shows: fn(&GearSet) -> bool) -> SetCase {
    SetCase { edit, shows }
}

// The gears of the first set, in typed order.
const CRAWLER: GearId = GearId(1);
const ONE: GearId = GearId(2);
const TWO: GearId = GearId(3);
const THREE: GearId = GearId(4);

fn labels(set: &GearSet) -> Vec<&str> {
    set.gears.iter().map(|g| g.label.as_str()).collect()
}

fn of(set: &GearSet, id: GearId) -> &Gear {
    set.gear(id).unwrap()
}

fn final_drives(set: &GearSet) -> Vec<f64> {
    set.final_drives.iter().map(FinalDrive::value).collect()
}

fn position(text: &str, number: f64) -> Position {
    Position {
        name: name(text),
        ratio: ratio(number),
    }
}

fn positions(set: &GearSet, stage: usize) -> Vec<&str> {
    let positions = set.stages[stage].positions.iter();
    positions.map(|p| p.name.as_str()).collect()
}

fn overdrive_acts_on(set: &GearSet, gears: &[GearId]) -> bool {
    set.stages[1].acts_on == ActsOn::Only(gears.iter().copied().collect())
}

fn whole_and_shifts() -> Vec<SetCase> {
    vec![
        case(SetEdit::Name(name("renamed")), |s| {
            s.name == name("renamed")
        }),
        case(SetEdit::Tyre(Some(tyre(2100.0))), |s| {
            s.tyre == Some(tyre(2100.0))
        }),
        case(
            SetEdit::Replace(Box::new(set(&[2.0, 1.0], 5.0).to_spec())),
            |s| *s == set(&[2.0, 1.0], 5.0),
        ),
        // One shift point for all: no gear keeps one of its own.
        case(SetEdit::ShiftAll(rpm(5500.0)), |s| {
            s.gears
                .iter()
                .all(|g| s.shift_of(g) == rpm(5500.0) && g.shift.is_none())
        }),
        case(SetEdit::Shift(TWO, rpm(5500.0)), |s| {
            of(s, TWO).shift == Some(rpm(5500.0)) && s.shift == rpm(6000.0)
        }),
        case(
            SetEdit::Shifts(rpm(5900.0), vec![(ONE, rpm(5700.0))]),
            |s| s.shift_of(of(s, ONE)) == rpm(5700.0) && s.shift_of(of(s, TWO)) == rpm(5900.0),
        ),
    ]
}

fn gears() -> Vec<SetCase> {
    let fourth = Gear {
        id: GearId(9),
        label: Label::new("4").unwrap(),
        ..gear(9, ratio(1.03))
    };
    let lower = Reverse {
        ratio: ratio(3.9),
        final_drive: 0,
    };
    vec![
        case(SetEdit::AddGear(4, fourth.clone()), |s| {
            labels(s) == ["C", "1", "2", "3", "4"]
        }),
        case(SetEdit::AddGear(0, fourth.clone()), |s| {
            labels(s) == ["4", "C", "1", "2", "3"]
        }),
        // A place behind the last is the last.
        case(SetEdit::AddGear(99, fourth.clone()), |s| {
            labels(s) == ["C", "1", "2", "3", "4"]
        }),
        // Those that are called by their number are counted anew.
        case(SetEdit::InsertGear(2, fourth.clone()), |s| {
            labels(s) == ["C", "1", "2", "3", "4"] && s.gears[2].ratio == ratio(1.03)
        }),
        // The stages forget a gear that goes.
        case(SetEdit::RemoveGear(TWO), |s| {
            labels(s) == ["C", "1", "3"] && overdrive_acts_on(s, &[THREE, GearId::REVERSE])
        }),
        case(SetEdit::MoveGear(CRAWLER, 3), |s| {
            labels(s) == ["1", "2", "3", "C"]
        }),
        case(SetEdit::MoveGear(THREE, 0), |s| {
            labels(s) == ["3", "C", "1", "2"]
        }),
        case(SetEdit::Label(TWO, Label::new("II").unwrap()), |s| {
            labels(s) == ["C", "1", "II", "3"]
        }),
        case(SetEdit::Ratio(TWO, ratio(2.0)), |s| {
            of(s, TWO).ratio == ratio(2.0)
        }),
        case(SetEdit::Ratio(GearId::REVERSE, ratio(3.4)), |s| {
            s.reverse
                .as_ref()
                .is_some_and(|r| r.ratio == ratio(3.4) && r.final_drive == 2)
        }),
        case(SetEdit::FinalDriveOf(TWO, 1), |s| {
            of(s, TWO).final_drive == 1
        }),
        case(SetEdit::FinalDriveOf(GearId::REVERSE, 1), |s| {
            s.reverse.as_ref().is_some_and(|r| r.final_drive == 1)
        }),
        case(SetEdit::Role(CRAWLER, GearRole::Shifted), |s| {
            s.chain().count() == 4
        }),
        case(SetEdit::Role(ONE, GearRole::Crawler), |s| {
            s.chain().count() == 2
        }),
        case(SetEdit::Reverse(Some(lower)), |s| {
            s.reverse
                .as_ref()
                .is_some_and(|r| r.ratio == ratio(3.9) && r.final_drive == 0)
        }),
        case(SetEdit::Reverse(None), |s| {
            s.reverse.is_none() && overdrive_acts_on(s, &[TWO, THREE])
        }),
    ]
}

fn final_drives_and_stages() -> Vec<SetCase> {
    let chain_drive = Stage {
        name: name("Chain"),
        positions: vec![position("only", 2.5)],
        present: 0,
        acts_on: ActsOn::EveryGear,
        shows_others: false,
    };
    vec![
        case(SetEdit::FinalDrive(1, ratio(3.7).into()), |s| {
            final_drives(s) == [4.06, 3.7, 3.2]
        }),
        case(
            SetEdit::FinalDrive(0, Sprockets::new(16, 46).unwrap().into()),
            |s| final_drives(s) == [2.875, 3.9, 3.2],
        ),
        case(SetEdit::Sprocket(2, Sprocket::Front, 16), |s| {
            final_drives(s) == [4.06, 3.9, 3.0]
        }),
        case(SetEdit::Sprocket(2, Sprocket::Rear, 45), |s| {
            final_drives(s) == [4.06, 3.9, 3.0]
        }),
        // Gears behind the one that goes keep the ratio they had.
        case(SetEdit::RemoveFinalDrive(1), |s| {
            let reverse = s.reverse.as_ref().map(|r| r.final_drive);
            final_drives(s) == [4.06, 3.2]
                && (of(s, TWO).final_drive, of(s, THREE).final_drive, reverse) == (0, 1, Some(1))
        }),
        case(SetEdit::AddStage(chain_drive), |s| {
            s.stages.len() == 3 && s.stages[2].name == name("Chain")
        }),
        case(SetEdit::RemoveStage(0), |s| {
            s.stages.len() == 1 && s.stages[0].name == name("Overdrive")
        }),
        case(SetEdit::StageName(1, name("Splitter")), |s| {
            s.stages[1].name == name("Splitter")
        }),
        case(SetEdit::StagePresent(1, 1), |s| {
            (s.stages[0].present, s.stages[1].present) == (1, 1)
        }),
        case(SetEdit::StageShowsOthers(1, true), |s| {
            (s.stages[0].shows_others, s.stages[1].shows_others) == (false, true)
        }),
        case(SetEdit::StageActsOn(1, ActsOn::EveryGear), |s| {
            s.stages[1].acts_on == ActsOn::EveryGear
        }),
        case(SetEdit::StageActsOn(0, ActsOn::Only([ONE].into())), |s| {
            s.stages[0].acts_on == ActsOn::Only([ONE].into())
        }),
        case(SetEdit::Position(0, 1, position("crawl", 2.5)), |s| {
            positions(s, 0) == ["high", "crawl"] && s.stages[0].positions[1].ratio == ratio(2.5)
        }),
        case(SetEdit::AddPosition(1, position("deeper", 0.7)), |s| {
            positions(s, 1) == ["out", "in", "deeper"]
        }),
        // The present position stays the present one when one before it goes.
        case(SetEdit::RemovePosition(0, 0), |s| {
            positions(s, 0) == ["low"] && s.stages[0].present == 0
        }),
        // When it goes itself, the one before it takes its place.
        case(SetEdit::RemovePosition(0, 1), |s| {
            positions(s, 0) == ["high"] && s.stages[0].present == 0
        }),
        case(SetEdit::RemovePosition(1, 1), |s| {
            positions(s, 1) == ["out"] && s.stages[1].present == 0
        }),
    ]
}

fn first_set() -> GearSet {
    GearSet::clone(&candidate(&start(), FIRST).set)
}

pub(super) fn cases() -> Vec<SetCase> {
    let mut cases = whole_and_shifts();
    cases.extend(gears());
    cases.extend(final_drives_and_stages());
    cases
}

#[test]
fn gears_above_a_crawler_that_is_called_1_are_counted_anew_from_2() {
    let mut project = start();
    let set = &candidate(&project, FIRST).set;
    let (one, two) = (set.chain().next().unwrap().id, TWO);
    let inserted = gear(9, ratio(1.7));
    for edit in [
        SetEdit::RemoveGear(CRAWLER),
        SetEdit::Role(one, GearRole::Crawler),
        SetEdit::InsertGear(1, inserted),
    ] {
        project = of_first(edit).applied_to(&project).unwrap();
    }
    let set = &candidate(&project, FIRST).set;
    assert_eq!(labels(set), ["1", "2", "3", "4"]);
    assert_eq!(set.gear(two).unwrap().label.as_str(), "3");
}

#[test]
fn every_edit_of_a_set_shows_is_taken_back_and_comes_back() {
    let mut failures = Vec::new();
    for SetCase { edit, shows } in cases() {
        let set = first_set();
        if shows(&set) || !edit.applied_to(&set).is_ok_and(|set| shows(&set)) {
            failures.push(format!("{edit:?} does not show"));
        }
        let case = Case {
            edit: of_first(edit),
            shows: |p| candidate(p, FIRST) != candidate(&start(), FIRST),
        };
        let failure = super::failure(&case);
        failures.extend(failure.map(|failure| format!("{:?} {failure}", case.edit)));
    }
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

#[test]
fn no_edit_of_a_set_is_without_a_case() {
    let met = every_edit().into_iter().filter_map(|edit| match edit {
        Edit::Set(_, edit) => Some(set_edit_name(&edit)),
        _ => None,
    });
    assert_all_met(SET_EDITS, met);
}

#[test]
fn an_edit_of_one_set_leaves_the_other() {
    for SetCase { edit, .. } in cases() {
        let after = of_first(edit.clone()).applied_to(&start()).unwrap();
        assert_eq!(
            candidate(&after, SECOND),
            candidate(&start(), SECOND),
            "{edit:?}"
        );
        assert_eq!(
            candidate(&after, FIRST).visible,
            candidate(&start(), FIRST).visible
        );
    }
}

#[test]
fn a_set_gives_its_own_tyre_up_again() {
    let own = of_first(SetEdit::Tyre(Some(tyre(2100.0))))
        .applied_to(&start())
        .unwrap();
    assert_eq!(
        Edit::Set(FIRST, SetEdit::Tyre(None)).applied_to(&own),
        Ok(start())
    );
}

#[test]
fn a_fresh_identity_is_nobody_s() {
    let set = first_set();
    let fresh = set.unused_id();
    assert!(fresh != GearId::REVERSE && set.gear(fresh).is_none());
}
