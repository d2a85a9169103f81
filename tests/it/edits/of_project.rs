//! The edits of a whole project, one case or more for each.

use super::plan::plan_edits;
use super::technical::technical;
use super::workshop::workshop;
use super::{Case, FIRST, SECOND, assert_cases, candidate, start};
use crate::support::gear_sets::{name, ratio, rpm, set, tyre};
use crate::support::variants::{assert_all_met, variants};
use layshaft::gearing::{GearId, RoadSpeed};
use layshaft::project::{Edit, Figure, Marks, Note, SetEdit, SetId, TypedFigure, WriteUp};
use layshaft::units::SpeedUnit;

variants!(
    EDITS,
    edit_name,
    Edit {
        Title,
        Date,
        Note,
        Units,
        Tyre,
        Idle,
        LowestUseful,
        Redline,
        MarkedEngineSpeeds,
        MarkedRoadSpeeds,
        EngineData,
        VehicleData,
        RoadData,
        DrivingData,
        SpeedometerData,
        LimitsData,
        SecondAxleData,
        KnownFuel,
        OwnEngine,
        Efficiencies,
        SetChecks,
        Workshop,
        WriteUp,
        AddSet,
        RemoveSet,
        MoveSet,
        Baseline,
        Visible,
        Set,
        Keeping,
    }
);

fn engine_and_texts() -> Vec<Case> {
    vec![
        Case {
            edit: Edit::Title(Some(name("another"))),
            shows: |p| p.title == Some(name("another")),
        },
        Case {
            edit: Edit::Title(None),
            shows: |p| p.title.is_none(),
        },
        Case {
            edit: Edit::Date(Some(name("June"))),
            shows: |p| p.date == Some(name("June")),
        },
        Case {
            edit: Edit::Date(None),
            shows: |p| p.date.is_none(),
        },
        Case {
            edit: Edit::Note(Note::new("two\nlines").unwrap()),
            shows: |p| p.note.as_str() == "two\nlines",
        },
        Case {
            edit: Edit::Units(SpeedUnit::Mph),
            shows: |p| p.units == SpeedUnit::Mph,
        },
        Case {
            edit: Edit::Tyre(tyre(2100.0)),
            shows: |p| p.tyre == tyre(2100.0),
        },
        Case {
            edit: Edit::WriteUp(WriteUp {
                is_dark: true,
                ..WriteUp::default()
            }),
            shows: |p| p.write_up.is_dark,
        },
        Case {
            edit: Edit::Idle(None),
            shows: |p| p.engine.idle.is_none(),
        },
        Case {
            edit: Edit::Idle(Some(rpm(900.0))),
            shows: |p| p.engine.idle == Some(rpm(900.0)),
        },
        Case {
            edit: Edit::LowestUseful(None),
            shows: |p| p.engine.lowest_useful.is_none(),
        },
        Case {
            edit: Edit::LowestUseful(Some(rpm(1800.0))),
            shows: |p| p.engine.lowest_useful == Some(rpm(1800.0)),
        },
        Case {
            edit: Edit::Redline(rpm(7200.0)),
            shows: |p| p.engine.redline == rpm(7200.0),
        },
        Case {
            edit: Edit::MarkedEngineSpeeds(Marks::new(vec![rpm(3000.0), rpm(2500.0)]).unwrap()),
            shows: |p| p.marked_engine_speeds.as_slice() == [rpm(2500.0), rpm(3000.0)],
        },
        Case {
            edit: Edit::MarkedRoadSpeeds(Marks::new(vec![]).unwrap()),
            shows: |p| p.marked_road_speeds.as_slice().is_empty(),
        },
        Case {
            edit: Edit::MarkedRoadSpeeds(
                Marks::new(vec![RoadSpeed::from_kmh(50.0).unwrap()]).unwrap(),
            ),
            shows: |p| p.marked_road_speeds.as_slice() == [RoadSpeed::from_kmh(50.0).unwrap()],
        },
    ]
}

fn ids(project: &layshaft::project::Project) -> Vec<SetId> {
    project.sets.iter().map(|c| c.id).collect()
}

