//! The jobs of a workshop, the units of its bench, and the plan of what must change.

use super::{Job, JobData, JobId};
use crate::units::BenchUnits;
use crate::workshop::Plan;

/// The workshop of a project: its jobs in their order, the units in which they are typed, and the plan.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Workshop {
    /// The units of the bench.
    pub units: BenchUnits,
    /// What must change for each candidate, once that is planned.
    pub plan: Option<Plan>,
    jobs: Vec<Job>,
}

/// What of a workshop is worked on, or printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum BenchItem {
    /// The plan of what changes.
    Plan,
    /// A job of the bench.
    Job(JobId),
}

/// Why jobs are no list of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum JobListError {
    /// Too many.
    #[error("a project has at most {most} jobs, not {count}", most = Workshop::MOST)]
    TooMany {
        /// How many there were.
        count: usize,
    },
    /// The job is not there (any more).
    #[error("that job is not there any more")]
    NoSuchJob,
}

impl Workshop {
    /// The most jobs that a project can have.
    pub const MOST: usize = 40;

    /// A workshop with these jobs, which get identities of their own.
    ///
    /// # Errors
    /// When there are too many.
    pub fn new(units: BenchUnits, jobs: Vec<Job>) -> Result<Self, JobListError> {
        if jobs.len() > Self::MOST {
            return Err(JobListError::TooMany { count: jobs.len() });
        }
        let jobs = (1..).zip(jobs).map(|(id, job)| Job {
            id: JobId(id),
            ..job
        });
        Ok(Self {
            units,
            plan: None,
            jobs: jobs.collect(),
        })
    }

    /// The jobs in their order.
    pub fn jobs(&self) -> &[Job] {
        &self.jobs
    }

    /// The job of that identity.
    pub fn job(&self, id: JobId) -> Option<&Job> {
        self.jobs.iter().find(|job| job.id == id)
    }

    /// Whether it has that.
    pub fn has(&self, item: BenchItem) -> bool {
        match item {
            BenchItem::Plan => self.plan.is_some(),
            BenchItem::Job(id) => self.job(id).is_some(),
        }
    }

    /// The identity that the next new job gets.
    pub fn next_id(&self) -> JobId {
        JobId(self.jobs.iter().map(|job| job.id.0).max().unwrap_or(0) + 1)
    }

    /// The workshop with one more job behind the others.
    ///
    /// # Errors
    /// When there are as many as can be.
    pub fn with(&self, data: JobData) -> Result<Self, JobListError> {
        if self.jobs.len() >= Self::MOST {
            return Err(JobListError::TooMany {
                count: self.jobs.len() + 1,
            });
        }
        let mut workshop = self.clone();
        workshop.jobs.push(Job {
            id: self.next_id(),
            name: None,
            remark: None,
            data,
        });
        Ok(workshop)
    }

    /// The workshop with a job changed, by its identity.
    ///
    /// # Errors
    /// When it is not there.
    pub fn changed(&self, job: Job) -> Result<Self, JobListError> {
        let mut workshop = self.clone();
        let place = workshop.jobs.iter_mut().find(|old| old.id == job.id);
        *place.ok_or(JobListError::NoSuchJob)? = job;
        Ok(workshop)
    }

    /// The workshop without a job.
    ///
    /// # Errors
    /// When it is not there.
    pub fn without(&self, id: JobId) -> Result<Self, JobListError> {
        let mut workshop = self.clone();
        workshop.jobs.retain(|job| job.id != id);
        if workshop.jobs.len() == self.jobs.len() {
            return Err(JobListError::NoSuchJob);
        }
        Ok(workshop)
    }
}
