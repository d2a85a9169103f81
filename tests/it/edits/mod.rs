//! Does every edit do what it says, and does the history give back exactly what was?

mod differences;
mod figures;
mod history;
mod liveries;
mod naming;
mod of_project;
mod of_set;
mod plan;
mod refused;
mod sequences;
mod technical;
mod typed_figures;
mod workshop;

use layshaft::project::{Candidate, Edit, History, Project, SetEdit, SetId, format};

/// A vehicle with two gear sets, the first of which has one of everything.
const START: &str = include_str!("start.ron");

/// The first set of `START`, which the edits within a set change.
const FIRST: SetId = SetId(1);
const SECOND: SetId = SetId(2);

fn start() -> Project {
    format::read(START).unwrap()
}

fn candidate(project: &Project, id: SetId) -> &Candidate {
    project.sets.get(id).unwrap()
}

/// An edit, and what only the document after it shows.
struct Case {
    edit: Edit,
    shows: fn(&Project) -> bool,
}

/// What undoing would take back, in words; empty where there is nothing.
fn undo_words(history: &History) -> String {
    let words = history.undoable().map(|change| change.named().to_string());
    words.unwrap_or_default()
}

/// What redoing would bring back, in words; empty where there is nothing.
fn redo_words(history: &History) -> String {
    let words = history.redoable().map(|change| change.named().to_string());
    words.unwrap_or_default()
}

/// Makes the edit, takes it back and brings it back, and says what went wrong.
fn failure(case: &Case) -> Option<&'static str> {
    let mut history = History::new(start());
    let revision = history.revision();
    if (case.shows)(history.project()) {
        return Some("what it shows was there before");
    }
    if history.edit(&case.edit).is_err() {
        return Some("is refused");
    }
    let after = history.snapshot();
    if !(case.shows)(&after) {
        return Some("does not show");
    }
    if history.revision() == revision || !history.is_unsaved() {
        return Some("leaves no trace in revision or unsaved mark");
    }
    let words = undo_words(&history);
    if words.is_empty() {
        return Some("is called nothing by undo");
    }
    history.undo();
    if *history.project() != start() || history.is_unsaved() {
        return Some("is not taken back whole");
    }
    if redo_words(&history) != words {
        return Some("is called something else by redo");
    }
    history.redo();
    (*history.project() != *after).then_some("does not come back the same")
}

/// Fails with every case that fails.
#[track_caller]
fn assert_cases(cases: &[Case]) {
    let failures: Vec<String> = cases
        .iter()
        .filter_map(|case| Some(format!("{:?} {}", case.edit, failure(case)?)))
        .collect();
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
}

/// The edits of all cases, of a project and of its first set.
fn every_edit() -> Vec<Edit> {
    let of_set = of_set::cases().into_iter().map(|case| of_first(case.edit));
    let of_project = of_project::cases().into_iter().map(|case| case.edit);
    of_project.chain(of_set).collect()
}

fn of_first(edit: SetEdit) -> Edit {
    Edit::Set(FIRST, edit)
}
