//! The changes that a project can undergo, and what each is called in the history.
//!
//! The document changes only through these. An edit yields a valid project or a sentence; the
//! project it is applied to stays as it was.

use super::document::{Candidate, CandidatesError, Marks, Note, Project, SetId};
use super::set_edits::SetEdit;
use super::technical::{
    DrivingData, EngineData, KnownFuel, LimitsData, RoadData, SecondAxleData, SetChecks,
    SetEfficiencies, SpeedometerData, VehicleData,
};
use super::typed_figures::{TypedFigure, kept};
use super::workshop_edits::{WorkshopEdit, among, begun_like};
use super::write_up::WriteUp;
use crate::gearing::{EngineSpeed, GearSet, GearSetError, Name, RatioError, RoadSpeed, Tyre};
use crate::units::SpeedUnit;
use crate::workshop::{JobListError, PlanError};
use std::sync::Arc;

/// One change of a project.
#[derive(Debug, Clone, PartialEq)]
pub enum Edit {
    /// Another title, or none.
    Title(Option<Name>),
    /// Another date, or none.
    Date(Option<Name>),
    /// Another note.
    Note(Note),
    /// Road speeds in another unit.
    Units(SpeedUnit),
    /// Another tyre on the vehicle.
    Tyre(Tyre),
    /// Another idle speed, or none known.
    Idle(Option<EngineSpeed>),
    /// Another lowest useful engine speed, or none known.
    LowestUseful(Option<EngineSpeed>),
    /// Another redline.
    Redline(EngineSpeed),
    /// Other marked engine speeds.
    MarkedEngineSpeeds(Marks<EngineSpeed>),
    /// Other marked road speeds.
    MarkedRoadSpeeds(Marks<RoadSpeed>),
    /// Other data of the engine.
    EngineData(Box<EngineData>),
    /// Other data of the vehicle.
    VehicleData(Box<VehicleData>),
    /// Another load case, or another road.
    RoadData(RoadData),
    /// Other data of the driving.
    DrivingData(DrivingData),
    /// Other data of the speedometer.
    SpeedometerData(Box<SpeedometerData>),
    /// Other limits of tyres and shafts.
    LimitsData(Box<LimitsData>),
    /// Another second axle, or none.
    SecondAxleData(Box<SecondAxleData>),
    /// Another known consumption, or none.
    KnownFuel(Option<KnownFuel>),
    /// Another engine of a set's own, or the vehicle's.
    OwnEngine(SetId, Option<Box<EngineData>>),
    /// Other efficiencies of a set.
    Efficiencies(SetId, SetEfficiencies),
    /// Other data of a set's own of what is checked.
    SetChecks(SetId, Box<SetChecks>),
    /// A change within the workshop.
    Workshop(WorkshopEdit),
    /// Other choices for the write-up.
    WriteUp(WriteUp),
    /// A new set behind the one named.
    AddSet(SetId, Box<GearSet>),
    /// One set fewer.
    RemoveSet(SetId),
    /// A set at another place, counted from 0.
    MoveSet(SetId, usize),
    /// Another set to compare with.
    Baseline(SetId),
    /// A set shown or hidden.
    Visible(SetId, bool),
    /// A change within one set.
    Set(SetId, SetEdit),
    /// A change after which the figures stay as they were typed, as far as they held before it: the
    /// gear ratios follow.
    Keeping(Box<Self>, Vec<TypedFigure>),
}

