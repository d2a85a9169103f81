//! A shim for an end play or a preload: what is typed of it, and what it comes to.

use super::answer::{Answer, JobState};
use super::field::{Choice, Field, chosen, typed};
use super::form::{JobForm, no_items};
use super::said::{self, Dial, Part};
use crate::units::{BenchUnits, LengthUnit};
use crate::workshop::quantity::{Depth, SettingBand, ShimThickness};
use crate::workshop::readings::{Readings, Resolution};
use crate::workshop::shim::{Filling, Measurement, ROUNDING_MM, Seat, ShimJob};
use crate::workshop::shim_answer::AnsweredShim;
use crate::workshop::sizes::Sizes;
use crate::workshop::stock::{StackedShims, Stock};

/// How the place of a shim is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ShimMeasuring {
    /// The play with a trial shim in place.
    #[default]
    TrialShim,
    /// The gap under a cover that is pressed against the bearing.
    FeelerGap,
    /// Depths by gauge.
    Depths,
}

impl Choice for ShimMeasuring {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::TrialShim, "the play with a trial shim"),
        (Self::FeelerGap, "the gap under the cover, by feeler"),
        (Self::Depths, "depths, by depth gauge"),
    ];
}

impl Choice for Seat {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::Behind, "behind a race or washer: thicker, less play"),
        (
            Self::Under,
            "under a cover or case half: thicker, more play",
        ),
    ];
}

/// What is known of a shim that is sought; each part may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ShimData {
    /// How its place is measured.
    pub measuring: ShimMeasuring,
    /// Where it sits; it hangs on nothing but a trial shim.
    pub seat: Seat,
    /// The shim with which the play was measured, 0 for none.
    pub trial: Option<ShimThickness>,
    /// What the dial travelled.
    pub play: Option<Readings>,
    /// The gap under the cover.
    pub gap: Option<Readings>,
    /// From the face of the case to the seat.
    pub case_depth: Option<Depth>,
    /// All that stands in it, part by part.
    pub filling: Option<Filling>,
    /// The gasket, squeezed.
    pub gasket: Option<ShimThickness>,
    /// What the manual wants.
    pub setting: Option<SettingBand>,
    /// What the dial tells apart.
    pub resolution: Option<Resolution>,
    /// How far readings may scatter.
    pub most_spread: Option<Resolution>,
    /// What can be had.
    pub sizes: Option<Sizes>,
    /// How many may be stacked; absent one.
    pub most_shims: Option<StackedShims>,
    /// What was built in.
    pub fitted: Option<ShimThickness>,
    /// The play with what was built in.
    pub final_play: Option<Readings>,
}

impl JobForm for ShimData {
    const FIELDS: &'static [Field<Self>] = &[
        chosen!(ShimData.measuring: ShimMeasuring, "What is measured", ""),
        chosen!(ShimData.seat: Seat, "Where the shim sits", "The sign hangs on it: look at the drawing")
            .when(|data| data.measuring == ShimMeasuring::TrialShim),
        typed!(ShimData.trial, "Trial shim", Length, "the shim in place while you measure, 0 for none")
            .when(|data| data.measuring == ShimMeasuring::TrialShim),
        typed!(ShimData.play, "Play, every reading", Length, "whole travel of the dial, as 0.30 0.31 0.29")
            .in_inches("whole travel of the dial, as 12 12.5 12 thou")
            .list()
            .when(|data| data.measuring == ShimMeasuring::TrialShim),
        typed!(ShimData.gap, "Gap, every reading", Length, "all round, bearing seated, as 0.40 0.42 0.40")
            .in_inches("all round, bearing seated, as 16 16.5 16 thou")
            .list()
            .when(|data| data.measuring == ShimMeasuring::FeelerGap),
        typed!(ShimData.case_depth, "Depth of the case", Length, "from the face to the seat")
            .when(|data| data.measuring == ShimMeasuring::Depths),
        typed!(ShimData.filling, "What stands in it", Length, "part by part, as 4.48 15.0 55")
            .in_inches("part by part, as 0.176 0.591 2.165")
            .list()
            .when(|data| data.measuring == ShimMeasuring::Depths),
        typed!(ShimData.gasket, "Gasket, squeezed", Length, "0 for none")
            .when(|data| data.measuring == ShimMeasuring::Depths),
        typed!(ShimData.setting, "Wanted setting", Plain, "preload 0.15 to 0.20, or clearance 0.05 to 0.10")
            .in_inches("preload 0.006 to 0.008, or clearance 2 to 4 thou"),
        typed!(ShimData.sizes, "Sizes to be had", Length, "as 0.10 0.12 0.15, or 0.65 to 1.40 by 0.05")
            .in_inches("as 0.020 0.022, or 0.025 to 0.055 by 0.002"),
        typed!(ShimData.most_shims, "Shims in one place, at most", Plain, "1; some manuals allow no more"),
        typed!(ShimData.resolution, "Dial shows", Length, "one division, as 0.01").in_inches("one division, as 0.0005"),
        typed!(ShimData.most_spread, "Readings may differ by", Length, "from least to most; more, and you are warned"),
        typed!(ShimData.fitted, "Built in", Length, "all shims of the place together"),
        typed!(ShimData.final_play, "Play with it, every reading", Length, "with what was built in; 0 where none is left").list(),
    ];

    no_items!();

    fn answer(&self, units: BenchUnits) -> Answer {
        let unit = units.length;
        let Some(answered) = self.answered() else {
            let untouched = Self {
                measuring: self.measuring,
                seat: self.seat,
                ..Self::default()
            };
            return said::lacking(*self == untouched, &self.parts());
        };
        let answer = self.checked(&answered, unit);
        if answered.wanted.is_ok() && self.final_play.is_some() {
            // What was read before it was built in matters no more.
            return answer;
        }
        said::with_readings(answer, &answered, self.dial(), unit)
    }
}

