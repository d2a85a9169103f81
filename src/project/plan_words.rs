//! What stands in the plan of what changes, in a few words and a value each: for histories and comparisons.

use super::document::Project;
use super::technical::Words;
use crate::workshop::{CurrencySign, Part, PartEntry, PartSource, Plan, Price, ToDo};

/// How large a plan is; nothing where there is none.
pub(super) fn plan_size_words(plan: Option<&Plan>) -> String {
    plan.map_or_else(String::new, |plan| match plan.parts().len() {
        1 => "1 part".to_owned(),
        count => format!("{count} parts"),
    })
}

/// The sign of a plan's currency; nothing where it has none.
pub(super) fn currency_words(plan: Option<&Plan>) -> String {
    let currency = plan.and_then(|plan| plan.currency.as_ref());
    currency.map_or_else(String::new, CurrencySign::to_string)
}

/// Whether a part is struck out.
pub(super) fn struck_words(part: &Part) -> &'static str {
    if part.is_struck {
        "struck out"
    } else {
        "in the plan"
    }
}

/// What becomes of a part that is called so, for one candidate.
pub(super) fn entry_words(entry: &PartEntry, part: &str) -> Words {
    let yes = |is: bool| is.then(|| "yes".to_owned());
    let is_decided = entry.source != PartSource::Undecided;
    let words = [
        (
            format!("source of {part}"),
            is_decided.then(|| entry.source.words().to_owned()),
        ),
        (format!("{part} altered"), yes(entry.is_altered)),
        (
            format!("what is to be done for {part}"),
            entry.to_do.as_ref().map(ToDo::to_string),
        ),
        (
            format!("price of {part}"),
            entry.price.as_ref().map(Price::to_string),
        ),
        (format!("{part} done"), yes(entry.is_done)),
    ];
    let known = words.into_iter();
    known
        .filter_map(|(what, value)| Some((what, value?)))
        .collect()
}

/// The whole plan: its currency, and every part by its place with what becomes of it for each set.
pub(super) fn plan_words(project: &Project) -> Words {
    let Some(plan) = &project.workshop.plan else {
        return Words::new();
    };
    let size = plan_size_words(Some(plan));
    let mut words = vec![("plan of what changes".to_owned(), size)];
    let currency = currency_words(Some(plan));
    if !currency.is_empty() {
        words.push(("currency of the plan".to_owned(), currency));
    }
    for (number, part) in (1..).zip(plan.parts()) {
        let name = format!("part {number}");
        let said = format!("{}, {}", part.name, struck_words(part));
        words.push((name.clone(), said));
        for (place, candidate) in (1..).zip(&project.sets) {
            let entry = entry_words(part.of(candidate.id.into()), &name).into_iter();
            words.extend(entry.map(|(what, value)| (format!("{what}, set {place}"), value)));
        }
    }
    words
}
