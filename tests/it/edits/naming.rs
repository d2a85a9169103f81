//! What is every change called, and do undo and redo call it the same?

use super::{FIRST, SECOND, every_edit, of_first, redo_words, start, undo_words};
use crate::support::gear_sets::{name, ratio, rpm};
use crate::support::projects::any_project;
use layshaft::gearing::{GearId, Sprocket};
use layshaft::project::{ColumnKey, Drops, Edit, History, Note, Project, SetEdit, WriteUp};
use layshaft::units::SpeedUnit;
use proptest::prelude::*;

/// What is said of an edit once it was undone and once it was redone.
fn said(project: &Project, edit: &Edit) -> [String; 2] {
    let mut history = History::new(project.clone());
    history.edit(edit).unwrap();
    let undone = history.undoable().unwrap().named().undone();
    history.undo();
    [undone, history.redoable().unwrap().named().redone()]
}

#[test]
fn a_figure_is_named_with_the_value_that_goes_and_the_one_that_comes() {
    let third = of_first(SetEdit::Ratio(GearId(4), ratio(1.28)));
    let reverse = of_first(SetEdit::Ratio(GearId::REVERSE, ratio(3.4)));
    let shift = of_first(SetEdit::Shift(GearId(3), rpm(5500.0)));
    let all = of_first(SetEdit::ShiftAll(rpm(5500.0)));
    let visible = Edit::Visible(SECOND, false);
    for (edit, undone, redone) in [
        (
            third,
            "ratio of 3, set 1: 1.28, now 1.31 again",
            "ratio of 3, set 1: 1.28 instead of 1.31",
        ),
        (
            reverse,
            "ratio of reverse, set 1: 3.4, now 3.3 again",
            "ratio of reverse, set 1: 3.4 instead of 3.3",
        ),
        (
            shift,
            "shift point of 2, set 1: 5500, now 6000 again",
            "shift point of 2, set 1: 5500 instead of 6000",
        ),
        (
            all,
            "shift point of all gears, set 1: 5500, now one for each change again",
            "shift point of all gears, set 1: 5500 instead of one for each change",
        ),
        (
            visible,
            "set 2: hidden, now shown again",
            "set 2: hidden instead of shown",
        ),
    ] {
        assert_eq!(said(&start(), &edit), [undone, redone]);
    }
}

#[test]
fn what_came_or_went_is_named_with_what_it_is() {
    let gear = of_first(SetEdit::RemoveGear(GearId(3)));
    let words = "removed gear 2, set 1: 1.91";
    assert_eq!(said(&start(), &gear), [words, words]);
    let set = Edit::RemoveSet(FIRST);
    let words = "removed set 1: One of everything";
    assert_eq!(said(&start(), &set), [words, words]);
}

#[test]
fn what_is_not_there_is_called_none() {
    let [undone, _] = said(&start(), &Edit::Idle(None));
    assert_eq!(undone, "idle: none, now 800 again");
}

#[test]
fn road_speeds_are_named_in_the_unit_of_the_project() {
    let in_miles = Edit::Units(SpeedUnit::Mph).applied_to(&start()).unwrap();
    let none = Edit::MarkedRoadSpeeds(layshaft::project::Marks::default());
    let [undone, _] = said(&in_miles, &none);
    assert_eq!(undone, "marked road speeds, mph: none, now 62.1 again");
}

#[test]
fn a_choice_of_the_write_up_is_named_by_itself_and_several_together() {
    let choices = start().write_up;
    let dark = WriteUp {
        is_dark: true,
        ..choices.clone()
    };
    let [undone, _] = said(&start(), &Edit::WriteUp(dark.clone()));
    assert_eq!(undone, "looks of the picture: dark, now light again");
    for (choice, words) in [
        (
            WriteUp {
                drops: Drops::Of(SECOND),
                ..choices.clone()
            },
            "drops in the write-up: those of set 2, now the usual ones again",
        ),
        (
            WriteUp {
                columns: Some([ColumnKey::new("step").unwrap()].into()),
                ..choices.clone()
            },
            "columns of the write-up: step, now as many as find room again",
        ),
        (
            WriteUp {
                carries_project: false,
                ..choices.clone()
            },
            "project within the picture: no, now yes again",
        ),
    ] {
        let [undone, _] = said(&start(), &Edit::WriteUp(choice));
        assert_eq!(undone, words);
    }
    let several = WriteUp {
        with_note: !choices.with_note,
        ..dark
    };
    let [undone, _] = said(&start(), &Edit::WriteUp(several));
    assert_eq!(undone, "choices for the write-up");
}

