//! The torque that keeps a shaft turning: what is typed of it and of every try, and what it says of the shim.

use super::Job;
use super::answer::{Answer, JobState};
use super::field::{Choice, Field, chosen, typed};
use super::form::JobForm;
use super::said::{self, Part};
use crate::gearing::{Name, Ratio};
use crate::units::{BenchUnits, TurningUnit};
use crate::workshop::next_shim::{ShimTry, next_shim};
use crate::workshop::quantity::{PullForce, Radius, ShimThickness, TurningTorque};
use crate::workshop::shim::{ROUNDING_MM, Seat};
use crate::workshop::turning_torque::{
    TorqueBand, TorqueReading, TorqueVerdict, TurningMeasurement,
};

/// How the torque is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TorqueMeasuring {
    /// A cord round a drum, pulled by a scale.
    #[default]
    Cord,
    /// A beam wrench.
    BeamWrench,
}

impl Choice for TorqueMeasuring {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::Cord, "a cord round a drum, and a scale"),
        (Self::BeamWrench, "a beam wrench"),
    ];
}

/// What the maker's figure is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum MakersFigure {
    /// The bearings alone.
    #[default]
    WithoutSeals,
    /// The bearings and their seals.
    WithSeals,
}

impl Choice for MakersFigure {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::WithoutSeals, "without seals"),
        (Self::WithSeals, "with seals: they are not taken off"),
    ];
}

/// What the bearings are, and for which the maker's figure is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum BearingsAre {
    /// New ones.
    #[default]
    New,
    /// Used ones, and the figure is for new ones.
    UsedAgainstNew,
    /// Used ones, and the figure is for used ones.
    UsedAgainstUsed,
}

impl Choice for BearingsAre {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::New, "new"),
        (Self::UsedAgainstNew, "used, and the figure is for new ones"),
        (
            Self::UsedAgainstUsed,
            "used, and the figure is for used ones",
        ),
    ];
}

/// A try that is kept; each part may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TorqueTry {
    /// The whole thickness in the place.
    pub shim: Option<ShimThickness>,
    /// The torque of the bearings.
    pub torque: Option<TurningTorque>,
    /// When it was, as somebody writes a date.
    pub date: Option<Name>,
    /// What is to be remembered of it.
    pub note: Option<Name>,
}

/// What is known of a turning torque; each part may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TurningTorqueData {
    /// How it is measured.
    pub measuring: TorqueMeasuring,
    /// What the scale reads.
    pub pull: Option<PullForce>,
    /// The drum's radius and half the cord.
    pub drum_radius: Option<Radius>,
    /// What the wrench reads.
    pub reading: Option<TurningTorque>,
    /// How long the wrench is.
    pub wrench: Option<Radius>,
    /// How far an adapter in line with it reaches.
    pub adapter: Option<Radius>,
    /// What the same place took before the gears were coupled.
    pub before: Option<TurningTorque>,
    /// Turns of the place that is turned for one of the bearings' shaft.
    pub ratio: Option<Ratio>,
    /// What the maker's figure is of.
    pub figure: MakersFigure,
    /// What the seals take.
    pub seals: Option<TurningTorque>,
    /// What the bearings are.
    pub bearings: BearingsAre,
    /// The maker's figure.
    pub band: Option<TorqueBand>,
    /// Where the shim sits.
    pub seat: Seat,
    /// The shim that is in place.
    pub shim: Option<ShimThickness>,
    /// The tries that are kept, the newest last.
    pub tries: Vec<TorqueTry>,
}

