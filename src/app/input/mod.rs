//! Events before anybody answers them: their order, keys that are taken, and what the pointer says.

mod in_order;
mod keys_taken;
mod page_keys;
mod pointer;

pub(super) use in_order::{InputInOrder, hold_keys};
#[cfg(test)]
pub(super) use keys_taken::press;
pub(super) use keys_taken::{pressed, steps, taken};
pub(super) use page_keys::Scroll;
pub(super) use pointer::is_told_by_pointer;
