//! The texts that are being typed, and what they come to so far.
//!
//! A field that is typed in has a draft: while it reads well it previews inside the open gesture.
//! Leaving the field commits, Esc takes back. What does not read stays in its field with a sentence
//! beside it, the document keeps the last good value, and until it is mended it is unsaved work.

use super::cell::has_text_undo;
use super::technical::TechnicalCell;
use super::text_history::TextHistory;
use super::unread::Unread;
use crate::gearing::{FinalDrive, GearId, Sprocket, quoted};
use crate::letters::written;
use crate::project::{EngineData, Project, SetId};
use crate::workshop::{FieldKey, JobId, PartId};
use std::collections::HashMap;

/// Which field of the document a draft is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CellId {
    /// The project's title.
    Title,
    /// The project's date.
    Date,
    /// The project's note.
    Note,
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
    /// A field of the technical data.
    Technical(TechnicalCell),
    /// A field of one set.
    Set(SetId, SetCell),
    /// The unit of lengths at the bench.
    BenchLengths,
    /// The unit of torques at the bench.
    BenchTorques,
    /// A field of a job of the bench.
    Job(JobId, FieldKey),
    /// A field of the plan of what changes.
    Plan(PlanCell),
}

impl CellId {
    /// The identity of the field's widget.
    pub(super) fn widget(self) -> egui::Id {
        egui::Id::unique(("cell", self))
    }

    /// Whether what is typed counts though the same stood there: what stood there was reckoned and
    /// rounded, what is typed stands on a sheet.
    pub(super) fn takes_the_same_again(self) -> bool {
        matches!(
            self,
            Self::Set(_, SetCell::Overall(_) | SetCell::SpeedPer1000(_))
        )
    }

    /// Whether a whole column of a spreadsheet may be pasted into it.
    pub(super) fn takes_columns(self) -> bool {
        let (Self::Technical(cell) | Self::Set(_, SetCell::Engine(cell))) = self else {
            return false;
        };
        matches!(
            cell,
            TechnicalCell::PointSpeed(_) | TechnicalCell::PointTorque(_)
        )
    }

    /// Whether it stands among the fields of the vehicle.
    pub(super) fn is_of_vehicle(self) -> bool {
        match self {
            Self::Title
            | Self::Date
            | Self::Note
            | Self::Tyre
            | Self::Idle
            | Self::LowestUseful
            | Self::Redline
            | Self::MarkedEngineSpeeds
            | Self::MarkedRoadSpeeds => true,
            Self::PictureWidth
            | Self::Technical(_)
            | Self::Set(..)
            | Self::BenchLengths
            | Self::BenchTorques
            | Self::Job(..)
            | Self::Plan(_) => false,
        }
    }
}

/// Which field of the plan of what changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PlanCell {
    /// The sign of its currency.
    Currency,
    /// What a part is.
    Name(PartId),
    /// Where a part comes from for a set.
    Source(PartId, SetId),
    /// What is to be done with it.
    ToDo(PartId, SetId),
    /// What it costs.
    Price(PartId, SetId),
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
    /// A final drive of gears, counted from 0.
    FinalDrive(usize),
    /// A sprocket of a final drive that is a chain.
    Sprocket(usize, Sprocket),
    /// A stage's name, counted from 0.
    StageName(usize),
    /// A position's name.
    PositionName(usize, usize),
    /// A position's ratio.
    PositionRatio(usize, usize),
    /// A field of its own engine.
    Engine(TechnicalCell),
    /// A field of its own of what is checked.
    Check(TechnicalCell),
    /// What all of its gears leave of the power.
    Efficiency,
    /// What a direct gear leaves.
    DirectEfficiency,
    /// What a gear leaves by itself.
    GearEfficiency(GearId),
}

/// A text that is being typed, or was left unreadable.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Draft {
    /// What the field is called.
    pub name: String,
    /// What stands in the field.
    pub text: String,
    /// What stood there when typing began.
    pub before: String,
    /// Why it does not read; none while it does.
    pub problem: Option<String>,
    /// Whether what stood there is another figure since, or spelled in other units, and none was undone.
    pub is_respelled: bool,
    /// When it was last typed in, in seconds of the window's clock.
    pub typed_at: f64,
    /// How many steps the document had when it was last typed in.
    pub steps: usize,
}

impl Draft {
    /// What it is called by undo.
    pub(super) fn words(&self) -> String {
        let text = quoted(&self.text);
        written(&format!("what was typed in {}: {text}", self.name))
    }
}

/// All drafts.
#[derive(Debug, Default)]
pub(super) struct Drafts {
    open: HashMap<CellId, Draft>,
    /// How many steps the document has now.
    pub(super) steps: usize,
    /// The field that had the focus last, and what stood in it.
    pub(super) shown_in_hand: Option<(CellId, String)>,
    /// The note while it is typed in.
    pub(super) note: Option<TextHistory>,
}

/// Which of the keys that take back and bring back a field keeps for its own text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct KeptKeys {
    /// Undo.
    pub(super) undo: bool,
    /// Redo.
    pub(super) redo: bool,
}

