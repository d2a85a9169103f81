//! What must change, part by part and candidate by candidate: a plan of the user's own.
//!
//! The program knows no parts: it offers the rows of the trade to begin with, and adds up what stands in them.

mod part;
mod price;
mod totals;

pub use part::{CandidateId, Part, PartEntry, PartId, PartSource, ToDo};
pub use price::{Amount, CurrencySign, Price};
pub use totals::{PartState, PlanTotals};

use crate::gearing::Name;

/// The rows of a plan, and the sign of its currency.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Plan {
    /// In what prices are, where that was typed: nothing is converted.
    pub currency: Option<CurrencySign>,
    parts: Vec<Part>,
}

/// Why a plan cannot be changed so.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PlanError {
    /// Too many rows.
    #[error("a plan has at most {most} parts, not {count}", most = Plan::MOST)]
    TooMany {
        /// How many there were.
        count: usize,
    },
    /// The row is not there (any more).
    #[error("that part is not in the plan any more")]
    NoSuchPart,
    /// There is none.
    #[error("there is no plan of what changes any more")]
    NoPlan,
}

/// The parts that a plan begins with: what two generations of a box seldom have in common.
const STARTING_PARTS: [&str; 11] = [
    "case halves",
    "shift mechanism and its stop for the highest gear",
    "selector forks and shafts",
    "speed signal",
    "clutch and release bearing",
    "input shaft and pilot bearing",
    "output flanges and axle shafts",
    "mounts",
    "starter",
    "reverse switch",
    "breather and oil quantity",
];

impl Plan {
    /// The most rows that a plan can have: as many as one page of paper holds.
    pub const MOST: usize = 30;

    /// A plan with the parts of the trade, nothing decided.
    pub fn begun() -> Self {
        let names = STARTING_PARTS
            .iter()
            .filter_map(|name| Name::new(name).ok());
        let parts = (1..).zip(names);
        let parts = parts.map(|(id, name)| Part::new(PartId(id), name));
        Self {
            currency: None,
            parts: parts.collect(),
        }
    }

    /// A plan with these rows, which get identities of their own.
    ///
    /// # Errors
    /// When there are too many.
    pub fn new(currency: Option<CurrencySign>, parts: Vec<Part>) -> Result<Self, PlanError> {
        if parts.len() > Self::MOST {
            return Err(PlanError::TooMany { count: parts.len() });
        }
        let parts = (1..).zip(parts).map(|(id, mut part)| {
            part.id = PartId(id);
            part
        });
        Ok(Self {
            currency,
            parts: parts.collect(),
        })
    }

    /// The rows in their order.
    pub fn parts(&self) -> &[Part] {
        &self.parts
    }

    /// The row of that identity.
    pub fn part(&self, id: PartId) -> Option<&Part> {
        self.parts.iter().find(|part| part.id == id)
    }

    /// The plan with one more row behind the others.
    ///
    /// # Errors
    /// When there are as many as can be.
    pub fn with(&self, name: Name) -> Result<Self, PlanError> {
        let count = self.parts.len() + 1;
        if count > Self::MOST {
            return Err(PlanError::TooMany { count });
        }
        let last = self.parts.iter().map(|part| part.id.0).max();
        let mut plan = self.clone();
        let id = PartId(last.unwrap_or(0) + 1);
        plan.parts.push(Part::new(id, name));
        Ok(plan)
    }

    /// The plan with a row changed, by its identity.
    ///
    /// # Errors
    /// When it is not there.
    pub fn changed(&self, part: Part) -> Result<Self, PlanError> {
        let mut plan = self.clone();
        let place = plan.parts.iter_mut().find(|old| old.id == part.id);
        *place.ok_or(PlanError::NoSuchPart)? = part;
        Ok(plan)
    }

    /// The plan without a row.
    ///
    /// # Errors
    /// When it is not there.
    pub fn without(&self, id: PartId) -> Result<Self, PlanError> {
        let mut plan = self.clone();
        plan.parts.retain(|part| part.id != id);
        if plan.parts.len() == self.parts.len() {
            return Err(PlanError::NoSuchPart);
        }
        Ok(plan)
    }

    /// The plan where a new candidate begins with what another one has.
    #[must_use]
    pub fn copied(&self, from: CandidateId, to: CandidateId) -> Self {
        let parts = self.parts.iter();
        let parts = parts.map(|part| part.with(to, part.of(from).clone()));
        Self {
            currency: self.currency.clone(),
            parts: parts.collect(),
        }
    }

    /// Whether something is said for a candidate.
    pub fn says_of(&self, candidate: CandidateId) -> bool {
        let nothing = PartEntry::default();
        self.parts.iter().any(|part| *part.of(candidate) != nothing)
    }

