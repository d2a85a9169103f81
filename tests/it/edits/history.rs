//! Is a gesture one step or none, and does the history know what is saved?

use super::{FIRST, SECOND, candidate, of_first, redo_words, start, undo_words};
use crate::support::gear_sets::{name, rpm};
use layshaft::gearing::GearId;
use layshaft::project::{Edit, History, SetEdit};
use std::sync::Arc;

fn title(text: &str) -> Edit {
    Edit::Title(Some(name(text)))
}

fn redline(redline_rpm: f64) -> Edit {
    Edit::Redline(rpm(redline_rpm))
}

fn shown_title(history: &History) -> &str {
    history.project().title.as_ref().map_or("", |t| t.as_str())
}

/// A gesture that drags the redline through several places.
fn dragged(history: &mut History, places: &[f64]) {
    for place in places {
        history.preview(&redline(*place)).unwrap();
    }
}

#[test]
fn a_gesture_of_many_previews_is_one_step() {
    let mut history = History::new(start());
    dragged(&mut history, &[6400.0, 6300.0, 6200.0]);
    assert!(history.in_gesture());
    assert_eq!(history.project().engine.redline, rpm(6200.0));
    history.commit();
    assert!(!history.in_gesture());
    history.undo();
    assert_eq!(history.project(), &start());
    assert!(history.undoable().is_none());
    history.redo();
    assert_eq!(history.project().engine.redline, rpm(6200.0));
    assert!(history.redoable().is_none());
}

#[test]
fn each_preview_starts_from_the_document_before_the_gesture() {
    let mut history = History::new(start());
    history.preview(&title("typed")).unwrap();
    history.preview(&redline(6000.0)).unwrap();
    assert_eq!(
        history.project(),
        &redline(6000.0).applied_to(&start()).unwrap()
    );
    assert_eq!(undo_words(&history), "redline: 6000");
}

#[test]
fn a_cancelled_gesture_leaves_no_step() {
    let mut history = History::new(start());
    history.edit(&title("kept")).unwrap();
    let before = history.snapshot();
    dragged(&mut history, &[6400.0, 6300.0]);
    history.cancel();
    assert!(!history.in_gesture());
    assert_eq!(*history.project(), *before);
    assert_eq!(undo_words(&history), "title: \"kept\"");
    history.undo();
    assert_eq!(history.project(), &start());
}

#[test]
fn a_gesture_that_ends_where_it_began_leaves_no_step() {
    let mut history = History::new(start());
    dragged(&mut history, &[6400.0, 6500.0]);
    history.commit();
    assert!(history.undoable().is_none());
    assert!(!history.is_unsaved());
}

#[test]
fn a_gesture_that_ends_where_it_began_leaves_what_can_be_redone() {
    let mut history = History::new(start());
    history.edit(&title("undone")).unwrap();
    history.undo();
    dragged(&mut history, &[6400.0, 6500.0]);
    assert_eq!(redo_words(&history), "title: \"undone\"");
    history.redo();
    assert_eq!(shown_title(&history), "undone");
}

#[test]
fn an_edit_that_changes_nothing_leaves_no_step() {
    let mut history = History::new(start());
    let fresh = history.revision();
    history.edit(&redline(6500.0)).unwrap();
    assert_eq!(undo_words(&history), "");
    assert_eq!(history.revision(), fresh);
}

#[test]
fn an_edit_during_a_gesture_ends_the_gesture_first() {
    let mut history = History::new(start());
    dragged(&mut history, &[6400.0]);
    history.edit(&title("later")).unwrap();
    assert!(!history.in_gesture());
    history.undo();
    assert_eq!(
        history.project(),
        &redline(6400.0).applied_to(&start()).unwrap()
    );
    history.undo();
    assert_eq!(history.project(), &start());
}

#[test]
fn undoing_during_a_gesture_takes_the_gesture_back() {
    let mut history = History::new(start());
    history.edit(&title("kept")).unwrap();
    dragged(&mut history, &[6400.0]);
    assert_eq!(undo_words(&history), "redline: 6400");
    history.undo();
    assert_eq!(
        history.project(),
        &title("kept").applied_to(&start()).unwrap()
    );
    assert_eq!(redo_words(&history), "redline: 6400");
    history.redo();
    assert_eq!(history.project().engine.redline, rpm(6400.0));
}

#[test]
fn the_words_tell_what_undo_and_redo_would_do_during_a_gesture() {
    let mut history = History::new(start());
    history.edit(&title("kept")).unwrap();
    history.edit(&title("undone")).unwrap();
    history.undo();
    // Nothing is moved yet: undo takes the title back.
    dragged(&mut history, &[6500.0]);
    let words = [undo_words(&history), redo_words(&history)];
    assert_eq!(words, ["title: \"kept\"", "title: \"undone\""]);
    // Now undo takes the gesture back, and there is nothing to redo.
    dragged(&mut history, &[6400.0]);
    let words = [undo_words(&history), redo_words(&history)];
    assert_eq!(words, ["redline: 6400", ""]);
    history.redo();
    assert_eq!(shown_title(&history), "kept");
}

#[test]
fn a_preview_that_is_refused_leaves_the_last_good_one() {
    let mut history = History::new(start());
    let shift = |gear| of_first(SetEdit::Shift(GearId(gear), rpm(5000.0)));
    history.preview(&shift(3)).unwrap();
    let good = history.snapshot();
    assert!(history.preview(&shift(99)).is_err());
    assert_eq!(*history.project(), *good);
    history.commit();
    assert_eq!(undo_words(&history), "shift point of 2, set 1: 5000");
    history.undo();
    assert_eq!(history.project(), &start());
}