/// Why an edit cannot be made.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum EditError {
    /// The candidates would not be valid.
    #[error(transparent)]
    Candidates(#[from] CandidatesError),
    /// The list of jobs would not be valid.
    #[error(transparent)]
    Jobs(#[from] JobListError),
    /// The plan of what changes would not be valid.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// The gear set would not be valid.
    #[error(transparent)]
    GearSet(#[from] GearSetError),
    /// Sprockets that make no chain.
    #[error(transparent)]
    Sprockets(#[from] RatioError),
    /// The gear, final drive, stage or position is not there (any more).
    #[error("that part of the gear set is not there any more")]
    NoSuchPart,
    /// A final drive that a gear still uses.
    #[error("final drive {0} is still used by a gear; move its gears to another one first")]
    FinalDriveInUse(usize),
    /// A figure that was typed and would need a ratio that cannot be.
    #[error("{gear} cannot keep its {figure}: {problem}; to let it go, type gears as gear ratios")]
    CannotKeep {
        /// Which gear.
        gear: String,
        /// What was typed.
        figure: String,
        /// Why its ratio cannot be.
        problem: RatioError,
    },
}

impl Edit {
    /// The edit after which figures stay as they were typed.
    #[must_use]
    pub fn keeping(self, figures: Vec<TypedFigure>) -> Self {
        if figures.is_empty() {
            return self;
        }
        Self::Keeping(Box::new(self), figures)
    }

    /// The project after the edit.
    ///
    /// # Errors
    /// When it names something that is not there or would leave something that cannot be.
    pub fn applied_to(&self, project: &Project) -> Result<Project, EditError> {
        let mut project = project.clone();
        match self.clone() {
            Self::Title(title) => project.title = title,
            Self::Date(date) => project.date = date,
            Self::Note(note) => project.note = note,
            Self::Units(units) => project.units = units,
            Self::Tyre(tyre) => project.tyre = tyre,
            Self::Idle(idle) => project.engine.idle = idle,
            Self::LowestUseful(speed) => project.engine.lowest_useful = speed,
            Self::Redline(redline) => project.engine.redline = redline,
            Self::MarkedEngineSpeeds(marks) => project.marked_engine_speeds = marks,
            Self::MarkedRoadSpeeds(marks) => project.marked_road_speeds = marks,
            Self::EngineData(engine) => project.technical.engine = *engine,
            Self::VehicleData(vehicle) => project.technical.vehicle = *vehicle,
            Self::RoadData(road) => project.technical.road = road,
            Self::DrivingData(driving) => project.technical.driving = driving,
            Self::SpeedometerData(data) => project.technical.speedometer = *data,
            Self::LimitsData(data) => project.technical.limits = *data,
            Self::SecondAxleData(data) => project.technical.second_axle = *data,
            Self::KnownFuel(fuel) => {
                let is_there = fuel.is_none_or(|fuel| fuel.is_of(&project.sets));
                is_there.then_some(()).ok_or(EditError::NoSuchPart)?;
                project.technical.known_fuel = fuel;
            }
            Self::OwnEngine(id, engine) => {
                let engine = engine.map(|engine| *engine);
                project.sets = project.sets.changed(id, |c| c.technical.engine = engine)?;
            }
            Self::Efficiencies(id, efficiencies) => {
                let candidate = project.sets.get(id).ok_or(CandidatesError::NoSuchSet)?;
                let fit = efficiencies.fit(&candidate.set);
                fit.then_some(()).ok_or(EditError::NoSuchPart)?;
                let change = |c: &mut Candidate| c.technical.efficiencies = efficiencies;
                project.sets = project.sets.changed(id, change)?;
            }
            Self::SetChecks(id, checks) => {
                project.sets = project.sets.changed(id, |c| c.technical.checks = *checks)?;
            }
            Self::Workshop(edit) => project.workshop = edit.applied_to(&project.workshop)?,
            Self::WriteUp(choices) => project.write_up = choices,
            Self::AddSet(behind, set) => {
                let sets = project.sets.with_after(behind, *set)?;
                let plan = project.workshop.plan.take();
                let both = [&project.sets, &sets];
                project.workshop.plan = plan.map(|plan| begun_like(plan, behind, both));
                project.sets = sets;
            }
            Self::RemoveSet(id) => project.sets = project.sets.without(id)?,
            Self::MoveSet(id, to) => project.sets = project.sets.moved(id, to)?,
            Self::Baseline(id) => project.sets = project.sets.compared_with(id)?,
            Self::Visible(id, visible) => {
                project.sets = project.sets.changed(id, |c| c.visible = visible)?;
            }
            Self::Set(id, edit) => {
                let candidate = project.sets.get(id).ok_or(CandidatesError::NoSuchSet)?;
                let set = Arc::new(edit.applied_to(&candidate.set)?);
                project.sets = project.sets.changed(id, |c| {
                    c.technical.efficiencies = c.technical.efficiencies.of(&set);
                    c.set = set;
                })?;
            }
            Self::Keeping(edit, figures) => {
                return kept(&project, edit.applied_to(&project)?, &figures);
            }
        }
        // A set or gear that went takes along what is known of it.
        let known = project.technical.known_fuel;
        project.technical.known_fuel = known.filter(|fuel| fuel.is_of(&project.sets));
        let plan = project.workshop.plan.take();
        project.workshop.plan = plan.map(|plan| among(plan, &project.sets));
        Ok(project)
    }
}
