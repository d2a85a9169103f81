//! What puts a speedometer right: the driven gear that reads nearest without reading low, or the pulse
//! factor of an electronic corrector.

use super::shown_speed::ShownSpeed;
use crate::gearing::ToothPair;

/// What rounding may leave of a tooth: a gear that reads just right counts as one that does.
const ROUNDING: f64 = 1e-9;

/// The most teeth that a gear can have.
const MOST_TEETH: u16 = 999;

/// The driven gear of a speedometer that reads nearest without reading low.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrivenGearFound {
    /// The teeth with which the pointer would show just the true speed, seldom whole.
    pub exact_teeth: f64,
    /// The pair with the driven gear to fit, and the drive gear that is there.
    pub pair: ToothPair,
    /// What is shown then.
    pub shown: ShownSpeed,
}

impl DrivenGearFound {
    /// The driven gear to fit in the place of that of `present`, with which `shown` is shown.
    ///
    /// More driven teeth read lower, so it is the greatest whole number up to present driven teeth × shown ÷
    /// true. What counts is what the pointer shows: that is what may not read low. None where one tooth would
    /// be too many.
    ///
    /// # Source
    /// Workshop rule: driven teeth = drive teeth × revs per mile × axle ratio ÷ turns per mile at which the
    /// instrument reads right. What may not read low takes the next smaller count.
    ///
    /// # Example
    /// ```
    /// use layshaft::checks::{DrivenGearFound, ReadingRatio, ShownSpeed};
    /// use layshaft::gearing::ToothPair;
    /// let (driven, drive) = (16, 8);
    /// let shown = ShownSpeed::from_ratios(0.9915, ReadingRatio::TRUE);
    /// let found = DrivenGearFound::in_place_of(ToothPair::new(driven, drive)?, &shown);
    /// assert_eq!(found.map(|found| found.pair.driven()), Some(15));
    /// # Ok::<(), layshaft::gearing::RatioError>(())
    /// ```
    pub fn in_place_of(present: ToothPair, shown: &ShownSpeed) -> Option<Self> {
        let exact_teeth = f64::from(present.driven()) * shown.shown_ratio();
        let teeth = most_teeth_up_to(exact_teeth)?;
        let pair = ToothPair::new(teeth, present.driving()).ok()?;
        Some(Self {
            exact_teeth,
            pair,
            shown: shown.times(present.ratio() / pair.ratio()),
        })
    }
}

/// The most teeth that are no more than so many; none below one.
fn most_teeth_up_to(exact_teeth: f64) -> Option<u16> {
    let limit = exact_teeth * (1.0 + ROUNDING);
    (1..=MOST_TEETH)
        .rev()
        .find(|teeth| f64::from(*teeth) <= limit)
}

/// What an electronic corrector is set to aim at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CorrectionAim {
    /// The odometer counts right; the pointer is off by its own error alone.
    OdometerRight,
    /// The pointer shows the true speed; the odometer is off by the pointer's own error.
    PointerRight,
    /// Both read as they did in the baseline.
    AsBaseline,
}

impl CorrectionAim {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::OdometerRight, Self::PointerRight, Self::AsBaseline];

    /// The output pulses for one input pulse of a corrector with which `shown`, what is shown without it,
    /// becomes what is aimed at.
    pub fn pulse_factor(self, shown: &ShownSpeed, baseline: &ShownSpeed) -> f64 {
        match self {
            Self::OdometerRight => 1.0 / shown.odometer_ratio(),
            Self::PointerRight => 1.0 / shown.shown_ratio(),
            Self::AsBaseline => baseline.odometer_ratio() / shown.odometer_ratio(),
        }
    }

    /// What is shown through a corrector that is set so.
    pub fn corrected(self, shown: &ShownSpeed, baseline: &ShownSpeed) -> ShownSpeed {
        shown.times(self.pulse_factor(shown, baseline))
    }
}