#[test]
fn a_long_text_is_cut_and_two_that_begin_alike_are_told_once() {
    let long = "word ".repeat(30);
    let note = |end: &str| Edit::Note(Note::new(&format!("{long}{end}")).unwrap());
    let before = note("a").applied_to(&start()).unwrap();
    let [undone, redone] = said(&before, &note("b"));
    let words = "note: \"word word word word word word word word…\"";
    assert_eq!([undone.as_str(), redone.as_str()], [words, words]);
}

#[test]
fn no_two_edits_of_one_figure_are_called_by_different_figures() {
    // What stands before the value is the same whatever the value.
    let figure = |edit: &Edit| {
        said(&start(), edit)[0]
            .split(": ")
            .next()
            .unwrap()
            .to_owned()
    };
    let title = |text| Edit::Title(Some(name(text)));
    assert_eq!(figure(&title("one")), figure(&title("two")));
    let shift = |to| of_first(SetEdit::Shift(GearId(3), rpm(to)));
    assert_eq!(figure(&shift(5000.0)), figure(&shift(5100.0)));
}

#[test]
fn every_edit_is_called_the_same_by_undo_and_redo() {
    for edit in every_edit() {
        let mut history = History::new(start());
        history.edit(&edit).unwrap();
        let words = undo_words(&history);
        assert!(!words.is_empty(), "{edit:?}");
        history.undo();
        assert_eq!(redo_words(&history), words, "{edit:?}");
        history.redo();
        assert_eq!(undo_words(&history), words, "{edit:?}");
    }
}

/// Edits that give one project what another has.
fn edits_towards(from: &Project, to: &Project) -> Vec<Edit> {
    let mut edits = vec![
        Edit::Title(to.title.clone()),
        Edit::Date(to.date.clone()),
        Edit::Note(to.note.clone()),
        Edit::Units(to.units),
        Edit::Tyre(to.tyre),
        Edit::Idle(to.engine.idle),
        Edit::Redline(to.engine.redline),
        Edit::MarkedEngineSpeeds(to.marked_engine_speeds.clone()),
        Edit::MarkedRoadSpeeds(to.marked_road_speeds.clone()),
        Edit::WriteUp(to.write_up.clone()),
    ];
    let theirs = to.sets.baseline().set.to_spec();
    let ours = from.sets.baseline();
    let of_set = |edit| Edit::Set(ours.id, edit);
    for gear in &ours.set.gears {
        edits.push(of_set(SetEdit::Ratio(
            gear.id,
            theirs.gears[0].ratio.clone(),
        )));
        edits.push(of_set(SetEdit::Shift(gear.id, theirs.shift)));
        edits.push(of_set(SetEdit::RemoveGear(gear.id)));
    }
    edits.push(of_set(SetEdit::Name(theirs.name.clone())));
    edits.push(of_set(SetEdit::Tyre(theirs.tyre)));
    let drive = &theirs.final_drives[0];
    edits.push(of_set(SetEdit::FinalDrive(0, drive.clone())));
    edits.push(of_set(SetEdit::AddFinalDrive(drive.clone())));
    for sprocket in Sprocket::BOTH {
        edits.push(of_set(SetEdit::Sprocket(0, sprocket, 17)));
    }
    edits.push(of_set(SetEdit::ShiftAll(theirs.shift)));
    edits.push(of_set(SetEdit::Reverse(theirs.reverse.clone())));
    edits.extend(
        theirs
            .stages
            .iter()
            .cloned()
            .map(|stage| of_set(SetEdit::AddStage(stage))),
    );
    for at in 0..ours.set.stages.len() {
        edits.push(of_set(SetEdit::StageName(at, theirs.name.clone())));
        edits.push(of_set(SetEdit::RemovePosition(at, 0)));
        edits.push(of_set(SetEdit::RemoveStage(at)));
    }
    edits.push(of_set(SetEdit::Replace(Box::new(theirs))));
    edits
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn whatever_the_project_a_change_is_one_line_of_words_that_stays_the_same(
        [from, to] in [any_project(), any_project()],
    ) {
        for edit in edits_towards(&from, &to) {
            let mut history = History::new(from.clone());
            if history.edit(&edit).is_err() || history.undoable().is_none() {
                continue;
            }
            let named = history.undoable().unwrap().named();
            for words in [named.to_string(), named.undone(), named.redone()] {
                prop_assert!(!words.is_empty() && !words.chars().any(char::is_control));
                prop_assert!(words.chars().count() <= 240, "{}", words);
            }
            history.undo();
            prop_assert_eq!(history.redoable().unwrap().named(), named);
        }
    }
}