    /// The plan without what stands there for candidates that are gone.
    #[must_use]
    pub fn among(mut self, is_there: impl Fn(CandidateId) -> bool) -> Self {
        for part in &mut self.parts {
            part.keep_to(&is_there);
        }
        self
    }

    /// What becomes of a part, with its price: `new: weld the bracket · €35`.
    pub fn entry_text(&self, entry: &PartEntry) -> String {
        let price = entry.price.map(|price| self.amount_text(price.into()));
        let price = price.map(|price| format!(" · {price}"));
        entry.words() + &price.unwrap_or_default()
    }

    /// An amount with the sign of the plan's currency: `€1240`, `1240 SEK`.
    pub fn amount_text(&self, amount: Amount) -> String {
        match &self.currency {
            Some(sign) if sign.stands_before() => format!("{sign}{amount}"),
            Some(sign) => format!("{amount} {sign}"),
            None => amount.to_string(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const OLD: CandidateId = CandidateId(1);
    const NEW: CandidateId = CandidateId(2);

    fn entry(price: f64, is_done: bool) -> PartEntry {
        PartEntry {
            source: PartSource::Donor,
            price: Some(Price::from_amount(price).unwrap()),
            is_done,
            ..PartEntry::default()
        }
    }

    fn with(plan: &Plan, id: u32, entry: PartEntry) -> Plan {
        let part = plan.part(PartId(id)).unwrap().with(OLD, entry);
        plan.changed(part).unwrap()
    }

    #[test]
    fn a_plan_begins_with_the_parts_of_the_trade_and_nothing_decided() {
        let plan = Plan::begun();
        assert_eq!(plan.parts().len(), STARTING_PARTS.len());
        let totals = PlanTotals::of(&plan, OLD);
        assert_eq!([totals.undecided, totals.open, totals.done], [11, 0, 0]);
        assert_eq!(totals.price.to_string(), "0");
    }

    #[test]
    fn prices_add_up_of_all_and_of_what_is_not_done_yet() {
        let plan = with(&Plan::begun(), 1, entry(120.5, true));
        let plan = with(&plan, 2, entry(80.25, false));
        let totals = PlanTotals::of(&plan, OLD);
        assert_eq!(totals.price.to_string(), "200.75");
        assert_eq!(totals.open_price.to_string(), "80.25");
        assert_eq!([totals.undecided, totals.open, totals.done], [9, 1, 1]);
        let other = PlanTotals::of(&plan, NEW);
        assert_eq!(other.price.to_string(), "0");
    }

    #[test]
    fn a_part_that_is_struck_counts_for_nothing_and_keeps_what_it_says() {
        let plan = with(&Plan::begun(), 1, entry(120.0, false));
        let mut part = plan.part(PartId(1)).unwrap().clone();
        part.is_struck = true;
        let plan = plan.changed(part).unwrap();
        let totals = PlanTotals::of(&plan, OLD);
        assert_eq!([totals.undecided, totals.open, totals.done], [10, 0, 0]);
        assert_eq!(totals.price.to_string(), "0");
        assert_eq!(plan.parts()[0].of(OLD), &entry(120.0, false));
    }

    #[test]
    fn a_candidate_begins_with_what_another_has_and_takes_its_entries_along() {
        let plan = with(&Plan::begun(), 1, entry(120.0, false));
        let both = plan.copied(OLD, NEW);
        assert_eq!(PlanTotals::of(&both, NEW), PlanTotals::of(&both, OLD));
        assert_eq!(both.among(|id| id == OLD), plan);
        assert_eq!(plan.among(|_| false), Plan::begun());
    }

    #[test]
    fn rows_come_and_go_up_to_a_page() {
        let mut plan = Plan::begun();
        plan = plan.without(PartId(11)).unwrap();
        assert_eq!(plan.without(PartId(11)), Err(PlanError::NoSuchPart));
        for _ in plan.parts().len()..Plan::MOST {
            plan = plan.with(Name::new("seal").unwrap()).unwrap();
        }
        let error = plan.with(Name::new("seal").unwrap()).unwrap_err();
        assert_eq!(error.to_string(), "a plan has at most 30 parts, not 31");
    }

    #[test]
    fn amounts_have_the_sign_of_the_plan() {
        let mut plan = Plan::begun();
        let amount = Amount::from(Price::from_amount(1240.0).unwrap());
        assert_eq!(plan.amount_text(amount), "1240");
        plan.currency = Some(CurrencySign::new("€").unwrap());
        assert_eq!(plan.amount_text(amount), "€1240");
        assert_eq!(
            plan.entry_text(&entry(35.5, false)),
            "from the donor · €35.50"
        );
        plan.currency = Some(CurrencySign::new("SEK").unwrap());
        assert_eq!(plan.amount_text(amount), "1240 SEK");
    }
}
