//! The changes that one gear set can undergo.

use super::edits::EditError;
use crate::gearing::{
    ActsOn, EngineSpeed, FinalDrive, Gear, GearId, GearRole, GearSet, GearSetSpec, Label, Name,
    Position, Ratio, Reverse, Sprocket, Stage, Tyre,
};

/// One change within a gear set. Final drives, stages and positions are counted from 0.
#[derive(Debug, Clone, PartialEq)]
pub enum SetEdit {
    /// Another name.
    Name(Name),
    /// A tyre of its own, or the vehicle's.
    Tyre(Option<Tyre>),
    /// One shift point for all changes.
    ShiftAll(EngineSpeed),
    /// A shift point of its own for one gear.
    Shift(GearId, EngineSpeed),
    /// The set's common shift point, and those of single gears, moved together.
    Shifts(EngineSpeed, Vec<(GearId, EngineSpeed)>),
    /// A new gear at that place in typed order.
    AddGear(usize, Gear),
    /// A forward gear comes in before others; gears that are called by their number are counted anew.
    InsertGear(usize, Gear),
    /// One gear fewer.
    RemoveGear(GearId),
    /// A gear at another place in typed order.
    MoveGear(GearId, usize),
    /// Another label on a gear.
    Label(GearId, Label),
    /// Another ratio of a gear.
    Ratio(GearId, Ratio),
    /// Another final drive for a gear; [`GearId::REVERSE`] is reverse.
    FinalDriveOf(GearId, usize),
    /// A gear taken into or out of the shift chain.
    Role(GearId, GearRole),
    /// A reverse gear, or none.
    Reverse(Option<Reverse>),
    /// Another final drive in the place of one.
    FinalDrive(usize, FinalDrive),
    /// Another sprocket on the chain of a final drive, with so many teeth.
    Sprocket(usize, Sprocket, u16),
    /// One final drive more.
    AddFinalDrive(FinalDrive),
    /// One final drive fewer; no gear may use it.
    RemoveFinalDrive(usize),
    /// One stage more.
    AddStage(Stage),
    /// One stage fewer.
    RemoveStage(usize),
    /// Another name for a stage.
    StageName(usize, Name),
    /// A stage put in another position.
    StagePresent(usize, usize),
    /// A stage that acts on other gears.
    StageActsOn(usize, ActsOn),
    /// A stage that shows its other positions beside the present one, or does not.
    StageShowsOthers(usize, bool),
    /// A position of a stage changed.
    Position(usize, usize, Position),
    /// One position of a stage more.
    AddPosition(usize, Position),
    /// One position of a stage fewer.
    RemovePosition(usize, usize),
    /// All parts at once, as pasted.
    Replace(Box<GearSetSpec>),
}

impl SetEdit {
    /// The set after the edit.
    ///
    /// # Errors
    /// When it names a part that is not there or would leave parts that do not fit together.
    pub fn applied_to(&self, set: &GearSet) -> Result<GearSet, EditError> {
        let mut spec = set.to_spec();
        match self.clone() {
            Self::Name(name) => spec.name = name,
            Self::Tyre(tyre) => spec.tyre = tyre,
            Self::ShiftAll(shift) => {
                spec.shift = shift;
                spec.gears.iter_mut().for_each(|g| g.shift = None);
            }
            Self::Shift(id, shift) => gear_mut(&mut spec, id)?.shift = Some(shift),
            Self::Shifts(common, own) => {
                spec.shift = common;
                for (id, shift) in own {
                    gear_mut(&mut spec, id)?.shift = Some(shift);
                }
            }
            Self::AddGear(at, gear) => spec.gears.insert(at.min(spec.gears.len()), gear),
            Self::InsertGear(at, gear) => {
                let counted_from = counted_from(&spec);
                spec.gears.insert(at.min(spec.gears.len()), gear);
                if let Some(first) = counted_from {
                    count_from(first, &mut spec);
                }
            }
            Self::RemoveGear(id) => {
                spec.gears.remove(place_of(&spec, id)?);
                spec.forget_in_stages(id);
            }
            Self::MoveGear(id, to) => {
                let gear = spec.gears.remove(place_of(&spec, id)?);
                spec.gears.insert(to.min(spec.gears.len()), gear);
            }
            Self::Label(id, label) => gear_mut(&mut spec, id)?.label = label,
            Self::Ratio(GearId::REVERSE, ratio) => reverse_mut(&mut spec)?.ratio = ratio,
            Self::Ratio(id, ratio) => gear_mut(&mut spec, id)?.ratio = ratio,
            Self::FinalDriveOf(GearId::REVERSE, at) => reverse_mut(&mut spec)?.final_drive = at,
            Self::FinalDriveOf(id, at) => gear_mut(&mut spec, id)?.final_drive = at,
            Self::Role(id, role) => gear_mut(&mut spec, id)?.role = role,
            Self::Reverse(reverse) => set_reverse(&mut spec, reverse),
            Self::FinalDrive(at, drive) => *part_mut(&mut spec.final_drives, at)? = drive,
            Self::Sprocket(at, of, teeth) => set_sprocket(&mut spec, at, of, teeth)?,
            Self::AddFinalDrive(drive) => spec.final_drives.push(drive),
            Self::RemoveFinalDrive(at) => remove_final_drive(&mut spec, at)?,
            Self::AddStage(stage) => spec.stages.push(stage),
            Self::RemoveStage(at) => {
                part_mut(&mut spec.stages, at)?;
                spec.stages.remove(at);
            }
            Self::StageName(at, name) => part_mut(&mut spec.stages, at)?.name = name,
            Self::StagePresent(at, present) => part_mut(&mut spec.stages, at)?.present = present,
            Self::StageActsOn(at, acts_on) => part_mut(&mut spec.stages, at)?.acts_on = acts_on,
            Self::StageShowsOthers(at, shows) => {
                part_mut(&mut spec.stages, at)?.shows_others = shows;
            }
            Self::Position(at, place, position) => {
                let stage = part_mut(&mut spec.stages, at)?;
                *part_mut(&mut stage.positions, place)? = position;
            }
            Self::AddPosition(at, position) => {
                part_mut(&mut spec.stages, at)?.positions.push(position);
            }
            Self::RemovePosition(at, place) => {
                remove_position(part_mut(&mut spec.stages, at)?, place)?;
            }
            Self::Replace(parts) => spec = *parts,
        }
        Ok(GearSet::try_from(spec)?)
    }
}

