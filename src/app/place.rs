//! Where does the window show what an edit has changed?

use super::drafts::{CellId, PlanCell, SetCell, is_there};
use super::set_card::ratio_cell;
use super::technical::{
    TechnicalCell, changed_check, changed_efficiency, changed_engine_field, changed_field,
};
use super::typed::RatioForm;
use crate::gearing::{FinalDrive, GearId, GearSet, Sprocket};
use crate::project::{Edit, Project, SetEdit, SetId, WorkshopEdit};
use crate::workshop::{BenchItem, FieldKey, JobId, Part, Row};

/// A place of the window where something can be seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    /// A field that can be typed in.
    Field(CellId),
    /// The card of a set.
    Card(SetId),
    /// The page of the workshop, and of what it has one thing where one is meant.
    Workshop(Option<BenchItem>),
}

impl Place {
    /// Where an edit is seen after it was taken back or brought back.
    ///
    /// `shown` is the document that is shown now, `other` the one that was shown before; none where no
    /// place is the edit's own.
    pub(super) fn of(edit: &Edit, [shown, other]: [&Project; 2], form: RatioForm) -> Option<Self> {
        let field = match edit {
            Edit::Title(_) => CellId::Title,
            Edit::Date(_) => CellId::Date,
            Edit::Note(_) => CellId::Note,
            Edit::Tyre(_) => CellId::Tyre,
            Edit::Idle(_) => CellId::Idle,
            Edit::LowestUseful(_) => CellId::LowestUseful,
            Edit::Redline(_) => CellId::Redline,
            Edit::MarkedEngineSpeeds(_) => CellId::MarkedEngineSpeeds,
            Edit::MarkedRoadSpeeds(_) => CellId::MarkedRoadSpeeds,
            // All that there is to see of it stands everywhere or in the write-up.
            Edit::Units(_) | Edit::WriteUp(_) => return None,
            Edit::Workshop(edit) => match field_at_bench(edit, [shown, other]) {
                Ok(field) => field,
                Err(item) => return Some(Self::Workshop(item)),
            },
            Edit::KnownFuel(_) => CellId::Technical(TechnicalCell::KnownFuel),
            Edit::EngineData(_)
            | Edit::VehicleData(_)
            | Edit::RoadData(_)
            | Edit::DrivingData(_)
            | Edit::SpeedometerData(_)
            | Edit::LimitsData(_)
            | Edit::SecondAxleData(_) => changed_field(shown, other)?,
            Edit::Keeping(edit, _) => return Self::of(edit, [shown, other], form),
            Edit::AddSet(..) | Edit::RemoveSet(_) => {
                let mut sets = shown.sets.iter();
                let come = sets.find(|candidate| other.sets.get(candidate.id).is_none());
                return come.map(|candidate| Self::Card(candidate.id));
            }
            Edit::MoveSet(id, _) | Edit::Baseline(id) | Edit::Visible(id, _) => {
                return Some(Self::Card(*id));
            }
            Edit::Efficiencies(id, _) => match changed_efficiency(*id, [shown, other]) {
                Some(field) => field,
                None => return Some(Self::Card(*id)),
            },
            Edit::SetChecks(id, _) => match changed_check(*id, [shown, other]) {
                Some(field) => field,
                None => return Some(Self::Card(*id)),
            },
            Edit::OwnEngine(id, _) => match changed_engine_field(*id, [shown, other]) {
                Some(field) => field,
                None => return Some(Self::Card(*id)),
            },
            Edit::Set(id, edit) => {
                let sets = [shown, other].map(|p| p.sets.get(*id).map(|c| &*c.set));
                let [Some(shown), Some(other)] = sets else {
                    return None;
                };
                match cell_of(edit, [shown, other], form) {
                    Some(cell) => CellId::Set(*id, cell),
                    None => return Some(Self::Card(*id)),
                }
            }
        };
        match field {
            CellId::Set(id, _) if !is_there(field, shown) => Some(Self::Card(id)),
            CellId::Job(..) | CellId::Plan(_) if !is_there(field, shown) => {
                Some(Self::Workshop(Self::Field(field).at_bench()))
            }
            field => Some(Self::Field(field)),
        }
    }

    /// The set whose card it is on.
    pub(super) fn set(self) -> Option<SetId> {
        match self {
            Self::Field(CellId::Set(set, _)) | Self::Card(set) => Some(set),
            Self::Field(_) | Self::Workshop(_) => None,
        }
    }

