//! Jobs of the bench: what is typed of each, and what it comes to.
//!
//! A job is its data, every figure of which may be missing; `field.rs` says how a figure is spelled and read,
//! each kind of job lists its own. What window, sheets, histories and comparisons show are the [`Row`]s.

mod answer;
mod field;
mod fit;
mod fit_said;
mod form;
mod heat;
mod is_there;
mod journal;
mod journal_said;
mod limits;
mod list;
mod pinion_depth;
mod places;
mod said;
mod shim;
mod side_bearings;
mod turning_torque;

pub use answer::{Answer, AnswerLine, JobState, LineKind};
pub use field::{FieldKey, Row, RowAnswer};
pub use fit::{FitData, FitPart, KnownFit};
pub use heat::{HeatData, MaterialName};
pub use is_there::IsThere;
pub use journal::JournalData;
pub use limits::{LimitItem, LimitMargin, LimitsData};
pub use list::{BenchItem, JobListError, Workshop};
pub use pinion_depth::PinionDepthData;
pub use places::SeatPlace;
pub use shim::{ShimData, ShimMeasuring};
pub use side_bearings::{RateBy, SideBearingsData};
pub use turning_torque::{
    BearingsAre, MakersFigure, TorqueMeasuring, TorqueTry, TurningTorqueData,
};

use crate::gearing::Name;
use crate::units::BenchUnits;
use crate::workshop::cautions::{FIT_CAUTIONS, JOURNAL_CAUTIONS};
use field::{Field, typed};
use form::JobForm;

/// Names a job for as long as its project is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct JobId(pub u32);

/// A job of the bench.
#[derive(Debug, Clone, PartialEq)]
pub struct Job {
    /// Its identity within the project.
    pub id: JobId,
    /// What it is called, where it is called anything.
    pub name: Option<Name>,
    /// What is to be remembered of it, on one line.
    pub remark: Option<Name>,
    /// What is known of it.
    pub data: JobData,
}

/// What is known of a job, by its kind.
#[derive(Debug, Clone, PartialEq)]
pub enum JobData {
    /// A shim for an end play or a preload.
    Shim(ShimData),
    /// How deep a pinion stands.
    PinionDepth(PinionDepthData),
    /// The side bearings of a differential, and the backlash.
    SideBearings(SideBearingsData),
    /// The torque that keeps a shaft turning.
    TurningTorque(TurningTorqueData),
    /// What was measured against its limits.
    Limits(LimitsData),
    /// What heat makes of an end play.
    Heat(HeatData),
    /// How a bearing or a ring fits its seat.
    Fit(FitData),
    /// A shaft that is turned down.
    Journal(JournalData),
}

/// A kind of job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum JobKind {
    /// A shim for an end play or a preload.
    Shim,
    /// How deep a pinion stands.
    PinionDepth,
    /// The side bearings of a differential, and the backlash.
    SideBearings,
    /// The torque that keeps a shaft turning.
    TurningTorque,
    /// What was measured against its limits.
    Limits,
    /// What heat makes of an end play.
    Heat,
    /// How a bearing or a ring fits its seat.
    Fit,
    /// A shaft that is turned down.
    Journal,
}

impl JobKind {
    /// All kinds, in the order in which they are offered.
    pub const ALL: [Self; 8] = [
        Self::Shim,
        Self::PinionDepth,
        Self::SideBearings,
        Self::TurningTorque,
        Self::Limits,
        Self::Heat,
        Self::Fit,
        Self::Journal,
    ];

