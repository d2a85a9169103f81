//! The changes that the workshop of a project can undergo.

use super::document::{Candidates, SetId};
use super::edits::EditError;
use crate::gearing::Name;
use crate::units::BenchUnits;
use crate::workshop::{
    CandidateId, CurrencySign, Job, JobData, JobId, Part, PartId, Plan, PlanError, Workshop,
};

/// One change within the workshop.
#[derive(Debug, Clone, PartialEq)]
pub enum WorkshopEdit {
    /// Lengths and torques of the bench in other units.
    Units(BenchUnits),
    /// A new job behind the others.
    AddJob(Box<JobData>),
    /// One job fewer.
    RemoveJob(JobId),
    /// A job with something else typed, chosen or measured.
    Job(Box<Job>),
    /// Another plan of what changes, or none.
    Plan(Option<Box<Plan>>),
    /// The prices of the plan in another currency, or in none that is said.
    Currency(Option<CurrencySign>),
    /// A new part behind the others of the plan.
    AddPart(Name),
    /// One part of the plan fewer.
    RemovePart(PartId),
    /// A part of the plan with another name, struck or not, or with something else for a candidate.
    Part(Box<Part>),
}

impl WorkshopEdit {
    /// The workshop after the edit.
    ///
    /// # Errors
    /// When the job, the plan or its part is not there, or there are too many.
    pub(super) fn applied_to(self, workshop: &Workshop) -> Result<Workshop, EditError> {
        let mut workshop = workshop.clone();
        match self {
            Self::Units(units) => workshop.units = units,
            Self::AddJob(data) => workshop = workshop.with(*data)?,
            Self::RemoveJob(id) => workshop = workshop.without(id)?,
            Self::Job(job) => workshop = workshop.changed(*job)?,
            Self::Plan(plan) => workshop.plan = plan.map(|plan| *plan),
            Self::Currency(currency) => planned(&mut workshop)?.currency = currency,
            Self::AddPart(name) => {
                let plan = planned(&mut workshop)?;
                *plan = plan.with(name)?;
            }
            Self::RemovePart(id) => {
                let plan = planned(&mut workshop)?;
                *plan = plan.without(id)?;
            }
            Self::Part(part) => {
                let plan = planned(&mut workshop)?;
                *plan = plan.changed(*part)?;
            }
        }
        Ok(workshop)
    }
}

fn planned(workshop: &mut Workshop) -> Result<&mut Plan, PlanError> {
    workshop.plan.as_mut().ok_or(PlanError::NoPlan)
}

impl From<SetId> for CandidateId {
    fn from(set: SetId) -> Self {
        Self(set.0)
    }
}

/// A plan that says nothing of sets that are gone.
pub(super) fn among(plan: Plan, sets: &Candidates) -> Plan {
    plan.among(|id: CandidateId| sets.get(SetId(id.0)).is_some())
}

/// A plan where the set that came into `after` begins with what another one has.
pub(super) fn begun_like(plan: Plan, from: SetId, [before, after]: [&Candidates; 2]) -> Plan {
    let come = after.iter().find(|c| before.get(c.id).is_none());
    match come {
        Some(come) => plan.copied(from.into(), come.id.into()),
        None => plan,
    }
}