impl Drafts {
    /// The draft of a field.
    pub(super) fn get(&self, cell: CellId) -> Option<&Draft> {
        self.open.get(&cell)
    }

    /// The draft of a field to be changed, begun over what stands there where there is none.
    pub(super) fn begin(&mut self, cell: CellId, name: &str, before: &str) -> &mut Draft {
        self.open.entry(cell).or_insert_with(|| Draft {
            name: name.to_owned(),
            text: before.to_owned(),
            before: before.to_owned(),
            problem: None,
            is_respelled: false,
            typed_at: 0.0,
            steps: 0,
        })
    }

    /// The figures of the fields are spelled in other units from now on: what does not read stays
    /// over them.
    pub(super) fn follow_units(&mut self) {
        self.follow(|_| true);
    }

    /// The figures of these fields have changed, and nothing was undone: what does not read stays over
    /// them.
    pub(super) fn follow(&mut self, is_changed: impl Fn(CellId) -> bool) {
        let open = self.open.iter_mut();
        for (_, draft) in open.filter(|(cell, _)| is_changed(**cell)) {
            draft.is_respelled = true;
        }
    }

    /// Ends a draft that does not read once the field under it holds something else: it was undone.
    pub(super) fn end_outdated(&mut self, cell: CellId, text: &str) {
        if let Some(draft) = self.open.get_mut(&cell).filter(|draft| draft.is_respelled) {
            text.clone_into(&mut draft.before);
            draft.is_respelled = false;
        }
        let is_outdated = |draft: &Draft| draft.problem.is_some() && draft.before != text;
        if self.open.get(&cell).is_some_and(is_outdated) {
            self.end(cell);
        }
    }

    /// Ends a draft; the field shows the document again.
    pub(super) fn end(&mut self, cell: CellId) {
        self.open.remove(&cell);
        if cell == CellId::Note {
            self.note = None;
        }
    }

    /// Ends every draft that reads: the document holds what they say.
    pub(super) fn settle(&mut self) {
        self.open.retain(|_, draft| draft.problem.is_some());
    }

    /// All that does not read, what was typed last first.
    pub(super) fn unread(&self) -> Vec<Unread> {
        let open = self.open.iter();
        let mut unread: Vec<_> = open.filter(|(_, draft)| draft.problem.is_some()).collect();
        unread.sort_by(|(_, a), (_, b)| b.typed_at.total_cmp(&a.typed_at));
        let unread = unread.into_iter().map(|(field, draft)| Unread {
            field: *field,
            name: draft.name.clone(),
            text: draft.text.clone(),
        });
        unread.collect()
    }

    /// What was typed last and does not read, where it was typed after the last step of the document:
    /// undoing gives it up before any step.
    pub(super) fn newest_unread(&self) -> Option<(CellId, &Draft)> {
        let unread = self.open.iter().map(|(cell, draft)| (*cell, draft));
        unread
            .filter(|(_, draft)| draft.problem.is_some() && draft.steps >= self.steps)
            .max_by(|(_, a), (_, b)| a.typed_at.total_cmp(&b.typed_at))
    }

    /// What does not read in the field of that widget.
    pub(super) fn unread_in(&self, field: egui::Id) -> Option<(CellId, &Draft)> {
        let mut open = self.open.iter();
        let (cell, draft) = open.find(|(cell, _)| cell.widget() == field)?;
        draft.problem.is_some().then_some((*cell, draft))
    }

    /// Forgets every draft, readable or not: another document is on the desk.
    pub(super) fn clear(&mut self) {
        self.open.clear();
        self.note = None;
    }

    /// Forgets the ratios that are being typed: they are to be typed in another form.
    pub(super) fn forget_ratios(&mut self) {
        let is_ratio = |cell: &CellId| {
            use SetCell::{Overall, Ratio, SpeedPer1000};
            matches!(
                cell,
                CellId::Set(_, Ratio(_) | Overall(_) | SpeedPer1000(_))
            )
        };
        self.open.retain(|cell, _| !is_ratio(cell));
    }

    /// Whether something was left in a set that does not read.
    pub(super) fn has_unread(&self, set: SetId) -> bool {
        self.has_unread_in(|cell| matches!(cell, CellId::Set(of, _) if of == set))
    }

    /// Whether something was left in one of these fields that does not read.
    pub(super) fn has_unread_in(&self, is_among: impl Fn(CellId) -> bool) -> bool {
        let mut open = self.open.iter();
        open.any(|(cell, draft)| draft.problem.is_some() && is_among(*cell))
    }

    /// Forgets the drafts whose fields are gone from the document: a set, gear or stage may come back
    /// as another one. A field that is only folded away keeps what was typed.
    pub(super) fn keep_to(&mut self, project: &Project) {
        self.open.retain(|cell, _| is_there(*cell, project));
    }

