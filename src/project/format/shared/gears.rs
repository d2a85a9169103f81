//! A gear as it stands in a file, and reverse. Final drives are counted from 1.

use super::super::outline::Step::Key;
use super::misfit::Misfit;
use super::ratio::RatioEntry;
use super::values::{LabelText, Rpm};
use crate::gearing::{Gear, GearId, GearRole, Label, Reverse};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "Gear", deny_unknown_fields)]
pub(crate) struct GearEntry {
    label: LabelText,
    ratio: RatioEntry,
    #[serde(default = "first", skip_serializing_if = "is_first")]
    final_drive: usize,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    crawler: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    shift_rpm: Option<Rpm>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Reverse", deny_unknown_fields)]
pub(crate) struct ReverseEntry {
    ratio: RatioEntry,
    #[serde(default = "first", skip_serializing_if = "is_first")]
    final_drive: usize,
}

fn first() -> usize {
    1
}

#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "the signature that serde asks for"
)]
fn is_first(number: &usize) -> bool {
    *number == 1
}

/// The number behind a key, counted from 1 in the file, counted from 0.
pub(crate) fn from_one(number: usize, key: &'static str, what: &str) -> Result<usize, Misfit> {
    let told = || Misfit::new([Key(key)], &format!("{what} are counted from 1"));
    number.checked_sub(1).ok_or_else(told)
}

impl GearEntry {
    pub(crate) fn label(&self) -> &Label {
        &self.label.0
    }

    pub(crate) fn into_gear(self, id: GearId) -> Result<Gear, Misfit> {
        Ok(Gear {
            id,
            label: self.label.0,
            ratio: self.ratio.0,
            final_drive: from_one(self.final_drive, "final_drive", "final drives")?,
            role: if self.crawler {
                GearRole::Crawler
            } else {
                GearRole::Shifted
            },
            shift: self.shift_rpm.map(|n| n.0),
        })
    }
}

impl ReverseEntry {
    pub(crate) fn into_reverse(self) -> Result<Reverse, Misfit> {
        let final_drive = from_one(self.final_drive, "final_drive", "final drives");
        Ok(Reverse {
            ratio: self.ratio.0,
            final_drive: final_drive.map_err(|misfit| misfit.within([Key("reverse")]))?,
        })
    }
}

impl From<&Gear> for GearEntry {
    fn from(gear: &Gear) -> Self {
        Self {
            label: LabelText(gear.label.clone()),
            ratio: RatioEntry(gear.ratio.clone()),
            final_drive: gear.final_drive + 1,
            crawler: gear.role == GearRole::Crawler,
            shift_rpm: gear.shift.map(Rpm),
        }
    }
}

impl From<&Reverse> for ReverseEntry {
    fn from(reverse: &Reverse) -> Self {
        Self {
            ratio: RatioEntry(reverse.ratio.clone()),
            final_drive: reverse.final_drive + 1,
        }
    }
}
