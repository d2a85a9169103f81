//! Which texts are being typed, and what do they come to so far?
//!
//! A field that is typed in has a draft: while it reads well it previews inside the open gesture.
//! Leaving the field commits, Esc takes back. What does not read stays in its field with a sentence
//! beside it, and the document keeps the last good value.

use crate::gearing::GearId;
use crate::project::SetId;
use std::collections::HashMap;

/// Which field of the document a draft is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CellId {
    /// The project's title.
    Title,
    /// The project's date.
    Date,
    /// The vehicle's tyre.
    Tyre,
    /// Idle.
    Idle,
    /// Lowest useful engine speed.
    LowestUseful,
    /// Redline.
    Redline,
    /// Marked engine speeds.
    MarkedEngineSpeeds,
    /// Marked road speeds.
    MarkedRoadSpeeds,
    /// The width of the write-up's picture.
    PictureWidth,
    /// A field of one set.
    Set(SetId, SetCell),
}

/// Which field of a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SetCell {
    /// Its name.
    Name,
    /// Its own tyre.
    Tyre,
    /// The shift point for all changes.
    ShiftAll,
    /// A gear's label.
    Label(GearId),
    /// A gear's ratio.
    Ratio(GearId),
    /// A gear's overall ratio.
    Overall(GearId),
    /// A gear's road speed per 1000 rev/min.
    SpeedPer1000(GearId),
    /// A gear's own shift point.
    Shift(GearId),
    /// A final drive, counted from 0.
    FinalDrive(usize),
    /// A stage's name, counted from 0.
    StageName(usize),
    /// A position's name.
    PositionName(usize, usize),
    /// A position's ratio.
    PositionRatio(usize, usize),
}

/// A text that is being typed, or was left unreadable.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Draft {
    /// What stands in the field.
    pub text: String,
    /// Why it does not read; none while it does.
    pub problem: Option<String>,
}

/// All drafts.
#[derive(Debug, Default)]
pub(super) struct Drafts {
    drafts: HashMap<CellId, Draft>,
    /// The fields of this frame from top to bottom, for moving through a column.
    places: Vec<(CellId, egui::Id)>,
}

impl Drafts {
    /// The draft of a field.
    pub(super) fn get(&self, cell: CellId) -> Option<&Draft> {
        self.drafts.get(&cell)
    }

    /// The draft of a field to be changed, begun with `text` where there is none.
    pub(super) fn begin(&mut self, cell: CellId, text: &str) -> &mut Draft {
        self.drafts.entry(cell).or_insert_with(|| Draft {
            text: text.to_owned(),
            problem: None,
        })
    }

    /// Ends a draft; the field shows the document again.
    pub(super) fn end(&mut self, cell: CellId) {
        self.drafts.remove(&cell);
    }

    /// Ends every draft that reads: the document holds what they say. Returns how many are left.
    pub(super) fn settle(&mut self) -> usize {
        self.drafts.retain(|_, draft| draft.problem.is_some());
        self.drafts.len()
    }

    /// Forgets every draft, readable or not: another document is on the desk.
    pub(super) fn clear(&mut self) {
        self.drafts.clear();
    }

    /// Begins a frame in which the fields announce themselves anew.
    pub(super) fn begin_frame(&mut self) {
        self.places.clear();
    }

    /// Announces a field of this frame.
    pub(super) fn announce(&mut self, cell: CellId, id: egui::Id) {
        self.places.push((cell, id));
    }

    /// The field above (−1) or below (+1) one in its column, as announced so far in the last frame.
    pub(super) fn neighbour(&self, cell: CellId, step: isize) -> Option<egui::Id> {
        let column: Vec<_> = self
            .places
            .iter()
            .filter(|(other, _)| same_column(*other, cell))
            .collect();
        let at = column.iter().position(|(other, _)| *other == cell)?;
        let to = at.checked_add_signed(step)?;
        column.get(to).map(|(_, id)| *id)
    }
}

/// Whether two fields stand in one column: the same kind of figure, of the same set.
fn same_column(a: CellId, b: CellId) -> bool {
    match (a, b) {
        (CellId::Set(set, cell), CellId::Set(other_set, other)) => {
            set == other_set && std::mem::discriminant(&cell) == std::mem::discriminant(&other)
        }
        (CellId::Set(..), _) | (_, CellId::Set(..)) => false,
        _ => true,
    }
}