    /// What of the workshop it shows.
    pub(super) fn at_bench(self) -> Option<BenchItem> {
        match self {
            Self::Field(CellId::Job(job, _)) => Some(BenchItem::Job(job)),
            Self::Field(CellId::Plan(_)) => Some(BenchItem::Plan),
            Self::Workshop(item) => item,
            Self::Field(_) | Self::Card(_) => None,
        }
    }

    /// The set of which the plan of what changes is shown.
    pub(super) fn planned_for(self) -> Option<SetId> {
        match self {
            Self::Field(CellId::Plan(
                PlanCell::Source(_, set) | PlanCell::ToDo(_, set) | PlanCell::Price(_, set),
            )) => Some(set),
            Self::Field(_) | Self::Card(_) | Self::Workshop(_) => None,
        }
    }

    /// The field, where it is one.
    pub(super) fn field(self) -> Option<CellId> {
        match self {
            Self::Field(field) => Some(field),
            Self::Card(_) | Self::Workshop(_) => None,
        }
    }
}

/// The field of the bench that an edit has changed, else the job or plan that it is about, if it is about one.
fn field_at_bench(edit: &WorkshopEdit, both: [&Project; 2]) -> Result<CellId, Option<BenchItem>> {
    let [shown, other] = both;
    match edit {
        WorkshopEdit::Units(_) => Err(None),
        WorkshopEdit::Plan(_) => Err(shown.workshop.plan.as_ref().map(|_| BenchItem::Plan)),
        WorkshopEdit::Currency(_) => Ok(CellId::Plan(PlanCell::Currency)),
        WorkshopEdit::AddPart(_) | WorkshopEdit::RemovePart(_) => {
            let plans = both.map(|project| project.workshop.plan.as_ref());
            let [Some(shown), Some(other)] = plans else {
                return Err(Some(BenchItem::Plan));
            };
            let come = shown
                .parts()
                .iter()
                .find(|part| other.part(part.id).is_none());
            match come {
                Some(part) => Ok(CellId::Plan(PlanCell::Name(part.id))),
                None => Err(Some(BenchItem::Plan)),
            }
        }
        WorkshopEdit::Part(part) => Ok(CellId::Plan(changed_of_part(part, both))),
        WorkshopEdit::AddJob(_) | WorkshopEdit::RemoveJob(_) => {
            let mut jobs = shown.workshop.jobs().iter();
            let come = jobs.find(|job| other.workshop.job(job.id).is_none());
            Err(come.map(|job| BenchItem::Job(job.id)))
        }
        WorkshopEdit::Job(job) => {
            let item = Some(BenchItem::Job(job.id));
            let key = changed_row(job.id, both).ok_or(item)?;
            Ok(CellId::Job(job.id, key))
        }
    }
}

/// The field of a part that says something else; of boxes to tick, that of the source beside them.
fn changed_of_part(part: &Part, both: [&Project; 2]) -> PlanCell {
    let of_set = both[0].sets.iter().find_map(|set| {
        let entries = both.map(|project| {
            let part = project.workshop.plan.as_ref()?.part(part.id)?;
            Some(part.of(set.id.into()))
        });
        let [Some(shown), Some(other)] = entries else {
            return None;
        };
        if shown.price != other.price {
            Some(PlanCell::Price(part.id, set.id))
        } else if shown.to_do != other.to_do {
            Some(PlanCell::ToDo(part.id, set.id))
        } else {
            (shown != other).then_some(PlanCell::Source(part.id, set.id))
        }
    });
    of_set.unwrap_or(PlanCell::Name(part.id))
}

/// The first row of a job that says something else.
fn changed_row(id: JobId, both: [&Project; 2]) -> Option<FieldKey> {
    let [shown, other] = both.map(|project| {
        let job = project.workshop.job(id);
        job.map(|job| job.rows(both[0].workshop.units))
    });
    let (shown, other) = (shown?, other?);
    let is_another = |row: &Row| !other.contains(row);
    shown.iter().find(|row| is_another(row)).map(|row| row.key)
}

/// Whether an edit moves shift points, which the diagram shows as handles.
pub(super) fn moves_handles(edit: &Edit) -> bool {
    use SetEdit::{Shift, ShiftAll, Shifts};
    match edit {
        Edit::Keeping(edit, _) => moves_handles(edit),
        edit => matches!(edit, Edit::Set(_, Shift(..) | ShiftAll(_) | Shifts(..))),
    }
}

