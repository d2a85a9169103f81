//! What shim a place takes: from the play that was measured with a trial shim, or from depths and gaps.

use super::quantity::{Reading, Setting, SettingBand, ShimThickness};
use super::readings::Readings;

/// Where a shim sits, because the sign hangs on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Seat {
    /// Behind a race, a thrust washer or a snap ring: thicker is less play.
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
    /// Depths by gauge: of the case, of what fills it, and the gasket between.
    Depth {
        /// From the face to the seat.
        case: Reading,
        /// What stands in it.
        filling: Reading,
        /// The gasket, squeezed.
        gasket: Reading,
    },
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
#[error(
    "no shim is below 0 mm, and this place would take {least_mm:.3} to {most_mm:.3} mm: seat the bearings by \
     turning them both ways and measure again"
)]
pub struct NoMeasurement {
    /// The least that it would take.
    pub least_mm: f64,
    /// The most that it would take.
    pub most_mm: f64,
}

impl Band {
    /// Its middle in mm.
    pub fn middle_mm(self) -> f64 {
        f64::midpoint(self.least_mm, self.most_mm)
    }
}

impl ShimJob {
    /// The whole thickness that the place takes.
    ///
    /// With the trial shim t, the play e and the setting c: behind t + e − c, under t − e + c. A gap g takes
    /// g + c; depths take case − filling + gasket − c.
    ///
    /// # Source
    /// Service procedures for manual gearboxes and axles, see `tests/it/published/workshop.rs`.
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
            Measurement::Depth {
                case,
                filling,
                gasket,
            } => case.mm() - filling.mm() + gasket.mm(),
        }
    }

    /// Whether a thicker shim gives more clearance, 1, or less, −1.
    fn sign(&self) -> f64 {
        match (&self.measurement, self.seat) {
            (Measurement::Play { .. }, Seat::Behind) | (Measurement::Depth { .. }, _) => -1.0,
            (Measurement::Play { .. }, Seat::Under) | (Measurement::Gap(_), _) => 1.0,
        }
    }
}

/// What rounding may leave of a length, in mm.
const ROUNDING_MM: f64 = 1e-9;
