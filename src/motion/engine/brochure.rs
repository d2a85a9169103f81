//! A torque curve built from the four figures of a brochure: peak torque and peak power, each with its
//! engine speed.

use super::super::cubic::Cubic;
use super::super::quantity::{Power, Torque};
use super::curve::{TorqueCurve, TorqueCurveError, TorquePoint};
use super::power::{power_w, torque_of_power_nm};
use super::{RAD_S_PER_RPM, WATTS_PER_KW};
use crate::gearing::EngineSpeed;

/// The four figures of a brochure; the torque may hold over a plateau, `320 N·m at 1750–3000`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Brochure {
    torque: Torque,
    plateau: [EngineSpeed; 2],
    power: Power,
    power_speed: EngineSpeed,
}

/// Why four figures are not those of one engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum BrochureError {
    /// Nothing to build a curve from.
    #[error("a peak torque and a peak power above 0 are needed")]
    Nothing,
    /// The plateau ends before it begins.
    #[error("the engine speeds of the peak torque rise from the first to the last")]
    PlateauFalls,
    /// Power peaks before the torque does.
    #[error("the peak power lies at a higher engine speed than the peak torque")]
    PowerBeforeTorque,
    /// The peak power asks for more than the peak torque.
    #[error("the peak power takes more torque at its engine speed than the peak torque")]
    TooMuchPower,
    /// The peak torque gives more than the peak power.
    #[error("the peak torque gives more power at its engine speed than the peak power")]
    TooMuchTorque,
}

/// How far the figures may contradict each other, being rounded by whoever printed them.
const ROUNDED: f64 = 1.01;

/// Points in each span of a built curve: peaks then stay within 0.06 % of the typed ones.
const POINTS_A_SPAN: u32 = 10;

/// A built curve begins at this share of the engine speed of the peak torque.
const BEGINS_AT: f64 = 0.2;

/// A built curve ends at this multiple of the engine speed of the peak power, if no redline comes first.
const ENDS_AT: f64 = 1.5;

/// How near to each other two points of a built curve may be, as a share.
const NEAREST: f64 = 1e-6;

/// The highest engine speed there is, in rev/min.
const HIGHEST_RPM: f64 = 30_000.0;

impl Brochure {
    /// The figures, if one engine can have them. `plateau` holds the first and the last engine speed of
    /// the peak torque, which are the same where there is but one.
    ///
    /// # Errors
    /// When a figure is 0, when the engine speeds do not follow each other, or when one peak contradicts
    /// the other by more than 1 %.
    pub fn new(
        torque: Torque,
        plateau: [EngineSpeed; 2],
        power: Power,
        power_speed: EngineSpeed,
    ) -> Result<Self, BrochureError> {
        let [first, last] = plateau;
        let power_watts = power.kw() * WATTS_PER_KW;
        if torque.nm() <= 0.0 || power_watts <= 0.0 {
            Err(BrochureError::Nothing)
        } else if first > last {
            Err(BrochureError::PlateauFalls)
        } else if power_speed < last {
            Err(BrochureError::PowerBeforeTorque)
        } else if power_watts > power_w(torque.nm(), power_speed.rpm()) * ROUNDED {
            Err(BrochureError::TooMuchPower)
        } else if power_w(torque.nm(), last.rpm()) > power_watts * ROUNDED {
            Err(BrochureError::TooMuchTorque)
        } else {
            Ok(Self {
                torque,
                plateau,
                power,
                power_speed,
            })
        }
    }

    /// The peak torque.
    pub fn torque(&self) -> Torque {
        self.torque
    }

    /// The first and the last engine speed of the peak torque.
    pub fn plateau(&self) -> [EngineSpeed; 2] {
        self.plateau
    }

    /// The peak power.
    pub fn power(&self) -> Power {
        self.power
    }

    /// The engine speed of the peak power.
    pub fn power_speed(&self) -> EngineSpeed {
        self.power_speed
    }

