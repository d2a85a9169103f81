//! The choices of the write-up in format 2; absent where they are the usual ones.

use super::super::outline::Step::{Item, Key};
use super::super::shared::misfit::Misfit;
use super::super::shared::write_up::{FormEntry, WidthPx};
use crate::project::document::{Candidates, SetId};
use crate::project::write_up::WriteUp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

#[derive(Serialize, Deserialize)]
#[serde(rename = "WriteUp", deny_unknown_fields)]
pub(crate) struct WriteUpV2 {
    pub(crate) width_px: WidthPx,
    pub(crate) dark: bool,
    pub(crate) table: bool,
    pub(crate) note: bool,
    pub(crate) form: FormEntry,
    /// Visible sets that are left out, counted from 1.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(crate) left_out: Vec<usize>,
}

impl WriteUpV2 {
    /// The choices as they stand in a file; none where they are the usual ones.
    pub(super) fn of(write_up: &WriteUp, sets: &Candidates) -> Option<Self> {
        let place = |id: &SetId| sets.place(*id).map(|place| place + 1);
        let left_out: Vec<usize> = write_up.left_out.iter().filter_map(place).collect();
        let is_usual = left_out.is_empty()
            && WriteUp {
                left_out: BTreeSet::default(),
                ..write_up.clone()
            } == WriteUp::default();
        (!is_usual).then_some(Self {
            width_px: WidthPx(write_up.width),
            dark: write_up.is_dark,
            table: write_up.with_table,
            note: write_up.with_note,
            form: write_up.form.into(),
            left_out,
        })
    }

    pub(super) fn into_write_up(self, sets: &Candidates) -> Result<WriteUp, Misfit> {
        let id = |(place, number): (usize, &usize)| {
            let at = number.checked_sub(1);
            let candidate = at.and_then(|at| sets.iter().nth(at));
            let id = candidate.map(|c| c.id);
            id.ok_or_else(|| {
                let reason = format!("the write-up leaves out set {number}, which is not there");
                Misfit::new([Key("write_up"), Key("left_out"), Item(place)], &reason)
            })
        };
        let left_out = (0..).zip(&self.left_out).map(id);
        Ok(WriteUp {
            width: self.width_px.0,
            is_dark: self.dark,
            left_out: left_out.collect::<Result<_, _>>()?,
            with_table: self.table,
            with_note: self.note,
            form: self.form.into(),
        })
    }
}
