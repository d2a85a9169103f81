//! The interference of a part with its seat: what of it works, and how much of it a part bears.

use super::limits::{ROUNDING_UM, UM_PER_MM, fine_sign};
use super::quantity::Diameter;
use crate::units::{LengthUnit, plain_number, round_to};
use crate::workshop::quantity::TemperatureRise;

/// How much a part is tighter than its seat, from the least to the most, in µm; below 0 there is clearance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interference {
    /// The least.
    pub least_um: f64,
    /// The most.
    pub most_um: f64,
}

/// How a seat was finished: pressing flattens what stands out of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum SeatFinish {
    /// Ground.
    #[default]
    Ground,
    /// Turned.
    Turned,
}

/// How much of the diameter an interference is, beside what bearing makers bear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tightness {
    /// As usual.
    Usual,
    /// Above 0.0007 of the diameter: look up what the part bears.
    Tight,
    /// Above 0.001 of it: a ring may crack.
    TooTight,
}

impl Tightness {
    /// The share of the diameter above which a fit is warned of.
    pub const WARNED_SHARE: f64 = 0.0007;

    /// The share above which it is stopped.
    pub const STOPPED_SHARE: f64 = 0.001;

    /// What is said of it; nothing where it is as usual.
    pub fn sentence(self, diameter: Diameter) -> Option<String> {
        let um = |share: f64| plain_number(round_to(share * diameter.mm() * UM_PER_MM, 0.1));
        match self {
            Self::Usual => None,
            Self::Tight => Some(format!(
                "That can be more than {} µm, 0.0007 of the diameter: ask the maker what the part bears.",
                um(Self::WARNED_SHARE)
            )),
            Self::TooTight => Some(format!(
                "That can be more than {} µm, 0.001 of the diameter: a ring may crack, do not fit it.",
                um(Self::STOPPED_SHARE)
            )),
        }
    }
}

impl Interference {
    /// What of it works once roughness is flattened: × d/(d + 2) on a ground seat, d/(d + 3) on a turned one; of a
    /// clearance nothing is flattened.
    ///
    /// # Source
    /// Two bearing makers' catalogues.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::{Diameter, Interference, SeatFinish};
    /// let apparent = Interference { least_um: 0.0, most_um: 30.0 };
    /// let working = apparent.working(SeatFinish::Ground, Diameter::from_mm(40.0)?);
    /// assert!((working.most_um - 30.0 * 40.0 / 42.0).abs() < 1e-12);
    /// # Ok::<(), layshaft::gearing::OutOfRange>(())
    /// ```
    #[must_use]
    pub fn working(self, finish: SeatFinish, diameter: Diameter) -> Self {
        let flattened = match finish {
            SeatFinish::Ground => 2.0,
            SeatFinish::Turned => 3.0,
        };
        let share = diameter.mm() / (diameter.mm() + flattened);
        self.map(|um| if um > 0.0 { um * share } else { um })
    }

    /// What is left of it where a bearing runs so much warmer than what surrounds it: 0.0015 ΔT d µm less.
    ///
    /// # Source
    /// Two bearing makers' catalogues.
    #[must_use]
    pub fn warmed(self, rise: TemperatureRise, diameter: Diameter) -> Self {
        self.map(|um| um - taken_by_warmth_um(rise, diameter))
    }

    /// What the most of it is beside what a part bears. It is meant as it is measured, before anything is
    /// flattened, which is on the safe side.
    ///
    /// # Source
    /// Two bearing makers' catalogues.
    pub fn tightness(self, diameter: Diameter) -> Tightness {
        let above = |share: f64| self.most_um > share * diameter.mm() * UM_PER_MM + ROUNDING_UM;
        if above(Tightness::STOPPED_SHARE) {
            Tightness::TooTight
        } else if above(Tightness::WARNED_SHARE) {
            Tightness::Tight
        } else {
            Tightness::Usual
        }
    }

    /// `interference 2 to 30 µm`, `clearance 4 to interference 20 µm`: the word, so that a wrong sign is seen.
    pub fn words(self) -> String {
        self.words_in(LengthUnit::Millimetre)
    }

    /// The same at a bench of that unit: in µm where it is mm.
    pub fn words_in(self, unit: LengthUnit) -> String {
        let text = |um: f64| match unit {
            LengthUnit::Millimetre => plain_number(round_to(um.abs(), 0.1)),
            LengthUnit::Inch => unit.figure(um.abs() / UM_PER_MM),
        };
        let (least, most) = (text(self.least_um), text(self.most_um));
        let sign = fine_sign(unit);
        if self.least_um >= 0.0 {
            format!("interference {least} to {most} {sign}")
        } else if self.most_um <= 0.0 {
            format!("clearance {most} to {least} {sign}")
        } else {
            format!("clearance {least} to interference {most} {sign}")
        }
    }

    fn map(self, change: impl Fn(f64) -> f64) -> Self {
        Self {
            least_um: change(self.least_um),
            most_um: change(self.most_um),
        }
    }
}

/// What warmth takes of the interference of a bearing on its shaft, in µm: 0.0015 ΔT d, with ΔT in K and d in mm.
/// ΔT is what the bearing has above what surrounds it; between ring and shaft an eighth of that is left, for which
/// 0.0015 stands: 0.12 · 12.5 · 10⁻⁶ in µm.
///
/// # Source
/// Two bearing makers' catalogues; that ΔT is meant against the surroundings is from memory.
pub fn taken_by_warmth_um(rise: TemperatureRise, diameter: Diameter) -> f64 {
    0.0015 * rise.k() * diameter.mm()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn from_to(least_um: f64, most_um: f64) -> Interference {
        Interference { least_um, most_um }
    }

    #[test]
    fn interference_and_clearance_are_told_by_their_word() {
        assert_eq!(from_to(2.0, 30.0).words(), "interference 2 to 30 µm");
        assert_eq!(
            from_to(-4.0, 20.0).words(),
            "clearance 4 to interference 20 µm"
        );
        assert_eq!(from_to(-34.0, -5.0).words(), "clearance 5 to 34 µm");
        let inches = from_to(-25.4, 12.7).words_in(LengthUnit::Inch);
        assert_eq!(inches, "clearance 0.001 to interference 0.0005 in");
    }

    #[test]
    fn a_fit_is_warned_of_above_a_share_of_its_diameter() {
        let at = Diameter::from_mm(40.0).unwrap();
        let tightness = |most| from_to(0.0, most).tightness(at);
        assert_eq!(tightness(28.0), Tightness::Usual);
        assert_eq!(tightness(28.1), Tightness::Tight);
        assert_eq!(tightness(40.0), Tightness::Tight);
        assert_eq!(tightness(40.1), Tightness::TooTight);
    }

    #[test]
    fn pressing_flattens_nothing_of_a_clearance() {
        let at = Diameter::from_mm(40.0).unwrap();
        let working = from_to(-10.0, 21.5).working(SeatFinish::Turned, at);
        assert!((working.least_um + 10.0).abs() < 1e-12);
        assert!((working.most_um - 20.0).abs() < 1e-12);
    }
}