    /// The curve with these peaks, marked as built.
    ///
    /// Below the peak torque T = Tₘ · (1 − ½(1 − n ÷ nₜ)²); the plateau holds; then power follows a
    /// cubic from there, where its slope over ω is Tₘ (at most three chords), to the peak power, where it
    /// is 0, with T ≤ Tₘ; above it P = Pₘ · (2u − u²), u = n ÷ nₚ. It reaches from a fifth of the engine
    /// speed of the peak torque to one and a half times that of the peak power.
    ///
    /// # Accuracy
    /// The peaks are those of the brochure within 0.06 %; what lies between them is a guess.
    ///
    /// # Source
    /// Our own convention; that it begins and ends so is common practice, no source.
    ///
    /// # Errors
    /// None for figures that exist; a point of the curve that did not would be told.
    pub fn curve(&self) -> Result<TorqueCurve, TorqueCurveError> {
        let [first, last] = self.plateau.map(EngineSpeed::rpm);
        let peak = self.power_speed.rpm();
        let begin = (BEGINS_AT * first).max(1.0);
        let end = (ENDS_AT * peak).min(HIGHEST_RPM);
        let mut places = vec![begin];
        places.extend(span(begin, first));
        for (from, to) in [
            (last, peak),
            (self.corner_rpm(last, peak), peak),
            (peak, end),
        ] {
            places.push(from);
            places.extend(behind_a_corner(from, to));
            places.extend(span(from, to));
        }
        places.sort_by(f64::total_cmp);
        // Points nearer to each other would have slopes of rounding alone.
        places.dedup_by(|after, before| *after - *before < NEAREST * *before);
        let points: Result<Vec<TorquePoint>, TorqueCurveError> = places
            .into_iter()
            .map(|rpm| {
                Ok(TorquePoint {
                    speed: EngineSpeed::from_rpm(rpm)?,
                    torque: Torque::from_nm(self.torque_at_nm(rpm))?,
                })
            })
            .collect();
        Ok(TorqueCurve::new(points?)?.built_from(*self))
    }

    fn torque_at_nm(&self, engine_rpm: f64) -> f64 {
        let [first, last] = self.plateau.map(EngineSpeed::rpm);
        let peak = self.power_speed.rpm();
        let highest_nm = self.torque.nm();
        let peak_w = self.power.kw() * WATTS_PER_KW;
        if engine_rpm < first {
            let below = 1.0 - engine_rpm / first;
            highest_nm * (1.0 - 0.5 * below * below)
        } else if engine_rpm <= last {
            highest_nm
        } else if engine_rpm < peak {
            let power = self.rising_power(last, peak).at(engine_rpm * RAD_S_PER_RPM);
            torque_of_power_nm(power, engine_rpm).min(highest_nm)
        } else {
            let share = engine_rpm / peak;
            let power = peak_w * (2.0 * share - share * share);
            torque_of_power_nm(power, engine_rpm).min(highest_nm)
        }
    }
}

impl Brochure {
    /// The last engine speed in rev/min at which the rising power asks for no less than the peak torque.
    fn corner_rpm(&self, last: f64, peak: f64) -> f64 {
        let rise = self.rising_power(last, peak);
        let at_peak_torque = Cubic {
            coefficients: [self.torque.nm() * rise.origin, self.torque.nm(), 0.0, 0.0],
            ..rise
        };
        let places = rise.minus(&at_peak_torque).roots();
        let corner = places.last().map(|omega| omega / RAD_S_PER_RPM);
        corner.map_or(last, |rpm| rpm.clamp(last, peak))
    }

    /// The power in W between the last engine speed of the peak torque and that of the peak power: a
    /// cubic over ω.
    fn rising_power(&self, last: f64, peak: f64) -> Cubic {
        let ends = [last, peak].map(|rpm| rpm * RAD_S_PER_RPM);
        let peak_w = self.power.kw() * WATTS_PER_KW;
        let begins_w = power_w(self.torque.nm(), last);
        let chord = (peak_w - begins_w) / (ends[1] - ends[0]);
        let slope = self.torque.nm().min(3.0 * chord).max(0.0);
        Cubic::through(ends[0], ends[1], [begins_w, peak_w], [slope, 0.0])
    }
}

