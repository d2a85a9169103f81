//! The texts that are being typed, and what they come to so far.
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
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Draft {
    /// What stands in the field.
    pub text: String,
    /// What stood there when typing began.
    pub before: String,
    /// Why it does not read; none while it does.
    pub problem: Option<String>,
    /// When it was last typed in, in seconds of the window's clock.
    pub typed_at: f64,
}

/// All drafts.
#[derive(Debug, Default)]
pub(super) struct Drafts {
    open: HashMap<CellId, Draft>,
    /// The fields of this frame from top to bottom.
    places: Vec<(CellId, egui::Id)>,
    /// Those of the last frame, for moving through a column.
    last_places: Vec<(CellId, egui::Id)>,
    /// The field that is to be typed in from the next frame on.
    next_focus: Option<egui::Id>,
}

impl Drafts {
    /// The draft of a field.
    pub(super) fn get(&self, cell: CellId) -> Option<&Draft> {
        self.open.get(&cell)
    }

    /// The draft of a field to be changed, begun over what stands there where there is none.
    pub(super) fn begin(&mut self, cell: CellId, before: &str) -> &mut Draft {
        self.open.entry(cell).or_insert_with(|| Draft {
            text: before.to_owned(),
            before: before.to_owned(),
            problem: None,
            typed_at: 0.0,
        })
    }

    /// Ends a draft that does not read once the field under it holds something else: it was undone.
    pub(super) fn end_outdated(&mut self, cell: CellId, text: &str) {
        let is_outdated = |draft: &Draft| draft.problem.is_some() && draft.before != text;
        if self.open.get(&cell).is_some_and(is_outdated) {
            self.end(cell);
        }
    }

    /// Ends a draft; the field shows the document again.
    pub(super) fn end(&mut self, cell: CellId) {
        self.open.remove(&cell);
    }

    /// Ends every draft that reads: the document holds what they say. Returns how many are left.
    pub(super) fn settle(&mut self) -> usize {
        self.open.retain(|_, draft| draft.problem.is_some());
        self.open.len()
    }

    /// Forgets every draft, readable or not: another document is on the desk.
    pub(super) fn clear(&mut self) {
        self.open.clear();
    }

    /// Begins a frame in which the fields announce themselves anew.
    ///
    /// A draft whose field is gone goes too: its set, gear or stage may come back as another one.
    pub(super) fn begin_frame(&mut self, ctx: &egui::Context) {
        self.last_places = std::mem::take(&mut self.places);
        let places = &self.last_places;
        self.open
            .retain(|cell, _| places.iter().any(|(shown, _)| shown == cell));
        if let Some(id) = self.next_focus.take() {
            ctx.memory_mut(|m| m.request_focus(id));
        }
    }

    /// Whether the keys go to a field in which nothing was typed yet.
    pub(super) fn is_waiting(&self, ctx: &egui::Context) -> bool {
        let focused = ctx.memory(egui::Memory::focused);
        let mut places = self.last_places.iter();
        places.any(|(cell, id)| focused == Some(*id) && !self.open.contains_key(cell))
    }

    /// From the next frame on another field is typed in; what is pressed in this one is not its own.
    pub(super) fn move_to(&mut self, id: egui::Id) {
        self.next_focus = Some(id);
    }

    /// Announces a field of this frame.
    pub(super) fn announce(&mut self, cell: CellId, id: egui::Id) {
        self.places.push((cell, id));
    }

    /// The field above (−1) or below (+1) one in its column, as it was shown in the last frame.
    pub(super) fn neighbour(&self, cell: CellId, step: isize) -> Option<egui::Id> {
        let column: Vec<_> = self
            .last_places
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
        (a, b) => a == b || (is_of_the_vehicle(a) && is_of_the_vehicle(b)),
    }
}

/// Whether a field stands in the vehicle's panel.
fn is_of_the_vehicle(cell: CellId) -> bool {
    match cell {
        CellId::Title
        | CellId::Date
        | CellId::Tyre
        | CellId::Idle
        | CellId::LowestUseful
        | CellId::Redline
        | CellId::MarkedEngineSpeeds
        | CellId::MarkedRoadSpeeds => true,
        CellId::PictureWidth | CellId::Set(..) => false,
    }
}
