//! Does a set keep its colour and dash, whatever happens around it?

use super::{FIRST, SECOND, start};
use crate::support::projects::any_project;
use layshaft::project::{Candidates, Edit, History, Livery, Project, SetEdit, SetId};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::Index;

fn liveries(project: &Project) -> Vec<(SetId, usize)> {
    let sets = project.sets.iter();
    sets.map(|c| (c.id, c.livery.number())).collect()
}

fn after(project: &Project, edit: &Edit) -> Project {
    edit.applied_to(project).unwrap()
}

/// A copy of a set behind it.
fn copy(project: &Project, id: SetId) -> Edit {
    let set = &project.sets.get(id).unwrap().set;
    Edit::AddSet(id, Box::new((**set).clone()))
}

#[test]
fn a_copy_of_the_first_set_takes_what_is_free_and_the_second_set_keeps_its_own() {
    let copied = after(&start(), &copy(&start(), FIRST));
    let copy = SetId(3);
    assert_eq!(liveries(&copied), [(FIRST, 1), (copy, 3), (SECOND, 2)]);
}

#[test]
fn what_a_removed_set_had_is_taken_by_the_next_that_comes() {
    let left = after(&start(), &Edit::RemoveSet(FIRST));
    assert_eq!(liveries(&left), [(SECOND, 2)]);
    let next = after(&left, &copy(&left, SECOND));
    assert_eq!(liveries(&next), [(SECOND, 2), (SetId(3), 1)]);
}

#[test]
fn undo_gives_back_the_livery_that_a_set_had() {
    let mut history = History::new(start());
    let all = liveries(&start());
    history.edit(&Edit::RemoveSet(FIRST)).unwrap();
    history.edit(&copy(history.project(), SECOND)).unwrap();
    history.undo();
    assert_eq!(liveries(history.project()), [(SECOND, 2)]);
    history.undo();
    assert_eq!(liveries(history.project()), all);
}

/// What may happen to the sets of a project; anywhere, so that it may be refused as well.
#[derive(Debug, Clone)]
enum Deed {
    Copy(Index),
    Remove(Index),
    Move(Index, usize),
    Baseline(Index),
    Visible(Index, bool),
    /// As a set is pasted in the place of another.
    Replace(Index, Index),
}

fn deed() -> impl Strategy<Value = Deed> {
    let set = any::<Index>;
    prop_oneof![
        3 => set().prop_map(Deed::Copy),
        2 => set().prop_map(Deed::Remove),
        2 => (set(), 0..3_usize).prop_map(|(set, to)| Deed::Move(set, to)),
        1 => set().prop_map(Deed::Baseline),
        1 => (set(), any::<bool>()).prop_map(|(set, shown)| Deed::Visible(set, shown)),
        1 => (set(), set()).prop_map(|(set, like)| Deed::Replace(set, like)),
    ]
}

fn edit(project: &Project, deed: &Deed) -> Edit {
    let candidate = |at: &Index| {
        let mut sets = project.sets.iter();
        sets.nth(at.index(project.sets.len())).unwrap()
    };
    let id = |at: &Index| candidate(at).id;
    match deed {
        Deed::Copy(set) => copy(project, id(set)),
        Deed::Remove(set) => Edit::RemoveSet(id(set)),
        Deed::Move(set, to) => Edit::MoveSet(id(set), *to),
        Deed::Baseline(set) => Edit::Baseline(id(set)),
        Deed::Visible(set, shown) => Edit::Visible(id(set), *shown),
        Deed::Replace(set, like) => {
            let parts = candidate(like).set.to_spec();
            Edit::Set(id(set), SetEdit::Replace(Box::new(parts)))
        }
    }
}

/// The first livery that no set of a project has.
fn first_free(project: &Project) -> Option<Livery> {
    let is_free = |livery: &Livery| project.sets.iter().all(|c| c.livery != *livery);
    Livery::ALL.into_iter().find(is_free)
}

proptest! {
    #[test]
    fn a_set_keeps_its_livery_through_everything_and_a_new_one_takes_the_first_free_one(
        project in any_project(),
        deeds in vec(deed(), 1..12),
    ) {
        let mut project = project;
        for deed in &deeds {
            let Ok(after) = edit(&project, deed).applied_to(&project) else {
                continue;
            };
            for candidate in &after.sets {
                let had = project.sets.get(candidate.id).map(|before| before.livery);
                prop_assert_eq!(Some(candidate.livery), had.or_else(|| first_free(&project)));
                let same = after.sets.iter().filter(|other| other.livery == candidate.livery);
                prop_assert_eq!(same.count(), 1);
            }
            prop_assert!(after.sets.len() <= Candidates::MOST);
            project = after;
        }
    }
}