    /// What a job of the kind is called that has no name.
    pub fn words(self) -> &'static str {
        match self {
            Self::Shim => "Shim for end play or preload",
            Self::PinionDepth => "Pinion depth",
            Self::SideBearings => "Side bearings and backlash",
            Self::TurningTorque => "Turning torque",
            Self::Limits => "Measured against limits",
            Self::Heat => "End play when it runs",
            Self::Fit => "Fit of a bearing or ring",
            Self::Journal => "Shaft turned down",
        }
    }

    /// What it is for, in one sentence.
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Shim => "Which shim gives the end play or the preload that the manual wants",
            Self::PinionDepth => "Which shim sets the pinion as deep as its head is marked",
            Self::SideBearings => {
                "How the shims beside a differential are split, and which way they move to the wanted backlash"
            }
            Self::TurningTorque => {
                "Whether a shaft turns as hard as the maker wants (US manuals: preload), and which shim comes next"
            }
            Self::Limits => "How much is left of what wears, gaps and runs out, the worst first",
            Self::Heat => "What heat makes of the end play that is set at the bench",
            Self::Fit => {
                "Whether a seat lies within its class, how tight the part is on it, and what presses or warms it on"
            }
            Self::Journal => {
                "What stops a shaft from being turned down, what is left of it, and what goes to the lathe"
            }
        }
    }

    /// What is said beside every job of the kind, beyond what is said of all.
    pub fn cautions(self) -> &'static [&'static str] {
        match self {
            Self::Fit => &FIT_CAUTIONS,
            Self::Journal => &JOURNAL_CAUTIONS,
            Self::Shim
            | Self::PinionDepth
            | Self::SideBearings
            | Self::TurningTorque
            | Self::Limits
            | Self::Heat => &[],
        }
    }

    /// The data of a job of which nothing is known.
    pub fn begun(self) -> JobData {
        match self {
            Self::Shim => JobData::Shim(ShimData::default()),
            Self::PinionDepth => JobData::PinionDepth(PinionDepthData::default()),
            Self::SideBearings => JobData::SideBearings(SideBearingsData::default()),
            Self::TurningTorque => JobData::TurningTorque(TurningTorqueData::default()),
            Self::Limits => JobData::Limits(LimitsData::default()),
            Self::Heat => JobData::Heat(HeatData::default()),
            Self::Fit => JobData::Fit(FitData::default()),
            Self::Journal => JobData::Journal(JournalData::default()),
        }
    }
}

/// Does the same with the data of every kind.
macro_rules! with_data {
    ($data:expr, $form:ident => $does:expr) => {
        match $data {
            JobData::Shim($form) => $does,
            JobData::PinionDepth($form) => $does,
            JobData::SideBearings($form) => $does,
            JobData::TurningTorque($form) => $does,
            JobData::Limits($form) => $does,
            JobData::Heat($form) => $does,
            JobData::Fit($form) => $does,
            JobData::Journal($form) => $does,
        }
    };
}

/// What every job has, before what its kind asks for.
const NAMES: &[Field<Job>] = &[
    typed!(
        Job.name,
        "Name",
        Plain,
        "such as: input shaft, front bearing"
    ),
    typed!(
        Job.remark,
        "Remark",
        Plain,
        "one line: which manual, which part number"
    ),
];

impl JobData {
    /// Of which kind it is.
    pub fn kind(&self) -> JobKind {
        match self {
            Self::Shim(_) => JobKind::Shim,
            Self::PinionDepth(_) => JobKind::PinionDepth,
            Self::SideBearings(_) => JobKind::SideBearings,
            Self::TurningTorque(_) => JobKind::TurningTorque,
            Self::Limits(_) => JobKind::Limits,
            Self::Heat(_) => JobKind::Heat,
            Self::Fit(_) => JobKind::Fit,
            Self::Journal(_) => JobKind::Journal,
        }
    }

    /// What it comes to.
    pub fn answer(&self, units: BenchUnits) -> Answer {
        with_data!(self, form => form.answer(units))
    }

    /// What one of its items is called; none where it has no list of them.
    pub fn item_name(&self) -> Option<&'static str> {
        fn of<F: JobForm>(_: &F) -> Option<&'static str> {
            F::ITEM
        }
        with_data!(self, form => of(form))
    }

    /// How many items it has.
    pub fn item_count(&self) -> usize {
        with_data!(self, form => form.items().len())
    }

    fn rows(&self, units: BenchUnits) -> Vec<Row> {
        fn of<F: JobForm>(form: &F, units: BenchUnits) -> Vec<Row> {
            let mut rows = field::rows(F::FIELDS, form, None, units);
            for (at, item) in (0_u8..).zip(form.items()) {
                rows.extend(field::rows(F::ITEM_FIELDS, item, Some(at), units));
            }
            rows
        }
        with_data!(self, form => of(form, units))
    }

    fn put(&mut self, key: FieldKey, text: &str, units: BenchUnits) -> Result<bool, String> {
        fn of<F: JobForm>(
            form: &mut F,
            key: FieldKey,
            text: &str,
            units: BenchUnits,
        ) -> Result<bool, String> {
            let Some(at) = key.item else {
                return field::put(F::FIELDS, form, (key.name, text), units);
            };
            let item = form
                .items_mut()
                .and_then(|items| items.get_mut(usize::from(at)));
            match item {
                Some(item) => field::put(F::ITEM_FIELDS, item, (key.name, text), units),
                None => Ok(false),
            }
        }
        with_data!(self, form => of(form, key, text, units))
    }

    fn choose(&mut self, key: FieldKey, option: usize) -> bool {
        fn of<F: JobForm>(form: &mut F, key: FieldKey, option: usize) -> bool {
            let Some(at) = key.item else {
                return field::choose(F::FIELDS, form, (key.name, option));
            };
            let item = form
                .items_mut()
                .and_then(|items| items.get_mut(usize::from(at)));
            item.is_some_and(|item| field::choose(F::ITEM_FIELDS, item, (key.name, option)))
        }
        with_data!(self, form => of(form, key, option))
    }
}

