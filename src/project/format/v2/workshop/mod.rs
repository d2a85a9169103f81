//! The workshop in format 2: the units of its bench, the plan of what changes, and its jobs, each kind in a file of its own.

mod fit;
mod heat;
mod journal;
mod limits;
mod pinion_depth;
mod plan;
mod shim;
mod side_bearings;
mod turning_torque;
mod values;

use super::super::shared::misfit::Misfit;
use super::super::shared::values::NameText;
use crate::project::document::Candidates;
use crate::project::format::outline::Step::Key;
use crate::units::{BenchUnits, LengthUnit, TurningUnit};
use crate::workshop::{Job, JobData, JobId, Workshop};
use fit::FitV2;
use heat::HeatV2;
use journal::JournalV2;
use limits::LimitsV2;
use pinion_depth::PinionDepthV2;
use plan::PlanV2;
use serde::{Deserialize, Serialize};
use shim::ShimV2;
use side_bearings::SideBearingsV2;
use turning_torque::TurningTorqueV2;

#[derive(Serialize, Deserialize)]
#[serde(rename = "Workshop", deny_unknown_fields)]
pub(crate) struct WorkshopV2 {
    /// Absent where it is mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    lengths: Option<LengthEntry>,
    /// Absent where it is N·m.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    torques: Option<TorqueEntry>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    plan: Option<PlanV2>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    jobs: Vec<JobV2>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Job", deny_unknown_fields)]
struct JobV2 {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    name: Option<NameText>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    remark: Option<NameText>,
    work: WorkEntry,
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Work", deny_unknown_fields)]
enum WorkEntry {
    Shim(ShimV2),
    PinionDepth(PinionDepthV2),
    SideBearings(SideBearingsV2),
    TurningTorque(TurningTorqueV2),
    Limits(LimitsV2),
    Heat(HeatV2),
    Fit(FitV2),
    Journal(JournalV2),
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Lengths")]
enum LengthEntry {
    Millimetre,
    Inch,
}

#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Torques")]
enum TorqueEntry {
    NewtonMetre,
    NewtonCentimetre,
    PoundInch,
    PoundFoot,
    KilogramForceCentimetre,
}

values::same_words!(LengthEntry, LengthUnit, Millimetre, Inch);
values::same_words!(
    TorqueEntry,
    TurningUnit,
    NewtonMetre,
    NewtonCentimetre,
    PoundInch,
    PoundFoot,
    KilogramForceCentimetre
);

impl WorkshopV2 {
    /// The workshop as it stands in a file; none where there is nothing to say.
    pub(super) fn of(workshop: &Workshop, sets: &Candidates) -> Option<Self> {
        let said = |is_usual: bool| (!is_usual).then_some(());
        let BenchUnits { length, torque } = workshop.units;
        (*workshop != Workshop::default()).then(|| Self {
            lengths: said(length == LengthUnit::default()).map(|()| length.into()),
            torques: said(torque == TurningUnit::default()).map(|()| torque.into()),
            plan: workshop.plan.as_ref().map(|plan| PlanV2::of(plan, sets)),
            jobs: workshop.jobs().iter().map(JobV2::of).collect(),
        })
    }

    /// The workshop that the file holds.
    ///
    /// # Errors
    /// When it has too many jobs, or a plan that cannot be.
    pub(super) fn into_workshop(self, sets: &Candidates) -> Result<Workshop, Misfit> {
        let units = BenchUnits {
            length: self.lengths.map(Into::into).unwrap_or_default(),
            torque: self.torques.map(Into::into).unwrap_or_default(),
        };
        let jobs = self.jobs.into_iter().map(JobV2::into_job).collect();
        let mut workshop = Workshop::new(units, jobs)
            .map_err(|error| Misfit::new([Key("workshop"), Key("jobs")], &error))?;
        let told = |misfit: Misfit| misfit.within([Key("workshop"), Key("plan")]);
        let plan = self.plan.map(|plan| plan.into_plan(sets).map_err(told));
        workshop.plan = plan.transpose()?;
        Ok(workshop)
    }
}

impl JobV2 {
    fn of(job: &Job) -> Self {
        Self {
            name: job.name.clone().map(NameText),
            remark: job.remark.clone().map(NameText),
            work: match &job.data {
                JobData::Shim(data) => WorkEntry::Shim(data.into()),
                JobData::PinionDepth(data) => WorkEntry::PinionDepth(data.into()),
                JobData::SideBearings(data) => WorkEntry::SideBearings(data.into()),
                JobData::TurningTorque(data) => WorkEntry::TurningTorque(data.into()),
                JobData::Limits(data) => WorkEntry::Limits(data.into()),
                JobData::Heat(data) => WorkEntry::Heat(data.into()),
                JobData::Fit(data) => WorkEntry::Fit(data.into()),
                JobData::Journal(data) => WorkEntry::Journal(data.into()),
            },
        }
    }

    fn into_job(self) -> Job {
        Job {
            // The list gives each its own.
            id: JobId(0),
            name: self.name.map(|name| name.0),
            remark: self.remark.map(|remark| remark.0),
            data: match self.work {
                WorkEntry::Shim(data) => JobData::Shim(data.into()),
                WorkEntry::PinionDepth(data) => JobData::PinionDepth(data.into()),
                WorkEntry::SideBearings(data) => JobData::SideBearings(data.into()),
                WorkEntry::TurningTorque(data) => JobData::TurningTorque(data.into()),
                WorkEntry::Limits(data) => JobData::Limits(data.into()),
                WorkEntry::Heat(data) => JobData::Heat(data.into()),
                WorkEntry::Fit(data) => JobData::Fit(data.into()),
                WorkEntry::Journal(data) => JobData::Journal(data.into()),
            },
        }
    }
}
