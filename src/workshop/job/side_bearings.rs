//! The side bearings of a differential: what is typed of them, how the shims are split, and the next move to the
//! wanted backlash.

use super::answer::{Answer, JobState};
use super::field::{Choice, Field, chosen, typed};
use super::form::{JobForm, no_items};
use super::said::{self, Part};
use crate::units::{BenchUnits, LengthUnit};
use crate::workshop::quantity::{Angle, LengthBand, Reading, ShimThickness, Tolerance};
use crate::workshop::readings::Readings;
use crate::workshop::shim::ROUNDING_MM;
use crate::workshop::side_bearings::{BacklashMove, SideShims};

/// From what it is known how much backlash a move takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum RateBy {
    /// A figure.
    #[default]
    Figure,
    /// The angles of the gears.
    Angles,
}

impl Choice for RateBy {
    const ALL: &'static [(Self, &'static str)] = &[
        (Self::Figure, "a figure"),
        (Self::Angles, "the angles of the gears"),
    ];
}

/// What is known of the side bearings of a differential; each part may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SideBearingsData {
    /// From side to side without the ring gear.
    pub whole: Option<Reading>,
    /// With the ring gear, until it stands fully in mesh.
    pub to_mesh: Option<Reading>,
    /// What is added for the preload.
    pub allowance: Option<Reading>,
    /// The shims that are fitted on the side of the ring gear.
    pub ring_gear_fitted: Option<ShimThickness>,
    /// Those on the other side.
    pub other_fitted: Option<ShimThickness>,
    /// The backlash at several places round the ring gear.
    pub backlash: Option<Readings>,
    /// What the maker wants of it.
    pub wanted: Option<LengthBand>,
    /// By how much it may vary round the ring gear.
    pub most_variation: Option<Tolerance>,
    /// From what the rate is known.
    pub rate_by: RateBy,
    /// How much backlash a move takes; absent [`BacklashMove::USUAL`].
    pub rate: Option<BacklashMove>,
    /// The pressure angle.
    pub pressure_angle: Option<Angle>,
    /// The pitch angle of the ring gear.
    pub pitch_angle: Option<Angle>,
    /// The preload that is to be taken away, both sides together.
    pub preload_off: Option<ShimThickness>,
}

impl JobForm for SideBearingsData {
    const FIELDS: &'static [Field<Self>] = &[
        typed!(
            SideBearingsData.whole,
            "Travel without ring gear",
            Length,
            "from side to side, no shims in place"
        ),
        typed!(
            SideBearingsData.to_mesh,
            "Travel to full mesh",
            Length,
            "with ring gear (crown wheel), no backlash"
        ),
        typed!(
            SideBearingsData.allowance,
            "Allowance for preload",
            Length,
            "what the manual adds, 0 for none"
        ),
        typed!(
            SideBearingsData.ring_gear_fitted,
            "Fitted, ring gear's side",
            Length,
            "in place now; counts before the travel"
        ),
        typed!(
            SideBearingsData.other_fitted,
            "Fitted, other side",
            Length,
            "in place now; counts before the travel"
        ),
        typed!(
            SideBearingsData.backlash,
            "Backlash, every reading",
            Length,
            "three places round the ring at least"
        )
        .list(),
        typed!(
            SideBearingsData.wanted,
            "Wanted backlash",
            Length,
            "least and most, as 0.10 to 0.15"
        )
        .in_inches("least and most, as 0.004 to 0.006"),
        typed!(
            SideBearingsData.most_variation,
            "Backlash may vary by",
            Length,
            "between any two places of the ring"
        ),
        chosen!(SideBearingsData.rate_by: RateBy, "Backlash per mm, from", ""),
        typed!(
            SideBearingsData.rate,
            "Backlash per mm moved",
            Plain,
            "mm; 0.6 in most workshops"
        )
        .when(|data| data.rate_by == RateBy::Figure),
        typed!(
            SideBearingsData.pressure_angle,
            "Pressure angle, °",
            Plain,
            "as 20"
        )
        .when(|data| data.rate_by == RateBy::Angles),
        typed!(
            SideBearingsData.pitch_angle,
            "Pitch angle of ring gear, °",
            Plain,
            "as 75"
        )
        .when(|data| data.rate_by == RateBy::Angles),
        typed!(
            SideBearingsData.preload_off,
            "Preload to take away",
            Length,
            "both sides together, 0 for none"
        ),
    ];

    no_items!();

    fn answer(&self, units: BenchUnits) -> Answer {
        let unit = units.length;
        let Some(shims) = self.shims() else {
            let untouched = Self {
                rate_by: self.rate_by,
                ..Self::default()
            };
            return said::lacking(*self == untouched, &self.shim_parts());
        };
        if !shims.exist() {
            return Answer::new(JobState::ToMeasure).warning(format!(
                "no shim is below 0 {}, and here it would be {}: measure the travel again",
                unit.sign(),
                shims_words(shims, unit)
            ));
        }
        let below = self
            .backlash
            .as_ref()
            .and_then(|read| said::below_nothing(read, unit));
        if let Some(below) = below {
            return Answer::new(JobState::ToMeasure).warning(below);
        }
        match (&self.backlash, self.wanted) {
            (Some(backlash), Some(wanted)) if backlash.as_slice().len() >= ROUND_THE_RING => {
                self.judged(shims, backlash, wanted, unit)
            }
            _ => self.to_be_measured(shims, unit),
        }
    }
}

