//! Cruise: what a steady road speed asks of the engine in a gear.

use super::fuel::FuelUse;
use super::on_road::OnRoad;
use super::powertrain::{PoweredGear, Powertrain};

/// How far beyond full load a speed still counts as held, as a share: what rounding leaves open of a top
/// speed.
const AT_FULL_LOAD: f64 = 1e-9;

/// A steady road speed in a gear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cruise {
    /// The road speed in m/s.
    pub speed_m_s: f64,
    /// The engine speed in rev/min, whether the engine turns that fast or not.
    pub engine_rpm: f64,
    /// What it asks of the engine; none where the gear does not hold the speed.
    pub held: Option<HeldSpeed>,
}

/// What a steady road speed asks of an engine that can hold it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeldSpeed {
    /// The power at the crank in W; below 0 where the engine holds the vehicle back.
    pub power_w: f64,
    /// The power in W that the engine has at full load there.
    pub full_power_w: f64,
}

impl HeldSpeed {
    /// The power that is asked for as a share of that at full load.
    pub fn load_share(&self) -> f64 {
        self.power_w / self.full_power_w
    }

    /// What is left at full load, in W.
    pub fn reserve_w(&self) -> f64 {
        self.full_power_w - self.power_w
    }
}

impl Cruise {
    /// The fuel in L/100 km; none where the gear does not hold the speed.
    pub fn l_per_100km(&self, fuel: &FuelUse) -> Option<f64> {
        fuel.l_per_100km(self.held?.power_w, self.engine_rpm, self.speed_m_s)
    }
}

impl Powertrain {
    /// A steady road speed in m/s in one of its gears on a road.
    ///
    /// P = R · v ÷ η, where the road load pushes η · R · v; the gear holds the speed if it covers it and P
    /// is at most the power at full load.
    ///
    /// # Source
    /// Gillespie, Fundamentals of Vehicle Dynamics, ch. 4 (from memory).
    pub fn cruise(&self, gear: &PoweredGear, on_road: &OnRoad, speed_m_s: f64) -> Cruise {
        Cruise {
            speed_m_s,
            engine_rpm: gear.engine_rpm(speed_m_s),
            held: self.held(gear, on_road, speed_m_s),
        }
    }

    fn held(&self, gear: &PoweredGear, on_road: &OnRoad, speed_m_s: f64) -> Option<HeldSpeed> {
        let covered_m_s = gear.covered_m_s(speed_m_s)?;
        let engine_rpm = self.band.nearest_rpm(gear.engine_rpm(covered_m_s));
        let wheel_w = on_road.road_load_n(covered_m_s) * covered_m_s;
        let power_w = if wheel_w < 0.0 {
            wheel_w * gear.efficiency
        } else {
            wheel_w / gear.efficiency
        };
        let held = HeldSpeed {
            power_w,
            full_power_w: self.band.power_w(engine_rpm)?,
        };
        // Without any power at full load there is no share of it.
        let share = held.load_share();
        (share.is_finite() && share <= 1.0 + AT_FULL_LOAD).then_some(held)
    }
}
