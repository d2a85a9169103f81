//! What can be measured against limits?

use super::super::projects::any_name;
use super::{reading, readings};
use layshaft::workshop::{LimitItem, LimitsData};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

/// Any measurements.
pub(super) fn any() -> impl Strategy<Value = LimitsData> {
    let item = (option::of(any_name()), readings(), reading(), reading());
    let item = item.prop_map(|(name, readings, least, most)| LimitItem {
        name,
        readings,
        least,
        most,
    });
    vec(item, 0..5).prop_map(|items| LimitsData { items })
}