#[test]
fn a_first_preview_that_is_refused_begins_no_gesture() {
    let mut history = History::new(start());
    assert!(
        history
            .preview(&Edit::RemoveSet(layshaft::project::SetId(9)))
            .is_err()
    );
    assert!(!history.in_gesture());
}

#[test]
fn a_new_edit_leaves_nothing_to_redo() {
    let mut history = History::new(start());
    history.edit(&title("first")).unwrap();
    history.undo();
    history.edit(&title("second")).unwrap();
    assert!(history.redoable().is_none());
    history.redo();
    assert_eq!(shown_title(&history), "second");
}

#[test]
fn undoing_back_to_what_was_saved_is_not_unsaved() {
    let mut history = History::new(start());
    history.edit(&title("saved")).unwrap();
    assert!(history.is_unsaved());
    history.mark_saved(history.snapshot());
    assert!(!history.is_unsaved());
    history.edit(&title("later")).unwrap();
    assert!(history.is_unsaved());
    history.undo();
    assert!(!history.is_unsaved());
    // Before the save is not what the file holds either.
    history.undo();
    assert!(history.is_unsaved());
    history.redo();
    assert!(!history.is_unsaved());
}

#[test]
fn typing_the_saved_value_again_is_not_unsaved() {
    let mut history = History::new(start());
    history.edit(&redline(7000.0)).unwrap();
    history.edit(&redline(6500.0)).unwrap();
    assert!(!history.is_unsaved());
}

#[test]
fn equal_documents_are_one_and_the_same() {
    let mut history = History::new(start());
    let saved = history.snapshot();
    history.edit(&redline(7000.0)).unwrap();
    history.edit(&redline(6500.0)).unwrap();
    assert!(Arc::ptr_eq(&saved, &history.snapshot()));
    dragged(&mut history, &[6400.0, 6500.0]);
    assert!(Arc::ptr_eq(&saved, &history.snapshot()));
}

#[test]
fn a_save_of_an_equal_document_during_a_gesture_leaves_the_gesture_as_it_is() {
    let mut history = History::new(start());
    history.mark_unsaved();
    dragged(&mut history, &[6400.0]);
    history.mark_saved(Arc::new(start()));
    assert!(history.is_unsaved());
    dragged(&mut history, &[6500.0]);
    assert!(!history.is_unsaved() && history.undoable().is_none());
}

#[test]
fn a_save_that_ends_late_saves_what_it_was_given() {
    let mut history = History::new(start());
    history.edit(&title("given")).unwrap();
    let given = history.snapshot();
    history.edit(&title("typed meanwhile")).unwrap();
    history.mark_saved(given);
    assert!(history.is_unsaved());
    history.undo();
    assert!(!history.is_unsaved());
}

#[test]
fn a_preview_counts_as_unsaved_until_it_is_taken_back() {
    let mut history = History::new(start());
    dragged(&mut history, &[6400.0]);
    assert!(history.is_unsaved());
    history.cancel();
    assert!(!history.is_unsaved());
}

#[test]
fn the_revision_changes_with_the_document_and_only_then() {
    let mut history = History::new(start());
    let mut seen = vec![history.revision()];
    let mut note = |history: &History| {
        let fresh = !seen.contains(&history.revision());
        seen.push(history.revision());
        fresh
    };
    history.edit(&title("a")).unwrap();
    assert!(note(&history), "an edit");
    dragged(&mut history, &[6400.0]);
    assert!(note(&history), "a preview");
    dragged(&mut history, &[6400.0]);
    assert!(!note(&history), "the same preview again");
    history.commit();
    assert!(
        !note(&history),
        "a commit changes what can be undone, not the document"
    );
    history.undo();
    assert!(note(&history), "an undo");
    history.redo();
    assert!(note(&history), "a redo");
    history.mark_saved(history.snapshot());
    history.commit();
    history.cancel();
    history.redo();
    assert!(!note(&history), "nothing to do");
}

#[test]
fn undoing_and_redoing_without_steps_changes_nothing() {
    let mut history = History::new(start());
    let fresh = history.revision();
    history.undo();
    history.redo();
    assert_eq!((history.project(), history.revision()), (&start(), fresh));
}

#[test]
fn two_documents_never_have_the_same_revision() {
    let (one, other) = (History::new(start()), History::new(start()));
    assert_ne!(one.revision(), other.revision());
    assert_ne!(one.revision().document(), other.revision().document());
    assert_eq!(one.clone().revision(), one.revision());
}

#[test]
fn the_oldest_of_more_than_500_steps_is_let_go() {
    let mut history = History::new(start());
    for step in 1..=503 {
        history.edit(&redline(6500.0 + f64::from(step))).unwrap();
    }
    // They are counted all the same.
    assert_eq!(history.steps(), 503);
    for _ in 0..600 {
        history.undo();
    }
    assert_eq!(history.steps(), 3);
    assert_eq!(history.project().engine.redline, rpm(6503.0));
    for _ in 0..600 {
        history.redo();
    }
    assert_eq!(history.project().engine.redline, rpm(7003.0));
}

#[test]
fn a_dragged_shift_point_of_one_set_leaves_the_other_set() {
    let mut history = History::new(start());
    for shift_rpm in [5900.0, 5800.0, 5700.0] {
        let shift = SetEdit::Shift(GearId(3), rpm(shift_rpm));
        history.preview(&of_first(shift)).unwrap();
    }
    history.commit();
    let before = start();
    assert_eq!(
        candidate(history.project(), SECOND),
        candidate(&before, SECOND)
    );
    assert_ne!(
        candidate(history.project(), FIRST),
        candidate(&before, FIRST)
    );
}
