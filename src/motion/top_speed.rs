//! Top speed: how fast each gear is on a level road, what limits it, and whether top gear is geared for
//! it.

use super::cubic::Cubic;
use super::on_road::OnRoad;
use super::powertrain::{PoweredGear, Powertrain};
use super::vehicle::{LoadCase, Vehicle};
use crate::units::rpm_text;
use std::fmt;

/// What ends the speed of a gear.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TopSpeedLimit {
    /// The road load takes all of the effort.
    Power,
    /// The engine turns no faster: the redline, or the end of its torque curve.
    Redline,
}

/// How fast a gear is on a level road without wind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TopSpeed {
    /// The speed in m/s.
    pub speed_m_s: f64,
    /// What ends it.
    pub limit: TopSpeedLimit,
}

impl PoweredGear {
    /// How fast the gear is on a level road without wind and grip limit; none where it holds no speed.
    ///
    /// The end of its road speeds if F ≥ R there, else the highest root of F − R.
    ///
    /// # Source
    /// Definition.
    pub fn top_speed(&self, vehicle: &Vehicle, load: &LoadCase) -> Option<TopSpeed> {
        self.top_speed_on(&OnRoad::level_and_still(vehicle, load))
    }

    fn top_speed_on(&self, on_road: &OnRoad) -> Option<TopSpeed> {
        let end_m_s = self.high_m_s();
        if self.effort_n(end_m_s)? >= on_road.road_load_n(end_m_s) {
            return Some(TopSpeed {
                speed_m_s: end_m_s,
                limit: TopSpeedLimit::Redline,
            });
        }
        let road_load = on_road.road_load();
        let highest_root = |effort: &Cubic| {
            let load = road_load.about(effort.origin, effort.from, effort.to);
            effort.minus(&load).roots().last().copied()
        };
        let root = self.pieces().iter().rev().find_map(highest_root)?;
        Some(TopSpeed {
            speed_m_s: root,
            limit: TopSpeedLimit::Power,
        })
    }
}

/// How top gear fits the speed at which the road load takes the peak power.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GearedFor {
    /// The engine turns more than 2 % faster than at its peak power there: a taller gear would be faster.
    ShortOfTopSpeed,
    /// The engine turns as at its peak power there, within 2 %.
    TopSpeed,
    /// The engine turns more than 2 % slower than at its peak power there: a shorter gear would be faster.
    BeyondTopSpeed,
}

/// How far the engine speed may be from that of peak power for a gear to be geared for top speed.
///
/// # Source
/// Our own convention.
const AT_PEAK_POWER: f64 = 0.02;

/// Beyond this speed in m/s nothing holds a vehicle back that could be told.
const NEVER_HELD_M_S: f64 = 1e6;

/// How top gear fits the speed at which the road load takes the peak power; as text one sentence.
#[derive(Debug, Clone, PartialEq)]
pub struct TopGearing {
    /// Short of it, at it or beyond it.
    pub geared_for: GearedFor,
    /// The label of top gear.
    pub gear: String,
    /// The engine speed in rev/min that top gear has there; none where the road load never takes the peak
    /// power.
    pub engine_rpm: Option<f64>,
    /// The engine speed of peak power, in rev/min.
    pub peak_power_rpm: f64,
    /// Whether the power still rises there, where redline or curve end.
    pub is_cut_off: bool,
}

impl fmt::Display for TopGearing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let geared = match self.geared_for {
            GearedFor::ShortOfTopSpeed => "short of",
            GearedFor::TopSpeed => "for",
            GearedFor::BeyondTopSpeed => "beyond",
        };
        let (gear, peak) = (&self.gear, rpm_text(self.peak_power_rpm));
        write!(f, "Geared {geared} top speed: ")?;
        match self.engine_rpm {
            Some(rpm) => write!(
                f,
                "where the road load takes all power, gear {gear} would be at {} rpm, and peak power is at {peak} \
                 rpm{}",
                rpm_text(rpm),
                if self.is_cut_off {
                    ", where redline or curve end"
                } else {
                    ""
                }
            ),
            None => write!(f, "the road load never takes all power from gear {gear}"),
        }
    }
}

impl Powertrain {
    /// The fastest gear of the shift chain and its top speed, of equal ones the lowest gear; none where no
    /// gear holds a speed.
    pub fn top_speed(
        &self,
        vehicle: &Vehicle,
        load: &LoadCase,
    ) -> Option<(&PoweredGear, TopSpeed)> {
        let on_road = OnRoad::level_and_still(vehicle, load);
        let gears = self.chain();
        let speeds = gears.filter_map(|gear| Some((gear, gear.top_speed_on(&on_road)?)));
        speeds.reduce(|best, next| {
            if next.1.speed_m_s > best.1.speed_m_s {
                next
            } else {
                best
            }
        })
    }

    /// How top gear fits the speed at which the road load takes the peak power, η · Pₘ = R · v; none for
    /// an engine without power.
    ///
    /// # Source
    /// Common practice, no source; that 2 % count as fitting is our own convention.
    pub fn top_gearing(&self, vehicle: &Vehicle, load: &LoadCase) -> Option<TopGearing> {
        let on_road = OnRoad::level_and_still(vehicle, load);
        let (top, peak) = (self.top()?, self.band.power_peak());
        if peak.power_w <= 0.0 {
            return None;
        }
        let speed_m_s = speed_by_power_m_s(&on_road, top.efficiency * peak.power_w);
        let engine_rpm = speed_m_s.map(|speed| top.engine_rpm(speed));
        let faster = engine_rpm.map_or(f64::INFINITY, |rpm| rpm / peak.engine_rpm - 1.0);
        let geared_for = if faster > AT_PEAK_POWER {
            GearedFor::ShortOfTopSpeed
        } else if faster < -AT_PEAK_POWER {
            GearedFor::BeyondTopSpeed
        } else {
            GearedFor::TopSpeed
        };
        Some(TopGearing {
            geared_for,
            gear: top.gear.label.clone(),
            engine_rpm,
            peak_power_rpm: peak.engine_rpm,
            is_cut_off: peak.engine_rpm >= self.band.high_rpm(),
        })
    }

    /// The effort in N at a road speed in m/s of a gear that always has the engine at its peak power, with
    /// the efficiency of top gear: F = η · Pₘ ÷ v. None at standstill.
    ///
    /// # Source
    /// Definition.
    pub fn ideal_effort_n(&self, speed_m_s: f64) -> Option<f64> {
        let power_w = self.top()?.efficiency * self.band.power_peak().power_w;
        let effort_n = power_w / speed_m_s;
        (speed_m_s > 0.0 && effort_n.is_finite()).then_some(effort_n)
    }
}

/// The lowest speed in m/s at which the road load on a level road without wind takes a power in W.
fn speed_by_power_m_s(on_road: &OnRoad, power_w: f64) -> Option<f64> {
    let load = on_road.road_load();
    let is_held = |speed: &f64| load.at(*speed) * speed >= power_w;
    let doubled = (0..).map(|times| 2.0_f64.powi(times));
    let end_m_s = doubled
        .take_while(|speed| *speed <= NEVER_HELD_M_S)
        .find(is_held)?;
    let missing = Cubic {
        origin: 0.0,
        from: 0.0,
        to: end_m_s,
        coefficients: [
            -power_w,
            load.constant_n,
            load.linear_n_per_m_s,
            load.quadratic_n_per_m2_s2,
        ],
    };
    missing.roots().first().copied()
}