impl JobForm for TurningTorqueData {
    const FIELDS: &'static [Field<Self>] = &[
        chosen!(TurningTorqueData.measuring: TorqueMeasuring, "Measured with", "Read while it turns, not as it starts"),
        typed!(
            TurningTorqueData.pull,
            "Pull of the scale",
            Plain,
            "as 30 N, 3 kg or 7 lb"
        )
        .when(|data| data.measuring == TorqueMeasuring::Cord),
        typed!(
            TurningTorqueData.drum_radius,
            "Radius of the drum",
            Length,
            "with half the cord"
        )
        .when(|data| data.measuring == TorqueMeasuring::Cord),
        typed!(
            TurningTorqueData.reading,
            "The wrench reads",
            Torque,
            "while the shaft turns"
        )
        .when(|data| data.measuring == TorqueMeasuring::BeamWrench),
        typed!(
            TurningTorqueData.adapter,
            "Adapter in line",
            Length,
            "from square to shaft axis; empty: none"
        )
        .when(|data| data.measuring == TorqueMeasuring::BeamWrench),
        typed!(
            TurningTorqueData.wrench,
            "Length of the wrench",
            Length,
            "square to grip; needed with an adapter"
        )
        .when(|data| data.measuring == TorqueMeasuring::BeamWrench),
        typed!(
            TurningTorqueData.before,
            "With gears uncoupled",
            Torque,
            "read before; empty at the shaft itself"
        ),
        typed!(
            TurningTorqueData.ratio,
            "Turns there per shaft turn",
            Plain,
            "as 4.1 or 41/10; empty at the shaft itself"
        ),
        chosen!(TurningTorqueData.figure: MakersFigure, "The maker's figure is", "The manual says whether it was taken with the seals in"),
        typed!(
            TurningTorqueData.seals,
            "The seals take",
            Torque,
            "at the shaft; empty where none is in"
        )
        .when(|data| data.figure == MakersFigure::WithoutSeals),
        chosen!(TurningTorqueData.bearings: BearingsAre, "The bearings are", ""),
        typed!(
            TurningTorqueData.band,
            "The maker's figure",
            Torque,
            "as 1.5 to 2.5; US manuals: preload"
        ),
        chosen!(TurningTorqueData.seat: Seat, "Where the shim sits", "The way that the next shim goes hangs on it"),
        typed!(
            TurningTorqueData.shim,
            "Shim in place",
            Length,
            "all shims (spacers) of it together"
        ),
    ];

    type Item = TorqueTry;
    const ITEM_FIELDS: &'static [Field<TorqueTry>] = &[
        typed!(TorqueTry.shim, "Shim", Length, "all of the place together"),
        typed!(
            TorqueTry.torque,
            "Torque",
            Torque,
            "as the maker's figure is"
        ),
        typed!(TorqueTry.date, "Date", Plain, ""),
        typed!(TorqueTry.note, "Note", Plain, ""),
    ];
    const ITEM: Option<&'static str> = Some("try");

    fn items(&self) -> &[TorqueTry] {
        &self.tries
    }

    fn items_mut(&mut self) -> Option<&mut Vec<TorqueTry>> {
        Some(&mut self.tries)
    }

    fn answer(&self, units: BenchUnits) -> Answer {
        let unit = units.torque;
        let measured_nmm = self.measured_nmm();
        if let Some(nmm) = measured_nmm.filter(|nmm| *nmm < 0.0) {
            return Answer::new(JobState::ToMeasure).warning(format!(
                "the bearings cannot turn at {} {}: what is taken off is more than what was measured, so measure \
                 both again",
                unit.figure(nmm),
                unit.sign()
            ));
        }
        let newest = self.tries.iter().rev().find_map(|kept| kept.torque);
        let Some(nmm) = measured_nmm.or_else(|| newest.map(TurningTorque::nmm)) else {
            let untouched = Self {
                measuring: self.measuring,
                figure: self.figure,
                bearings: self.bearings,
                seat: self.seat,
                ..Self::default()
            };
            return said::lacking(*self == untouched, &self.parts());
        };
        let turns = format!("the bearings turn at {} {}", unit.figure(nmm), unit.sign());
        let turns = match measured_nmm {
            Some(_) => turns,
            None => format!("{turns} by the newest try"),
        };
        if self.awaits_reading() {
            return Answer::new(JobState::ToMeasure)
                .result("turn the shaft with the shim that is in now, and type what it takes");
        }
        let answer = match self.compared_band() {
            None => Answer::new(JobState::ToMeasure)
                .result(turns)
                .said("still missing: the maker's figure"),
            Some(band) => self.judged(&turns, band.verdict(nmm), band, units),
        };
        answer.said("it counts while the shaft turns, not as it starts; US manuals call it preload")
    }
}

