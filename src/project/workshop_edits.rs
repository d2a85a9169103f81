//! The changes that the workshop of a project can undergo.

use crate::units::BenchUnits;
use crate::workshop::{Job, JobData, JobId, JobListError, Workshop};

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
}

impl WorkshopEdit {
    /// The workshop after the edit.
    ///
    /// # Errors
    /// When the job is not there, or there are too many.
    pub(super) fn applied_to(self, workshop: &Workshop) -> Result<Workshop, JobListError> {
        match self {
            Self::Units(units) => {
                let mut workshop = workshop.clone();
                workshop.units = units;
                Ok(workshop)
            }
            Self::AddJob(data) => workshop.with(*data),
            Self::RemoveJob(id) => workshop.without(id),
            Self::Job(job) => workshop.changed(*job),
        }
    }
}