impl Job {
    /// The field of its name.
    pub const NAME: FieldKey = FieldKey {
        name: "name",
        item: None,
    };

    /// The field of the shim with which a turning torque is measured.
    pub const SHIM_IN_PLACE: FieldKey = FieldKey {
        name: "shim",
        item: None,
    };

    /// The most items that a job can have.
    pub const MOST_ITEMS: usize = 40;

    /// What it is called: its name, else that of its kind.
    pub fn title(&self) -> &str {
        let name = self.name.as_ref().map(Name::as_str);
        name.unwrap_or_else(|| self.data.kind().words())
    }

    /// Everything that is asked of it, with what is known.
    pub fn rows(&self, units: BenchUnits) -> Vec<Row> {
        let mut rows = field::rows(NAMES, self, None, units);
        rows.extend(self.data.rows(units));
        rows
    }

    /// What is asked of each of its items; none where it has no list of them.
    pub fn item_names(&self, units: BenchUnits) -> Option<Vec<String>> {
        fn of<F: JobForm>(_: &F, units: BenchUnits) -> Option<Vec<String>> {
            F::ITEM?;
            let rows = field::rows(F::ITEM_FIELDS, &F::Item::default(), Some(0), units);
            Some(rows.into_iter().map(|row| row.name).collect())
        }
        with_data!(&self.data, form => of(form, units))
    }

    /// What it comes to.
    pub fn answer(&self, units: BenchUnits) -> Answer {
        self.data.answer(units)
    }

    /// The job with what a text means in a field.
    ///
    /// # Errors
    /// A sentence, where it does not read, or there is no such field (any more).
    pub fn with(&self, key: FieldKey, text: &str, units: BenchUnits) -> Result<Self, String> {
        let mut job = self.clone();
        // An item may have a name of its own.
        let is_put = key.item.is_none() && field::put(NAMES, &mut job, (key.name, text), units)?
            || job.data.put(key, text, units)?;
        is_put
            .then_some(job)
            .ok_or_else(|| NO_SUCH_FIELD.to_owned())
    }

    /// The job where something else is chosen, by its place among the options; none where it is not to be
    /// chosen.
    pub fn choosing(&self, key: FieldKey, option: usize) -> Option<Self> {
        let mut job = self.clone();
        job.data.choose(key, option).then_some(job)
    }

    /// The job with one more item; none where it has no list of them, or as many as it can have.
    pub fn with_item(&self) -> Option<Self> {
        fn add<F: JobForm>(form: &mut F) -> bool {
            let items = form.items_mut();
            items.is_some_and(|items| {
                let has_room = items.len() < Job::MOST_ITEMS;
                if has_room {
                    items.push(F::Item::default());
                }
                has_room
            })
        }
        let mut job = self.clone();
        with_data!(&mut job.data, form => add(form)).then_some(job)
    }

    /// The job with what was measured last as one more try; none where its kind keeps no tries, or there is none to
    /// be kept.
    pub fn keeping_try(&self) -> Option<Self> {
        match &self.data {
            JobData::TurningTorque(data) => Some(Self {
                data: JobData::TurningTorque(data.keeping_try()?),
                ..self.clone()
            }),
            JobData::Shim(_)
            | JobData::PinionDepth(_)
            | JobData::SideBearings(_)
            | JobData::Limits(_)
            | JobData::Heat(_)
            | JobData::Fit(_)
            | JobData::Journal(_) => None,
        }
    }

    /// The job without an item; none where it is not there.
    pub fn without_item(&self, at: usize) -> Option<Self> {
        fn remove<F: JobForm>(form: &mut F, at: usize) -> bool {
            let items = form.items_mut().filter(|items| at < items.len());
            items.is_some_and(|items| {
                items.remove(at);
                true
            })
        }
        let mut job = self.clone();
        with_data!(&mut job.data, form => remove(form, at)).then_some(job)
    }
}

/// What is said where a field went while it was typed in.
const NO_SUCH_FIELD: &str = "that field is not there any more";
