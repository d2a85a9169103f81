//! The choices of the write-up in format 1; absent where they are the usual ones.

use super::super::shared::write_up::{FormEntry, WidthPx};
use super::super::v2::write_up::WriteUpV2;
use super::BeyondFormat1;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
#[serde(rename = "WriteUp", deny_unknown_fields)]
pub(super) struct WriteUpV1 {
    width_px: WidthPx,
    dark: bool,
    table: bool,
    note: bool,
    form: FormEntry,
    /// Visible sets that are left out, counted from 1.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    left_out: Vec<usize>,
}

impl From<WriteUpV1> for WriteUpV2 {
    fn from(choices: WriteUpV1) -> Self {
        Self {
            width_px: choices.width_px,
            dark: choices.dark,
            table: choices.table,
            note: choices.note,
            form: choices.form,
            left_out: choices.left_out,
            drops: None,
            columns: None,
            views: None,
            without_project: false,
        }
    }
}

impl TryFrom<WriteUpV2> for WriteUpV1 {
    type Error = BeyondFormat1;

    fn try_from(choices: WriteUpV2) -> Result<Self, BeyondFormat1> {
        let is_beyond =
            choices.drops.is_some() || choices.columns.is_some() || choices.views.is_some();
        if is_beyond || choices.without_project {
            return Err(BeyondFormat1);
        }
        Ok(Self {
            width_px: choices.width_px,
            dark: choices.dark,
            table: choices.table,
            note: choices.note,
            form: choices.form,
            left_out: choices.left_out,
        })
    }
}