/// The field of another set that stands where a field of one set stands: gears go by their place.
pub(super) fn counterpart(field: CellId, set: SetId, project: &Project) -> Option<CellId> {
    let CellId::Set(from, cell) = field else {
        return None;
    };
    let [from, to] = [from, set].map(|id| project.sets.get(id).map(|candidate| &candidate.set));
    let (from, to) = (from?, to?);
    let gear = |id: GearId| {
        if id == GearId::REVERSE {
            return Some(id);
        }
        let at = from.gears.iter().position(|gear| gear.id == id)?;
        to.gears.get(at).map(|gear| gear.id)
    };
    let cell = match cell {
        SetCell::Label(id) => SetCell::Label(gear(id)?),
        SetCell::Ratio(id) => SetCell::Ratio(gear(id)?),
        SetCell::Overall(id) => SetCell::Overall(gear(id)?),
        SetCell::SpeedPer1000(id) => SetCell::SpeedPer1000(gear(id)?),
        SetCell::Shift(id) => {
            let own = gear(id).filter(|id| has_own_field(to, *id))?;
            SetCell::Shift(own)
        }
        SetCell::Name
        | SetCell::Tyre
        | SetCell::ShiftAll
        | SetCell::FinalDrive(_)
        | SetCell::Sprocket(..)
        | SetCell::StageName(_)
        | SetCell::PositionName(..)
        | SetCell::PositionRatio(..)
        | SetCell::Engine(_)
        | SetCell::Check(_)
        | SetCell::Efficiency
        | SetCell::DirectEfficiency => cell,
        SetCell::GearEfficiency(id) => SetCell::GearEfficiency(gear(id)?),
    };
    let field = CellId::Set(set, cell);
    is_there(field, project).then_some(field)
}

/// The field of a set that an edit is about, be it there or not.
fn cell_of(edit: &SetEdit, both: [&GearSet; 2], form: RatioForm) -> Option<SetCell> {
    let ratio = |id: GearId| Some(ratio_cell(form, id));
    // Of parts that are counted, what came is the last of the longer list.
    let come = |count: fn(&GearSet) -> usize| {
        let [shown, other] = both.map(count);
        (shown > other).then(|| shown - 1)
    };
    match edit {
        SetEdit::Name(_) => Some(SetCell::Name),
        SetEdit::Tyre(_) => Some(SetCell::Tyre),
        SetEdit::Shift(id, _) if has_own_field(both[0], *id) => Some(SetCell::Shift(*id)),
        SetEdit::Shift(..) | SetEdit::ShiftAll(_) | SetEdit::Shifts(..) => Some(SetCell::ShiftAll),
        SetEdit::AddGear(_, gear) | SetEdit::InsertGear(_, gear) => ratio(gear.id),
        SetEdit::Label(id, _) => Some(SetCell::Label(*id)),
        SetEdit::RemoveGear(id)
        | SetEdit::MoveGear(id, _)
        | SetEdit::Ratio(id, _)
        | SetEdit::FinalDriveOf(id, _)
        | SetEdit::Role(id, _) => ratio(*id),
        SetEdit::Reverse(_) => ratio(GearId::REVERSE),
        SetEdit::FinalDrive(at, _) => Some(drive_cell(both[0], *at)),
        SetEdit::Sprocket(at, of, _) => Some(SetCell::Sprocket(*at, *of)),
        SetEdit::AddFinalDrive(_) => {
            come(|set| set.final_drives.len()).map(|at| drive_cell(both[0], at))
        }
        SetEdit::RemoveFinalDrive(at) => {
            come(|set| set.final_drives.len()).map(|_| drive_cell(both[0], *at))
        }
        SetEdit::AddStage(_) => come(|set| set.stages.len()).map(SetCell::StageName),
        SetEdit::RemoveStage(at) => come(|set| set.stages.len()).map(|_| SetCell::StageName(*at)),
        SetEdit::StageName(at, _)
        | SetEdit::StagePresent(at, _)
        | SetEdit::StageActsOn(at, _)
        | SetEdit::StageShowsOthers(at, _)
        | SetEdit::AddPosition(at, _)
        | SetEdit::RemovePosition(at, _) => Some(SetCell::StageName(*at)),
        SetEdit::Position(at, place, _) => Some(position_cell(both, *at, *place)),
        SetEdit::Replace(_) => None,
    }
}

