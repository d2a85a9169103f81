//! What shim a place takes: from the play that was measured with a trial shim, or from depths and gaps.

use super::quantity::{Depth, Setting, SettingBand, ShimThickness, setting_words};
use super::readings::Readings;
use crate::units::LengthUnit;

/// Where a shim sits, because the sign hangs on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Seat {
    /// Behind a race, a thrust washer or a snap ring: thicker is less play.
    #[default]
    Behind,
    /// Under a cover or between case halves: thicker is more play.
    Under,
}

/// How a place was measured.
#[derive(Debug, Clone, PartialEq)]
pub enum Measurement {
    /// The total travel of a dial with that trial shim in place; without one 0.
    Play {
        /// The shim that was in place.
        trial: ShimThickness,
        /// What the dial travelled.
        play: Readings,
    },
    /// The gap under a cover that is pressed against a seated bearing, by feeler.
    Gap(Readings),
    /// Depths by gauge: of the case, of what stands in it, and the gasket between.
    Depths {
        /// From the face to the seat.
        case: Depth,
        /// All that stands in it, part by part.
        filling: Filling,
        /// The gasket, squeezed.
        gasket: ShimThickness,
    },
    /// Where a pinion's head stands: behind it the shim, the bearing, and the seat in the case. Its setting is
    /// how much farther from the axis of the ring gear it stands than wanted.
    PinionDepth {
        /// From the axis of the ring gear to the seat of the bearing.
        seat: Readings,
        /// From that axis to the back of the head, as the maker gives it.
        mounting: Depth,
        /// What is marked on the head, to be added to it.
        marking: Setting,
        /// The height of the bearing.
        bearing: Depth,
    },
}

/// All that stands in a case, part by part: 1 to 20 heights.
#[derive(Debug, Clone, PartialEq)]
pub struct Filling(Vec<Depth>);

impl Filling {
    /// As many as stand in any case.
    pub const MOST: usize = 20;

    /// These heights; none where there is not one, or there are too many.
    pub fn new(heights: Vec<Depth>) -> Option<Self> {
        (1..=Self::MOST)
            .contains(&heights.len())
            .then_some(Self(heights))
    }

    /// All of them, in the order in which they were typed.
    pub fn as_slice(&self) -> &[Depth] {
        &self.0
    }

    /// Their sum in mm.
    pub fn total_mm(&self) -> f64 {
        self.0.iter().map(|height| height.mm()).sum()
    }
}

/// A shim that is sought.
#[derive(Debug, Clone, PartialEq)]
pub struct ShimJob {
    /// Where it sits.
    pub seat: Seat,
    /// What was measured.
    pub measurement: Measurement,
    /// What is wanted.
    pub setting: SettingBand,
}

/// A length from its least to its most, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The least.
    pub least_mm: f64,
    /// The most.
    pub most_mm: f64,
}

/// A thickness that no shim has: the reading is none.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[error("{}", self.words(LengthUnit::Millimetre))]
pub struct NoMeasurement {
    /// The least that it would take.
    pub least_mm: f64,
    /// The most that it would take.
    pub most_mm: f64,
}

impl NoMeasurement {
    /// The same in a unit.
    pub fn words(self, unit: LengthUnit) -> String {
        let [least, most] = [self.least_mm, self.most_mm].map(|mm| unit.reckoned(mm));
        let sign = unit.sign();
        format!(
            "no shim is below 0 {sign}, and this place would take {least} to {most} {sign}: seat the \
             bearings by turning them both ways and measure again"
        )
    }
}

impl Band {
    /// Its middle in mm.
    pub fn middle_mm(self) -> f64 {
        f64::midpoint(self.least_mm, self.most_mm)
    }
}

impl Measurement {
    /// What was read several times, where something was.
    pub fn readings(&self) -> Option<&Readings> {
        match self {
            Self::Play { play, .. } | Self::Gap(play) => Some(play),
            Self::PinionDepth { seat, .. } => Some(seat),
            Self::Depths { .. } => None,
        }
    }
}

