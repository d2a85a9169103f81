//! What lies between the source of the signal and the instrument: speedometer gears or a pulse sender, and
//! the count per kilometre at which the instrument reads right.

use crate::gearing::{OutOfRange, ToothPair, quantity};
use crate::units::KM_PER_MILE;

quantity! {
    /// Pulses for one turn of what a sender sits on: 0.001 to 1000, not always whole.
    PulsesPerTurn, new, pulses, "a number of pulses per turn", "between 0.001 and 1000",
    |pulses| (0.001..=1000.0).contains(&pulses)
}

quantity! {
    /// The turns or pulses per kilometre at which an instrument reads right: 10 to 1000000.
    MeterConstant, from_per_km, per_km, "a meter constant", "between 10 and 1000000 per km",
    |count| (10.0..=1_000_000.0).contains(&count)
}

quantity! {
    /// What an instrument shows over what is true: 0.5 to 2.
    ReadingRatio, new, ratio, "what is shown over what is true", "between 0.5 and 2",
    |ratio| (0.5..=2.0).contains(&ratio)
}

impl MeterConstant {
    /// The constant from turns or pulses per statute mile, as 1000 or 4000.
    ///
    /// # Errors
    /// When it is not between 10 and 1000000 per kilometre.
    pub fn from_per_mile(per_mile: f64) -> Result<Self, OutOfRange> {
        Self::from_per_km(per_mile / KM_PER_MILE)
    }

    /// The turns or pulses per statute mile.
    pub fn per_mile(self) -> f64 {
        self.per_km() * KM_PER_MILE
    }
}

impl ReadingRatio {
    /// Shown as it is.
    pub const TRUE: Self = Self(1.0);
}

/// What makes the count of the instrument out of the turns of the signal's source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum InstrumentDrive {
    /// A drive gear on the source turns a driven gear, and that the cable or the sender at its end.
    Gears(ToothPair),
    /// A sender that counts the source itself.
    Pulses(PulsesPerTurn),
}

impl InstrumentDrive {
    /// The turns or pulses of the instrument for one turn of the source: drive ÷ driven teeth, or the pulses.
    ///
    /// # Example
    /// ```
    /// use layshaft::{checks::InstrumentDrive, gearing::ToothPair};
    /// let (driven, drive) = (16, 8);
    /// let gears = InstrumentDrive::Gears(ToothPair::new(driven, drive)?);
    /// assert!((gears.count_per_turn() - 0.5).abs() < 1e-12);
    /// # Ok::<(), layshaft::gearing::RatioError>(())
    /// ```
    pub fn count_per_turn(self) -> f64 {
        match self {
            Self::Gears(pair) => 1.0 / pair.ratio(),
            Self::Pulses(pulses) => pulses.pulses(),
        }
    }

    /// Whether both count alike, turns or pulses.
    pub(super) fn counts_like(self, other: Self) -> bool {
        match (self, other) {
            (Self::Gears(_), Self::Gears(_)) | (Self::Pulses(_), Self::Pulses(_)) => true,
            (Self::Gears(_), Self::Pulses(_)) | (Self::Pulses(_), Self::Gears(_)) => false,
        }
    }
}
