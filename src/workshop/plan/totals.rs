//! What a plan comes to for one candidate: how many parts are where, and what they cost.

use super::{Amount, CandidateId, Part, PartEntry, PartSource, Plan};

/// How far a part has come for one candidate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PartState {
    /// Where it comes from is not decided.
    Undecided,
    /// It stays as it is fitted: nothing is to be done.
    Stays,
    /// It is decided and not done.
    Open,
    /// It is done.
    Done,
}

impl PartEntry {
    /// How far it has come: what is done is done, decided or not.
    pub fn state(&self) -> PartState {
        match self.source {
            _ if self.is_done => PartState::Done,
            _ if self.stays() => PartState::Stays,
            PartSource::Undecided => PartState::Undecided,
            PartSource::Fitted | PartSource::Donor | PartSource::New => PartState::Open,
        }
    }
}

/// What the parts of a plan that are not struck come to for one candidate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PlanTotals {
    /// What all of them cost.
    pub price: Amount,
    /// What those cost that are not done.
    pub open_price: Amount,
    /// How many have no source.
    pub undecided: usize,
    /// How many have one and are not done.
    pub open: usize,
    /// How many stay as they are fitted.
    pub stay: usize,
    /// How many are done.
    pub done: usize,
}

impl PlanTotals {
    /// The totals of a candidate.
    pub fn of(plan: &Plan, candidate: CandidateId) -> Self {
        let parts = plan.parts().iter().filter(|part: &&Part| !part.is_struck);
        let entries: Vec<&PartEntry> = parts.map(|part| part.of(candidate)).collect();
        let of_state = |state| entries.iter().filter(move |entry| entry.state() == state);
        let not_done = entries.iter().filter(|entry| !entry.is_done);
        Self {
            price: entries.iter().filter_map(|entry| entry.price).sum(),
            open_price: not_done.filter_map(|entry| entry.price).sum(),
            undecided: of_state(PartState::Undecided).count(),
            open: of_state(PartState::Open).count(),
            stay: of_state(PartState::Stays).count(),
            done: of_state(PartState::Done).count(),
        }
    }

    /// How many parts are where: `3 open, 2 not decided, 5 as fitted, 1 done`, without those of which there are none.
    pub fn count_text(&self) -> String {
        let counts = [
            (self.open, "open"),
            (self.undecided, "not decided"),
            (self.stay, "as fitted"),
            (self.done, "done"),
        ];
        let counts = counts.iter().filter(|(count, _)| *count > 0);
        let counts: Vec<String> = counts.map(|(count, is)| format!("{count} {is}")).collect();
        if counts.is_empty() {
            "no parts".to_owned()
        } else {
            counts.join(", ")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::Price;

    #[test]
    fn what_is_done_is_neither_open_nor_undecided() {
        let mut entry = PartEntry::default();
        assert_eq!(entry.state(), PartState::Undecided);
        entry.source = PartSource::New;
        assert_eq!(entry.state(), PartState::Open);
        entry.is_done = true;
        assert_eq!(entry.state(), PartState::Done);
        entry.source = PartSource::Undecided;
        assert_eq!(entry.state(), PartState::Done);
        entry = PartEntry {
            source: PartSource::Fitted,
            ..PartEntry::default()
        };
        assert_eq!(entry.state(), PartState::Stays);
        entry.is_altered = true;
        assert_eq!(entry.state(), PartState::Open);
    }

    #[test]
    fn counts_are_told_where_there_are_any() {
        let of = |plan: &Plan| PlanTotals::of(plan, CandidateId(1)).count_text();
        assert_eq!(of(&Plan::default()), "no parts");
        let plan = Plan::begun();
        assert_eq!(of(&plan), "11 not decided");
        let entry = PartEntry {
            source: PartSource::New,
            price: Price::from_amount(3.0).ok(),
            ..PartEntry::default()
        };
        let part = plan.parts()[0].with(CandidateId(1), entry);
        let plan = plan.changed(part).unwrap();
        assert_eq!(of(&plan), "1 open, 10 not decided");
    }
}