fn candidates() -> Vec<Case> {
    vec![
        Case {
            edit: Edit::AddSet(FIRST, Box::new(set(&[2.0, 1.0], 5.0))),
            shows: |p| {
                let fresh = p.sets.get(SetId(3));
                ids(p) == [FIRST, SetId(3), SECOND]
                    && fresh.is_some_and(|c| c.visible && *c.set == set(&[2.0, 1.0], 5.0))
                    && p.sets.baseline().id == FIRST
            },
        },
        Case {
            // The baseline moves with its set.
            edit: Edit::MoveSet(FIRST, 1),
            shows: |p| ids(p) == [SECOND, FIRST] && p.sets.baseline().id == FIRST,
        },
        Case {
            // Where the baseline goes, the first that is left becomes it.
            edit: Edit::RemoveSet(FIRST),
            shows: |p| ids(p) == [SECOND] && p.sets.baseline().id == SECOND,
        },
        Case {
            edit: Edit::RemoveSet(SECOND),
            shows: |p| ids(p) == [FIRST] && p.sets.baseline().id == FIRST,
        },
        Case {
            edit: Edit::Baseline(SECOND),
            shows: |p| p.sets.baseline().id == SECOND && ids(p) == [FIRST, SECOND],
        },
        Case {
            edit: Edit::Visible(SECOND, false),
            shows: |p| !candidate(p, SECOND).visible && candidate(p, FIRST).visible,
        },
        Case {
            edit: Edit::Set(SECOND, SetEdit::Name(name("renamed"))),
            shows: |p| {
                candidate(p, SECOND).set.name == name("renamed")
                    && candidate(p, FIRST) == candidate(&start(), FIRST)
            },
        },
        // An overall ratio of 4 on a final drive of 5.
        Case {
            edit: Edit::Set(SECOND, SetEdit::FinalDrive(0, ratio(5.0).into()))
                .keeping(vec![overall(1, 12.0), overall(2, 7.0)]),
            shows: |p| {
                let set = &candidate(p, SECOND).set;
                set.final_drives == [ratio(5.0).into()]
                    && set.ratio_of(GearId(1)) == Some(&ratio(12.0 / 5.0))
                    && set.gears[1..] == candidate(&start(), SECOND).set.gears[1..]
            },
        },
        // The first set has no room for another final drive.
        Case {
            edit: Edit::Set(SECOND, SetEdit::AddFinalDrive(ratio(3.5).into())),
            shows: |p| {
                candidate(p, SECOND).set.final_drives == [ratio(4.0).into(), ratio(3.5).into()]
            },
        },
    ]
}

fn overall(gear: u32, overall: f64) -> TypedFigure {
    TypedFigure {
        set: SECOND,
        gear: GearId(gear),
        figure: Figure::Overall(overall),
    }
}

pub(super) fn cases() -> Vec<Case> {
    let mut cases = engine_and_texts();
    cases.extend(candidates());
    cases.extend(technical());
    cases.extend(workshop());
    cases.extend(plan_edits());
    cases
}

#[test]
fn every_edit_of_a_project_shows_is_taken_back_and_comes_back() {
    assert_cases(&cases());
}

#[test]
fn no_edit_of_a_project_is_without_a_case() {
    assert_all_met(EDITS, cases().iter().map(|case| edit_name(&case.edit)));
}

#[test]
fn a_hidden_set_can_be_shown_again() {
    let hidden = Edit::Visible(SECOND, false).applied_to(&start()).unwrap();
    let shown = Edit::Visible(SECOND, true);
    assert_eq!(shown.applied_to(&hidden), Ok(start()));
}

#[test]
fn the_baseline_stays_with_its_set_when_another_one_goes_or_comes() {
    let compared = Edit::Baseline(SECOND).applied_to(&start()).unwrap();
    let grown = Edit::AddSet(FIRST, Box::new(set(&[1.0], 4.0)));
    assert_eq!(
        grown.applied_to(&compared).unwrap().sets.baseline().id,
        SECOND
    );
    let shrunk = Edit::RemoveSet(FIRST).applied_to(&compared).unwrap();
    assert_eq!(shrunk.sets.baseline().id, SECOND);
}

#[test]
fn no_edit_changes_more_than_it_says() {
    // Every edit but one of the sets leaves the sets, and one of the sets leaves the rest.
    for edit in super::every_edit() {
        let (before, after) = (start(), edit.applied_to(&start()).unwrap());
        let mut back = after.clone();
        if after.sets == before.sets {
            let changed = edit_name(&edit);
            let sets = [
                "AddSet",
                "RemoveSet",
                "MoveSet",
                "Baseline",
                "Visible",
                "OwnEngine",
                "Efficiencies",
                "Set",
                "Keeping",
            ];
            assert!(!sets.contains(&changed), "{edit:?} changed nothing");
        } else {
            back.sets = before.sets.clone();
            assert_eq!(back, before, "{edit:?}");
        }
    }
}