impl TurningTorqueData {
    /// What was measured, where all of it is known.
    pub fn measurement(&self) -> Option<TurningMeasurement> {
        let reading = match self.measuring {
            TorqueMeasuring::Cord => TorqueReading::Pull {
                pull: self.pull?,
                radius: self.drum_radius?,
            },
            TorqueMeasuring::BeamWrench => TorqueReading::Wrench {
                reading: self.reading?,
                adapter: match self.adapter {
                    Some(adapter) => Some([self.wrench?, adapter]),
                    None => None,
                },
            },
        };
        Some(TurningMeasurement {
            reading,
            before: self.before,
            ratio: self.ratio.clone(),
            seals: match self.figure {
                MakersFigure::WithoutSeals => self.seals,
                MakersFigure::WithSeals => None,
            },
        })
    }

    /// The torque that was measured last in N·mm, as the maker's figure is; below 0 where more is taken off than
    /// was measured.
    pub fn measured_nmm(&self) -> Option<f64> {
        self.measurement()
            .map(|measurement| measurement.torque_nmm())
    }

    /// The band that the torque is compared with: the maker's, made smaller for used bearings where it is for
    /// new ones.
    pub fn compared_band(&self) -> Option<TorqueBand> {
        let band = self.band?;
        Some(match self.bearings {
            BearingsAre::New | BearingsAre::UsedAgainstUsed => band,
            BearingsAre::UsedAgainstNew => band.of_used_bearings(),
        })
    }

    /// The job with what was measured last as one more try; none where that or its shim is not known, where it is
    /// kept already, or where there are as many as can be.
    pub fn keeping_try(&self) -> Option<Self> {
        let now = self.measured_try().filter(|_| !self.awaits_reading())?;
        let kept = self.tries.last().and_then(TorqueTry::known);
        if kept == Some(now) || self.tries.len() >= Job::MOST_ITEMS {
            return None;
        }
        let mut job = self.clone();
        job.tries.push(TorqueTry {
            shim: Some(now.shim),
            torque: Some(now.torque),
            ..TorqueTry::default()
        });
        Some(job)
    }

    fn measured_try(&self) -> Option<ShimTry> {
        Some(ShimTry {
            shim: self.shim?,
            torque: TurningTorque::from_nmm(self.measured_nmm()?).ok()?,
        })
    }

    /// Whether shim or reading was typed anew since a try was kept, and the other not yet: two shims turn at the
    /// same torque to the last digit in no gearbox.
    fn awaits_reading(&self) -> bool {
        let now = self.measured_try();
        let kept = self.tries.last().and_then(TorqueTry::known);
        now.zip(kept).is_some_and(|(now, kept)| {
            now.shim != kept.shim && (now.torque.nmm() - kept.torque.nmm()).abs() < ROUNDING_NMM
        })
    }

    /// Every try of which shim and torque are known, the newest last: those that are kept, and what was measured
    /// since.
    pub fn known_tries(&self) -> Vec<ShimTry> {
        let mut tries: Vec<ShimTry> = self.tries.iter().filter_map(TorqueTry::known).collect();
        let now = self.measured_try().filter(|_| !self.awaits_reading());
        tries.extend(now.filter(|now| tries.last() != Some(now)));
        tries
    }

    /// The two newest tries with different shims, the older one first.
    pub fn line(&self) -> Option<[ShimTry; 2]> {
        let tries = self.known_tries();
        let newest = *tries.last()?;
        let differs = |tried: &&ShimTry| (tried.shim.mm() - newest.shim.mm()).abs() > ROUNDING_MM;
        let older = tries.iter().rev().find(differs)?;
        Some([*older, newest])
    }

    /// The next shim, by the line through two tries to the middle of the band: an estimate. None where there is no
    /// line, or it goes the other way than this place does.
    pub fn next(&self) -> Option<ShimThickness> {
        let line = self.line()?;
        let wanted = self.compared_band()?.middle();
        self.is_plausible(line)
            .then(|| next_shim(line, wanted))
            .flatten()
    }

    /// Whether the shaft turns harder with the shim that makes it tighter here.
    fn is_plausible(&self, [older, newest]: [ShimTry; 2]) -> bool {
        let thicker_mm = newest.shim.mm() - older.shim.mm();
        let harder_nmm = newest.torque.nmm() - older.torque.nmm();
        match self.seat {
            Seat::Behind => thicker_mm * harder_nmm > 0.0,
            Seat::Under => thicker_mm * harder_nmm < 0.0,
        }
    }

