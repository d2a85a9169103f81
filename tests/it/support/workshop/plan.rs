//! Which plans of what changes can exist?

use super::super::projects::any_name;
use super::super::technical::known;
use layshaft::project::Project;
use layshaft::workshop::{
    CandidateId, CurrencySign, Part, PartEntry, PartId, PartSource, Plan, Price, ToDo,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

/// Any plan for three candidates.
pub(crate) fn any_plan() -> BoxedStrategy<Plan> {
    let currency = option::of(select(vec!["€", "£", "US $", "Kč"]));
    (currency, vec(any_part(), 0..6))
        .prop_map(|(currency, parts)| {
            let currency = currency.map(|sign| CurrencySign::new(sign).unwrap());
            Plan::new(currency, parts).unwrap()
        })
        .boxed()
}

fn any_part() -> impl Strategy<Value = Part> {
    let entries = vec(any_entry(), 0..=3);
    (any_name(), any::<bool>(), entries).prop_map(|(name, is_struck, entries)| {
        let mut part = Part::new(PartId(1), name);
        part.is_struck = is_struck;
        let of_sets = (1..).map(CandidateId).zip(entries);
        of_sets.fold(part, |part, (id, entry)| part.with(id, entry))
    })
}

fn any_to_do() -> impl Strategy<Value = ToDo> {
    any_name().prop_map(|name| ToDo::new(name.as_str()).unwrap())
}

fn any_entry() -> BoxedStrategy<PartEntry> {
    let said = (
        select(PartSource::ALL.to_vec()),
        any::<bool>(),
        option::of(any_to_do()),
        known(0.0..=1e9, Price::from_amount),
        any::<bool>(),
    );
    said.prop_map(|(source, is_altered, to_do, price, is_done)| PartEntry {
        source,
        is_altered,
        to_do,
        price,
        is_done,
    })
    .boxed()
}

/// The plan with the identities that reading a file gives to its parts and to the sets of the project.
pub(crate) fn renumbered_plan(plan: &Plan, project: &Project) -> Plan {
    let parts = plan.parts().iter().map(|part| {
        let mut fresh = Part::new(part.id, part.name.clone());
        fresh.is_struck = part.is_struck;
        let of_sets = (1..).map(CandidateId).zip(&project.sets);
        of_sets.fold(fresh, |fresh, (id, set)| {
            fresh.with(id, part.of(set.id.into()).clone())
        })
    });
    Plan::new(plan.currency.clone(), parts.collect()).unwrap()
}
