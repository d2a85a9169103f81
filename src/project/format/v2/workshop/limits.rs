//! What was measured against limits, in format 2.

use super::super::super::shared::values::NameText;
use super::values::{Items, ReadingMm, ReadingsMm, entry_of};
use crate::workshop::{LimitItem, LimitsData};
use serde::{Deserialize, Serialize};

entry_of! {
    LimitsV2 as "Limits" of LimitsData;
    items measured: Items<LimitV2> = items;
}

entry_of! {
    LimitV2 as "Limit" of LimitItem;
    known name: NameText = name;
    known readings_mm: ReadingsMm = readings;
    known least_mm: ReadingMm = least;
    known most_mm: ReadingMm = most;
}