/// The first field of a final drive: of gears the ratio, of a chain its front sprocket.
fn drive_cell(set: &GearSet, at: usize) -> SetCell {
    match set.final_drives.get(at) {
        Some(FinalDrive::Chain(_)) => SetCell::Sprocket(at, Sprocket::Front),
        Some(FinalDrive::Gears(_)) | None => SetCell::FinalDrive(at),
    }
}

/// The field of a position that shows something else: name or ratio.
fn position_cell(both: [&GearSet; 2], at: usize, place: usize) -> SetCell {
    let names = both.map(|set| {
        let position = set.stages.get(at)?.positions.get(place)?;
        Some(&position.name)
    });
    if names[0] == names[1] {
        SetCell::PositionRatio(at, place)
    } else {
        SetCell::PositionName(at, place)
    }
}

/// Whether a card has a field for the shift point of that gear alone.
fn has_own_field(set: &GearSet, id: GearId) -> bool {
    let has_column = set.gears.iter().any(|gear| gear.shift.is_some());
    let top = set.chain().last().map(|gear| gear.id);
    has_column && top != Some(id) && set.chain().any(|gear| gear.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gearing::{EngineSpeed, Ratio};
    use crate::project::examples::EXAMPLES;

    /// Where an edit of the second set is seen once it was made or brought back, and once it was taken
    /// back.
    fn places(edits: &[SetEdit]) -> [Place; 2] {
        let start = EXAMPLES[0].project().unwrap();
        let id = start.sets.iter().nth(1).unwrap().id;
        let mut documents = vec![start];
        for edit in edits {
            let last = &documents[documents.len() - 1];
            documents.push(Edit::Set(id, edit.clone()).applied_to(last).unwrap());
        }
        let last = Edit::Set(id, edits[edits.len() - 1].clone());
        let [after, before] = [1, 2].map(|back| &documents[documents.len() - back]);
        [[after, before], [before, after]]
            .map(|both| Place::of(&last, both, RatioForm::Gear).unwrap())
    }

    fn of_second(cell: SetCell) -> Place {
        let start = EXAMPLES[0].project().unwrap();
        Place::Field(CellId::Set(start.sets.iter().nth(1).unwrap().id, cell))
    }

    fn third() -> GearId {
        let start = EXAMPLES[0].project().unwrap();
        start.sets.iter().nth(1).unwrap().set.gears[2].id
    }

    #[test]
    fn a_part_that_came_is_seen_in_its_field_and_one_that_went_on_its_card() {
        let ratio = || FinalDrive::Gears(Ratio::from_number(3.9).unwrap());
        let card = Place::Card(of_second(SetCell::Name).set().unwrap());
        let added = of_second(SetCell::FinalDrive(1));
        let add = SetEdit::AddFinalDrive(ratio());
        assert_eq!(places(std::slice::from_ref(&add)), [added, card]);
        let remove = SetEdit::RemoveFinalDrive(1);
        assert_eq!(places(&[add, remove]), [card, added]);
        let removed = SetEdit::RemoveGear(third());
        let gear = of_second(SetCell::Ratio(third()));
        assert_eq!(places(&[removed]), [card, gear]);
    }

    #[test]
    fn a_shift_point_is_seen_where_there_is_a_field_for_it() {
        let speed = EngineSpeed::from_rpm(3000.0).unwrap();
        let shift = SetEdit::Shift(third(), speed);
        let all = of_second(SetCell::ShiftAll);
        let own = of_second(SetCell::Shift(third()));
        // The first that is moved by itself gives all of them a field.
        assert_eq!(places(&[SetEdit::ShiftAll(speed), shift]), [own, all]);
    }

    #[test]
    fn every_form_of_a_ratio_has_its_own_field() {
        let start = EXAMPLES[0].project().unwrap();
        let id = start.sets.baseline().id;
        let ratio = Ratio::from_number(2.0).unwrap();
        let edit = Edit::Set(id, SetEdit::Ratio(GearId::REVERSE, ratio));
        for form in RatioForm::ALL {
            let place = Place::of(&edit, [&start, &start], form);
            let cell = CellId::Set(id, ratio_cell(form, GearId::REVERSE));
            assert_eq!(place, Some(Place::Field(cell)));
        }
    }
}