fn place_of(spec: &GearSetSpec, id: GearId) -> Result<usize, EditError> {
    let place = spec.gears.iter().position(|g| g.id == id);
    place.ok_or(EditError::NoSuchPart)
}

fn gear_mut(spec: &mut GearSetSpec, id: GearId) -> Result<&mut Gear, EditError> {
    let gear = spec.gears.iter_mut().find(|g| g.id == id);
    gear.ok_or(EditError::NoSuchPart)
}

fn reverse_mut(spec: &mut GearSetSpec) -> Result<&mut Reverse, EditError> {
    spec.reverse.as_mut().ok_or(EditError::NoSuchPart)
}

/// The final drive, stage or position at that place.
fn part_mut<T>(parts: &mut [T], at: usize) -> Result<&mut T, EditError> {
    parts.get_mut(at).ok_or(EditError::NoSuchPart)
}

fn set_reverse(spec: &mut GearSetSpec, reverse: Option<Reverse>) {
    spec.reverse = reverse;
    if spec.reverse.is_none() {
        spec.forget_in_stages(GearId::REVERSE);
    }
}

/// The number of the first gear of the shift chain, where its gears are called by numbers in a row:
/// below 2, 3, 4 there may be a crawler that is called 1.
fn counted_from(spec: &GearSetSpec) -> Option<u16> {
    let chain = spec.gears.iter().filter(|g| g.role == GearRole::Shifted);
    let mut labels = chain.map(|gear| gear.label.as_str()).peekable();
    let first: u16 = labels.peek()?.parse().ok()?;
    let mut numbers = (first..).zip(labels);
    let are_counted = numbers.all(|(number, label)| label == number.to_string());
    are_counted.then_some(first)
}

/// Calls the gears of the shift chain by numbers in a row.
fn count_from(first: u16, spec: &mut GearSetSpec) {
    let chain = spec
        .gears
        .iter_mut()
        .filter(|g| g.role == GearRole::Shifted);
    for (number, gear) in (first..).zip(chain) {
        if let Ok(label) = Label::new(&number.to_string()) {
            gear.label = label;
        }
    }
}

fn set_sprocket(
    spec: &mut GearSetSpec,
    at: usize,
    of: Sprocket,
    teeth: u16,
) -> Result<(), EditError> {
    match part_mut(&mut spec.final_drives, at)? {
        FinalDrive::Gears(_) => Err(EditError::NoSuchPart),
        FinalDrive::Chain(sprockets) => {
            *sprockets = sprockets.with(of, teeth)?;
            Ok(())
        }
    }
}

fn remove_final_drive(spec: &mut GearSetSpec, at: usize) -> Result<(), EditError> {
    part_mut(&mut spec.final_drives, at)?;
    let forward = spec.gears.iter_mut().map(|g| &mut g.final_drive);
    let reverse = spec.reverse.iter_mut().map(|r| &mut r.final_drive);
    for names in forward.chain(reverse) {
        if *names == at {
            return Err(EditError::FinalDriveInUse(at + 1));
        }
        *names -= usize::from(*names > at);
    }
    spec.final_drives.remove(at);
    Ok(())
}

fn remove_position(stage: &mut Stage, place: usize) -> Result<(), EditError> {
    part_mut(&mut stage.positions, place)?;
    stage.positions.remove(place);
    if stage.present >= place && stage.present > 0 {
        stage.present -= 1;
    }
    Ok(())
}