/// The engine speeds of a span without its lower end.
fn span(from: f64, to: f64) -> impl Iterator<Item = f64> {
    let parts = f64::from(POINTS_A_SPAN);
    (1..=POINTS_A_SPAN).map(move |at| from + (to - from) * f64::from(at) / parts)
}

/// More engine speeds of a span, at its lower end: torque may be level up to there and fall at once behind
/// it, and a cubic through far points would begin to fall late.
fn behind_a_corner(from: f64, to: f64) -> impl Iterator<Item = f64> {
    [0.001, 0.004, 0.016, 0.05]
        .into_iter()
        .map(move |share| from + (to - from) * share)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn brochure(
        nm: f64,
        plateau: [f64; 2],
        kw: f64,
        power_rpm: f64,
    ) -> Result<Brochure, BrochureError> {
        let rpm = |rpm| EngineSpeed::from_rpm(rpm).unwrap();
        Brochure::new(
            Torque::from_nm(nm).unwrap(),
            plateau.map(rpm),
            Power::from_kw(kw).unwrap(),
            rpm(power_rpm),
        )
    }

    #[test]
    fn a_plateau_stays_one_and_its_ends_are_points() {
        let diesel = brochure(320.0, [1750.0, 3000.0], 110.0, 3600.0).unwrap();
        let curve = diesel.curve().unwrap();
        for rpm in [1750.0, 2000.0, 2400.0, 3000.0] {
            assert!(
                (curve.torque_nm(rpm).unwrap() - 320.0).abs() < 1e-9,
                "{rpm}"
            );
        }
        let highest = curve.points().iter().map(|p| p.torque.nm());
        assert!(highest.fold(0.0, f64::max) <= 320.0);
        assert_eq!(curve.brochure(), Some(&diesel));
    }

    #[test]
    fn both_peaks_stay_within_six_hundredths_of_a_per_cent() {
        let petrol = brochure(150.0, [4000.0, 4000.0], 80.0, 6000.0).unwrap();
        let curve = petrol.curve().unwrap();
        let fine = (1000..=9000).map(f64::from);
        let places = fine.filter_map(|rpm| Some((rpm, curve.torque_nm(rpm)?)));
        let (mut torque, mut power) = (0.0_f64, 0.0_f64);
        for (rpm, nm) in places {
            torque = torque.max(nm);
            power = power.max(power_w(nm, rpm));
        }
        assert!((torque / 150.0 - 1.0).abs() < 6e-4, "{torque}");
        assert!((power / 80_000.0 - 1.0).abs() < 6e-4, "{power}");
    }

    #[test]
    fn figures_that_contradict_each_other_are_refused() {
        use BrochureError::{
            Nothing, PlateauFalls, PowerBeforeTorque, TooMuchPower, TooMuchTorque,
        };
        for (found, expected) in [
            (brochure(0.0, [2000.0, 2000.0], 80.0, 5000.0), Nothing),
            (
                brochure(150.0, [4000.0, 2000.0], 80.0, 5500.0),
                PlateauFalls,
            ),
            (
                brochure(150.0, [5600.0, 5600.0], 80.0, 5500.0),
                PowerBeforeTorque,
            ),
            (
                brochure(150.0, [4000.0, 4000.0], 90.0, 5500.0),
                TooMuchPower,
            ),
            (
                brochure(150.0, [4000.0, 4000.0], 60.0, 5500.0),
                TooMuchTorque,
            ),
        ] {
            assert_eq!(found, Err(expected));
        }
        // 100.53 kW, printed as 100.
        assert!(brochure(320.0, [1750.0, 3000.0], 100.0, 3000.0).is_ok());
    }
}