impl ShimJob {
    /// The whole thickness that the place takes.
    ///
    /// With the trial shim t, the play e and the setting c: behind t + e − c, under t − e + c. A gap g takes
    /// g + c; depths take case − filling + gasket − c; a pinion takes seat − (mounting distance + marking) −
    /// bearing − c.
    ///
    /// # Source
    /// Service procedures for manual gearboxes and axles, see `tests/it/published/workshop.rs`; of the pinion
    /// common practice, no source.
    ///
    /// # Errors
    /// When all of it lies below 0: then what was measured is no play.
    pub fn wanted(&self) -> Result<Band, NoMeasurement> {
        let [low, high] = [self.setting.low(), self.setting.high()].map(|c| self.thickness_mm(c));
        let (least_mm, most_mm) = (low.min(high), low.max(high));
        if most_mm < -ROUNDING_MM {
            return Err(NoMeasurement { least_mm, most_mm });
        }
        Ok(Band { least_mm, most_mm })
    }

    /// The thickness with which the setting is that, in mm.
    fn thickness_mm(&self, setting: Setting) -> f64 {
        self.zero_mm() + self.sign() * setting.mm()
    }

    /// What is wanted, in words.
    pub fn wanted_words(&self, unit: LengthUnit) -> String {
        match self.measurement {
            Measurement::PinionDepth { .. } => {
                let [low, high] = [self.setting.low(), self.setting.high()];
                let [low, high] = [low, high].map(|end| self.setting_words(end.mm(), unit));
                if low == high {
                    low
                } else {
                    format!("{low} to {high}")
                }
            }
            _ => self.setting.words(unit),
        }
    }

    /// A setting in words: `clearance 0.05 mm`, of a pinion `0.02 mm too far from the axis`.
    pub fn setting_words(&self, setting_mm: f64, unit: LengthUnit) -> String {
        let size = unit.reckoned(setting_mm.abs());
        match self.measurement {
            Measurement::PinionDepth { .. } => {
                let is_nothing = !size.contains(|c: char| matches!(c, '1'..='9'));
                let sign = unit.sign();
                match setting_mm {
                    _ if is_nothing => "just as deep as marked".to_owned(),
                    mm if mm < 0.0 => format!("{size} {sign} nearer to the axis than marked"),
                    _ => format!("{size} {sign} farther from the axis than marked"),
                }
            }
            _ => setting_words(setting_mm, &size, unit),
        }
    }

    /// The setting in mm that a thickness gives.
    pub fn setting_mm(&self, thickness_mm: f64) -> f64 {
        self.sign() * (thickness_mm - self.zero_mm())
    }

    /// The thickness with which there is neither clearance nor preload, in mm.
    fn zero_mm(&self) -> f64 {
        match &self.measurement {
            Measurement::Play { trial, play } => match self.seat {
                Seat::Behind => trial.mm() + play.mean_mm(),
                Seat::Under => trial.mm() - play.mean_mm(),
            },
            Measurement::Gap(gap) => gap.mean_mm(),
            Measurement::Depths {
                case,
                filling,
                gasket,
            } => case.mm() - filling.total_mm() + gasket.mm(),
            Measurement::PinionDepth {
                seat,
                mounting,
                marking,
                bearing,
            } => seat.mean_mm() - (mounting.mm() + marking.mm()) - bearing.mm(),
        }
    }

    /// Whether a thicker shim gives more clearance, 1, or less, −1.
    fn sign(&self) -> f64 {
        match (&self.measurement, self.seat) {
            (Measurement::Play { .. }, Seat::Behind)
            | (Measurement::Depths { .. } | Measurement::PinionDepth { .. }, _) => -1.0,
            (Measurement::Play { .. }, Seat::Under) | (Measurement::Gap(_), _) => 1.0,
        }
    }
}

/// What rounding may leave of a length, in mm.
pub(super) const ROUNDING_MM: f64 = 1e-9;
