//! The law of road load: the force that keeps a vehicle at a steady speed.

use super::cubic::Cubic;

/// The force that holds a vehicle back, over its road speed.
///
/// R = A + B·v + C·(v + w)·|v + w| + m·g·sin α, in N with v in m/s. Estimated from its parts A is
/// f·m·g·cos α, B 0 and C ½·ρ·drag area. At rest A only resists.
///
/// # Source
/// Gillespie, Fundamentals of Vehicle Dynamics, ch. 4 (from memory); measured coefficients as in 40 CFR
/// 1066. Efficiency is the same with both, and there is no further drag of the driveline: our own
/// convention.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoadLoad {
    /// A in N: what rolling takes at any speed.
    pub constant_n: f64,
    /// B in N/(m/s).
    pub linear_n_per_m_s: f64,
    /// C in N/(m/s)².
    pub quadratic_n_per_m2_s2: f64,
    /// w in m/s: wind from ahead, below 0 from behind.
    pub headwind_m_s: f64,
    /// m·g·sin α in N: below 0 downhill.
    pub slope_n: f64,
}

impl RoadLoad {
    /// R in N at a road speed in m/s.
    pub fn at(&self, speed_m_s: f64) -> f64 {
        self.rolling_n(speed_m_s) + self.drag_n(speed_m_s) + self.slope_n
    }

    /// C·(v + w)·|v + w| in N: what the air takes at a road speed in m/s, below 0 where it pushes.
    pub fn drag_n(&self, speed_m_s: f64) -> f64 {
        let air = speed_m_s + self.headwind_m_s;
        self.quadratic_n_per_m2_s2 * air * air.abs()
    }

    /// A + B·v in N: what rolling takes at a road speed in m/s.
    pub fn rolling_n(&self, speed_m_s: f64) -> f64 {
        self.constant_n + self.linear_n_per_m_s * speed_m_s
    }

    /// The road speed in m/s at which the vehicle is as fast as a wind from behind, which pushes it up to
    /// there; none without such a wind. R is one parabola below it and another above.
    pub fn turns_at_m_s(&self) -> Option<f64> {
        (self.headwind_m_s < 0.0).then_some(-self.headwind_m_s)
    }

    /// R over a stretch of road speeds that has [`Self::turns_at_m_s`] not inside it, as a cubic about
    /// `origin`.
    pub fn about(&self, origin: f64, from: f64, to: f64) -> Cubic {
        let is_pushed = 0.5 * (from + to) + self.headwind_m_s < 0.0;
        let factor = if is_pushed {
            -self.quadratic_n_per_m2_s2
        } else {
            self.quadratic_n_per_m2_s2
        };
        let air = origin + self.headwind_m_s;
        let value = self.rolling_n(origin) + factor * air * air + self.slope_n;
        let slope = self.linear_n_per_m_s + 2.0 * factor * air;
        Cubic {
            origin,
            from,
            to,
            coefficients: [value, slope, factor, 0.0],
        }
    }
}
