//! The depth of a pinion: what is typed of it, and which shim sets it as deep as its head is marked.

use super::answer::{Answer, JobState};
use super::field::{Field, typed};
use super::form::{JobForm, no_items};
use super::said::{self, Dial, Part};
use crate::units::{BenchUnits, LengthUnit};
use crate::workshop::quantity::{Depth, Reading, Setting, SettingBand, ShimThickness, Tolerance};
use crate::workshop::readings::{Readings, Resolution};
use crate::workshop::shim::{Measurement, ROUNDING_MM, Seat, ShimJob};
use crate::workshop::shim_answer::AnsweredShim;
use crate::workshop::sizes::Sizes;
use crate::workshop::stock::{StackedShims, Stock};

/// What is known of a pinion whose depth is set; each part may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PinionDepthData {
    /// From the axis of the ring gear to the seat of the bearing.
    pub seat: Option<Readings>,
    /// From that axis to the back of the head, as the maker gives it.
    pub mounting: Option<Depth>,
    /// What is marked on the head, to be added to it.
    pub marking: Option<Setting>,
    /// The height of the bearing.
    pub bearing: Option<Depth>,
    /// How far off it may stand, either way.
    pub tolerance: Option<Tolerance>,
    /// What the gauge tells apart.
    pub resolution: Option<Resolution>,
    /// How far readings may scatter.
    pub most_spread: Option<Resolution>,
    /// What can be had.
    pub sizes: Option<Sizes>,
    /// How many may be stacked; absent one.
    pub most_shims: Option<StackedShims>,
    /// What was built in.
    pub fitted: Option<ShimThickness>,
    /// From the axis to the back of the head, with what was built in.
    pub final_depth: Option<Readings>,
}

impl JobForm for PinionDepthData {
    const FIELDS: &'static [Field<Self>] = &[
        typed!(
            PinionDepthData.seat,
            "Axis to bearing seat",
            Length,
            "every reading, from the ring gear's axis"
        )
        .list(),
        typed!(
            PinionDepthData.mounting,
            "Mounting distance",
            Length,
            "axis to back of head, by the manual"
        ),
        typed!(
            PinionDepthData.marking,
            "Marking on head, + or −",
            Length,
            "0 for none; the manual says if + is farther"
        ),
        typed!(
            PinionDepthData.bearing,
            "Height of the bearing",
            Length,
            "cone and cup (race) pressed together"
        ),
        typed!(
            PinionDepthData.tolerance,
            "May be off, either way",
            Length,
            "as 0.02; else half a step of the shims"
        )
        .in_inches("as 0.001; else half a step of the shims"),
        typed!(
            PinionDepthData.sizes,
            "Sizes to be had",
            Length,
            "as 0.10 0.12 0.15, or 0.65 to 1.40 by 0.05"
        )
        .in_inches("as 0.020 0.022, or 0.025 to 0.055 by 0.002"),
        typed!(
            PinionDepthData.most_shims,
            "Shims in one place, at most",
            Plain,
            "1; some manuals allow no more"
        ),
        typed!(
            PinionDepthData.resolution,
            "Gauge shows",
            Length,
            "one division, as 0.01"
        )
        .in_inches("one division, as 0.0005"),
        typed!(
            PinionDepthData.most_spread,
            "Readings may differ by",
            Length,
            "from least to most; more, and you are warned"
        ),
        typed!(
            PinionDepthData.fitted,
            "Built in",
            Length,
            "all shims of the place together"
        ),
        typed!(
            PinionDepthData.final_depth,
            "Axis to head with it",
            Length,
            "every reading, to the back of the head"
        )
        .list(),
    ];

    no_items!();

    fn answer(&self, units: BenchUnits) -> Answer {
        let unit = units.length;
        let Some(answered) = self.job().map(|job| self.answered(job)) else {
            return said::lacking(*self == Self::default(), &self.parts());
        };
        let answer = match (&answered.wanted, self.off_mm()) {
            (Err(_), _) => Answer::new(JobState::ToMeasure).warning(answered.place_words(unit)),
            // What was read before it was built in matters no more.
            (Ok(_), Some(off_mm)) => return self.after_building(&answered, off_mm, unit),
            (Ok(_), None) => said::before_building(&answered, unit),
        };
        said::with_readings(answer, &answered, self.gauge(), unit)
    }
}

impl PinionDepthData {
    /// The job, where all of it is known that it needs.
    pub fn job(&self) -> Option<ShimJob> {
        Some(ShimJob {
            seat: Seat::Behind,
            measurement: Measurement::PinionDepth {
                seat: self.seat.clone()?,
                mounting: self.mounting?,
                marking: self.marking?,
                bearing: self.bearing?,
            },
            setting: SettingBand::either_way(self.tolerance?),
        })
    }

    /// How much farther from the axis than marked the pinion stands with what was built in, in mm; below 0 it
    /// is nearer.
    pub fn off_mm(&self) -> Option<f64> {
        let depth = self.final_depth.as_ref()?.mean_mm();
        Some(depth - self.mounting?.mm() - self.marking?.mm())
    }

    fn answered(&self, job: ShimJob) -> AnsweredShim {
        let most = self.most_shims.unwrap_or(StackedShims::ONE);
        let stock = self.sizes.as_ref().map(|sizes| Stock::new(sizes, most));
        AnsweredShim::of(job, stock.as_ref())
    }

    fn gauge(&self) -> Dial {
        Dial {
            resolution: self.resolution,
            most_spread: self.most_spread,
            remedy: "look at the gauge and the seat, and measure again",
        }
    }

    /// What must be known before anything can be said, and whether it is.
    fn parts(&self) -> [Part; 5] {
        [
            (self.seat.is_some(), "the axis to the bearing's seat"),
            (self.mounting.is_some(), "the mounting distance"),
            (self.marking.is_some(), "the marking on the head"),
            (self.bearing.is_some(), "the height of the bearing"),
            (self.tolerance.is_some(), "how far off it may be"),
        ]
    }

    /// What the depth with the final shim says.
    fn after_building(&self, answered: &AnsweredShim, off_mm: f64, unit: LengthUnit) -> Answer {
        let job = &answered.job;
        let stands = format!("the pinion stands {}", job.setting_words(off_mm, unit));
        let tolerance_mm = job.setting.high().mm();
        let allowed = format!("±{} {}", unit.figure(tolerance_mm), unit.sign());
        if off_mm.abs() <= tolerance_mm + ROUNDING_MM {
            return Answer::new(JobState::Done).result(format!("{stands}: within {allowed}"));
        }
        let answer = Answer::new(JobState::ToChange).result(format!("{stands}, not {allowed}"));
        let chosen = answered.choice.as_ref();
        let chosen = chosen.map(|choice| choice.stack.thickness_mm);
        let fitted = self.fitted.map(ShimThickness::mm).or(chosen);
        match fitted.and_then(|mm| self.next(mm, off_mm)) {
            Some(next) => said::next_shim(answer, &next, unit),
            None => answer.said(said::TYPE_FITTED),
        }
    }

    /// The same place, its seat where the pinion with what was built in says that it is.
    fn next(&self, fitted_mm: f64, off_mm: f64) -> Option<AnsweredShim> {
        let head_mm = self.mounting?.mm() + self.marking?.mm() + off_mm;
        let seat = Reading::from_mm(head_mm + self.bearing?.mm() + fitted_mm).ok()?;
        let next = Self {
            seat: Readings::new(vec![seat]),
            ..self.clone()
        };
        next.job().map(|job| self.answered(job))
    }
}