/// At so many places of the ring backlash is read at least.
const ROUND_THE_RING: usize = 3;

impl SideBearingsData {
    /// The shims that are fitted, else those that the travel asks for.
    pub fn shims(&self) -> Option<SideShims> {
        match (self.ring_gear_fitted, self.other_fitted) {
            (Some(ring_gear), Some(other)) => Some(SideShims {
                ring_gear_mm: ring_gear.mm(),
                other_mm: other.mm(),
            }),
            (None, None) => Some(SideShims::from_travel(
                self.whole?,
                self.to_mesh?,
                self.allowance?,
            )),
            (Some(_), None) | (None, Some(_)) => None,
        }
    }

    /// What the shims must be for the wanted backlash and preload: those that are there, where nothing of it is
    /// to be changed. None where something is missing.
    pub fn next_shims(&self) -> Option<SideShims> {
        let backlash = self.backlash.as_ref()?;
        self.moved(self.shims()?, backlash, self.wanted?).ok()
    }

    /// The shims with the backlash in the middle of what is wanted, where it lies outside, and the preload taken
    /// away.
    fn moved(
        &self,
        shims: SideShims,
        backlash: &Readings,
        wanted: LengthBand,
    ) -> Result<SideShims, String> {
        let shims = if is_within(backlash, wanted) {
            shims
        } else {
            let less_mm = backlash.mean_mm() - wanted.middle_mm();
            shims.with_less_backlash(less_mm, self.rate()?)
        };
        Ok(self
            .preload_off
            .map_or(shims, |preload| shims.with_less_preload(preload)))
    }

    /// How much backlash a move takes.
    fn rate(&self) -> Result<BacklashMove, String> {
        match self.rate_by {
            RateBy::Figure => Ok(self.rate.unwrap_or(BacklashMove::USUAL)),
            RateBy::Angles => {
                let (Some(pressure), Some(pitch)) = (self.pressure_angle, self.pitch_angle) else {
                    return Err("type both angles, and the next move follows".to_owned());
                };
                let rate = BacklashMove::of_angles(pressure, pitch);
                rate.ok_or_else(|| {
                    "with these angles no gear moves as gears do: look at them again".to_owned()
                })
            }
        }
    }

    /// What must be known before the shims are.
    fn shim_parts(&self) -> [Part; 5] {
        let fitted = [self.ring_gear_fitted, self.other_fitted];
        let is_fitted = fitted.iter().any(Option::is_some);
        let [ring_gear, other] = fitted.map(|shim| !is_fitted || shim.is_some());
        [
            (is_fitted || self.whole.is_some(), "the whole travel"),
            (
                is_fitted || self.to_mesh.is_some(),
                "the travel to full mesh",
            ),
            (is_fitted || self.allowance.is_some(), "the allowance"),
            (ring_gear, "the shims on the ring gear's side"),
            (other, "the shims on the other side"),
        ]
    }

    /// The shims, and what of the backlash is missing.
    fn to_be_measured(&self, shims: SideShims, unit: LengthUnit) -> Answer {
        let words = shims_words(shims, unit);
        let sign = unit.sign();
        let answer = Answer::new(JobState::ToMeasure).result(words).said(format!(
            "both together {} {sign}",
            unit.reckoned(shims.total_mm())
        ));
        let count = self.backlash.as_ref().map_or(0, |b| b.as_slice().len());
        let parts = [
            (
                count >= ROUND_THE_RING,
                "the backlash at three places round the ring gear at least",
            ),
            (self.wanted.is_some(), "the wanted backlash"),
        ];
        said::missing_words(&parts)
            .into_iter()
            .fold(answer, Answer::said)
    }

