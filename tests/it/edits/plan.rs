//! The edits of the plan of what changes, and what becomes of it where sets come and go.

use super::{Case, FIRST, SECOND, start};
use crate::support::gear_sets::{name, set};
use layshaft::project::{Edit, History, Project, SetId, WorkshopEdit};
use layshaft::workshop::{
    CandidateId, CurrencySign, Part, PartEntry, PartId, PartSource, Plan, PlanTotals, Price,
};

const MOUNTS: PartId = PartId(1);

fn at_bench(edit: WorkshopEdit) -> Edit {
    Edit::Workshop(edit)
}

fn plan(project: &Project) -> &Plan {
    project.workshop.plan.as_ref().unwrap()
}

fn part(project: &Project, id: PartId) -> &Part {
    plan(project).part(id).unwrap()
}

fn price(amount: f64) -> Price {
    Price::from_amount(amount).unwrap()
}

/// The mounts of a set with something else.
fn said(set: SetId, project: &Project, change: fn(&mut PartEntry)) -> Edit {
    let mounts = part(project, MOUNTS);
    let mut entry = mounts.of(set.into()).clone();
    change(&mut entry);
    changed(mounts.with(set.into(), entry))
}

fn changed(part: Part) -> Edit {
    at_bench(WorkshopEdit::Part(Box::new(part)))
}

fn entry(project: &Project, set: SetId) -> &PartEntry {
    part(project, MOUNTS).of(set.into())
}

pub(super) fn plan_edits() -> Vec<Case> {
    let start = start();
    let mut renamed = part(&start, MOUNTS).clone();
    renamed.name = name("engine mounts");
    let mut back = part(&start, PartId(2)).clone();
    back.is_struck = false;
    vec![
        Case {
            edit: at_bench(WorkshopEdit::Plan(Some(Box::new(Plan::begun())))),
            shows: |p| plan(p).parts().len() == 11,
        },
        Case {
            edit: at_bench(WorkshopEdit::Plan(None)),
            shows: |p| p.workshop.plan.is_none(),
        },
        Case {
            edit: at_bench(WorkshopEdit::Currency(CurrencySign::new("€").ok())),
            shows: |p| plan(p).currency.is_some(),
        },
        Case {
            edit: at_bench(WorkshopEdit::AddPart(name("seals"))),
            shows: |p| part(p, PartId(2)).is_struck && plan(p).parts().len() == 3,
        },
        Case {
            edit: at_bench(WorkshopEdit::RemovePart(MOUNTS)),
            shows: |p| plan(p).part(MOUNTS).is_none(),
        },
        Case {
            edit: changed(renamed),
            shows: |p| part(p, MOUNTS).name == name("engine mounts"),
        },
        Case {
            edit: changed(back),
            shows: |p| !part(p, PartId(2)).is_struck,
        },
        Case {
            edit: said(SECOND, &start, |entry| entry.price = Some(price(120.0))),
            shows: |p| {
                entry(p, SECOND).price == Some(price(120.0)) && entry(p, FIRST).price.is_none()
            },
        },
        Case {
            edit: said(FIRST, &start, |entry| entry.source = PartSource::Donor),
            shows: |p| entry(p, FIRST).source == PartSource::Donor,
        },
    ]
}

/// The project with a price for the mounts of the second set.
fn priced() -> Project {
    let edit = said(SECOND, &start(), |entry| entry.price = Some(price(90.0)));
    edit.applied_to(&start()).unwrap()
}

#[test]
fn a_change_of_the_plan_is_called_by_its_part_and_its_set() {
    let mut history = History::new(priced());
    let edit = said(SECOND, history.project(), |entry| {
        entry.price = Some(price(120.0));
    });
    history.edit(&edit).unwrap();
    let named = history.undoable().unwrap().named();
    assert_eq!(named.to_string(), "price of mounts, set 2: 120");
    assert_eq!(named.undone(), "price of mounts, set 2: 120, now 90 again");
    let edit = at_bench(WorkshopEdit::RemovePart(PartId(2)));
    history.edit(&edit).unwrap();
    assert_eq!(super::undo_words(&history), "removed part: starter");
}

#[test]
fn a_set_that_goes_takes_along_what_the_plan_says_of_it() {
    let without = Edit::RemoveSet(SECOND).applied_to(&priced()).unwrap();
    assert_eq!(without.workshop, start().workshop);
}

#[test]
fn a_new_set_begins_with_the_plan_of_the_one_before_it() {
    let grown = Edit::AddSet(SECOND, Box::new(set(&[1.0], 4.0)));
    let grown = grown.applied_to(&priced()).unwrap();
    let totals = |set: SetId| PlanTotals::of(plan(&grown), set.into());
    assert_eq!(totals(SetId(3)), totals(SECOND));
    assert_ne!(totals(SetId(3)), totals(FIRST));
}

#[test]
fn what_is_not_there_is_not_changed() {
    let gone = at_bench(WorkshopEdit::Plan(None))
        .applied_to(&start())
        .unwrap();
    for edit in [
        at_bench(WorkshopEdit::AddPart(name("seals"))),
        said(FIRST, &start(), |entry| entry.is_done = true),
    ] {
        let error = edit.applied_to(&gone).unwrap_err();
        assert_eq!(
            error.to_string(),
            "there is no plan of what changes any more"
        );
    }
    let stranger = part(&start(), MOUNTS).with(CandidateId(9), entry(&priced(), SECOND).clone());
    assert_eq!(changed(stranger).applied_to(&start()), Ok(start()));
    let error = at_bench(WorkshopEdit::RemovePart(PartId(9))).applied_to(&start());
    let error = error.unwrap_err().to_string();
    assert_eq!(error, "that part is not in the plan any more");
}
