//! The power band: the torque at the crank over the engine speeds between which the engine is driven.

use super::super::cubic::Cubic;
use super::curve::TorqueCurve;
use super::power::power_w;
use super::{Engine, MeasuredAt};
use crate::gearing::EngineLimits;
use crate::motion::quantity::Efficiency;

/// A highest figure and where it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Peak {
    /// The engine speed in rev/min; the lowest of several.
    pub engine_rpm: f64,
    /// The torque there, in N·m.
    pub torque_nm: f64,
    /// The power there, in W.
    pub power_w: f64,
}

impl TorqueCurve {
    /// Where torque and power are highest, over the whole curve, wherever it was measured; none where nothing
    /// lies between its ends.
    pub fn peaks(&self) -> Option<[Peak; 2]> {
        let whole = EngineLimits {
            idle: None,
            lowest_useful: None,
            redline: self.points().last()?.speed,
        };
        let without_losses = Efficiency::new(1.0).ok()?;
        let engine = Engine::of_curve(self.clone());
        let band = PowerBand::of(&engine, &whole, without_losses)?;
        Some([band.torque_peak(), band.power_peak()])
    }
}

/// Torque at the crank from the lowest engine speed at which the engine is driven to the highest.
#[derive(Debug, Clone, PartialEq)]
pub struct PowerBand {
    pieces: Vec<Cubic>,
    low_rpm: f64,
    high_rpm: f64,
}

impl PowerBand {
    /// The band of an engine within its limits; none where nothing lies between them.
    ///
    /// It begins at the first point of the curve or at idle, whichever is higher, and ends at the redline
    /// or the last point, whichever is lower. A curve that was measured at the wheels is divided by the
    /// efficiency of the gear it was measured in.
    ///
    /// # Source
    /// Our own convention.
    pub fn of(engine: &Engine, limits: &EngineLimits, measured_in: Efficiency) -> Option<Self> {
        let points = engine.curve.points();
        let (first, last) = (points.first()?.speed.rpm(), points.last()?.speed.rpm());
        let low_rpm = limits.idle.map_or(first, |idle| idle.rpm().max(first));
        let high_rpm = limits.redline.rpm().min(last);
        if low_rpm >= high_rpm {
            return None;
        }
        let factor = match engine.measured_at {
            MeasuredAt::Crank => 1.0,
            MeasuredAt::Wheels => 1.0 / measured_in.share(),
        };
        let within = engine.curve.pieces().iter().filter_map(|piece| {
            let (from, to) = (piece.from.max(low_rpm), piece.to.min(high_rpm));
            (from < to).then(|| piece.between(from, to).scaled(factor))
        });
        Some(Self {
            pieces: within.collect(),
            low_rpm,
            high_rpm,
        })
    }

    /// The lowest engine speed at which the engine is driven, in rev/min.
    pub fn low_rpm(&self) -> f64 {
        self.low_rpm
    }

    /// The highest engine speed at which the engine is driven, in rev/min.
    pub fn high_rpm(&self) -> f64 {
        self.high_rpm
    }

    /// The torque in N·m over the engine speed in rev/min, a piece from each point to the next.
    pub fn pieces(&self) -> &[Cubic] {
        &self.pieces
    }

    /// The engine speed of the band that is nearest to one in rev/min.
    pub fn nearest_rpm(&self, engine_rpm: f64) -> f64 {
        engine_rpm.clamp(self.low_rpm, self.high_rpm)
    }

    /// The torque in N·m at an engine speed in rev/min; none outside the band.
    pub fn torque_nm(&self, engine_rpm: f64) -> Option<f64> {
        let piece = self.pieces.iter().find(|piece| engine_rpm <= piece.to)?;
        (engine_rpm >= piece.from).then(|| piece.at(engine_rpm).max(0.0))
    }

    /// The power in W at an engine speed in rev/min; none outside the band.
    pub fn power_w(&self, engine_rpm: f64) -> Option<f64> {
        Some(power_w(self.torque_nm(engine_rpm)?, engine_rpm))
    }

    /// Where the torque is highest, which is at an end of a piece.
    pub fn torque_peak(&self) -> Peak {
        self.highest(|piece| vec![piece.from, piece.to], |peak| peak.torque_nm)
    }

    /// Where the power is highest: at an end of a piece, or where T + n · dT/dn is 0 within one.
    pub fn power_peak(&self) -> Peak {
        let candidates = |piece: &Cubic| {
            let [c0, c1, c2, c3] = piece.coefficients;
            let n0 = piece.origin;
            // The slope of T · n, with n = n0 + t.
            let slope = Cubic {
                coefficients: [
                    c0 + n0 * c1,
                    2.0 * (c1 + n0 * c2),
                    3.0 * (c2 + n0 * c3),
                    4.0 * c3,
                ],
                ..*piece
            };
            let mut places = vec![piece.from, piece.to];
            places.extend(slope.roots());
            places
        };
        self.highest(candidates, |peak| peak.power_w)
    }

    /// The candidate at which `figure` is highest, the lowest of equal ones.
    fn highest(
        &self,
        candidates: impl Fn(&Cubic) -> Vec<f64>,
        figure: impl Fn(&Peak) -> f64,
    ) -> Peak {
        let peak_at = |piece: &Cubic, engine_rpm: f64| {
            let torque_nm = piece.at(engine_rpm).max(0.0);
            Peak {
                engine_rpm,
                torque_nm,
                power_w: power_w(torque_nm, engine_rpm),
            }
        };
        let peaks = self.pieces.iter().flat_map(|piece| {
            let places = candidates(piece).into_iter();
            places.map(move |engine_rpm| peak_at(piece, engine_rpm))
        });
        let least = Peak {
            engine_rpm: self.low_rpm,
            torque_nm: 0.0,
            power_w: 0.0,
        };
        peaks.fold(least, |best, peak| {
            // A plateau is one height, but for the last digits of its pieces.
            let is_higher = figure(&peak) > figure(&best) * (1.0 + 1e-12);
            if is_higher { peak } else { best }
        })
    }
}
