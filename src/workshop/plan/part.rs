//! A row of the plan: a part, and what becomes of it for each candidate.

use super::Price;
use crate::gearing::{Name, one_line_text};
use std::collections::BTreeMap;

/// Names a row for as long as its project is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PartId(pub u32);

/// Names one candidate of the project: all that a plan knows of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CandidateId(pub u32);

one_line_text! {
    /// What is to be done with a part: one line of 1 to 120 characters.
    ToDo, "what is to be done", 120
}

/// A part that may have to change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// Its identity within the plan.
    pub id: PartId,
    /// What it is.
    pub name: Name,
    /// Whether it is struck out: it counts for nothing, but keeps what it says.
    pub is_struck: bool,
    /// What was said for a candidate; one for which nothing was said is not in it.
    entries: BTreeMap<CandidateId, PartEntry>,
}

/// What becomes of a part for one candidate.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PartEntry {
    /// Where it comes from.
    pub source: PartSource,
    /// Whether it is altered, else it goes in as it is.
    pub is_altered: bool,
    /// What is to be done, on one line.
    pub to_do: Option<ToDo>,
    /// What it costs.
    pub price: Option<Price>,
    /// Whether it is done.
    pub is_done: bool,
}

/// Where a part comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum PartSource {
    /// Nobody has decided yet.
    #[default]
    Undecided,
    /// From the box that is fitted.
    Fitted,
    /// From the donor.
    Donor,
    /// A new one.
    New,
}

impl PartSource {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Undecided, Self::Fitted, Self::Donor, Self::New];

    /// The source in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Undecided => "not decided",
            Self::Fitted => "as fitted",
            Self::Donor => "from the donor",
            Self::New => "new",
        }
    }

    /// The same in one word, for a narrow column.
    pub fn word(self) -> &'static str {
        match self {
            Self::Undecided => "undecided",
            Self::Fitted => "fitted",
            Self::Donor => "donor",
            Self::New => "new",
        }
    }
}

impl PartEntry {
    /// `from the donor, altered: grind the stop`.
    pub fn words(&self) -> String {
        let altered = if self.is_altered { ", altered" } else { "" };
        let to_do = self.to_do.as_ref().map(|to_do| format!(": {to_do}"));
        let source = self.source.words();
        format!("{source}{altered}{}", to_do.unwrap_or_default())
    }

    /// Whether nothing is to be done, made or paid: the part stays where it is.
    pub fn stays(&self) -> bool {
        let as_fitted = Self {
            source: PartSource::Fitted,
            is_done: self.is_done,
            ..Self::default()
        };
        *self == as_fitted
    }
}

/// What is said where nothing was.
static NOTHING_SAID: PartEntry = PartEntry {
    source: PartSource::Undecided,
    is_altered: false,
    to_do: None,
    price: None,
    is_done: false,
};

impl Part {
    /// A part for which nothing is said yet.
    pub fn new(id: PartId, name: Name) -> Self {
        Self {
            id,
            name,
            is_struck: false,
            entries: BTreeMap::new(),
        }
    }

    /// What becomes of it for a candidate.
    pub fn of(&self, candidate: CandidateId) -> &PartEntry {
        self.entries.get(&candidate).unwrap_or(&NOTHING_SAID)
    }

    /// The part with something else for a candidate.
    #[must_use]
    pub fn with(&self, candidate: CandidateId, entry: PartEntry) -> Self {
        let mut part = self.clone();
        if entry == NOTHING_SAID {
            part.entries.remove(&candidate);
        } else {
            part.entries.insert(candidate, entry);
        }
        part
    }

    /// Forgets what is said for candidates that are gone.
    pub(super) fn keep_to(&mut self, is_there: impl Fn(CandidateId) -> bool) {
        self.entries.retain(|id, _| is_there(*id));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_taken_back_was_never_said() {
        let part = Part::new(PartId(1), Name::new("mounts").unwrap());
        let entry = PartEntry {
            is_altered: true,
            ..PartEntry::default()
        };
        let said = part.with(CandidateId(1), entry);
        assert!(said.of(CandidateId(1)).is_altered);
        assert!(!said.of(CandidateId(2)).is_altered);
        assert_eq!(said.with(CandidateId(1), PartEntry::default()), part);
    }

    #[test]
    fn what_becomes_of_a_part_is_told_as_far_as_it_is_said() {
        let mut entry = PartEntry::default();
        assert_eq!(entry.words(), "not decided");
        entry.to_do = ToDo::new("grind the stop").ok();
        assert_eq!(entry.words(), "not decided: grind the stop");
        entry.source = PartSource::Donor;
        entry.is_altered = true;
        let all = "from the donor, altered: grind the stop";
        assert_eq!(entry.words(), all);
    }

    #[test]
    fn a_part_stays_where_nothing_is_done_or_paid_for_it() {
        let mut entry = PartEntry::default();
        assert!(!entry.stays());
        entry.source = PartSource::Fitted;
        assert!(entry.stays());
        entry.price = Price::from_amount(0.0).ok();
        assert!(!entry.stays());
    }
}