    /// What must be known of the reading, and whether it is.
    fn parts(&self) -> [Part; 4] {
        let cord = self.measuring == TorqueMeasuring::Cord;
        [
            (!cord || self.pull.is_some(), "the pull of the scale"),
            (
                !cord || self.drum_radius.is_some(),
                "the radius of the drum",
            ),
            (cord || self.reading.is_some(), "what the wrench reads"),
            (
                cord || self.adapter.is_none() || self.wrench.is_some(),
                "the length of the wrench",
            ),
        ]
    }

    /// What the torque is beside the maker's band, and which shim comes next.
    fn judged(
        &self,
        turns: &str,
        verdict: TorqueVerdict,
        band: TorqueBand,
        units: BenchUnits,
    ) -> Answer {
        let wanted = band.words(units.torque);
        let (state, says) = match verdict {
            TorqueVerdict::Within => (JobState::Done, "within"),
            TorqueVerdict::TooLoose => (JobState::ToChange, "too loose for"),
            TorqueVerdict::TooTight => (JobState::ToChange, "too tight for"),
        };
        let mut answer = Answer::new(state).result(format!("{turns}: {says} {wanted}"));
        if let Some(way) = self.way(verdict) {
            answer = self.next_words(answer.said(way), units);
        }
        match self.bearings {
            BearingsAre::New | BearingsAre::UsedAgainstUsed => answer,
            BearingsAre::UsedAgainstNew => answer.said(format!(
                "used bearings turn at 0.4 to 0.6 of what new ones do: {wanted} is that much of the maker's figure \
                 for new ones"
            )),
        }
    }

    /// Which way the shim goes; none where it stays.
    fn way(&self, verdict: TorqueVerdict) -> Option<&'static str> {
        match (verdict, self.seat) {
            (TorqueVerdict::Within, _) => None,
            (TorqueVerdict::TooLoose, Seat::Behind) => Some(
                "take a thicker shim: behind a race (cup) thicker is less play, so it turns harder",
            ),
            (TorqueVerdict::TooLoose, Seat::Under) => {
                Some("take a thinner shim: under a cover thinner is less play, so it turns harder")
            }
            (TorqueVerdict::TooTight, Seat::Behind) => Some(
                "take a thinner shim: behind a race (cup) thinner is more play, so it turns easier",
            ),
            (TorqueVerdict::TooTight, Seat::Under) => {
                Some("take a thicker shim: under a cover thicker is more play, so it turns easier")
            }
        }
    }

    /// The next shim by the tries, or why they do not tell it.
    fn next_words(&self, answer: Answer, units: BenchUnits) -> Answer {
        let unit = units.length;
        let Some(line) = self.line() else {
            return answer.said("keep two tries with different shims, and the next shim follows");
        };
        if !self.is_plausible(line) {
            return answer.warning(
                "with the tighter one of the last two shims it turned no harder: measure again, and look where the \
                 shim sits",
            );
        }
        match self.next() {
            None => answer.warning(
                "the line through the last two tries leads to no shim that there is: measure again",
            ),
            Some(shim) => answer
                .result(format!(
                    "next shim about {} {}, by the line through the last two tries",
                    unit.reckoned(shim.mm()),
                    unit.sign()
                ))
                .said("that is an estimate: build it in and measure again"),
        }
    }
}

/// What rounding may leave of a torque, in N·mm.
const ROUNDING_NMM: f64 = 1e-6;

impl TorqueTry {
    /// The try, where shim and torque are known.
    fn known(&self) -> Option<ShimTry> {
        Some(ShimTry {
            shim: self.shim?,
            torque: self.torque?,
        })
    }
}

impl TorqueBand {
    /// `1.5 to 2.5 N·m`.
    fn words(self, unit: TurningUnit) -> String {
        let [low, high] = self.ends().map(|end| unit.figure(end.nmm()));
        let sign = unit.sign();
        if low == high {
            format!("{low} {sign}")
        } else {
            format!("{low} to {high} {sign}")
        }
    }
}