impl ShimData {
    /// The job, where all of it is known that it needs.
    pub fn job(&self) -> Option<ShimJob> {
        let measurement = match self.measuring {
            ShimMeasuring::TrialShim => Measurement::Play {
                trial: self.trial?,
                play: self.play.clone()?,
            },
            ShimMeasuring::FeelerGap => Measurement::Gap(self.gap.clone()?),
            ShimMeasuring::Depths => Measurement::Depths {
                case: self.case_depth?,
                filling: self.filling.clone()?,
                gasket: self.gasket?,
            },
        };
        Some(ShimJob {
            seat: self.seat,
            measurement,
            setting: self.setting?,
        })
    }

    fn answered(&self) -> Option<AnsweredShim> {
        let job = self.job()?;
        let most = self.most_shims.unwrap_or(StackedShims::ONE);
        let stock = self.sizes.as_ref().map(|sizes| Stock::new(sizes, most));
        Some(AnsweredShim::of(job, stock.as_ref()))
    }

    fn dial(&self) -> Dial {
        Dial {
            resolution: self.resolution,
            most_spread: self.most_spread,
            remedy: "seat the bearings by turning them both ways and measure again",
        }
    }

    /// What must be known before anything can be said, and whether it is.
    fn parts(&self) -> [Part; 7] {
        let trial = self.measuring == ShimMeasuring::TrialShim;
        let gap = self.measuring == ShimMeasuring::FeelerGap;
        let depths = self.measuring == ShimMeasuring::Depths;
        [
            (!trial || self.trial.is_some(), "the trial shim"),
            (!trial || self.play.is_some(), "the play with it"),
            (!gap || self.gap.is_some(), "the gap"),
            (
                !depths || self.case_depth.is_some(),
                "the depth of the case",
            ),
            (!depths || self.filling.is_some(), "what stands in it"),
            (!depths || self.gasket.is_some(), "the gasket"),
            (self.setting.is_some(), "the wanted setting"),
        ]
    }

    /// Whether what was built in is as it must be, or what to build in.
    fn checked(&self, answered: &AnsweredShim, unit: LengthUnit) -> Answer {
        let before = answered.job.measurement.readings();
        let below = before.into_iter().chain(&self.final_play);
        if let Some(below) = below
            .into_iter()
            .find_map(|read| said::below_nothing(read, unit))
        {
            return Answer::new(JobState::ToMeasure).warning(below);
        }
        if answered.wanted.is_err() {
            return Answer::new(JobState::ToMeasure).warning(answered.place_words(unit));
        }
        match &self.final_play {
            Some(play) => self.after_building(answered, play, unit),
            None => said::before_building(answered, unit),
        }
    }

