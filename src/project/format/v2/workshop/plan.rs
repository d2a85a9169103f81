//! The plan of what changes, in format 2: its parts, and what becomes of each for the sets, by their number.

use super::super::super::shared::misfit::Misfit;
use super::super::super::shared::values::{
    NameText, PlainNumber, WrittenNumber, WrittenOutOfRange, file_number, file_text,
};
use super::values::same_words;
use crate::gearing::TextError;
use crate::project::document::Candidates;
use crate::project::format::outline::Step::{Item, Key};
use crate::workshop::{
    CandidateId, CurrencySign, Part, PartEntry, PartId, PartSource, Plan, Price, ToDo,
};
use serde::{Deserialize, Serialize};

file_number!(PriceNumber, Price, from_amount, amount);
file_text!(CurrencyText, CurrencySign, Clone);
file_text!(ToDoText, ToDo, Clone);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Plan", deny_unknown_fields)]
pub(super) struct PlanV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    currency: Option<CurrencyText>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    parts: Vec<PartV2>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Part", deny_unknown_fields)]
struct PartV2 {
    name: NameText,
    #[serde(default, skip_serializing_if = "is_no")]
    struck: bool,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    sets: Vec<PartOfSetV2>,
}

/// What becomes of a part for one set; what is not said is absent.
#[derive(Serialize, Deserialize)]
#[serde(rename = "PartOfSet", deny_unknown_fields)]
struct PartOfSetV2 {
    /// Counted from 1.
    set: usize,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    source: Option<SourceEntry>,
    #[serde(default, skip_serializing_if = "is_no")]
    altered: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    to_do: Option<ToDoText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    price: Option<PriceNumber>,
    #[serde(default, skip_serializing_if = "is_no")]
    done: bool,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Source")]
enum SourceEntry {
    Undecided,
    Fitted,
    Donor,
    New,
}

same_words!(SourceEntry, PartSource, Undecided, Fitted, Donor, New);

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks so")]
fn is_no(is: &bool) -> bool {
    !is
}

impl PlanV2 {
    pub(super) fn of(plan: &Plan, sets: &Candidates) -> Self {
        let parts = plan.parts().iter().map(|part| PartV2::of(part, sets));
        Self {
            currency: plan.currency.clone().map(CurrencyText),
            parts: parts.collect(),
        }
    }

    /// The plan that the file holds.
    ///
    /// # Errors
    /// When it has too many parts, or one of them names a set that is not there, or one twice.
    pub(super) fn into_plan(self, sets: &Candidates) -> Result<Plan, Misfit> {
        let parts = (0..).zip(self.parts).map(|(place, part)| {
            let told = |misfit: Misfit| misfit.within([Key("parts"), Item(place)]);
            part.into_part(sets).map_err(told)
        });
        let parts: Vec<Part> = parts.collect::<Result<_, _>>()?;
        let currency = self.currency.map(|sign| sign.0);
        Plan::new(currency, parts).map_err(|error| Misfit::new([Key("parts")], &error))
    }
}

impl PartV2 {
    fn of(part: &Part, sets: &Candidates) -> Self {
        let said = (1..).zip(sets).map(|(set, c)| (set, part.of(c.id.into())));
        let said = said.filter(|(_, entry)| **entry != PartEntry::default());
        Self {
            name: NameText(part.name.clone()),
            struck: part.is_struck,
            sets: said
                .map(|(set, entry)| PartOfSetV2::of(set, entry))
                .collect(),
        }
    }

    fn into_part(self, sets: &Candidates) -> Result<Part, Misfit> {
        // The plan gives each its own identity.
        let mut part = Part::new(PartId(0), self.name.0);
        part.is_struck = self.struck;
        let mut said = Vec::new();
        for (place, of_set) in (0..).zip(self.sets) {
            let number = of_set.set;
            let candidate = number.checked_sub(1).and_then(|at| sets.iter().nth(at));
            let wrong =
                |reason: String| Misfit::new([Key("sets"), Item(place), Key("set")], &reason);
            let candidate = candidate
                .ok_or_else(|| wrong(format!("the plan names set {number}, which is not there")))?;
            if said.contains(&number) {
                return Err(wrong(format!("set {number} stands here twice")));
            }
            said.push(number);
            part = part.with(CandidateId::from(candidate.id), of_set.into_entry());
        }
        Ok(part)
    }
}

impl PartOfSetV2 {
    fn of(set: usize, entry: &PartEntry) -> Self {
        let is_decided = entry.source != PartSource::Undecided;
        Self {
            set,
            source: is_decided.then(|| entry.source.into()),
            altered: entry.is_altered,
            to_do: entry.to_do.clone().map(ToDoText),
            price: entry.price.map(PriceNumber),
            done: entry.is_done,
        }
    }

    fn into_entry(self) -> PartEntry {
        PartEntry {
            source: self.source.map(Into::into).unwrap_or_default(),
            is_altered: self.altered,
            to_do: self.to_do.map(|text| text.0),
            price: self.price.map(|price| price.0),
            is_done: self.done,
        }
    }
}
