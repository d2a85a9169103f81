//! The choices of the write-up in format 2; absent where they are the usual ones.

use super::super::outline::Step::{Item, Key};
use super::super::shared::misfit::Misfit;
use super::super::shared::write_up::{FormEntry, WidthPx};
use crate::project::document::{Candidates, SetId};
use crate::project::view::{View, Views};
use crate::project::write_up::{ColumnKey, Drops, NoColumnKey, WriteUp};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

#[derive(Serialize, Deserialize)]
#[serde(rename = "WriteUp", deny_unknown_fields)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "each is a choice of its own that any other leaves alone"
)]
pub(crate) struct WriteUpV2 {
    pub(crate) width_px: WidthPx,
    pub(crate) dark: bool,
    pub(crate) table: bool,
    pub(crate) note: bool,
    pub(crate) form: FormEntry,
    /// What is shown of the sets, one view beneath the other; absent where that is the speeds alone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) views: Option<Vec<ViewEntry>>,
    /// Visible sets that are left out, counted from 1.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(crate) left_out: Vec<usize>,
    /// Whose falls of the needle have their figures; absent where the usual ones have.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) drops: Option<DropsEntry>,
    /// The columns of the table; absent where it has as many as find room.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(crate) columns: Option<Vec<ColumnText>>,
    /// Whether the picture is without the project's text.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub(crate) without_project: bool,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "View")]
pub(crate) enum ViewEntry {
    Speed,
    Steps,
    Effort,
    Run,
    Revs,
    Distance,
    Cruise,
    Speedometer,
}

impl From<View> for ViewEntry {
    fn from(view: View) -> Self {
        match view {
            View::Speed => Self::Speed,
            View::Steps => Self::Steps,
            View::Effort => Self::Effort,
            View::Run => Self::Run,
            View::Revs => Self::Revs,
            View::Distance => Self::Distance,
            View::Cruise => Self::Cruise,
            View::Speedometer => Self::Speedometer,
        }
    }
}

impl From<ViewEntry> for View {
    fn from(entry: ViewEntry) -> Self {
        match entry {
            ViewEntry::Speed => Self::Speed,
            ViewEntry::Steps => Self::Steps,
            ViewEntry::Effort => Self::Effort,
            ViewEntry::Run => Self::Run,
            ViewEntry::Revs => Self::Revs,
            ViewEntry::Distance => Self::Distance,
            ViewEntry::Cruise => Self::Cruise,
            ViewEntry::Speedometer => Self::Speedometer,
        }
    }
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Drops")]
pub(crate) enum DropsEntry {
    All,
    Hidden,
    /// Counted from 1.
    Set(usize),
}

#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub(crate) struct ColumnText(ColumnKey);

impl TryFrom<String> for ColumnText {
    type Error = NoColumnKey;

    fn try_from(text: String) -> Result<Self, NoColumnKey> {
        ColumnKey::new(&text).map(Self)
    }
}

impl From<ColumnText> for String {
    fn from(column: ColumnText) -> Self {
        column.0.as_str().to_owned()
    }
}

impl WriteUpV2 {
    /// The choices as they stand in a file; none where they are the usual ones.
    pub(super) fn of(write_up: &WriteUp, sets: &Candidates) -> Option<Self> {
        let place = |id: &SetId| sets.place(*id).map(|place| place + 1);
        let left_out: Vec<usize> = write_up.left_out.iter().filter_map(place).collect();
        let drops = match write_up.drops {
            Drops::Usual => None,
            Drops::All => Some(DropsEntry::All),
            Drops::Hidden => Some(DropsEntry::Hidden),
            Drops::Of(set) => place(&set).map(DropsEntry::Set),
        };
        let is_usual = left_out.is_empty()
            && drops.is_none()
            && WriteUp {
                left_out: BTreeSet::default(),
                drops: Drops::default(),
                ..write_up.clone()
            } == WriteUp::default();
        (!is_usual).then_some(Self {
            width_px: WidthPx(write_up.width),
            dark: write_up.is_dark,
            table: write_up.with_table,
            note: write_up.with_note,
            form: write_up.form.into(),
            views: (write_up.views != Views::default()).then(|| {
                let views = write_up.views.as_slice().iter();
                views.map(|view| (*view).into()).collect()
            }),
            left_out,
            drops,
            columns: write_up
                .columns
                .as_ref()
                .map(|columns| columns.iter().cloned().map(ColumnText).collect()),
            without_project: !write_up.carries_project,
        })
    }

    pub(super) fn into_write_up(self, sets: &Candidates) -> Result<WriteUp, Misfit> {
        let id = |number: usize| {
            let candidate = sets.iter().nth(number.checked_sub(1)?);
            candidate.map(|c| c.id)
        };
        let left_out = (0..).zip(&self.left_out).map(|(place, number)| {
            id(*number).ok_or_else(|| {
                let reason = format!("the write-up leaves out set {number}, which is not there");
                Misfit::new([Key("write_up"), Key("left_out"), Item(place)], &reason)
            })
        });
        let drops = match self.drops {
            None => Drops::Usual,
            Some(DropsEntry::All) => Drops::All,
            Some(DropsEntry::Hidden) => Drops::Hidden,
            Some(DropsEntry::Set(number)) => Drops::Of(id(number).ok_or_else(|| {
                let reason = format!("the write-up names set {number}, which is not there");
                Misfit::new([Key("write_up"), Key("drops")], &reason)
            })?),
        };
        let columns = self
            .columns
            .map(|columns| columns.into_iter().map(|c| c.0).collect());
        let views = self.views.map(|views| {
            let views = Views::new(views.into_iter().map(View::from));
            views.ok_or_else(|| {
                let reason = "the write-up shows no view; name at least one, as [Speed]";
                Misfit::new([Key("write_up"), Key("views")], &reason)
            })
        });
        Ok(WriteUp {
            width: self.width_px.0,
            is_dark: self.dark,
            left_out: left_out.collect::<Result<_, _>>()?,
            with_table: self.table,
            with_note: self.note,
            form: self.form.into(),
            views: views.transpose()?.unwrap_or_default(),
            drops,
            columns,
            carries_project: !self.without_project,
        })
    }
}
