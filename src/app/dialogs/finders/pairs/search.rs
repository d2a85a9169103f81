//! What a search has found, searched anew when the wish is another one, and the order in which it is looked at.

use crate::finders::{FoundPair, Hunting, PairWish, tooth_pairs};
use crate::gearing::ToothPair;
use std::cmp::Ordering;

/// By which column the pairs stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Column {
    Driven,
    Driving,
    Ratio,
    /// How far off, whichever way.
    #[default]
    Error,
    Rpm,
    Hunting,
    Sum,
    Shift,
    Cut,
}

/// The order in which pairs are looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Order {
    pub(super) by: Column,
    pub(super) falls: bool,
}

impl Order {
    /// The order once the heading of a column is clicked: by that column, the other way round where it is that
    /// already.
    pub(super) fn clicked(self, by: Column) -> Self {
        Self {
            by,
            falls: self.by == by && !self.falls,
        }
    }
}

/// All pairs that come near enough to a wish.
#[derive(Debug)]
pub(super) struct Search {
    wish: PairWish,
    found: Vec<FoundPair>,
    /// How many of them can be cut.
    can_be_cut: usize,
    order: Order,
    with_uncut: bool,
    /// The places of those that are shown, in their order.
    shown: Vec<usize>,
}

impl Search {
    /// The search for a wish: the one before, as far as it is the same.
    pub(super) fn after(
        before: Option<Self>,
        wish: PairWish,
        (order, with_uncut): (Order, bool),
    ) -> Self {
        let mut search = match before {
            Some(before) if before.wish == wish => before,
            _ => {
                let found = tooth_pairs(&wish);
                Self {
                    can_be_cut: found.iter().filter(|pair| pair.can_be_cut()).count(),
                    found,
                    wish,
                    order: Order::default(),
                    with_uncut: !with_uncut,
                    shown: Vec::new(),
                }
            }
        };
        if (search.order, search.with_uncut) != (order, with_uncut) {
            search.show(order, with_uncut);
        }
        search
    }

    fn show(&mut self, order: Order, with_uncut: bool) {
        let is_shown = |at: &usize| with_uncut || self.found[*at].can_be_cut();
        let mut shown: Vec<usize> = (0..self.found.len()).filter(is_shown).collect();
        let compare = |a: &usize, b: &usize| {
            let (a, b) = (&self.found[*a], &self.found[*b]);
            let compared = compared(order.by, a, b);
            if order.falls {
                compared.reverse()
            } else {
                compared
            }
        };
        // Of equal ones the nearest stays first.
        shown.sort_by(compare);
        self.shown = shown;
        self.order = order;
        self.with_uncut = with_uncut;
    }

    /// What was wished.
    pub(super) fn wish(&self) -> &PairWish {
        &self.wish
    }

    /// How many pairs come near enough, and how many of them can be cut.
    pub(super) fn counts(&self) -> [usize; 2] {
        [self.found.len(), self.can_be_cut]
    }

    /// How many are shown.
    pub(super) fn len(&self) -> usize {
        self.shown.len()
    }

    /// The pair at a place of those that are shown.
    pub(super) fn at(&self, place: usize) -> Option<&FoundPair> {
        self.found.get(*self.shown.get(place)?)
    }

    /// The place of a pair among those that are shown.
    pub(super) fn place_of(&self, teeth: ToothPair) -> Option<usize> {
        self.shown
            .iter()
            .position(|at| self.found[*at].teeth == teeth)
    }
}

fn compared(by: Column, a: &FoundPair, b: &FoundPair) -> Ordering {
    let hunting = |pair: &FoundPair| match pair.hunting {
        Hunting::Yes => 0,
        Hunting::Partly => 1,
        Hunting::No => 2,
    };
    // What does not mesh at all stands behind all that does.
    let shift = |pair: &FoundPair| pair.profile_shift_sum().unwrap_or(f64::INFINITY);
    match by {
        Column::Driven => a.teeth.driven().cmp(&b.teeth.driven()),
        Column::Driving => a.teeth.driving().cmp(&b.teeth.driving()),
        Column::Ratio => a.teeth.ratio().total_cmp(&b.teeth.ratio()),
        Column::Error => a.error_percent.abs().total_cmp(&b.error_percent.abs()),
        Column::Rpm => a.error_percent.total_cmp(&b.error_percent),
        Column::Hunting => hunting(a).cmp(&hunting(b)),
        Column::Sum => a.sum().cmp(&b.sum()),
        Column::Shift => shift(a).total_cmp(&shift(b)),
        Column::Cut => b.can_be_cut().cmp(&a.can_be_cut()),
    }
}
