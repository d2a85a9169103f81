//! What every kind of job has: its fields, a list of items where it has one, and its answer.

use super::answer::Answer;
use super::field::Field;
use crate::units::BenchUnits;

/// The data of one kind of job.
pub(super) trait JobForm: Default + Clone + PartialEq + 'static {
    /// What is typed once.
    const FIELDS: &'static [Field<Self>];

    /// What it has a list of, [`NoItem`] where it has none.
    type Item: Default + Clone + PartialEq + 'static;

    /// What is typed of each item.
    const ITEM_FIELDS: &'static [Field<Self::Item>];

    /// What one of the items is called; none where there are none.
    const ITEM: Option<&'static str>;

    /// The items.
    fn items(&self) -> &[Self::Item];

    /// The items to be changed; none where the kind has none.
    fn items_mut(&mut self) -> Option<&mut Vec<Self::Item>>;

    /// What it comes to.
    fn answer(&self, units: BenchUnits) -> Answer;
}

/// The item of a kind that has none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct NoItem;

/// What a kind says of its items that has none.
macro_rules! no_items {
    () => {
        type Item = $crate::workshop::job::form::NoItem;
        const ITEM_FIELDS: &'static [$crate::workshop::job::field::Field<Self::Item>] = &[];
        const ITEM: Option<&'static str> = None;

        fn items(&self) -> &[Self::Item] {
            &[]
        }

        fn items_mut(&mut self) -> Option<&mut Vec<Self::Item>> {
            None
        }
    };
}

pub(super) use no_items;
