//! Does an edit that cannot be made say why and leave everything as it was?

use super::{FIRST, SECOND, of_first, start};
use crate::support::gear_sets::{gear, name, ratio, rpm, set};
use layshaft::gearing::{
    ActsOn, Gear, GearId, GearRole, GearSetSpec, Label, Position, Reverse, Sprocket, Stage,
};
use layshaft::project::{Edit, Figure, History, Project, SetEdit, SetId, TypedFigure};
use layshaft::units::SpeedUnit;

const NOBODY: GearId = GearId(99);
const NO_SET: &str = "that gear set is not there any more";
const NO_PART: &str = "that part of the gear set is not there any more";

/// Fails unless each edit is refused with that answer and leaves no trace.
#[track_caller]
fn assert_refused(project: &Project, rows: Vec<(Edit, &str)>) {
    let mut failures = Vec::new();
    for (edit, answer) in rows {
        let mut history = History::new(project.clone());
        let fresh = history.revision();
        match history.edit(&edit) {
            Ok(()) => failures.push(format!("{edit:?} is not refused")),
            Err(error) if error.to_string() != answer => {
                failures.push(format!(
                    "{edit:?} is answered \"{error}\", not \"{answer}\""
                ));
            }
            Err(_) => {}
        }
        let has_step = history.undoable().is_some() || history.in_gesture();
        if history.project() != project || history.revision() != fresh || has_step {
            failures.push(format!("{edit:?} leaves a trace"));
        }
    }
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

/// Edits of the first set.
#[track_caller]
fn assert_set_edits_refused(rows: Vec<(SetEdit, &str)>) {
    let of_first = rows
        .into_iter()
        .map(|(edit, answer)| (of_first(edit), answer));
    assert_refused(&start(), of_first.collect());
}

#[test]
fn an_edit_of_a_set_that_is_gone_is_refused() {
    let gone = SetId(7);
    assert_refused(
        &start(),
        vec![
            (Edit::AddSet(gone, Box::new(set(&[1.0], 4.0))), NO_SET),
            (Edit::RemoveSet(gone), NO_SET),
            (Edit::MoveSet(gone, 0), NO_SET),
            (Edit::MoveSet(FIRST, 2), NO_SET),
            (Edit::Baseline(gone), NO_SET),
            (Edit::Visible(gone, true), NO_SET),
            (Edit::Set(gone, SetEdit::Name(name("a"))), NO_SET),
        ],
    );
}

#[test]
fn a_project_keeps_one_to_three_sets() {
    let one = Edit::RemoveSet(SECOND).applied_to(&start()).unwrap();
    let last = (
        Edit::RemoveSet(FIRST),
        "a project has 1 to 3 gear sets, not 0",
    );
    assert_refused(&one, vec![last]);
    let fourth = Edit::AddSet(FIRST, Box::new(set(&[1.0], 4.0)));
    let three = fourth.applied_to(&start()).unwrap();
    assert_refused(
        &three,
        vec![(fourth, "a project has 1 to 3 gear sets, not 4")],
    );
}

#[test]
fn an_edit_of_a_gear_that_is_gone_is_refused() {
    assert_set_edits_refused(vec![
        (SetEdit::Shift(NOBODY, rpm(5000.0)), NO_PART),
        (SetEdit::Shift(GearId::REVERSE, rpm(5000.0)), NO_PART),
        (
            SetEdit::Shifts(rpm(5000.0), vec![(NOBODY, rpm(5000.0))]),
            NO_PART,
        ),
        (SetEdit::RemoveGear(NOBODY), NO_PART),
        (SetEdit::RemoveGear(GearId::REVERSE), NO_PART),
        (SetEdit::MoveGear(NOBODY, 0), NO_PART),
        (SetEdit::Label(NOBODY, Label::new("9").unwrap()), NO_PART),
        (SetEdit::Ratio(NOBODY, ratio(1.0)), NO_PART),
        (SetEdit::FinalDriveOf(NOBODY, 0), NO_PART),
        (SetEdit::Role(NOBODY, GearRole::Crawler), NO_PART),
    ]);
}

#[test]
fn an_edit_of_a_reverse_gear_that_is_gone_is_refused() {
    let rows = [
        SetEdit::Ratio(GearId::REVERSE, ratio(3.0)),
        SetEdit::FinalDriveOf(GearId::REVERSE, 0),
    ];
    let rows = rows.map(|edit| (Edit::Set(SECOND, edit), NO_PART));
    assert_refused(&start(), rows.to_vec());
}

#[test]
fn an_edit_of_a_final_drive_or_stage_that_is_gone_is_refused() {
    let position = || Position {
        name: name("a"),
        ratio: ratio(1.0),
    };
    assert_set_edits_refused(vec![
        (SetEdit::FinalDrive(3, ratio(4.0).into()), NO_PART),
        (SetEdit::Sprocket(3, Sprocket::Front, 16), NO_PART),
        (SetEdit::Sprocket(0, Sprocket::Rear, 46), NO_PART),
        (SetEdit::RemoveFinalDrive(3), NO_PART),
        (SetEdit::RemoveStage(2), NO_PART),
        (SetEdit::StageName(2, name("a")), NO_PART),
        (SetEdit::StagePresent(2, 0), NO_PART),
        (SetEdit::StageActsOn(2, ActsOn::EveryGear), NO_PART),
        (SetEdit::Position(2, 0, position()), NO_PART),
        (SetEdit::Position(0, 2, position()), NO_PART),
        (SetEdit::AddPosition(2, position()), NO_PART),
        (SetEdit::RemovePosition(2, 0), NO_PART),
        (SetEdit::RemovePosition(0, 2), NO_PART),
    ]);
}

#[test]
fn sprockets_that_make_no_chain_are_refused() {
    let teeth = "teeth are whole numbers from 1 to 999, not 0";
    let range = "a ratio lies between 0.001 and 400, not 480";
    let front = SetEdit::Sprocket(2, Sprocket::Front, 1);
    let project = of_first(front).applied_to(&start()).unwrap();
    let rear = |teeth| of_first(SetEdit::Sprocket(2, Sprocket::Rear, teeth));
    assert_refused(&project, vec![(rear(0), teeth), (rear(480), range)]);
}

#[test]
fn gears_that_would_not_fit_together_are_refused() {
    let labelled = |text: &str| Gear {
        label: Label::new(text).unwrap(),
        ..gear(9, ratio(1.0))
    };
    let elsewhere = Gear {
        final_drive: 3,
        ..labelled("4")
    };
    let reverse = Reverse {
        ratio: ratio(3.0),
        final_drive: 3,
    };
    let clash = "two gears are labelled \"1\"; give each a label of its own";
    let of_reverse = "two gears are labelled \"R\"; give each a label of its own";
    assert_set_edits_refused(vec![
        (SetEdit::AddGear(0, labelled("1")), clash),
        (SetEdit::AddGear(0, labelled("R")), of_reverse),
        (SetEdit::Label(GearId(3), Label::new("1").unwrap()), clash),
        (
            SetEdit::AddGear(
                0,
                Gear {
                    id: GearId(2),
                    ..labelled("4")
                },
            ),
            "two gears share one identity; each needs its own",
        ),
        (
            SetEdit::AddGear(
                0,
                Gear {
                    id: GearId::REVERSE,
                    ..labelled("4")
                },
            ),
            "two gears share one identity; each needs its own",
        ),
        (
            SetEdit::AddGear(0, elsewhere),
            "gear 4 names final drive 4, but there are only 3",
        ),
        (
            SetEdit::FinalDriveOf(GearId(3), 3),
            "gear 2 names final drive 4, but there are only 3",
        ),
        (
            SetEdit::Reverse(Some(reverse)),
            "gear R names final drive 4, but there are only 3",
        ),
    ]);
}

#[test]
fn a_gearbox_keeps_the_counts_of_its_parts() {
    let spec = set(&[1.0], 4.0).to_spec();
    let no_gear = GearSetSpec {
        gears: vec![],
        ..spec.clone()
    };
    let no_final_drive = GearSetSpec {
        final_drives: vec![],
        ..spec.clone()
    };
    let thirteen = set(&[1.0; 12], 4.0).to_spec();
    let mut thirteen = thirteen;
    thirteen.gears.push(gear(13, ratio(1.0)));
    let mut crawler_only = spec.clone();
    crawler_only.gears[0].role = GearRole::Crawler;
    let no_position = Stage {
        name: name("empty"),
        positions: vec![],
        present: 0,
        acts_on: ActsOn::EveryGear,
        shows_others: false,
    };
    let stages = GearSetSpec {
        stages: vec![
            Stage {
                positions: vec![],
                ..no_position.clone()
            };
            5
        ],
        ..spec
    };
    let replace = |spec| SetEdit::Replace(Box::new(spec));
    let position = Position {
        name: name("a"),
        ratio: ratio(1.0),
    };
    let five_positions = Stage {
        name: name("empty"),
        positions: vec![position; 5],
        ..no_position.clone()
    };
    let of_positions = "stage \"empty\" needs 1 to 4 positions and stands in one of them";
    assert_set_edits_refused(vec![
        (
            replace(no_gear),
            "a gear set has 1 to 12 forward gears, not 0",
        ),
        (
            replace(thirteen),
            "a gear set has 1 to 12 forward gears, not 13",
        ),
        (
            replace(crawler_only),
            "a gear set needs one gear that is no crawler",
        ),
        (
            replace(no_final_drive),
            "a gear set has 1 to 3 final drives, not 0",
        ),
        (
            SetEdit::AddFinalDrive(ratio(4.0).into()),
            "a gear set has 1 to 3 final drives, not 4",
        ),
        (
            replace(stages),
            "a gear set has at most 4 further stages, not 5",
        ),
        (SetEdit::AddStage(no_position), of_positions),
        (SetEdit::AddStage(five_positions), of_positions),
        (
            SetEdit::StagePresent(0, 2),
            "stage \"Transfer box\" needs 1 to 4 positions and stands in one of them",
        ),
        (
            SetEdit::StageActsOn(0, ActsOn::Only([NOBODY].into())),
            "stage \"Transfer box\" acts on a gear that is not there",
        ),
    ]);
}

#[test]
fn no_more_combinations_of_positions_are_shown_than_can_be_compared() {
    let position = Position {
        name: name("a"),
        ratio: ratio(1.0),
    };
    let four_positions = Stage {
        name: name("range"),
        positions: vec![position; 4],
        present: 0,
        acts_on: ActsOn::EveryGear,
        shows_others: true,
    };
    let sixteen = GearSetSpec {
        stages: vec![four_positions; 2],
        ..set(&[1.0], 4.0).to_spec()
    };
    assert_set_edits_refused(vec![(
        SetEdit::Replace(Box::new(sixteen)),
        "the positions that are shown at once make 16 combinations, and the most are 8; show those of \
         fewer stages",
    )]);
}

#[test]
fn the_last_of_what_must_be_there_stays() {
    let one_gear = of_first(SetEdit::Replace(Box::new(set(&[1.0], 4.0).to_spec())));
    let project = one_gear.applied_to(&start()).unwrap();
    let remove = of_first(SetEdit::RemoveGear(GearId(1)));
    let crawl = of_first(SetEdit::Role(GearId(1), GearRole::Crawler));
    assert_refused(
        &project,
        vec![
            (remove, "a gear set has 1 to 12 forward gears, not 0"),
            (crawl, "a gear set needs one gear that is no crawler"),
        ],
    );
    let one_position = of_first(SetEdit::RemovePosition(0, 1))
        .applied_to(&start())
        .unwrap();
    let last = of_first(SetEdit::RemovePosition(0, 0));
    let answer = "stage \"Transfer box\" needs 1 to 4 positions and stands in one of them";
    assert_refused(&one_position, vec![(last, answer)]);
}

#[test]
fn a_final_drive_in_use_stays() {
    let answer = |n: usize| {
        format!("final drive {n} is still used by a gear; move its gears to another one first")
    };
    let (first, third) = (answer(1), answer(3));
    assert_set_edits_refused(vec![
        (SetEdit::RemoveFinalDrive(0), first.as_str()),
        (SetEdit::RemoveFinalDrive(2), third.as_str()),
    ]);
    // Used by reverse alone.
    let edit = of_first(SetEdit::FinalDriveOf(GearId(4), 0));
    let by_reverse = edit.applied_to(&start()).unwrap();
    let remove = of_first(SetEdit::RemoveFinalDrive(2));
    assert_refused(&by_reverse, vec![(remove, third.as_str())]);
}

#[test]
fn a_figure_that_would_need_an_impossible_ratio_is_not_given_up_in_silence() {
    let kept = |gear, figure| TypedFigure {
        set: SECOND,
        gear,
        figure,
    };
    let overall = kept(GearId(1), Figure::Overall(12.0));
    let final_drive = |number| Edit::Set(SECOND, SetEdit::FinalDrive(0, ratio(number).into()));
    let answer = "gear 1 cannot keep its overall ratio 12: a ratio lies between 0.001 and 400, not \
                  1200; to let it go, type gears as gear ratios";
    assert_refused(
        &start(),
        vec![(final_drive(0.01).keeping(vec![overall]), answer)],
    );
    // 0.06 · 1000 · 2 ÷ (2 · 4) = 15
    let tyre = |mm| Edit::Tyre(crate::support::gear_sets::tyre(mm));
    let project = tyre(2000.0).applied_to(&start()).unwrap();
    let speed = kept(GearId(2), Figure::SpeedPer1000(15.0, SpeedUnit::Kmh));
    let answer = "gear 2 cannot keep its 15 km/h per 1000 rpm: a ratio lies between 0.001 and 400, \
                  not 800; to let it go, type gears as gear ratios";
    let edit = final_drive(0.01).keeping(vec![speed]);
    assert_refused(&project, vec![(edit, answer)]);
}