    /// Whether the text of the field in hand is another than was shown there last: it changed from
    /// outside, by undo or by the document.
    pub(super) fn is_another_than_shown(&self, cell: CellId, text: &str) -> bool {
        let shown = self.shown_in_hand.as_ref();
        shown.is_some_and(|(of, shown)| *of == cell && shown != text)
    }

    /// The field of that widget, if it is the one that had the focus last.
    pub(super) fn field_in_hand(&self, field: egui::Id) -> Option<CellId> {
        let shown = self.shown_in_hand.as_ref();
        shown
            .map(|(cell, _)| *cell)
            .filter(|cell| cell.widget() == field)
    }

    /// The field that had the focus last.
    pub(super) fn last_in_hand(&self) -> Option<CellId> {
        self.shown_in_hand.as_ref().map(|(cell, _)| *cell)
    }

    /// Whether something was typed in the field of that widget.
    pub(super) fn is_typed_in(&self, field: egui::Id) -> bool {
        self.open.keys().any(|cell| cell.widget() == field)
    }

    /// What the field of that widget keeps: both keys once something was typed in one line, of several
    /// lines as far as there is something to be turned. A text that does not read and has nothing left
    /// to undo is given up by undoing.
    pub(super) fn kept_by(&self, ctx: &egui::Context, field: egui::Id) -> KeptKeys {
        if field == CellId::Note.widget() {
            let note = self.note.as_ref();
            KeptKeys {
                undo: note.is_some_and(TextHistory::has_undo),
                redo: note.is_some_and(TextHistory::has_redo),
            }
        } else {
            let is_typed_in = self.is_typed_in(field);
            let unread = self.unread_in(field);
            let is_at_end =
                unread.is_some_and(|(_, draft)| !has_text_undo(ctx, field, &draft.text));
            KeptKeys {
                undo: is_typed_in && !is_at_end,
                redo: is_typed_in,
            }
        }
    }
}

/// Whether the document has what a field is about.
pub(super) fn is_there(cell: CellId, project: &Project) -> bool {
    let (id, cell) = match cell {
        CellId::Set(id, cell) => (id, cell),
        CellId::Technical(cell) => return has_point(cell, &project.technical.engine),
        CellId::Job(id, key) => return has_field(project, id, key),
        CellId::Plan(cell) => return has_plan_field(project, cell),
        _ => return true,
    };
    let Some(candidate) = project.sets.get(id) else {
        return false;
    };
    let set = &candidate.set;
    let position = |stage: usize, at: usize| {
        let stage = set.stages.get(stage);
        stage.is_some_and(|stage| at < stage.positions.len())
    };
    match cell {
        SetCell::Name
        | SetCell::ShiftAll
        | SetCell::Check(_)
        | SetCell::Efficiency
        | SetCell::DirectEfficiency => true,
        SetCell::Engine(cell) => {
            let engine = candidate.technical.engine.as_ref();
            engine.is_some_and(|engine| has_point(cell, engine))
        }
        SetCell::Tyre => set.tyre.is_some(),
        SetCell::Ratio(gear) | SetCell::Overall(gear) | SetCell::SpeedPer1000(gear) => {
            set.gear(gear).is_some() || (gear == GearId::REVERSE && set.reverse.is_some())
        }
        SetCell::Label(gear) | SetCell::Shift(gear) | SetCell::GearEfficiency(gear) => {
            set.gear(gear).is_some()
        }
        SetCell::FinalDrive(at) => {
            matches!(set.final_drives.get(at), Some(FinalDrive::Gears(_)))
        }
        SetCell::Sprocket(at, _) => {
            matches!(set.final_drives.get(at), Some(FinalDrive::Chain(_)))
        }
        SetCell::StageName(at) => at < set.stages.len(),
        SetCell::PositionName(stage, at) | SetCell::PositionRatio(stage, at) => position(stage, at),
    }
}

/// Whether a job of the bench has a field, asked for or not.
fn has_field(project: &Project, id: JobId, key: FieldKey) -> bool {
    let job = project.workshop.job(id);
    let count = job.map_or(0, |job| job.data.item_count());
    job.is_some() && key.item.is_none_or(|at| usize::from(at) < count)
}

/// Whether the plan has a field.
fn has_plan_field(project: &Project, cell: PlanCell) -> bool {
    let Some(plan) = &project.workshop.plan else {
        return false;
    };
    match cell {
        PlanCell::Currency => true,
        PlanCell::Name(part) => plan.part(part).is_some(),
        PlanCell::Source(part, set) | PlanCell::ToDo(part, set) | PlanCell::Price(part, set) => {
            plan.part(part).is_some() && project.sets.get(set).is_some()
        }
    }
}

/// Whether an engine has the point that a field is about, where it is about one.
fn has_point(cell: TechnicalCell, engine: &EngineData) -> bool {
    match cell {
        TechnicalCell::PointSpeed(place) | TechnicalCell::PointTorque(place) => {
            let curve = engine.curve.as_ref().filter(|_| !engine.is_built());
            curve.is_some_and(|curve| place < curve.points().len())
        }
        _ => true,
    }
}