    /// What the backlash says.
    fn judged(
        &self,
        shims: SideShims,
        backlash: &Readings,
        wanted: LengthBand,
        unit: LengthUnit,
    ) -> Answer {
        let is_within = is_within(backlash, wanted);
        let variation_mm = backlash.variation_mm();
        let most = self.most_variation.map(Tolerance::mm);
        let varies = most.filter(|most| variation_mm > most + ROUNDING_MM);
        let off = self.preload_off.filter(|preload| preload.mm() > 0.0);
        let is_done = is_within && varies.is_none() && off.is_none();
        let state = if is_done {
            JobState::Done
        } else {
            JobState::ToChange
        };
        let mut answer = Answer::new(state);
        if !is_done && (off.is_some() || !is_within) {
            answer = self.next_move(answer, shims, (backlash, wanted), unit);
        }
        let sign = unit.sign();
        let mean = unit.reckoned(backlash.mean_mm());
        let band = wanted.figures(unit);
        let verdict = match is_within {
            true => format!("backlash {mean} {sign}: within {band} {sign}"),
            false if backlash.mean_mm() > wanted.middle_mm() => {
                format!("backlash {mean} {sign}: too wide, wanted is {band} {sign}")
            }
            false => format!("backlash {mean} {sign}: too narrow, wanted is {band} {sign}"),
        };
        answer = if is_done {
            answer.result(verdict)
        } else {
            answer.said(verdict)
        };
        let variation = unit.reckoned(variation_mm);
        match varies {
            None => answer.said(format!("it varies by {variation} {sign} round the ring gear")),
            Some(most) => answer.warning(format!(
                "the backlash varies by {variation} {sign} round the ring gear, more than {}: look for dirt, \
                 burrs and run-out before shims are moved",
                unit.figure(most)
            )),
        }
    }

    /// Which shims are moved and taken off, and what both sides are then.
    fn next_move(
        &self,
        answer: Answer,
        shims: SideShims,
        (backlash, wanted): (&Readings, LengthBand),
        unit: LengthUnit,
    ) -> Answer {
        let next = match self.moved(shims, backlash, wanted) {
            Ok(next) => next,
            Err(problem) => return answer.said(problem),
        };
        let off_mm = self.preload_off.map_or(0.0, |preload| preload.mm() / 2.0);
        let moved_mm = next.ring_gear_mm + off_mm - shims.ring_gear_mm;
        let is_moved = !is_within(backlash, wanted);
        let sign = unit.sign();
        let size = unit.reckoned(moved_mm.abs());
        let mut wishes = Vec::new();
        if is_moved {
            wishes.push(if moved_mm > 0.0 {
                format!("move {size} {sign} from the other side to the ring gear's")
            } else {
                format!("move {size} {sign} from the ring gear's side to the other")
            });
        }
        if off_mm > 0.0 {
            let off = unit.reckoned(off_mm);
            wishes.push(format!("take {off} {sign} off either side"));
        }
        let answer = answer.result(wishes.join(", and "));
        if !next.exist() {
            return answer.warning(format!(
                "no shim is below 0 {sign}, and then it would be {}: measure the shims and the backlash again",
                shims_words(next, unit)
            ));
        }
        let answer = answer.said(format!("then {}", shims_words(next, unit)));
        if !is_moved {
            return answer;
        }
        let answer = match (self.rate_by, self.rate) {
            (RateBy::Figure, None) => {
                answer.said("reckoned with 0.6 mm of backlash for 1 mm moved, as most workshops do")
            }
            (RateBy::Figure, Some(_)) | (RateBy::Angles, _) => answer,
        };
        answer.said("build it in, turn the gears round, and read the backlash again")
    }
}

impl SideShims {
    /// Whether there are shims as thin.
    fn exist(self) -> bool {
        self.ring_gear_mm >= -ROUNDING_MM && self.other_mm >= -ROUNDING_MM
    }
}

/// Whether the mean lies in a band; the ends belong to it.
fn is_within(backlash: &Readings, wanted: LengthBand) -> bool {
    let mean_mm = backlash.mean_mm();
    let [least, most] = wanted.ends().map(Reading::mm);
    mean_mm >= least - ROUNDING_MM && mean_mm <= most + ROUNDING_MM
}

fn shims_words(shims: SideShims, unit: LengthUnit) -> String {
    let [ring_gear, other] = [shims.ring_gear_mm, shims.other_mm].map(|mm| unit.reckoned(mm));
    let sign = unit.sign();
    format!("ring gear's side {ring_gear} {sign}, other side {other} {sign}")
}