    /// What the play with the final shim says.
    fn after_building(&self, answered: &AnsweredShim, play: &Readings, unit: LengthUnit) -> Answer {
        let setting = answered.job.setting;
        let mean_mm = play.mean_mm();
        let measured = format!(
            "the final shim leaves {}",
            answered.job.setting_words(mean_mm, unit)
        );
        let fitted_mm = self.fitted_mm(answered);
        let is_preload = setting.high().mm() <= 0.0;
        let unseen_mm = if is_preload {
            self.half_division_mm()
        } else {
            ROUNDING_MM
        };
        let is_loose = mean_mm > setting.high().mm().max(0.0) + unseen_mm;
        let is_tight = mean_mm < setting.low().mm() - ROUNDING_MM;
        let doubt = fitted_mm.and_then(|mm| self.contradiction(answered, mm, play, unit));
        if !is_loose && !is_tight && is_preload {
            return no_play_left(answered, fitted_mm, unit).warnings(doubt);
        }
        if !is_loose && !is_tight {
            let within = format!("{measured}: within {}", setting.words(unit));
            return Answer::new(JobState::Done).result(within).warnings(doubt);
        }
        let answer = Answer::new(JobState::ToChange)
            .result(format!("{measured}, not {}", setting.words(unit)))
            .warnings(doubt);
        match fitted_mm.and_then(|mm| self.next(mm, play)) {
            Some(next) => said::next_shim(answer, &next, unit),
            None => answer.said(said::TYPE_FITTED),
        }
    }

    /// What was built in, as far as that is known: what is typed, else what was to be taken.
    fn fitted_mm(&self, answered: &AnsweredShim) -> Option<f64> {
        let chosen = answered.choice.as_ref();
        let chosen = chosen.map(|choice| choice.stack.thickness_mm);
        self.fitted.map(ShimThickness::mm).or(chosen)
    }

    /// That the play with what was built in is another than the readings before promise.
    fn contradiction(
        &self,
        answered: &AnsweredShim,
        fitted_mm: f64,
        play: &Readings,
        unit: LengthUnit,
    ) -> Option<String> {
        let promised_mm = answered.job.setting_mm(fitted_mm);
        // No dial shows preload: there the play is none.
        let off_mm = (play.mean_mm() - promised_mm.max(0.0)).abs();
        let divisions = self.resolution.map_or(0.0, |division| 2.0 * division.mm());
        (off_mm > divisions.max(CONTRADICTION_MM)).then(|| {
            format!(
                "by the readings before, it should have {}: the bearings may not have been seated when they were \
                 taken, or another shim is in",
                answered.job.setting_words(promised_mm, unit)
            )
        })
    }

    /// The same place with what was built in as its trial shim.
    fn next(&self, fitted_mm: f64, play: &Readings) -> Option<AnsweredShim> {
        let seat = match self.measuring {
            ShimMeasuring::TrialShim => self.seat,
            ShimMeasuring::FeelerGap => Seat::Under,
            ShimMeasuring::Depths => Seat::Behind,
        };
        let next = Self {
            measuring: ShimMeasuring::TrialShim,
            seat,
            trial: Some(ShimThickness::from_mm(fitted_mm).ok()?),
            play: Some(play.clone()),
            ..self.clone()
        };
        next.answered()
    }

    /// Half of what the dial tells apart: less than that is not seen.
    fn half_division_mm(&self) -> f64 {
        self.resolution.map_or(ROUNDING_MM, |division| {
            (division.mm() / 2.0).max(ROUNDING_MM)
        })
    }
}

/// By so much, in mm, the play may be another than readings promise: bearings never seat twice alike.
const CONTRADICTION_MM: f64 = 0.03;

/// What it means that no play is left where preload is wanted: what the readings say of it, for no dial does.
fn no_play_left(answered: &AnsweredShim, fitted_mm: Option<f64>, unit: LengthUnit) -> Answer {
    let setting = answered.job.setting;
    let wanted = setting.words(unit);
    let promised_mm = fitted_mm.map(|mm| answered.job.setting_mm(mm));
    let words = |mm: f64| answered.job.setting_words(mm, unit);
    let outside = |mm: f64| {
        let is_tight = mm < setting.low().mm() - ROUNDING_MM;
        let is_loose = mm > setting.high().mm() + ROUNDING_MM;
        is_tight || is_loose
    };
    match promised_mm {
        Some(mm) if outside(mm) => Answer::new(JobState::ToChange)
            .result(format!(
                "no play is left, but by the readings before it is {}, not {wanted}",
                words(mm)
            ))
            .said(format!("build in what gives {wanted}, or measure again")),
        Some(mm) => Answer::new(JobState::Done)
            .result(format!(
                "no play is left; by the readings it is {}",
                words(mm)
            ))
            .said(TORQUE_TELLS),
        None => Answer::new(JobState::Done)
            .result("no play is left, as wanted")
            .said(TORQUE_TELLS),
    }
}

/// What tells of preload.
const TORQUE_TELLS: &str = "how much preload there is no dial tells: check the turning torque";
